use super::Country;
use crate::colour::Naming;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// How this shop is used to reading sheets and cards. Nothing is converted by it: grams, % w/w and level numbers stay, and
/// what is chosen here stands beside them.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Habits {
    /// Whose way of writing dates, times and amounts of money, as a two-letter code of ISO 3166-1; where it is not said,
    /// dates are written year-month-day and amounts with the code of the currency.
    #[serde(default)]
    pub country: Option<Country>,
    /// Whether ounces of mass (28.35 g) stand beside the grams.
    #[serde(default)]
    pub ounces: bool,
    /// Whether the trade's volume label (10 vol for 3 %) stands beside the percent of a developer.
    #[serde(default)]
    pub volume_labels: bool,
    /// Which list names the levels beside their numbers.
    #[serde(default)]
    pub level_names: Option<Naming>,
}
