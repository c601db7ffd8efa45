//! Every money row of the worked examples, and ISO 4217.
//!
//! `tests/data/money/worked_examples.csv` holds the rows as they were collected, with the source of each;
//! `sources.csv` says what each source is and how it was consulted. A check names its rows, and the numbers it must
//! reach are read from the row: nothing is copied by hand into a test.

mod currency;
mod prices;
pub(crate) mod rows;

/// The rows that a check names, from the text of the checks themselves.
#[test]
fn every_row_is_checked() {
    let checks = [include_str!("../business.rs"), include_str!("prices.rs")].concat();
    let rows = rows::all();
    let missing: Vec<_> =
        rows.iter().filter(|row| !checks.contains(&format!("\"{}\"", row.id))).map(|row| &row.id).collect();
    assert!(missing.is_empty(), "rows without a check: {missing:?}");
    assert_eq!(rows.len(), 58);
}
