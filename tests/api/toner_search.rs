//! The search for a toner against every mix there is, and the dose of a shade against every percent of it.

use super::toner::{lab, level, lifted as hair, shade};
use foilwork::{
    colour::{Difference, Hue, Lab, Shade, Swatch, Tone},
    finding::Verdict,
    quantity::{Mass, Share},
    toner::{Exposed, Outcome, Target, TonerMix, TonerRequest, find_toner, neutralising_dose, toned},
};
use rstest::rstest;

fn request<'a>(
    shades: &'a [Shade],
    exposed: Exposed,
    target: Target,
    most_shades: usize,
    divisions: f64,
) -> TonerRequest<'a> {
    TonerRequest {
        exposed,
        target,
        shades: shades.iter().collect(),
        most_shades,
        bowl: Mass::from_g(divisions).unwrap(),
        division: Mass::from_g(1.0).unwrap(),
    }
}

fn chart() -> Vec<Shade> {
    vec![
        shade("a", 9.0, Tone::neutral()),
        shade("b", 8.0, Tone::of(Hue::Violet)),
        shade("c", 7.0, Tone::of(Hue::Blue)),
        shade("d", 6.0, Tone::of(Hue::Orange)),
        shade("e", 5.0, Tone::of(Hue::Green)),
    ]
}

/// Every way to part so many divisions among as many shades, each with one at least.
fn parted(divisions: u32, shades: usize) -> Vec<Vec<u32>> {
    if shades == 1 {
        return vec![vec![divisions]];
    }
    let rest =
        |first: u32| parted(divisions - first, shades - 1).into_iter().map(move |rest| [vec![first], rest].concat());
    (1..=divisions - (shades as u32 - 1)).flat_map(rest).collect()
}

/// Against every mix of up to three of five shades in twelve divisions: none is cheaper, a further shade being worth a quarter of a unit.
/// The hair is measured, so that the trade's list has no say.
#[rstest]
#[case(1, (60.0, 8.0, 25.0), (45.0, 2.0, 8.0))]
#[case(2, (60.0, 8.0, 25.0), (45.0, 2.0, 8.0))]
#[case(2, (70.0, 5.0, 30.0), (55.0, 3.0, 10.0))]
#[case(2, (50.0, 10.0, 20.0), (35.0, 12.0, 14.0))]
#[case(3, (60.0, 8.0, 25.0), (45.0, 2.0, 8.0))]
#[case(3, (50.0, 10.0, 20.0), (35.0, 0.0, 0.0))]
fn no_mix_is_better_than_the_one_found(
    #[case] most: usize,
    #[case] hair: (f64, f64, f64),
    #[case] wanted: (f64, f64, f64),
) {
    let (shades, divisions) = (chart(), 12);
    let exposed = Exposed::measured(lab(hair.0, hair.1, hair.2), level(9.0));
    let wanted = lab(wanted.0, wanted.1, wanted.2);
    let answer = find_toner(&request(&shades, exposed, Target::Lab(wanted), most, f64::from(divisions))).unwrap();
    let mut least = (f64::INFINITY, String::new());
    for chosen in 1_u32..32 {
        let places: Vec<usize> = (0..5).filter(|place| chosen >> place & 1 == 1).collect();
        if places.len() > most {
            continue;
        }
        for masses in parted(divisions, places.len()) {
            let share = |mass: &u32| Share::from_fraction(f64::from(*mass) / f64::from(divisions)).unwrap();
            let made = toned(&exposed, places.iter().map(|place| &shades[*place]).zip(masses.iter().map(share)));
            let left = Difference::between(made.lab(), wanted).unwrap().ciede2000;
            let cost = left + 0.25 * places.len() as f64;
            if cost < least.0 {
                least = (cost, format!("{places:?} {masses:?}, {left}"));
            }
        }
    }
    let found = answer.best.residual.ciede2000 + 0.25 * answer.best.parts.len() as f64;
    assert!((found - least.0).abs() < 1e-9, "{} at {found}, and {least:?}", answer.best.recipe());
    // Largest first, all of the bowl, and level and tone by mass.
    let parts = &answer.best.parts;
    assert!(parts.windows(2).all(|two| two[0].mass >= two[1].mass));
    let of = |code: &str| shades.iter().find(|shade| shade.code() == code).unwrap();
    let mean: f64 = parts.iter().map(|part| of(&part.code).level().number() * part.mass.g() / 12.0).sum();
    assert!((answer.best.level.number() - mean).abs() < 1e-9);
    assert!(parts.iter().all(|part| (part.share.fraction() - part.mass.g() / 12.0).abs() < 1e-12));
    // Others are at most five, none of them taken twice, the cheapest first.
    let cost = |mix: &TonerMix| mix.residual.ciede2000 + 0.25 * mix.parts.len() as f64;
    let others = &answer.alternatives;
    assert!(others.len() <= 5 && others.windows(2).all(|two| cost(&two[0]) <= cost(&two[1])));
    assert!(others.iter().all(|other| other.parts != answer.best.parts));
}

