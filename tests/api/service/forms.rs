//! TOML and JSON are two ways to write one file, and a file in code is a third.

use super::base::{example, fine};
use foilwork::{
    reader::Format,
    service::{ServiceFile, parse, plan, plan_text},
};
use rstest::rstest;

fn read(name: &str) -> ServiceFile {
    parse(&example(name), Format::of_name(name)).unwrap()
}

/// Through the typed shape and out again: nothing is lost, nothing is invented.
#[rstest]
fn the_json_form_gives_the_same_plan(#[values("soft-gradient.toml", "grey-blend.toml", "lowlights.json")] name: &str) {
    let file = read(name);
    let json = serde_json::to_string_pretty(&file).unwrap();
    let again = parse(&json, Format::Json).unwrap();
    assert_eq!(again, file);
    assert_eq!(plan_text(&json, Format::Json).unwrap(), plan(&file).unwrap());
}

/// The same text by another reader: the `toml` crate into plain JSON, without any of our own code.
#[rstest]
fn a_plain_conversion_gives_the_same_plan(#[values("soft-gradient.toml", "grey-blend.toml")] name: &str) {
    let mut value: toml::Value = toml::from_str(&example(name)).unwrap();
    dates_to_text(&mut value);
    let json = serde_json::to_string(&value).unwrap();
    assert_eq!(plan_text(&json, Format::Json).unwrap(), plan_text(&example(name), Format::Toml).unwrap());
}

fn dates_to_text(value: &mut toml::Value) {
    match value {
        toml::Value::Datetime(moment) => *value = toml::Value::String(moment.to_string()),
        toml::Value::Array(items) => items.iter_mut().for_each(dates_to_text),
        toml::Value::Table(fields) => fields.iter_mut().for_each(|(_, inner)| dates_to_text(inner)),
        _ => {}
    }
}

#[rstest]
#[case::line_ends("\n", "\r\n")]
#[case::tabs(" = ", "\t=\t")]
#[case::byte_order_mark("# Juniper", "\u{feff}# Juniper")]
#[case::whole_number_with_a_point("natural_level = 6.0", "natural_level = 6")]
#[case::date_in_quotes("start = 2026-11-25T10:00:00", "start = \"2026-11-25T10:00:00\"")]
#[case::blank_in_a_date("applied = 2026-11-22T17:30:00", "applied = 2026-11-22 17:30:00")]
#[case::other_base("foils = 12", "foils = 0xC")]
#[case::whole_foils_with_a_point("foils = 12", "foils = 12.0")]
#[case::whole_foils_with_an_exponent("foils = 12", "foils = 1.2e1")]
#[case::version_with_a_point("format = 1", "format = 1.0")]
fn another_hand_writes_the_same_file(#[case] old: &str, #[case] new: &str) {
    let text = example("soft-gradient.toml");
    assert!(text.contains(old));
    let (one, other) = (read("soft-gradient.toml"), parse(&text.replace(old, new), Format::Toml).unwrap());
    assert_eq!(plan(&other).unwrap(), plan(&one).unwrap());
}

/// A file that was put together in code has not been checked: it may fail in planning, with its field and no panic.
#[rstest]
#[case::product(|file: &mut ServiceFile| file.section[0].product = Some("nothing".into()), "section[1].product: \"nothing\" is not on the shelf: add it there")]
#[case::developer(|file: &mut ServiceFile| file.section[0].developer = Some("none".into()), "section[1].developer: \"none\" is not on the shelf: add it there")]
#[case::both_absent(|file: &mut ServiceFile| file.section[0].developer = None, "section[1]: neither `developer` nor `strength` is given: give one")]
#[case::after(|file: &mut ServiceFile| file.section[0].after = vec!["none".into()], "section[1].after[1]: no section is called \"none\"")]
#[case::date(|file: &mut ServiceFile| file.service.start = "soon".into(), "service.start: \"soon\" is not a date: give year-month-day, with the local time if known, for example 2026-11-25T10:00")]
#[case::additive(|file: &mut ServiceFile| file.section[0].additives = vec!["none".into()], "section[1].additives[1]: \"none\" is not on the shelf: add it there")]
fn a_file_in_code_fails_with_its_field(#[case] change: fn(&mut ServiceFile), #[case] want: &str) {
    let mut file = fine();
    change(&mut file);
    assert_eq!(plan(&file).unwrap_err().to_string(), want);
}
