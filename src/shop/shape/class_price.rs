use crate::head::ServiceClass;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the price list says for a class of service.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClassPriceEntry {
    /// The class that it is for.
    pub class: ServiceClass,
    /// What the guest pays for it, tax included, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: String,
    /// How long in the chair is in that price; any time where it is not said.
    #[schemars(range(min = 1.0, max = 1000.0), extend("x-unit" = "min"))]
    pub included_min: Option<f64>,
    /// What an hour in the chair beyond that costs, tax included. Needs `included_min`.
    #[schemars(extend("x-parse" = "amount"))]
    pub per_extra_h: Option<String>,
}
