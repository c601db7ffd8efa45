use super::ListError;
use calamine::{DataRef, Reader, Sheet, SheetType, SheetVisible, Xlsx};
use rust_xlsxwriter::utility::row_col_to_cell;
use std::{collections::BTreeMap, io::Cursor};

/// The most cells that are read.
const MOST_CELLS: usize = 4_000_000;
/// The most that a workbook unpacks to.
const MOST_BYTES: u64 = 256 << 20;
/// The most text that a list has: as much as a text file. Cells may share one text, so that a small archive may have far more.
const MOST_TEXT: usize = 64 << 20;
/// The most characters of a cell, as spreadsheets have it.
const MOST_CHARACTERS: usize = 32_767;

/// The last row and column that a sheet has, counted from 0.
const LAST_ROW: u32 = 1_048_575;
const LAST_COLUMN: u16 = 16_383;

/// The first sheet of a workbook as the text of a CSV file, and where each line of that stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ListInWorkbook {
    /// The name of the sheet.
    pub sheet: String,
    /// Its rows, separated by commas; a row has as many fields as the sheet has columns.
    pub csv: String,
    /// The names in its first row.
    names: Vec<String>,
    /// The row of the first line, and the column of the first field, counted from 0.
    begins: (u32, u16),
}

impl ListInWorkbook {
    /// The cell of a field of a line, counted from 0: `D4`. Lines are counted from 1.
    ///
    /// # Example
    ///
    /// See [`list_in_workbook`].
    #[must_use]
    pub fn cell(&self, line: usize, column: usize) -> String {
        let row = u32::try_from(line.saturating_sub(1)).unwrap_or(u32::MAX).saturating_add(self.begins.0);
        let column = u16::try_from(column).unwrap_or(u16::MAX).saturating_add(self.begins.1);
        row_col_to_cell(row.min(LAST_ROW), column.min(LAST_COLUMN))
    }

    /// The row of a line, both counted from 1.
    pub(crate) fn row(&self, line: usize) -> usize {
        (self.begins.0 as usize).saturating_add(line)
    }

    /// Where a field of a line stands: `sheet Services, cell D4`; of the whole row where the field has no column.
    ///
    /// Lines are counted from 1, as in a text.
    ///
    /// # Example
    ///
    /// See [`list_in_workbook`].
    #[must_use]
    pub fn place(&self, line: usize, field: &str) -> String {
        let plain = |name: &str| name.trim().to_lowercase().replace([' ', '-'], "_");
        match self.names.iter().position(|name| plain(name) == plain(field)) {
            Some(column) => format!("sheet {}, cell {}", self.sheet, self.cell(line, column)),
            None => format!("sheet {}, row {}", self.sheet, self.row(line)),
        }
    }
}

