//! `foilwork fill`: a rule over every row of a file, read and written row by row.

mod batch;
mod rule;
mod table;

pub(super) use table::run;
