//! What the law allows on the hair, by jurisdiction, with the source of every figure.
//!
//! A check reports what exceeds a limit, what is within it and what cannot be judged, each with the act, the date and
//! the basis of the figure. It never says that a mixture is safe, and no table here is complete.
//!
//! # Choose a table
//!
//! [`Table::of`] a [`Jurisdiction`], or [`Table::from_csv`] for a table of one's own, laid over another by
//! [`Table::overlaid`]. [`Table::listing`] says row by row what a check looks at and what it does not.
//!
//! # Check a bowl
//!
//! [`check`] holds a [`Composition`](crate::mix::Composition) against a table, [`check_peroxide`] a strength alone. Say what
//! it is for and who uses it by [`Use`].
//!
//! # Read the answer
//!
//! A [`Report`] has a [`Judgement`] for each level, [`SumJudgement`]s and [`Notice`]s; [`Report::findings`] gives them as the
//! one kind of finding that every check gives.
//!
//! # Salts and releasers
//!
//! [`Conversion::of`] says how much of the counted species a substance holds or sets free.

mod check;
mod content;
mod fit;
mod forms;
mod judgement;
mod jurisdiction;
mod level;
mod limit;
mod listing;
mod notice;
mod parse;
mod report;
mod subject;
mod sum;
mod table;
mod trace;
mod usage;
mod words;

pub use check::{check, check_peroxide};
pub use forms::Conversion;
pub use judgement::{Judgement, Standing, Why};
pub use jurisdiction::Jurisdiction;
pub use limit::Limit;
pub use listing::{ListedLimit, Listing, Treatment};
pub use notice::Notice;
pub use parse::TableError;
pub use report::Report;
pub use sum::SumJudgement;
pub use table::Table;
pub use usage::Use;
pub use words::{AppliesTo, Audience, LimitRule, Measured, Obtained, Purpose, Users};
