//! Wheel, tones, scales, swatches and words of differences, by hand and by what the documentation promises.

use crate::api::common::{all_near, near};
use foilwork::{
    colour::{
        Difference, Hue, Lab, Lch, Level, LevelChange, Lightness, Reflectance, Scale, ScaleMapping, ScaleReading,
        SectionLook, SeenPigment, Srgb, Swatch, Temper, Tone, TonePart, Visibility, White, Xyz, pre_pigmentation,
        section_look, strip, underlying_pigment,
    },
    quantity::Share,
    source::{Basis, Interval},
};
use rstest::rstest;

fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

fn share(percent: f64) -> Share {
    Share::from_percent(percent).unwrap()
}

fn lab(l: f64, a: f64, b: f64) -> Lab {
    Lab::new(l, a, b, White::D65TenDegree).unwrap()
}

/// Twelve hues in a ring: the shorter way round, at most half of it, the same from either end.
#[test]
fn steps_go_the_shorter_way_round() {
    for (one, from) in Hue::ALL.iter().zip(0_i32..) {
        for (other, to) in Hue::ALL.iter().zip(0_i32..) {
            let ahead = (to - from).rem_euclid(12);
            assert_eq!(one.steps_to(*other), usize::try_from(ahead.min(12 - ahead)).unwrap(), "{one} to {other}");
        }
    }
    assert_eq!([Hue::Red.steps_to(Hue::RedViolet), Hue::Red.steps_to(Hue::Green)], [1, 6]);
}

/// From red to yellow-green the wheel is warm, from green to red-violet cool; the primary and secondary pairs were printed.
#[test]
fn half_of_the_wheel_is_warm_and_half_of_its_pairs_are_printed() {
    let warm = ["red", "red-orange", "orange", "yellow-orange", "yellow", "yellow-green"];
    let printed = ["red", "orange", "yellow", "green", "blue", "violet"];
    for hue in Hue::ALL {
        assert_eq!(hue.temper() == Temper::Warm, warm.contains(&hue.words()), "{hue}");
        let complement = hue.complement_sourced();
        assert_eq!(complement.basis == Basis::Published, printed.contains(&hue.words()), "{hue}");
        assert_eq!(complement.value, hue.complement());
    }
}

/// Each hue counts half as much as the one before: 4, 2 and 1 of 7.
#[rstest]
#[case(&[Hue::Violet, Hue::Blue, Hue::Red], "violet 57 %, blue 29 %, red 14 %")]
#[case(&[Hue::Blue, Hue::Violet, Hue::Violet], "blue 57 %, violet 43 %")]
#[case(&[Hue::Violet, Hue::Blue, Hue::Violet], "violet 71 %, blue 29 %")]
#[case(&[Hue::Blue], "blue")]
#[case(&[], "neutral")]
fn hues_count_by_halves(#[case] hues: &[Hue], #[case] want: &str) {
    assert_eq!(Tone::from_hues(hues.iter().copied()).to_string(), want);
}

#[test]
fn parts_of_a_tone_are_all_of_it_and_more_than_nothing() {
    let part = |hue, share_percent| TonePart { hue, share_percent };
    let of = |parts: &[TonePart]| Tone::from_parts(parts).is_some();
    assert!(of(&[]) && of(&[part(Hue::Red, 100.0)]) && of(&[part(Hue::Red, 60.0), part(Hue::Blue, 40.0)]));
    assert!(!of(&[part(Hue::Red, 60.0)]) && !of(&[part(Hue::Red, 60.0), part(Hue::Blue, 41.0)]));
    assert!(!of(&[part(Hue::Red, 100.0), part(Hue::Blue, 0.0)]));
    assert!(!of(&[part(Hue::Red, 120.0), part(Hue::Blue, -20.0)]));
    // A tone of no share at all leaves nothing behind.
    let (red, blue) = (Tone::of(Hue::Red), Tone::of(Hue::Blue));
    assert_eq!(Tone::blend([(&red, Share::ALL), (&blue, Share::NONE)]), red);
    assert_eq!(Tone::blend([(&red, share(25.0)), (&blue, share(75.0))]).to_string(), "blue 75 %, red 25 %");
}

