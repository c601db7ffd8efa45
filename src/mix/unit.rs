use super::decimal;
use crate::{
    choice::choice,
    quantity::{Density, InvalidQuantity, Mass, Volume},
    source::Sourced,
};
use rust_decimal::{Decimal, RoundingStrategy};
use std::fmt;

choice! {
    /// A unit on a scale, a beaker or a measuring cup.
    Unit: "unit" {
        /// Gram.
        Gram = "g",
        /// Millilitre.
        Millilitre = "ml" => "mL",
        /// United States fluid ounce, 29.573 529 562 5 mL exactly: 1/128 of a gallon of 231 cubic inches.
        UsFluidOunce = "us-fl-oz" => "US fl oz",
        /// United Kingdom fluid ounce, 28.413 062 5 mL exactly: 1/160 of a gallon of 4.546 09 L.
        UkFluidOunce = "uk-fl-oz" => "UK fl oz",
    }
}

impl Unit {
    /// Millilitres in one unit, exact; none for the gram.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::Unit;
    ///
    /// assert_eq!(Unit::UkFluidOunce.ml().unwrap().to_string(), "28.4130625");
    /// assert_eq!(Unit::Gram.ml(), None);
    /// ```
    ///
    /// # Source
    ///
    /// [NIST Handbook 44](crate::source::citations::mix::NIST_HANDBOOK_44_C), Appendix C (US fluid ounce; the inch is 2.54 cm); [Weights and
    /// Measures Act 1985](crate::source::citations::mix::UK_WEIGHTS_AND_MEASURES_ACT_1985), Schedule 1 (UK gallon of 4.546 09 cubic decimetres). Both from memory; the tests compare with the `pint` unit registry.
    #[must_use]
    pub fn ml(self) -> Option<Decimal> {
        match self {
            Self::Gram => None,
            Self::Millilitre => Some(Decimal::ONE),
            Self::UsFluidOunce => Some(Decimal::new(295_735_295_625, 10)),
            Self::UkFluidOunce => Some(Decimal::new(284_130_625, 7)),
        }
    }
}

/// An exact number of a unit: `67.5 g`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RecipeAmount {
    /// How many.
    pub value: Decimal,
    /// Of what.
    pub unit: Unit,
}

/// An amount that cannot be turned into another unit.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ConvertAmountError {
    /// Between mass and volume stands a density.
    #[error("cannot turn {from} into {to} without a density: state it in g/mL, or weigh instead")]
    NeedsDensity {
        /// The amount.
        from: RecipeAmount,
        /// The unit asked for.
        to: Unit,
    },
    /// More digits than a decimal holds.
    #[error("the numbers are too large or too fine for 28 digits: use fewer digits")]
    OutOfRange,
    /// The result is no mass or volume.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}

/// An amount in another unit, with the density that was used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Converted {
    /// What was converted.
    pub from: RecipeAmount,
    /// The amount in the unit asked for.
    pub amount: RecipeAmount,
    /// The density between mass and volume, with its basis; none when none was needed.
    pub density: Option<Sourced<Density>>,
}

impl fmt::Display for Converted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match f.precision() {
            Some(digits) => write!(f, "{} = {:.digits$}", self.from, self.amount)?,
            None => write!(f, "{} = {}", self.from, self.amount)?,
        }
        match self.density {
            Some(density) => write!(f, " at {} ({})", density.value, density.basis),
            None => Ok(()),
        }
    }
}

impl RecipeAmount {
    /// An amount in grams; nothing when the mass has more digits than a decimal holds.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::RecipeAmount, quantity::Mass};
    ///
    /// assert_eq!(RecipeAmount::of_mass(Mass::from_g(67.5)?).unwrap().to_string(), "67.5 g");
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn of_mass(mass: Mass) -> Option<Self> {
        decimal::from_f64(mass.g()).map(|value| Self { value, unit: Unit::Gram })
    }

    /// An amount in millilitres; nothing when the volume has more digits than a decimal holds.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::RecipeAmount, quantity::Volume};
    ///
    /// assert_eq!(RecipeAmount::of_volume(Volume::from_ml(50.0)?).unwrap().to_string(), "50 mL");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn of_volume(volume: Volume) -> Option<Self> {
        decimal::from_f64(volume.ml()).map(|value| Self { value, unit: Unit::Millilitre })
    }

    /// The same amount in another unit. Between mass and volume a density is needed, and is named in the answer.
    ///
    /// # Units
    ///
    /// Density in g/mL at the temperature of the product; volumes of water-like products change by about 0.03 % per
    /// kelvin, which no salon scale shows.
    ///
    /// # Errors
    ///
    /// [`ConvertAmountError::NeedsDensity`] between mass and volume without one.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::mix::{RecipeAmount, Unit};
    ///
    /// let ounces = RecipeAmount { value: 2.into(), unit: Unit::UsFluidOunce };
    /// assert_eq!(ounces.convert(Unit::Millilitre, None)?.to_string(), "2 US fl oz = 59.147059125 mL");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn convert(self, to: Unit, density: Option<Sourced<Density>>) -> Result<Converted, ConvertAmountError> {
        let needed = self.unit.ml().is_some() != to.ml().is_some();
        let used =
            if needed { Some(density.ok_or(ConvertAmountError::NeedsDensity { from: self, to })?) } else { None };
        let per_ml = match used {
            Some(density) => decimal::from_f64(density.value.g_per_ml()).ok_or(ConvertAmountError::OutOfRange)?,
            None => Decimal::ONE,
        };
        let (from_ml, to_ml) = (self.unit.ml(), to.ml());
        let value = match (from_ml, to_ml) {
            _ if self.unit == to => Some(self.value),
            (Some(from), Some(to)) => self.value.checked_mul(from).and_then(|ml| ml.checked_div(to)),
            (Some(from), None) => self.value.checked_mul(from).and_then(|ml| ml.checked_mul(per_ml)),
            (None, Some(to)) => self.value.checked_div(per_ml).and_then(|ml| ml.checked_div(to)),
            (None, None) => Some(self.value),
        };
        let value = value.ok_or(ConvertAmountError::OutOfRange)?.normalize();
        Ok(Converted { from: self, amount: Self { value, unit: to }, density: used })
    }

    /// The amount as a mass, through a density when it is a volume.
    ///
    /// # Errors
    ///
    /// [`ConvertAmountError`] for a volume without a density, or a number that is no mass.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{mix::{RecipeAmount, Unit}, quantity::Density, source::Sourced};
    ///
    /// let amount = RecipeAmount { value: 100.into(), unit: Unit::Millilitre };
    /// let density = Density::from_g_per_ml(1.02).map(Sourced::stated)?;
    /// assert_eq!(amount.mass(Some(density))?.g(), 102.0);
    /// assert!(amount.mass(None).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn mass(self, density: Option<Sourced<Density>>) -> Result<Mass, ConvertAmountError> {
        Ok(Mass::from_g(decimal::to_f64(self.convert(Unit::Gram, density)?.amount.value))?)
    }
}

fn rounded(value: Decimal, digits: usize) -> Decimal {
    let digits = u32::try_from(digits).unwrap_or(u32::MAX);
    value.round_dp_with_strategy(digits, RoundingStrategy::MidpointNearestEven)
}

impl fmt::Display for RecipeAmount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match f.precision() {
            // The decimal's own formatting cuts digits off instead of rounding them.
            Some(digits) => write!(f, "{:.digits$} {}", rounded(self.value, digits), self.unit),
            None => write!(f, "{} {}", self.value, self.unit),
        }
    }
}
