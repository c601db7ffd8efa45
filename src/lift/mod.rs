//! Lightening against time: how light, how fast, how sure, and what a strand test teaches.
//!
//! Everything here is a model with an interval. Without a strand test of the guest's own hair it spans two levels either
//! way, and a strand decides.
//!
//! # Describe
//!
//! A mixture on a hair: [`Situation`], with its levers as stated [`Factor`]s.
//!
//! # Forecast
//!
//! [`Lightening`] gives the level after a time, the time to a level and the chance of reaching it.
//!
//! # Learn
//!
//! From strands: [`StrandReading`], [`Experience`], [`Belief`]; [`advice`] says what is known now and which test teaches most.
//!
//! # Choose
//!
//! [`chances`] and [`gentlest`] strength, a [`series`] of visits, and [`finish_together`].
//!
//! # Watch
//!
//! [`looks`] and [`after_look`]; [`condition`] of the fibre.

mod advice;
mod arrow;
mod belief;
mod book;
mod condition;
mod cover;
mod dose;
mod due;
mod factors;
mod finish;
mod fit;
mod forecast;
mod fresh;
mod learn;
mod looks;
mod normal;
mod pigment;
mod questions;
mod reach;
mod real;
mod strand;
mod trace;
mod visits;

pub use advice::{Advice, advice};
pub use belief::Belief;
pub use book::{BookProblem, StrandBook, read_strand_book, strand_json_line, strand_line};
pub use condition::{Condition, Strain, condition};
pub use cover::Cover;
pub(crate) use due::{Due, TimeOn};
pub use factors::{Booster, Factor, InvalidPh, Ph, Situation, Uptake};
pub use finish::{CannotFinish, FinishTogether, TimedChoice, TimedSection, finish_together};
pub use forecast::Lightening;
pub use fresh::Next;
pub(crate) use fresh::{at_the_limit, chance_of_fresh, is_worth_it};
pub use learn::Experience;
pub(crate) use looks::is_there;
pub use looks::{AfterLook, LOOK_FOR, Look, after_look, looks};
pub use questions::{StrengthChance, chances, gentlest};
pub use reach::TimeTo;
#[cfg(feature = "cli")]
pub(crate) use strand::LIGHTER;
pub use strand::{Reader, StrandReading};
pub(crate) use trace::LEVEL_FORMULA;
pub use visits::{MOST_VISITS, OFTEN, Visit, series, weeks_between};
