use crate::{
    money::{Money, MoneyError},
    service::{LeftOut, Plan},
};
use schemars::JsonSchema;
use serde::Serialize;

/// What the guest is told to pay: by the price list where it has the service, else from-to by the costs.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AgreedPrice {
    /// For this visit, where the hair takes as little as it may; a bowl that is begun is paid for.
    pub low: Money,
    /// For this visit as planned.
    pub planned: Money,
    /// For this visit, where the hair takes as much as it may.
    pub high: Money,
    /// So many visits, if each is like this one and costs the most; later ones are not priced, and more may be needed.
    pub all_visits_high: Money,
    /// How many visits that counts.
    pub visits: usize,
    /// Whether tax is in it.
    pub tax_included: bool,
    /// What the cost behind it leaves out; while there is any, the price is not whole.
    pub left_out: Vec<LeftOut>,
}

impl AgreedPrice {
    /// For this visit alone. The price list first: it is what the guest has seen, and it stands whatever the hair takes. Else
    /// that of the costs, as the hair may take less or more mixture, hours as planned.
    pub(crate) fn of_one_visit(plan: &Plan) -> Option<Self> {
        let one = |(low, planned, high), tax_included, left_out| Self {
            low,
            planned,
            high,
            all_visits_high: high,
            visits: 1,
            tax_included,
            left_out,
        };
        if let Some(listed) = plan.booking.price {
            return Some(one((listed, listed, listed), true, Vec::new()));
        }
        let money = plan.money.as_ref()?;
        let planned = money.taxed.as_ref().map(|taxed| taxed.gross).or(money.price.map(|set| set.price))?;
        let (low, high) = money.range.map_or((planned, planned), |range| (range.least.gross, range.most.gross));
        Some(one((low, planned, high), money.taxed.is_some(), money.left_out.clone()))
    }
}

/// The same with what so many such visits come to.
pub(super) fn agreed_price(plan: &Plan, visits: usize) -> Result<Option<AgreedPrice>, MoneyError> {
    let Some(one) = AgreedPrice::of_one_visit(plan) else { return Ok(None) };
    let visits = visits.max(1);
    let all_visits_high = one.high.times(i64::try_from(visits).unwrap_or(i64::MAX))?;
    Ok(Some(AgreedPrice { all_visits_high, visits, ..one }))
}
