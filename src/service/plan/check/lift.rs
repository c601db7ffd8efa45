//! Whether the levels asked for are within what the products do.

use super::super::{
    FirstStep, Mix,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    colour::{Level, LevelChange},
    finding::{
        Finding, Rule,
        Verdict::{self, NotJudged, Warning},
    },
    quantity::MassFraction,
    source::{COMMON_PRACTICE, Interval, citations::trade},
};

pub(super) fn check(sections: &Sections<'_>, mixes: &[Mix], first: &[FirstStep], findings: &mut Findings) {
    for (work, mix) in sections.iter().zip(mixes) {
        for finding in &work.search {
            findings.push(&[work.place], finding.clone());
        }
        let lifted = first
            .iter()
            .enumerate()
            .find(|(_, step)| step.lightens_first() && work.is_section() && step.section == work.name());
        let cleaned =
            || first.iter().any(|step| step.cleans_first() && work.is_section() && step.section == work.name());
        match (work.change(), lifted) {
            (Some(change), Some(step)) if !work.lightens() => before(work, step, change, findings),
            (Some(_), None) if !work.lightens() && lifts_artificial(work).is_some() && cleaned() => {
                cleaning(work, findings);
            }
            (Some(change), _) if work.lightens() => lightener(work, mix, change, findings),
            (Some(change), _) if work.can_lift() => colour(work, mix, change, findings),
            (Some(change), _) => deposit(work, change, findings),
            (None, _) => {}
        }
    }
}

/// Whether a change is more than a number of levels: by the estimate, or only if the natural level stated is off.
fn beyond(change: Interval<LevelChange>, most: f64) -> Option<Verdict> {
    match change {
        change if change.best().levels() > most => Some(Warning),
        change if change.high().levels() > most => Some(NotJudged),
        _ => None,
    }
}

/// The levels to lift in words, with what they come to if the reading is off.
fn levels(change: Interval<LevelChange>, verdict: Verdict) -> String {
    let best = change.best().levels();
    match verdict {
        NotJudged => format!("{best:.1} levels, {:.1} if the natural level is read too light,", change.high().levels()),
        _ => format!("{best:.1} levels"),
    }
}

/// Levels that permanent colour lifts natural hair, by developer.
///
/// Source: North Carolina cosmetology examination study guide, section 7.2 (10 vol deposit only, 20 vol 1 to 2, 30 vol
/// 2 to 3, 40 vol 3 to 4), read with the trade's 3 % for each 10 vol.
fn most_lift(developer: MassFraction) -> f64 {
    match developer.ww_percent() {
        weak if weak < 4.5 => 0.0,
        twenty if twenty < 7.5 => 2.0,
        thirty if thirty < 10.5 => 3.0,
        _ => 4.0,
    }
}

/// Levels that powder lightener reaches in one session on dark natural hair, by developer.
///
/// Common practice, give or take two levels: 3 at 10 vol, 5 at 20 vol, 6 at 30 vol, 7 or more at 40 vol.
pub(in crate::service::plan) fn most_lightening(developer: MassFraction) -> f64 {
    match developer.ww_percent() {
        weak if weak < 4.5 => 3.0,
        twenty if twenty < 7.5 => 5.0,
        thirty if thirty < 10.5 => 6.0,
        _ => 7.0,
    }
}

fn lightener(work: &Work<'_>, mix: &Mix, change: Interval<LevelChange>, findings: &mut Findings) {
    let (name, developer) = (work.name(), mix.developer.best());
    let Some(target) = work.task.target else { return };
    let most = most_lightening(developer);
    let (verdict, text) = if !change.best().is_lift() {
        (Warning, format!("{name}: lightener, but the target {target} is not lighter than {}", work.from.best()))
    } else if let Some(verdict) = beyond(change, most) {
        let text = format!(
            "{name}: {} at {developer:.1}, where one session reaches about {most} (give or take 2): agree on a series, \
             or test a strand",
            levels(change, verdict)
        );
        (verdict, text)
    } else if work.lightened.is_none() && !change.low().is_lift() {
        let text = format!(
            "{name}: lightener, and the target {target} is not lighter than {} if the natural level is read too dark",
            work.from.high()
        );
        (NotJudged, text)
    } else {
        return;
    };
    findings.of(work.place, Rule::Lift, verdict, text, COMMON_PRACTICE);
}

