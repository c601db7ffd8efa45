use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What things cost and what to charge. Amounts are decimal text in quotes so that they stay exact.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Prices {
    /// ISO 4217 code of the currency of every price in this file.
    #[schemars(extend("x-parse" = "currency"))]
    pub currency: String,
    /// What is paid for an hour of work, before on-costs.
    #[schemars(extend("x-parse" = "amount"))]
    pub wage_per_hour: Option<String>,
    /// On-costs on top of the wage.
    #[schemars(range(min = 0.0, max = 300.0), extend("x-unit" = "%"))]
    pub on_cost_percent: Option<f64>,
    /// Share of the paid hours that guests are worked on.
    #[schemars(range(min = 1.0, max = 100.0), extend("x-unit" = "%"))]
    pub productive_percent: Option<f64>,
    /// Overhead for a productive hour of one chair.
    #[schemars(extend("x-parse" = "amount"))]
    pub overhead_per_hour: Option<String>,
    /// Minutes of work besides applying and developing: consultation, rinsing, drying.
    #[schemars(range(min = 0.0, max = 600.0), extend("x-unit" = "min"))]
    pub other_work_min: Option<f64>,
    /// Foils, gloves, film and the like.
    #[serde(default)]
    pub consumable: Vec<Consumable>,
    /// Margin wanted, as a share of the net price. Give this or `markup_percent`.
    #[schemars(range(min = 0.0, max = 99.0), extend("x-unit" = "%"))]
    pub margin_percent: Option<f64>,
    /// Mark-up wanted, as a share of the cost. Give this or `margin_percent`.
    #[schemars(range(min = 0.0, max = 10_000.0), extend("x-unit" = "%"))]
    pub markup_percent: Option<f64>,
    /// Tax on the net price.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
    pub tax_percent: Option<f64>,
}

/// Something used up on the service.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Consumable {
    /// What it is.
    #[schemars(length(min = 1, max = 60))]
    pub name: String,
    /// Price of a full pack, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: String,
    /// Pieces in a full pack.
    #[schemars(range(min = 1, max = 1_000_000), extend("x-unit" = "pieces"))]
    pub pack_pieces: u32,
    /// How many for the whole service, or for each foil; one where it is not said.
    #[schemars(range(min = 0, max = 10_000), extend("x-unit" = "pieces"))]
    pub pieces: Option<u32>,
    /// What the number of pieces is for.
    #[serde(default)]
    pub per: Per,
}

/// What a number of consumables is for.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// The whole service.
    #[default]
    Service,
    /// Each foil of the sections.
    Foil,
}
