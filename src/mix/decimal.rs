use super::parse_error::{Cursor, ParseError};
use rust_decimal::{Decimal, prelude::ToPrimitive};

/// Digits of a written amount: twelve are more than any scale shows and keep every product within 28 digits.
const DIGITS: usize = 12;

const NUMBER: &str = "a number above 0 such as 1 or 1.5";

/// Reads one positive decimal, written with a point and at most [`DIGITS`] digits.
pub(super) fn read(cursor: &mut Cursor<'_>) -> Result<Decimal, ParseError> {
    let start = cursor.mark();
    let digits = cursor.take_while(|c| c.is_ascii_digit() || c == '.');
    if cursor.peek() == Some(',') {
        return Err(cursor.expected("a decimal point, not a comma"));
    }
    if digits.is_empty() {
        return Err(cursor.expected(NUMBER));
    }
    if digits.bytes().filter(u8::is_ascii_digit).count() > DIGITS {
        return Err(cursor.expected_at(start, "at most 12 digits"));
    }
    match Decimal::from_str_exact(digits) {
        Ok(value) if value > Decimal::ZERO && !digits.starts_with('.') && !digits.ends_with('.') => Ok(value),
        _ => Err(cursor.expected_at(start, NUMBER)),
    }
}

/// The shortest decimal that reads back as `value`, so that 67.5 g is exactly 67.5.
pub(super) fn from_f64(value: f64) -> Option<Decimal> {
    // Going through the shortest text is what makes 0.1 mean one tenth; a binary conversion would not.
    let text = format!("{value}");
    Decimal::from_str_exact(&text).or_else(|_| text.parse()).ok()
}

/// The nearest `f64`; infallible for every `Decimal`.
pub(super) fn to_f64(value: Decimal) -> f64 {
    value.to_f64().unwrap_or(f64::NAN)
}
