//! Wrappers of `foilwork::history`: lines of records, and who is forgotten.

use crate::{plain::objects, record::LogEntry, sequence::Sequence, service::Plan};
use foilwork::{history, record};
use pyo3::{
    prelude::*,
    types::{PyBytes, PyList, PyTuple},
};

/// The line that is kept of a service, with its line break; append it to a file of records in one write.
///
/// Args:
///     plan: the plan.
///     entries: the entries of its log.
///
/// Returns:
///     A JSON object in a line: a code for the guest, planned and actual, all that repeats the result.
///
/// Raises:
///     FoilworkError: never for entries that were made.
///
/// Examples:
///     >>> from foilwork import plan_file
///     >>> from foilwork.history import keep, read_records
///     >>> line = keep(plan_file("examples/soft-gradient.toml"), [])
///     >>> [record], problems = read_records(line)
///     >>> record.on, record.guest, len(record.section), problems
///     ('2026-11-25', 'J-014', 6, [])
#[pyfunction]
pub fn keep(plan: &Bound<'_, Plan>, entries: Sequence<LogEntry>) -> PyResult<String> {
    let entries = entries.0.iter().map(LogEntry::core).collect::<PyResult<Vec<_>>>()?;
    Ok(history::record_line(&history::keep(plan.get().core(), &record::replay(&entries))))
}

/// Records as objects of `foilwork.planned`, and what could not be read.
type Read<'py> = (Bound<'py, PyList>, Vec<String>);

fn read<'py>(py: Python<'py>, found: &history::KeptRecords) -> PyResult<Read<'py>> {
    let records = found.records.iter().map(|record| objects(py, "KeptRecord", record)).collect::<PyResult<Vec<_>>>()?;
    Ok((PyList::new(py, records)?, found.problems.iter().map(ToString::to_string).collect()))
}

/// Read a file of records; a line that a crash has torn is reported, and the others count.
///
/// Args:
///     text: the lines, as ``keep`` and ``foilwork record --keep`` write them.
///
/// Returns:
///     The records, and the lines that could not be read, each with its number.
///
/// Raises:
///     FoilworkError: never; what is wrong with a line is among the problems.
///
/// Examples:
///     >>> from foilwork.history import read_records
///     >>> records, problems = read_records('{"format":1,"on":"2026-11-25","title":"gloss"}\n{"format":1,"on')
///     >>> records[0].title, problems[0][:12]
///     ('gloss', 'line 2: torn')
#[pyfunction]
pub fn read_records<'py>(py: Python<'py>, text: &str) -> PyResult<Read<'py>> {
    read(py, &history::read_records(text))
}

/// Read records from comma-separated text, a row for each section.
///
/// Args:
///     text: the table, as ``records_csv`` writes it; columns may stand in any order.
///
/// Returns:
///     The records, and the rows that could not be read, each with its line.
///
/// Raises:
///     FoilworkError: never; what is wrong with a row is among the problems.
///
/// Examples:
///     >>> from foilwork.history import read_records_csv
///     >>> records, _ = read_records_csv("record,format,on,title,section,weighed_g\n1,1,2026-11-25,gloss,lengths,75\n")
///     >>> records[0].section[0].weighed_g
///     75.0
#[pyfunction]
pub fn read_records_csv<'py>(py: Python<'py>, text: &str) -> PyResult<Read<'py>> {
    read(py, &history::read_records_csv(text))
}

/// Records as comma-separated text for a spreadsheet, a row for each section.
///
/// Args:
///     text: the lines of the records.
///
/// Returns:
///     The table with its heading; lines that cannot be read are left out.
///
/// Examples:
///     >>> from foilwork.history import records_csv
///     >>> records_csv('{"format":1,"on":"2026-11-25","title":"gloss"}').splitlines()[1][:20]
///     '1,1,2026-11-25,gloss'
#[pyfunction]
pub fn records_csv(text: &str) -> String {
    history::records_csv(&history::read_records(text).records)
}

/// Take the lines of a guest out of a file of records or a strand book; every other byte stays as it is.
///
/// Args:
///     file: the bytes of the file.
///     guest: the code of the guest.
///
/// Returns:
///     What is left, the numbers of the lines taken out, and of lines that cannot be read and hold the code.
///
/// Raises:
///     TypeError: a file that is no bytes.
///
/// Examples:
///     >>> from foilwork.history import forget
///     >>> forget(b'{"guest":"J-014"}\n{"guest":"J-088"}\n', "J-014")
///     (b'{"guest":"J-088"}\n', [1], [])
#[pyfunction]
pub fn forget<'py>(py: Python<'py>, file: &[u8], guest: &str) -> PyResult<Bound<'py, PyTuple>> {
    let found = history::forget(file, guest);
    (PyBytes::new(py, &found.kept), found.removed, found.unsure).into_pyobject(py)
}
