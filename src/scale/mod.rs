//! Rounding masses to a real scale: whole divisions that add up, with the least harm to the ratio of the parts.
//!
//! Every mass that somebody is told to weigh passes through [`weigh`] or [`weigh_in_hand`]: a dilution, a blend from the
//! shelf, a bowl of colour. [`Division`] is what the scale counts in.

mod division;
mod error;
mod weigh;

pub use division::Division;
pub(crate) use division::FINEST_G;
pub use error::WeighError;
pub use weigh::{Weighed, Weighing, weigh, weigh_in_hand};
