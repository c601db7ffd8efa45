use super::{Party, PastPlace, PastWork, Zone};
use crate::finding::Rule;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What was asked and said before anything is mixed.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ConsultationEntry {
    /// The day from which every service on this hair stands in `past`; what was before it is unknown.
    #[schemars(extend("x-parse" = "moment"))]
    pub known_since: Option<String>,
    /// Earlier services, as far as they are known.
    #[serde(default)]
    #[schemars(length(max = 200))]
    pub past: Vec<PastEntry>,
    /// What the guest wants, zone by zone.
    #[serde(default)]
    #[schemars(length(max = 20))]
    pub wish: Vec<WishEntry>,
    /// Who has agreed to what is out of the ordinary, and when.
    #[serde(default)]
    #[schemars(length(max = 20))]
    pub agreed: Vec<AgreedEntry>,
}

/// An earlier service.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PastEntry {
    /// The day; left out where nobody knows it.
    #[schemars(extend("x-parse" = "moment"))]
    pub on: Option<String>,
    /// What was done.
    pub what: PastWork,
    /// The formula in words, as it was weighed; left out where nobody knows it.
    #[schemars(length(min = 1, max = 300))]
    pub formula: Option<String>,
    /// Where along the strand; the whole of it where it is not said.
    pub zone: Option<Zone>,
    /// Where it was done.
    pub place: Option<PastPlace>,
}

/// What the guest wants of a zone.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WishEntry {
    /// The zone.
    pub zone: Zone,
    /// The level wanted.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub level: f64,
    /// The tone wanted, in words.
    #[schemars(length(min = 1, max = 100))]
    pub tone: Option<String>,
    /// How far from the level the guest is still content, either way.
    #[schemars(range(min = 0.1, max = 3.0), extend("x-unit" = "levels"))]
    pub tolerance_levels: Option<f64>,
    /// What the guest dislikes there now, in words.
    #[schemars(length(min = 1, max = 200))]
    pub dislikes: Option<String>,
}

/// Somebody's agreement.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AgreedEntry {
    /// Who.
    pub who: Party,
    /// The day.
    #[schemars(extend("x-parse" = "moment"))]
    pub on: String,
    /// To what, in words.
    #[schemars(length(min = 1, max = 200))]
    pub to: Option<String>,
    /// To the findings of which rules; where none is named it settles nothing, and is only noted.
    #[serde(default)]
    #[schemars(length(max = 60))]
    pub rules: Vec<Rule>,
}
