use super::MoneyError;
use rust_decimal::Decimal;

/// Reads digits with a point, for example `12.50` or `-3`, and keeps every digit.
///
/// A comma, a sign of the currency, an exponent or a space is refused rather than guessed at.
///
/// # Errors
///
/// [`MoneyError::NotADecimal`] or [`MoneyError::TooManyDigits`], naming `field`.
///
/// # Example
///
/// ```
/// use foilwork::money::parse_decimal;
///
/// assert_eq!(parse_decimal("price", "12.50")?.to_string(), "12.50");
/// assert_eq!(
///     parse_decimal("price", "12,50").unwrap_err().to_string(),
///     r#"price "12,50" is not a decimal number: write digits with a point, for example 12.50"#,
/// );
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn parse_decimal(field: &'static str, text: &str) -> Result<Decimal, MoneyError> {
    let digits = text.strip_prefix('-').unwrap_or(text);
    let plain = digits.starts_with(|c: char| c.is_ascii_digit())
        && digits.ends_with(|c: char| c.is_ascii_digit())
        && digits.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    let text_begins = || text.chars().take(40).collect();
    if !plain || digits.matches('.').count() > 1 {
        return Err(MoneyError::NotADecimal { field, text: text_begins() });
    }
    Decimal::from_str_exact(text).map_err(|_| MoneyError::TooManyDigits { field, text: text_begins() })
}
