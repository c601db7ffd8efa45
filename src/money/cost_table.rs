use super::{CostKind, Currency, Money, MoneyError, allocate};
use crate::source::Basis;
use rust_decimal::Decimal;
use serde::Serialize;

/// One line of a cost table.
#[derive(Debug, Clone, PartialEq, Serialize)]
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
    /// Its share of the total in percent, to one decimal; the shares of a table add up to exactly 100.
    pub share_percent: Option<Decimal>,
}

/// What a service costs, line by line.
///
/// Every line is rounded once, and the total is the sum of the lines: the table can be checked with a pencil, and any
/// regrouping (by part, section, bowl, service) gives the same total. The price of that is a difference from the
/// unrounded total of at most [`rounding_bound`](Self::rounding_bound).
#[derive(Debug, Clone, PartialEq, Serialize)]
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

    /// Adds a line that belongs to no section and no bowl.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`]; [`MoneyError::AmountOutOfRange`] for a negative cost.
    pub fn push(&mut self, kind: CostKind, what: &str, basis: Basis, amount: Money) -> Result<(), MoneyError> {
        self.push_for(kind, what, None, None, basis, amount)
    }

    /// Adds a line for a section of the head, a bowl, or both.
    ///
    /// # Errors
    ///
    /// As [`push`](Self::push).
    pub fn push_for(
        &mut self,
        kind: CostKind,
        what: &str,
        section: Option<&str>,
        bowl: Option<&str>,
        basis: Basis,
        amount: Money,
    ) -> Result<(), MoneyError> {
        self.total = self.total.plus(amount.not_negative("cost")?)?;
        let (section, bowl) = (section.map(str::to_owned), bowl.map(str::to_owned));
        self.lines.push(CostLine { kind, what: what.to_owned(), section, bowl, basis, amount, share_percent: None });
        Ok(())
    }

    /// Fills in the share of each line; call it once, after the last line.
    pub(crate) fn with_shares(mut self) -> Self {
        let amounts: Vec<_> = self.lines.iter().map(|line| line.amount).collect();
        if let Some(shares) = allocate::shares(&amounts, 1) {
            for (line, share) in self.lines.iter_mut().zip(shares) {
                line.share_percent = Some(share);
            }
        }
        self
    }

    /// The lines with their shares of the total, which add up to exactly 100.
    #[must_use]
    pub fn lines(&self) -> Vec<CostLine> {
        self.clone().with_shares().lines
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
