//! Pages to read: why foilwork is built this way, and the job it is for, row by row.

#[doc = include_str!("../docs/why.md")]
pub mod why {}

#[doc = include_str!("../docs/job.md")]
pub mod job {}
