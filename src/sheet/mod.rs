//! The plan as text for the bench. How it was computed is the business of [`service`](crate::service).

mod bench;
mod layout;
mod mixes;
mod money;

pub use bench::bench_sheet;
