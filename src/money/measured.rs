use super::{Measure, MoneyError, exact};
use crate::quantity::{Mass, Volume};
use rust_decimal::Decimal;
use std::str::FromStr;

impl Measure {
    /// Both together.
    ///
    /// # Errors
    ///
    /// [`MoneyError::DifferentMeasures`], [`MoneyError::Quantity`] or [`MoneyError::TooLarge`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::Measure, quantity::Mass};
    ///
    /// let grams = |g| Mass::from_g(g).map(Measure::Mass);
    /// assert_eq!(grams(30.0)?.plus(grams(12.5)?)?, grams(42.5)?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
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

impl FromStr for Measure {
    type Err = MoneyError;

    /// Reads a mass, a volume or a count: `900 g`, `500 mL`, `42 pieces`.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let words = text.trim();
        let count = words.strip_suffix("pieces").or_else(|| words.strip_suffix("piece"));
        if let Some(count) = count.and_then(|count| count.trim().parse().ok()) {
            return Ok(Self::Count(count));
        }
        let mass = words.parse::<Mass>().map(Self::Mass);
        let volume = || words.parse::<Volume>().map(Self::Volume);
        mass.or_else(|_| volume()).map_err(|_| MoneyError::NotAMeasure { text: text.chars().take(40).collect() })
    }
}
