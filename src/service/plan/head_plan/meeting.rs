//! Two formulas in one foil: which goes on first, and the shade that appears where they meet.

use super::super::{
    near_shades::near,
    sections::{Sections, Work},
};
use crate::{
    colour::{Level, Swatch, Tone, transition_between},
    service::request::Request,
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// Two formulas that meet in a foil so far apart that a shade between them is seen.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Meeting {
    /// The darker section, which goes on first.
    pub first: String,
    /// The lighter one.
    pub then: String,
    /// The level where they meet: half way between them.
    pub level: Level,
    /// The tone there: both in equal parts.
    pub tone: Tone,
    /// How it looks.
    pub swatch: Swatch,
    /// The shade of the shop that is nearest to it, to blend over a stretch; absent where none is near.
    pub shade: Option<MeetingShade>,
}

/// A shade of the shop for where two formulas meet.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct MeetingShade {
    /// Its code.
    pub code: String,
    /// How far it is from the look between the two, on white hair by the model.
    pub apart_ciede2000: Interval<f64>,
}

/// Every two sections that share a foil, once.
pub(super) fn all(request: &Request, sections: &Sections<'_>) -> Vec<Meeting> {
    let mut seen: Vec<[usize; 2]> = Vec::new();
    let mut found = Vec::new();
    for work in sections.iter() {
        for other in sections.places(&work.task.same_foil_as) {
            let pair = [work.place.min(other.place), work.place.max(other.place)];
            if work.place != other.place && !seen.contains(&pair) {
                seen.push(pair);
                found.extend(meeting(request, work, other));
            }
        }
    }
    found
}

fn meeting(request: &Request, work: &Work<'_>, other: &Work<'_>) -> Option<Meeting> {
    let (one, two) = (work.task.target?, other.task.target?);
    let between = transition_between((one, &work.tone), (two, &other.tone))?;
    let (first, then) = if two < one { (other, work) } else { (work, other) };
    let swatch = Swatch::of_look(between.level, &between.tone);
    let nearest = near(request, &swatch, |_| true).into_iter().next();
    let shade =
        nearest.map(|(stocked, apart)| MeetingShade { code: stocked.shade.code().to_owned(), apart_ciede2000: apart });
    Some(Meeting {
        first: first.name().to_owned(),
        then: then.name().to_owned(),
        level: between.level,
        tone: between.tone,
        swatch,
        shade,
    })
}
