//! Checked quantities: a plain number never stands for a mass, a strength or a time.
//!
//! Each type has a private field, a checked constructor and a getter that are both named after the unit, and a
//! `Display` that prints the unit, which `FromStr` reads back. As plain data a quantity is a bare number in its own unit, so
//! the field's name has to end with that unit ([`Quantity::KEY`]). Nothing converts silently; what needs a density or a
//! convention says so in its name.
//!
//! # How much
//!
//! - [`Mass`], [`Volume`], [`Density`], [`Length`], [`Area`], [`Temperature`], [`Duration`], [`Share`], [`PricePerKg`].
//!
//! # How strong
//!
//! - By mass: [`MassFraction`], [`Molality`], [`ActiveOxygen`].
//! - By volume: [`MassConcentration`], [`AmountConcentration`], [`Normality`], [`OxygenVolumes`].
//! - On the bottle, not yet a strength: [`TradeLabel`].
//! - How fast it goes: [`LossRate`].
//!
//! # Any of them
//!
//! - [`Quantity`]: bounds, unit and plain number; [`InvalidQuantity`] and [`ParseQuantityError`]: what is refused and why.

mod concentration;
mod invalid;
mod mass;
mod mass_fraction;
mod newtype;
mod oxygen;
mod rate;
mod read;
mod share;
mod space;
mod temperature;
mod time;
mod trade_label;
mod unit;

pub use concentration::{AmountConcentration, MassConcentration, Molality, Normality};
pub use invalid::InvalidQuantity;
pub use mass::Mass;
pub use mass_fraction::MassFraction;
pub(crate) use newtype::quantity;
pub use oxygen::{ActiveOxygen, OxygenVolumes};
pub use rate::{LossRate, PricePerKg};
pub use read::ParseQuantityError;
pub(crate) use read::read;
pub use share::Share;
pub use space::{Area, Density, Length, Volume};
pub use temperature::Temperature;
pub use time::Duration;
pub use trade_label::TradeLabel;
pub use unit::Quantity;
