//! What a step before the colour is mixed of: a plain search over every shelf of a grid. What is done is common practice: weak
//! developer, none stronger than 6 %; the weakest to clean with and the strongest of the weak to lift and to soften with; a bottle that
//! a toner is mixed with only where there is no other; nothing on the scalp that its maker or the house keeps off it.

use super::base::{changed, fine, only_colour, shop};
use foilwork::{
    head::ExtraStep,
    service::{
        FirstStep, PartKind,
        shape::{Toner, Zone},
    },
    shop::{StrengthBasis, shape::DeveloperEntry, shape::LightenerEntry},
};
use serde_json::json;

#[derive(Clone, Copy, Debug)]
struct Case {
    step: ExtraStep,
    bottles: &'static [f64],
    on_scalp: Option<bool>,
    house: Option<f64>,
    /// How strong the clay may be on the scalp.
    clay: Option<f64>,
    clean_with: Option<&'static str>,
    /// Which bottle a toner is mixed with.
    toner: Option<usize>,
    remover: bool,
}

fn name(percent: f64) -> String {
    format!("developer {percent}")
}

fn planned(case: &Case) -> FirstStep {
    let plan = changed(only_colour(), |file| {
        let bottle = |percent: &f64| DeveloperEntry {
            name: name(*percent),
            strength: format!("{percent} % w/w"),
            strength_basis: StrengthBasis::Measured,
            ..DeveloperEntry::default()
        };
        shop(file).developer = case.bottles.iter().map(bottle).collect();
        let powder = shop(file).lightener[0].clone();
        let clay = LightenerEntry {
            name: "clay".to_owned(),
            on_scalp: true,
            ratio: "1:3".to_owned(),
            strongest_on_scalp_ww_percent: case.clay,
            ..powder
        };
        shop(file).lightener.push(clay);
        if case.remover {
            shop(file).remover = vec![serde_json::from_value(json!({ "name": "remover" })).unwrap()];
        }
        file.salon.strongest_on_scalp_ww_percent = case.house;
        file.analysis.white_percent = Some(60.0);
        let top = &mut file.section[0];
        (top.developer, top.on_scalp, top.zone) = (Some(name(case.bottles[0])), case.on_scalp, Zone::Whole);
        (top.first, top.clean_with) = (vec![case.step], case.clean_with.map(str::to_owned));
        if let Some(place) = case.toner {
            let veil = fine().toner.swap_remove(0);
            file.toner =
                vec![Toner { sections: vec!["top".to_owned()], developer: Some(name(case.bottles[place])), ..veil }];
        }
    });
    plan.first_steps.into_iter().find(|found| found.step == case.step && found.planned).unwrap()
}

/// What it is mixed of, with the parts of each; or why of nothing.
fn by_hand(case: &Case) -> Result<Vec<(String, PartKind, f64)>, String> {
    let kept_off = case.on_scalp == Some(false);
    // A bottle called 6 % may be a little more where nobody states a limit of their own.
    let weak = |lightener: Option<&str>| -> Vec<f64> {
        let own = if lightener == Some("clay") { case.clay } else { None };
        let unsaid = lightener == Some("clay") && case.clay.is_none();
        let fits = |percent: &f64| {
            let on_scalp = case.house.is_none_or(|most| *percent <= most)
                && own.is_none_or(|most| *percent <= most)
                && (!unsaid || *percent <= 6.05);
            *percent <= 6.05 && (kept_off || on_scalp)
        };
        case.bottles.iter().copied().filter(fits).collect()
    };
    let none_weak = "the shop has no developer of 6 % w/w or weaker (weaken one with `foilwork dilute`)";
    let remover = || Ok(vec![("remover".to_owned(), PartKind::Remover, 1.0)]);
    let lightened = |named: Option<&str>| {
        let there = [("powder", kept_off, (1.0, 2.0)), ("clay", true, (1.0, 3.0))];
        let mut may = there.into_iter().filter(|(name, may, _)| *may && named.is_none_or(|named| named == *name));
        let way_out = match case.step {
            ExtraStep::PreLighten => "choose a target as deep as the hair, or another lightener",
            _ => "take a colour remover by its own instructions",
        };
        let Some((lightener, _, (a, b))) = may.next() else {
            return Err(format!("the shop has no lightener that may go there: {way_out}"));
        };
        let all = weak(Some(lightener));
        let of_toner = case.toner.map(|place| case.bottles[place]);
        let own: Vec<f64> = all.iter().copied().filter(|percent| Some(*percent) != of_toner).collect();
        let from = if own.is_empty() { all } else { own };
        let best = match case.step {
            ExtraStep::PreLighten => from.into_iter().reduce(f64::max),
            _ => from.into_iter().reduce(f64::min),
        };
        let bottle = best.ok_or(none_weak)?;
        Ok(vec![
            (lightener.to_owned(), PartKind::Lightener, a / (a + b)),
            (name(bottle), PartKind::Developer, b / (a + b)),
        ])
    };
    match (case.step, case.clean_with) {
        (ExtraStep::PreSoften, _) => {
            let best = weak(None).into_iter().reduce(f64::max).ok_or(none_weak)?;
            Ok(vec![(name(best), PartKind::Developer, 1.0)])
        }
        (ExtraStep::CleanFirst, Some("remover")) => remover(),
        (ExtraStep::CleanFirst, None) if case.remover => lightened(None).or_else(|_| remover()),
        (ExtraStep::CleanFirst, named) => lightened(named),
        _ => lightened(None),
    }
}

