//! The hair of a section by zone, its surface, film and past use, by sums along the strand.

use super::base::{changed, near, only_lightener};
use foilwork::{
    head::Technique,
    service::{Plan, SectionPlan, ServiceFile, shape::Zone},
    source::Interval,
};
use rstest::rstest;
use serde_json::json;

/// Hair of 20 cm, no foils, whose grams are worked out.
fn of_20_cm(file: &mut ServiceFile) {
    file.analysis.length_cm = Some(20.0);
    let top = &mut file.section[0];
    (top.zone, top.technique, top.mix_g, top.foils) = (Zone::Whole, Technique::Block, None, None);
    (top.start_cm, top.transition_cm) = (Some(0.0), Some(0.0));
}

fn with(change: impl FnOnce(&mut ServiceFile)) -> Plan {
    changed(only_lightener(), |file| {
        of_20_cm(file);
        change(file);
    })
}

/// Roots of 2.5 cm, the last third of the rest the ends.
fn zones(length: f64) -> [(f64, f64); 3] {
    let ends = 2.5 + (length - 2.5) * 2.0 / 3.0;
    [(0.0, 2.5), (2.5, ends), (ends, length)]
}

/// The cm of a stretch that carry as much as if all of it were covered, in small steps.
fn painted(from: f64, to: f64, (covered, start, over): (f64, f64, f64)) -> f64 {
    let steps = 40_000;
    let long = (to - from).max(0.0) / f64::from(steps);
    let at = |step: i32| {
        let behind = from + (f64::from(step) + 0.5) * long - start;
        covered * if over > 0.0 { (behind / over).clamp(0.0, 1.0) } else { f64::from(u8::from(behind > 0.0)) }
    };
    (0..steps).map(at).sum::<f64>() * long
}

fn three<Q: Copy + PartialOrd>(of: Interval<Q>, unit: fn(Q) -> f64) -> [f64; 3] {
    of.to_array().map(unit)
}

/// A product of two that are known to bounds of their own: how far either is off, as a factor, adds up in squares of its logarithms.
fn spread(one: [f64; 3], other: [f64; 3], bound: usize) -> f64 {
    if other[1] <= 0.0 {
        return 0.0;
    }
    let off = (one[bound] / one[1]).ln().hypot((other[bound] / other[1]).ln());
    one[1] * other[1] * if bound == 0 { (-off).exp() } else { off.exp() }
}

/// Each zone against the sum along it; the surface is to the head's as the cm are.
fn by_zone(plan: &Plan, length: f64, profile: [(f64, f64, f64); 3], end: f64, ends: Option<f64>) {
    let section: &SectionPlan = &plan.head.sections[0];
    let of_cm = three(plan.head.mass_per_length, foilwork::hair::MassPerLength::g_per_cm);
    let share = section.share.fraction();
    let more = section.ends_between.as_ref().map_or(0.0, |ends| ends.share.fraction());
    assert_eq!(section.zones.len(), 3);
    for ((found, (from, to)), all) in section.zones.iter().zip(zones(length)).zip(&plan.head.zones) {
        let between = ends.map_or(0.0, |ends| (to - from.max(ends)).max(0.0) * more);
        let hair = three(found.hair, foilwork::quantity::Mass::g);
        let surface = three(found.surface, foilwork::quantity::Area::cm2);
        let of_head = three(all.surface, foilwork::quantity::Area::cm2);
        let cm = profile.map(|profile| share * painted(from, to.min(end), profile) + between);
        for bound in 0..3 {
            near(hair[bound], spread(of_cm, cm, bound), 1e-3 * of_cm[bound]);
            near(surface[bound], spread(of_head, cm, bound) / (to - from), 1e-3 * of_head[bound]);
        }
    }
    let sum: f64 = section.zones.iter().map(|zone| zone.hair.best().g()).sum();
    near(sum, section.hair.unwrap().best().g(), 1e-6);
}

#[rstest]
#[case::whole(Zone::Whole, 20.0)]
#[case::mid_lengths(Zone::MidLengths, 2.5 + 35.0 / 3.0)]
#[case::roots(Zone::Roots, 2.5)]
#[case::ends(Zone::Ends, 20.0)]
fn a_zone_has_the_hair_that_is_painted_in_it(
    #[case] zone: Zone,
    #[case] end: f64,
    #[values(0.0, 1.0, 6.0)] start: f64,
    #[values(0.0, 1.5, 8.0)] over: f64,
    #[values(None, Some(1.0), Some(10.0), Some(16.0))] ends: Option<f64>,
) {
    if start >= end && ends.is_none() {
        return; // Nothing is painted, and there is nothing to put on.
    }
    let plan = with(|file| {
        let top = &mut file.section[0];
        (top.zone, top.on_scalp, top.taken_percent) = (zone, Some(false), Some(40.0));
        (top.start_cm, top.transition_cm, top.covered_percent) = (Some(start), Some(over), Some(75.0));
        top.ends_between = ends.map(|from| serde_json::from_value(json!({ "from_cm": from, "percent": 30 })).unwrap());
    });
    if let Some(ends) = ends {
        // Of 20 % taken as two fifths three fifths are left, 30 %, of which 30 % are 9 %.
        let found = plan.head.sections[0].ends_between.as_ref().unwrap();
        near(found.share.percent(), 9.0, 1e-9);
        assert_eq!(found.from.cm(), ends);
    }
    by_zone(&plan, 20.0, [(0.75, start, over); 3], end, ends);
}

