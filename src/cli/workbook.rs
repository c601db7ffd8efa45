//! Workbooks in and out: lists that come as .xlsx, and tables that go into one.

use super::{
    Answer, Outcome, Refusal,
    input::{bounded, bytes, bytes_of, failed, open, utf8},
    kind::{self, Kind},
    replace::replace,
};
use crate::{
    reader::Problems,
    workbook::{ListInWorkbook, list_in_workbook},
};
use std::{
    io::{Cursor, Read},
    path::Path,
};

/// How every workbook begins: it is an archive.
const BEGINS: &[u8] = b"PK\x03\x04";

/// As much of a table as says what it is.
const TELLING: u64 = 8;

/// A table that Python's foilwork reads, by how it begins. The first name of a CSV may begin so, too: then a letter, a separator or
/// the end of the line follows, and none of these is what a page of Parquet begins with.
fn read_by_python(begin: &[u8]) -> Option<&'static str> {
    match begin {
        [b'A', b'R', b'R', b'O', b'W', b'1', 0, 0, ..] => Some("an Arrow file"),
        [b'P', b'A', b'R', b'1', next, ..] if *next < b' ' && !b"\t\r\n".contains(next) => Some("a Parquet file"),
        [0xff, 0xff, 0xff, 0xff, ..] => Some("an Arrow stream"),
        _ => None,
    }
}

/// Writes a workbook, and says where it is.
pub(super) fn deliver(path: &Path, workbook: &[u8], status: u8) -> Outcome {
    if !path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("xlsx")) {
        let why = "spreadsheets refuse a workbook whose name does not end in .xlsx (give it that ending)";
        return Err(Refusal(format!("--xlsx {}: {why}", path.display())));
    }
    replace(path, workbook).map_err(|why| Refusal(format!("cannot write {}: {why}", path.display())))?;
    Ok(Answer { text: format!("workbook in {}\n", path.display()), status })
}

/// The list in a workbook that was read from a file.
fn list(path: &Path, bytes: &[u8]) -> Result<ListInWorkbook, Refusal> {
    list_in_workbook(bytes).map_err(|why| Refusal(format!("cannot read {}: {why}", path.display())))
}

/// A table of any length, to be read bit by bit; one in a workbook as its text, with where each line of that stands.
pub(super) fn open_list(path: &Path) -> Result<(Box<dyn Read>, Option<ListInWorkbook>), Refusal> {
    let mut source = open(path)?;
    let mut begin = Vec::new();
    source.by_ref().take(TELLING).read_to_end(&mut begin).map_err(|error| failed(path, error))?;
    let whole = Cursor::new(begin.clone()).chain(source);
    if let Some(format) = read_by_python(&begin) {
        return Err(Refusal(format!(
            "cannot read {}: it is {format}, which this program does not read (the foilwork of the Python package does, by the \
             same words, with pyarrow: pip install foilwork pyarrow)",
            path.display()
        )));
    }
    if !begin.starts_with(BEGINS) {
        return Ok((Box::new(whole), None));
    }
    let bytes = bounded(path, bytes_of(whole).map_err(|error| failed(path, error))?)?;
    let list = list(path, &bytes)?;
    Ok((Box::new(Cursor::new(list.csv.clone())), Some(list)))
}

/// A list, as text or in a workbook.
pub(super) struct List {
    name: String,
    pub(super) text: String,
    workbook: Option<ListInWorkbook>,
}

impl List {
    pub(super) fn read(path: &Path) -> Result<Self, Refusal> {
        let (name, bytes) = (path.to_string_lossy().into_owned(), bytes(path)?);
        if !bytes.starts_with(BEGINS) {
            return Ok(Self { name, text: utf8(path, bytes)?, workbook: None });
        }
        let list = list(path, &bytes)?;
        Ok(Self { name, text: list.csv.clone(), workbook: Some(list) })
    }

    /// All that is wrong with it, each with its line, or with its sheet and cell.
    pub(super) fn refused(&self, wanted: Kind, problems: &Problems) -> Refusal {
        let Some(list) = &self.workbook else { return kind::refused(&self.name, &self.text, wanted, problems) };
        let told = problems.0.iter().map(|problem| {
            let place = problem.at.map(|at| format!("{}: ", list.place(at.line, &problem.field))).unwrap_or_default();
            let field = if problem.field.is_empty() { String::new() } else { format!("{}: ", problem.field) };
            format!("{}: {place}{field}{}", self.name, problem.message)
        });
        Refusal(told.collect::<Vec<_>>().join("\n"))
    }
}
