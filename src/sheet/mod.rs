//! The plan as text for the bench. How it was computed is the business of [`service`](crate::service).

mod bases;
mod bench;
mod card;
mod chair;
mod checks;
mod colour;
mod hair;
mod head;
mod lift;
mod looks;
mod mixes;
mod money;
mod order;
mod part;
mod services;
mod writing;

pub use bench::{bench_sheet, bench_sheet_of};
pub use card::card_sheet;
pub use part::SheetPart;
pub use services::service_table;
