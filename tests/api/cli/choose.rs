//! `foilwork choose`: what it says, and what it refuses.

use super::{fine, foilwork};
use rstest::rstest;
use serde_json::Value;

/// Common practice, as in the table of the service file: what is wanted for three months without a line is back-combed.
#[test]
fn technique_product_and_class_at_once() {
    let text = fine(&[
        "choose", "--start", "diffuse", "--upkeep", "12", "--length", "40", "--taken", "50", "--from", "5", "--to",
        "9", "--treats", "weave=55",
    ]);
    assert!(text.contains("technique: back comb (practised"), "{text}");
    assert!(text.contains("product: lightener, alone lifts so far"), "{text}");
    assert!(text.contains("booked as: half head"), "{text}");
    assert!(text.contains("- weave: its start is a sharper one, line"), "{text}");
}

#[test]
fn steps_before_it_come_with_grams_and_minutes() {
    let data: Value =
        serde_json::from_str(&fine(&["choose", "--from", "7", "--to", "5", "--white", "70", "--json"])).unwrap();
    let step = &data["before"][0];
    assert_eq!((&step["step"], &step["then"]), (&"pre-soften".into(), &"blot".into()));
    assert_eq!(step["strongest_developer_ww_percent"], 6.0);
    assert!(data["technique"].is_null() && data["service_class"].is_null());
    let text = fine(&["choose", "--from", "5", "--to", "7", "--artificial"]);
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("g on a gram of hair, 10 (5 to 20) min, then rinse, dry"), "{flat}");
}

#[rstest]
#[case::nothing(&["choose"], "nothing to choose: give --start, --upkeep and --length for a technique")]
#[case::word(&["choose", "--start", "sharp", "--upkeep", "3", "--length", "30"], "--start: ")]
#[case::share(&["choose", "--treats", "weave"], "--treats \"weave\": write technique=percent, for example weave=55")]
#[case::all(&["choose", "--treats", "weave=80", "--treats", "slice=30"], "--treats takes 110 % of the head together")]
#[case::level(&["choose", "--from", "5", "--to", "19"], "--to: ")]
#[case::half(&["choose", "--from", "5"], "--to <LEVEL>")]
fn what_is_wrong_is_named(#[case] args: &[&str], #[case] want: &str) {
    let output = foilwork(args);
    let complaint = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(complaint.contains(want), "{complaint}");
}
