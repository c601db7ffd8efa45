use super::TonerAnswer;
use crate::{
    colour::Swatch,
    quantity::Quantity,
    source::{Basis, Interval, TracedInput, TracedResult, citations::colour},
    text::traced,
};

const RESIDUAL_FORMULA: &str = "CIEDE2000 between the predicted and the wanted colour";
const SHADE_FORMULA: &str = "of all whole weights of the shades, those predicted nearest by CIEDE2000; of mixes that the model cannot tell from it, \
                             against warmth the nearest with its complement";

impl TonerAnswer {
    /// How the best mix comes about: the grams of each shade, and how far from the wanted colour they are predicted to stay, with what the model
    /// may be off by as its bounds.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{
    ///     colour::{Level, Shade, Tone}, quantity::Mass,
    ///     toner::{Exposed, Target, TonerRequest, find_toner},
    /// };
    ///
    /// let (level, lifted) = (Level::new(6.0)?, Level::new(8.0)?);
    /// let shade = Shade::new("J6-plain", level, Tone::neutral())?;
    /// let answer = find_toner(&TonerRequest {
    ///     exposed: Exposed::lightened(Level::new(3.0)?, lifted),
    ///     target: Target::Look { level, tone: Tone::neutral() },
    ///     shades: vec![&shade],
    ///     most_shades: 1,
    ///     bowl: Mass::from_g(30.0)?,
    ///     division: Mass::from_g(1.0)?,
    /// })?;
    /// let trail = answer.trail();
    /// assert_eq!((trail[0].what.as_str(), trail[0].value.as_str()), ("J6-plain, to weigh", "30"));
    /// assert_eq!(trail[1].sources, ["sharma-wu-dalal-2005"]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> Vec<TracedResult> {
        let (best, citation) = (&self.best, colour::CIEDE2000_PAPER.id);
        let colours = || [looks("predicted", &best.predicted), looks("wanted", &self.target)].into_iter().flatten();
        // What hair takes up is assumed.
        let basis = best.predicted.basis().weaker(Basis::Assumed);
        let grams = best.parts.iter().map(|part| {
            let (what, mass) = (format!("{}, to weigh", part.code), Interval::exact(part.mass.g()));
            TracedResult::new(what, mass, "g", SHADE_FORMULA, basis)
                .made_of([traced("share of the shades", Interval::exact(part.share))].into_iter().chain(colours()))
                .resting_on(&[citation])
        });
        let (left, error) = (best.residual.ciede2000, best.predicted.uncertainty());
        let allowance = TracedInput::exact("how far off the model may be", error, "CIEDE2000");
        let left = Interval::ordered((left - error).max(0.0), left, left + error);
        let left = TracedResult::new("left to the wanted colour", left, "CIEDE2000", RESIDUAL_FORMULA, basis)
            .made_of(colours().chain([allowance]))
            .resting_on(&[citation]);
        grams.chain([left]).collect()
    }
}

fn looks(which: &str, swatch: &Swatch) -> [TracedInput; 3] {
    [
        input(format!("L* {which}"), swatch.lightness()),
        input(format!("a* {which}"), swatch.redness()),
        input(format!("b* {which}"), swatch.yellowness()),
    ]
}

fn input<Q: Quantity>(what: String, value: Interval<Q>) -> TracedInput {
    traced(what, value)
}
