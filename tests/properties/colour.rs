//! What must hold for every level, tone and colour.

use foilwork::{
    colour::{
        Canvas, Difference, Hue, Lab, Level, Lightness, ProductKind, Redness, Scale, Shade, Srgb, Swatch, Tone, White,
        Xyz, Yellowness, blended_level, formula_level, lift_needed, pre_pigmentation, result_level, transition_between,
        underlying_pigment,
    },
    column::{self, Cells, Coordinates, Triples},
    quantity::{Mass, Share},
};
use proptest::prelude::*;

fn level() -> impl Strategy<Value = Level> {
    (1.0..=12.0).prop_map(|number| Level::new(number).expect("in range"))
}

fn hue() -> impl Strategy<Value = Hue> {
    prop::sample::select(Hue::ALL)
}

fn tone() -> impl Strategy<Value = Tone> {
    prop::collection::vec(hue(), 0..4).prop_map(Tone::from_hues)
}

fn lab() -> impl Strategy<Value = Lab> {
    (0.0..=100.0, -128.0..=128.0, -128.0..=128.0)
        .prop_map(|(l, a, b)| Lab::new(l, a, b, White::D65TwoDegree).expect("in range"))
}

fn apart(first: Lab, second: Lab) -> f64 {
    Difference::between(first, second).expect("one white").ciede2000
}

fn near(a: Lab, b: Lab, within: f64) -> bool {
    (a.l() - b.l()).abs() <= within && (a.a() - b.a()).abs() <= within && (a.b() - b.b()).abs() <= within
}

#[test]
fn the_complement_is_half_way_round_and_comes_back() {
    for hue in Hue::ALL.iter().copied() {
        assert_eq!((hue.complement().position() + 12 - hue.position()) % 12, 6, "{hue}");
        assert_eq!(hue.complement().complement(), hue);
        assert_eq!(hue.words().parse(), Ok(hue));
    }
}

// Found by fuzzing: the square of so small a coordinate is zero, and its hue was no direction any more.
#[test]
fn hardly_any_chroma_is_as_far_away_as_none() {
    let white = White::D65TenDegree;
    let colour = Lab::new(2.57, 50.698, 53.834, white).expect("in range");
    let grey = Lab::new(53.96, 0.0, 0.0, white).expect("in range");
    for power in (-320..=-20).rev() {
        let hint = 10.0_f64.powi(power);
        for (a, b) in [(0.0, hint), (hint, 0.0), (-hint, hint), (0.0, -hint)] {
            let nearly = Lab::new(53.96, a, b, white).expect("in range");
            assert!((apart(colour, nearly) - apart(colour, grey)).abs() < 1e-9, "{a} {b}");
            assert!(apart(nearly, grey) < 1e-9, "{a} {b}");
        }
    }
}

#[test]
fn hue_turns_from_red_to_yellow_as_hair_is_lightened() {
    for natural in 1..=5 {
        let natural = Level::new(f64::from(natural)).expect("a level");
        let mut last = 0.0;
        for step in 0..=60 {
            let target = natural.number() + f64::from(step) * (10.0 - natural.number()) / 60.0;
            let lab = Swatch::lightened(natural, Level::new(target).expect("a level")).lab();
            if lab.chroma() > 2.0 {
                let angle = lab.lch().hue_degrees();
                assert!(angle >= last - 1e-9, "{natural} to {target}: {angle}");
                assert!(Hue::nearest_to(lab).is_some_and(|hue| hue <= Hue::Yellow), "{natural} to {target}: {lab}");
                last = angle;
            }
        }
        assert!(last > 80.0);
    }
}

