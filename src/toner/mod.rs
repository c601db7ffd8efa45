//! Which mix of shades brings exposed pigment to a target.
//!
//! Dyes mix subtractively: their absorptions add up on top of the pigment that is there. The search goes through every
//! choice of up to a few shades and every mass the scale can weigh, and ranks by CIEDE2000. What it cannot reach it says,
//! with the nearest mix. Every prediction is a model with bounds; a strand test decides.
//!
//! # Describe the hair and the wish
//!
//! [`Exposed`] hair is modelled, seen, measured or white, and has a [`ToningPorosity`]; [`KnownStart`] takes the most trusted of
//! what is known. A [`Target`] is a colour or a look.
//!
//! # Find a mix
//!
//! [`find_toner`] answers a [`TonerRequest`] with the best [`TonerMix`] and others, each weighable.
//!
//! # Foresee and check
//!
//! [`toned`] says what a mix gives, [`check_toner`] what the rules of the trade say about it.
//!
//! # Without a search
//!
//! [`neutralising_dose`] says how much of a shade balances the warmth beside a carrier, [`pre_pigment`] what to lay under a
//! darker colour.

mod dose;
mod exposed;
mod find;
mod html;
mod known;
mod lighter;
mod mix;
mod porous;
mod pre_pigment;
mod predictor;
mod request;
mod rules;
mod search;
mod suits;
mod target;
mod trace;

pub use dose::{NeutralisingDose, neutralising_dose};
pub use exposed::{Exposed, ExposedBasis, ToningPorosity};
pub use find::find_toner;
pub use known::{KnownStart, StartError};
pub use mix::{Outcome, TonerAnswer, TonerMix, TonerPart};
pub use porous::PorousToning;
pub use pre_pigment::{PrePigmentMix, pre_pigment};
pub use predictor::toned;
pub use request::{TonerError, TonerRequest};
pub use suits::check_toner;
pub(crate) use suits::{adds_warmth, darker, lighter, suits, target_lighter};
pub use target::Target;