/// The outcome follows from what is left and what was there: hair 10 of L* from the target is reached within 2.
#[test]
fn an_outcome_follows_from_what_is_left() {
    let shades = chart();
    for (l, wanted) in [(60.0, 45.0), (60.0, 58.0), (50.0, 20.0), (60.0, 60.0)] {
        let (hair, target) = (lab(l, 8.0, 25.0), lab(wanted, 4.0, 12.0));
        let exposed = Exposed::measured(hair, level(9.0));
        let answer = find_toner(&request(&shades, exposed, Target::Lab(target), 2, 12.0)).unwrap();
        let left = Difference::between(answer.best.predicted.lab(), target).unwrap();
        assert!((answer.best.residual.ciede2000 - left.ciede2000).abs() < 1e-9);
        assert!((answer.before.ciede2000 - Difference::between(hair, target).unwrap().ciede2000).abs() < 1e-6);
        let want = match (answer.before.ciede2000 > left.ciede2000, left.ciede2000 <= 2.0) {
            (true, true) => Outcome::Reached,
            (true, false) => Outcome::NearestOnly,
            (false, _) => continue,
        };
        assert_eq!(answer.outcome, want, "{}", answer.summary());
        assert_eq!(answer.against, None, "no list is asked of what was measured");
    }
}

/// A dose by hand: of a bowl so much as its share, the finding in whole grams and tenths; with a clear carrier the warmth without it is that
/// before.
#[test]
fn a_dose_is_its_share_of_the_bowl() {
    let clear = shade("clear", 10.0, Tone::neutral()).with_strength(Share::NONE);
    let violet = shade("J9-mist", 8.0, Tone::of(Hue::Violet));
    let found = neutralising_dose(&hair(9.0), &violet, &clear, Mass::from_g(40.0).unwrap());
    let shares = found.share.to_array().map(Share::percent);
    for (share, mass) in shares.into_iter().zip(found.mass.to_array()) {
        assert!((mass.g() - 0.4 * share).abs() < 1e-9, "{share} {mass}");
        assert!((share - share.round()).abs() < 1e-9, "whole percents: {share}");
    }
    let [before, without, left] =
        [found.warmth_before, found.warmth_without, found.warmth_left].map(|warmth| warmth.best().chroma());
    assert!((before - without).abs() < 1e-9 && left <= without, "{before} {without} {left}");
    let [low, best, high] = shares.map(|share| 0.4 * share);
    let want = if shares[1] < 100.0 {
        format!(
            "{best:.1} g of J9-mist in 40 g of shades ({low:.1} to {high:.1} g) takes the warmth away; more over-tones, so start low and watch \
             it on a strand"
        )
    } else {
        format!(
            "all 40 g of J9-mist would not take the warmth away: {left:.0} of it is left (a deeper shade takes more); where it takes up more \
             than expected {low:.1} g is enough, so watch it on a strand"
        )
    };
    assert_eq!((found.finding.text.as_str(), found.finding.verdict), (want.as_str(), Verdict::Note));
}

