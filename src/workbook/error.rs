use rust_xlsxwriter::XlsxError;

/// Why there is no workbook: more rows than a sheet holds, say.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("no workbook of this: {0}")]
pub struct WorkbookError(pub(super) String);

impl From<XlsxError> for WorkbookError {
    fn from(error: XlsxError) -> Self {
        Self(error.to_string())
    }
}

/// Why a workbook could not be read as a list.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum ListError {
    /// The file is no workbook, or a broken one.
    #[error("it cannot be read as a workbook ({0}): save it as .xlsx, or the list as CSV")]
    Broken(String),
    /// A workbook without sheets that are shown, or whose first one is empty.
    #[error(
        "its first sheet (of those not hidden) is empty: put the list there, with the names of the columns in its first row"
    )]
    Empty,
    /// More cells than a list has.
    #[error("sheet {sheet} has too many cells (a list has at most {most}): split it")]
    Long {
        /// The sheet.
        sheet: String,
        /// The most cells that are read.
        most: usize,
    },
    /// More text than a list has.
    #[error("sheet {sheet} has too much text (a list has at most {most_mib} MiB): split it")]
    Wordy {
        /// The sheet.
        sheet: String,
        /// The most text that is read, in MiB.
        most_mib: usize,
    },
    /// A cell that is neither text nor number.
    #[error("sheet {sheet}, cell {cell}: holds {what}: write a text or a number")]
    Cell {
        /// The sheet.
        sheet: String,
        /// The cell.
        cell: String,
        /// What is in it.
        what: String,
    },
}
