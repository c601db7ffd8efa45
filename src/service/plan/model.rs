//! The plan as data. Every field name carries its unit; every estimate is a [`Range`].

use super::{Finding, Step};
use crate::{
    money::{CostTable, Rounding, SetPrice, TaxedPrice},
    service::request::{DefaultUsed, Stage},
    source::{Basis, Interval},
    text::{number, span},
};
use serde::Serialize;

/// An estimate with its bounds, in the unit that the field is named after.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Range {
    /// Lower bound.
    pub low: f64,
    /// Best estimate.
    pub best: f64,
    /// Upper bound.
    pub high: f64,
}

impl Range {
    pub(super) fn of<Q: Copy + PartialOrd>(interval: &Interval<Q>, unit: impl Fn(Q) -> f64) -> Self {
        Self { low: unit(interval.low()), best: unit(interval.best()), high: unit(interval.high()) }
    }

    /// Whether the bounds coincide.
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.low == self.high
    }

    pub(crate) fn words(&self, decimals: usize) -> String {
        span(&Interval::ordered(self.low, self.best, self.high), |value| number(value, decimals))
    }
}

/// A service plan: what to weigh, in which order, what was checked, what it costs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Plan {
    /// Version of foilwork that made it.
    pub foilwork: &'static str,
    /// What the service is called.
    pub title: String,
    /// When it starts, as the file says.
    pub start: String,
    /// A code for the guest.
    pub guest: Option<String>,
    /// Who works.
    pub colourist: Option<String>,
    /// Whose law the limits are from.
    pub jurisdiction: Option<String>,
    /// Notes of the file.
    pub notes: Option<String>,
    /// The hair as stated.
    pub hair: Vec<Fact>,
    /// Checks, the gravest first.
    pub findings: Vec<Finding>,
    /// The running order.
    pub order: Vec<Step>,
    /// What each section needs of colour.
    pub colour: Vec<SectionColour>,
    /// How far sections that lie beside each other are apart.
    pub contrasts: Vec<Contrast>,
    /// What to mix.
    pub mixes: Vec<Mix>,
    /// What it costs and what to charge; absent without prices.
    pub money: Option<MoneyPlan>,
    /// Cautions for what is in the bowls.
    pub cautions: Vec<Caution>,
    /// Defaults that were used because the file did not say.
    pub defaults: Vec<DefaultUsed>,
    /// What a reader might look for and will not find, with the reason.
    pub not_computed: Vec<NotComputed>,
}

impl Plan {
    /// Whether any finding says stop.
    #[must_use]
    pub fn is_blocked(&self) -> bool {
        self.findings.iter().any(|finding| finding.verdict == super::Verdict::Stop)
    }
}

/// One stated fact.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Fact {
    /// What it is.
    pub name: String,
    /// Its value with the unit.
    pub value: String,
    /// Its ground.
    pub basis: Basis,
}

/// The colour side of one section.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SectionColour {
    /// The section.
    pub section: String,
    /// Lightener or shades.
    pub product: String,
    /// The developer, or the strength blended for it; absent where none is used.
    pub developer: Option<String>,
    /// Level now.
    pub from_level: f64,
    /// Level wanted.
    pub target_level: f64,
    /// Levels to lift (positive) or to deposit (negative).
    pub change_levels: f64,
    /// Tone wanted, in the words of the file.
    pub target_tone: Option<String>,
    /// Warm pigment that shows at the target level, in words; absent where nothing is lightened.
    pub exposed: Option<String>,
    /// The tone that neutralises it, in words.
    pub neutralised_by: Option<String>,
    /// Ground of the last two.
    pub basis: Basis,
    /// What the level rules of permanent colour expect; absent for every other product.
    pub level_rule: Option<LevelRule>,
    /// The hair at its target, modelled.
    pub swatch: Option<SwatchData>,
}

