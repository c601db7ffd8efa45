//! TOML and JSON are two ways to write one file, and a file in code is a third.

use super::base::{example, fine};
use foilwork::{
    reader::Format,
    service::{
        ServiceFile, parse, parse_with_shop, plan, plan_text,
        shape::{After, WaitFor},
        shop_file,
    },
    shop,
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

/// A file that was put together in code goes through the checks of a text, and all its problems are reported.
#[rstest]
#[case::product(|file: &mut ServiceFile| file.section[0].product = Some("nothing".into()), "section[1].product: no lightener or shade is called \"nothing\": the file has powder, J9, J6, J8-veil\ntoner[1]: no section is lightened: say in `sections` which ones this toner goes on")]
#[case::developer(|file: &mut ServiceFile| file.section[0].developer = Some("none".into()), "section[1].developer: no developer is called \"none\": the file has developer")]
#[case::both_absent(|file: &mut ServiceFile| (file.section[0].product, file.section[0].developer, file.toner) = (Some("J6".into()), None, Vec::new()), "section[1]: neither `developer` nor `strength` is given: give one of them")]
#[case::after(|file: &mut ServiceFile| file.section[0].after = vec![After { section: "none".into(), wait_for: WaitFor::Rinse }], "section[1].after[1].section: no section is called \"none\": the file has top")]
#[case::date(|file: &mut ServiceFile| file.service.start = "soon".into(), "service.start: \"soon\" is not a date: give year-month-day, with the local time if known, for example 2026-11-25T10:00")]
#[case::additive(|file: &mut ServiceFile| file.section[0].additives = vec!["none".into()], "section[1].additives[1]: no additive is called \"none\": the file has bond")]
#[case::not_a_number(|file: &mut ServiceFile| file.analysis.length_cm = Some(f64::NAN), "analysis.length_cm: NaN cm is not a finite number: give 0.5 to 200 cm")]
#[case::several(
    |file: &mut ServiceFile| {
        file.format = 9;
        file.analysis.white_percent = Some(300.0);
        file.section[0].target_level = 13.0;
    },
    "analysis.white_percent: 300 % is out of range: give 0 to 100 %\nformat: 9 is out of range: give 1\n\
     section[1].target_level: 13 levels is out of range: give 1 to 12 levels"
)]
#[case::no_shop(|file: &mut ServiceFile| file.shop = None, "shop: missing: add it (what the salon has and what it charges), or name its file in `shop_file`")]
#[case::a_path_only(
    |file: &mut ServiceFile| (file.shop, file.shop_file) = (None, Some("shop.toml".into())),
    "shop_file: names a file, and this reader was not given what it holds: put the shop under `shop`, or hand it over beside this file"
)]
fn a_file_in_code_fails_with_its_fields(#[case] change: fn(&mut ServiceFile), #[case] want: &str) {
    let mut file = fine();
    change(&mut file);
    assert_eq!(plan(&file).unwrap_err().to_string(), want);
}

/// The shop in a file of its own gives the same plan as the same shop inside the service file.
#[test]
fn a_shop_by_its_path_is_the_shop_inside() {
    let text = example("gloss-refresh.toml");
    assert_eq!(shop_file(&text, Format::Toml).as_deref(), Some("juniper_and_tide.toml"));
    let shop = shop::parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    let by_path = parse_with_shop(&text, Format::Toml, &shop).unwrap();
    let inside = text.replace("shop_file = \"juniper_and_tide.toml\"\n", "");
    let mut value: toml::Value = toml::from_str(&inside).unwrap();
    dates_to_text(&mut value);
    value.as_table_mut().unwrap().insert("shop".into(), toml::Value::try_from(&shop).unwrap());
    let inside = parse(&serde_json::to_string(&value).unwrap(), Format::Json).unwrap();
    assert_eq!(by_path.shop, inside.shop);
    assert_eq!(plan(&by_path).unwrap().mixes, plan(&inside).unwrap().mixes);

    let both = parse(&format!("{text}\n[shop]\n"), Format::Toml).unwrap_err();
    assert_eq!(both.to_string(), "line 6: shop_file: both `shop` and `shop_file` are given: keep one of them");
    let alone = parse(&text, Format::Toml).unwrap_err();
    assert!(alone.to_string().starts_with("line 6: shop_file: names a file"), "{alone}");
    assert_eq!(alone.0.len(), 1);
}

#[test]
fn a_shop_beside_a_file_that_has_one_inside_is_a_located_problem() {
    let shop = shop::parse_shop("name = \"Juniper & Tide\"", Format::Toml).unwrap();
    let text = example("lowlights.json");
    let line = text.lines().position(|line| line.contains("\"shop\"")).unwrap() + 1;
    let problems = parse_with_shop(&text, Format::Json, &shop).unwrap_err();
    assert_eq!(
        problems.to_string(),
        format!(
            "line {line}: shop: a shop is given beside the file, and the file has one inside: leave one of them out, or \
             name it in `shop_file`"
        )
    );
}