/// Only what differs by half a unit is said, each by its sign.
#[rstest]
#[case([3.24, 2.0, -0.5, 0.49], "3.2 (lighter 2.0, greener 0.5)")]
#[case([3.0, -2.0, 0.5, -7.0], "3.0 (darker 2.0, redder 0.5, bluer 7.0)")]
#[case([1.0, 0.49, -0.49, 0.5], "1.0 (yellower 0.5)")]
#[case([0.3, 0.1, 0.1, 0.1], "0.3")]
fn a_difference_is_said_in_words(#[case] by: [f64; 4], #[case] want: &str) {
    let [ciede2000, lighter, redder, yellower] = by;
    let difference = Difference { ciede2000, lighter, redder, yellower, more_intense: 9.0 };
    assert_eq!(difference.to_string(), want);
}

/// From L* 50, a* 3, b* 4 to 56, 6, 8: six lighter, three redder, four yellower, and five more of chroma (3-4-5 triangles). Two readings
/// of one tress differ by up to 2.
#[test]
fn a_difference_is_what_the_second_has_more() {
    let found = Difference::between(lab(50.0, 3.0, 4.0), lab(56.0, 6.0, 8.0)).unwrap();
    let got = [found.lighter, found.redder, found.yellower, found.more_intense];
    all_near(&got, &[6.0, 3.0, 4.0, 5.0], 1e-9);
    for (apart, same) in [(1.99, true), (2.0, true), (2.01, false)] {
        assert_eq!(Difference { ciede2000: apart, ..found }.is_within_repeat_readings(), same);
    }
}

/// The ends are in, what is beyond is not; an angle below zero comes round.
#[test]
fn coordinates_have_their_ends() {
    let white = White::D65TenDegree;
    for (l, a, b, fits) in [
        (0.0, -200.0, -200.0, true),
        (100.0, 200.0, 200.0, true),
        (-0.1, 0.0, 0.0, false),
        (100.1, 0.0, 0.0, false),
        (50.0, 200.1, 0.0, false),
        (50.0, 0.0, -200.1, false),
    ] {
        assert_eq!(Lab::new(l, a, b, white).is_ok(), fits, "{l} {a} {b}");
    }
    for (l, chroma, hue, fits) in [
        (0.0, 0.0, -360.0, true),
        (100.0, 200.0, 360.0, true),
        (100.1, 0.0, 0.0, false),
        (50.0, -0.1, 0.0, false),
        (50.0, 200.1, 0.0, false),
        (50.0, 10.0, 360.1, false),
    ] {
        assert_eq!(Lch::new(l, chroma, hue, white).is_ok(), fits, "{l} {chroma} {hue}");
    }
    for (x, y, z, fits) in
        [(0.0, 0.0, 0.0, true), (2.0, 2.0, 2.0, true), (0.0, 2.1, 0.0, false), (0.0, 0.0, 2.1, false)]
    {
        assert_eq!(Xyz::new(x, y, z, white).is_ok(), fits, "{x} {y} {z}");
    }
    let turned = Lch::new(60.0, 10.0, -90.0, white).unwrap();
    assert_eq!((turned.hue_degrees(), turned.chroma(), turned.l()), (270.0, 10.0, 60.0));
    all_near(&[turned.lab().a(), turned.lab().b()], &[0.0, -10.0], 1e-12);
    assert_eq!(turned.to_string(), "L* 60.00, C* 10.00, h 270.00 degrees (D65/10 degrees)");
    assert_eq!(format!("{:.1}", lab(60.0, 1.0, -2.0)), "L* 60.0, a* 1.0, b* -2.0 (D65/10 degrees)");
    near(lab(60.0, -3.0, -4.0).lch().hue_degrees(), 180.0 + 4.0_f64.atan2(3.0).to_degrees(), 1e-9);
}

#[rstest]
#[case("57.0, 4.5, 28.6", true)]
#[case("57 4.5 28.6", true)]
#[case("57;4.5;28.6", true)]
#[case("57, 4.5", false)]
#[case("57, 4.5, 28.6, 1", false)]
#[case("57, 4.5, b", false)]
#[case("157, 4.5, 28.6", false)]
fn a_measured_colour_is_three_numbers(#[case] text: &str, #[case] read: bool) {
    let got = text.parse::<Lab>();
    assert_eq!(got.is_ok(), read, "{got:?}");
    assert!(got.is_err() || got == Ok(lab(57.0, 4.5, 28.6)));
}

