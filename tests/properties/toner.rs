//! What must hold for every toner search.

use foilwork::{
    colour::{Hue, Lab, Level, Shade, Tone, White, underlying_pigment},
    quantity::{Mass, Quantity, Share},
    reader::Format,
    shop::{self, Shop},
    toner::{Exposed, Outcome, Target, TonerAnswer, TonerMix, TonerRequest, find_toner, neutralising_dose, toned},
};
use proptest::prelude::*;

fn shelf() -> Vec<Shade> {
    let file =
        shop::parse_shop(include_str!("../../examples/juniper_and_tide.toml"), Format::Toml).expect("the demo shop");
    Shop::new(&file).expect("the demo shop").colours().cloned().collect()
}

/// A few shades of the shelf, the darkest always among them: no hair of these tests is darker than it.
fn part_of_the_shelf() -> impl Strategy<Value = Vec<Shade>> {
    let mut shelf = shelf();
    shelf.sort_by(|a, b| a.level().number().total_cmp(&b.level().number()));
    let darkest = shelf.remove(0);
    prop::sample::subsequence(shelf, 3..=4).prop_map(move |mut part| {
        part.push(darkest.clone());
        part
    })
}

fn exposed() -> impl Strategy<Value = Exposed> {
    (40.0..=68.0, 0.0..=8.0, 8.0..=28.0, 6.0..=10.0).prop_map(|(l, a, b, level)| {
        Exposed::measured(
            Lab::new(l, a, b, White::D65TenDegree).expect("a colour"),
            Level::new(level).expect("a level"),
        )
    })
}

fn target() -> impl Strategy<Value = Target> {
    let tones = prop::collection::vec(prop::sample::select(Hue::ALL), 0..3).prop_map(Tone::from_hues);
    (5.0..=10.0, tones).prop_map(|(level, tone)| Target::Look { level: Level::new(level).expect("a level"), tone })
}

fn find(shades: &[Shade], exposed: Exposed, target: &Target, most_shades: usize) -> TonerAnswer {
    find_toner(&TonerRequest {
        exposed,
        target: target.clone(),
        shades: shades.iter().collect(),
        most_shades,
        bowl: Mass::from_g(30.0).expect("a mass"),
        division: Mass::from_g(0.5).expect("a mass"),
    })
    .expect("an answer")
}

/// What mixes are ranked by: a further shade must be worth a quarter of a unit.
fn cost(mix: &TonerMix) -> f64 {
    mix.residual.ciede2000 + 0.25 * mix.parts.len() as f64
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn masses_add_up_in_whole_divisions(shelf in part_of_the_shelf(), exposed in exposed(), target in target()) {
        let answer = find(&shelf, exposed, &target, 3);
        for mix in std::iter::once(&answer.best).chain(&answer.alternatives) {
            let total: f64 = mix.parts.iter().map(|part| part.mass.g()).sum();
            prop_assert!((total - 30.0).abs() < 1e-9);
            prop_assert!((1..=3).contains(&mix.parts.len()));
            for part in &mix.parts {
                let divisions = part.mass.g() / 0.5;
                prop_assert!(divisions > 0.5 && (divisions - divisions.round()).abs() < 1e-9);
            }
            prop_assert!(cost(mix) >= cost(&answer.best));
        }
        let left = answer.best.residual.ciede2000;
        let want: &[Outcome] = match () {
            () if answer.before.ciede2000 <= left => &[Outcome::AlreadyNearer, Outcome::TooCloseToTell],
            () if left <= 2.0 => &[Outcome::Reached],
            () => &[Outcome::NearestOnly],
        };
        prop_assert!(want.contains(&answer.outcome));
    }

    #[test]
    fn more_freedom_never_ends_further_away(shelf in part_of_the_shelf(), exposed in exposed(), target in target()) {
        let miss = |shades: &[Shade], most| cost(&find(shades, exposed, &target, most).best);
        prop_assert!(miss(&shelf, 2) <= miss(&shelf, 1) + 1e-12);
        prop_assert!(miss(&shelf, 3) <= miss(&shelf, 2) + 1e-12);
        prop_assert!(miss(&shelf, 2) <= miss(&shelf[2..], 2) + 1e-12);
    }

    #[test]
    fn the_order_of_the_shelf_does_not_matter(part in part_of_the_shelf(), exposed in exposed(), target in target()) {
        let mut shelf = part;
        let forward = find(&shelf, exposed, &target, 2).best;
        shelf.reverse();
        let backward = find(&shelf, exposed, &target, 2).best;
        prop_assert_eq!(forward, backward);
    }

    #[test]
    fn a_clear_shade_leaves_the_hair_as_it_was(exposed in exposed(), target in target()) {
        let clear = Shade::new("clear", Level::new(10.0).expect("a level"), Tone::neutral()).expect("a shade");
        let answer = find(&[clear.with_strength(Share::NONE)], exposed, &target, 1);
        let change = exposed.look().difference_to(&answer.best.predicted).ciede2000;
        prop_assert!(change < 1e-3, "{change}");
    }

    #[test]
    fn toners_do_not_lighten(shelf in part_of_the_shelf(), exposed in exposed(), target in target()) {
        let answer = find(&shelf, exposed, &target, 2);
        let before = exposed.look().lab().l();
        prop_assert!(answer.best.predicted.lab().l() < before);
    }

    #[test]
    fn the_complement_of_the_exposed_hue_takes_chroma_away(hue in 0_usize..5, l in 45.0..=65.0, chroma in 24.0..=32.0, natural in 7.0..=10.0) {
        let hue = Hue::ALL[hue];
        let (sin, cos) = hue.lab_angle_degrees().to_radians().sin_cos();
        let lab = Lab::new(l, chroma * cos, chroma * sin, White::D65TwoDegree).expect("a colour");
        let level = Level::new(natural).expect("a level");
        let shade = |code, tone| Shade::new(code, level, tone).expect("a shade");
        let (cool, neutral) = (shade("cool", Tone::of(hue.complement())), shade("neutral", Tone::neutral()));
        let dose = neutralising_dose(&Exposed::measured(lab, level), &cool, &neutral, Mass::from_g(30.0).expect("a mass"));
        prop_assert!(dose.warmth_left.best() < dose.warmth_without.best());
        prop_assert!(dose.share.best() > Share::NONE);
        prop_assert!(dose.share.low() <= dose.share.best() && dose.share.best() <= dose.share.high());
    }
    #[test]
    fn chroma_does_not_rise_when_the_complement_is_added_in_the_dose_named(natural in 1.0..=6.0, lifted in 5.0..=10.0, depth in 0.0..=2.0) {
        prop_assume!(lifted >= natural + 2.0);
        let level = |number| Level::new(number).expect("a level");
        let exposed = Exposed::lightened(level(natural), level(lifted));
        let (_, complement) = underlying_pigment(level(lifted)).value.neutraliser.expect("warmth at every level from 5");
        let shade = Shade::new("cool", level(lifted - depth), Tone::of(complement)).expect("a shade");
        let clear = Shade::new("clear", level(10.0), Tone::neutral()).expect("a shade").with_strength(Share::NONE);
        let dose = neutralising_dose(&exposed, &shade, &clear, Mass::from_g(30.0).expect("a mass"));
        let before = exposed.look().lab().chroma();
        let share = dose.share.best();
        let after = toned(&exposed, [(&shade, share), (&clear, Share::nearest(100.0 - share.percent()))]).lab().chroma();
        prop_assert!(after <= before + 1e-6, "{} {share}: {before} to {after}", complement);
        prop_assert!(share == Share::NONE || after < before);
    }
}
