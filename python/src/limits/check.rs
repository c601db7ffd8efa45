//! Wrappers of `foilwork::limits`: tables, checks, reports.

use crate::{
    bounds::Stated,
    error::{FoilworkError, raise},
    mix::Composition,
    plain::plain,
};
use foilwork::{
    limits::{self, Conversion, Jurisdiction, Table, Use},
    mix::{Cas, Form},
    quantity::MassFraction,
};
use pyo3::prelude::*;

fn usage(purpose: &str, audience: &str) -> PyResult<Use> {
    Ok(Use { purpose: purpose.parse().map_err(raise)?, audience: audience.parse().map_err(raise)? })
}

/// The jurisdictions with a built-in table, as (code, name). A table is never complete.
///
/// Examples:
///     >>> from foilwork.limits import jurisdictions
///     >>> jurisdictions()[0]
///     ('EU', 'European Union')
#[pyfunction]
pub fn jurisdictions() -> Vec<(&'static str, &'static str)> {
    Jurisdiction::ALL.iter().map(|j| (j.code(), j.words())).collect()
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
///     >>> from foilwork.limits import LimitTable
///     >>> japan = LimitTable("JP")
///     >>> japan.title, len(japan), japan.unverified
///     ('Japan', 1, 1)
#[pyclass(frozen, module = "foilwork.limits")]
pub struct LimitTable(Table);

#[pymethods]
impl LimitTable {
    #[new]
    fn new(jurisdiction: &str) -> PyResult<Self> {
        Ok(Self(Table::of(jurisdiction.parse::<Jurisdiction>().map_err(raise)?).clone()))
    }

    /// Read a table of one's own: comma-separated text with one header line.
    ///
    /// Needed columns: ``id, rule, substance, applies_to, user, figure, unit, measured``. Without ``how`` a row counts as
    /// stated by the user.
    #[staticmethod]
    fn from_csv(title: String, text: &str) -> PyResult<Self> {
        Table::from_csv(title, text).map(Self).map_err(raise)
    }

    /// This table with the rows of another: a row with a known id replaces the old one, the others are added.
    fn overlaid(&self, other: &Self) -> Self {
        Self(self.0.overlaid(&other.0))
    }

    /// The name of the jurisdiction, or what the user calls the table.
    #[getter]
    fn title(&self) -> &str {
        self.0.title()
    }

    /// How many rows are from memory, and so never the ground for "within".
    #[getter]
    fn unverified(&self) -> usize {
        self.0.unverified()
    }

    /// Every row with what a check does with it and what it does not, as dicts.
    fn listing<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        plain(py, &self.0.listing().limits)
    }

    /// The listing as text: what is checked, what is noted, what is not checked.
    fn text(&self) -> String {
        self.0.listing().to_string()
    }

    fn __len__(&self) -> usize {
        self.0.rows().len()
    }

    fn __repr__(&self) -> String {
        format!("<foilwork.limits.LimitTable {}, {} rows>", self.0.title(), self.0.rows().len())
    }
}

/// What a table has to say about a mixture; made by :func:`check_limits` and :func:`check_peroxide`.
#[pyclass(frozen, module = "foilwork.limits")]
pub struct LimitReport {
    data: serde_json::Value,
    text: String,
    exceeded: bool,
    complete: bool,
}

impl LimitReport {
    fn of(report: &limits::Report<'_>) -> PyResult<Self> {
        let data = serde_json::to_value(report).map_err(|error| FoilworkError::new_err(error.to_string()))?;
        let (text, exceeded) = (report.to_string(), report.is_exceeded());
        Ok(Self { data, text, exceeded, complete: report.is_within_everything_checked() })
    }
}

#[pymethods]
impl LimitReport {
    /// Whether any limit or ratio sum is exceeded.
    #[getter]
    const fn exceeded(&self) -> bool {
        self.exceeded
    }

    /// Whether everything in the bowl was judged and nothing found exceeded; no table is complete.
    #[getter]
    const fn within_everything_checked(&self) -> bool {
        self.complete
    }

