//! The plan as something to look at: text, pages, pictures. How it was computed is the business of [`service`](crate::service).
//!
//! # For the bench
//!
//! [`bench_sheet`] is the whole plan as text, [`bench_sheet_of`] some parts of it, [`card_sheet`] the cards of its bowls,
//! [`day_sheet`] the order of the work; [`bench_page`] is the same plan as a page that prints. Begin with these.
//!
//! # For the guest
//!
//! [`guest_page`] is what is planned, [`consultation_sheet`] and [`agreement_page`] what was decided before.
//!
//! # Pictures and lists
//!
//! [`head_map`], [`day_picture`] and [`cost_picture`] are drawings of a plan, [`head_map_text`] one for the terminal;
//! [`service_table`] is the price list.

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
mod first;
mod guest_page;
mod hair;
mod head;
mod lapsed;
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
mod sign;
mod stock;
mod visits;
mod writing;

pub use agreement_page::agreement_page;
pub use bench::{bench_sheet, bench_sheet_of};
pub use card::card_sheet;
pub use consultation::consultation_sheet;
pub use day::day_sheet;
#[cfg(feature = "cli")]
pub(crate) use day::{kept as day_rules, pieces as day_pieces, proof as day_proof, times as day_times};
pub use guest_page::guest_page;
#[cfg(feature = "workbook")]
pub(crate) use money::{booked, range as price_range, times};
pub use page::bench_page;
pub use part::SheetPart;
pub use pictures::{cost_picture, day_picture, head_map, head_map_text};
pub use services::service_table;
#[cfg(feature = "cli")]
pub(crate) use visits::{BETWEEN_VISITS, table as visits_table};
