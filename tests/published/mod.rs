//! published
mod business;
mod colour;
mod hair;
mod head;
mod lift;
mod limits;
mod mix;
pub(crate) mod money;
mod peroxide;
mod service;
mod shop;
mod teach;
mod toner;