/// The least of the warmth is where it is least in steps of one percent: worked from the toned hair itself, away from natural hair as light.
#[rstest]
#[case(9.0, 8.0, Hue::Violet)]
#[case(7.0, 5.0, Hue::BlueViolet)]
#[case(6.0, 5.0, Hue::Blue)]
fn no_percent_leaves_less_warmth(#[case] lifted: f64, #[case] depth: f64, #[case] hue: Hue) {
    let clear = shade("clear", 10.0, Tone::neutral()).with_strength(Share::NONE);
    let cool = shade("cool", depth, Tone::of(hue));
    let hair = hair(lifted);
    let found = neutralising_dose(&hair, &cool, &clear, Mass::from_g(30.0).unwrap());
    let natural: Vec<Lab> =
        (0..=4400).map(|step| Swatch::natural(level(1.0 + f64::from(step) / 400.0)).lab()).collect();
    let warmth = |percent: u32| {
        let share = |percent: u32| Share::from_percent(f64::from(percent)).unwrap();
        let made = toned(&hair, [(&cool, share(percent)), (&clear, share(100 - percent))]).lab();
        let nearest = natural
            .iter()
            .min_by(|one, other| (one.l() - made.l()).abs().total_cmp(&(other.l() - made.l()).abs()))
            .unwrap();
        (made.a() - nearest.a()).hypot(made.b() - nearest.b())
    };
    let all: Vec<f64> = (0..=100).map(warmth).collect();
    let least = all.iter().copied().fold(f64::INFINITY, f64::min);
    let share = found.share.best().percent();
    // Natural hair is followed in steps of a quarter level there, so a tenth of a unit may be between.
    assert!(all[share as usize] <= least + 0.1, "{share} leaves {}, the least is {least}", all[share as usize]);
    for (told, worked) in
        [(found.warmth_left, all[share as usize]), (found.warmth_without, all[0]), (found.warmth_before, all[0])]
    {
        assert!((told.best().chroma() - worked).abs() < 0.1, "{told:?} {worked}");
    }
}

/// Where the trade's list names the warmth, a mix with its complement is taken for a target that is neutral or cool: for one that is measured
/// where it is bluer than the hair by more than 2 of b*, which two readings do not differ by. Nothing is named of hair that was measured.
#[rstest]
#[case(false, Some(Tone::neutral()), 0.0, true)]
#[case(false, Some(Tone::of(Hue::Violet)), 0.0, true)]
#[case(false, Some(Tone::of(Hue::Yellow)), 0.0, false)]
#[case(false, None, -10.0, true)]
#[case(false, None, -1.5, false)]
#[case(false, None, 5.0, false)]
#[case(true, Some(Tone::neutral()), 0.0, false)]
fn the_list_of_the_trade_has_a_say(
    #[case] measured: bool,
    #[case] tone: Option<Tone>,
    #[case] yellower: f64,
    #[case] against: bool,
) {
    let modelled = hair(9.0);
    let seen = modelled.look().lab();
    let exposed = if measured { Exposed::measured(seen, level(9.0)) } else { modelled };
    let target = tone.map_or_else(
        || Target::Lab(Lab::new(seen.l() - 4.0, seen.a(), seen.b() + yellower, seen.white()).unwrap()),
        |tone| Target::Look { level: level(8.5), tone },
    );
    let shades = [shade("J9", 9.0, Tone::neutral()), shade("J9-mist", 9.0, Tone::of(Hue::Violet))];
    let answer = find_toner(&request(&shades, exposed, target, 2, 30.0)).unwrap();
    assert_eq!(answer.against.is_some(), against, "{}", answer.summary());
    if against {
        assert_eq!(answer.best.tone.main_hue(), Some(Hue::Violet), "{}", answer.best.recipe());
        assert!(answer.summary().starts_with("violet against pale yellow: "), "{}", answer.summary());
    }
}
