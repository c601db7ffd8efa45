//! Worksheets for a class: problems in words, worked by the library, with a key and the usual wrong answers.
//!
//! # Worksheets
//!
//! Ask for a sheet by [`WorksheetRequest`]: topics, [`Difficulty`], how many, and a seed. The same request gives the same sheet
//! on every machine and in every version that keeps [`Worksheet::FORMAT`].
//!
//! Some problems are read from a picture, or have one beside them: [`ExercisePicture`], drawn on the page and told in words
//! elsewhere.
//!
//! [`worksheet`] gives a [`Worksheet`] of [`Exercise`]s: what is given, the one answer, each step of the [`Working`] with its
//! result, the answer by the library's own function where it has one, and [`OfferedAnswer`]s of which each wrong one names the
//! [`Mistake`] that leads to it.
//!
//! Write it by [`Worksheet::text`], [`Worksheet::html`], [`Worksheet::csv`]; it serialises too. The key has a page of its own.
//!
//! # Practical work
//!
//! [`checklist`] says what to watch for, what to write down, and which elements of published units it answers.
//!
//! # Where it is set
//!
//! The problems are set in the invented salon Juniper & Tide. A problem whose rounding could go either way, or whose wrong
//! answers are not all different from the right one, is drawn anew.

mod checklist;
mod checklist_page;
mod csv;
mod draft;
mod draw;
mod exercise;
mod html;
mod mistake;
mod observed;
mod observed_stage;
mod picture;
mod request;
mod tasks;
mod text;
mod topic;
mod unit;
mod worksheet;

pub use checklist::{Checklist, ChecklistPoint, MappedElement, checklist};
pub use exercise::{Exercise, ExerciseAnswer, OfferedAnswer, Working};
pub use mistake::Mistake;
pub use observed_stage::ObservedStage;
pub use picture::ExercisePicture;
pub use request::{WorksheetError, WorksheetRequest};
pub use text::SheetHalf;
pub use topic::{Difficulty, Topic};
pub use unit::TrainingUnit;
pub use worksheet::{Worksheet, worksheet};
