//! Numbers, ranges, lists and places as text: the small things that every page, message and command says the same way.
//!
//! # Numbers
//!
//! [`number`] (at most so many decimals), [`significant`] (so many digits), [`range`] and [`span`] (an estimate with its
//! bounds), [`in_hundred`] (a chance).
//!
//! # Words
//!
//! [`count`] (one bowl, two bowls), [`list`] (a, b and c); other people's: [`inert`] (nothing a terminal obeys), [`shortened`]
//! (no more than can be read).
//!
//! # Pages
//!
//! [`escaped`] (for HTML), [`cell`] (for a table that a spreadsheet opens; [`from_cell`] takes it back), [`wrapped`] and [`Sheet`] (80 columns).
//!
//! # Where a number comes from
//!
//! [`trail_text`] (results with their formula, inputs and sources).
//!
//! # Places
//!
//! [`Lines`] and [`Position`] (line and column of a byte).

mod cell;
mod html;
mod inert;
mod number;
mod place;
mod range;
mod sheet;
mod trail;
mod words;

pub use cell::{cell, from_cell};
pub(crate) use cell::{flat, quoted};
pub use html::escaped;
pub use inert::{inert, is_active, is_shown, shortened};
pub(crate) use number::{Comma, with_comma, without_thousands};
pub use number::{number, significant};
pub use place::{Lines, Position};
pub use range::{amount, in_hundred, range, rough, span};
pub(crate) use range::{of_hundred, whole_minutes};
pub use sheet::{Sheet, WIDTH, wrapped};
pub(crate) use trail::traced;
pub use trail::trail_text;
pub use words::{count, list};
