use super::PyMoney;
use crate::{answer::answer, error::raise};
use foilwork::{
    money::{self, CostKind, CostTable},
    source::Basis,
};
use pyo3::prelude::*;
use rust_decimal::Decimal;

answer! {
    in "foilwork.money";
    /// One kind of cost, planned against actual.
    Variance {
        /// The kind of cost.
        kind: String,
        /// From the plan.
        planned: PyMoney,
        /// From what was weighed and timed.
        actual: PyMoney,
        /// Actual less planned: above zero, it cost more than planned.
        difference: PyMoney,
    }
}

answer! {
    in "foilwork.money";
    /// One line of a cost table.
    CostLine {
        /// The kind of cost.
        kind: String,
        /// What it is.
        what: String,
        /// The section of the head it belongs to, where there is one.
        section: Option<String>,
        /// The bowl it belongs to, where there is one.
        bowl: Option<String>,
        /// The amount.
        amount: PyMoney,
        /// Its share of the total in percent, to one decimal.
        share_percent: Option<Decimal>,
    }
}

/// What a service costs, line by line; the total is the sum of the lines, however they are grouped.
///
/// Args:
///     currency: three-letter code of every line.
///
/// Raises:
///     FoilworkError: unknown currency.
///
/// Examples:
///     >>> from foilwork.money import CostTable, Money
///     >>> table = CostTable("EUR")
///     >>> table.add("product", "Pale Drift lightener", Money("2.11", "EUR"), section="crown", bowl="A")
///     >>> table.add("labour", "hands-on time", Money("33.33", "EUR"))
///     >>> table.total
///     Money('35.44', 'EUR')
///     >>> [str(line.share_percent) for line in table.lines]
///     ['6.0', '94.0']
#[pyclass(name = "CostTable", module = "foilwork.money")]
pub struct PyCostTable(pub CostTable);

#[pymethods]
impl PyCostTable {
    #[new]
    fn new(currency: &str) -> PyResult<Self> {
        Ok(Self(CostTable::new(currency.parse().map_err(raise)?)))
    }

    /// Add a line.
    ///
    /// Args:
    ///     kind: one of ``"product"``, ``"additive"``, ``"consumables"``, ``"laundry"``, ``"labour"``, ``"overhead"``,
    ///         ``"card-fee"``, ``"other"``.
    ///     what: what it is, in your words.
    ///     amount: what it costs, nothing or more.
    ///     section: the section of the head it belongs to, where there is one.
    ///     bowl: the bowl it belongs to, where there is one.
    ///
    /// Raises:
    ///     FoilworkError: an unknown kind, a negative amount, another currency.
    #[pyo3(signature = (kind, what, amount, *, section = None, bowl = None))]
    fn add(
        &mut self,
        kind: &str,
        what: &str,
        amount: PyMoney,
        section: Option<&str>,
        bowl: Option<&str>,
    ) -> PyResult<()> {
        let kind: CostKind = kind.parse().map_err(raise)?;
        let line = money::CostLine::new(kind, what, Basis::Stated, amount.0);
        let (section, bowl) = (section.map(str::to_owned), bowl.map(str::to_owned));
        self.0.push(money::CostLine { section, bowl, ..line }).map_err(raise)
    }

    /// The sum of the lines.
    #[getter]
    fn total(&self) -> PyMoney {
        PyMoney(self.0.total())
    }

    /// The lines. Their shares add up to exactly 100; they are ``None`` when the total is zero.
    #[getter]
    fn lines(&self) -> Vec<CostLine> {
        let shares = self.0.shares();
        let lines = self.0.lines().iter().enumerate();
        lines
            .map(|(place, line)| CostLine {
                kind: line.kind.code().to_owned(),
                what: line.what.clone(),
                section: line.section.clone(),
                bowl: line.bowl.clone(),
                amount: PyMoney(line.amount),
                share_percent: shares.get(place).map(|share| share.share_percent),
            })
            .collect()
    }

    /// This table as planned against another as it really was, for each kind of cost that occurs in either.
    ///
    /// Args:
    ///     actual: the other table.
    ///
    /// Raises:
    ///     FoilworkError: two currencies.
    ///
    /// Examples:
    ///     >>> from foilwork.money import CostTable, Money
    ///     >>> planned, actual = CostTable("EUR"), CostTable("EUR")
    ///     >>> planned.add("product", "toner", Money("4.90", "EUR"))
    ///     >>> actual.add("product", "toner", Money("5.60", "EUR"))
    ///     >>> planned.compare(actual)[0].difference
    ///     Money('0.70', 'EUR')
    fn compare(&self, actual: &Self) -> PyResult<Vec<Variance>> {
        let rows = money::compare(&self.0, &actual.0).map_err(raise)?;
        let row = |row: money::Variance| Variance {
            kind: row.kind.code().to_owned(),
            planned: PyMoney(row.planned),
            actual: PyMoney(row.actual),
            difference: PyMoney(row.difference),
        };
        Ok(rows.into_iter().map(row).collect())
    }

    /// The total of each kind of cost.
    fn by_kind(&self) -> Vec<(&'static str, PyMoney)> {
        self.0.by_kind().into_iter().map(|(part, total)| (part.code(), PyMoney(total))).collect()
    }

    /// The total of each section of the head, of the lines that belong to one.
    fn by_section(&self) -> Vec<(String, PyMoney)> {
        self.0.by_section().into_iter().map(|(section, total)| (section, PyMoney(total))).collect()
    }

    /// The total of each bowl, of the lines that belong to one.
    fn by_bowl(&self) -> Vec<(String, PyMoney)> {
        self.0.by_bowl().into_iter().map(|(bowl, total)| (bowl, PyMoney(total))).collect()
    }
}
