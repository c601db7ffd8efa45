//! `foilwork fill`: a rule over every row of a file, read and written row by row.

mod batch;
mod number;
mod rule;
mod table;
mod words;

pub use number::number_for_all_rows;
pub(super) use table::run;
pub use words::{FillWords, fill_words, poured_cautions};
