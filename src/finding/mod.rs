//! What a check found: one shape and one ladder for limits, colour and the service.

mod found;
mod reason;
mod rule;
mod verdict;

pub use found::{Finding, worst_first};
pub use reason::Reason;
pub use rule::Rule;
pub use verdict::Verdict;
pub(crate) use verdict::WORDS_OF_VERDICTS;
