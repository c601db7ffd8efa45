//! Hair by the command line.

use super::{data, fine, foilwork, near, number};
use rstest::rstest;

/// By hand: 500 cm2 of 200 hairs/cm2, a quarter of them: 25 000 hairs. Round hairs of 70 um are 3848.5 um2, times 1.32
/// g/cm3 50.8 ug/cm; 25 000 of 20 cm are 25.4 g.
#[test]
fn measured_hair_by_hand() {
    let args = ["hair", "--scalp", "500", "--counted", "200", "--diameter", "70", "--share", "25", "--length", "20"];
    let found = data(&args);
    near(number(&found["hairs"]["best"]), 25_000.0, 1e-6);
    near(number(&found["mass_g"]["best"]), 25.4, 0.01);
    assert_eq!(found["basis"], "measured");
}

/// By hand: 30 % of the hair is 60 % white, 70 % is 10 % white: 25 %.
#[test]
fn white_hair_and_growth() {
    let found =
        data(&["hair", "--length", "20", "--white", "sides=30:60/100", "--white", "back=70:10/100", "--weeks", "8"]);
    near(number(&found["white"]["white_percent"]["best"]), 25.0, 1e-9);
    near(number(&found["grown_cm"]["best"]), 2.072, 1e-9);
    assert!(fine(&["hair", "--length", "20", "--regrowth", "2"]).contains("grown in 7.7"));
}

/// By hand: 60 g of colour brushed as a block on a fifth of the hair, painted from 0.5 cm over 0.2 to 20 cm, at 1 g on a gram: 15.46 g
/// on each cm of all of it. What is stated of measured hair is 5.08 g, so that one of the two is wrong, and it is said.
#[test]
fn what_was_used_narrows_the_hair() {
    let used = ["--used", "60", "--used-on", "20"];
    let found = data(&[&["hair", "--length", "20"], &used[..]].concat());
    near(number(&found["head_mass_per_length_by_use_g_per_cm"]["best"]), 60.0 / (0.2 * 19.4), 0.01);
    let open = data(&["hair", "--length", "20"]);
    let width = |data: &serde_json::Value| number(&data["mass_g"]["high"]) / number(&data["mass_g"]["low"]);
    let small = data(&["hair", "--length", "20", "--used", "24", "--used-on", "20"]);
    assert!(width(&small) < width(&open));
    assert_eq!(small["use_fits"], true);
    let measured = ["hair", "--scalp", "500", "--counted", "200", "--diameter", "70", "--length", "20"];
    // The doubt comes before the figures, and how often such bounds hold nobody knows.
    for args in
        [[&measured[..], &used[..]].concat(), vec!["hair", "--length", "35", "--used", "900", "--used-on", "12"]]
    {
        let text = fine(&args);
        assert!(text.starts_with("DOES NOT FIT") && !text.contains("80 of 100"), "{text}");
        assert!(fine(&[&args[..], &["--trail"]].concat()).starts_with("DOES NOT FIT"));
        assert_eq!(fits_by_trail(&args), "no");
    }
    let fits = fine(&["hair", "--length", "20", "--used", "24", "--used-on", "20"]);
    assert!(fits.contains("80 of 100") && !fits.contains("FIT"), "{fits}");
    assert_eq!(fits_by_trail(&["hair", "--length", "20", "--used", "24", "--used-on", "20"]), "yes");
}

/// Whether a use fits the hair, as the trail has it for a program.
fn fits_by_trail(args: &[&str]) -> String {
    let trail = data(&[args, &["--trail"]].concat());
    let found = trail.as_array().unwrap().iter().find(|one| one["what"] == "use fits").unwrap();
    found["value"].as_str().unwrap().to_owned()
}

/// The trail names what was used, the share and the painted length: 60 g on 20 % of 19.4 cm.
#[test]
fn the_trail_names_what_was_used() {
    let trail = data(&["hair", "--length", "20", "--used", "60", "--used-on", "20", "--trail"]);
    let by_use = trail.as_array().unwrap().iter().find(|one| one["what"] == "mass by length, by use").unwrap();
    let input = |what: &str| {
        let found = by_use["inputs"].as_array().unwrap().iter().find(|one| one["what"] == what).unwrap();
        (found["value"].as_str().unwrap().parse::<f64>().unwrap(), found["unit"].as_str().unwrap().to_owned())
    };
    assert_eq!(input("used"), (60.0, "g".to_owned()));
    near(input("share it was put on").0, 20.0, 1e-9);
    near(input("painted length").0, 19.4, 0.02);
    near(by_use["value"].as_str().unwrap().parse().unwrap(), 60.0 / (0.2 * 19.4), 0.01);
}

#[rstest]
#[case::regrowth(&["--regrowth", "30"], "error: --regrowth 30 cm is longer than --length 20 cm (correct one of the two)")]
#[case::white(&["--white", "top=30:5"], "error: --white \"top=30:5\": write region, share and counts, for example sides=27:60/100")]
#[case::white_count(&["--white", "top=30:50/40"], "error: --white \"top=30:50/40\": 50 white of 40 counted cannot be (white/counted, as in 60/100)")]
#[case::white_shares(
    &["--white", "a=60:5/10", "--white", "b=60:5/10"],
    "error: --white: the shares of the regions add up to 120 %, more than all the hair"
)]
#[case::age(&["--age", "12"], "error: --age: invalid age (got 12 years): must be from 16 to 110 years")]
#[case::gathered(&["--girth", "9", "--gathered", "0"], "error: --gathered: hair gathered in the ponytail: 0 % is on no head, from 10 % to 100 % is (measure again, or leave it out)")]
#[case::girth(&["--girth", "0.01"], "error: --girth: girth of the ponytail: 0.01 cm is on no head, from 1 cm to 40 cm is (measure again, or leave it out)")]
#[case::diameter(&["--diameter", "5"], "error: --diameter: diameter: 5 um is on no head, from 15 um to 200 um is (measure again, or leave it out)")]
#[case::density(&["--counted", "2"], "error: --counted: density: 2 hairs/cm2 is on no head, from 10 hairs/cm2 to 500 hairs/cm2 is")]
#[case::regrowth_used(&["--used", "60", "--used-technique", "regrowth"], "error: --used-technique regrowth: how long the regrowth was is not said (give --regrowth in cm)")]
#[case::used_nothing(&["--used", "1", "--used-technique", "regrowth", "--regrowth", "2"], "says nothing of the hair (give what was put on it, in g)")]
#[case::scalp(&["--scalp", "5800"], "error: --scalp: hair-bearing scalp: 5800 cm2 is on no head")]
fn bad_options_are_named(#[case] more: &[&str], #[case] want: &str) {
    let output = foilwork(&[&["hair", "--length", "20"], more].concat());
    let text = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{text}");
    assert!(text.contains(want), "{text}");
}
