use super::Currency;
use rust_decimal::Decimal;
use serde::Serialize;
use std::fmt;

/// A price for one of something (a gram, a minute, an hour, a piece), unrounded to 28 significant digits.
///
/// It is there to be read and compared. Costs are worked out from what it came from, so that they round once.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, schemars::JsonSchema)]
pub struct UnitPrice {
    /// Units of the currency for one unit of the thing.
    #[schemars(with = "String")]
    pub per_unit: Decimal,
    /// The currency.
    pub currency: Currency,
    /// The unit of the thing: `g`, `mL`, `piece`, `min`, `h`.
    pub unit: &'static str,
}

impl fmt::Display for UnitPrice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match f.precision().and_then(|digits| u32::try_from(digits).ok()) {
            Some(digits) => {
                let half_up = rust_decimal::RoundingStrategy::MidpointAwayFromZero;
                let shown = self.per_unit.round_dp_with_strategy(digits, half_up);
                write!(f, "{shown} {}/{}", self.currency, self.unit)
            }
            None => write!(f, "{} {}/{}", self.per_unit, self.currency, self.unit),
        }
    }
}