proptest! {
    #[test]
    fn levels_are_printed_and_read_back(level in level()) {
        prop_assert_eq!(level.to_string().parse::<Level>(), Ok(level));
    }

    #[test]
    fn lift_is_antisymmetric_and_adds_up(a in level(), b in level(), c in level()) {
        prop_assert_eq!(lift_needed(a, b), -lift_needed(b, a));
        let sum = lift_needed(a, b).levels() + lift_needed(b, c).levels();
        // Differences are rounded to the ninth decimal.
        prop_assert!((sum - lift_needed(a, c).levels()).abs() < 2e-9);
    }

    #[test]
    fn formula_level_undoes_the_mean(natural in level(), applied in level()) {
        let target = result_level(natural, applied, ProductKind::PermanentColour).expect("permanent").value;
        let formula = formula_level(natural, target, ProductKind::PermanentColour, Canvas::Natural, Scale::Twelve);
        prop_assert!((formula.expect("in range").value.number() - applied.number()).abs() < 1e-9);
    }

    #[test]
    fn a_blend_is_between_its_parts(parts in prop::collection::vec((level(), 0.1..500.0), 1..6)) {
        let parts: Vec<_> = parts.into_iter().map(|(l, g)| (l, Mass::from_g(g).expect("a mass"))).collect();
        let blend = blended_level(parts.iter().copied()).expect("some mass").value.number();
        let numbers = || parts.iter().map(|(level, _)| level.number());
        let low = numbers().fold(f64::INFINITY, f64::min);
        let high = numbers().fold(0.0, f64::max);
        prop_assert!(blend >= low - 1e-9 && blend <= high + 1e-9);
    }

    #[test]
    fn the_neutraliser_is_the_complement_of_what_is_exposed(level in level()) {
        let pigment = underlying_pigment(level).value;
        if let Some((darker, lighter)) = pigment.neutraliser {
            prop_assert_eq!(lighter, pigment.exposed.1.complement());
            prop_assert!(darker == pigment.exposed.0.complement() || darker == lighter);
        } else {
            prop_assert!(level.number() < 2.0);
        }
    }

    #[test]
    fn tone_shares_add_up_to_all(tone in tone()) {
        let total: f64 = tone.parts().iter().map(|part| part.share_percent).sum();
        prop_assert!(tone.is_neutral() || (total - 100.0).abs() < 1e-9);
        for part in tone.complement().complement().parts() {
            let same = tone.parts().iter().find(|other| other.hue == part.hue);
            prop_assert!(same.is_some_and(|other| (other.share_percent - part.share_percent).abs() < 1e-9));
        }
    }

    #[test]
    fn pre_pigmentation_only_going_darker(from in level(), to in level()) {
        if let Some(advice) = pre_pigmentation(from, to) {
            prop_assert!(to < from && advice.level > to && advice.level <= from);
        } else {
            prop_assert!(from.number() - to.number() < 2.0);
        }
    }

    #[test]
    fn a_transition_lies_between_and_does_not_depend_on_the_order(a in level(), b in level(), s in tone(), t in tone()) {
        let (one, other) = (transition_between((a, &s), (b, &t)), transition_between((b, &t), (a, &s)));
        prop_assert_eq!(one.as_ref().map(|t| t.level), other.map(|t| t.level));
        if let Some(transition) = one {
            prop_assert!(transition.level >= a.min_of(b) && transition.level <= a.max_of(b));
        }
    }

    #[test]
    fn ciede2000_is_a_symmetric_distance_from_zero(first in lab(), second in lab()) {
        prop_assert_eq!(apart(first, first), 0.0);
        prop_assert!((apart(first, second) - apart(second, first)).abs() < 1e-9);
        prop_assert!(apart(first, second) >= 0.0);
    }

    #[test]
    fn the_column_kernel_is_the_scalar_rule(rows in prop::collection::vec((lab(), lab(), any::<bool>()), 1..19)) {
        let column = |of: fn(Lab) -> f64, first: bool| -> Vec<f64> {
            rows.iter().map(|(a, b, missing)| if *missing { f64::NAN } else { of(if first { *a } else { *b }) }).collect()
        };
        let columns: [Vec<f64>; 6] = [
            column(Lab::l, true), column(Lab::a, true), column(Lab::b, true),
            column(Lab::l, false), column(Lab::a, false), column(Lab::b, false),
        ];
        let [l1, a1, b1, l2, a2, b2] = columns.each_ref().map(|column| Cells::Each(column));
        let (first, second) = (Triples::Columns([l1, a1, b1]), Triples::Columns([l2, a2, b2]));
        let mut out = vec![0.0; rows.len()];
        let outcome = column::ciede2000(first, second, &mut out).expect("one length");
        prop_assert_eq!(outcome.refused, 0);
        for ((first, second, missing), got) in rows.iter().zip(&out) {
            let same = if *missing { got.is_nan() } else { *got == apart(*first, *second) };
            prop_assert!(same);
        }
        let row_after_row: Vec<f64> = (0..rows.len()).flat_map(|row| first.get(row)).collect();
        let mut again = vec![0.0; rows.len()];
        let outcome = column::ciede2000(Triples::Rows(&row_after_row), second, &mut again).expect("one length");
        prop_assert_eq!(outcome.refused, 0);
        prop_assert!(out.iter().zip(&again).all(|(one, other)| one.to_bits() == other.to_bits()));
    }

    #[test]
    fn a_column_refuses_what_the_type_refuses(lightness in prop::collection::vec(-20.0..120.0_f64, 1..19)) {
        let rows: Vec<f64> = lightness.iter().flat_map(|l| [*l, 3.0, 4.0]).collect();
        let mut out = vec![0.0; lightness.len()];
        let same = Triples::Columns([50.0, 3.0, 4.0].map(Cells::Same));
        let outcome = column::ciede2000(Triples::Rows(&rows), same, &mut out).expect("one length");
        let refused = |l: &f64| Lab::new(*l, 3.0, 4.0, White::default()).is_err();
        prop_assert_eq!(outcome.refused, lightness.iter().filter(|l| refused(l)).count());
        prop_assert_eq!(outcome.first, lightness.iter().position(refused));
        prop_assert!(lightness.iter().zip(&out).all(|(l, apart)| apart.is_nan() == refused(l)));
    }

    #[test]
    fn the_columns_of_coordinates_are_the_types(labs in prop::collection::vec(lab(), 1..19), ten: bool) {
        let white = if ten { White::D65TenDegree } else { White::D65TwoDegree };
        let labs: Vec<Lab> =
            labs.iter().map(|lab| Lab::new(lab.l(), lab.a(), lab.b(), white).expect("in range")).collect();
        let turned = |turn, input: &[f64]| {
            let mut out = vec![0.0; input.len()];
            let outcome = column::coordinates(turn, white, input, &mut out).expect("one length");
            (out, outcome.refused)
        };
        let flat: Vec<f64> = labs.iter().flat_map(|lab| [lab.l(), lab.a(), lab.b()]).collect();
        let (xyz, refused) = turned(Coordinates::LabToXyz, &flat);
        prop_assert_eq!(refused, 0);
        for (lab, got) in labs.iter().zip(xyz.chunks(3)) {
            for (got, want) in got.iter().zip(lab.xyz().to_array()) {
                prop_assert!((got - want).abs() < 1e-13, "{lab}: {got} {want}");
            }
        }
        let (lch, _) = turned(Coordinates::LabToLch, &flat);
        for (lab, got) in labs.iter().zip(lch.chunks(3)) {
            let want = lab.lch();
            let turn = (got[2] - want.hue_degrees()).abs();
            prop_assert!((got[1] - want.chroma()).abs() < 1e-12 && turn.min(360.0 - turn) < 1e-11, "{lab}: {got:?}");
        }
        let (back, _) = turned(Coordinates::LchToLab, &lch);
        prop_assert!(back.iter().zip(&flat).all(|(a, b)| (a - b).abs() < 1e-12), "{back:?} {flat:?}");
        // X, Y, Z from 0 to 2 alone are taken; the others are refused, as the type refuses them.
        let (back, refused) = turned(Coordinates::XyzToLab, &xyz);
        let fits = |xyz: &[f64]| Xyz::new(xyz[0], xyz[1], xyz[2], white).is_ok();
        prop_assert_eq!(refused, xyz.chunks(3).filter(|xyz| !fits(xyz)).count());
        for ((xyz, back), lab) in xyz.chunks(3).zip(back.chunks(3)).zip(flat.chunks(3)) {
            let near = back.iter().zip(lab).all(|(a, b)| (a - b).abs() < 1e-10);
            prop_assert!(if fits(xyz) { near } else { back.iter().all(|value| value.is_nan()) }, "{lab:?} {back:?}");
        }
    }

    #[test]
    fn coordinates_come_back(lab in lab()) {
        prop_assert!(near(lab.xyz().lab(), lab, 1e-9));
        prop_assert!(near(lab.lch().lab(), lab, 1e-9));
        prop_assert!(near(lab.adapted_to(White::D65TenDegree).adapted_to(White::D65TwoDegree), lab, 1e-3));
    }

    #[test]
    fn every_screen_colour_comes_back(red: u8, green: u8, blue: u8) {
        let colour = Srgb { red, green, blue };
        prop_assert_eq!(Srgb::nearest(colour.lab()), (colour, true));
        prop_assert_eq!(colour.to_string().parse::<Srgb>(), Ok(colour));
    }

    #[test]
    fn lighter_levels_look_lighter(a in level(), b in level()) {
        prop_assume!((a.number() - b.number()).abs() > 1e-6);
        let (dark, light) = if a < b { (a, b) } else { (b, a) };
        prop_assert!(Swatch::natural(dark).lab().l() < Swatch::natural(light).lab().l());
        let from = Level::DARKEST;
        prop_assert!(Swatch::lightened(from, dark).lab().l() < Swatch::lightened(from, light).lab().l() + 1e-9);
    }

    #[test]
    fn lightened_hair_is_as_light_as_its_level_and_never_darker_than_it_was(from in level(), to in level()) {
        let lightened = Swatch::lightened(from, to).lab().l();
        let wanted = Swatch::natural(if to > from { to } else { from }).lab().l();
        prop_assert!((lightened - wanted).abs() < 1e-6);
    }

    #[test]
    fn the_bounds_hold_the_best_estimate(level in level(), tone in tone()) {
        for swatch in [Swatch::natural(level), Swatch::of_look(level, &tone), Swatch::white()] {
            let bounds = [
                swatch.lightness().to_array().map(Lightness::lab_l),
                swatch.redness().to_array().map(Redness::lab_a),
                swatch.yellowness().to_array().map(Yellowness::lab_b),
            ];
            for [low, best, high] in bounds {
                prop_assert!(low <= best && best <= high && low < high);
            }
        }
    }

    #[test]
    fn strands_side_by_side_do_not_depend_on_the_order(a in level(), b in level(), percent in 0.0..=100.0) {
        let (first, second) = (Swatch::natural(a), Swatch::lightened(a, b));
        let (share, rest) = (Share::from_percent(percent).expect("a share"), Share::from_percent(100.0 - percent).expect("a share"));
        prop_assert!(near(first.beside(&second, share).lab(), second.beside(&first, rest).lab(), 1e-9));
        let l = first.beside(&second, share).lab().l();
        prop_assert!(l >= first.lab().l() - 1e-9 && l <= second.lab().l() + 1e-9);
    }

    #[test]
    fn an_exposed_hue_with_its_complement_is_nearer_to_neutral_hair(level in 5.0..=10.0, hue in hue()) {
        // The hues that hair exposes; a red-violet is itself a neutraliser of yellow.
        prop_assume!(hue <= Hue::Yellow);
        let level = Level::new(level).expect("a level");
        let half = Share::from_percent(50.0).expect("a share");
        let alone = Tone::of(hue);
        let both = Tone::blend([(&alone, half), (&alone.complement(), half)]);
        let neutral = Swatch::of_look(level, &Tone::neutral());
        let off = |tone: &Tone| Swatch::of_look(level, tone).difference_to(&neutral).ciede2000;
        prop_assert!(off(&both) < off(&alone), "{hue}: {} against {}", off(&both), off(&alone));
    }

    #[test]
    fn a_shade_is_as_light_as_its_level_whatever_its_tone(level in 1.0..=12.0, tone in tone()) {
        let level = Level::new(level).expect("a level");
        let shade = Shade::new("x", level, tone).expect("a shade");
        let (toned, neutral) = (Swatch::of_shade(&shade).lab().l(), Swatch::natural(level).lab().l());
        prop_assert!((toned - neutral).abs() < 1e-3, "{toned} against {neutral}");
    }
}

trait Ends {
    fn min_of(self, other: Self) -> Self;
    fn max_of(self, other: Self) -> Self;
}

impl Ends for Level {
    fn min_of(self, other: Self) -> Self {
        if self < other { self } else { other }
    }

    fn max_of(self, other: Self) -> Self {
        if self > other { self } else { other }
    }
}