/// A modelled colour: D65, 10 degree observer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SwatchData {
    /// Nearest screen colour, `#rrggbb`.
    pub hex: String,
    /// L*, a*, b*: best estimate.
    pub lab: [f64; 3],
    /// Lowest and highest L*.
    pub l_bounds: (f64, f64),
    /// Lowest and highest a*.
    pub a_bounds: (f64, f64),
    /// Lowest and highest b*.
    pub b_bounds: (f64, f64),
    /// What it is not.
    pub remark: &'static str,
}

/// Two sections side by side, by the colour model.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Contrast {
    /// One section.
    pub first: String,
    /// The other.
    pub second: String,
    /// Their colour difference.
    pub ciede2000: f64,
    /// What to say about it.
    pub remark: Option<String>,
}

/// Level rules of permanent colour on natural hair: rules of thumb, a strand test decides.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LevelRule {
    /// Level of the shades as mixed.
    pub shade_level: f64,
    /// Level that white hair takes.
    pub white_level: f64,
    /// Level that pigmented hair takes: the mean of natural and shade.
    pub pigmented_level: f64,
    /// Shade level that would bring pigmented hair to the target, or why there is none.
    pub shade_for_target: String,
    /// Where the rules are printed.
    pub source: String,
}

/// What to mix for one section, toner or root shadow.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Mix {
    /// What it is for.
    pub name: String,
    /// Section, toner or root shadow.
    pub stage: Stage,
    /// Parts product to parts developer, additives apart; absent where no developer is used.
    pub ratio: Option<String>,
    /// How much is needed.
    pub needed_g: Range,
    /// Ground of that amount.
    pub needed_basis: Basis,
    /// Strength of the developer before mixing.
    pub developer_ww_percent: Range,
    /// Strength on the hair after mixing, as weighed.
    pub on_hair_ww_percent: Range,
    /// Ground of both strengths.
    pub strength_basis: Basis,
    /// The bowls, in the order in which they are mixed.
    pub bowls: Vec<Bowl>,
    /// Mixed but not expected to be used.
    pub leftover_g: f64,
}

/// One fresh bowl, or several alike.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Bowl {
    /// How many of these.
    pub count: usize,
    /// When each is mixed, in minutes of the running order.
    pub mix_at_min: Vec<f64>,
    /// How long each is used after mixing.
    pub use_within_min: f64,
    /// What goes in, in the order of weighing.
    pub parts: Vec<Part>,
    /// What the scale shows in the end.
    pub total_g: f64,
    /// The worst error of a part's share that rounding to the scale causes.
    pub worst_ratio_error_percent: f64,
    /// Strength on the hair of this bowl, as weighed.
    pub on_hair_ww_percent: Range,
}

/// One thing to weigh.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Part {
    /// Product by its name on the shelf.
    pub product: String,
    /// The exact mass.
    pub exact_g: f64,
    /// The mass to the scale's division.
    pub weigh_g: f64,
    /// What the scale shows once it is in, the bowl tared.
    pub scale_shows_g: f64,
    /// The peroxide it brings; 0 for everything but developers.
    pub peroxide_ww_percent: Range,
}

/// What it costs and what to charge. Amounts are exact decimal text.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MoneyPlan {
    /// The cost, line by line.
    pub cost: CostTable,
    /// What the cost leaves out because the file does not say.
    pub left_out: Vec<String>,
    /// The net price with margin and mark-up, where one of them is given.
    pub price: Option<SetPrice>,
    /// The same price with its tax, where a rate is given.
    pub taxed: Option<TaxedPrice>,
    /// How amounts are rounded.
    pub rounding: Rounding,
}

/// A caution and where it comes from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Caution {
    /// What to do or not to do.
    pub text: String,
    /// Its source.
    pub source: String,
}

/// Something that a reader might look for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct NotComputed {
    /// What.
    pub what: String,
    /// Why not, and what to do instead.
    pub why: String,
}
