use crate::money::{Money, MoneyError, Rounding, UnitPrice, allocate, exact};
use rust_decimal::Decimal;
use serde::Serialize;

/// One service of a mix.
#[derive(Debug, Clone, PartialEq)]
pub struct SalesMixItem {
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
pub struct SalesMixPlan {
    /// What the average service leaves, unrounded.
    pub average_contribution: UnitPrice,
    /// How many services in all, unrounded.
    pub count_exact: Decimal,
    /// How many whole services in all: the sum of those below.
    pub count: i64,
    /// Each service, how many of it, and its net takings.
    pub services: Vec<SalesMixLine>,
    /// Net takings of all of them.
    pub sales: Money,
    /// What they leave beyond fixed costs and target profit. Below zero only when one more of some service makes a
    /// loss.
    pub left_over: Money,
}

/// One service of a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SalesMixLine {
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
/// `count = (fixed + profit) · weight / sum(weight · contribution)` for each service, rounded up: whole services do not
/// keep the mix exactly, and rounding any of them down could miss the goal.
///
/// # Errors
///
/// [`MoneyError::Empty`]; [`MoneyError::OutOfRange`] for a weight below zero; [`MoneyError::NeverReached`] when the
/// average service leaves nothing; [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{business::{SalesMixItem, sales_mix_target}, money::{Currency, Money}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let item = |what: &str, price, variable, weight: i64| {
///     let (price, variable) = (euros(price)?, euros(variable)?);
///     Ok::<_, Box<dyn std::error::Error>>(SalesMixItem { what: what.into(), price, variable, weight: weight.into() })
/// };
/// let mix = [item("foils", "120.00", "20.00", 1)?, item("toner", "35.00", "5.00", 2)?];
/// let plan = sales_mix_target(euros("3200.00")?, euros("0.00")?, &mix)?;
/// // Three services leave 100 + 2 x 30 = 160, so 3200 takes 20 times the mix.
/// assert_eq!(plan.services.iter().map(|line| line.count).collect::<Vec<_>>(), [20, 40]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Weighted contribution of a sales mix: [OpenStax, Principles of Accounting, Volume 2](crate::source::citations::money::MANAGERIAL_ACCOUNTING) (chapter on cost-volume-profit),
/// module number from memory.
pub fn sales_mix_target(fixed: Money, profit: Money, items: &[SalesMixItem]) -> Result<SalesMixPlan, MoneyError> {
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
    let count_exact = exact::ratio(&over, &under, "number of services")?;
    let services = items
        .iter()
        .map(|item| {
            let over = [goal.decimal(), item.weight];
            let count = exact::quotient(&over, &under, 0, Rounding::ToPositiveInfinity, "number of services")?;
            let contribution = item.price.minus(item.variable)?.times(count)?;
            Ok(SalesMixLine { what: item.what.clone(), count, sales: item.price.times(count)?, contribution })
        })
        .collect::<Result<Vec<_>, MoneyError>>()?;
    let count = services.iter().try_fold(0_i64, |sum, line| sum.checked_add(line.count)).ok_or(too_large)?;
    Ok(SalesMixPlan {
        average_contribution: UnitPrice { per_unit, currency, unit: "service" },
        count_exact,
        count,
        sales: Money::total(services.iter().map(|line| line.sales), currency)?,
        left_over: Money::total(services.iter().map(|line| line.contribution), currency)?.minus(goal)?,
        services,
    })
}

/// What a period leaves when so many of each service were sold; weights are counts here.
///
/// # Errors
///
/// [`MoneyError::MixedCurrencies`]; [`MoneyError::BetweenMinorUnits`] for a count that is not whole.
///
/// # Example
///
/// ```
/// use foilwork::{business::{SalesMixItem, sales_mix_profit}, money::{Currency, Money}};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let toner =
///     SalesMixItem { what: "toner".into(), price: euros("35.00")?, variable: euros("5.00")?, weight: 20.into() };
/// assert_eq!(sales_mix_profit(euros("450.00")?, &[toner])?.to_string(), "150.00 EUR"); // 20 x 30 - 450
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn sales_mix_profit(fixed: Money, sold: &[SalesMixItem]) -> Result<Money, MoneyError> {
    let mut profit = Money::zero(fixed.currency()).minus(fixed)?;
    for item in sold {
        let each = item.price.minus(item.variable)?.decimal();
        let amount = each.checked_mul(item.weight).ok_or(MoneyError::TooLarge { field: "contribution" })?;
        profit = profit.plus(Money::from_decimal_exact(amount, item.price.currency())?)?;
    }
    Ok(profit)
}
