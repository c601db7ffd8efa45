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

/// A number with one comma too many: what it is with a point, and without the comma where that may part thousands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Comma {
    pub(crate) point: String,
    pub(crate) plain: Option<String>,
}

/// Where all that is wrong with a number is its comma; `is_number` says what its reader takes for one.
pub(crate) fn with_comma(text: &str, is_number: impl Fn(&str) -> bool) -> Option<Comma> {
    let point = text.replacen(',', ".", 1);
    (text.contains(',') && is_number(&point)).then(|| Comma { point, plain: without_thousands(text) })
}

#[cfg(test)]
mod tests {
    use super::{Comma, with_comma};

    #[test]
    fn a_comma_stands_for_a_point_or_parts_thousands() {
        let found = |text: &str| with_comma(text, |point| point.parse::<f64>().is_ok());
        let comma =
            |point: &str, plain: Option<&str>| Some(Comma { point: point.to_owned(), plain: plain.map(str::to_owned) });
        assert_eq!(found("12,5"), comma("12.5", None));
        assert_eq!(found("-1,200"), comma("-1.200", Some("-1200")));
        assert_eq!(found("0,200"), comma("0.200", None));
        for other in ["12.5", "12", "1,2,3", "1,200.5", "12,x", "12,5 g", "", ","] {
            assert_eq!(found(other), None, "{other:?}");
        }
        // What its reader does not take with a point either is no comma's fault.
        assert_eq!(with_comma("12,5", |_| false), None);
    }
}
