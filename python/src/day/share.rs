//! Wrappers of `foilwork::day`: several guests on one floor.

use super::{
    planned::AnyDay,
    timeline::Piece,
    work::{Floor, floor_of},
};
use crate::{answer::answer, error::raise, sequence::Sequence};
use foilwork::day;
use pyo3::prelude::*;

answer! {
    in "foilwork.day";
    /// A guest's place on the floor.
    GuestOnFloor {
        /// The guest's place in the list, from 0.
        guest: usize,
        /// When the work on this guest begins, in min.
        start_min: f64,
        /// When the last section is rinsed, in min.
        finish_min: f64,
        /// The pieces of work on the common clock, with the people of the floor.
        pieces: Vec<Piece>,
    }
}

answer! {
    in "foilwork.day";
    /// Guests who share people and basins.
    SharedFloor {
        /// In the order of the list.
        guests: Vec<GuestOnFloor>,
        /// When the last of them is rinsed, in min.
        finish_min: f64,
        /// A finish that nothing beats, in min.
        bound_min: f64,
        /// What the same guests would take one after the other, in min.
        in_turn_min: f64,
    }
}

/// Begin several guests so that people and basins suffice; their days stay as they were arranged.
///
/// Of up to six guests every order is tried, of more the order of the list. Starts are whole minutes.
///
/// Args:
///     days: the day of each guest: what ``arrange`` gives, or ``day.proposed`` of a plan.
///     floor: people and basins.
///
/// Returns:
///     When each guest is begun, and who does what.
///
/// Raises:
///     FoilworkError: a day that needs more people than there are, or no basin.
///
/// Examples:
///     >>> from foilwork.day import Floor, SectionWork, arrange, share_floor
///     >>> day = arrange([SectionWork("nape", apply_min=15, develop_min=35, longest_min=60, foils=12)])
///     >>> floor = share_floor([day, day], Floor(people=2))
///     >>> floor.finish_min < floor.in_turn_min
///     True
#[pyfunction]
#[pyo3(signature = (days, floor = None))]
pub fn share_floor(days: Sequence<AnyDay>, floor: Option<Floor>) -> PyResult<SharedFloor> {
    let days = days.0.iter().map(|day| day.0.core()).collect::<PyResult<Vec<_>>>()?;
    let found = day::share_floor(&days, &floor_of(floor)?).map_err(raise)?;
    let guest = |guest: &day::GuestOnFloor| GuestOnFloor {
        guest: guest.guest,
        start_min: guest.start.min(),
        finish_min: guest.finish.min(),
        pieces: guest.pieces.iter().map(Into::into).collect(),
    };
    Ok(SharedFloor {
        guests: found.guests.iter().map(guest).collect(),
        finish_min: found.finish.min(),
        bound_min: found.bound.min(),
        in_turn_min: found.in_turn.min(),
    })
}
