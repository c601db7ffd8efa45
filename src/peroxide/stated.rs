use super::{
    conditions::Conditions,
    convert::{ConversionError, convert_interval_to},
    label::read_label,
    strength::Strength,
    unit::{ParseUnitError, StrengthUnit},
};
use crate::{
    quantity::{InvalidQuantity, MassConcentration, MassFraction, OxygenVolumes, Temperature, TradeLabel},
    source::Interval,
};

/// How a bottle states its strength.
///
/// Nothing here is a mass fraction until it is asked to be one: a w/v figure and oxygen volumes need a density, and a
/// trade label has to be read first.
///
/// `Display` and `FromStr` use the same text: `6 % w/w`, `6 % w/v`, `19.8 volumes`, `20 vol label`. A label is read as
/// bottles print it, `20 vol`, `20 vol.`, `20V` or `20 volume`; the plural `20 volumes` is the measured unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StatedStrength {
    /// Percent by mass.
    Ww(MassFraction),
    /// Mass by volume.
    Wv(MassConcentration),
    /// Measured oxygen volumes, as an ideal gas at 0 C and 1 atm.
    OxygenVolumes(OxygenVolumes),
    /// The volume number of the trade.
    TradeLabel(TradeLabel),
}

impl StatedStrength {
    /// The mass fraction of a clear solution at a temperature, with its bounds.
    ///
    /// A w/w figure is taken as it is, without bounds; a trade label spans all its readings.
    ///
    /// # Errors
    ///
    /// [`ConversionError`] when a density is needed outside 0 to 50 C or above 70 % w/w.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::StatedStrength, quantity::Temperature};
    ///
    /// let bottle: StatedStrength = "40 vol label".parse()?;
    /// let strength = bottle.mass_fraction(Temperature::REFERENCE)?;
    /// assert_eq!(format!("{:.1} to {:.1}", strength.low(), strength.high()), "11.5 % w/w to 12.0 % w/w");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn mass_fraction(&self, temperature: Temperature) -> Result<Interval<MassFraction>, ConversionError> {
        self.mass_fraction_under(&Conditions::at(temperature))
    }

    /// The mass fraction under stated conditions: another molar volume, an emulsion, or a measured density.
    ///
    /// # Errors
    ///
    /// [`ConversionError`] when a density is needed and unknown.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::{Conditions, SolutionDensity, StatedStrength}, quantity::Density};
    ///
    /// // 6 g in 100 mL of a cream that weighs 100 g.
    /// let measured = SolutionDensity::measured(Density::from_g_per_ml(1.0)?);
    /// let bottle: StatedStrength = "6 % w/v".parse()?;
    /// let strength = bottle.mass_fraction_under(&Conditions::default().with_density(measured))?;
    /// assert_eq!(format!("{:.3}", strength.best()), "6.000 % w/w");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn mass_fraction_under(&self, conditions: &Conditions) -> Result<Interval<MassFraction>, ConversionError> {
        match *self {
            Self::Ww(strength) => Ok(Interval::exact(strength)),
            Self::Wv(strength) => convert_interval_to(strength, conditions),
            Self::OxygenVolumes(strength) => convert_interval_to(strength, conditions),
            Self::TradeLabel(label) => Ok(read_label(label, conditions)?.spread()),
        }
    }
}

impl std::fmt::Display for StatedStrength {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Ww(strength) => strength.fmt(f),
            Self::Wv(strength) => match f.precision() {
                Some(digits) => write!(f, "{:.digits$} % w/v", strength.wv_percent()),
                None => write!(f, "{} % w/v", strength.wv_percent()),
            },
            Self::OxygenVolumes(strength) => strength.fmt(f),
            Self::TradeLabel(label) => label.fmt(f),
        }
    }
}

