use super::{Money, MoneyError, Rounding, UnitPrice, allocate, exact};
use rust_decimal::Decimal;
use serde::Serialize;

/// One service of a mix.
#[derive(Debug, Clone, PartialEq)]
pub struct MixItem {
    /// The service, in the user's words.
    pub what: String,
    /// Its net price.
    pub price: Money,
    /// What one more of it costs.
    pub variable: Money,
    /// How many are sold, in proportion to the others: 3, 2 and 1, or 50, 33.3 and 16.7.
    pub weight: Decimal,
}

/// How many of each service reach the goal.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MixPlan {
    /// What the average service leaves, unrounded.
    pub average_contribution: UnitPrice,
    /// How many services in all, unrounded.
    pub count_exact: Decimal,
    /// How many whole services in all, so that the goal is met.
    pub count: i64,
    /// Service, how many of it (they add up to `count`), and its net takings.
    pub services: Vec<MixLine>,
    /// Net takings of all of them.
    pub sales: Money,
    /// What they leave beyond fixed costs and target profit. Below nothing only when some service of the mix leaves a
    /// loss and whole services cannot keep the mix.
    pub left_over: Money,
}

/// One service of a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MixLine {
    /// The service.
    pub what: String,
    /// How many.
    pub count: i64,
    /// Their net takings.
    pub sales: Money,
    /// What they leave.
    pub contribution: Money,
}

/// How many services, sold in a given mix, cover the fixed costs and leave a profit before tax.
///
/// `count = (fixed + profit) · sum(weights) / sum(weight · contribution)`; the services are shared out by weight.
///
/// # Errors
///
/// [`MoneyError::Empty`]; [`MoneyError::OutOfRange`] for a weight below nothing; [`MoneyError::NeverReached`] when the
/// average service leaves nothing; [`MoneyError::MixedCurrencies`].
///
/// # Source
///
/// Weighted contribution of a sales mix: OpenStax, Principles of Accounting, Volume 2 (chapter on cost-volume-profit),
/// module number from memory.
pub fn mix_target(fixed: Money, profit: Money, items: &[MixItem]) -> Result<MixPlan, MoneyError> {
    let currency = fixed.currency();
    let goal = fixed.not_negative("fixed costs")?.plus(profit.not_negative("target profit")?)?;
    let too_large = MoneyError::TooLarge { field: "sum over the mix" };
    if items.is_empty() {
        return Err(MoneyError::Empty { field: "service mix" });
    }
    let (mut weights, mut weighted) = (Decimal::ZERO, Decimal::ZERO);
    for item in items {
        let each = item.price.minus(item.variable)?;
        each.same_currency(goal)?;
        let part = each.decimal().checked_mul(item.weight).ok_or_else(|| too_large.clone())?;
        weights = weights.checked_add(item.weight).ok_or_else(|| too_large.clone())?;
        weighted = weighted.checked_add(part).ok_or_else(|| too_large.clone())?;
    }
    // Checks the weights too, before they divide anything.
    let shares: Vec<_> = items.iter().map(|item| item.weight).collect();
    allocate::share_out(1, &shares)?;
    let per_unit = exact::ratio(&[weighted], &[weights], "average contribution")?;
    if per_unit <= Decimal::ZERO {
        let left = Money::from_decimal(per_unit, currency, Rounding::ToNegativeInfinity)?;
        return Err(MoneyError::NeverReached { goal: "the target", left });
    }
    let (over, under) = ([goal.decimal(), weights], [weighted]);
    let count = exact::quotient(&over, &under, 0, Rounding::ToPositiveInfinity, "number of services")?;
    let average_contribution = UnitPrice { per_unit, currency, unit: "service" };
    let count_exact = exact::ratio(&over, &under, "number of services")?;
    // Whole services do not keep the mix exactly, so the first whole number can fall short by less than one service
    // of each kind; a few more make it good.
    let mut extra = 0;
    loop {
        let count = count.checked_add(extra).ok_or_else(|| too_large.clone())?;
        let services = share_by_weight(items, count, &shares)?;
        let sales = Money::total(services.iter().map(|line| line.sales), currency)?;
        let left_over = Money::total(services.iter().map(|line| line.contribution), currency)?.minus(goal)?;
        extra += 1;
        if !left_over.is_negative() || usize::try_from(extra).is_ok_and(|extra| extra > items.len()) {
            return Ok(MixPlan { average_contribution, count_exact, count, services, sales, left_over });
        }
    }
}

fn share_by_weight(items: &[MixItem], count: i64, weights: &[Decimal]) -> Result<Vec<MixLine>, MoneyError> {
    let counts = allocate::share_out(count, weights)?;
    items
        .iter()
        .zip(counts)
        .map(|(item, count)| {
            let contribution = item.price.minus(item.variable)?.times(count)?;
            Ok(MixLine { what: item.what.clone(), count, sales: item.price.times(count)?, contribution })
        })
        .collect()
}

/// What a period leaves when so many of each service were sold; weights are counts here.
///
/// # Errors
///
/// [`MoneyError::MixedCurrencies`]; [`MoneyError::BetweenMinorUnits`] for a count that is not whole.
pub fn mix_profit(fixed: Money, sold: &[MixItem]) -> Result<Money, MoneyError> {
    let mut profit = Money::zero(fixed.currency()).minus(fixed)?;
    for item in sold {
        let each = item.price.minus(item.variable)?.decimal();
        let amount = each.checked_mul(item.weight).ok_or(MoneyError::TooLarge { field: "contribution" })?;
        profit = profit.plus(Money::from_decimal_exact(amount, item.price.currency())?)?;
    }
    Ok(profit)
}
