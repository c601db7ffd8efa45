use super::{
    conditions::Conditions,
    convert::{ConversionError, convert_interval, convert_to, mass_fraction_interval},
    strength::Strength,
    unit::StrengthUnit,
};
use crate::{
    quantity::{MassConcentration, MassFraction, OxygenVolumes, TradeLabel},
    source::{Interval, InvalidInterval},
};

/// What a trade label can mean: three readings that do not agree.
///
/// The label says neither how its percent is counted nor whether the oxygen was measured. [`read_label`] gives every
/// reading; [`spread`](Self::spread) is the strength a careful user works with until the bottle is assayed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LabelReadings {
    /// The label.
    pub label: TradeLabel,
    /// Its percent read as % w/w.
    pub as_ww: MassFraction,
    /// Its percent read as % w/v, put into % w/w.
    pub as_wv: Interval<MassFraction>,
    /// Its number read as true oxygen volumes, put into % w/w.
    pub as_volumes: Interval<MassFraction>,
    /// The oxygen volumes that the w/w reading really gives.
    pub volumes_if_ww: Interval<Strength>,
    /// The oxygen volumes that the w/v reading really gives.
    pub volumes_if_wv: OxygenVolumes,
}

/// Reads a trade label every way it can be read.
///
/// # Errors
///
/// [`ConversionError`] when the temperature is outside that of the known densities.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{Conditions, read_label}, quantity::TradeLabel};
///
/// let readings = read_label(TradeLabel::Vol40, &Conditions::default())?;
/// assert_eq!(format!("{:.1}", readings.volumes_if_ww.best()), "41.2 volumes");
/// assert_eq!(format!("{:.1}", readings.volumes_if_wv), "39.5 volumes");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The pairing of 10/20/30/40 vol with 3/6/9/12 percent is common practice of the trade; the rest is arithmetic.
pub fn read_label(label: TradeLabel, conditions: &Conditions) -> Result<LabelReadings, ConversionError> {
    let as_ww = MassFraction::from_percent_ww(f64::from(label.percent()))?;
    let wv = MassConcentration::from_percent_wv(f64::from(label.percent()))?;
    let volumes = OxygenVolumes::from_volumes(f64::from(label.vol()))?;
    Ok(LabelReadings {
        label,
        as_ww,
        as_wv: mass_fraction_interval(wv.into(), conditions)?,
        as_volumes: mass_fraction_interval(volumes.into(), conditions)?,
        volumes_if_ww: convert_interval(as_ww.into(), StrengthUnit::Volumes, conditions)?,
        volumes_if_wv: convert_to(wv, conditions)?,
    })
}

impl LabelReadings {
    /// The span from the w/v reading to the w/w reading, with the w/w reading as the estimate.
    ///
    /// Under an assumed emulsion density the w/v reading can be the stronger one; the span then reaches that far.
    ///
    /// # Errors
    ///
    /// [`InvalidInterval`] never with readings made by [`read_label`].
    pub fn spread(&self) -> Result<Interval<MassFraction>, InvalidInterval> {
        let low = if self.as_wv.low() < self.as_ww { self.as_wv.low() } else { self.as_ww };
        let high = if self.as_wv.high() > self.as_ww { self.as_wv.high() } else { self.as_ww };
        Interval::new(low, self.as_ww, high)
    }
}
