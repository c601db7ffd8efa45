/// A number with at most so many decimals: no zeros at the end, and no minus before a zero.
///
/// # Example
///
/// ```
/// use foilwork::text::number;
///
/// assert_eq!(number(46.40, 2), "46.4");
/// assert_eq!(number(1.0 / 3.0, 2), "0.33");
/// assert_eq!(number(-0.004, 2), "0");
/// assert_eq!(number(1200.0, 0), "1200");
/// ```
#[must_use]
pub fn number(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let short = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if short == "-0" { "0".to_owned() } else { short.to_owned() }
}

/// A number with so many significant digits, and no zeros after the point that say nothing.
///
/// Digits before the point are never cut off, and twelve decimals are the most that are shown.
///
/// # Example
///
/// ```
/// use foilwork::text::significant;
///
/// assert_eq!(significant(11.535_42, 5), "11.535");
/// assert_eq!(significant(0.020_003_2, 5), "0.020003");
/// assert_eq!(significant(123_456.7, 5), "123457");
/// ```
#[must_use]
pub fn significant(value: f64, digits: u8) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let before_point = value.abs().log10().floor() + 1.0;
    // Within 0 and 12, so the cast is exact.
    number(value, (f64::from(digits) - before_point).clamp(0.0, 12.0) as usize)
}

/// The same number without its comma, where that may part thousands: `1,234` is 1234, or else 1.234.
pub(crate) fn without_thousands(text: &str) -> Option<String> {
    let (whole, rest) = text.split_once(',')?;
    let digits = |text: &str, count: std::ops::RangeInclusive<usize>| {
        count.contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit())
    };
    let thousands = whole.trim_start_matches(['-', '+']);
    (digits(thousands, 1..=3) && !thousands.starts_with('0') && digits(rest, 3..=3)).then(|| format!("{whole}{rest}"))
}
