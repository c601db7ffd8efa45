//! Levels, swatches and toners.

use super::{data, fine, near, number};
use rstest::rstest;
use serde_json::json;

/// Source: CK-12 Foundation, Ratios: The Perfect Blond: natural 6, target 8, formula 10. Warmth: common practice.
#[test]
fn the_published_formula_level() {
    let found = data(&["level", "--natural", "6", "--target", "8"]);
    let target = &found["target"];
    assert_eq!((number(&target["formula_level"]["best"]), number(&target["lift_levels"]["best"])), (10.0, 2.0));
    assert_eq!(target["exposed"]["neutralising_hues"], json!(["violet", "violet"]));
    let text = fine(&["level", "--natural", "6", "--target", "8"]);
    assert!(text.contains("the way there  2 levels lighter\nformula level  10 (lightest blond)"), "{text}");
}

/// Source: a colour educator's teaching blog, 2022: result = (natural + applied) / 2 for permanent colour.
#[rstest]
#[case("3", "7", 5.0)]
#[case("6", "10", 8.0)]
fn the_published_mean(#[case] natural: &str, #[case] applied: &str, #[case] want: f64) {
    let found = data(&["level", "--natural", natural, "--applied", applied]);
    assert_eq!(number(&found["applied"]["result_level"]["best"]), want);
    assert_eq!(found["target"], json!(null));
}

/// Source of the colour: a dark brown tress, measured for D65 and 10 degrees (`optics.csv`); dark brown is level 3.
#[test]
fn a_reading_says_which_level_it_is_as_light_as() {
    let found = data(&["level", "--measured", "23.04, 4.04, 4.72"]);
    let level = &found["reading"]["level"];
    assert!(number(&level["low"]) < 3.0 && 3.0 < number(&level["high"]), "{found}");
    near(number(&found["natural_level"]["best"]), number(&level["best"]), 0.05);
    assert_eq!(found["target"], json!(null));
    let photograph = data(&["level", "--measured", "23.04, 4.04, 4.72", "--measured-with", "calibrated-photograph"]);
    assert!(number(&photograph["reading"]["level"]["high"]) > number(&level["high"]), "{photograph}");
    let text = fine(&["level", "--measured", "23, 4, 5", "--target", "8"]);
    assert!(text.contains("light as natural level 3.2 (1 to 5)") && text.contains("wanted level   8"), "{text}");
}

/// By hand: a reading as light as level 1 to 5 is 3 to 7 levels away from level 8, and a shade of level 6 on it gives the mean
/// of both: (1 + 6) / 2 to (5 + 6) / 2.
#[test]
fn what_follows_from_a_reading_keeps_its_bounds() {
    let found = data(&["level", "--measured", "23, 4, 5", "--target", "8", "--applied", "6"]);
    let natural = &found["natural_level"];
    let (low, high) = (number(&natural["low"]), number(&natural["high"]));
    assert!(low < 3.0 && high > 3.5, "{natural}");
    let lift = &found["target"]["lift_levels"];
    near(number(&lift["low"]), 8.0 - high, 1e-9);
    near(number(&lift["high"]), 8.0 - low, 1e-9);
    let gives = &found["applied"]["result_level"];
    near(number(&gives["low"]), (low + 6.0) / 2.0, 1e-9);
    near(number(&gives["high"]), (high + 6.0) / 2.0, 1e-9);
    let text = fine(&["level", "--measured", "23, 4, 5", "--target", "8"]);
    assert!(text.contains("the way there  4.8 levels lighter (3 levels lighter to 7 levels lighter)"), "{text}");
}

/// By hand: 2 x 8 - 5 = 11, which a scale to 12 has and a scale to 10 has not. Darker hair exposes no warmth.
#[test]
fn a_formula_level_off_the_scale_is_none_with_the_reason() {
    let ten = data(&["level", "--natural", "5", "--target", "8"]);
    assert_eq!(ten["target"]["formula_level"], json!(null));
    assert!(ten["target"]["no_formula"].as_str().unwrap().contains("the shade would have to be level 11"));
    assert_eq!(
        number(&data(&["level", "--natural", "5", "--target", "8", "--twelve"])["target"]["formula_level"]["best"]),
        11.0
    );
    let coloured = data(&["level", "--natural", "5", "--target", "8", "--coloured"]);
    assert!(coloured["target"]["no_formula"].as_str().unwrap().contains("artificial pigment does not lighten"));
    let darker = data(&["level", "--natural", "7", "--target", "5"]);
    assert_eq!((&darker["target"]["exposed"], number(&darker["target"]["lift_levels"]["best"])), (&json!(null), -2.0));
}

/// L* of a screen colour. Source: IEC 61966-2-1 (sRGB, luminance of its primaries) and CIE 15 (L*), from memory.
fn lightness(hex: &str) -> f64 {
    let channel = |at: usize| {
        let encoded = f64::from(u8::from_str_radix(&hex[at..at + 2], 16).unwrap()) / 255.0;
        if encoded <= 0.04045 { encoded / 12.92 } else { ((encoded + 0.055) / 1.055).powf(2.4) }
    };
    let luminance = 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
    116.0 * luminance.cbrt() - 16.0
}

