use super::{
    conditions::Conditions,
    convert::{ConversionError, convert_interval_to, convert_to},
};
use crate::{
    quantity::{MassConcentration, MassFraction, OxygenVolumes, TradeLabel},
    source::Interval,
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
    pub volumes_if_ww: Interval<OxygenVolumes>,
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
/// let readings = read_label(TradeLabel::VOL_40, &Conditions::default())?;
/// assert_eq!(format!("{:.1}", readings.volumes_if_ww.best()), "41.2 volumes");
/// assert_eq!(format!("{:.1}", readings.volumes_if_wv), "39.5 volumes");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The pairing of N vol with 0.3 N percent (10/20/30/40 with 3/6/9/12) is common practice of the trade; the rest is arithmetic.
pub fn read_label(label: TradeLabel, conditions: &Conditions) -> Result<LabelReadings, ConversionError> {
    let as_ww = MassFraction::from_ww_percent(label.percent())?;
    let wv = MassConcentration::from_wv_percent(label.percent())?;
    let volumes = OxygenVolumes::from_volumes(label.vol())?;
    Ok(LabelReadings {
        label,
        as_ww,
        as_wv: convert_interval_to(wv, conditions)?,
        as_volumes: convert_interval_to(volumes, conditions)?,
        volumes_if_ww: convert_interval_to(as_ww, conditions)?,
        volumes_if_wv: convert_to(wv, conditions)?,
    })
}

impl LabelReadings {
    /// The span of all three readings, with the w/w reading as the estimate.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::{Conditions, read_label}, quantity::TradeLabel};
    ///
    /// let span = read_label(TradeLabel::VOL_10, &Conditions::default())?.spread();
    /// assert_eq!(format!("{:.2} to {:.2}", span.low(), span.high()), "2.97 % w/w to 3.01 % w/w");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn spread(&self) -> Interval<MassFraction> {
        Interval::exact(self.as_ww).widened_to(self.as_wv).widened_to(self.as_volumes)
    }
}
