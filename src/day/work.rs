use crate::{choice::choice, quantity::Duration};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// Why one section comes before another.
    OrderRule: "rule of order" {
        /// The service says so.
        Stated = "stated" => "as the service says",
        /// Two formulas in one foil: the darkest is painted first, so that no lightener runs into it.
        DarkestFirst = "darkest-first" => "darkest first in one foil",
        /// What needs longest on the hair, slow or cool, is begun first.
        SlowestFirst = "slowest-first" => "slowest and coolest first",
        /// On virgin hair the warm roots go last.
        MidLengthsFirst = "mid-lengths-first" => "mid-lengths before roots on virgin hair",
        /// The outline is worked before crown and top.
        OutlineFirst = "outline-first" => "outline before crown",
        /// What shares a foil is painted and rinsed together.
        OneFoil = "one-foil" => "one foil, painted and rinsed together",
        /// No strand carries its mix longer than allowed.
        Longest = "longest" => "the longest time on the hair",
    }
}

choice! {
    /// What of a section must be over before another begins.
    #[derive(Default)]
    Until: "what must be over" {
        /// All of it is on.
        #[default]
        Applied = "applied",
        /// It is rinsed.
        Rinsed = "rinsed",
    }
}

choice! {
    /// How long an order is searched for.
    Effort: "effort" {
        /// A thousandth of a second or a few: enough to prove the order of a handful of sections.
        Quick = "quick",
        /// Up to about a second: mostly enough for twelve sections.
        Thorough = "thorough",
    }
}

/// A section as work on the clock.
///
/// # Example
///
/// ```
/// use foilwork::{day::SectionWork, quantity::Duration};
///
/// let minutes = |value| Duration::from_min(value);
/// let nape = SectionWork::new("nape", minutes(18.0)?, minutes(30.0)?, minutes(50.0)?);
/// assert_eq!((nape.bowls, nape.foils), (1, None));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionWork {
    /// Your name for it.
    pub name: String,
    /// How long one pair of hands puts it on, without mixing.
    #[serde(rename = "apply_min")]
    pub apply: Duration,
    /// How long its last strand develops at least.
    #[serde(rename = "develop_min")]
    pub develop: Duration,
    /// The longest that its first strand may carry the mix.
    #[serde(rename = "longest_min")]
    pub longest: Duration,
    /// Fresh bowls that it takes; the first is mixed before it begins, the others on the way.
    pub bowls: u32,
    /// How many foils it has, where it is worked in foils.
    pub foils: Option<u32>,
    /// Sections with the same number share their foils: they are painted one after the other and rinsed together.
    pub same_foil: Option<u32>,
}

impl SectionWork {
    /// A section of one bowl, not counted in foils.
    #[must_use]
    pub fn new(name: &str, apply: Duration, develop: Duration, longest: Duration) -> Self {
        Self { name: name.to_owned(), apply, develop, longest, bowls: 1, foils: None, same_foil: None }
    }
}

/// One section comes before another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Before {
    /// The place of the section that comes first, from 0.
    pub first: usize,
    /// The place of the one that waits, from 0.
    pub then: usize,
    /// What of the first must be over.
    pub until: Until,
    /// Why.
    pub rule: OrderRule,
}