/// Reads the first sheet of a workbook (.xlsx) that is not hidden as a list: the names of the columns in its first row, then a row for each line.
///
/// Formulas give what the spreadsheet saved of them. Empty rows stay, so that lines and rows agree.
///
/// # Errors
///
/// [`ListError`] when it is no workbook or an empty one, and for a cell with an error, a date or a truth value,
/// for a formula without a saved result, and for more than 4,000,000 cells or 64 MiB of text.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::dilution_table, quantity::{Mass, MassFraction}};
/// use foilwork::workbook::{DilutionNames, dilution_workbook, list_in_workbook};
///
/// let [stock, target] = [12.0, 3.0].map(MassFraction::from_ww_percent);
/// let (total, division) = (Mass::from_g(60.0)?, Mass::from_g(1.0)?);
/// let table = dilution_table(&[stock?], &[target?], MassFraction::ZERO, total, division)?;
/// let names = DilutionNames { bottles: vec!["the new bottle".into()], weaker: "diluent".into() };
/// let list = list_in_workbook(&dilution_workbook(&table, &names)?)?;
/// assert!(list.csv.starts_with("Dilution by mass,"));
/// assert_eq!(list.place(1, "Dilution by mass"), "sheet Dilution, cell A1");
/// assert_eq!(list.cell(1, 2), "C1");
/// assert!(list_in_workbook(b"no workbook").is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn list_in_workbook(bytes: &[u8]) -> Result<ListInWorkbook, ListError> {
    let broken = |error: calamine::XlsxError| ListError::Broken(error.to_string());
    unpacks(bytes)?;
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).map_err(broken)?;
    let shown = |sheet: &&Sheet| sheet.typ == SheetType::WorkSheet && sheet.visible == SheetVisible::Visible;
    let sheet = book.sheets_metadata().iter().find(shown).map(|sheet| sheet.name.clone()).ok_or(ListError::Empty)?;
    let mut reader = book.worksheet_cells_reader(&sheet).map_err(broken)?;
    let mut cells: BTreeMap<(u32, u32), String> = BTreeMap::new();
    let mut text = 0_usize;
    while let Some(cell) = reader.next_cell_with_formula_metadata().map_err(broken)? {
        let (row, column) = cell.pos;
        let told = |what| {
            let cell = row_col_to_cell(row, u16::try_from(column).unwrap_or(u16::MAX));
            ListError::Cell { sheet: sheet.clone(), cell, what }
        };
        if cell.formula.is_some() && cell.value == DataRef::Empty {
            return Err(told(NO_RESULT.to_owned()));
        }
        let field = field(&cell.value).map_err(told)?;
        text = text.saturating_add(field.len());
        if text > MOST_TEXT {
            return Err(ListError::Wordy { sheet, most_mib: MOST_TEXT >> 20 });
        }
        if !field.is_empty() {
            cells.insert((row, column), field);
        }
        if cells.len() > MOST_CELLS {
            return Err(ListError::Long { sheet, most: MOST_CELLS });
        }
    }
    let (Some((&(first, _), _)), Some((&(last, _), _))) = (cells.first_key_value(), cells.last_key_value()) else {
        return Err(ListError::Empty);
    };
    let columns = || cells.keys().map(|(_, column)| *column);
    let (left, right) = (columns().min().unwrap_or(0), columns().max().unwrap_or(0));
    let (rows, width) = ((last - first) as usize + 1, (right - left) as usize + 1);
    if rows.saturating_mul(width) > MOST_CELLS {
        return Err(ListError::Long { sheet, most: MOST_CELLS });
    }
    let mut csv = String::new();
    let mut names = Vec::new();
    for row in first..=last {
        let fields: Vec<String> =
            (left..=right).map(|column| cells.remove(&(row, column)).unwrap_or_default()).collect();
        csv.push_str(&line(&fields));
        if row == first {
            names = fields;
        }
    }
    Ok(ListInWorkbook { sheet, csv, names, begins: (first, u16::try_from(left).unwrap_or(u16::MAX)) })
}

const NO_RESULT: &str = "a formula without a result (open and save the workbook in a spreadsheet)";

/// A small file may unpack to more than any memory: what it says of itself is asked before.
fn unpacks(bytes: &[u8]) -> Result<(), ListError> {
    let broken = |error: zip::result::ZipError| ListError::Broken(error.to_string());
    let mut archive = zip::ZipArchive::new(Cursor::new(bytes)).map_err(broken)?;
    let mut size = 0_u64;
    for part in 0..archive.len() {
        size = size.saturating_add(archive.by_index_raw(part).map_err(broken)?.size());
    }
    if size > MOST_BYTES {
        return Err(ListError::Broken(format!("it unpacks to more than {} MiB", MOST_BYTES >> 20)));
    }
    Ok(())
}

/// A line of the list; an empty row is an empty line, which lists skip.
fn line(fields: &[String]) -> String {
    if fields.iter().all(|field| field.trim().is_empty()) {
        return "\n".to_owned();
    }
    let mut writer = csv::Writer::from_writer(Vec::new());
    // Writing to memory does not fail.
    let _ = writer.write_record(fields);
    writer.into_inner().ok().and_then(|bytes| String::from_utf8(bytes).ok()).unwrap_or_default()
}

/// A cell as a person would have typed it into a CSV file, on one line.
fn field(value: &DataRef<'_>) -> Result<String, String> {
    match value {
        DataRef::Empty => Ok(String::new()),
        DataRef::Int(number) => Ok(number.to_string()),
        // As many digits as a spreadsheet shows; the bits beyond are of its arithmetic.
        DataRef::Float(number) => {
            Ok(format!("{number:.14e}").parse().map_or(*number, |number: f64| number).to_string())
        }
        DataRef::String(text) => on_one_line(text),
        DataRef::SharedString(text) => on_one_line(text),
        DataRef::Bool(_) => Err("a truth value".to_owned()),
        DataRef::DateTime(_) | DataRef::DateTimeIso(_) | DataRef::DurationIso(_) => Err("a date or a time".to_owned()),
        DataRef::Error(error) => Err(format!("the error {error}")),
    }
}

fn on_one_line(text: &str) -> Result<String, String> {
    if text.chars().nth(MOST_CHARACTERS).is_some() {
        return Err(format!("more than {MOST_CHARACTERS} characters"));
    }
    Ok(text.replace("\r\n", "\n").replace(['\r', '\n'], " "))
}
