//! The shape of a shop file: plain fields whose names carry the unit, exactly as TOML and JSON write them.
//!
//! `x-unit` names the unit in messages, `x-parse` the reader of a text field.

mod class_price;
mod declared;
mod file;
mod products;
mod substance;
mod terms;

pub use class_price::ClassPriceEntry;
pub use declared::Declared;
pub use file::{ConsumableEntry, ShopFile};
pub(in crate::shop) use products::EntryFacts;
pub use products::{AdditiveEntry, DeveloperEntry, DiluentEntry, LightenerEntry, RemoverEntry, ShadeEntry};
pub use substance::SubstanceEntry;
pub use terms::TermsEntry;
