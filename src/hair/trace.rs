use super::{GrowthRate, HairCount, HeadOfHair, Weeks, grown};
use crate::{
    quantity::{Area, Length, Mass, Quantity, Share},
    source::{Citation, Interval, Sourced, TracedInput, TracedResult},
    text::traced,
};

const HAIRS_FORMULA: &str = "hair-bearing scalp x density x share";
const MASS_FORMULA: &str = "mass by length x share x length";
const SURFACE_FORMULA: &str = "hairs x circumference x length";
const GROWTH_FORMULA: &str = "weeks x 7 / 30.4375 x rate";

impl HeadOfHair {
    /// How hairs, grams and surface of a share of the head come about. Products of estimates are those of independent factors,
    /// in logarithms.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{hair::HairFacts, quantity::{Length, Share}};
    ///
    /// let trail = HairFacts::default().head().trail(Share::ALL, Length::from_cm(20.0)?);
    /// let named: Vec<&str> = trail.iter().map(|result| result.what.as_str()).collect();
    /// assert_eq!(named, ["hairs", "mass of the hair", "surface of the hair"]);
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn trail(&self, share: Share, length: Length) -> Vec<TracedResult> {
        let tress = self.part(share);
        let (of, long) = (traced("share", Interval::exact(share)), traced("length", Interval::exact(length)));
        let basis = self.scalp.basis.weaker(self.density.basis);
        let thick = basis.weaker(self.cross_section.basis);
        let ids =
            |citations: [Option<&Citation>; 2]| citations.into_iter().flatten().map(|one| one.id).collect::<Vec<_>>();
        let hairs =
            TracedResult::new("hairs", tress.hairs.map(HairCount::hairs), HairCount::UNIT, HAIRS_FORMULA, basis)
                .made_of([fact("hair-bearing scalp", self.scalp), fact("density", self.density), of.clone()])
                .resting_on(&ids([self.scalp.citation, self.density.citation]));
        let mass = tress.mass(length.into()).map(Mass::g);
        let mass = TracedResult::new("mass of the hair", mass, Mass::UNIT, MASS_FORMULA, self.mass_per_length.basis)
            .made_of([fact("mass by length", self.mass_per_length), of, long.clone()])
            .resting_on(&ids([self.mass_per_length.citation, None]));
        let surface = tress.surface(length.into()).map(Area::cm2);
        let surface = TracedResult::new("surface of the hair", surface, Area::UNIT, SURFACE_FORMULA, thick)
            .made_of([traced("hairs", tress.hairs), traced("circumference", tress.circumference), long])
            .resting_on(&ids([self.cross_section.citation, None]));
        vec![hairs, mass, surface]
    }
}

fn fact<Q: Quantity>(what: &str, from: Sourced<Interval<Q>>) -> TracedInput {
    traced(what, from.value).resting(from.basis)
}

/// How the length that grew comes about.
///
/// # Example
///
/// ```
/// use foilwork::hair::{Weeks, growth, trace_growth};
///
/// let found = trace_growth(Weeks::from_weeks(8.0)?, growth(None));
/// assert_eq!((found.what.as_str(), found.unit.as_str()), ("grown", "cm"));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn trace_growth(weeks: Weeks, rate: Sourced<Interval<GrowthRate>>) -> TracedResult {
    let value = grown(weeks.into(), rate.value).map(Length::cm);
    let sources: Vec<&str> = rate.citation.iter().map(|citation| citation.id).collect();
    TracedResult::new("grown", value, Length::UNIT, GROWTH_FORMULA, rate.basis)
        .made_of([traced("weeks", Interval::exact(weeks)), fact("rate, in a month of 30.4375 days", rate)])
        .resting_on(&sources)
}
