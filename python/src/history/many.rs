//! Wrappers of `foilwork::history`: many records summed up, and what they teach.

use crate::{error::raise, lift::StrandReading, plain::objects, source::TracedResult};
use foilwork::history;
use pyo3::{prelude::*, types::PyList};

/// Sum records up: use, waste, time, cost, price and margin. A service that was kept twice counts once; ``kept_twice`` says how
/// many lines repeat one.
///
/// Args:
///     text: the lines of the records; those that cannot be read are left out.
///     by: what to put together: ``"all"``, ``"service"``, ``"colourist"`` or ``"month"``.
///
/// Returns:
///     A :class:`foilwork.planned.Summary` for each, in the order of the names.
///
/// Raises:
///     FoilworkError: another grouping.
///
/// Examples:
///     >>> from pathlib import Path
///     >>> from foilwork.history import summarise
///     >>> text = Path("examples/juniper_and_tide_records.jsonl").read_text()
///     >>> [(one.of, one.services, one.money[0].margin_percent) for one in summarise(text, "colourist")]
///     [('R.', 3, '42.07'), ('W.', 5, '39.14')]
#[pyfunction]
#[pyo3(signature = (text, by = "service"))]
pub fn summarise<'py>(py: Python<'py>, text: &str, by: &str) -> PyResult<Bound<'py, PyList>> {
    let found = history::summarise(&history::read_records(text).records, by.parse().map_err(raise)?);
    PyList::new(py, found.iter().map(|one| objects(py, "Summary", one)).collect::<PyResult<Vec<_>>>()?)
}

/// What records teach: grams used over grams expected, minutes for a foil, waste over time, weeks between visits, each with how
/// many there are and its 80 % interval. A service that was kept twice counts once; ``kept_twice`` says how many lines repeat one.
///
/// Args:
///     text: the lines of the records; those that cannot be read are left out.
///
/// Returns:
///     A :class:`foilwork.planned.Lessons`.
///
/// Raises:
///     FoilworkError: never for a text.
///
/// Examples:
///     >>> from pathlib import Path
///     >>> from foilwork.history import lessons
///     >>> found = lessons(Path("examples/juniper_and_tide_records.jsonl").read_text())
///     >>> found.foils[1].colourist, found.foils[1].min_per_foil.count
///     ('W.', 9)
#[pyfunction]
pub fn lessons<'py>(py: Python<'py>, text: &str) -> PyResult<Bound<'py, PyAny>> {
    objects(py, "Lessons", &history::lessons(&history::read_records(text).records))
}

/// What records say of lift, as readings for a strand book; not what was read with a toner on it, which darkens.
///
/// Args:
///     text: the lines of the records; those that cannot be read are left out.
///
/// Returns:
///     A reading for each lightened section whose time and result were noted.
///
/// Examples:
///     >>> from pathlib import Path
///     >>> from foilwork.history import strand_readings
///     >>> first = strand_readings(Path("examples/juniper_and_tide_records.jsonl").read_text())[0]
///     >>> first.guest, first.before_level, first.after_level, first.time_min
///     ('J-014', 6.0, 8.5, 46.0)
#[pyfunction]
pub fn strand_readings(text: &str) -> Vec<StrandReading> {
    history::strand_readings(&history::read_records(text).records).iter().map(Into::into).collect()
}

/// How waste, profit and margin of each group of records come about.
///
/// Args:
///     text: the lines of the records; those that cannot be read are left out.
///     by: as of :func:`summarise`.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Raises:
///     FoilworkError: another grouping.
///
/// Examples:
///     >>> from pathlib import Path
///     >>> from foilwork.history import trace_summaries
///     >>> text = Path("examples/juniper_and_tide_records.jsonl").read_text()
///     >>> [one.what for one in trace_summaries(text, "all")]
///     ['all: waste', 'all: profit', 'all: margin']
#[pyfunction]
#[pyo3(signature = (text, by = "service"))]
pub fn trace_summaries(text: &str, by: &str) -> PyResult<Vec<TracedResult>> {
    let records = history::read_records(text).records;
    let found = history::trace_summaries(&records, by.parse().map_err(raise)?);
    Ok(found.into_iter().map(Into::into).collect())
}

/// How the figures that records teach come about, with what each is the mean of.
///
/// Args:
///     text: the lines of the records; those that cannot be read are left out.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult` for each.
///
/// Examples:
///     >>> from pathlib import Path
///     >>> from foilwork.history import trace_lessons
///     >>> found = trace_lessons(Path("examples/juniper_and_tide_records.jsonl").read_text())
///     >>> found[0].what
///     'grams used over grams expected, all sections'
#[pyfunction]
pub fn trace_lessons(text: &str) -> Vec<TracedResult> {
    history::trace_lessons(&history::read_records(text).records).into_iter().map(Into::into).collect()
}
