//! Wrappers of `foilwork::limits`: the tables.

use super::rows::{Limit, ListedLimit};
use crate::{answer::Reduced, error::raise, source::TracedResult};
use foilwork::limits::{self, Audience, Jurisdiction, Purpose};
use pyo3::{
    IntoPyObjectExt,
    prelude::*,
    types::{PyTuple, PyType},
};
use std::hash::{DefaultHasher, Hash, Hasher};

/// The jurisdictions with a built-in table, as (code, name). A table is never complete.
///
/// Returns:
///     Code and name of each.
///
/// Examples:
///     >>> from foilwork.limits import jurisdictions
///     >>> jurisdictions()[0]
///     ('EU', 'European Union')
#[pyfunction]
pub fn jurisdictions() -> Vec<(&'static str, &'static str)> {
    Jurisdiction::ALL.iter().map(|j| (j.code(), j.words())).collect()
}

/// A choice by its code or words; None leaves it open.
pub fn choice<C: std::str::FromStr>(text: Option<&str>) -> PyResult<Option<C>>
where
    C::Err: std::error::Error,
{
    text.map(str::parse).transpose().map_err(raise)
}

/// How a table was made, so that it can be made again.
#[derive(Clone)]
enum Origin {
    Built(&'static str),
    Csv(String, String),
    Overlaid(Box<Table>, Box<Table>),
    Concerning(Box<Table>, [Option<String>; 3]),
}

/// A table of limits: a built-in one, or the user's own in the same shape.
///
/// Args:
///     jurisdiction: code or name, for example ``"EU"``; see :func:`jurisdictions`.
///
/// Raises:
///     FoilworkError: when there is no table for it.
///
/// Examples:
///     >>> from foilwork.limits import Table
///     >>> japan = Table("JP")
///     >>> japan.title, len(japan), japan.unverified
///     ('Japan', 1, 1)
///     >>> japan.rows()[0].obtained, japan.listing()[0].treatment
///     ('from-memory', 'checked-never-green')
#[pyclass(frozen, from_py_object, module = "foilwork.limits")]
#[derive(Clone)]
pub struct Table {
    pub table: limits::Table,
    origin: Origin,
}

#[pymethods]
impl Table {
    #[new]
    fn new(jurisdiction: &str) -> PyResult<Self> {
        let jurisdiction: Jurisdiction = jurisdiction.parse().map_err(raise)?;
        Ok(Self { table: limits::Table::of(jurisdiction).clone(), origin: Origin::Built(jurisdiction.code()) })
    }

    /// Read a table of one's own: comma-separated text with one header line.
    ///
    /// Needed columns: ``id, rule, substance, applies_to, user, figure, unit, measured``. Without ``how`` a row counts as
    /// stated by the user.
    #[staticmethod]
    fn from_csv(title: String, text: String) -> PyResult<Self> {
        let table = limits::Table::from_csv(title.clone(), &text).map_err(raise)?;
        Ok(Self { table, origin: Origin::Csv(title, text) })
    }

    /// This table with the rows of another: a row with a known id replaces the old one, the others are added.
    fn overlaid(&self, other: &Self) -> Self {
        let origin = Origin::Overlaid(Box::new(self.clone()), Box::new(other.clone()));
        Self { table: self.table.overlaid(&other.table), origin }
    }

    /// The rows that concern a substance, a kind of product, a kind of user, or all of these together.
    #[pyo3(signature = (substance = None, purpose = None, audience = None))]
    fn concerning(
        &self,
        substance: Option<String>,
        purpose: Option<String>,
        audience: Option<String>,
    ) -> PyResult<Self> {
        let (kind, who): (Option<Purpose>, Option<Audience>) =
            (choice(purpose.as_deref())?, choice(audience.as_deref())?);
        let table = self.table.concerning(substance.as_deref(), kind, who);
        Ok(Self { table, origin: Origin::Concerning(Box::new(self.clone()), [substance, purpose, audience]) })
    }

    /// The name of the jurisdiction, or what the user calls the table.
    #[getter]
    fn title(&self) -> &str {
        self.table.title()
    }

    /// How many rows are from memory, and so never the basis of "within".
    #[getter]
    fn unverified(&self) -> usize {
        self.table.unverified()
    }

    /// Every row.
    fn rows(&self) -> Vec<Limit> {
        self.table.rows().iter().map(Limit::from).collect()
    }

    /// Where each concentration comes from: act and entry, the figure as printed, the date of the list.
    ///
    /// Returns:
    ///     A :class:`foilwork.source.TracedResult` for each row with a concentration.
    ///
    /// Examples:
    ///     >>> from foilwork.limits import Table
    ///     >>> {one.formula for one in Table("EU").trail()}
    ///     {"the act's own figure, for its substance and use"}
    fn trail(&self) -> Vec<TracedResult> {
        self.table.trail().into_iter().map(Into::into).collect()
    }

    /// Every row with what a check does with it and what it does not.
    fn listing(&self) -> Vec<ListedLimit> {
        self.table.listing().limits.into_iter().map(ListedLimit::from).collect()
    }

    /// The listing as text: what is checked, what is noted, what is not checked.
    fn text(&self) -> String {
        self.table.listing().to_string()
    }

    fn __len__(&self) -> usize {
        self.table.rows().len()
    }

    fn __eq__(&self, other: &Bound<'_, PyAny>) -> bool {
        other.cast::<Self>().is_ok_and(|other| self.table == other.get().table)
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        self.table.title().hash(&mut hasher);
        self.table.rows().iter().for_each(|row| row.id.hash(&mut hasher));
        hasher.finish()
    }

    fn __repr__(&self) -> String {
        format!("<foilwork.limits.Table {}, {} rows>", self.table.title(), self.table.rows().len())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        let (py, kind) = (slf.py(), slf.get_type());
        Ok(match slf.get().origin.clone() {
            Origin::Built(code) => (kind.into_any(), PyTuple::new(py, [code])?),
            Origin::Csv(title, text) => (kind.getattr("from_csv")?, PyTuple::new(py, [title, text])?),
            Origin::Overlaid(one, other) => (kind.getattr("overlaid")?, PyTuple::new(py, [*one, *other])?),
            Origin::Concerning(table, [substance, purpose, audience]) => {
                let filter = [substance, purpose, audience].map(|text| text.into_bound_py_any(py));
                let [substance, purpose, audience] = filter;
                let table = table.into_bound_py_any(py)?;
                (kind.getattr("_of")?, PyTuple::new(py, [table, substance?, purpose?, audience?])?)
            }
        })
    }

    /// Calls ``concerning`` again.
    #[classmethod]
    fn _of(
        _cls: &Bound<'_, PyType>,
        table: &Self,
        substance: Option<String>,
        purpose: Option<String>,
        audience: Option<String>,
    ) -> PyResult<Self> {
        table.concerning(substance, purpose, audience)
    }
}
