use super::{CostKind, Currency, Money, MoneyError, allocate};
use crate::source::Basis;
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::{Serialize, ser::SerializeStruct};

/// One line of a cost table.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct CostLine {
    /// The kind of cost.
    pub kind: CostKind,
    /// What it is, in the user's words.
    pub what: String,
    /// The section of the head it belongs to, where there is one.
    pub section: Option<String>,
    /// The bowl it belongs to, where there is one.
    pub bowl: Option<String>,
    /// Where the quantity comes from: planned (derived), weighed (measured), stated.
    pub basis: Basis,
    /// The amount, whole in minor units.
    pub amount: Money,
}

impl CostLine {
    /// A line that belongs to no section and no bowl.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::{CostKind, CostLine, Currency, Money}, source::Basis};
    ///
    /// let amount = Money::parse("2.11", Currency::from_code("EUR")?)?;
    /// let line = CostLine::new(CostKind::Product, "Pale Drift lightener", Basis::Stated, amount);
    /// let crown = CostLine { section: Some("crown".into()), ..line };
    /// assert_eq!(crown.section.as_deref(), Some("crown"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn new(kind: CostKind, what: &str, basis: Basis, amount: Money) -> Self {
        Self { kind, what: what.to_owned(), section: None, bowl: None, basis, amount }
    }
}

/// A line of a cost table with its share of the total.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CostShare<'t> {
    /// The line.
    #[serde(flatten)]
    pub line: &'t CostLine,
    /// Its share of the total in percent, to one decimal; the shares of a table add up to exactly 100.
    pub share_percent: Decimal,
}

/// What a service costs, line by line.
///
/// Every line is rounded once, and the total is the sum of the lines: the table can be checked with a pencil, and any
/// regrouping (by kind, section, bowl, service) gives the same total. The price of that is a difference from the
/// unrounded total of at most [`rounding_bound`](Self::rounding_bound).
///
/// # Example
///
/// ```
/// use foilwork::{money::{CostKind, CostLine, CostTable, Currency, Money}, source::Basis};
///
/// let eur = Currency::from_code("EUR")?;
/// let mut table = CostTable::new(eur);
/// table.push(CostLine::new(CostKind::Product, "lightener", Basis::Stated, Money::parse("2.11", eur)?))?;
/// table.push(CostLine::new(CostKind::Labour, "hands-on time", Basis::Stated, Money::parse("33.33", eur)?))?;
/// assert_eq!(table.total().to_string(), "35.44 EUR");
/// let shares: Vec<_> = table.shares().iter().map(|share| share.share_percent.to_string()).collect();
/// assert_eq!(shares, ["6.0", "94.0"]);
/// assert_eq!(table.by_kind()[0], (CostKind::Product, Money::parse("2.11", eur)?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The elements of a cost are those of [Hair & Barber New Zealand](crate::source::citations::money::COSTING_A_SERVICE).
#[derive(Debug, Clone, PartialEq)]
pub struct CostTable {
    lines: Vec<CostLine>,
    total: Money,
}

impl CostTable {
    /// A table without lines.
    #[must_use]
    pub const fn new(currency: Currency) -> Self {
        Self { lines: Vec::new(), total: Money::zero(currency) }
    }

    /// Adds a line.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`]; [`MoneyError::AmountOutOfRange`] for a cost below zero.
    pub fn push(&mut self, line: CostLine) -> Result<(), MoneyError> {
        self.total = self.total.plus(line.amount.not_negative("cost")?)?;
        self.lines.push(line);
        Ok(())
    }

    /// The lines, in the order they came.
    #[must_use]
    pub fn lines(&self) -> &[CostLine] {
        &self.lines
    }

