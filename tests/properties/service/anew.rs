//! What the checks say of minutes, order and bowls, worked out a second time from the plan's own times and masses and the file's
//! own words: the same sentences, none more and none less.

use super::files::{Known, all, list, named, number, one, word};
use foilwork::{
    quantity::Duration,
    service::{Mix, PartKind, Step, WorkStage},
    text::amount,
};
use serde_json::{Value, json};
use std::sync::OnceLock;

/// The plans that are held against it: all, and some whose sections run into each other.
pub(super) fn plans() -> &'static [Known] {
    static FOUND: OnceLock<Vec<Known>> = OnceLock::new();
    FOUND.get_or_init(made)
}

fn made() -> Vec<Known> {
    let mut found = all().to_vec();
    for (name, changes) in [
        (
            "soft-gradient",
            json!({ "section.0.hairline": true, "section.0.develop_min": 45, "section.1.develop_min": 5 }),
        ),
        ("soft-gradient", json!({ "section.0.apply_min": 50, "section.2.apply_min": 45, "toner": [] })),
        (
            "soft-gradient",
            json!({ "section.0.same_foil_as": ["crown"], "section.1.same_foil_as": ["nape", "hairline"] }),
        ),
        // An hour to the minute, and half a minute more.
        ("soft-gradient", json!({ "section.0.apply_min": 20, "section.1.apply_min": 20, "section.2.apply_min": 20 })),
        ("soft-gradient", json!({ "section.0.apply_min": 20, "section.1.apply_min": 20, "section.2.apply_min": 20.5 })),
        ("soft-gradient", json!({ "salon.scale_division_g": 0.5, "section.0.mix_g": 20 })),
        ("soft-gradient", json!({ "shop.lightener.0.longest_min": 12, "shop.lightener.1.longest_min": null })),
        (
            "grey-blend",
            json!({ "section.0.ratio": "3:2", "shop.shade.0.longest_min": 20, "shop.shade.1.longest_min": 31 }),
        ),
        ("lowlights", json!({ "section.0.develop_min": 60, "section.1.after": [], "section.1.target_level": 4 })),
        ("staged", json!({ "section.1.hairline": true, "section.0.hairline": true, "section.1.after": [] })),
        ("staged", json!({ "section.1.hairline": false, "section.0.hairline": true, "toner": [] })),
        (
            "staged",
            json!({ "shop.lightener.0.longest_min": 40, "shop.lightener.0.longest_counts_from": "end-of-application",
                           "section.0.develop_min": 41, "section.1.develop_min": 40 }),
        ),
        ("gloss", json!({ "section.0.mix_g": 90, "shop.shade.0.in_hand_g": 10, "shop.shade.1.in_hand_g": 10 })),
    ] {
        let changed = one(name).with(changes.clone());
        found.push(Known { name: format!("{name} with {changes}"), ..changed });
    }
    found
}

/// The texts of a rule that are of this kind.
pub(super) fn said(one: &Known, rule: &str, of: impl Fn(&str) -> bool) -> Vec<String> {
    let found = list(&one.data, "findings").iter().filter(|found| found["rule"] == rule);
    let mut texts: Vec<String> =
        found.map(|found| format!("{} {}", word(found, "verdict"), word(found, "text"))).collect();
    texts.retain(|text| of(text));
    texts.sort();
    texts
}

/// Each plan says just these sentences, and so many of them are said in all.
pub(super) fn held(rule: &str, of: impl Fn(&str) -> bool, at_least: usize, want: impl Fn(&Known) -> Vec<String>) {
    let mut seen = 0;
    for one in plans() {
        let mut want = want(one);
        want.sort();
        seen += want.len();
        assert_eq!(said(one, rule, &of), want, "{}", one.name);
    }
    assert!(seen >= at_least, "{seen} of {rule}");
}

pub(super) fn steps(one: &Known) -> impl Iterator<Item = (&Step, &Mix)> {
    one.plan.order.iter().zip(&one.plan.mixes)
}

pub(super) fn section(step: &Step) -> bool {
    step.stage == WorkStage::Section
}

pub(super) fn entry<'k>(one: &'k Known, step: &Step) -> &'k Value {
    match step.stage {
        WorkStage::Section => named(list(&one.file, "section"), "name", &step.name),
        WorkStage::Toner => named(list(&one.file, "toner"), "name", &step.name),
        _ => &one.file["root_shadow"],
    }
}

pub(super) fn lightens(mix: &Mix) -> bool {
    mix.bowls[0].parts.iter().any(|part| part.kind == PartKind::Lightener)
}

