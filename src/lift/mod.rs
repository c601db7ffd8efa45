//! Lightening against time: how light, how fast, how sure, and what a strand test teaches.

mod belief;
mod dense;
mod dose;
mod factors;
mod finish;
mod forecast;
mod learn;
mod normal;
mod pigment;
mod strand;

pub use belief::Belief;
pub use factors::{Booster, Factor, InvalidPh, Ph, Situation, Thickness, Uptake};
pub use finish::{CannotFinish, FinishTogether, TimedChoice, TimedSection, finish_together};
pub use forecast::{Application, Lightening, TimeTo};
pub use learn::Experience;
pub use strand::{Reader, StrandReading};