/// What reflects all light is white for either observer, what reflects half of it has half the luminance: L* 76.07.
#[test]
fn what_reflects_everything_is_white() {
    for white in [White::D65TwoDegree, White::D65TenDegree] {
        let all = Reflectance::new([1.0; 31]).unwrap().lab(white);
        all_near(&[all.l(), all.a(), all.b()], &[100.0, 0.0, 0.0], 0.05);
        let half = Reflectance::new([0.5; 31]).unwrap().lab(white);
        near(half.l(), 116.0 * 0.5_f64.cbrt() - 16.0, 0.02);
        assert_eq!(all.white(), white);
    }
    let mut bands = [0.5; 31];
    for (value, fits) in [(0.0, true), (1.0, true), (1.01, false), (-0.01, false), (f64::NAN, false)] {
        bands[30] = value;
        assert_eq!(Reflectance::new(bands).is_ok(), fits, "{value}");
    }
}

/// The anchors of the mapping are joined by straight lines; half of 7.5 to 9.5 is half of level 5 to 7. Bounds end where levels end.
#[rstest]
#[case(4.0, Some([1.0, 1.0, 2.0]))]
#[case(5.5, Some([3.0, 4.0, 5.0]))]
#[case(8.5, Some([5.0, 6.0, 7.0]))]
#[case(8.0, Some([4.5, 5.5, 6.5]))]
#[case(15.0, Some([8.0, 9.0, 10.0]))]
#[case(3.99, None)]
#[case(15.01, None)]
fn a_reading_between_anchors_is_on_their_line(#[case] number: f64, #[case] want: Option<[f64; 3]>) {
    let reading = ScaleReading::new(Scale::Japanese20, number).unwrap();
    let found = ScaleMapping::japanese_by_underlying_pigment().level(reading);
    assert_eq!(found.is_ok(), want.is_some());
    if let (Ok(found), Some(want)) = (found, want) {
        all_near(&found.level.to_array().map(Level::number), &want, 1e-9);
    }
}

/// Both ends of each scale are on it; a mapping rises in both, and is unsure by 0 to 11 levels.
#[test]
fn scales_and_mappings_have_their_ends() {
    for (scale, highest) in
        [(Scale::European10, 10.0), (Scale::Us10, 10.0), (Scale::Twelve, 12.0), (Scale::Japanese20, 20.0)]
    {
        for (number, fits) in [(0.9, false), (1.0, true), (highest, true), (highest + 0.1, false)] {
            assert_eq!(ScaleReading::new(scale, number).is_ok(), fits, "{scale} {number}");
        }
        assert_eq!(scale.counts_levels(), matches!(scale, Scale::European10 | Scale::Twelve));
    }
    let anchors = |points: [(Scale, f64, f64); 2]| {
        points.map(|(scale, reading, at)| (ScaleReading::new(scale, reading).unwrap(), level(at)))
    };
    let us =
        |one: (f64, f64), other: (f64, f64)| anchors([(Scale::Us10, one.0, one.1), (Scale::Us10, other.0, other.1)]);
    let fits = |anchors: [(ScaleReading, Level); 2], off| ScaleMapping::new(&anchors, off, Basis::Stated).is_ok();
    assert!(fits(us((2.0, 3.0), (8.0, 9.0)), 0.0) && fits(us((2.0, 3.0), (8.0, 9.0)), 11.0));
    assert!(!fits(us((2.0, 3.0), (8.0, 9.0)), 11.1) && !fits(us((2.0, 3.0), (8.0, 9.0)), -0.1));
    assert!(!fits(us((2.0, 3.0), (2.0, 9.0)), 1.0) && !fits(us((2.0, 3.0), (8.0, 3.0)), 1.0));
    assert!(!fits(us((8.0, 3.0), (2.0, 9.0)), 1.0) && !fits(us((2.0, 9.0), (8.0, 3.0)), 1.0));
    assert!(!fits(anchors([(Scale::Us10, 2.0, 3.0), (Scale::Twelve, 8.0, 9.0)]), 1.0));
}

#[rstest]
#[case(1.0, "1 level lighter", true, false)]
#[case(-1.0, "1 level darker", false, true)]
#[case(2.5, "2.5 levels lighter", true, false)]
#[case(0.0, "no change", false, false)]
#[case(11.0, "11 levels lighter", true, false)]
#[case(-11.0, "11 levels darker", false, true)]
fn a_change_of_level_has_a_direction(#[case] by: f64, #[case] want: &str, #[case] lift: bool, #[case] deposit: bool) {
    let change = LevelChange::from_levels(by).unwrap();
    assert_eq!((change.to_string().as_str(), change.is_lift(), change.is_deposit()), (want, lift, deposit));
    let beyond = by.signum() * 11.1;
    assert!(LevelChange::from_levels(beyond).is_err());
    assert_eq!(format!("{:.1}", LevelChange::from_levels(2.0).unwrap()), "2.0 levels lighter");
}

