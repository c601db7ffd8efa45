use jiff::civil::Date;

/// A day of the calendar.
pub(super) fn day(text: &str) -> Result<Date, String> {
    let wrong = || format!("\"{text}\" is not a day: give year-month-day, for example 2026-11-25");
    if text.len() == 10 { text.parse().map_err(|_| wrong()) } else { Err(wrong()) }
}
