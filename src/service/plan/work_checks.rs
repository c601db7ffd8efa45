//! Checks of each mix against its products' own instructions, and of each section against the rules of the trade.

use super::{
    Verdict::{NotJudged, Passed, Stop, Warning},
    finding::Findings,
    mixes::Mixed,
};
use crate::{
    colour::{Level, lift_needed},
    mix::natural_share,
    quantity::{MassFraction, Share},
    service::{
        request::{Item, ItemKind, Oxidant, Request, Stage, Task},
        shape::ShadeClass,
    },
    source::{COMMON_PRACTICE, citations::trade},
};

const OWN_INSTRUCTIONS: &str = "the product's own instructions, as entered on the shelf";

/// Adds the findings of every mix.
pub(super) fn check(request: &Request, mixed: &[(&Task, &Mixed)], findings: &mut Findings) {
    for (task, mixed) in mixed {
        own_instructions(request, task, mixed, findings);
        rounding(task, mixed, findings);
        match task.stage {
            Stage::Section => lift(request, task, mixed, findings),
            Stage::Toner => toner_level(request, task, findings),
            Stage::RootShadow => {}
        }
    }
    white(request, findings);
    timing(request, findings);
}

/// A share that the scale moves by more than this many percent is worth a finer scale. Assumed.
const COARSE_PERCENT: f64 = 10.0;

/// Whether the scale is fine enough for the smallest part.
fn rounding(task: &Task, mixed: &Mixed, findings: &mut Findings) {
    for bowl in mixed.mix.bowls.iter().filter(|bowl| bowl.worst_ratio_error_percent > COARSE_PERCENT) {
        let text = format!(
            "{}: rounding to the scale moves a part by {:.0} %: mix more at once, or use a finer scale",
            task.name, bowl.worst_ratio_error_percent
        );
        findings.add(Warning, "scale", text, "assumed: 10 % of a part is the most that rounding should move");
    }
}

fn products<'r>(request: &'r Request, task: &'r Task) -> impl Iterator<Item = &'r Item> {
    task.products.iter().filter_map(|(i, _)| request.items.get(*i))
}

fn own_instructions(request: &Request, task: &Task, mixed: &Mixed, findings: &mut Findings) {
    for item in products(request, task) {
        if let ItemKind::Lightener { on_scalp: false, .. } = item.kind
            && task.on_scalp
        {
            let text = format!("{}: \"{}\" touches the scalp, which its entry does not allow", task.name, item.name);
            findings.add(Stop, "on scalp", text, OWN_INSTRUCTIONS);
        }
        let Some(limits) = item.own_limits() else { continue };
        match limits.strongest {
            _ if task.oxidant == Oxidant::Nothing => {}
            Some(most) if mixed.developer.high() > most => {
                let text = format!(
                    "{}: developer {:.2} with \"{}\", which takes {most} at most: use a weaker one",
                    task.name,
                    mixed.developer.high(),
                    item.name
                );
                findings.add(Stop, "developer", text, OWN_INSTRUCTIONS);
            }
            Some(most) => {
                let high = mixed.developer.high().percent_ww();
                let text = format!("{} {high:.2} of {most} for \"{}\"", task.name, item.name);
                findings.add(Passed, "developer", text, OWN_INSTRUCTIONS);
            }
            None => {
                let text = format!("{}: the strongest developer for \"{}\" is not on the shelf", task.name, item.name);
                findings.add(NotJudged, "developer", text, OWN_INSTRUCTIONS);
            }
        }
        match limits.longest {
            Some(most) if task.develop > most => {
                let text = format!(
                    "{}: {} of development, \"{}\" allows {most}: shorten it",
                    task.name, task.develop, item.name
                );
                findings.add(Stop, "time", text, OWN_INSTRUCTIONS);
            }
            Some(_) => {}
            None => {
                let text = format!("{}: the longest development of \"{}\" is not on the shelf", task.name, item.name);
                findings.add(NotJudged, "time", text, OWN_INSTRUCTIONS);
            }
        }
    }
}

/// Levels that permanent colour lifts natural hair, by developer.
///
/// Source: North Carolina cosmetology examination study guide, section 7.2 (10 vol deposit only, 20 vol 1 to 2, 30 vol
/// 2 to 3, 40 vol 3 to 4), read with the trade's 3 % for each 10 vol.
fn most_lift(developer: MassFraction) -> f64 {
    match developer.percent_ww() {
        weak if weak < 4.5 => 0.0,
        twenty if twenty < 7.5 => 2.0,
        thirty if thirty < 10.5 => 3.0,
        _ => 4.0,
    }
}

/// Levels that powder lightener reaches in one session on dark natural hair, by developer.
///
/// Common practice, give or take two levels: 3 at 10 vol, 5 at 20 vol, 6 at 30 vol, 7 or more at 40 vol.
fn most_lightening(developer: MassFraction) -> f64 {
    match developer.percent_ww() {
        weak if weak < 4.5 => 3.0,
        twenty if twenty < 7.5 => 5.0,
        thirty if thirty < 10.5 => 6.0,
        _ => 7.0,
    }
}

