//! The command line.

use crate::error::{FoilworkError, raise};
use foilwork::quantity::MassFraction;
use pyo3::{prelude::*, types::PyDict};
use std::{ffi::OsString, path::PathBuf};

/// Run the command line with ``args`` (the first is the program's name) and return its exit status.
///
/// 0 fine, 1 the plan or the log says stop, 2 bad input. Prints to the process's own standard output.
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

/// What the words of ``foilwork fill`` ask for, without doing it; for tables that the compiled command line does not read.
///
/// Args:
///     args: the words of the command line.
///
/// Returns:
///     The rule, the paths, whether texts are guarded, the values with their options, the names of the new columns, how
///     many of the values are strengths that are poured, and further options; None unless ``main`` would begin a ``fill`` by these words.
///
/// Examples:
///     >>> from foilwork._native import fill_words
///     >>> words = ["foilwork", "fill", "lift", "a.parquet", "--from", "level", "--target", "9", "--output", "b.parquet"]
///     >>> fill_words(words)["inputs"]
///     [('--from', 'level'), ('--target', '9')]
#[pyfunction]
pub fn fill_words(py: Python<'_>, args: Vec<OsString>) -> PyResult<Option<Bound<'_, PyDict>>> {
    let Some(words) = foilwork::cli::fill_words(args) else { return Ok(None) };
    let path = |path: PathBuf| path.into_os_string();
    let found = PyDict::new(py);
    found.set_item("rule", words.rule)?;
    found.set_item("table", path(words.table))?;
    found.set_item("output", path(words.output))?;
    found.set_item("refused", words.refused.map(path))?;
    found.set_item("guard", words.guard)?;
    found.set_item("inputs", words.inputs)?;
    found.set_item("results", words.results)?;
    found.set_item("poured", words.poured)?;
    found.set_item("further", words.further)?;
    Ok(Some(found))
}

/// What the command line says of the strongest peroxide that a table tells to pour, line by line.
///
/// Args:
///     strongest_ww_percent: its strength in % w/w.
///
/// Returns:
///     The lines.
///
/// Raises:
///     FoilworkError: a strength out of range.
///
/// Examples:
///     >>> from foilwork._native import poured_cautions
///     >>> poured_cautions(12)[-1]
///     'diluent that their maker allows. Never close the container.'
#[pyfunction]
pub fn poured_cautions(strongest_ww_percent: f64) -> PyResult<Vec<String>> {
    Ok(foilwork::cli::poured_cautions(MassFraction::from_ww_percent(strongest_ww_percent).map_err(raise)?))
}

/// What a value of ``foilwork fill`` is that is the name of no column: a number for all rows.
///
/// Args:
///     option: the option it was given for.
///     value: the text.
///     names: the columns there are.
///
/// Returns:
///     The number.
///
/// Raises:
///     FoilworkError: it is no number, beyond those that can be held, or a column that is not there.
///
/// Examples:
///     >>> from foilwork._native import number_for_all_rows
///     >>> number_for_all_rows("--total", "60", ["stock"])
///     60.0
#[pyfunction]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn number_for_all_rows(option: &str, value: &str, names: Vec<String>) -> PyResult<f64> {
    foilwork::cli::number_for_all_rows(option, value, &names).map_err(FoilworkError::new_err)
}
