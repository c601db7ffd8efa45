//! properties
mod bounds;
mod colour;
mod column;
mod day;
mod hair;
mod head;
pub(crate) mod hostile;
mod interval;
mod lift;
mod limits;
mod mix;
mod money;
mod peroxide;
mod quantity;
mod service;
mod toner;
