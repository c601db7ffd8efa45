//! Peroxide against published tables, monographs and worked examples; see `tests/data/peroxide/sources.csv`.

mod density;
mod handling;
mod titration;
mod volumes;
mod worked;

use std::collections::HashMap;

/// One row of a reference table, by column name.
pub(crate) type Row = HashMap<String, String>;

pub(crate) fn rows(text: &str) -> Vec<Row> {
    csv::Reader::from_reader(text.as_bytes()).deserialize().map(|row| row.expect("well-formed row")).collect()
}