/// A text that states no strength.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ParseStrengthError {
    /// No number at the front.
    #[error(
        "no strength in {text:?}: write a number with its unit, for example 6 % w/w, 6 % w/v, 19.8 volumes or 20 vol label"
    )]
    NoNumber {
        /// The text that was given.
        text: String,
    },
    /// A number alone.
    #[error(
        "the strength {number} has no unit: write {number} % w/w, {number} % w/v, {number} volumes or {number} vol label"
    )]
    NoUnit {
        /// The number that was given.
        number: f64,
    },
    /// A unit that is not one.
    #[error(transparent)]
    Unit(#[from] ParseUnitError),
    /// A unit that a bottle does not state.
    #[error(
        "a bottle states its strength in % w/w, % w/v, g/L, volumes or as a vol label (got {unit}): convert it first"
    )]
    NotOnABottle {
        /// The unit that was given.
        unit: StrengthUnit,
    },
    /// `%` alone: of what?
    #[error(
        "{number} % hides its basis: write {number} % w/w (g in 100 g), {number} % w/v (g in 100 mL){}",
        .label.map(|vol| format!(", or {vol} vol for the label of the trade")).unwrap_or_default()
    )]
    BarePercent {
        /// The number that was given.
        number: f64,
        /// The label that the trade pairs with it, where there is one.
        label: Option<f64>,
    },
    /// A comma in the number.
    #[error("cannot read {text:?}: write the number with a point, {with_point}")]
    Comma {
        /// The text that was given.
        text: String,
        /// The same with a point.
        with_point: String,
    },
    /// A number out of range.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}

/// Splits `6 % w/w` into the number and the rest.
fn split(text: &str) -> Result<(f64, &str), ParseStrengthError> {
    let text = text.trim();
    let end = text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-' | '+'))).unwrap_or(text.len());
    let (number, unit) = text.split_at_checked(end).unwrap_or((text, ""));
    if unit.strip_prefix(',').is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit())) {
        return Err(ParseStrengthError::Comma { text: text.to_owned(), with_point: text.replacen(',', ".", 1) });
    }
    match number.parse() {
        Ok(number) if matches!(unit.trim(), "%" | "percent") => {
            let number: f64 = number;
            let vol = f64::round(number * 100.0 / 3.0) / 10.0;
            let label =
                TradeLabel::from_vol(vol).ok().filter(|label: &TradeLabel| (label.percent() - number).abs() < 1e-9);
            Err(ParseStrengthError::BarePercent { number, label: label.map(TradeLabel::vol) })
        }
        Ok(number) if unit.trim().is_empty() => Err(ParseStrengthError::NoUnit { number }),
        Ok(number) => Ok((number, unit.trim())),
        Err(_) => Err(ParseStrengthError::NoNumber { text: text.to_owned() }),
    }
}

impl std::str::FromStr for Strength {
    type Err = ParseStrengthError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let (number, unit) = split(text)?;
        Ok(Self::of(number, unit.parse()?)?)
    }
}

impl std::str::FromStr for StatedStrength {
    type Err = ParseStrengthError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let (number, unit) = split(text)?;
        let unit_words = unit.to_ascii_lowercase();
        let unit_words = unit_words.trim_start_matches('-').trim_end_matches("label").trim_end();
        if matches!(unit_words, "vol" | "vol." | "v" | "volume") {
            return Ok(Self::TradeLabel(TradeLabel::from_vol(number)?));
        }
        match unit.parse()? {
            StrengthUnit::WwPercent => Ok(Self::Ww(MassFraction::from_ww_percent(number)?)),
            StrengthUnit::WvPercent => Ok(Self::Wv(MassConcentration::from_wv_percent(number)?)),
            StrengthUnit::GPerL => Ok(Self::Wv(MassConcentration::from_g_per_l(number)?)),
            StrengthUnit::Volumes => Ok(Self::OxygenVolumes(OxygenVolumes::from_volumes(number)?)),
            unit => Err(ParseStrengthError::NotOnABottle { unit }),
        }
    }
}
