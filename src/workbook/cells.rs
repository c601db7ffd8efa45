//! Names of cells, and the formulas that several pages share.

use crate::money::Rounding;
use rust_xlsxwriter::utility::{row_col_to_cell, row_col_to_cell_absolute};

/// `C5`.
pub(super) fn at(row: u32, column: u16) -> String {
    row_col_to_cell(row, column)
}

/// `$C$5`, which stays where it is when a row is copied.
pub(super) fn fixed(row: u32, column: u16) -> String {
    row_col_to_cell_absolute(row, column)
}

/// `C5:C9`.
pub(super) fn down(column: u16, first: u32, last: u32) -> String {
    format!("{}:{}", fixed(first, column), fixed(last, column))
}

/// An amount that is not negative, as whole minor units of so many decimals.
///
/// The ninth decimal is as far as numbers of a spreadsheet are trusted.
pub(super) fn rounded(amount: &str, decimals: usize, rounding: Rounding) -> String {
    let (exact, unit) = (format!("ROUND({amount},9)"), 10_u64.pow(decimals as u32));
    match rounding {
        Rounding::MidpointAwayFromZero => format!("ROUND({exact},{decimals})"),
        Rounding::MidpointNearestEven => format!("{}/{unit}", nearest(&format!("ROUND({amount}*{unit},9)"))),
        Rounding::MidpointTowardZero => format!("-INT(0.5-ROUND({amount}*{unit},9))/{unit}"),
        Rounding::ToZero | Rounding::ToNegativeInfinity => format!("ROUNDDOWN({exact},{decimals})"),
        Rounding::AwayFromZero | Rounding::ToPositiveInfinity => format!("ROUNDUP({exact},{decimals})"),
    }
}

/// A whole number next to what a cell holds; one that lies in the middle goes to the even side, as the scale of foilwork does.
///
/// The ninth decimal is as far as numbers of a spreadsheet are trusted.
pub(super) fn nearest(cell: &str) -> String {
    format!("(ROUND({cell},0)-IF(ROUND({cell}-INT({cell}),9)=0.5,MOD(ROUND({cell},0),2),0))")
}
