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
    /// How much of the product it is; 0 says that the product is free of it.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "% w/w"))]
    pub ww_percent: f64,
    /// The least it can be, where a range is declared.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "% w/w"))]
    pub low_ww_percent: Option<f64>,
    /// The most it can be, where a range is declared.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "% w/w"))]
    pub high_ww_percent: Option<f64>,
    /// The form the level is stated in, where that is another than the substance, for example `free-base`.
    #[schemars(extend("x-parse" = "form"))]
    pub stated_as: Option<String>,
}
