//! How levels and modelled colours come about: value, bounds, formula, inputs and sources, by hand.

use foilwork::{
    colour::{
        Canvas, Hue, Instrument, Lab, Level, Scale, Swatch, Tone, White, trace_lift, trace_reading, trace_result_level,
        trace_shade_level, trace_swatch, trace_underlying_pigment,
    },
    source::{
        Basis, Interval, Sourced, TracedResult,
        citations::colour::{BLEACHING_STEPS, MUNSELL, PHOTOGRAPHS, TRESS_COLOUR},
    },
};
use rstest::rstest;

fn level(number: f64) -> Level {
    Level::new(number).unwrap()
}

fn levels([low, best, high]: [f64; 3]) -> Interval<Level> {
    Interval::new(level(low), level(best), level(high)).unwrap()
}

fn stated(numbers: [f64; 3]) -> Sourced<Interval<Level>> {
    Sourced::stated(levels(numbers))
}

fn bounds(found: &Option<[String; 2]>) -> Option<[&str; 2]> {
    found.as_ref().map(|bounds| bounds.each_ref().map(String::as_str))
}

fn inputs(found: &TracedResult) -> Vec<(&str, &str, &str)> {
    found.inputs.iter().map(|input| (input.what.as_str(), input.value.as_str(), input.unit.as_str())).collect()
}

/// 9 - 6 = 3; from 7 it is 2 and from 5 it is 4. It rests on what the natural level rests on.
#[test]
fn the_way_to_a_level() {
    let found = trace_lift(stated([5.0, 6.0, 7.0]), level(9.0));
    assert_eq!(
        (found.what.as_str(), found.value.as_str(), found.unit.as_str()),
        ("way to the wanted level", "3", "levels")
    );
    assert_eq!(bounds(&found.bounds), Some(["2", "4"]));
    assert_eq!(found.formula, "wanted level - natural level");
    assert_eq!(inputs(&found), [("wanted level", "9", "level"), ("natural level", "6", "level")]);
    assert_eq!(bounds(&found.inputs[1].bounds), Some(["5", "7"]));
    assert_eq!((found.basis, found.inputs[1].basis), (Basis::Stated, Some(Basis::Stated)));
    let derived = Sourced { value: levels([6.0; 3]), basis: Basis::Derived, citation: None };
    let found = trace_lift(derived, level(9.0));
    assert_eq!((found.basis, found.inputs[1].basis, found.bounds), (Basis::Derived, Some(Basis::Derived), None));
}

/// 2 x 8 - 6 = 10; from 7 it is 9, and from 5 it would be 11, which a scale of ten does not have. What needs no lift is its own level, and a
/// bound that needs one is lifted.
#[rstest]
#[case([5.0, 6.0, 7.0], 8.0, Scale::European10, "10", Some(["9", "10"]), "2 x wanted level - natural level")]
#[case([5.0, 6.0, 7.0], 8.0, Scale::Twelve, "10", Some(["9", "11"]), "2 x wanted level - natural level")]
#[case([3.0, 4.0, 5.0], 8.0, Scale::Twelve, "12", Some(["11", "12"]), "2 x wanted level - natural level")]
#[case([6.0, 7.0, 8.0], 7.0, Scale::European10, "7", Some(["7", "8"]), "wanted level")]
#[case([7.0; 3], 6.0, Scale::European10, "6", None, "wanted level")]
fn the_level_of_a_shade(
    #[case] natural: [f64; 3],
    #[case] wanted: f64,
    #[case] scale: Scale,
    #[case] value: &str,
    #[case] between: Option<[&str; 2]>,
    #[case] formula: &str,
) {
    let found = trace_shade_level(stated(natural), level(wanted), Canvas::Natural, scale).unwrap();
    assert_eq!((found.what.as_str(), found.value.as_str(), found.unit.as_str()), ("formula level", value, "level"));
    assert_eq!((bounds(&found.bounds), found.formula.as_ref()), (between, formula));
    let of = |number: f64| foilwork::text::number(number, 1);
    let want = [("wanted level", of(wanted), "level"), ("natural level", of(natural[1]), "level")];
    let got = inputs(&found);
    assert_eq!(got, want.each_ref().map(|(what, value, unit)| (*what, value.as_str(), *unit)));
}

