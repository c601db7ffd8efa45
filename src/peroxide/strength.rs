use super::unit::StrengthUnit;
use crate::quantity::{
    ActiveOxygen, AmountConcentration, InvalidQuantity, MassConcentration, MassFraction, Molality, Normality,
    OxygenVolumes,
};

/// A quantity that states a strength of peroxide in one unit. Implemented by the eight strength types, nothing else.
pub trait StrengthQuantity: Copy + PartialOrd + sealed::Sealed {
    /// The unit it is counted in.
    const UNIT: StrengthUnit;

    /// The number in that unit.
    fn number(self) -> f64;

    /// The checked quantity for a number in that unit.
    ///
    /// # Errors
    ///
    /// [`InvalidQuantity`] when the number is not in the quantity's range.
    fn checked(number: f64) -> Result<Self, InvalidQuantity>;
}

mod sealed {
    pub trait Sealed {}
}

macro_rules! strengths {
    ($($type:ident: $unit:ident, $get:ident, $from:ident;)*) => {
        $(
            impl sealed::Sealed for $type {}

            impl StrengthQuantity for $type {
                const UNIT: StrengthUnit = StrengthUnit::$unit;

                #[inline]
                fn number(self) -> f64 {
                    self.$get()
                }

                #[inline]
                fn checked(number: f64) -> Result<Self, InvalidQuantity> {
                    Self::$from(number)
                }
            }

            impl From<$type> for Strength {
                fn from(quantity: $type) -> Self {
                    Self { number: quantity.$get(), unit: StrengthUnit::$unit }
                }
            }
        )*
    };
}

strengths! {
    MassFraction: PercentWw, percent_ww, from_percent_ww;
    MassConcentration: GPerL, g_per_l, from_g_per_l;
    AmountConcentration: MolPerL, mol_per_l, from_mol_per_l;
    Molality: MolPerKg, mol_per_kg, from_mol_per_kg;
    Normality: EqPerL, eq_per_l, from_eq_per_l;
    ActiveOxygen: PercentActiveOxygen, percent_ww, from_percent_ww;
    OxygenVolumes: Volumes, volumes, from_volumes;
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
    pub fn of(number: f64, unit: StrengthUnit) -> Result<Self, InvalidQuantity> {
        match unit {
            StrengthUnit::PercentWw => MassFraction::from_percent_ww(number).map(drop),
            StrengthUnit::PercentWv => MassConcentration::from_percent_wv(number).map(drop),
            StrengthUnit::GPerL => MassConcentration::from_g_per_l(number).map(drop),
            StrengthUnit::MolPerL => AmountConcentration::from_mol_per_l(number).map(drop),
            StrengthUnit::MolPerKg => Molality::from_mol_per_kg(number).map(drop),
            StrengthUnit::EqPerL => Normality::from_eq_per_l(number).map(drop),
            StrengthUnit::PercentActiveOxygen => ActiveOxygen::from_percent_ww(number).map(drop),
            StrengthUnit::Volumes => OxygenVolumes::from_volumes(number).map(drop),
        }?;
        Ok(Self { number, unit })
    }

    /// The number, in [`unit`](Self::unit).
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
        if self.unit == Q::UNIT { Q::checked(self.number).ok() } else { None }
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
