//! Which mix of shades brings exposed pigment to a target.
//!
//! Dyes mix subtractively: their absorptions add up on top of the pigment that is there. The search goes through every
//! choice of up to a few shades and every mass the scale can weigh, and ranks by CIEDE2000. What it cannot reach it says,
//! with the nearest mix. Every prediction is a model with bounds; a strand test decides.

mod dose;
mod exposed;
mod find;
mod html;
mod known;
mod mix;
mod pre_pigment;
mod predictor;
mod request;
mod rules;
mod search;
mod suits;
mod target;

pub use dose::{NeutralisingDose, neutralising_dose};
pub use exposed::{Exposed, ExposedBasis, ToningPorosity};
pub use find::find_toner;
pub use known::{KnownStart, StartError};
pub use mix::{Outcome, TonerAnswer, TonerMix, TonerPart};
pub use pre_pigment::{PrePigmentMix, pre_pigment};
pub use predictor::toned;
pub use request::{TonerError, TonerRequest};
pub use suits::check_toner;
pub(crate) use suits::{adds_warmth, darker, lighter, suits, target_lighter};
pub use target::Target;
