use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// How much of a product a substance is, in % w/w, as its maker declares it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Declared {
    /// One figure: `88`.
    Exact(f64),
    /// A range and the figure in it that is counted with: `{ low = 35, best = 40, high = 45 }`.
    Range {
        /// The least it can be.
        low: f64,
        /// What it most likely is.
        best: f64,
        /// The most it can be.
        high: f64,
    },
}

impl Default for Declared {
    fn default() -> Self {
        Self::Exact(0.0)
    }
}

/// A number or a table: what is said of a number holds for numbers, what is said of fields for tables.
impl JsonSchema for Declared {
    fn schema_name() -> Cow<'static, str> {
        "Declared".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let percent = |description: &str| {
            json_schema!({
                "description": description, "type": "number", "minimum": 0.0, "maximum": 100.0, "x-unit": "% w/w"
            })
        };
        json_schema!({
            "type": ["number", "object"],
            "minimum": 0.0,
            "maximum": 100.0,
            "x-unit": "% w/w",
            "properties": {
                "low": percent("The least it can be."),
                "best": percent("What it most likely is."),
                "high": percent("The most it can be."),
            },
            "required": ["low", "best", "high"],
            "additionalProperties": false,
        })
    }
}
