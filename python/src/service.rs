//! Wrappers of `foilwork::service` and of the command line.

use crate::error::ServiceFileError;
use foilwork::{
    reader::{Format, Problems},
    service, sheet,
};
use pyo3::{exceptions::PyValueError, prelude::*};
use std::ffi::OsString;

/// Run the command line with ``args`` (the first is the program's name) and return its exit status.
///
/// 0 fine, 1 the plan has findings that say stop, 2 bad input. Prints to the process's own standard output.
///
/// Args:
///     args: the words of the command line.
///
/// Returns:
///     The exit status.
///
/// Examples:
///     >>> from foilwork._native import main
///     >>> main(["foilwork", "plan", "no-such-file.toml"])
///     2
#[pyfunction]
pub fn main(py: Python<'_>, args: Vec<OsString>) -> u8 {
    py.detach(|| foilwork::cli::run(args))
}

/// A service plan: what to weigh, in which order, what was checked, what it costs.
///
/// Made by :func:`plan`. ``str(plan)`` is the bench sheet; ``plan.data()`` is the whole plan as plain Python data.
#[pyclass(frozen, module = "foilwork")]
pub struct Plan(service::Plan);

#[pymethods]
impl Plan {
    /// Whether any finding says stop; do not begin then.
    #[getter]
    fn is_blocked(&self) -> bool {
        self.0.blocked
    }

    /// The bench sheet as plain text, 80 columns wide.
    fn text(&self) -> String {
        sheet::bench_sheet(&self.0)
    }

    /// The plan as JSON text.
    fn json(&self) -> PyResult<String> {
        serde_json::to_string(&self.0).map_err(|error| PyValueError::new_err(error.to_string()))
    }

    /// The plan as dicts, lists, strings and numbers; every key carries its unit, every estimate its bounds.
    fn data<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        loads(py, &self.json()?)
    }

    /// The mixing cards, one for each fresh bowl, as dicts: who, what, lines, strength on the hair, times.
    fn cards<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        let cards = service::mixing_cards(&self.0);
        let json = serde_json::to_string(&cards).map_err(|error| PyValueError::new_err(error.to_string()))?;
        loads(py, &json)
    }

    fn __str__(&self) -> String {
        self.text()
    }

    fn __repr__(&self) -> String {
        let state = if self.0.blocked { ", blocked" } else { "" };
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
        other => return Err(PyValueError::new_err(format!("unknown format {other:?}: give \"toml\" or \"json\""))),
    };
    let planned = py.detach(|| service::plan_text(text, format));
    planned.map(Plan).map_err(|problems| raise_problems(py, &problems))
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
    loads(py, &service::schema().to_string())
}

fn loads<'py>(py: Python<'py>, json: &str) -> PyResult<Bound<'py, PyAny>> {
    py.import("json")?.call_method1("loads", (json,))
}

/// The text of all problems, and the same as a list of (line, field, message).
fn raise_problems(py: Python<'_>, problems: &Problems) -> PyErr {
    let error = ServiceFileError::new_err(problems.to_string());
    let list: Vec<(Option<usize>, &str, &str)> = problems
        .0
        .iter()
        .map(|problem| (problem.at.map(|at| at.line), problem.field.as_str(), problem.message.as_str()))
        .collect();
    match error.value(py).setattr("problems", list) {
        Ok(()) => error,
        Err(other) => other,
    }
}
