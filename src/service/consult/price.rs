use crate::{
    money::{CostKind, Money, MoneyError, PriceRule, Rounding},
    service::{LeftOut, MoneyPlan, Plan},
};
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;

/// What the guest is told to pay: from-to for a visit, and for all visits of a series.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AgreedPrice {
    /// For this visit, where the hair takes as little as it may.
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

/// The price from-to: grams as little and as much as the hair of each section may take, hours as planned.
pub(super) fn agreed_price(
    plan: &Plan,
    rule: Option<PriceRule>,
    visits: usize,
) -> Result<Option<AgreedPrice>, MoneyError> {
    let (Some(money), Some(rule)) = (&plan.money, rule) else { return Ok(None) };
    if money.cost.total().is_zero() {
        return Ok(None);
    }
    let gross = |cost: Money| rule.price(cost, None).map(|priced| priced.taxed.gross);
    let planned = gross(money.cost.total())?;
    let (low, high) = (gross(cost(plan, money, Bound::Low)?)?, gross(cost(plan, money, Bound::High)?)?);
    let visits = visits.max(1);
    let high = if high > planned { high } else { planned };
    let all_visits_high = high.times(i64::try_from(visits).unwrap_or(i64::MAX))?;
    Ok(Some(AgreedPrice {
        low: if low < planned { low } else { planned },
        planned,
        high,
        all_visits_high,
        visits,
        tax_included: money.taxed.is_some(),
        left_out: money.left_out.clone(),
    }))
}

#[derive(Clone, Copy)]
enum Bound {
    Low,
    High,
}

/// The cost with the products of each section scaled to the least or the most that its hair takes.
fn cost(plan: &Plan, money: &MoneyPlan, bound: Bound) -> Result<Money, MoneyError> {
    let amounts = money.cost.lines().iter().map(|line| {
        let weighed = matches!(line.kind, CostKind::Product | CostKind::Additive);
        let percent = line.section.as_deref().filter(|_| weighed).and_then(|name| share(plan, name, bound));
        percent.map_or(Ok(line.amount), |percent| line.amount.percent(percent, Rounding::MidpointAwayFromZero))
    });
    let amounts: Result<Vec<_>, _> = amounts.collect();
    Money::total(amounts?, money.cost.total().currency())
}

/// Of what is made for a section, the percentage that its hair takes at the least or at the most.
fn share(plan: &Plan, section: &str, bound: Bound) -> Option<Decimal> {
    let takes = plan.head.sections.iter().find(|one| one.section == section)?.takes?;
    let made = plan.mixes.iter().find(|mix| mix.name == section)?.made().g();
    let takes = match bound {
        Bound::Low => takes.low(),
        Bound::High => takes.high(),
    };
    Decimal::try_from((100.0 * takes.g() / made * 100.0).round() / 100.0).ok().filter(|_| made > 0.0)
}
