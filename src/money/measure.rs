use super::{MoneyError, exact};
use crate::quantity::{Mass, Volume};
use rust_decimal::Decimal;
use std::fmt;

/// How much of something is bought, used or in stock: by mass, by volume or as a count.
///
/// The three never mix: grams of a product sold by the millilitre need a density, which is not guessed here.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// Weighed.
    Mass(Mass),
    /// Measured out.
    Volume(Volume),
    /// Counted: foils, pairs of gloves, towels, applications.
    Count(u32),
}

impl Measure {
    /// The unit a price per unit is given for.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Mass(_) => "g",
            Self::Volume(_) => "mL",
            Self::Count(_) => "piece",
        }
    }

    /// Both together.
    ///
    /// # Errors
    ///
    /// [`MoneyError::DifferentMeasures`], [`MoneyError::Quantity`] or [`MoneyError::TooLarge`].
    pub fn plus(self, other: Self) -> Result<Self, MoneyError> {
        match (self, other) {
            (Self::Mass(a), Self::Mass(b)) => Ok(Self::Mass(Mass::from_g(a.g() + b.g())?)),
            (Self::Volume(a), Self::Volume(b)) => Ok(Self::Volume(Volume::from_ml(a.ml() + b.ml())?)),
            (Self::Count(a), Self::Count(b)) => {
                Ok(Self::Count(a.checked_add(b).ok_or(MoneyError::TooLarge { field: "count" })?))
            }
            (used, pack) => Err(MoneyError::DifferentMeasures { used, pack }),
        }
    }

    /// Both in the same unit, as decimals: this one, then the other.
    pub(crate) fn beside(self, pack: Self) -> Result<(Decimal, Decimal), MoneyError> {
        if std::mem::discriminant(&self) == std::mem::discriminant(&pack) {
            Ok((self.decimal()?, pack.decimal()?))
        } else {
            Err(MoneyError::DifferentMeasures { used: self, pack })
        }
    }

    /// The number in its unit, as the decimal it was written as.
    pub(crate) fn decimal(self) -> Result<Decimal, MoneyError> {
        match self {
            Self::Mass(mass) => exact::decimal(mass.g(), "mass"),
            Self::Volume(volume) => exact::decimal(volume.ml(), "volume"),
            Self::Count(count) => Ok(count.into()),
        }
    }
}

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Mass(mass) => mass.fmt(f),
            Self::Volume(volume) => volume.fmt(f),
            Self::Count(1) => f.write_str("1 piece"),
            Self::Count(count) => write!(f, "{count} pieces"),
        }
    }
}
