//! How much work is arranged at all: the time of a search and the memory of a day grow with it.

use super::{Before, Floor, SectionWork, Timeline};
use crate::{quantity::Duration, text::amount};

/// More sections than these are not arranged: no head has as many.
pub const SECTIONS_AT_MOST: usize = 40;
// The exact search keeps a bit of one word for each.
const _: () = assert!(SECTIONS_AT_MOST < 64);
const RULES_AT_MOST: usize = 2_000;
const PEOPLE_AT_MOST: u32 = 8;
const FLOOR_AT_MOST: u32 = 100;
const BOWLS_AT_MOST: u32 = 100;
const GUESTS_AT_MOST: usize = 50;
/// In minutes.
const LOOK_EVERY_AT_LEAST: f64 = 1.0;
const WEEK: f64 = 7.0 * 24.0 * 60.0;
const DAY: f64 = 24.0 * 60.0;

/// More than a day is arranged for.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TooMuch {
    /// Sections.
    #[error("{given} sections: at most {most} are arranged (join those that are alike)", most = SECTIONS_AT_MOST)]
    Sections {
        /// How many there are.
        given: usize,
    },
    /// Rules.
    #[error("{given} rules: at most {most} are kept (leave out those that follow from others)", most = RULES_AT_MOST)]
    Rules {
        /// How many there are.
        given: usize,
    },
    /// People.
    #[error("{given} people: at most {most} work on one guest (give fewer)", most = PEOPLE_AT_MOST)]
    People {
        /// How many there are.
        given: u32,
    },
    /// People of a floor.
    #[error("{given} people: at most {most} share a floor (give fewer)", most = FLOOR_AT_MOST)]
    Floor {
        /// How many there are.
        given: u32,
    },
    /// Bowls of one section.
    #[error("{section}: {given} bowls: at most {most} for a section (mix larger ones)", most = BOWLS_AT_MOST)]
    Bowls {
        /// The section.
        section: String,
        /// How many there are.
        given: u32,
    },
    /// Looks that leave no time to work.
    #[error("a look every {} min: at least {most} min lie between two (or let a look take no time)", amount(*.given, 2), most = LOOK_EVERY_AT_LEAST)]
    Looks {
        /// How long lies between two looks.
        given: Duration,
    },
    /// All the work and developments one after the other.
    #[error("{:.0} min of work and development: at most {most} min, a week, are arranged (check the minutes)", .given_min, most = WEEK)]
    Time {
        /// All of it, in minutes.
        given_min: f64,
    },
    /// A day in its midst on a clock that runs too far from its zero.
    #[error("{what} {} min: at most {most} min, a week, from the zero of its clock (count from the first work of the day)", amount(*.given, 0), most = WEEK)]
    Clock {
        /// Which of its times: now, or the first or the last strand of a section.
        what: &'static str,
        /// What it says.
        given: Duration,
    },
    /// Guests on one floor.
    #[error("{given} guests: at most {most} share a floor (part them)", most = GUESTS_AT_MOST)]
    Guests {
        /// How many there are.
        given: usize,
    },
    /// A guest whose own day is longer than a day.
    #[error("guest {guest}: {} min: at most {most} min are laid beside others (part the work)", amount(*.given, 0), most = DAY)]
    Guest {
        /// The guest's place, from 0.
        guest: usize,
        /// How long the day of this guest is.
        given: Duration,
    },
}

/// Whether this work can be searched.
pub(super) fn bounded(work: &[SectionWork], before: &[Before], floor: &Floor) -> Result<(), TooMuch> {
    if work.len() > SECTIONS_AT_MOST {
        return Err(TooMuch::Sections { given: work.len() });
    }
    if before.len() > RULES_AT_MOST {
        return Err(TooMuch::Rules { given: before.len() });
    }
    if floor.people > PEOPLE_AT_MOST {
        return Err(TooMuch::People { given: floor.people });
    }
    let looks = floor.look.min() > 0.0 && floor.look_every.min() > 0.0;
    if looks && floor.look_every.min() < LOOK_EVERY_AT_LEAST {
        return Err(TooMuch::Looks { given: floor.look_every });
    }
    if let Some(one) = work.iter().find(|one| one.bowls > BOWLS_AT_MOST) {
        return Err(TooMuch::Bowls { section: one.name.clone(), given: one.bowls });
    }
    let of = |one: &SectionWork| {
        let mixing = f64::from(one.bowls.max(1)) * floor.mix.min();
        let hands = mixing + one.apply.min() + floor.looks_while(one.apply).min();
        hands + one.develop.min() + floor.walk.min() + floor.rinse.min()
    };
    let given_min: f64 = work.iter().map(of).sum();
    if given_min > WEEK { Err(TooMuch::Time { given_min }) } else { Ok(()) }
}

/// Whether these times of a day in its midst, each with its name, stay within what is counted.
pub(super) fn bounded_clock(mut times: impl Iterator<Item = (&'static str, Duration)>) -> Result<(), TooMuch> {
    match times.find(|(_, at)| at.min() > WEEK) {
        Some((what, given)) => Err(TooMuch::Clock { what, given }),
        None => Ok(()),
    }
}

/// Whether these days can be laid on one floor.
pub(super) fn bounded_floor(days: &[Timeline], floor: &Floor) -> Result<(), TooMuch> {
    if days.len() > GUESTS_AT_MOST {
        return Err(TooMuch::Guests { given: days.len() });
    }
    if floor.people > FLOOR_AT_MOST {
        return Err(TooMuch::Floor { given: floor.people });
    }
    match days.iter().enumerate().find(|(_, day)| day.finish.min() > DAY) {
        Some((guest, day)) => Err(TooMuch::Guest { guest, given: day.finish }),
        None => Ok(()),
    }
}
