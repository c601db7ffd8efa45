//! The plan as something to look at: text for the bench, a page, a page for the guest, pictures. How it was computed is the business of [`service`](crate::service).

mod agreement_page;
mod bases;
mod bench;
mod card;
mod chair;
mod checks;
mod clock;
mod colour;
mod consultation;
mod day;
mod guest_page;
mod guest_words;
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
mod page_day;
mod page_finding;
mod page_rest;
mod part;
mod pictures;
mod services;
mod stock;
mod trail_sheet;
mod visits;
mod writing;

pub use agreement_page::agreement_page;
pub use bench::{bench_sheet, bench_sheet_of};
pub use card::card_sheet;
pub use consultation::consultation_sheet;
pub use day::day_sheet;
#[cfg(feature = "cli")]
pub(crate) use day::{pieces as day_pieces, times as day_times};
pub use guest_page::guest_page;
pub use page::bench_page;
pub use part::SheetPart;
pub use pictures::{cost_picture, day_picture, head_map, head_map_text};
pub use services::service_table;
pub use trail_sheet::trail_sheet;
pub(crate) use visits::{BETWEEN_VISITS, table as visits_table};
