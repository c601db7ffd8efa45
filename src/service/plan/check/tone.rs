//! Colour that deposits: on what it shows, and whether it takes warmth away or adds to it.

use super::super::{
    FirstStep, Hair,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    colour::{Hue, Level, ProductKind, Shade, Temper},
    finding::{Finding, Rule},
    quantity::Share,
    service::request::WorkStage,
    toner,
};

/// From this share on white hair decides what a light shade shows on.
const MUCH_WHITE_PERCENT: f64 = 30.0;

pub(super) fn check(hair: &Hair, sections: &Sections<'_>, first: &[FirstStep], findings: &mut Findings) {
    for work in sections.iter() {
        let found = match work.stage() {
            WorkStage::Toner => toner(work, sections),
            WorkStage::Section => gloss(hair, work, first),
            WorkStage::RootShadow => Vec::new(),
        };
        for finding in found {
            findings.push(&[work.place], finding.about(work.name()));
        }
    }
}

/// A toner on what its sections were lifted to: the darkest decides what still shows, the lightest what turns dark.
fn toner(work: &Work<'_>, sections: &Sections<'_>) -> Vec<Finding> {
    let (darkest, lightest) = (work.from.best(), work.from.high());
    let (Some(mix), Some(kind)) = (work.as_one_shade(), work.colour_kind()) else { return Vec::new() };
    let mut said = too_light(work, darkest);
    // What the search found it has said of its own mix.
    if !work.search.iter().any(|finding| finding.rule == Rule::TonerLevel) {
        said.extend(toner::darker(lightest, &mix));
        said.extend(work.task.wanted.as_ref().and_then(|look| toner::target_lighter(darkest, look.level, kind)));
    }
    let wanted = || sections.iter().filter(|section| work.goes_on(section)).any(wants_warmth);
    if !(wants_warmth(work) || wanted()) {
        said.extend(work.exposed.and_then(|exposed| toner::adds_warmth(&exposed, &mix)));
    }
    if said.is_empty() {
        // What passes is the plan: nobody has seen the lifted hair yet.
        said.push(judged_on_hair(toner::suits(darkest, &mix)));
    }
    said
}

/// Colour that only deposits, on hair as it is, or as a planned step lightens it before.
fn gloss(hair: &Hair, work: &Work<'_>, first: &[FirstStep]) -> Vec<Finding> {
    let deposits = [ProductKind::QuasiPermanentColour, ProductKind::SemiPermanentColour];
    let (Some(mix), true) = (work.as_one_shade(), work.colour_kind().is_some_and(|kind| deposits.contains(&kind)))
    else {
        return Vec::new();
    };
    let on = work.from.best();
    let lightened_first = first.iter().any(|step| step.lightens_first() && step.section == work.name());
    if let (true, Some(planned)) = (lightened_first, work.task.target) {
        let said = or_passed(too_light(work, planned), planned, &mix);
        return said.into_iter().map(judged_on_hair).collect();
    }
    match work.lightened {
        Some(_) => {
            let mut said = too_light(work, on);
            if !wants_warmth(work) {
                said.extend(work.exposed.and_then(|exposed| toner::adds_warmth(&exposed, &mix)));
            }
            or_passed(said, on, &mix)
        }
        None if hair.white.best().percent() < MUCH_WHITE_PERCENT => too_light(work, on),
        None => Vec::new(),
    }
}

/// Of a level that is planned, and that nobody has seen.
fn judged_on_hair(mut finding: Finding) -> Finding {
    finding.text += ", the level planned: judge it again on what the strand shows";
    finding
}

/// The shades of a mix that are lighter than the hair; a clear one only dilutes.
fn too_light(work: &Work<'_>, hair: Level) -> Vec<Finding> {
    let telling = work.shades().filter(|part| part.shade.strength() > Share::NONE);
    telling.filter_map(|part| toner::lighter(hair, part.shade)).collect()
}

fn or_passed(said: Vec<Finding>, hair: Level, mix: &Shade) -> Vec<Finding> {
    if said.is_empty() { vec![toner::suits(hair, mix)] } else { said }
}

/// Words of a wish that ask for the warmth that another wish has taken away.
const WARM_WORDS: [&str; 13] = [
    "gold",
    "golden",
    "honey",
    "caramel",
    "copper",
    "amber",
    "apricot",
    "peach",
    "strawberry",
    "red",
    "warm",
    "warmth",
    "yellow",
];

/// Whether the tone wanted is a warm one: named on the wheel, or in words that do not say the contrary.
fn wants_warmth(work: &Work<'_>) -> bool {
    let named = work.task.wanted.as_ref().and_then(|look| look.tone.main_hue()).map(Hue::temper);
    let words = work.task.target_tone.as_deref().unwrap_or_default().to_lowercase();
    let words: Vec<&str> = words.split(|c: char| !c.is_alphabetic()).collect();
    let warm = words.iter().any(|word| WARM_WORDS.contains(word));
    let contrary = words.iter().any(|word| ["no", "not", "without", "less", "never", "anti"].contains(word));
    named == Some(Temper::Warm) || (warm && !contrary)
}
