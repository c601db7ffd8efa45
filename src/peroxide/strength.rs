use super::unit::StrengthUnit;
use crate::{
    quantity::{
        ActiveOxygen, AmountConcentration, InvalidQuantity, MassConcentration, MassFraction, Molality, Normality,
        OxygenVolumes, Quantity,
    },
    source::Interval,
};

/// A quantity that states a strength of peroxide in one unit. Implemented by the seven strength types, no other.
pub trait StrengthQuantity: Quantity + sealed::Sealed {
    /// The unit it is counted in.
    const STRENGTH_UNIT: StrengthUnit;
}

mod sealed {
    pub trait Sealed {}
}

macro_rules! strengths {
    ($($type:ident: $unit:ident;)*) => {
        $(
            impl sealed::Sealed for $type {}

            impl StrengthQuantity for $type {
                const STRENGTH_UNIT: StrengthUnit = StrengthUnit::$unit;
            }

            impl From<$type> for Strength {
                fn from(quantity: $type) -> Self {
                    Self { number: quantity.in_unit(), unit: StrengthUnit::$unit }
                }
            }

            impl From<$type> for Interval<Strength> {
                fn from(quantity: $type) -> Self {
                    Self::exact(quantity.into())
                }
            }

            impl From<Interval<$type>> for Interval<Strength> {
                fn from(interval: Interval<$type>) -> Self {
                    interval.map(Strength::from)
                }
            }
        )*
    };
}

strengths! {
    MassFraction: WwPercent;
    MassConcentration: GPerL;
    AmountConcentration: MolPerL;
    Molality: MolPerKg;
    Normality: EqPerL;
    ActiveOxygen: ActiveOxygenPercent;
    OxygenVolumes: Volumes;
}

/// A strength whose unit is chosen while the program runs: a number with its unit, checked like the typed quantities.
///
/// Two strengths compare only in the same unit. [`convert`](super::convert) changes the unit and
/// [`typed`](Self::typed) gives back the quantity with its own type.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    number: f64,
    unit: StrengthUnit,
}

impl Strength {
    /// A number in a unit.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] when the number is negative, not finite, or beyond what the unit allows.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::{Strength, StrengthUnit}, quantity::MassFraction};
    ///
    /// let bottle = Strength::of(6.0, StrengthUnit::WwPercent)?;
    /// assert_eq!(bottle.typed(), Some(MassFraction::from_ww_percent(6.0)?));
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    pub fn of(number: f64, unit: StrengthUnit) -> Result<Self, InvalidQuantity> {
        match unit {
            StrengthUnit::WwPercent => MassFraction::from_ww_percent(number).map(drop),
            StrengthUnit::WvPercent => MassConcentration::from_wv_percent(number).map(drop),
            StrengthUnit::GPerL => MassConcentration::from_g_per_l(number).map(drop),
            StrengthUnit::MolPerL => AmountConcentration::from_mol_per_l(number).map(drop),
            StrengthUnit::MolPerKg => Molality::from_mol_per_kg(number).map(drop),
            StrengthUnit::EqPerL => Normality::from_eq_per_l(number).map(drop),
            StrengthUnit::ActiveOxygenPercent => ActiveOxygen::from_ww_percent(number).map(drop),
            StrengthUnit::Volumes => OxygenVolumes::from_volumes(number).map(drop),
        }?;
        Ok(Self { number, unit })
    }

    /// The nearest strength there is in a unit, for the bounds of an estimate.
    pub(crate) fn nearest(number: f64, unit: StrengthUnit) -> Self {
        Self { number: number.max(0.0).min(unit.max()), unit }
    }

    /// The number, in [`unit`](Self::unit).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::peroxide::{Strength, StrengthUnit};
    ///
    /// let bottle: Strength = "19.8 volumes".parse()?;
    /// assert_eq!((bottle.number(), bottle.unit()), (19.8, StrengthUnit::Volumes));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn number(self) -> f64 {
        self.number
    }

    /// The unit.
    #[must_use]
    pub const fn unit(self) -> StrengthUnit {
        self.unit
    }

    /// The quantity with its own type, if that is the unit this strength is in.
    #[must_use]
    pub fn typed<Q: StrengthQuantity>(self) -> Option<Q> {
        if self.unit == Q::STRENGTH_UNIT { Q::from_unit(self.number).ok() } else { None }
    }
}

impl PartialOrd for Strength {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        if self.unit == other.unit { self.number.partial_cmp(&other.number) } else { None }
    }
}

impl std::fmt::Display for Strength {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match f.precision() {
            Some(digits) => write!(f, "{:.digits$} {}", self.number, self.unit),
            None => write!(f, "{} {}", self.number, self.unit),
        }
    }
}
