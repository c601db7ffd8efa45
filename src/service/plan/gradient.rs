//! The sections seen together: depth at the root, the hairline, what lies beside what, warm pigment before going darker.

use super::{
    Contrast, SwatchData,
    Verdict::{Passed, Warning},
    finding::Findings,
};
use crate::{
    colour::{
        Level, Lightness, Redness, Swatch, Temper, Tone, Yellowness, check_depth_at_root, check_hairline,
        contrast_between, pre_pigmentation, transition_between,
    },
    finding::Finding,
    quantity::Share,
    service::{
        request::{ItemKind, Request, Stage, Task},
        shape::HistoryFlag,
    },
};

/// Adds the findings of the sections seen together.
pub(super) fn check(request: &Request, findings: &mut Findings) {
    for task in &request.tasks {
        depth(request, task, findings);
        hairline(request, task, findings);
        for other in places(request, &task.same_foil_as) {
            meeting(request, task, other, findings);
        }
    }
}

/// How far sections that lie beside each other are apart, once for each pair.
pub(super) fn contrasts(request: &Request) -> Vec<Contrast> {
    let mut contrasts: Vec<Contrast> = Vec::new();
    for task in &request.tasks {
        for other in places(request, &task.beside) {
            let known = contrasts.iter().any(|c| c.first == other.name && c.second == task.name);
            let (Some(one), Some(two), false) = (look(request, task), look(request, other), known) else { continue };
            let (difference, finding) = contrast_between(&one, &two);
            contrasts.push(Contrast {
                first: task.name.clone(),
                second: other.name.clone(),
                ciede2000: difference.ciede2000,
                remark: finding.map(|finding| finding.text),
            });
        }
    }
    contrasts
}

/// The modelled colour of a task's hair at its target.
pub(super) fn swatch(request: &Request, task: &Task) -> Option<SwatchData> {
    let swatch = look(request, task)?;
    let lab = swatch.lab();
    let ends = |[low, _, high]: [f64; 3]| (low, high);
    Some(SwatchData {
        hex: swatch.srgb().to_string(),
        lab: [lab.l(), lab.a(), lab.b()],
        l_bounds: ends(swatch.lightness().to_array().map(Lightness::lab_l)),
        a_bounds: ends(swatch.redness().to_array().map(Redness::lab_a)),
        b_bounds: ends(swatch.yellowness().to_array().map(Yellowness::lab_b)),
        remark: "model, not a photograph",
    })
}

fn places<'r>(request: &'r Request, places: &'r [usize]) -> impl Iterator<Item = &'r Task> {
    places.iter().filter_map(|i| request.tasks.get(*i))
}

fn look(request: &Request, task: &Task) -> Option<Swatch> {
    let target = task.target?;
    Some(if task.lightens {
        Swatch::lightened(task.from, target)
    } else {
        Swatch::of_look(target, &tone(request, task))
    })
}

/// The tone of the shades as mixed; lightener brings none.
fn tone(request: &Request, task: &Task) -> Tone {
    let all: f64 = task.products.iter().map(|(_, parts)| parts).sum();
    Tone::blend(task.products.iter().filter_map(|(i, parts)| match &request.items.get(*i)?.kind {
        ItemKind::Shade { tone, .. } => Some((tone, Share::from_fraction(parts / all).ok()?)),
        _ => None,
    }))
}

fn depth(request: &Request, task: &Task, findings: &mut Findings) {
    let depth = match task.stage {
        // A root shadow is as deep as the darkest of its shades.
        Stage::RootShadow => darkest_shade(request, task),
        Stage::Section if task.zone_is_at_root() && !task.lightens => task.target,
        _ => None,
    };
    if let Some(depth) = depth {
        match check_depth_at_root(request.natural, depth) {
            Some(finding) => add(findings, "depth at the root", &task.name, &finding),
            None => {
                let text = format!("{}: {depth} on the natural base {}", task.name, request.natural);
                findings.add(Passed, "depth at the root", text, crate::source::COMMON_PRACTICE);
            }
        }
    }
    let Some(target) = task.target else { return };
    // A warm shade is itself the pigment put back.
    let warm = tone(request, task).main_hue().is_some_and(|hue| hue.temper() == Temper::Warm);
    let on_lightened = request.file.analysis.has(HistoryFlag::Lightened) && !task.lightens && !warm;
    if let (true, Some(advice)) = (on_lightened, pre_pigmentation(task.from, target)) {
        add(findings, "pre-pigmentation", &task.name, &advice.finding);
    }
}

fn darkest_shade(request: &Request, task: &Task) -> Option<Level> {
    let levels = task.products.iter().filter_map(|(i, _)| match &request.items.get(*i)?.kind {
        ItemKind::Shade { level, .. } => Some(*level),
        _ => None,
    });
    levels.reduce(|a, b| if b < a { b } else { a })
}

/// Without named neighbours, every other section counts as one.
fn hairline(request: &Request, task: &Task, findings: &mut Findings) {
    let (true, Some(own)) = (task.hairline, task.target) else { return };
    let named: Vec<&Task> = places(request, &task.beside).collect();
    let others = request.tasks.iter().filter(|other| other.stage == Stage::Section && other.name != task.name);
    let beside: Vec<&Task> = if named.is_empty() { others.collect() } else { named };
    let levels = beside.iter().filter_map(|other| Some((other.name.as_str(), other.target?)));
    match check_hairline(own, levels) {
        Some(finding) => add(findings, "hairline", &task.name, &finding),
        None => {
            let text = format!("{}: {own}, at least as light as what lies beside it", task.name);
            findings.add(Passed, "hairline", text, crate::source::COMMON_PRACTICE);
        }
    }
}

fn meeting(request: &Request, task: &Task, other: &Task, findings: &mut Findings) {
    let (Some(one), Some(two)) = (task.target, other.target) else { return };
    if let Some(between) = transition_between((one, &tone(request, task)), (two, &tone(request, other))) {
        let names = format!("{} and {}", task.name, other.name);
        add(findings, "transition", &names, &between.finding);
    }
}

fn add(findings: &mut Findings, check: &str, name: &str, finding: &Finding) {
    findings.add(
        Warning,
        check,
        format!("{name}: {}", finding.text),
        finding.sources.first().map(ToString::to_string).unwrap_or_default(),
    );
}
