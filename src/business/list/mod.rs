//! The same sums over a list of services: read (CSV, JSON), cost, price, total.
//!
//! Every amount of a line is whole in minor units, and a total is the sum of its column times the number sold, so a
//! table adds up down and across, to the minor unit.

mod business;
mod business_sums;
mod csv_text;
pub(super) mod field;
mod json_text;
mod line;
mod mark;
mod marking;
mod order;
mod packs;
pub(super) mod place;
mod priced;
mod priced_line;
pub(super) mod rows;
mod taken;
mod trace;
mod write;

pub use business::Business;
pub use csv_text::parse_csv;
pub use json_text::parse_json;
pub use line::{COLUMNS, PackUse, ServiceLine, Taken};
pub use mark::Mark;
pub use order::ListOrder;
pub use packs::Packs;
pub use priced::{PricedTable, Totals, price_services};
pub use priced_line::PricedLine;
pub use taken::taken;
