//! The day at the chair: who does what when, in which order, and when the guest can leave.
//!
//! One guest, a few pairs of hands. A section is mixed and put on in one go, with a look every few minutes and fresh bowls on
//! the way; it develops while the hands do other things; it is rinsed after its development and before its first strand has
//! been on too long. While the guest is at the basin nobody paints. Hands never put off what they could begin, except to
//! rinse first. Times on the hair count from a section's first strand to the water.
//!
//! Begin with [`SectionWork::new`] and [`arrange`].
//!
//! # State the work
//!
//! [`SectionWork`]; [`Before`] with its [`OrderRule`] and [`Until`]; the salon's [`Floor`].
//!
//! # Arrange it
//!
//! [`arrange`] finds the order with the earliest finish. For one pair of hands it proves it where that takes no longer than its
//! [`Effort`]: a handful of sections quickly, twelve mostly within a second; otherwise it gives the best found with a
//! bound that nothing can beat, and says so. [`in_this_order`] lays out an order as it is given. A [`Timeline`] holds the
//! [`SectionTimes`] and every [`Piece`]. What cannot be is explained by the smallest [`Clash`].
//!
//! # In its midst
//!
//! [`go_on`] arranges what is left from where a day stands ([`Underway`]).
//!
//! # Share people and basins
//!
//! [`share_floor`] lays the work on several guests over the same floor.

mod arrange;
mod bounds;
mod clash;
#[cfg(feature = "cli")]
mod either;
mod exact;
mod floor;
mod greedy;
mod least;
#[cfg(test)]
mod naive;
#[cfg(test)]
mod naive_bounds;
mod piece;
mod search;
mod share;
mod state;
mod step;
mod tables;
mod timeline;
mod trace;
mod underway;
mod visits;
mod ways;
mod work;

pub(crate) use arrange::with_all_hands;
pub use arrange::{CannotArrange, arrange, in_this_order};
pub use bounds::{SECTIONS_AT_MOST, TooMuch};
pub use clash::{Clash, Clashing};
#[cfg(feature = "cli")]
pub(crate) use either::share_either;
pub use floor::Floor;
pub use piece::{FoilGroup, Piece, PieceKind};
pub use share::{GuestOnFloor, NoHands, SharedFloor, share_floor};
pub use timeline::{SectionTimes, Timeline};
pub use underway::{OnHair, RestOfDay, Underway, go_on};
pub use work::{Before, Effort, OrderRule, SectionWork, Until};
