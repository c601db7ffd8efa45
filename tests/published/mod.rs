//! published
mod business;
mod colour;
mod lift;
mod limits;
mod mix;
pub(crate) mod money;
mod peroxide;
mod service;
mod shop;
mod toner;
