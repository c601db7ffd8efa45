//! Wrappers of `foilwork::service`: planning a service file.

use super::error::raise_problems;
use crate::{
    error::{FoilworkError, raise},
    plain::plain,
};
use foilwork::{reader::Format, service, sheet};
use pyo3::{prelude::*, types::IntoPyDict};
use std::path::PathBuf;

/// A service plan: what to weigh, in which order, what was checked, what it costs.
///
/// Made by :func:`plan`. ``str(plan)`` is the bench sheet; ``plan.data()`` is the whole plan as plain Python data.
#[pyclass(frozen, module = "foilwork.service")]
pub struct Plan(service::Plan);

#[pymethods]
impl Plan {
    /// Whether any finding says stop; do not begin then.
    #[getter]
    fn is_blocked(&self) -> bool {
        self.0.is_blocked()
    }

    /// The bench sheet as plain text, 80 columns wide.
    fn text(&self) -> String {
        sheet::bench_sheet(&self.0)
    }

    /// The plan as JSON text.
    fn json(&self) -> PyResult<String> {
        serde_json::to_string(&self.0).map_err(|error| FoilworkError::new_err(error.to_string()))
    }

    /// The plan as dicts, lists, strings and numbers; every key carries its unit, every estimate its bounds.
    fn data<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        plain(py, &self.0)
    }

    /// The mixing cards, one for each fresh bowl, as dicts: who, what, lines, strength on the hair, times.
    fn cards<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        let cards = service::mixing_cards(&self.0).map_err(raise)?;
        plain(py, &cards)
    }

    fn __str__(&self) -> String {
        self.text()
    }

    fn __repr__(&self) -> String {
        let state = if self.0.is_blocked() { ", blocked" } else { "" };
        format!("<foilwork.Plan {:?}, {} mixes{state}>", self.0.title, self.0.mixes.len())
    }

    fn _repr_html_(&self) -> String {
        format!("<pre>{}</pre>", foilwork::text::escaped(&self.text()))
    }
}

/// Plan a service from the text of a service file.
///
/// Args:
///     text: the file's text.
///     format: ``"toml"`` or ``"json"``; both have the same shape.
///
/// Returns:
///     The plan. Findings that say stop are part of it; ask ``plan.is_blocked``.
///
/// Raises:
///     ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.
///
/// Examples:
///     >>> import foilwork
///     >>> try:
///     ...     foilwork.plan('format = 2')
///     ... except foilwork.ServiceFileError as error:
///     ...     print([problem for problem in error.problems if problem[1] == "format"])
///     [(1, 'format', '2 is out of range: give 1')]
#[pyfunction]
#[pyo3(signature = (text, format = "toml"))]
pub fn plan(py: Python<'_>, text: &str, format: &str) -> PyResult<Plan> {
    let format = match format {
        "toml" => Format::Toml,
        "json" => Format::Json,
        other => return Err(FoilworkError::new_err(format!("unknown format {other:?}: give \"toml\" or \"json\""))),
    };
    let planned = py.detach(|| service::plan_text(text, format));
    planned.map(Plan).map_err(|problems| raise_problems(py, &problems))
}

/// Plan a service from a file; ``.json`` is read as JSON, everything else as TOML.
///
/// Args:
///     path: the service file, UTF-8.
///
/// Returns:
///     The plan; ``print(plan)`` shows the bench sheet.
///
/// Raises:
///     ServiceFileError: everything that is wrong with the file, each with its line.
///     OSError: the file cannot be read.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> plan_file("examples/soft-gradient.toml").is_blocked
///     False
#[pyfunction]
pub fn plan_file(py: Python<'_>, path: PathBuf) -> PyResult<Plan> {
    let is_json = path.extension().is_some_and(|suffix| suffix.eq_ignore_ascii_case("json"));
    let encoding = [("encoding", "utf-8")].into_py_dict(py)?;
    // Python's own reader: its exceptions name the file and the reason as a caller expects them.
    let file = py.import("builtins")?.getattr("open")?.call((path,), Some(&encoding))?;
    let text = file.call_method0("read");
    file.call_method0("close")?;
    plan(py, text?.extract()?, if is_json { "json" } else { "toml" })
}

/// The JSON Schema of a service file (draft 2020-12), as plain Python data.
///
/// Returns:
///     The schema.
///
/// Examples:
///     >>> from foilwork import service_schema
///     >>> service_schema()["title"]
///     'ServiceFile'
#[pyfunction]
pub fn service_schema(py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
    plain(py, &service::schema())
}
