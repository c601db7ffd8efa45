//! The same rules over whole columns: `&[f64]` in, `&mut [f64]` out, no formula of their own.
//!
//! A column keeps the shape of its input whatever is in it: not-a-number stays not-a-number, and a value that the
//! scalar rule refuses becomes not-a-number and is counted in the [`ColumnOutcome`]. Nothing is allocated but
//! for the threads that long columns of colours are worked off with.

mod bounded;
mod coordinates;
mod difference;
mod lift;
mod outcome;
mod rows;
mod split;
mod strength;
mod triples;

pub use bounded::bounded;
pub use coordinates::{Coordinates, coordinates};
pub use difference::ciede2000;
pub use lift::levels_after;
pub use outcome::{ColumnError, ColumnOutcome};
pub use rows::{Cells, rows};
pub use strength::convert_strengths;
pub use triples::Triples;