#[test]
fn a_step_is_mixed_of_what_the_shelf_has_for_it() {
    let shelves: [&[f64]; 6] =
        [&[6.0], &[6.04], &[6.06], &[2.0, 3.0, 5.0, 6.0, 9.0], &[9.0, 5.0, 3.0, 6.04, 2.0], &[3.0, 9.0]];
    let mut held = [0; 4];
    for step in [ExtraStep::CleanFirst, ExtraStep::PreLighten, ExtraStep::PreSoften] {
        for (shelf, bottles) in shelves.into_iter().enumerate() {
            let scalps = [
                (Some(false), Some(3.0), Some(2.0)),
                (Some(true), None, None),
                (Some(true), Some(5.0), None),
                (Some(true), None, Some(3.0)),
                (Some(true), Some(2.0), Some(4.0)),
                (None, None, None),
                (None, Some(5.0), Some(5.0)),
            ];
            for (scalp, (on_scalp, house, clay)) in scalps.into_iter().enumerate() {
                let named = [
                    (None, None, false),
                    (None, Some(0), true),
                    (Some("clay"), Some(bottles.len() - 1), false),
                    (Some("powder"), None, true),
                    (Some("remover"), Some(bottles.len() / 2), true),
                ];
                for (place, (clean_with, toner, remover)) in named.into_iter().enumerate() {
                    // Only what cleans is named; every second case of the others is enough.
                    let cleans = step == ExtraStep::CleanFirst;
                    if (shelf + scalp + place) % 2 == 1 || (place > 1 && !cleans) {
                        continue;
                    }
                    let case = Case { step, bottles, on_scalp, house, clay, clean_with, toner, remover };
                    let (found, want) = (planned(&case), by_hand(&case));
                    let parts: Vec<_> = found
                        .parts
                        .iter()
                        .map(|part| (part.product.clone(), part.kind, part.mass.best().g()))
                        .collect();
                    let all = found.mix.best().g();
                    match want {
                        Err(why) => {
                            assert_eq!((found.why_not.as_deref(), parts.len()), (Some(why.as_str()), 0), "{case:?}");
                            held[0] += 1;
                        }
                        Ok(want) => {
                            assert_eq!(found.why_not, None, "{case:?}");
                            assert_eq!(parts.len(), want.len(), "{case:?}: {parts:?}");
                            held[want.len()] += 1;
                            for ((product, kind, g), (name, of, part)) in parts.into_iter().zip(want) {
                                assert_eq!((product, kind), (name, of), "{case:?}");
                                assert!((g - all * part).abs() < 1e-9, "{case:?}: {g} of {all}");
                            }
                        }
                    }
                }
            }
        }
    }
    assert!(held[..3].iter().all(|held| *held > 20), "{held:?}");
}
