//! api
mod colour;
mod limits;
mod mix;
mod money;
mod peroxide;
mod service;
mod toner;
