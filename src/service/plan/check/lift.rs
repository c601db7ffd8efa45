//! Whether the levels asked for are within what the products do.

use super::super::{
    Mix,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    colour::LevelChange,
    finding::{
        Rule,
        Verdict::{Passed, Warning},
    },
    quantity::MassFraction,
    service::request::WorkStage,
    source::{COMMON_PRACTICE, citations::trade},
};

pub(super) fn check(sections: &Sections<'_>, mixes: &[Mix], findings: &mut Findings) {
    for (work, mix) in sections.iter().zip(mixes) {
        for finding in &work.search {
            findings.push(&[work.place], finding.clone());
        }
        match (work.stage(), work.change()) {
            (WorkStage::Toner, _) => toner_level(work, findings),
            (_, Some(change)) if work.lightens() => lightener(work, mix, change.best(), findings),
            (_, Some(change)) => colour(work, mix, change.best(), findings),
            _ => {}
        }
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

fn lightener(work: &Work<'_>, mix: &Mix, change: LevelChange, findings: &mut Findings) {
    let (name, developer) = (work.name(), mix.developer.best());
    let most = most_lightening(developer);
    let text = if !change.is_lift()
        && let Some(target) = work.task.target
    {
        format!("{name}: lightener, but the target {target} is not lighter than {}", work.from.best())
    } else if change.levels() > most {
        format!(
            "{name}: {:.1} levels at {developer:.1}, where one session reaches about {most} (give or take 2): agree on \
             a series, or test a strand",
            change.levels()
        )
    } else {
        return;
    };
    findings.of(work.place, Rule::Lift, Warning, text, COMMON_PRACTICE);
}

fn colour(work: &Work<'_>, mix: &Mix, change: LevelChange, findings: &mut Findings) {
    let most = most_lift(mix.developer.best());
    let words = || {
        let (name, developer) = (work.name(), mix.developer.best());
        format!("{name}: {:.1} levels with colour and {developer:.1} developer", change.levels())
    };
    if change.is_lift() && work.on_artificial {
        let text = format!("{}: colour does not lift the artificial colour of this zone", words());
        findings.of(work.place, Rule::Lift, Warning, text, COMMON_PRACTICE);
    } else if change.levels() > most {
        let text = format!("{}, which lifts {most:.0} at most on natural hair", words());
        findings.of(work.place, Rule::Lift, Warning, text, trade::DEVELOPER_LIFT);
    }
}

/// A toner cannot lighten: a shade lighter than the hair it goes on does not show.
fn toner_level(work: &Work<'_>, findings: &mut Findings) {
    let (name, from) = (work.name(), work.from.best());
    for shade in work.shades() {
        let (code, level) = (shade.code, shade.level);
        let (verdict, text) = if level > from {
            (Warning, format!("{name}: shade {code} ({level}) is lighter than the darkest section it goes on ({from})"))
        } else {
            (Passed, format!("{name}: {code} ({level}) on {from}"))
        };
        findings.of(work.place, Rule::TonerLevel, verdict, text, COMMON_PRACTICE);
    }
}
