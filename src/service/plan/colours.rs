//! The fourth stage: levels to move, the pigment that will show, the tone that neutralises it, and the look at the end.

use super::{
    level_rule::{self, LevelRule},
    sections::{Sections, Work},
};
use crate::{
    colour::{Level, LevelChange, Swatch, UnderlyingPigment, contrast_between, underlying_pigment},
    finding::Finding,
    source::{Interval, Sourced},
};
use schemars::JsonSchema;
use serde::Serialize;

/// The colour side of one section.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionColour {
    /// The section; the mix of this name says what is put on it.
    pub section: String,
    /// The levels that it has now; the estimate is the darkest stretch.
    pub from_level: Interval<Level>,
    /// Level wanted.
    pub target_level: Level,
    /// Levels to lift (positive) or to deposit (negative).
    pub change_levels: Interval<LevelChange>,
    /// Tone wanted, in the words of the file.
    pub target_tone: Option<String>,
    /// Warm pigment that shows at the target level and the tone that neutralises it; absent where nothing is lifted.
    pub exposed: Option<Sourced<UnderlyingPigment>>,
    /// What the level rules of permanent colour expect; absent for every other product.
    pub level_rule: Option<LevelRule>,
    /// The hair at its target, modelled.
    pub swatch: Swatch,
}

/// Two sections side by side, by the colour model.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Contrast {
    /// One section.
    pub first: String,
    /// The other.
    pub second: String,
    /// Their colour difference.
    pub ciede2000: f64,
}

/// A contrast with what there is to say about it, and the places of the two sections.
pub(super) struct Pair {
    pub(super) contrast: Contrast,
    pub(super) finding: Option<Finding>,
    pub(super) places: [usize; 2],
}

/// What later stages ask of the colours.
pub(super) struct Colours {
    /// With its place in the working order.
    sections: Vec<(usize, SectionColour)>,
}

impl Colours {
    pub(super) fn of(sections: &Sections<'_>) -> Self {
        let colour = |work: &Work| Some((work.place, section(work, work.task.target?)));
        Self { sections: sections.iter().filter(|work| work.is_section()).filter_map(colour).collect() }
    }

    pub(super) fn at(&self, place: usize) -> Option<&SectionColour> {
        self.sections.iter().find(|(at, _)| *at == place).map(|(_, colour)| colour)
    }

    /// The sections that lie beside each other, once for each pair.
    pub(super) fn pairs(&self, sections: &Sections<'_>) -> Vec<Pair> {
        let mut pairs: Vec<Pair> = Vec::new();
        for work in sections.iter() {
            for other in sections.places(&work.task.beside) {
                let known = pairs.iter().any(|pair| pair.places == [other.place, work.place]);
                let looks = (self.at(work.place), self.at(other.place));
                let ((Some(one), Some(two)), false) = (looks, known) else { continue };
                let (difference, finding) = contrast_between(&one.swatch, &two.swatch);
                let contrast = Contrast {
                    first: work.name().to_owned(),
                    second: other.name().to_owned(),
                    ciede2000: difference.ciede2000,
                };
                pairs.push(Pair { contrast, finding, places: [work.place, other.place] });
            }
        }
        pairs
    }

    pub(super) fn into_sections(self) -> Vec<SectionColour> {
        self.sections.into_iter().map(|(_, colour)| colour).collect()
    }
}

fn section(work: &Work<'_>, target: Level) -> SectionColour {
    let change = work.from.map(|from| target - from);
    // Only lifting exposes pigment; depositing covers what is there. Where the reading leaves it open, it may show.
    let lifts = change.high().is_lift() && work.can_lift();
    SectionColour {
        section: work.name().to_owned(),
        from_level: work.from,
        target_level: target,
        change_levels: change,
        target_tone: work.task.target_tone.clone(),
        exposed: lifts.then(|| underlying_pigment(target)),
        level_rule: level_rule::of(work, target),
        swatch: if work.lightens() {
            Swatch::lightened(work.from.best(), target)
        } else {
            Swatch::of_look(target, &work.tone)
        },
    }
}
