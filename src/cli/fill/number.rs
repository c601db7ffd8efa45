//! Numbers as people write them into tables, and what to write instead where one is none.

use crate::text::{Comma, cell, shortened, with_comma};
use std::fmt;

/// Why a text is not taken for a number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum NoNumber {
    /// It has the form of a number, but nothing so large can be held.
    TooLarge,
    /// A word for a number without an end, or for none.
    Word,
    /// A comma where the point stands: the number with a point.
    DecimalComma(String),
    /// A comma before three digits, which may part thousands: the number with a point, and without the comma.
    EitherComma(String, String),
    /// Another text, or a number with more about it.
    Other,
}

/// Reads a number: digits with a point, and an exponent if there is one.
pub(super) fn number(text: &str) -> Result<f64, NoNumber> {
    match text.parse::<f64>() {
        Ok(number) if number.is_finite() => Ok(number),
        Ok(_) if text.contains(|c: char| c.is_ascii_digit()) => Err(NoNumber::TooLarge),
        Ok(_) => Err(NoNumber::Word),
        Err(_) => Err(with_a_comma(text)),
    }
}

/// What a text with one comma may mean.
fn with_a_comma(text: &str) -> NoNumber {
    match with_comma(text, |point| point.parse::<f64>().is_ok_and(f64::is_finite)) {
        Some(Comma { point, plain: Some(plain) }) => NoNumber::EitherComma(point, plain),
        Some(Comma { point, plain: None }) => NoNumber::DecimalComma(point),
        None => NoNumber::Other,
    }
}

/// The number in a field; an empty one is missing.
pub(super) fn number_in(field: &[u8]) -> Result<f64, String> {
    let text = std::str::from_utf8(field)
        .map_err(|_| "a field that is no UTF-8 text (save the table as UTF-8)".to_owned())?
        .trim();
    if text.is_empty() {
        return Ok(f64::NAN);
    }
    number(text).map_err(|why| {
        let way_out = match &why {
            NoNumber::TooLarge => "mend it, or leave the cell empty".to_owned(),
            NoNumber::DecimalComma(point) => format!("write the point, {point}"),
            NoNumber::EitherComma(point, plain) => format!("write {point} or {plain}, whichever it is"),
            NoNumber::Word => "leave the cell empty where there is none".to_owned(),
            NoNumber::Other => {
                "write digits with a point and no unit, such as 12.5, or leave the cell empty".to_owned()
            }
        };
        format!("{:?} {why} ({way_out})", shortened(text))
    })
}

/// What a value of `foilwork fill` is that is the name of no column: a number for all rows.
///
/// # Errors
///
/// What to say of it, with the option: it is no number, or beyond those that can be held, or a column that is not there.
///
/// # Example
///
/// ```
/// use foilwork::cli::number_for_all_rows;
///
/// assert_eq!(number_for_all_rows("--total", "60", &["stock"]), Ok(60.0));
/// assert_eq!(
///     number_for_all_rows("--total", "60,5", &["stock"]).unwrap_err(),
///     r#"--total: no column "60,5": the table has stock; a number holds for all rows (write the point, 60.5)"#,
/// );
/// ```
pub fn number_for_all_rows(option: &str, value: &str, names: &[impl AsRef<str>]) -> Result<f64, String> {
    number(value.trim()).map_err(|why| {
        let point = match &why {
            NoNumber::TooLarge | NoNumber::Word => {
                return format!("{option}: {value} {why} (give a column, or a number for all rows)");
            }
            NoNumber::DecimalComma(point) => format!(" (write the point, {point})"),
            NoNumber::EitherComma(point, plain) => format!(" (write {point} or {plain}, whichever it is)"),
            NoNumber::Other => String::new(),
        };
        let has: Vec<&str> = names.iter().map(AsRef::as_ref).collect();
        format!("{option}: no column {value:?}: the table has {}; a number holds for all rows{point}", has.join(", "))
    })
}

/// The field as a table of the reader's own takes it: with an apostrophe before every sign from which a spreadsheet would
/// calculate, unless it is a number, with a point or a comma. Bytes that are no UTF-8 stay.
pub(super) fn guarded(field: &[u8]) -> Vec<u8> {
    let Ok(text) = std::str::from_utf8(field) else {
        let characters: String = field.iter().copied().map(char::from).collect();
        return cell(&characters).chars().map(|c| c as u8).collect();
    };
    match number(text.trim()) {
        Err(NoNumber::Word | NoNumber::Other) => cell(text).into_owned().into_bytes(),
        _ => field.to_vec(),
    }
}

impl fmt::Display for NoNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooLarge => f.write_str("is beyond the numbers that can be held, from -1.79e308 to 1.79e308"),
            _ => f.write_str("is no number"),
        }
    }
}
