//! The command line: the only room that reads files and prints.
//!
//! Each command is a function from its arguments to an `Answer`; [`run`] alone touches the terminal. The Python
//! console script calls [`run`] too, so both are the same program.
//!
//! Exit status: 0 fine; 1 the plan or the log says stop; 2 bad input, nothing was written.

mod again;
mod answer;
mod append;
mod args;
mod blend;
mod business;
mod chart;
mod checklist;
mod choose;
mod consult;
mod convert;
mod cost;
mod day;
mod dilute;
mod fill;
mod foils;
mod forget;
mod grid;
mod hair;
mod head;
mod history;
mod input;
mod kind;
mod level;
mod lift;
mod limits;
mod note;
mod output;
mod plan;
mod price;
mod quote;
mod reactions;
mod read;
mod record;
mod records;
mod reorder;
mod replace;
mod rest;
mod run;
mod scale;
mod schema;
mod shop;
mod situation;
mod sources;
mod start;
mod strand_test;
mod swatch;
mod table;
mod titrate;
mod toner;
mod workbook;
mod worksheet;

pub use fill::{FillWords, fill_words, number_for_all_rows, poured_cautions};
pub use run::run;

use answer::{Answer, BLOCKED, Outcome, Refusal};