/// Two levels darker is where warmth is asked for: a level above the target, with what is exposed there and at the target.
#[test]
fn two_levels_darker_ask_for_warmth() {
    let advice = pre_pigmentation(level(9.0), level(7.0)).unwrap();
    assert_eq!(advice.level, level(8.0));
    let (at, above) = (underlying_pigment(level(7.0)).value, underlying_pigment(level(8.0)).value);
    assert_eq!(advice.tone, Tone::from_hues([above.exposed.1, at.exposed.0]));
    assert_eq!(pre_pigmentation(level(9.0), level(7.001)), None);
}

/// Orange of the trade's list: its complement neutralises it, and it shows as named, or as the list expects at that level.
#[test]
fn pigment_as_seen_is_listed() {
    let seen = |text: &str| text.parse::<SeenPigment>().unwrap();
    for (text, hue, visibility, shown) in [
        ("orange", Hue::Orange, None, "orange"),
        (" Very pale-yellow ", Hue::Yellow, Some(Visibility::VeryPale), "very pale yellow"),
        ("pale yellow", Hue::Yellow, Some(Visibility::Pale), "pale yellow"),
        ("weak red-orange", Hue::RedOrange, Some(Visibility::Weak), "weak red-orange"),
        ("red brown", Hue::Red, Some(Visibility::Dark), "dark red"),
        ("red-brown", Hue::Red, Some(Visibility::Dark), "dark red"),
    ] {
        let read = seen(text);
        assert_eq!((read.hue, read.visibility, read.to_string().as_str()), (hue, visibility, shown), "{text}");
    }
    let listed = seen("weak orange").listed(level(7.0));
    assert_eq!((listed.exposed, listed.neutraliser), ((Hue::Orange, Hue::Orange), Some((Hue::Blue, Hue::Blue))));
    assert_eq!((listed.visibility.0, listed.level), (Visibility::Weak, level(7.0)));
    let expected = underlying_pigment(level(7.0)).value.visibility.1;
    assert_eq!(seen("orange").listed(level(7.0)).visibility, (expected, expected));
    for (text, hint) in [
        ("golden", "gold is yellow, or yellow-orange where it is deep"),
        ("brassy", "brass is yellow-orange or orange"),
        ("copper", "copper is orange or red-orange"),
        ("green", "lightening exposes no other hue"),
        ("paleyellow", "exposed pigment"),
    ] {
        let said = text.parse::<SeenPigment>().unwrap_err().to_string();
        assert!(said.contains(hint), "{text}: {said}");
    }
}

/// A word of strength less is three quarters of the chroma, in the space of the wheel (the 2 degree observer); the hue stays as named.
#[rstest]
#[case("strong orange", "weak orange", 0.75)]
#[case("weak orange", "pale orange", 1.0)]
#[case("pale yellow", "very pale yellow", 0.75)]
#[case("strong yellow", "very pale yellow", 0.5625)]
#[case("strong red", "dark red", 1.0)]
fn a_word_weaker_is_three_quarters(#[case] one: &str, #[case] other: &str, #[case] factor: f64) {
    for number in [5.0, 7.5, 9.0] {
        let look = |text: &str| text.parse::<SeenPigment>().unwrap().look(level(number));
        let chroma = |look: &Swatch| look.lab().adapted_to(White::D65TwoDegree).chroma();
        let (first, second) = (look(one), look(other));
        near(chroma(&second) / chroma(&first), factor, 2e-3);
        assert_eq!(first.basis(), Basis::Stated);
        assert_eq!(first.notice(), "as named by eye, not a photograph");
        for (look, text) in [(&first, one), (&second, other)] {
            let named: SeenPigment = text.parse().unwrap();
            assert!(look.hue().is_none_or(|hue| hue == named.hue), "{text} at {number}: {:?}", look.hue());
            assert!(look.lightness().low() < look.lightness().high() || look.redness().low() < look.redness().high());
        }
    }
}

