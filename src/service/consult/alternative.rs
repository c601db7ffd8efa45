use crate::{choice::choice, source::Basis};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// What an alternative is about.
    AlternativeKind: "alternative" {
        /// To leave the hair as it is.
        Leave = "leave" => "leave it",
        /// One visit, or several.
        Visits = "visits",
        /// Another class of product.
        ProductClass = "product-class" => "class of product",
        /// Another developer.
        Developer = "developer",
        /// Another technique.
        Technique = "technique",
    }
}

/// Something else that could be done, and why it is not taken, or is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Alternative {
    /// What it is about.
    pub about: AlternativeKind,
    /// The section; absent where it is about the service.
    pub section: Option<String>,
    /// The alternative.
    pub option: String,
    /// Whether the plan takes it.
    pub taken: bool,
    /// Why, or why not.
    pub why: String,
    /// What the reason rests on.
    pub basis: Basis,
}
