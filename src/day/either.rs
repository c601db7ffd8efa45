//! Guests of whom each may have one of two days: all the hands, or a single pair, so that another guest has the others.

use super::{
    floor::Floor,
    share::{NoHands, SharedFloor, nothing_beats, share_floor},
    timeline::Timeline,
};

/// Up to so many guests every choice of days is tried.
const EVERY_CHOICE_UP_TO: usize = 4;

/// The choice that ends first, the first days of all where none is better; its bound holds for every choice.
pub(crate) fn share_either(first: &[Timeline], second: &[Timeline], floor: &Floor) -> Result<SharedFloor, NoHands> {
    let mut found = share_floor(first, floor)?;
    for other in choices(first, second) {
        let other = share_floor(&other, floor)?;
        if other.finish < found.finish {
            found = other;
        }
    }
    Ok(SharedFloor { bound: nothing_beats(first, second, floor.people), ..found })
}

/// Every choice between two days of each guest but the first days of all; of many guests only the second days of all.
fn choices(first: &[Timeline], second: &[Timeline]) -> Vec<Vec<Timeline>> {
    let all = (1_usize << first.len().min(EVERY_CHOICE_UP_TO)) - 1;
    let chosen = if first.len() > EVERY_CHOICE_UP_TO { vec![usize::MAX] } else { (1..=all).collect() };
    let day = |choice: usize, guest: usize| {
        let days = if guest >= EVERY_CHOICE_UP_TO || choice >> guest & 1 == 1 { second } else { first };
        days.get(guest).cloned()
    };
    chosen.into_iter().map(|choice| (0..first.len()).filter_map(|guest| day(choice, guest)).collect()).collect()
}
