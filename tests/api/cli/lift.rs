//! Lift forecasts and strand books.

use super::{data, fine, foilwork, number};
use rstest::rstest;

const MIX: [&str; 4] = ["--developer", "6 % w/w", "--ratio", "1:2"];

fn lift<'a>(more: &[&'a str]) -> Vec<&'a str> {
    [&["lift", "--from", "4", "--target", "8"], MIX.as_slice(), more].concat()
}

/// By hand: 6 % in two of three parts is 4 % on the hair.
#[test]
fn the_strength_on_the_hair_is_that_of_the_mixed_bowl() {
    let found = data(&lift(&[]));
    assert!((number(&found["on_hair_ww_percent"]["best"]) - 4.0).abs() < 1e-9);
    assert_eq!(number(&found["levels"][0]["level"]["high"]), 4.0, "nothing has happened at minute 0");
    let last = found["levels"].as_array().unwrap().last().unwrap();
    assert_eq!(number(&last["min"]), 45.0, "the table ends at the limit");
    assert!(number(&last["level"]["low"]) < number(&last["level"]["best"]) - 1.9);
    assert!(fine(&lift(&[])).contains("no strand test, so at least two levels either way"));
}

/// Source: citation `check-interval`: the first look comes 15 min after the first strand, then every 5.
#[test]
fn looks_count_from_the_first_strand() {
    let found = data(&lift(&["--limit", "30"]));
    let minutes: Vec<f64> = found["looks_min"].as_array().unwrap().iter().map(number).collect();
    assert_eq!(minutes, [15.0, 20.0, 25.0, 30.0]);
}

#[rstest]
#[case::csv("strands.csv", "J-014,,4,7")]
#[case::json("strands.jsonl", "{\"guest\":\"J-014\",\"before")]
fn a_strand_book_is_begun_appended_to_and_learned_from(#[case] name: &str, #[case] torn: &str) {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join(name);
    let book = book.to_str().unwrap();
    let strand = |after| {
        let test = ["strand-test", book, "--before", "4", "--after", after, "--minutes", "30", "--guest", "J-014"];
        fine(&[test.as_slice(), MIX.as_slice()].concat())
    };
    assert_eq!(strand("8"), "written down: level 4 to level 8 in 30 min (+4.0 levels)\n");
    // A line torn by a crash stays as it is, and the next one begins on a line of its own.
    let mut text = (std::fs::read_to_string(book).unwrap() + torn).into_bytes();
    // The crash came in the midst of a character.
    text.push(0xc3);
    std::fs::write(book, text).unwrap();
    strand("8.5");
    let found = data(&lift(&["--strands", book, "--guest", "J-014"]));
    assert_eq!(number(&found["strand_readings"]), 2.0);
    assert_eq!(found["book_problems"].as_array().unwrap().len(), 1);
    let untested = data(&lift(&[]));
    let width = |found: &serde_json::Value| {
        let last = &found["levels"].as_array().unwrap().last().unwrap()["level"];
        number(&last["high"]) - number(&last["low"])
    };
    assert!(width(&found) < width(&untested) / 2.0);
}

#[test]
fn a_level_seen_in_mid_service_says_what_follows() {
    let found = data(&lift(&["--seen", "20=6.5"]));
    assert_eq!(found["seen"][0]["next"], "go on");
    assert_eq!(number(&found["seen"][0]["look_again_min"]), 25.0);
    assert_eq!(data(&lift(&["--seen", "30=8"]))["seen"][0]["next"], "rinse");
}

#[rstest]
#[case::no_mix(&["lift", "--from", "4"], "--on-hair")]
#[case::seen(&["lift", "--from", "4", "--on-hair", "4 % w/w", "--seen", "twenty"], "error: --seen \"twenty\": write the minute and the level, for example 20=6.5")]
#[case::limit(&["lift", "--from", "4", "--on-hair", "4 % w/w", "--limit", "400"], "error: --limit: 400 min is out of range: give 1 to 180 min (the product's own limit)")]
#[case::choice(&["lift", "--from", "4", "--on-hair", "4 % w/w", "--booster", "persulphate"], "error: --booster: unknown booster \"persulphate\": give one of persulfate, mild, none (did you mean persulfate?)")]
#[case::ratio(&["lift", "--from", "4", "--developer", "6 % w/w", "--ratio", "1:2:3"], "error: --ratio: 1:2:3 has not two parts (write product to developer, such as 1:2)")]
fn bad_options_are_named(#[case] args: &[&str], #[case] want: &str) {
    let output = foilwork(args);
    let text = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{text}");
    assert!(text.contains(want), "{text}");
}
