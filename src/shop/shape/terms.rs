use crate::money::{Rounding, Toward};
use crate::reader::at_most_one;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What an hour costs and how prices are set. Amounts are decimal text in quotes so that they stay exact.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("allOf" = [
    at_most_one(&["margin_percent", "markup_percent", "per_chair_h"]),
    at_most_one(&["productive_percent", "productive_h"]),
    at_most_one(&["overhead_per_h", "overhead"]),
]))]
pub struct TermsEntry {
    /// What is paid for an hour of work, before on-costs.
    #[schemars(extend("x-parse" = "amount"))]
    pub wage_per_h: Option<String>,
    /// On-costs on top of the wage.
    #[schemars(range(min = 0.0, max = 300.0), extend("x-unit" = "%"))]
    pub on_costs_percent: Option<f64>,
    /// Share of the paid hours that guests are worked on. Give this, or `paid_h` and `productive_h`.
    #[schemars(range(min = 1.0, max = 100.0), extend("x-unit" = "%"))]
    pub productive_percent: Option<f64>,
    /// Paid hours of a period, for one person.
    #[schemars(range(min = 0.1, max = 100_000.0), extend("x-unit" = "h"))]
    pub paid_h: Option<f64>,
    /// Hours of the same period with hands on a guest.
    #[schemars(range(min = 0.1, max = 100_000.0), extend("x-unit" = "h"))]
    pub productive_h: Option<f64>,
    /// Overhead for a productive hour of one chair. Give this, or `overhead` with `chairs` and `productive_h_per_chair`.
    #[schemars(extend("x-parse" = "amount"))]
    pub overhead_per_h: Option<String>,
    /// Overhead of a period: rent, energy, insurance and the rest.
    #[schemars(extend("x-parse" = "amount"))]
    pub overhead: Option<String>,
    /// How many chairs carry it.
    #[schemars(range(min = 1, max = 10_000), extend("x-unit" = "chairs"))]
    pub chairs: Option<u32>,
    /// Productive hours of one chair in that period.
    #[schemars(range(min = 0.1, max = 100_000.0), extend("x-unit" = "h"))]
    pub productive_h_per_chair: Option<f64>,
    /// Margin wanted, as a share of the net price. Give one of the three targets.
    #[schemars(range(min = 0.0, max = 99.0), extend("x-unit" = "%"))]
    pub margin_percent: Option<f64>,
    /// Mark-up wanted, as a share of the cost.
    #[schemars(range(min = 0.0, max = 10_000.0), extend("x-unit" = "%"))]
    pub markup_percent: Option<f64>,
    /// Contribution wanted for an hour of the chair, over all costs but the overhead.
    #[schemars(extend("x-parse" = "amount"))]
    pub per_chair_h: Option<String>,
    /// Tax on the net price.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
    pub tax_percent: Option<f64>,
    /// What the card terminal keeps, as a share of the payment.
    #[schemars(range(min = 0.0, max = 99.0), extend("x-unit" = "%"))]
    pub card_percent: Option<f64>,
    /// What the card terminal keeps of each payment.
    #[schemars(extend("x-parse" = "amount"))]
    pub card_fixed: Option<String>,
    /// The step of the price list, for example `1.00`.
    #[schemars(extend("x-parse" = "amount"))]
    pub price_step: Option<String>,
    /// How prices end within a step, for example `0.90`; 0 where it is not said.
    #[schemars(extend("x-parse" = "amount"))]
    pub price_ending: Option<String>,
    /// Which neighbour on the price list is taken; the one above where it is not said.
    pub price_toward: Option<Toward>,
    /// How an amount becomes whole minor units; a half goes away from zero where it is not said.
    pub rounding: Option<Rounding>,
}
