//! Strengths that the plan chose, and what makes sections finish together or keeps them from it.

use crate::{
    colour::{Level, LevelChange},
    quantity::{Duration, MassFraction},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// The strength that the plan chose for a section which left it out.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ChosenStrength {
    /// The section.
    pub section: String,
    /// The developer before mixing.
    #[serde(rename = "developer_ww_percent")]
    pub developer: Interval<MassFraction>,
    /// On the hair after mixing.
    #[serde(rename = "on_hair_ww_percent")]
    pub on_hair: Interval<MassFraction>,
    /// Why this one.
    pub why: String,
    /// What else the shelf has, weakest first, and why it was not taken.
    pub rejected: Vec<RejectedStrength>,
}

/// A strength that was not taken.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RejectedStrength {
    /// The developer before mixing.
    #[serde(rename = "developer_ww_percent")]
    pub developer: MassFraction,
    /// Why not.
    pub why: String,
}

/// Sections that are to be rinsed together. Times count from the first brush on the first of them.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TogetherPlan {
    /// In the order of the work; empty where no order of starts was found.
    pub sections: Vec<TogetherSection>,
    /// When all are rinsed.
    #[serde(rename = "rinse_min")]
    pub rinse: Option<Duration>,
    /// How far apart they may reach their targets.
    #[serde(rename = "window_asked_min")]
    pub window_asked: Duration,
    /// How far apart they do; absent where a target is not reached at all.
    #[serde(rename = "window_needed_min")]
    pub window_needed: Option<Duration>,
    /// By how much the section furthest behind falls short.
    #[serde(rename = "short_levels")]
    pub short: LevelChange,
    /// Why they do not finish together as asked, and what to do; absent where they do.
    pub why_not: Option<String>,
}

impl TogetherPlan {
    pub(super) fn none(window_asked: Duration, why: String) -> Self {
        let short = LevelChange::NONE;
        Self { sections: Vec::new(), rinse: None, window_asked, window_needed: None, short, why_not: Some(why) }
    }
}

/// One of them.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TogetherSection {
    /// Its name.
    pub section: String,
    /// When its application begins.
    #[serde(rename = "begin_min")]
    pub begin: Duration,
    /// When its middle strand is expected at the target (median); absent where the sections fall short.
    #[serde(rename = "reaches_min")]
    pub reaches: Option<Duration>,
    /// Level of the middle strand at the common rinse: median and 80 % interval.
    #[serde(rename = "at_rinse_level")]
    pub at_rinse: Interval<Level>,
}
