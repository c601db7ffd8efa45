//! Which shades of a shop a dose is of, by a plain search over shelves: the shade against the warmth and the one that carries it, and
//! the natural shade for white hair. The grams of a dose are the toner room's own.

use super::base::{changed, fine, near, only_colour, shop};
use foilwork::{
    colour::{Hue, Level, Shade, Tone},
    mix::natural_share,
    quantity::{Mass, Share},
    service::{PartKind, Plan, ServiceFile},
    shop::{ShadeClass, shape::ShadeEntry},
    toner::{KnownStart, neutralising_dose},
};

/// Demi-permanent shades around level 9: the neutral ones carry, those of violet and beside it stand against pale yellow.
const SHELF: [(&str, f64, &[&str], Option<f64>); 9] = [
    ("clear", 9.0, &[], Some(0.0)),
    ("neutral 8", 8.0, &[], None),
    ("neutral 10", 10.0, &[], None),
    ("violet 9", 9.0, &["violet"], None),
    ("violet 7", 7.0, &["violet"], None),
    ("violet 6.9", 6.9, &["violet"], None),
    ("red violet 9", 9.0, &["red-violet"], None),
    ("blue 9", 9.0, &["blue"], None),
    ("faint violet 9", 9.0, &["violet"], Some(2.0)),
];

fn stock(file: &mut ServiceFile, picked: &[usize]) {
    let demi = shop(file).shade[0].clone();
    let entry = |place: &usize| {
        let (code, level, tones, deposit_percent) = SHELF[*place];
        let tones = tones.iter().map(|tone| (*tone).to_owned()).collect();
        ShadeEntry { code: code.to_owned(), level, tones, deposit_percent, ..demi.clone() }
    };
    // The toner itself is no shade of the search: a violet of another level.
    shop(file).shade[0].level = 4.0;
    shop(file).shade.extend(picked.iter().map(entry));
}

fn shade(place: usize) -> Shade {
    let (code, level, tones, deposit) = SHELF[place];
    let hues: Vec<Hue> = tones.iter().map(|tone| tone.parse().unwrap()).collect();
    let shade = Shade::new(code, Level::new(level).unwrap(), Tone::from_hues(hues)).unwrap();
    deposit.map_or(shade.clone(), |percent| shade.with_strength(Share::from_percent(percent).unwrap()))
}

/// The carrier: neutral, one that deposits before a clear one, the nearest of them. Against the warmth: violet or the hue beside it,
/// the nearest in level, of two as near the very hue, and the first that a part of the bowl is enough of; else what leaves least.
fn by_hand(picked: &[usize], bowl: Mass) -> Option<(String, String)> {
    let nine = Level::new(9.0).unwrap();
    let fits: Vec<usize> = picked.iter().copied().filter(|place| (7.0..=9.0).contains(&SHELF[*place].1)).collect();
    let far = |place: &usize| 9.0 - SHELF[*place].1;
    let neutral = fits.iter().filter(|place| SHELF[**place].2.is_empty());
    let carrier = *neutral.min_by(|a, b| {
        let clear = |place: &usize| SHELF[*place].3 == Some(0.0);
        clear(a).cmp(&clear(b)).then(far(a).total_cmp(&far(b)))
    })?;
    let steps = |place: &usize| match SHELF[*place].2 {
        ["violet"] => Some(0),
        ["red-violet" | "blue-violet"] => Some(1),
        _ => None,
    };
    let mut against: Vec<usize> = fits.iter().copied().filter(|place| steps(place).is_some()).collect();
    against.sort_by(|a, b| far(a).total_cmp(&far(b)).then(steps(a).cmp(&steps(b))));
    let exposed = KnownStart::default().exposed(Some(Level::new(6.0).unwrap()), nine).unwrap();
    let mut best: Option<(f64, usize)> = None;
    for place in against {
        let dose = neutralising_dose(&exposed, &shade(place), &shade(carrier), bowl);
        let left = dose.warmth_left.best().chroma();
        if best.is_none_or(|(known, _)| left < known) {
            best = Some((left, place));
        }
        if dose.share.best() < Share::ALL {
            break;
        }
    }
    best.map(|(_, place)| (SHELF[place].0.to_owned(), SHELF[carrier].0.to_owned()))
}