/// The mean of 5 and 9 is 7. A shade no lighter than the hair gives its own level; of a bound that is darker than it, the mean.
#[rstest]
#[case([5.0; 3], 9.0, "7", None, "(natural level + level of the shade) / 2")]
#[case([5.0; 3], 5.0, "5", None, "level of the shade")]
#[case([5.0; 3], 4.0, "4", None, "level of the shade")]
#[case([4.0, 5.0, 6.0], 5.0, "5", Some(["4.5", "5"]), "level of the shade")]
#[case([4.0, 5.0, 6.0], 9.0, "7", Some(["6.5", "7.5"]), "(natural level + level of the shade) / 2")]
fn the_level_that_results(
    #[case] natural: [f64; 3],
    #[case] shade: f64,
    #[case] value: &str,
    #[case] between: Option<[&str; 2]>,
    #[case] formula: &str,
) {
    let found = trace_result_level(stated(natural), level(shade)).unwrap();
    assert_eq!((found.what.as_str(), found.value.as_str(), found.unit.as_str()), ("resulting level", value, "level"));
    assert_eq!((bounds(&found.bounds), found.formula.as_ref()), (between, formula));
    let of = |number: f64| foilwork::text::number(number, 1);
    let want = [("natural level", of(natural[1]), "level"), ("level of the shade", of(shade), "level")];
    assert_eq!(inputs(&found), want.each_ref().map(|(what, value, unit)| (*what, value.as_str(), *unit)));
    // The mean is published, and a shade's own level common practice.
    let mean = trace_result_level(stated([5.0; 3]), level(9.0)).unwrap();
    assert_eq!(found.sources == mean.sources, formula == mean.formula);
    assert!(!mean.sources.is_empty() && mean.sources.iter().all(|id| id.len() > 5), "{:?}", mean.sources);
}

/// Two instruments, each with the study that says how far its readings spread.
#[rstest]
#[case(Instrument::Spectrophotometer, "spectrophotometer", TRESS_COLOUR.id, PHOTOGRAPHS.id)]
#[case(Instrument::CalibratedPhotograph, "calibrated photograph", PHOTOGRAPHS.id, TRESS_COLOUR.id)]
fn the_level_that_an_instrument_read(
    #[case] with: Instrument,
    #[case] word: &str,
    #[case] source: &str,
    #[case] other: &str,
) {
    let reading = Lab::new(22.7, 4.0, 4.8, White::D65TenDegree).unwrap();
    let found = trace_reading(reading, with).unwrap();
    assert_eq!(inputs(&found), [("lightness read", "22.7", "L*"), ("instrument", word, "word")]);
    assert!(found.sources.contains(&source) && !found.sources.contains(&other), "{:?}", found.sources);
    let level = foilwork::colour::level_from_reading(reading, with).unwrap();
    assert_eq!(found.value, level.value.best().number().to_string());
    assert_eq!((found.what.as_str(), found.unit.as_str(), found.bounds.is_some()), ("natural level", "level", true));
}

/// Common practice: orange shows at 6.
#[test]
fn the_pigment_that_shows() {
    let found = trace_underlying_pigment(level(6.0));
    assert_eq!((found.what.as_str(), found.value.as_str()), ("exposed pigment", "orange, neutralised by blue"));
    assert_eq!((inputs(&found), found.sources.len()), (vec![("wanted level", "6", "level")], 1));
}

/// Natural, lightened or toned hair: each has its formula, what it is made of, and a source of its own.
#[test]
fn the_coordinates_of_a_swatch() {
    let (six, nine, violet) = (level(6.0), level(9.0), Tone::of(Hue::Violet));
    let natural = trace_swatch(nine, None, None);
    let lightened = trace_swatch(nine, Some(six), None);
    let both = trace_swatch(nine, Some(six), Some(&violet));
    let toned = trace_swatch(nine, None, Some(&violet));
    for (found, swatch, begins, made_of) in [
        (&natural, Swatch::natural(nine), "spectrum of a hair with the pigment of its level", vec!["level"]),
        (
            &lightened,
            Swatch::lightened(six, nine),
            "spectrum of a hair with the pigment that is left",
            vec!["level", "natural level"],
        ),
        (
            &both,
            Swatch::lightened(six, nine),
            "spectrum of a hair with the pigment that is left",
            vec!["level", "natural level", "tone"],
        ),
        (
            &toned,
            Swatch::of_look(nine, &violet),
            "spectrum of white hair with the dye of a shade",
            vec!["level", "tone"],
        ),
    ] {
        let values =
            [swatch.lightness().best().lab_l(), swatch.redness().best().lab_a(), swatch.yellowness().best().lab_b()];
        for ((one, value), name) in found.iter().zip(values).zip(["L*", "a*", "b*"]) {
            assert_eq!((one.what.as_str(), one.unit.as_str(), &one.value), (name, name, &value.to_string()));
            assert!(one.formula.starts_with(begins), "{}", one.formula);
            assert_eq!(inputs(one).into_iter().map(|(what, ..)| what).collect::<Vec<_>>(), made_of);
        }
    }
    let own =
        |found: &[TracedResult; 3]| found[0].sources.iter().copied().skip(natural[0].sources.len()).collect::<Vec<_>>();
    assert_eq!((natural[0].sources.len(), own(&natural)), (5, Vec::new()));
    assert_eq!((own(&lightened), own(&toned)), (vec![BLEACHING_STEPS.id], vec![MUNSELL.id]));
}
