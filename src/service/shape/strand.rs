use crate::{
    lift::{Cover, Reader},
    reader::one_of,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A strand of this guest that was tested with a lightener of the shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("allOf" = [one_of(&["developer", "strength"])]))]
pub struct Strand {
    /// The lightener of the shop.
    pub product: String,
    /// A developer of the shop, used as it is. Give this or `strength`.
    pub developer: Option<String>,
    /// The strength before mixing. Give this or `developer`.
    #[schemars(extend("x-parse" = "strength"))]
    pub strength: Option<String>,
    /// Parts lightener to parts developer, where it differs from the lightener's own ratio.
    #[schemars(extend("x-parse" = "ratio"))]
    pub ratio: Option<String>,
    /// How long the mix lay on the strand.
    #[schemars(range(min = 1.0, max = 180.0), extend("x-unit" = "min"))]
    pub time_min: f64,
    /// Temperature of the mix on the strand; the room's where it is not said.
    #[schemars(range(min = 5.0, max = 60.0), extend("x-unit" = "C"))]
    pub temperature_c: Option<f64>,
    /// What lay over the mix; foil where it is not said.
    pub cover: Option<Cover>,
    /// The level before, as read.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub before_level: f64,
    /// The level after, as read.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub after_level: f64,
    /// How the levels were read.
    pub reader: Reader,
}

/// How sections finish together whose developer is left to the plan.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// How far apart the sections may reach their targets before the common rinse.
    #[schemars(range(min = 0.0, max = 60.0), extend("x-unit" = "min"))]
    pub within_min: Option<f64>,
    /// How far a target may be overshot.
    #[schemars(range(min = 0.0, max = 3.0), extend("x-unit" = "levels"))]
    pub tolerance_levels: Option<f64>,
}