    /// What was judged, as dicts: substance, level, where it stands, and the row of the table.
    fn judgements<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        plain(py, &self.data["judgements"])
    }

    /// The whole report as a dict, with ratio sums, notices and products that are not declared in full.
    fn data<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        plain(py, &self.data)
    }

    fn __str__(&self) -> &str {
        &self.text
    }

    fn __repr__(&self) -> String {
        let state = if self.exceeded { "EXCEEDED" } else { "not exceeded as far as judged" };
        format!("<foilwork.limits.LimitReport, {state}>")
    }
}

/// Hold a mixed bowl, and the products in it, against a table.
///
/// Args:
///     table: the table.
///     bowl: the bowl.
///     purpose: ``"oxidative-colour"``, ``"non-oxidative-colour"``, ``"lightening"`` or ``"lash-colour"``.
///     audience: ``"professional"`` or ``"general"``.
///
/// Returns:
///     What was judged: each level exceeded, within or not to be judged, with its source.
///
/// Raises:
///     FoilworkError: for an unknown purpose or audience.
///
/// Examples:
///     >>> from foilwork.limits import LimitTable, check_limits
///     >>> from foilwork.mix import Composition, DeclaredProduct, Ingredient
///     >>> developer = DeclaredProduct("developer", [Ingredient("hydrogen peroxide", 9, cas="7722-84-1")])
///     >>> bowl = Composition([(60, developer), (30, DeclaredProduct("lightener", []))])
///     >>> report = check_limits(LimitTable("EU"), bowl, "lightening")
///     >>> [(j["standing"], j["limit"]["figure"]) for j in report.judgements()]
///     [('within', '12 %')]
///
/// Source:
///     Each finding carries its own: act and entry, date of the list, how it was obtained.
#[pyfunction]
#[pyo3(signature = (table, bowl, purpose = "oxidative-colour", audience = "professional"))]
pub fn check_limits(table: &LimitTable, bowl: &Composition, purpose: &str, audience: &str) -> PyResult<LimitReport> {
    LimitReport::of(&limits::check(&table.0, &bowl.0, usage(purpose, audience)?))
}

/// Hold the hydrogen peroxide strength of a mixed bowl against a built-in table.
///
/// Args:
///     jurisdiction: code or name, for example ``"EU"``.
///     strength_ww: strength as applied in % w/w, as a number or (low, best, high).
///     purpose: as for :func:`check_limits`.
///     audience: as for :func:`check_limits`.
///
/// Raises:
///     FoilworkError: when there is no such table, purpose or audience, or the strength is out of range.
///
/// Examples:
///     >>> from foilwork.limits import check_peroxide
///     >>> check_peroxide("EU", 13).exceeded
///     True
#[pyfunction]
#[pyo3(signature = (jurisdiction, strength_ww, purpose = "lightening", audience = "professional"))]
pub fn check_peroxide(
    jurisdiction: &str,
    strength_ww: Stated<MassFraction>,
    purpose: &str,
    audience: &str,
) -> PyResult<LimitReport> {
    let of = usage(purpose, audience)?;
    let jurisdiction = jurisdiction.parse().map_err(raise)?;
    LimitReport::of(&limits::check_peroxide(jurisdiction, strength_ww.0, of))
}

/// Grams of the form the law counts in one gram of a substance: salt to base, releaser to hydrogen peroxide.
///
/// Args:
///     cas: CAS number of the substance.
///     counted_as: the form, for example ``"free-base"``, ``"h2o2-released"`` or ``"so2"``.
///
/// Returns:
///     The factor, or None where it is not known or not fixed.
///
/// Raises:
///     FoilworkError: for a mistyped CAS number or an unknown form.
///
/// Examples:
///     >>> from foilwork.limits import salt_factor
///     >>> round(salt_factor("124-43-6", "h2o2-released"), 4)
///     0.3616
///
/// Source:
///     Formulas from chemicals 1.5.2, atomic weights from periodictable 2.1.0.
#[pyfunction]
pub fn salt_factor(cas: &str, counted_as: &str) -> PyResult<Option<f64>> {
    let (cas, form): (Cas, Form) = (cas.parse().map_err(raise)?, counted_as.parse().map_err(raise)?);
    Ok(Conversion::of(cas, form).and_then(Conversion::grams_per_gram))
}