#[rstest]
#[case::natural(&["swatch", "6"])]
#[case::lightened(&["swatch", "8", "--from", "5"])]
#[case::toned(&["swatch", "9", "--tone", "violet"])]
fn a_swatch_agrees_with_its_screen_colour_and_says_what_it_is(#[case] args: &[&str]) {
    let swatch = data(args);
    near(number(&swatch["lab_l"]["best"]), lightness(swatch["srgb"].as_str().unwrap()), 0.5);
    for coordinate in ["lab_l", "lab_a", "lab_b"] {
        let [low, best, high] = ["low", "best", "high"].map(|end| number(&swatch[coordinate][end]));
        assert!(low <= best && best <= high, "{} does not hold {best}", swatch[coordinate]);
    }
    assert_eq!((&swatch["notice"], &swatch["basis"]), (&json!("model, not a photograph"), &json!("assumed")));
    assert!(fine(args).contains("model, not a photograph"));
}

/// Common practice: lightened hair is warmer than natural hair of that level, and lighter than it was.
#[test]
fn lightened_hair_is_warm() {
    let (natural, lightened) = (data(&["swatch", "8"]), data(&["swatch", "8", "--from", "3"]));
    let chroma = |swatch: &serde_json::Value| number(&swatch["lab_a"]["best"]).hypot(number(&swatch["lab_b"]["best"]));
    assert!(chroma(&lightened) > chroma(&natural), "{lightened} {natural}");
    assert!(number(&lightened["lab_l"]["best"]) > number(&data(&["swatch", "3"])["lab_l"]["best"]) + 5.0);
}

const HAIR: [&str; 6] = ["toner", "juniper_and_tide.toml", "--natural", "5", "--lifted", "9"];

/// Common practice: violet counteracts yellow; warm shades do not.
#[test]
fn violet_is_chosen_against_yellow() {
    let asked = ["--target", "9", "--tone", "violet", "--shades", "J9-mist, J6-moss", "--most-shades", "1"];
    let answer = data(&[&HAIR[..], &asked].concat());
    assert_eq!(answer["best"]["parts"][0]["code"], "J9-mist");
    assert!(number(&answer["best"]["residual"]["ciede2000"]) < number(&answer["before"]["ciede2000"]));
}

#[test]
fn a_toner_weighs_the_bowl_and_says_what_is_not_reached() {
    let asked = ["--target", "8", "--tone", "violet", "--bowl", "24.5", "--division", "0.5", "--most-shades", "3"];
    let args = [&HAIR[..], &asked].concat();
    let answer = data(&args);
    let parts = answer["best"]["parts"].as_array().unwrap();
    let masses: Vec<f64> = parts.iter().map(|part| number(&part["mass_g"])).collect();
    near(masses.iter().sum(), 24.5, 1e-9);
    assert!(masses.iter().all(|mass| (mass / 0.5).fract().abs() < 1e-9), "{masses:?}");
    assert_eq!((&answer["notice"], &answer["outcome"]), (&json!("model, not a photograph"), &json!("nearest-only")));
    let text = fine(&args);
    assert!(text.contains("*** CANNOT BE REACHED from these shades on this hair"), "{text}");
    assert!(text.contains("model, not a photograph"), "{text}");
}

/// Common practice: what only deposits cannot lighten, so a dark shade never brings measured hair nearer to its own colour.
#[test]
fn hair_that_is_nearer_untoned_is_left() {
    let hair = ["toner", "juniper_and_tide.toml", "--lifted", "9", "--measured", "57.5, 1.5, 18"];
    let text = fine(&[&hair[..], &["--target", "9", "--shades", "J6-moss", "--most-shades", "1"]].concat());
    assert!(text.contains("*** LEAVE IT: untoned it is nearer"), "{text}");
}

/// Give or take what the model may be off by, never below nothing.
#[test]
fn what_is_left_to_the_colour_has_the_bounds_of_the_model() {
    let args = [&HAIR[..], &["--target", "8", "--tone", "violet"]].concat();
    let (answer, trail) = (data(&args), data(&[&args[..], &["--trail"]].concat()));
    let left = trail.as_array().unwrap().last().unwrap();
    let residual = number(&answer["best"]["residual"]["ciede2000"]);
    let error = number(&answer["best"]["predicted"]["uncertainty_ciede2000"]);
    assert!(error > 1.0, "{error}");
    for (bound, want) in [(0, (residual - error).max(0.0)), (1, residual + error)] {
        near(left["bounds"][bound].as_str().unwrap().parse().unwrap(), want, 1e-9);
    }
}

/// A level that the model reads from an instrument is not stated by anybody.
#[test]
fn a_natural_level_says_whose_it_is() {
    for (of, wanted) in [(["--measured", "22.7,4,4.8"], "derived"), (["--natural", "5"], "stated")] {
        let args = [&["level"][..], &of, &["--target", "8", "--trail"]].concat();
        let trail = data(&args);
        let lift = trail.as_array().unwrap().iter().find(|one| one["what"] == "way to the wanted level").unwrap();
        assert_eq!((&lift["inputs"][1]["basis"], &lift["basis"]), (&json!(wanted), &json!(wanted)), "{lift}");
        assert_eq!(lift["inputs"][0]["basis"], "stated");
    }
}
