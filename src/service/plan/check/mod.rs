//! The checks: each reads the finished stages and adds what it found.

mod alkalinity;
mod all;
mod amount;
mod booking;
mod brings;
mod consultation;
mod consulted;
mod first_steps;
mod forecast;
mod head;
mod instructions;
mod law;
mod lift;
mod on_scalp;
mod overlap;
mod sequence;
mod skin_test;
mod stock;
mod timing;
mod together;
mod tone;
mod white;

pub(super) use all::{Stages, check};
pub(super) use lift::most_lightening;
