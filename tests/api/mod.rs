//! api
mod business;
mod choice;
mod cli;
mod colour;
mod example_program;
mod finding;
mod lift;
mod limits;
mod mix;
pub(crate) mod money;
mod peroxide;
mod quantity;
mod service;
mod shop;
mod source;
mod text;
mod toner;
