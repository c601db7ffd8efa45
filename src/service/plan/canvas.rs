//! What a mix meets on a stretch of the strand: natural hair, and what is already there.

use super::{Existing, Hair};
use crate::{colour::Level, hair::Band, quantity::Length, service::shape::Zone, source::Interval};

/// The stretch that a mix lies on: a zone, and in cm where the length of the hair is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stretch {
    pub(super) zone: Zone,
    pub(super) cm: Option<(Length, Length)>,
}

/// What a mix meets on a stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Canvas {
    /// The levels there; the estimate is the darkest stretch, which needs the most lift.
    pub(super) level: Interval<Level>,
    /// That darkest stretch alone, as far as its reading may be off.
    pub(super) darkest: Interval<Level>,
    /// The darkest artificial colour of any stretch.
    pub(super) artificial: Option<Level>,
    /// The lightest stretch that is lighter than the natural level, as far as that is read: pigment was taken from it.
    pub(super) lightened: Option<Level>,
}

impl Canvas {
    fn and(self, here: Self) -> Self {
        Self {
            level: darker_of(self.level, here.level).widened_to(self.level).widened_to(here.level),
            darkest: darker_of(self.darkest, here.darkest),
            artificial: either(self.artificial, here.artificial, |one, other| other < one),
            lightened: either(self.lightened, here.lightened, |one, other| other > one),
        }
    }
}

impl Hair {
    /// What a mix on a stretch meets: the existing colour of all of it, else the natural level.
    pub(super) fn at(&self, stretch: Stretch) -> Canvas {
        let canvas = match (&self.strand, stretch.cm) {
            (Some(strand), Some((from, to))) => {
                let bands = strand.bands().iter().filter(|band| band.from < to && band.to > from);
                let own = |band: &Band| self.existing.iter().find(|existing| existing.from == Some(band.from));
                let here = bands.map(|band| own(band).map_or_else(|| self.natural(), |own| self.of_existing(own)));
                here.reduce(Canvas::and)
            }
            _ => {
                let stretches = STRETCHES.into_iter().filter(|part| stretch.zone.covers(*part));
                stretches.map(|part| self.in_stretch(part)).reduce(Canvas::and)
            }
        };
        canvas.unwrap_or_else(|| self.natural())
    }

    /// The most precise statement about a stretch counts: `ends` before `lengths` before `whole`.
    fn in_stretch(&self, stretch: Zone) -> Canvas {
        let there = self.existing.iter().filter(|existing| existing.covers(stretch));
        let reach = |zone: Option<Zone>| {
            STRETCHES.into_iter().filter(|stretch| zone.is_some_and(|zone| zone.covers(*stretch))).count()
        };
        match there.min_by_key(|existing| reach(existing.zone)) {
            Some(existing) => self.of_existing(existing),
            None => self.natural(),
        }
    }

    fn of_existing(&self, existing: &Existing) -> Canvas {
        self.of_level(existing.level, existing.artificial)
    }

    /// Hair whose level is stated.
    pub(super) fn of_level(&self, level: Level, artificial: bool) -> Canvas {
        Canvas {
            level: level.into(),
            darkest: level.into(),
            artificial: artificial.then_some(level),
            lightened: (level > self.natural_level.high()).then_some(level),
        }
    }

    const fn natural(&self) -> Canvas {
        Canvas { level: self.natural_level, darkest: self.natural_level, artificial: None, lightened: None }
    }

    /// What is stated that a mix on a stretch meets, and how many cm of it where that is known.
    pub(super) fn met_by(&self, stretch: Stretch) -> impl Iterator<Item = (&Existing, Option<Length>)> {
        self.existing.iter().filter_map(move |existing| match (existing.zone, stretch.cm) {
            (Some(zone), _) => zone.overlaps(stretch.zone).then_some((existing, None)),
            (None, Some(cm)) => existing.within(cm).map(|cm| (existing, Some(cm))),
            (None, None) => None,
        })
    }
}

/// The stretches of a strand that no zone divides.
const STRETCHES: [Zone; 3] = [Zone::Roots, Zone::MidLengths, Zone::Ends];

/// Whichever is there; of two the second where it is preferred.
fn either(one: Option<Level>, other: Option<Level>, preferred: impl Fn(Level, Level) -> bool) -> Option<Level> {
    match (one, other) {
        (Some(first), Some(second)) if preferred(first, second) => other,
        (None, _) => other,
        _ => one,
    }
}

/// The darker one, which needs the most lift.
fn darker_of(one: Interval<Level>, other: Interval<Level>) -> Interval<Level> {
    if other.best() < one.best() { other } else { one }
}
