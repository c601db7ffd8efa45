//! The shop: what the salon has on its shelves and what it charges, said once for every use.
//!
//! A shop is a file of its own (`shop.toml`) or the table `[shop]` of a service file; both have the shape
//! [`ShopFile`](shape::ShopFile) and the same checks. [`Shop`] is the same with every figure a quantity. The plan, the
//! blend of bottles, the search for a toner and the costing of services all read it.
//!
//! # Read
//!
//! [`parse_shop`] a text, [`shop_schema`] for editors, [`Shop::new`] from a shape that was put together in code.
//!
//! # What is there
//!
//! [`Bottle`], [`Lightener`], [`StockedShade`], [`StockedAdditive`], [`Diluent`], [`Consumable`], each with what is in hand, the
//! price of a pack and what its maker declares ([`StockFacts`]). [`Shop::facts`] finds one by its name.
//!
//! # How it is written
//!
//! [`Habits`], for sheets and cards; [`Country`], whose habits they are.
//!
//! # What is charged
//!
//! [`Terms`], and [`Terms::business`] for a list of services; [`ClassPrice`] for a class of service.
//!
//! # What to order
//!
//! [`Shop::orders`], from what a list of services takes of each product.

mod amounts;
mod bottle;
mod choices;
mod class_price;
mod country;
mod document;
mod habits;
mod names;
mod order;
mod product;
pub mod shape;
mod stock_facts;
mod terms;
mod text_fields;
mod whole;

pub use bottle::Bottle;
pub use choices::{CountsFrom, Per, ShadeClass, StrengthBasis};
pub use class_price::ClassPrice;
pub use country::Country;
pub use document::{parse_shop, shop_schema};
pub use habits::Habits;
pub use order::{OrderDays, ProductOrder};
pub use product::{Consumable, Diluent, Lightener, OwnLimits, Remover, StockedAdditive, StockedShade};
pub use stock_facts::StockFacts;
pub use terms::Terms;
pub use whole::Shop;

pub(crate) use document::check_table;
pub(crate) use names::unique;
#[cfg(feature = "cli")]
pub(crate) use text_fields::hue;
pub(crate) use text_fields::{check as text_field, form as text_form};
