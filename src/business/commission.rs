use crate::money::{CommissionRate, Money, MoneyError, Rounding, exact, exact::HUNDRED};
use serde::Serialize;

/// A slice of the takings with its own rate.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct CommissionTier {
    /// Where the slice ends; `None` for the last one, which has no end.
    pub up_to: Option<Money>,
    /// The rate within the slice.
    pub rate: CommissionRate,
}

/// How commission is worked out from the net takings of a period.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum CommissionRule {
    /// One rate on everything.
    Flat(CommissionRate),
    /// One rate on what exceeds a threshold.
    OverThreshold {
        /// Nothing is paid up to here.
        threshold: Money,
        /// The rate above it.
        rate: CommissionRate,
    },
    /// A rate for each slice; a higher rate applies to its own slice only.
    Tiered(Vec<CommissionTier>),
}

/// What someone is paid for a period.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Pay {
    /// The wage or retainer.
    pub base: Money,
    /// The commission.
    pub commission: Money,
    /// Both.
    pub total: Money,
}

/// Commission on the takings of one period, rounded once, with the base pay beside it.
///
/// A threshold counts for each period: sum the pay of the weeks, not the takings.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] for takings or a threshold below zero, or tiers that do not rise;
/// [`MoneyError::Empty`] without tiers; [`MoneyError::MixedCurrencies`]; [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{business::{CommissionRule, CommissionTier, commission_pay}, money::{CommissionRate, Currency, Money, Rounding}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let rule = CommissionRule::Tiered(vec![
///     CommissionTier { up_to: Some(usd("800.00")?), rate: CommissionRate::from_percent(8.into())? },
///     CommissionTier { up_to: None, rate: CommissionRate::from_percent(14.into())? },
/// ]);
/// let pay = commission_pay(usd("0.00")?, &rule, usd("1300.00")?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(pay.commission.to_string(), "134.00 USD");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [Yale-New Haven Teachers Institute](crate::source::citations::money::COMMISSION), unit 80.07.07, 1980, examples 1-3.
pub fn commission_pay(
    base: Money,
    rule: &CommissionRule,
    takings: Money,
    rounding: Rounding,
) -> Result<Pay, MoneyError> {
    base.same_currency(takings.not_negative("takings")?)?;
    let commission = match rule {
        CommissionRule::Flat(rate) => takings.percent(rate.percent(), rounding)?,
        CommissionRule::OverThreshold { threshold, rate } => {
            let above = takings.minus(threshold.not_negative("commission threshold")?)?;
            if above.is_negative() { Money::zero(base.currency()) } else { above.percent(rate.percent(), rounding)? }
        }
        CommissionRule::Tiered(tiers) => tiered(tiers, takings, rounding)?,
    };
    Ok(Pay { base, commission, total: base.plus(commission)? })
}

/// Sums `slice · rate` exactly and rounds the sum.
fn tiered(tiers: &[CommissionTier], takings: Money, rounding: Rounding) -> Result<Money, MoneyError> {
    let too_large = MoneyError::TooLarge { field: "commission" };
    let mut from = Money::zero(takings.currency());
    let mut hundredfold = rust_decimal::Decimal::ZERO;
    let mut open = true;
    for tier in tiers {
        let end = tier.up_to.unwrap_or(takings);
        from.same_currency(end)?;
        if !open || tier.up_to.is_some_and(|end| end <= from) {
            let allowed = "above the end of the tier before it; only the last tier has no end";
            return Err(MoneyError::AmountOutOfRange { field: "commission tier", value: end, allowed });
        }
        let reached = if end < takings { end } else { takings };
        let slice = reached.minus(from)?;
        if !slice.is_negative() {
            hundredfold = slice
                .decimal()
                .checked_mul(tier.rate.percent())
                .and_then(|part| hundredfold.checked_add(part))
                .ok_or_else(|| too_large.clone())?;
        }
        open = tier.up_to.is_some();
        from = end;
    }
    if tiers.is_empty() {
        return Err(MoneyError::Empty { field: "list of commission tiers" });
    }
    Money::rounded(&[hundredfold], &[HUNDRED], takings.currency(), rounding, "commission")
}

/// The flat rate at which some takings earned a commission, in percent with 28 significant digits.
///
/// # Errors
///
/// [`MoneyError::AmountOutOfRange`] unless takings are more than zero; [`MoneyError::OutOfRange`] outside 0 to 100 %.
///
/// # Example
///
/// ```
/// use foilwork::{business::commission_rate, money::{Currency, Money}};
///
/// let usd = |text: &str| Money::parse(text, Currency::from_code("USD")?);
/// let rate = commission_rate(usd("120.00")?, usd("1600.00")?)?;
/// assert_eq!(rate.to_string(), "7.5 % of the takings");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Prealgebra 2e](crate::source::citations::money::PREALGEBRA), module m81307.
pub fn commission_rate(earned: Money, takings: Money) -> Result<CommissionRate, MoneyError> {
    earned.same_currency(takings.positive("takings")?)?;
    let percent = exact::ratio(&[earned.decimal(), HUNDRED], &[takings.decimal()], "commission rate")?;
    CommissionRate::from_percent(percent)
}
