use super::Declared;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One substance that a product's maker declares.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SubstanceEntry {
    /// Its name, best the one on the label.
    #[schemars(length(min = 1, max = 120))]
    pub substance: String,
    /// Its CAS registry number.
    #[schemars(extend("x-parse" = "cas"))]
    pub cas: Option<String>,
    /// How much of the product it is, a number or `{ low, best, high }`; 0 says that the product is free of it.
    pub ww_percent: Declared,
    /// The form the level is stated in, where that is another than the substance, for example `free-base`.
    #[schemars(extend("x-parse" = "form"))]
    pub stated_as: Option<String>,
}
