//! What the law allows on the hair, by jurisdiction, with the source of every figure.
//!
//! A check reports what exceeds a limit, what is within it and what cannot be judged, each with the act, the date and
//! the basis of the figure. It never says that a mixture is safe, and no table here is complete.

mod check;
mod codes;
mod finding;
mod forms;
mod jurisdiction;
mod level;
mod limit;
mod listing;
mod notice;
mod parse;
mod record;
mod report;
mod sum;
mod table;

pub use check::{Use, check, check_peroxide};
pub use codes::{AppliesTo, Audience, Measured, Obtained, Purpose, Rule, Users};
pub use finding::{Finding, Verdict, Why};
pub use forms::Conversion;
pub use jurisdiction::{Jurisdiction, UnknownJurisdiction};
pub use limit::Limit;
pub use listing::{ListedLimit, Listing, Treatment};
pub use notice::Notice;
pub use parse::TableError;
pub use record::{FindingRecord, ReportRecord, SumRecord};
pub use report::Report;
pub use sum::SumFinding;
pub use table::Table;
