//! The plan as text for the bench. How it was computed is the business of [`service`](crate::service).

mod bench;
mod card;
mod hair;
mod lift;
mod mixes;
mod money;
mod services;

pub use bench::bench_sheet;
pub use card::card_sheet;
pub use services::service_table;
