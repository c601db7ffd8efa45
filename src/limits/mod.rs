//! What the law allows on the hair, by jurisdiction, with the source of every figure.
//!
//! A check reports what exceeds a limit, what is within it and what cannot be judged, each with the act, the date and
//! the basis of the figure. It never says that a mixture is safe, and no table here is complete.

mod check;
mod forms;
mod judgement;
mod jurisdiction;
mod level;
mod limit;
mod listing;
mod notice;
mod parse;
mod report;
mod sum;
mod table;
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
