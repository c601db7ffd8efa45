//! The plan as something to look at: text for the bench, a page, a page for the guest, pictures. How it was computed is the business of [`service`](crate::service).

mod bases;
mod bench;
mod card;
mod chair;
mod checks;
mod clock;
mod colour;
mod day;
mod guest_page;
mod hair;
mod head;
mod lift;
mod looks;
mod mixes;
mod money;
mod notes;
mod order;
mod page;
mod page_chair;
mod page_finding;
mod page_rest;
mod part;
mod pictures;
mod services;
mod stock;
mod trail_sheet;
mod writing;

pub use bench::{bench_sheet, bench_sheet_of};
pub use card::card_sheet;
pub use day::day_sheet;
pub use guest_page::guest_page;
pub use page::bench_page;
pub use part::SheetPart;
pub use pictures::{head_map, head_map_text};
pub use services::service_table;
pub use trail_sheet::trail_sheet;
