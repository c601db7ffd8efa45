//! What the plan takes from the shelf, against what is in hand.

mod lines;
mod substitutes;

pub(super) use lines::pieces;
pub use lines::{ConsumableLine, StockCover, StockLine, StockPlan};
pub use substitutes::Substitute;
