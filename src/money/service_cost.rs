use super::{
    CardFee, CostKind, CostTable, Currency, Labour, Measure, Money, MoneyError, Overhead, Rounding, supply_cost,
};
use crate::{quantity::Duration, source::Basis};
use serde::Serialize;

/// Something taken from a pack for a service: product, additive, foils, gloves, towels.
#[derive(Debug, Clone, PartialEq)]
pub struct SupplyUse {
    /// The kind of cost.
    pub kind: CostKind,
    /// What it is, in the user's words.
    pub what: String,
    /// The section of the head it is for, where there is one.
    pub section: Option<String>,
    /// The bowl it goes into, where there is one.
    pub bowl: Option<String>,
    /// What a pack costs, without the tax the salon gets back.
    pub pack_price: Money,
    /// What a pack holds.
    pub pack: Measure,
    /// What went on the head.
    pub used: Measure,
    /// What was mixed and thrown away: it is paid for all the same.
    pub wasted: Option<Measure>,
    /// Planned (derived), weighed (measured) or stated.
    pub basis: Basis,
}

/// All that a service costs; build it from the plan, or from what was weighed and timed.
///
/// # Example
///
/// ```
/// use foilwork::{business::*, money::*, quantity::{Duration, Mass}, source::Basis};
///
/// let eur = Currency::from_code("EUR")?;
/// let euros = |text: &str| Money::parse(text, eur);
/// let mut service = ServiceCost::new(eur, Rounding::MidpointAwayFromZero);
/// service.supplies.push(SupplyUse {
///     kind: CostKind::Product,
///     what: "Pale Drift lightener".into(),
///     section: Some("crown".into()),
///     bowl: Some("A".into()),
///     pack_price: euros("26.40")?,
///     pack: Measure::Mass(Mass::from_g(500.0)?),
///     used: Measure::Mass(Mass::from_g(35.0)?),
///     wasted: Some(Measure::Mass(Mass::from_g(5.0)?)),
///     basis: Basis::Measured,
/// });
/// let hours = (Duration::from_h(38.0)?, Duration::from_h(28.5)?);
/// let labour = Labour::new(euros("16.00")?, OnCosts::from_percent(25.into())?, hours.0, hours.1)?;
/// service.labour = Some((labour, Duration::from_min(75.0)?, Basis::Measured));
///
/// let table = service.table().map_err(|errors| format!("{errors:?}"))?;
/// assert_eq!(table.total().to_string(), "35.44 EUR"); // 26.40 x 40/500 + 16.00 x 1.25 x 38/28.5 x 75/60
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct ServiceCost {
    /// The currency of every line.
    pub currency: Currency,
    /// What was taken from packs.
    pub supplies: Vec<SupplyUse>,
    /// The cost of labour, the hands-on time, and where that time comes from.
    pub labour: Option<(Labour, Duration, Basis)>,
    /// The overhead, the time in the chair, and where that time comes from.
    pub overhead: Option<(Overhead, Duration, Basis)>,
    /// The card fee and the payment it is taken from.
    pub card: Option<(CardFee, Money)>,
    /// How each line becomes whole minor units.
    pub rounding: Rounding,
}

/// A line of a service that cannot be costed.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{line}: {problem}")]
pub struct CostLineError {
    /// Which line, in the user's words.
    pub line: String,
    /// What is wrong with it.
    #[source]
    pub problem: MoneyError,
}

impl ServiceCost {
    /// A service without costs yet.
    #[must_use]
    pub const fn new(currency: Currency, rounding: Rounding) -> Self {
        Self { currency, supplies: Vec::new(), labour: None, overhead: None, card: None, rounding }
    }

    /// The cost table: supplies in their order, then labour, overhead and card fee.
    ///
    /// # Errors
    ///
    /// Every line that cannot be costed, together.
    pub fn table(&self) -> Result<CostTable, Vec<CostLineError>> {
        let mut table = CostTable::new(self.currency);
        let mut errors = Vec::new();
        let mut note = |line: &str, result: Result<(), MoneyError>| {
            if let Err(problem) = result {
                errors.push(CostLineError { line: line.to_owned(), problem });
            }
        };
        for supply in &self.supplies {
            let pushed = self.cost_of(supply).and_then(|amount| {
                let (section, bowl) = (supply.section.as_deref(), supply.bowl.as_deref());
                table.push_for(supply.kind, &supply.what, section, bowl, supply.basis, amount)
            });
            note(&supply.what, pushed);
        }
        if let Some((labour, hands_on, basis)) = &self.labour {
            let amount = labour.cost(*hands_on, self.rounding);
            note("labour", amount.and_then(|amount| table.push(CostKind::Labour, "hands-on time", *basis, amount)));
        }
        if let Some((overhead, in_chair, basis)) = &self.overhead {
            let amount = overhead.cost(*in_chair, self.rounding);
            note("overhead", amount.and_then(|amount| table.push(CostKind::Overhead, "chair time", *basis, amount)));
        }
        if let Some((fee, payment)) = self.card {
            let amount = fee.of(payment, self.rounding);
            note(
                "card fee",
                amount.and_then(|amount| table.push(CostKind::CardFee, "card payment", Basis::Stated, amount)),
            );
        }
        if errors.is_empty() { Ok(table) } else { Err(errors) }
    }

    fn cost_of(&self, supply: &SupplyUse) -> Result<Money, MoneyError> {
        let taken = match supply.wasted {
            Some(wasted) => supply.used.plus(wasted)?,
            None => supply.used,
        };
        supply_cost(supply.pack_price, supply.pack, taken, self.rounding)
    }
}

/// One kind of cost, planned against actual.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Variance {
    /// The kind of cost.
    pub kind: CostKind,
    /// From the plan.
    pub planned: Money,
    /// From what was weighed and timed.
    pub actual: Money,
    /// Actual less planned: above nothing, it cost more than planned.
    pub difference: Money,
}

/// Planned against actual for each kind of cost that occurs in either table.
///
/// # Errors
///
/// [`MoneyError::MixedCurrencies`].
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
