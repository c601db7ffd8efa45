//! The same rules over whole columns: `&[f64]` in, `&mut [f64]` out.
//!
//! A column keeps the shape of its input whatever is in it: not-a-number stays not-a-number, and a value that the
//! scalar rule refuses becomes not-a-number and is counted in the [`ColumnOutcome`]. Nothing is allocated but
//! for the threads that long columns are worked off with.
//!
//! # What goes in
//!
//! [`Cells`]: one number for all rows, a slice, or a [`Draw`] that fetches rows from wherever they lie; [`Triples`] of colour
//! coordinates.
//!
//! # Kernels
//!
//! [`convert_strengths`], [`densities`], [`blends`], [`make_ups`], [`strengths_after`], [`lifts_needed`], [`ciede2000`],
//! [`levels_after`], [`regrowths`] and their neighbours. Most go over a block of rows without a branch and ask the scalar rule only about
//! the rows that fall out of range. For that they say the rule of the room once more, without its branches; tests hold every
//! good row to the scalar rule, bit for bit ([`levels_after`] and [`coordinates`] to 1e-12).
//!
//! # Any rule
//!
//! [`rows`] applies a scalar rule of your own row by row, [`bounded`] one that gives bounds.

mod ageing;
mod blend;
mod bounded;
mod by_unit;
mod cells;
mod coordinates;
mod difference;
mod divisor;
mod hair;
#[cfg(test)]
mod left;
mod levels;
mod lift;
mod make_up;
mod on_scale;
mod outcome;
mod pour;
mod ratio;
mod rows;
mod screen;
mod split;
mod strength;
mod triples;
#[cfg(test)]
mod vouched;
#[cfg(test)]
mod vouched_strengths;
mod weighing;

pub use ageing::{half_lives, loss_rates, rates_of_half_lives, strengths_after, times_until};
pub use blend::{WhichMass, blends};
pub use bounded::bounded;
pub use cells::{Cells, Draw};
pub use coordinates::{Coordinates, coordinates};
pub use difference::ciede2000;
pub use hair::{diameters_by_caliper, growth_times, hair_cuts, regrowths};
pub use levels::{formula_levels, lifts_needed, result_levels};
pub use lift::levels_after;
pub use make_up::{WhichVolume, make_ups, strengths_after_make_up};
pub use on_scale::levels_on_scale;
pub use outcome::{ColumnError, ColumnOutcome};
pub use pour::{dilutions_by_volume, strengths_of_two};
pub use rows::rows;
pub use screen::screen_colours;
pub use strength::{convert_intervals, convert_strengths, convert_strengths_at, densities, density_intervals};
pub use triples::Triples;
pub use weighing::minimum_masses;