/// What is due at the basin while something else of the same stage began before and ends after it.
#[test]
fn what_is_rinsed_alone_is_told_with_what_stays_on() {
    held(
        "rinse",
        |_| true,
        40,
        |one| {
            let of = |step: &Step| {
                let stay: Vec<String> = one
                    .plan
                    .order
                    .iter()
                    .filter(|other| section(other) == section(step) && other.number != step.number)
                    .filter(|other| {
                        other.begin.min() < step.rinse_by.min() && step.rinse_by.min() < other.rinse_by.min()
                    })
                    .map(|other| format!("{} (to {})", other.name, amount(other.rinse_by, 0)))
                    .collect();
                let way_out = if section(step) {
                    "rinse it apart and keep the other foils dry"
                } else {
                    "what is rinsed runs through it; let them end together"
                };
                let (name, at) = (&step.name, amount(step.rinse_by, 0));
                let text = format!(
                    "warning {name}: due at the basin at minute {at} while on the hair stay {}: {way_out}",
                    stay.join(", ")
                );
                (!stay.is_empty()).then_some(text)
            };
            one.plan.order.iter().filter_map(of).collect()
        },
    );
}

/// The same hands cannot look while they paint something that they began later.
#[test]
fn looks_that_fall_into_an_application_are_told() {
    held(
        "look",
        |_| true,
        40,
        |one| {
            let mut found = Vec::new();
            for (place, step) in one.plan.order.iter().enumerate() {
                let inside =
                    |other: &Step, at: &Duration| other.begin.min() < at.min() && at.min() < other.applied.min();
                let later = one.plan.order[place + 1..].iter().filter(|other| section(other) == section(step));
                let busy: Vec<&Step> = later.filter(|other| step.look_at.iter().any(|at| inside(other, at))).collect();
                if busy.is_empty() {
                    continue;
                }
                let looks = step.look_at.iter().filter(|at| busy.iter().any(|other| inside(other, at)));
                let looks: Vec<String> = looks.map(|at| amount(*at, 0)).collect();
                let names: Vec<&str> = busy.iter().map(|other| other.name.as_str()).collect();
                found.push(format!(
                "warning {}: looks at minute {} fall into the application of {}: put the brush down and look, or let a helper \
                 look",
                step.name,
                looks.join(", "),
                names.join(", ")
            ));
            }
            found
        },
    );
}

/// Common practice: the hairline is on last, and in one foil the darkest first.
#[test]
fn the_order_is_held_against_the_hairline_and_the_darkest_of_a_foil() {
    held(
        "sequence",
        |_| true,
        5,
        |one| {
            let mut found = Vec::new();
            let is = |step: &Step, field: &str| entry(one, step)[field] == true;
            for (step, mix) in steps(one) {
                let light = |(_, mix): &(&Step, &Mix)| lightens(mix);
                let later: Vec<&str> = steps(one)
                    .filter(light)
                    .filter(|(other, _)| other.number > step.number && !is(other, "hairline"))
                    .map(|(other, _)| other.name.as_str())
                    .collect();
                if is(step, "hairline") && lightens(mix) && !later.is_empty() {
                    found.push(format!(
                    "warning {}: the hairline, finest and fastest, is on before {}: put it on last, or look at it sooner",
                    step.name,
                    later.join(", ")
                ));
                }
                for other in list(entry(one, step), "same_foil_as") {
                    let other = one.plan.order.iter().find(|known| section(known) && known.name == *other).unwrap();
                    let (first, then) = if step.number < other.number { (step, other) } else { (other, step) };
                    let target = |step: &Step| number(entry(one, step), "target_level");
                    if target(then) < target(first) {
                        found.push(format!(
                            "warning {}: level {} is painted after the level {} of {} in one foil: the darkest first",
                            then.name,
                            target(then),
                            target(first),
                            first.name
                        ));
                    }
                }
            }
            found
        },
    );
}

/// A tone that is wanted of lightener comes from a toner on it, or from colour that waits for its rinse.
#[test]
fn a_tone_that_nothing_gives_is_told() {
    held(
        "untoned",
        |_| true,
        6,
        |one| {
            let mut found = Vec::new();
            for (step, mix) in steps(one).filter(|(step, mix)| section(step) && lightens(mix)) {
                let Some(tone) = entry(one, step)["target_tone"].as_str() else { continue };
                let toned = list(&one.file, "toner").iter().any(|toner| {
                    let on = list(toner, "sections");
                    (on.is_empty() && lightens(mix)) || on.iter().any(|name| *name == step.name)
                });
                let coloured = steps(one).filter(|(other, mix)| section(other) && !lightens(mix)).any(|(other, _)| {
                    let waits = list(entry(one, other), "after").iter();
                    waits.into_iter().any(|wait| wait["section"] == step.name && wait["wait_for"] == "rinse")
                });
                if !toned && !coloured {
                    found.push(format!(
                    "warning {}: \"{tone}\" is wanted and no toner goes on it: what lightener leaves is the underlying pigment",
                    step.name
                ));
                }
            }
            found
        },
    );
}

/// An hour of applying lightener and more.
#[test]
fn applying_lightener_for_more_than_an_hour_is_told() {
    held(
        "pace",
        |text| text.contains("of applying lightener"),
        2,
        |one| {
            let light = steps(one).filter(|(step, mix)| section(step) && lightens(mix));
            let minutes: f64 = light.map(|(step, _)| step.applied.min() - step.begin.min()).sum();
            let text = format!(
                "warning {minutes:.0} min of applying lightener: the first foils are done before the last are on"
            );
            if minutes > 60.0 + 1e-9 { vec![text] } else { Vec::new() }
        },
    );
}
