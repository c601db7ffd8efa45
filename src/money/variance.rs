use super::{CostKind, CostTable, Money, MoneyError};
use serde::Serialize;

/// One kind of cost, planned against actual.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, schemars::JsonSchema)]
pub struct Variance {
    /// The kind of cost.
    pub kind: CostKind,
    /// From the plan.
    pub planned: Money,
    /// From what was weighed and timed.
    pub actual: Money,
    /// Actual less planned: above zero, it cost more than planned.
    pub difference: Money,
}

/// Planned against actual for each kind of cost that occurs in either table.
///
/// # Errors
///
/// [`MoneyError::MixedCurrencies`].
///
/// # Example
///
/// ```
/// use foilwork::{money::{CostKind, CostLine, CostTable, Currency, Money, compare}, source::Basis};
///
/// let eur = Currency::from_code("EUR")?;
/// let (mut planned, mut actual) = (CostTable::new(eur), CostTable::new(eur));
/// planned.push(CostLine::new(CostKind::Product, "toner", Basis::Derived, Money::parse("4.90", eur)?))?;
/// actual.push(CostLine::new(CostKind::Product, "toner", Basis::Measured, Money::parse("5.60", eur)?))?;
/// assert_eq!(compare(&planned, &actual)?[0].difference.to_string(), "0.70 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn compare(planned: &CostTable, actual: &CostTable) -> Result<Vec<Variance>, MoneyError> {
    planned.total().same_currency(actual.total())?;
    let (planned_parts, actual_parts) = (planned.by_kind(), actual.by_kind());
    let mut parts: Vec<_> = planned_parts.iter().chain(&actual_parts).map(|(kind, _)| *kind).collect();
    parts.sort_unstable();
    parts.dedup();
    let of = |list: &[(CostKind, Money)], part| {
        list.iter().find(|(p, _)| *p == part).map_or(Money::zero(planned.total().currency()), |(_, money)| *money)
    };
    parts
        .into_iter()
        .map(|part| {
            let (planned, actual) = (of(&planned_parts, part), of(&actual_parts, part));
            Ok(Variance { kind: part, planned, actual, difference: actual.minus(planned)? })
        })
        .collect()
}
