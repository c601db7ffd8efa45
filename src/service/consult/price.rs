use crate::{
    money::{Money, MoneyError},
    service::{LeftOut, Plan},
};
use schemars::JsonSchema;
use serde::Serialize;

/// What the guest is told to pay: from-to for a visit, and for all visits of a series.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AgreedPrice {
    /// For this visit, where the hair takes as little as it may; a bowl that is begun is paid for.
    pub low: Money,
    /// For this visit as planned.
    pub planned: Money,
    /// For this visit, where the hair takes as much as it may.
    pub high: Money,
    /// For all visits, if each costs the most.
    pub all_visits_high: Money,
    /// How many visits that counts.
    pub visits: usize,
    /// Whether tax is in it.
    pub tax_included: bool,
    /// What the cost behind it leaves out; while there is any, the price is not whole.
    pub left_out: Vec<LeftOut>,
}

/// The price from-to: that of the plan, as the hair may take less or more mixture, hours as planned.
pub(super) fn agreed_price(plan: &Plan, visits: usize) -> Result<Option<AgreedPrice>, MoneyError> {
    let Some(money) = &plan.money else { return Ok(None) };
    let Some(planned) = money.taxed.as_ref().map(|taxed| taxed.gross).or(money.price.map(|set| set.price)) else {
        return Ok(None);
    };
    let (low, high) = money.range.map_or((planned, planned), |range| (range.least.gross, range.most.gross));
    let visits = visits.max(1);
    Ok(Some(AgreedPrice {
        low,
        planned,
        high,
        all_visits_high: high.times(i64::try_from(visits).unwrap_or(i64::MAX))?,
        visits,
        tax_included: money.taxed.is_some(),
        left_out: money.left_out.clone(),
    }))
}
