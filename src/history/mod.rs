//! Many services: what is kept of each, read back line by line, summed up, learned from, and forgotten when a guest asks for it.
//!
//! The core parses and writes text; a caller appends a line in one write and replaces a file only once all is written.
//!
//! # Keep and read
//!
//! [`keep`] makes a [`KeptRecord`] of a plan and its log; [`record_line`] writes it, [`read_records`] reads a file of them into
//! [`KeptRecords`]; [`records_csv`] and [`read_records_csv`] the same as a table. [`record_schema`] is its shape; a line of an older
//! form passes through [`migrate`].
//!
//! # Sum up and learn
//!
//! [`summarise`] gives a [`Summary`] for each service, colourist, month or for all; [`lessons`] says what the records teach: grams
//! against the forecast, minutes for a foil, waste over time, weeks between visits; [`strand_readings`] are lines for a strand book.
//! In all of them a service that was kept twice counts once.
//!
//! # After the service
//!
//! [`rebooking`] says when regrowth will show; [`home_care`] what to mind at home, by what the hair went through.
//!
//! # Forget
//!
//! [`forget`] takes the lines of a guest out of a file and leaves every other byte as it is.

mod care;
mod columns;
mod day;
mod document;
mod forget;
mod keep;
mod lessons;
mod lines;
mod migrate;
mod once;
mod rebooking;
mod shape;
mod spread;
mod strands;
mod summary;
mod trace;
mod trend;

pub use care::{CareAdvice, HomeCare, home_care};
pub use columns::{read_records_csv, records_csv};
pub use document::{history_schema, record_schema};
pub use forget::{Forgotten, forget};
pub use keep::{keep, left_over_cost, left_over_wrong};
pub use lessons::{DemandLesson, FoilLesson, Lessons, foil_pace, lessons};
pub use lines::{KeptRecords, RecordProblem, read_records, record_line};
pub use migrate::{Migration, MigrationError, migrate};
#[cfg(feature = "cli")]
pub(crate) use once::{CountedOnce, counted_once};
pub use rebooking::{Rebooking, rebooking};
pub use shape::{KeptMixture, KeptPart, KeptRecord, KeptSection};
pub use spread::Learned;
pub use strands::strand_readings;
pub use summary::{GroupBy, Summary, Takings, summarise};
pub use trace::{trace_lessons, trace_summaries};
pub use trend::WasteTrend;