    /// The lines with their shares of the total, which add up to exactly 100; empty when the total is zero, of which
    /// there are no shares.
    #[must_use]
    pub fn shares(&self) -> Vec<CostShare<'_>> {
        let amounts: Vec<_> = self.lines.iter().map(|line| line.amount).collect();
        let shares = allocate::shares(&amounts, 1).unwrap_or_default();
        self.lines.iter().zip(shares).map(|(line, share_percent)| CostShare { line, share_percent }).collect()
    }

    /// The sum of the lines.
    #[must_use]
    pub const fn total(&self) -> Money {
        self.total
    }

    /// The weakest basis of any line; `None` for an empty table.
    #[must_use]
    pub fn basis(&self) -> Option<Basis> {
        self.lines.iter().map(|line| line.basis).max()
    }

    /// How far the total can be from the unrounded one when lines round to the nearest: half a minor unit for each.
    #[must_use]
    pub fn rounding_bound(&self) -> Decimal {
        let lines = i128::try_from(self.lines.len()).unwrap_or(i128::MAX);
        Decimal::from_i128_with_scale(lines * 5, self.total.currency().exponent() + 1).normalize()
    }

    /// The total of each kind of cost, in the order of [`CostKind`].
    #[must_use]
    pub fn by_kind(&self) -> Vec<(CostKind, Money)> {
        let mut totals = self.grouped(|line| Some(line.kind));
        totals.sort_by_key(|(kind, _)| *kind);
        totals
    }

    /// The total of each section of the head, in the order they came, of the lines that belong to one.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::{CostKind, CostLine, CostTable, Currency, Money}, source::Basis};
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// let euros = |text: &str| Money::parse(text, eur);
    /// let crown = |basis, amount| CostLine {
    ///     section: Some("crown".into()),
    ///     bowl: Some("A".into()),
    ///     ..CostLine::new(CostKind::Product, "lightener", basis, amount)
    /// };
    /// let mut table = CostTable::new(eur);
    /// table.push(crown(Basis::Measured, euros("2.11")?))?;
    /// table.push(crown(Basis::Stated, euros("0.40")?))?;
    /// assert_eq!(table.by_section(), [("crown".into(), euros("2.51")?)]);
    /// assert_eq!(table.by_bowl(), [("A".into(), euros("2.51")?)]);
    /// assert_eq!((table.lines().len(), table.basis()), (2, Some(Basis::Stated)));
    /// assert_eq!(table.rounding_bound(), "0.01".parse()?); // half a cent for each of two lines
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn by_section(&self) -> Vec<(String, Money)> {
        self.grouped(|line| line.section.clone())
    }

    /// The total of each bowl, in the order they came, of the lines that belong to one.
    #[must_use]
    pub fn by_bowl(&self) -> Vec<(String, Money)> {
        self.grouped(|line| line.bowl.clone())
    }

    fn grouped<K: PartialEq>(&self, key: impl Fn(&CostLine) -> Option<K>) -> Vec<(K, Money)> {
        let mut groups: Vec<(K, Money)> = Vec::new();
        for line in &self.lines {
            let Some(key) = key(line) else { continue };
            // A part of a total that did not overflow cannot overflow either: no line is negative.
            match groups.iter_mut().find(|(seen, _)| *seen == key) {
                Some((_, total)) => *total = total.plus(line.amount).unwrap_or(*total),
                None => groups.push((key, line.amount)),
            }
        }
        groups
    }
}

/// Written as its lines, each with its share of the total, and the total.
impl Serialize for CostTable {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let shares = self.shares();
        let mut table = serializer.serialize_struct("CostTable", 2)?;
        if shares.is_empty() {
            table.serialize_field("lines", &self.lines)?;
        } else {
            table.serialize_field("lines", &shares)?;
        }
        table.serialize_field("total", &self.total)?;
        table.end()
    }
}

impl JsonSchema for CostTable {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "CostTable".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        /// What a service costs, line by line.
        #[derive(JsonSchema)]
        #[expect(dead_code, reason = "the shape of the plain data, from which the schema is derived")]
        struct CostTable {
            /// The lines.
            lines: Vec<Line>,
            /// The sum of the lines.
            total: Money,
        }

        /// A line, with its share of the total.
        #[derive(JsonSchema)]
        #[schemars(rename = "CostLineWithShare")]
        #[expect(dead_code, reason = "the shape of the plain data, from which the schema is derived")]
        struct Line {
            #[schemars(flatten)]
            line: CostLine,
            /// Share of the total in percent, to one decimal; left out when the total is zero.
            share_percent: Option<String>,
        }
        CostTable::json_schema(generator)
    }
}