/// A measurement has no bounds, whatever it is mixed with keeps the weaker basis; two measurements mix to one.
#[test]
fn a_measurement_stays_one_among_measurements() {
    let (one, other) = (Swatch::measured(lab(40.0, 5.0, 9.0)), Swatch::measured(lab(70.0, 5.0, 25.0)));
    let natural = Swatch::natural(level(6.0));
    let both = one.beside(&other, share(25.0));
    assert!(both.basis() == Basis::Measured && both.lightness().is_exact());
    assert!(!one.beside(&natural, share(25.0)).lightness().is_exact());
    assert!(!natural.beside(&one, share(25.0)).lightness().is_exact());
    // A quarter of the other's light, three quarters of the own.
    let y = |lab: Lab| lab.xyz().to_array()[1];
    near(y(both.lab()), 0.75 * y(one.lab()) + 0.25 * y(other.lab()), 1e-9);
    assert_eq!(one.beside(&other, Share::NONE).samples(), one.samples());
    assert_eq!(one.notice(), "shown from a measurement; a screen is not hair");
    assert_eq!(natural.notice(), Swatch::NOTICE);
    let apart = one.difference_bounds(&other);
    assert!(apart.is_exact() && apart.best() == one.difference_to(&other).ciede2000);
    let unsure = natural.difference_bounds(&one);
    assert!(unsure.low() < unsure.high() && unsure.contains(natural.difference_to(&one).ciede2000));
    assert_eq!(natural.difference_bounds(&natural), Interval::exact(0.0));
    assert_eq!((one.uncertainty(), natural.uncertainty() > 0.0), (0.0, true));
    let shown = one.to_string();
    assert!(shown.starts_with('#') && shown.contains("L* 40.0, a* 5.0, b* 9.0 (D65/10 degrees)"), "{shown}");
    assert_eq!(one.srgb(), Srgb::nearest(lab(40.0, 5.0, 9.0)).0);
    let html = one.html("back");
    assert!(!html.contains("between L*") && html.contains("<strong>back</strong>"), "{html}");
}

/// The samples of a swatch make it again; of another number of them there is none.
#[test]
fn a_swatch_is_its_samples() {
    let natural = Swatch::natural(level(6.0));
    let again = Swatch::from_samples(natural.samples(), natural.basis()).unwrap();
    assert_eq!(again, natural);
    let measured = Swatch::from_samples(natural.samples(), Basis::Measured).unwrap();
    assert!(measured.lightness().is_exact() && measured.lab() == natural.lab());
    assert_eq!(Swatch::from_samples(&natural.samples()[1..], Basis::Assumed), None);
    assert_eq!(Swatch::from_samples(&[], Basis::Assumed), None);
}

/// Where the level is an estimate, what the model says of the darkest and of the lightest level is within the bounds of the swatch.
#[test]
fn an_unsure_level_widens_what_it_looks_like() {
    let span = Interval::new(level(5.0), level(6.0), level(7.0)).unwrap();
    let (wide, sure) = (Swatch::natural_within(span), Swatch::natural(level(6.0)));
    let [dark, light] = [5.0, 7.0].map(|number| Swatch::natural(level(number)));
    let lightness = |swatch: &Swatch| swatch.lightness().to_array().map(Lightness::lab_l);
    let ([low, best, high], [sure_low, sure_best, sure_high]) = (lightness(&wide), lightness(&sure));
    assert!(best == sure_best && low < sure_low && high > sure_high);
    near(low, lightness(&dark)[0], 1e-9);
    near(high, lightness(&light)[2], 1e-9);
    assert_eq!(Swatch::natural_within(Interval::exact(level(6.0))), sure);
    let widened = sure.widened_to(&[dark, light]);
    assert!(widened.lab() == sure.lab());
    assert!(
        widened.lightness().contains(dark.lightness().best()) && widened.lightness().contains(light.lightness().best())
    );
}

/// Hair beside hair of the same level reads as that level and as one; of far levels as two.
#[test]
fn a_section_reads_as_one_where_both_are_alike() {
    let [six, nine] = [6.0, 9.0].map(|number| Swatch::natural(level(number)));
    let same = section_look(&six, &six, share(50.0));
    assert!(same.reads_as_one && same.contrast.ciede2000 == 0.0 && same.caveat == SectionLook::CAVEAT);
    near(same.perceived_level.best().number(), 6.0, 1e-3);
    let two = section_look(&six, &nine, share(50.0));
    assert!(!two.reads_as_one && two.contrast.lighter > 0.0);
    assert!(two.perceived_level.best() > level(6.0) && two.perceived_level.best() < level(9.0));
    assert_eq!(two.mixed, six.beside(&nine, share(50.0)));
    let html = strip([("one", &six), ("two", &nine)]);
    assert!(html.find("<strong>one</strong>") < html.find("<strong>two</strong>"), "{html}");
    assert_eq!(html.matches("aria-hidden").count(), 2);
}
