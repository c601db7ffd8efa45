use super::{
    CardFee, CostKind, CostLine, CostSource, CostTable, Currency, Labour, Money, MoneyError, Overhead, Rounding,
    cost_line,
};
use crate::{quantity::Duration, source::Basis};

/// One thing that a service costs, before it is worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct CostEntry {
    /// The kind of cost.
    pub kind: CostKind,
    /// What it is, in the user's words.
    pub what: String,
    /// The section of the head it is for, where there is one.
    pub section: Option<String>,
    /// The bowl it goes into, where there is one.
    pub bowl: Option<String>,
    /// Planned (derived), weighed and timed (measured), or stated.
    pub basis: Basis,
    /// What the amount is worked out from.
    pub source: CostSource,
}

impl CostEntry {
    /// A cost that belongs to no section and no bowl.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::*, source::Basis};
    ///
    /// let towels = CostSource::Stated(Money::parse("0.90", Currency::from_code("EUR")?)?);
    /// let entry = CostEntry::new(CostKind::Laundry, "two towels", Basis::Stated, towels);
    /// assert_eq!((entry.kind, entry.section), (CostKind::Laundry, None));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn new(kind: CostKind, what: &str, basis: Basis, source: CostSource) -> Self {
        Self { kind, what: what.to_owned(), section: None, bowl: None, basis, source }
    }

    /// Hands-on time.
    #[must_use]
    pub fn labour(labour: Labour, hands_on: Duration, basis: Basis) -> Self {
        Self::new(CostKind::Labour, "hands-on time", basis, CostSource::Labour { labour, hands_on })
    }

    /// Time in the chair.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::*, quantity::Duration, source::Basis};
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// let euros = |text: &str| Money::parse(text, eur);
    /// let chair = Overhead::per_hour(euros("10.00")?)?;
    /// let fee = CardFee::new(CardRate::from_percent("1.5".parse()?)?, euros("0.10")?)?;
    /// let service = ServiceCost {
    ///     entries: vec![
    ///         CostEntry::overhead(chair, Duration::from_min(90.0)?, Basis::Measured),
    ///         CostEntry::card_fee(fee, euros("100.00")?),
    ///     ],
    ///     ..ServiceCost::new(eur, Rounding::MidpointAwayFromZero)
    /// };
    /// let table = service.table().map_err(|errors| format!("{errors:?}"))?;
    /// assert_eq!(table.total(), euros("16.60")?); // 15.00 and 1.60
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn overhead(overhead: Overhead, in_chair: Duration, basis: Basis) -> Self {
        Self::new(CostKind::Overhead, "chair time", basis, CostSource::Overhead { overhead, in_chair })
    }

    /// What the card terminal keeps of a payment.
    #[must_use]
    pub fn card_fee(fee: CardFee, payment: Money) -> Self {
        Self::new(CostKind::CardFee, "card payment", Basis::Stated, CostSource::CardFee { fee, payment })
    }
}

/// All that a service costs; build it from the plan, or from what was weighed and timed.
///
/// # Example
///
/// ```
/// use foilwork::{money::*, quantity::{Duration, Mass}, source::Basis};
///
/// let eur = Currency::from_code("EUR")?;
/// let euros = |text: &str| Money::parse(text, eur);
/// let lightener = CostSource::Supply {
///     pack: PackPrice::new(euros("26.40")?, Mass::from_g(500.0)?)?,
///     used: Mass::from_g(35.0)?.into(),
///     wasted: Some(Mass::from_g(5.0)?.into()),
/// };
/// let hours = (Duration::from_h(38.0)?, Duration::from_h(28.5)?);
/// let labour = Labour::new(euros("16.00")?, OnCosts::from_percent(25.into())?, hours.0, hours.1)?;
/// let service = ServiceCost {
///     entries: vec![
///         CostEntry {
///             section: Some("crown".into()),
///             bowl: Some("A".into()),
///             ..CostEntry::new(CostKind::Product, "Pale Drift lightener", Basis::Measured, lightener)
///         },
///         CostEntry::labour(labour, Duration::from_min(75.0)?, Basis::Measured),
///     ],
///     ..ServiceCost::new(eur, Rounding::MidpointAwayFromZero)
/// };
///
/// let table = service.table().map_err(|errors| format!("{errors:?}"))?;
/// assert_eq!(table.total().to_string(), "35.44 EUR"); // 26.40 x 40/500 + 16.00 x 1.25 x 38/28.5 x 75/60
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct ServiceCost {
    /// The currency of every line.
    pub currency: Currency,
    /// What it costs, in the order of the table.
    pub entries: Vec<CostEntry>,
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
        Self { currency, entries: Vec::new(), rounding }
    }

    /// The cost table, in the order of the entries.
    ///
    /// # Errors
    ///
    /// Every line that cannot be costed, together.
    pub fn table(&self) -> Result<CostTable, Vec<CostLineError>> {
        let mut table = CostTable::new(self.currency);
        let mut errors = Vec::new();
        for entry in &self.entries {
            let pushed = cost_line(&entry.source, self.rounding).and_then(|amount| {
                let (section, bowl) = (entry.section.clone(), entry.bowl.clone());
                table.push(CostLine { section, bowl, ..CostLine::new(entry.kind, &entry.what, entry.basis, amount) })
            });
            if let Err(problem) = pushed {
                let line = match entry.kind {
                    kind @ (CostKind::Labour | CostKind::Overhead | CostKind::CardFee) => kind.words(),
                    _ => &entry.what,
                };
                errors.push(CostLineError { line: line.to_owned(), problem });
            }
        }
        if errors.is_empty() { Ok(table) } else { Err(errors) }
    }
}
