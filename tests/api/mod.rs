//! api
mod business;
mod cli;
mod colour;
mod limits;
mod mix;
pub(crate) mod money;
mod peroxide;
mod service;
mod source;
mod toner;
