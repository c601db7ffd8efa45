//! Values of the colour room as others print them; the tables and their sources are in `tests/data/colour/`.

mod arithmetic;
mod misfits;
mod space;
mod wheel;

/// The rows of a comma-separated table without quotes, header left out.
pub(crate) fn rows(text: &'static str) -> Vec<Vec<&'static str>> {
    let rows: Vec<Vec<_>> = text.lines().skip(1).map(|line| line.split(',').collect()).collect();
    assert!(rows.len() > 1, "the table is empty");
    rows
}