fn lift(request: &Request, task: &Task, mixed: &Mixed, findings: &mut Findings) {
    let Some(target) = task.target else { return };
    let levels = lift_needed(task.from, target).levels();
    if task.lightens {
        if levels <= 0.0 {
            let text = format!("{}: lightener, but the target {target} is not lighter than {}", task.name, task.from);
            findings.add(Warning, "lift", text, COMMON_PRACTICE);
        } else if levels > most_lightening(mixed.developer.best()) {
            let text = format!(
                "{}: {levels:.1} levels at {:.1}, where one session reaches about {} (give or take 2): agree on a series, \
                 or test a strand",
                task.name,
                mixed.developer.best(),
                most_lightening(mixed.developer.best())
            );
            findings.add(Warning, "lift", text, COMMON_PRACTICE);
        }
        return;
    }
    let artificial = request.file.analysis.existing.iter().any(|e| e.artificial && e.zone == task.zone);
    let most = most_lift(mixed.developer.best());
    let words = format!("{}: {levels:.1} levels with colour and {:.1} developer", task.name, mixed.developer.best());
    if levels > 0.0 && artificial {
        let text = format!("{words}: colour does not lift the artificial colour of this zone");
        findings.add(Warning, "lift", text, COMMON_PRACTICE);
    } else if levels > most {
        let text = format!("{words}, which lifts {most:.0} at most on natural hair");
        findings.add(Warning, "lift", text, trade::DEVELOPER_LIFT);
    }
}

/// The levels of the shades of a task.
fn shade_levels<'r>(request: &'r Request, task: &'r Task) -> impl Iterator<Item = (&'r str, Level)> {
    products(request, task).filter_map(|item| match &item.kind {
        ItemKind::Shade { level, .. } => Some((item.name.as_str(), *level)),
        _ => None,
    })
}

/// A toner cannot lighten: a shade lighter than the hair it goes on does not show.
fn toner_level(request: &Request, task: &Task, findings: &mut Findings) {
    for (code, level) in shade_levels(request, task) {
        if level > task.from {
            let text = format!(
                "{}: shade {code} ({level}) is lighter than the darkest section it goes on ({})",
                task.name, task.from
            );
            findings.add(Warning, "toner level", text, COMMON_PRACTICE);
        } else {
            let text = format!("{}: {code} ({level}) on {}", task.name, task.from);
            findings.add(Passed, "toner level", text, COMMON_PRACTICE);
        }
    }
}

/// White hair takes a permanent shade as it is; a lighter one than 8 covers only in part, and the trade adds natural
/// shade by the share of white.
fn white(request: &Request, findings: &mut Findings) {
    let percent = request.file.analysis.white_percent;
    if percent <= 0.0 {
        return;
    }
    for task in request.tasks.iter().filter(|task| task.stage == Stage::Section && !task.lightens) {
        natural_shade(request, task, findings);
        for item in products(request, task) {
            let ItemKind::Shade { level, class, .. } = &item.kind else { continue };
            if *class == ShadeClass::Permanent && level.number() > 8.0 && percent >= 30.0 {
                let text = format!("{}: {percent} % white, shade {} covers it only in part", task.name, item.name);
                findings.add(Warning, "white hair", text, COMMON_PRACTICE);
            }
        }
    }
}

/// Whether the share of natural shade lies where the trade puts it for this share of white.
fn natural_shade(request: &Request, task: &Task, findings: &mut Findings) {
    let permanent = |item: &Item| matches!(item.kind, ItemKind::Shade { class: ShadeClass::Permanent, .. });
    if !products(request, task).all(permanent) {
        return;
    }
    let natural = |i: &usize| {
        request
            .items
            .get(*i)
            .is_some_and(|item| matches!(&item.kind, ItemKind::Shade { tone, .. } if tone.is_neutral()))
    };
    let all: f64 = task.products.iter().map(|(_, parts)| parts).sum();
    let share: f64 = task.products.iter().filter(|(i, _)| natural(i)).map(|(_, parts)| parts).sum();
    let Ok(white) = Share::from_percent(request.file.analysis.white_percent) else { return };
    let usual = natural_share(white);
    let (low, high) = (usual.share.low().percent(), usual.share.high().percent());
    let percent = 100.0 * share / all;
    let text = format!(
        "{}: {percent:.0} % of the shades are natural; for {white} white the trade takes {low:.0} to {high:.0} %",
        task.name
    );
    let verdict = if (low..=high).contains(&percent) { Passed } else { Warning };
    findings.add(verdict, "white hair", text, format!("{}; {COMMON_PRACTICE}", usual.printed_point));
}

/// The bowl applied first must not overrun its product's time while the last is still put on.
fn timing(request: &Request, findings: &mut Findings) {
    let lightening = request.tasks.iter().filter(|task| task.stage == Stage::Section && task.lightens);
    let applying: f64 = lightening.clone().map(|task| task.apply.min()).sum();
    for task in lightening {
        let limits = products(request, task).filter_map(|item| item.own_limits()?.longest);
        for most in limits {
            let first_strand = task.apply.min() + task.develop.min();
            if first_strand > most.min() {
                let text = format!(
                    "{}: its first strand waits {first_strand:.0} min ({} to apply, {} to develop), its entry allows \
                     {most}; rinse strand by strand, or split the section",
                    task.name, task.apply, task.develop
                );
                findings.add(Warning, "time", text, OWN_INSTRUCTIONS);
            }
        }
    }
    if applying > 60.0 {
        let text = format!("{applying:.0} min of applying lightener: the first foils are done before the last are on");
        findings.add(Warning, "pace", text, COMMON_PRACTICE);
    }
}