/// Where start, transition and share are those that the technique usually has, the least is the least of them that begins latest.
#[test]
fn the_bounds_of_a_zone_are_those_of_a_brush_that_covers_least_and_most() {
    let plan = changed(only_lightener(), |file| {
        of_20_cm(file);
        file.analysis.length_cm = Some(30.0);
        let top = &mut file.section[0];
        (top.technique, top.start_cm, top.transition_cm) = (Technique::Freehand, None, None);
    });
    // 50 % (30 to 70) from 6 cm (4 to 9) over 5 cm (3 to 8), assumed of freehand.
    by_zone(&plan, 30.0, [(0.3, 9.0, 8.0), (0.5, 6.0, 5.0), (0.7, 4.0, 3.0)], 30.0, None);
}

/// Without foil a gram of hair takes 1.5 g of lightener (1.0 to 2.5), and 0.08 g (0.05 to 0.12) stay on each cm2 of the scalp (assumed):
/// of 500 cm2 a fifth is 100.
#[test]
fn a_mix_on_the_scalp_leaves_a_film_there() {
    let of = |on_scalp: bool| {
        with(|file| {
            file.analysis.scalp_cm2 = Some(500.0);
            file.section[0].on_scalp = Some(on_scalp);
        })
    };
    let (on, off) = (of(true), of(false));
    let section = |plan: &Plan| plan.head.sections[0].clone();
    let film = section(&on).film.unwrap();
    for (got, want) in three(film, foilwork::quantity::Mass::g).into_iter().zip([5.0, 8.0, 12.0]) {
        near(got, want, 1e-9);
    }
    assert_eq!(section(&off).film, None);
    let takes = |plan: &Plan| three(section(plan).takes.unwrap(), foilwork::quantity::Mass::g);
    for ((with, without), film) in takes(&on).into_iter().zip(takes(&off)).zip([5.0, 8.0, 12.0]) {
        near(with - without, film, 1e-6);
    }
    near(takes(&off)[1], 1.5 * section(&off).hair.unwrap().best().g(), 1e-6);
}

/// What was used, less the film, over what a gram of hair takes where it went: 100 g on a fifth of the hair, of which 20 cm at 1.5 g, and
/// on as much again between the foils from 15 cm on, 5 cm at 1.5 g; the film is 8 g.
#[test]
fn a_past_use_speaks_of_the_hair_that_it_went_on() {
    let of = |ends: bool, on_scalp: bool| {
        let plan = with(|file| {
            file.analysis.scalp_cm2 = Some(500.0);
            let top = &mut file.section[0];
            (top.on_scalp, top.used_g, top.taken_percent) = (Some(on_scalp), Some(100.0), Some(50.0));
            top.ends_between = ends.then(|| serde_json::from_value(json!({ "from_cm": 15, "percent": 100 })).unwrap());
        });
        plan.head.by_use.unwrap().best().g_per_cm()
    };
    near(of(false, false), 100.0 / (0.2 * 20.0 * 1.5), 1e-6);
    near(of(false, true), 92.0 / (0.2 * 20.0 * 1.5), 1e-6);
    near(of(true, false), 100.0 / ((0.2 * 20.0 + 0.2 * 5.0) * 1.5), 1e-6);
    near(of(true, true), 92.0 / ((0.2 * 20.0 + 0.2 * 5.0) * 1.5), 1e-6);
}

/// What is used moves the whole amount; of it the foils take the same part as before, each as much as the other.
#[test]
fn a_foil_takes_its_part_of_what_was_used() {
    let of = |used: Option<f64>, foils: u32| {
        let plan = with(|file| {
            let top = &mut file.section[0];
            (top.technique, top.foils, top.used_g, top.taken_percent) =
                (Technique::Weave, Some(foils), used, Some(50.0));
            top.ends_between = serde_json::from_value(json!({ "from_cm": 15, "percent": 100 })).ok();
        });
        let section = &plan.head.sections[0];
        let foils = section.mix_per_foil.map_or(0.0, |each| each.best().g() * f64::from(foils));
        (foils / section.takes.unwrap().best().g(), section.mix_per_foil.is_some())
    };
    // 2.5 g on 20 cm of a fifth, and 1.5 g on 5 cm of another.
    let part = 2.5 * 20.0 / (2.5 * 20.0 + 1.5 * 5.0);
    near(of(None, 10).0, part, 1e-6);
    near(of(Some(80.0), 10).0, part, 1e-6);
    near(of(Some(80.0), 7).0, part, 1e-6);
    assert!(!of(Some(80.0), 0).1 && !of(None, 0).1);
}

/// Grams that nobody stated are mixed with the spare of the house on top: of 180 g for a full head (120 to 300) and 20 %, 36 g.
#[rstest]
#[case(Technique::Weave, true, [24.0, 36.0, 60.0])]
#[case(Technique::Regrowth, true, [24.0, 36.0, 60.0])]
#[case(Technique::Block, false, [18.0, 24.0, 36.0])]
#[case(Technique::Regrowth, false, [8.0, 12.0, 18.0])]
fn without_a_length_the_amount_is_the_trades(
    #[case] technique: Technique,
    #[case] lightens: bool,
    #[case] want: [f64; 3],
    #[values(None, Some(25.0))] spare: Option<f64>,
) {
    let plan = changed(only_lightener(), |file| {
        file.salon.spare_percent = spare;
        let top = &mut file.section[0];
        (top.technique, top.mix_g, top.foils) = (technique, None, None);
        if !lightens {
            (top.product, top.target_level) = (Some("J6".to_owned()), 6.0);
        }
    });
    let needed = three(plan.mixes[0].needed, foilwork::quantity::Mass::g);
    for (got, want) in needed.into_iter().zip(want) {
        near(got, want * (1.0 + spare.unwrap_or(0.0) / 100.0), 1e-9);
    }
}
