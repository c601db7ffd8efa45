use super::{Lightening, Situation};
use crate::{
    colour::Level,
    quantity::Duration,
    source::{Basis, Interval, TracedInput, TracedResult, citations::lift},
    text::traced,
};

/// How a level is forecast.
pub(crate) const LEVEL_FORMULA: &str =
    "level after the time by the lift law with the levers listed; median and 80 of 100 cases";

impl Lightening {
    /// How the level after a time comes about: start, mixture, time, and every lever with its bounds.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, lift::{Belief, Lightening, Situation}};
    /// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
    ///
    /// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
    /// let forecast = Lightening::new(&Belief::untested(), &mix, Level::new(4.0)?);
    /// let found = forecast.trail(Duration::from_min(40.0)?, 0);
    /// assert!(found.bounds.is_some() && found.inputs[0].value == "4");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self, time: Duration, strand_readings: usize) -> TracedResult {
        let mix: &Situation = &self.situation;
        let level = self.level_after(time).map(Level::number);
        let mut inputs = vec![
            TracedInput::new("level at the start", self.starts.map(Level::number), "level"),
            traced("strength on the hair", mix.on_hair),
            traced("temperature of the mix", Interval::exact(mix.temperature)),
            traced("time of the first strand", Interval::exact(time)),
            TracedInput::exact("strand readings", strand_readings, "readings"),
        ];
        let levers = mix.on_pigment().into_iter().chain(mix.on_oxidant());
        inputs.extend(levers.map(|one| TracedInput::new(format!("lever: {}", one.lever), one.times, "times")));
        let basis = if strand_readings > 0 { Basis::Measured } else { Basis::Assumed };
        TracedResult::new("level of the first strand", level, "level", LEVEL_FORMULA, basis)
            .made_of(inputs)
            .resting_on(&[lift::LIGHTENING_SERIES.id])
    }
}