#[test]
fn the_shade_against_the_warmth_and_its_carrier_are_the_nearest_that_do_it() {
    let (mut held, mut kinds) = ([0; 2], Vec::new());
    // Every two to four of the shelf, in the order of the shop and turned.
    for set in (0..1_u32 << SHELF.len()).filter(|set| (2..=4).contains(&set.count_ones())).step_by(3) {
        let mut picked: Vec<usize> = (0..SHELF.len()).filter(|place| set >> place & 1 == 1).collect();
        if set % 2 == 0 {
            picked.reverse();
        }
        let plan = changed(fine(), |file| stock(file, &picked));
        let toner = plan.mixes.iter().find(|mix| mix.name == "veil").unwrap();
        // All shades of the bowl, by the scale.
        let colour = toner.bowls[0].parts.iter().filter(|part| part.kind == PartKind::Colour);
        let bowl = Mass::from_g(colour.map(|part| part.weigh.g()).sum::<f64>() * toner.bowls[0].count as f64).unwrap();
        let found = plan.colour[0].neutralising.as_ref();
        let told = found.map(|dose| (dose.neutraliser.clone(), dose.carrier.clone()));
        let want = by_hand(&picked, bowl);
        assert_eq!(told, want, "{picked:?}");
        held[usize::from(want.is_some())] += 1;
        if let Some(dose) = found {
            let grams = dose.dose.mass.best().g();
            near(grams, dose.dose.share.best().fraction() * bowl.g(), 1e-6);
        }
        kinds.extend(want.map(|(shade, carrier)| format!("{shade} in {carrier}")));
    }
    kinds.sort();
    kinds.dedup();
    assert!(held[0] > 10 && held[1] > 10 && kinds.len() >= 6, "{held:?}: {kinds:?}");
}

/// Two bowls hold twice the shades of one, and the dose is of both.
#[test]
fn a_dose_is_of_all_bowls() {
    let of = |mix_g: f64| {
        let plan = changed(fine(), |file| {
            stock(file, &[1, 3]);
            file.toner[0].mix_g = mix_g;
        });
        let dose = plan.colour[0].neutralising.as_ref().unwrap().dose.clone();
        (dose.mass.best().g(), dose.share.best().percent())
    };
    let ((one, share), (three, same)) = (of(60.0), of(300.0));
    near(share, same, 1e-6);
    // Each of its three bowls is weighed to a tenth of a gram.
    near(three, 5.0 * one, 0.15);
}

fn white(percent: f64, target: f64, shades: &[(&str, f64, &[&str], ShadeClass)]) -> Plan {
    changed(only_colour(), |file| {
        file.analysis.white_percent = Some(percent);
        (file.section[0].target_level, file.section[0].mix_g) = (target, Some(40.0));
        let six = shop(file).shade[1].clone();
        shop(file).shade[1].tones = vec!["red".to_owned()];
        shop(file).shade.extend(shades.iter().map(|(code, level, tones, class)| ShadeEntry {
            code: (*code).to_owned(),
            level: *level,
            tones: tones.iter().map(|tone| (*tone).to_owned()).collect(),
            class: *class,
            ..six.clone()
        }));
    })
}

/// The neutral permanent shade nearest to the target on either side; as much of the 20 g of shades in 40 g at 1:1 as the trade takes.
#[test]
fn the_natural_shade_for_white_hair_is_the_nearest_neutral_permanent_one() {
    let permanent = ShadeClass::Permanent;
    let shelf: [(&str, f64, &[&str], ShadeClass); 4] = [
        ("red 6", 6.0, &["red"], permanent),
        ("demi 6", 6.0, &[], ShadeClass::Demi),
        ("neutral 4", 4.0, &[], permanent),
        ("neutral 7", 7.0, &[], permanent),
    ];
    for (target, want) in [(6.0, "neutral 7"), (5.0, "neutral 4"), (5.6, "neutral 7"), (2.0, "neutral 4")] {
        for percent in [10.0, 50.0, 100.0] {
            let dose = white(percent, target, &shelf).colour[0].natural_shade.clone().unwrap();
            assert_eq!(dose.shade.as_deref(), Some(want), "{target}");
            let usual = natural_share(Share::from_percent(percent).unwrap()).share;
            assert_eq!(dose.share, usual);
            for (mass, share) in dose.mass.to_array().into_iter().zip(usual.to_array()) {
                near(mass.g(), 20.0 * share.fraction(), 1e-9);
            }
        }
    }
    assert_eq!(white(50.0, 6.0, &shelf[..2]).colour[0].natural_shade.as_ref().unwrap().shade, None);
    assert!(white(0.0, 6.0, &shelf).colour[0].natural_shade.is_none());
}
