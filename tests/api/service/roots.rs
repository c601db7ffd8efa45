//! The hairline, the depth at the root, what touches the scalp, and whether there is enough: each on both sides of its edge.

use super::base::{changed, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, NotJudged, Note, Passed, Stop, Warning},
    head::Technique,
    service::{
        Plan, ServiceFile,
        shape::{Section, Zone},
    },
};
use rstest::rstest;

/// Common practice: the hairline is at least as light as the lightest beside it; without neighbours that are named, all others are.
#[rstest]
#[case(9.0, &[], Passed, "")]
#[case(8.0, &[], Warning, "crown beside it at level 9")]
#[case(8.0, &["nape"], Passed, "")]
#[case(7.5, &["nape"], Warning, "nape beside it at level 8")]
#[case(8.5, &["nape", "crown"], Warning, "crown beside it at level 9")]
#[case(9.0, &["nape", "crown"], Passed, "")]
fn a_hairline_is_as_light_as_what_lies_beside_it(
    #[case] own: f64,
    #[case] beside: &[&str],
    #[case] verdict: Verdict,
    #[case] words: &str,
) {
    let plan = changed(only_lightener(), |file| {
        let other = |name: &str, level: f64| Section {
            name: name.to_owned(),
            target_level: level,
            share_percent: Some(10.0),
            ..file.section[0].clone()
        };
        let others = [other("crown", 9.0), other("nape", 8.0)];
        let rim = &mut file.section[0];
        (rim.hairline, rim.target_level) = (true, own);
        rim.beside = beside.iter().map(|name| (*name).to_owned()).collect();
        file.section.extend(others);
    });
    let text = texts(&plan, "hairline");
    assert_eq!(verdicts(&plan, "hairline"), [verdict], "{text}");
    assert!(text.starts_with("top") && text.contains(words), "{text}");
    assert_eq!(text.contains("at least as light as what lies beside it"), verdict == Passed);
}

/// Colour at the roots on natural 6, half a level off either way: darker than 6 it shows, from 6 to below 6.5 it may, from there on not.
/// Lengths have no root, and lightener is no depth.
#[rstest]
#[case(Zone::Roots, 5.5, 0.5, Some(Warning))]
#[case(Zone::Roots, 6.0, 0.5, Some(NotJudged))]
#[case(Zone::Roots, 6.0, 0.0, Some(Passed))]
#[case(Zone::Whole, 6.5, 0.5, Some(Passed))]
#[case(Zone::Whole, 5.0, 0.0, Some(Warning))]
#[case(Zone::Whole, 8.0, 0.0, Some(Passed))]
#[case(Zone::Lengths, 5.0, 0.0, None)]
fn colour_at_the_root_is_as_light_as_the_base(
    #[case] zone: Zone,
    #[case] target: f64,
    #[case] margin: f64,
    #[case] want: Option<Verdict>,
) {
    let change = |file: &mut ServiceFile| {
        file.analysis.natural_level_plus_minus = Some(margin);
        (file.section[0].zone, file.section[0].target_level) = (zone, target);
        file.section[0].on_scalp = Some(false);
    };
    let plan = changed(only_colour(), change);
    let text = texts(&plan, "depth-at-root");
    assert_eq!(verdicts(&plan, "depth-at-root"), Vec::from_iter(want), "{text}");
    if want == Some(NotJudged) {
        let want = "top: level 6 on the natural base level 6, which may be level 6.5 by the margin stated: then new growth shows \
                    lighter\n";
        assert_eq!(text, want);
    }
    assert_eq!(verdicts(&changed(only_lightener(), change), "depth-at-root"), []);
}

/// What lies on the scalp and with what, whose word counts: an entry that keeps the lightener off; the house or the entry with a number,
/// the smaller of two; else the trade's 6 % for a lightener.
#[rstest]
fn what_touches_the_scalp_is_held_against_whoever_says_something(
    #[values(false, true)] allowed: bool,
    #[values(None, Some(5.0), Some(6.0))] by_entry: Option<f64>,
    #[values(None, Some(5.9), Some(9.0))] by_house: Option<f64>,
    #[values(None, Some(false), Some(true))] touches: Option<bool>,
    #[values(6.0, 6.5)] strength: f64,
) {
    let plan = changed(only_lightener(), |file| {
        let top = &mut file.section[0];
        (top.technique, top.zone, top.on_scalp) = (Technique::Weave, Zone::Roots, touches);
        shop(file).developer[0].strength = format!("{strength} % w/w");
        shop(file).lightener[0].on_scalp = allowed;
        shop(file).lightener[0].strongest_on_scalp_ww_percent = by_entry.filter(|_| allowed);
        file.salon.strongest_on_scalp_ww_percent = by_house;
    });
    let stated = by_entry.into_iter().chain(by_house).reduce(f64::min);
    let maybe = touches.is_none();
    let want = match (allowed, touches, stated) {
        (_, Some(false), _) => vec![],
        (false, None, _) => vec![NotJudged],
        (false, Some(true), _) => vec![Stop],
        (true, _, Some(most)) if strength > most => vec![if maybe { NotJudged } else { Stop }],
        // The entry says nothing: what the house allows is passed, and what the product takes is still open.
        (true, _, _) => {
            let mut want = Vec::new();
            if by_entry.is_none() && !maybe {
                want.push(if strength > 6.0 { Warning } else { NotJudged });
            }
            want.extend(stated.map(|_| Passed));
            want
        }
    };
    let text = texts(&plan, "on-scalp");
    assert_eq!(verdicts(&plan, "on-scalp"), want, "{text}");
    assert!(!text.contains("if no gap is left") || maybe, "{text}");
}

/// A stated mass against what the hair takes, with the plan's own bounds of that: below the least it is a warning, below half of the
/// estimate a note, else nothing; the sentence tells both.
#[test]
fn a_stated_mix_is_held_against_what_the_hair_takes() {
    let made = |mix_g: Option<f64>, girth: Option<f64>| -> Plan {
        changed(only_lightener(), |file| {
            file.analysis.length_cm = Some(35.0);
            file.analysis.ponytail_girth_cm = girth;
            file.section[0].mix_g = mix_g;
        })
    };
    let mut seen = [0, 0, 0];
    for girth in [None, Some(8.0)] {
        let takes = made(None, girth).head.sections[0].takes.unwrap();
        let [low, best, high] = takes.to_array().map(|mass| mass.g());
        for part in [0.2, 0.4, 0.49, 0.51, 0.6, 0.8, 0.99, 1.01, 1.5, 2.0, 3.0] {
            for of in [low, best] {
                let stated = (of * part * 10.0).round() / 10.0;
                let plan = made(Some(stated), girth);
                let found = verdicts(&plan, "amount");
                let than = if stated < low {
                    assert_eq!(found, [Warning], "{stated} of {low} {best} {high}");
                    seen[0] += 1;
                    "less than the least that"
                } else if stated < best / 2.0 {
                    assert_eq!(found, [Note], "{stated} of {low} {best} {high}");
                    seen[1] += 1;
                    "less than half of what"
                } else {
                    assert_eq!(found, [], "{stated} of {low} {best} {high}");
                    seen[2] += 1;
                    continue;
                };
                let text = texts(&plan, "amount");
                let start = format!("top: {stated} g stated is {than} this hair takes by the estimate, ");
                assert!(text.starts_with(&start), "{text}");
            }
        }
    }
    assert!(seen[0] > 0 && seen[2] > 0, "{seen:?}");
}