/// What colour cannot lift is lifted before it, as far as one session goes.
fn before(work: &Work<'_>, (place, step): (usize, &FirstStep), change: Interval<LevelChange>, findings: &mut Findings) {
    let Some(bowl) = &step.bowl else { return };
    let Some(developer) = bowl.developer.map(|developer| developer.best()) else { return };
    let most = most_lightening(developer);
    let Some(verdict) = beyond(change, most) else {
        let text = format!("{}: no forecast for a step before: test a strand", step.name());
        return findings.of_step(place, Finding::new(Rule::Lift, NotJudged, text, COMMON_PRACTICE));
    };
    let text = format!(
        "{}: {} to be lifted at {developer:.1} before the colour, where one session reaches about {most} (give or take 2): \
         agree on a series, or test a strand",
        work.name(),
        levels(change, verdict)
    );
    findings.of_step(place, Finding::new(Rule::Lift, verdict, text, COMMON_PRACTICE));
}

/// The level of artificial colour, and the lighter one that is wanted there.
fn lifts_artificial(work: &Work<'_>) -> Option<(Level, Level)> {
    work.artificial.zip(work.task.target).filter(|(there, target)| target > there)
}

/// Whether a section asks for more levels than its colour lifts, by the estimate.
pub(super) fn asks_too_much(work: &Work<'_>, mix: &Mix) -> bool {
    let Some(change) = work.change().filter(|_| !work.lightens()) else { return false };
    let most = if work.can_lift() { most_lift(mix.developer.best()) } else { 0.0 };
    lifts_artificial(work).is_some() || beyond(change, most) == Some(Warning)
}

/// Artificial colour that is taken out before: what is left then, nobody knows yet.
fn cleaning(work: &Work<'_>, findings: &mut Findings) {
    let Some((there, target)) = lifts_artificial(work) else { return };
    let text = format!(
        "{}: {target} is wanted where the artificial colour is {there}, and it is cleaned out before: what cleaning leaves \
         decides; judge the level anew before the colour",
        work.name()
    );
    findings.of(work.place, Rule::Lift, NotJudged, text, COMMON_PRACTICE);
}

fn colour(work: &Work<'_>, mix: &Mix, change: Interval<LevelChange>, findings: &mut Findings) {
    let (name, developer) = (work.name(), mix.developer.best());
    let words = |change: String| format!("{name}: {change} with colour and {developer:.1} developer");
    let most = most_lift(developer);
    if let Some((there, target)) = lifts_artificial(work) {
        let text = format!(
            "{}: colour does not lift the artificial colour of this zone",
            words(format!("{:.1} levels", (target - there).levels()))
        );
        findings.of(work.place, Rule::Lift, Warning, text, COMMON_PRACTICE);
    } else if let Some(verdict) = beyond(change, most) {
        let text = format!("{}, which lifts {most:.0} at most on natural hair", words(levels(change, verdict)));
        findings.of(work.place, Rule::Lift, verdict, text, trade::DEVELOPER_LIFT);
    }
}

/// Colour that deposits does not make hair lighter, whatever its developer.
fn deposit(work: &Work<'_>, change: Interval<LevelChange>, findings: &mut Findings) {
    if let (Some(verdict), Some(kind)) = (beyond(change, 0.0), work.colour_kind()) {
        let text = format!(
            "{}: {} lighter with {kind}, which deposits and does not lift: lighten first, or choose a target as deep as \
             the hair",
            work.name(),
            levels(change, verdict)
        );
        findings.of(work.place, Rule::Lift, verdict, text, COMMON_PRACTICE);
    }
}
