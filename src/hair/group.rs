use super::{CrossSection, GrowthRate, HairDensity, spread};
use crate::{
    choice::choice,
    quantity::Quantity,
    source::{Basis, Interval, Sourced, citations::hair},
};

choice! {
    /// A group of people whose mean is published. People of one group differ more than the groups do: it moves the estimate
    /// a little, and a measurement replaces it.
    Group: "group" {
        /// African and African American adults of the studies.
        African = "african",
        /// Asian adults of the studies.
        Asian = "asian",
        /// Adults of European descent of the studies.
        European = "european",
    }
}

/// Variation of the density between people: 20 adults, one site.
pub(super) const DENSITY_VARIATION: f64 = 0.26;

/// Variation of the cross-section between people, without one very fine-haired of thirteen; with that one 0.305.
const SECTION_VARIATION: f64 = 0.22;

/// What each study found: density and its standard deviation, cross-section, long over short axis, growth and its
/// standard deviation.
struct Found {
    density: f64,
    section: f64,
    ellipticity: f64,
    growth_um_per_day: (f64, f64),
}

impl Group {
    const fn found(self) -> Found {
        match self {
            Self::African => {
                Found { density: 161.0, section: 4210.0, ellipticity: 1.66, growth_um_per_day: (280.0, 50.0) }
            }
            Self::Asian => {
                Found { density: 175.0, section: 5063.0, ellipticity: 1.29, growth_um_per_day: (411.0, 53.0) }
            }
            Self::European => {
                Found { density: 226.0, section: 4079.0, ellipticity: 1.41, growth_um_per_day: (367.0, 56.0) }
            }
        }
    }
}

/// Mean density of the group, or of all adults measured at one site.
pub(super) fn mean_density(group: Option<Group>) -> Sourced<HairDensity> {
    match group {
        Some(group) => Sourced::published(HairDensity::nearest(group.found().density), &hair::DENSITY_BY_GROUP),
        None => Sourced::published(HairDensity::nearest(211.0), &hair::DENSITY_OF_PEOPLE),
    }
}

/// Cross-section of the group, or of all people measured; how much people of one group differ is taken from the latter.
pub(super) fn cross_section(group: Option<Group>) -> Sourced<Interval<CrossSection>> {
    let (mean, citation) = match group {
        Some(group) => (group.found().section, &hair::SECTION_BY_GROUP),
        None => (4216.0, &hair::SECTION_OF_PEOPLE),
    };
    Sourced::published(spread::varying(CrossSection::nearest(mean), SECTION_VARIATION), citation)
}

/// The long axis over the short one.
pub(super) fn ellipticity(group: Option<Group>) -> Interval<f64> {
    let of = |group: Group| group.found().ellipticity;
    group.map_or(Interval::ordered(1.29, of(Group::European), 1.66), |group| Interval::exact(of(group)))
}

/// Growth; without a group the bounds of all three.
pub(super) fn growth(group: Option<Group>) -> Sourced<Interval<GrowthRate>> {
    let rate = |um: f64| GrowthRate::nearest(um * 1e-4 * super::quantities::DAYS_OF_MONTH);
    let of = |group: Group| {
        let (mean, sd) = group.found().growth_um_per_day;
        Interval::ordered(mean - spread::BOUND * sd, mean, mean + spread::BOUND * sd).map(rate)
    };
    match group {
        Some(group) => Sourced::published(of(group), &hair::GROWTH_BY_GROUP),
        None => {
            let all = Interval::exact(rate(370.0)).widened_to(of(Group::African)).widened_to(of(Group::Asian));
            Sourced { value: all, basis: Basis::Published, citation: Some(&hair::GROWTH_REVIEW) }
        }
    }
}
