//! What is covered counts in how a section reads, and so in its lowlights; what these leave out, and where no light is left.

use super::base::{changed, fine, near};
use foilwork::{
    colour::{Level, Swatch},
    finding::{Rule, Verdict},
    head::Technique,
    reader::Format,
    service::{Plan, ServiceFile, plan, plan_text},
};
use rstest::rstest;
use serde_json::{Value, json};

fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn deeper(lowlights: Value) -> impl FnOnce(&mut ServiceFile) {
    move |file: &mut ServiceFile| {
        file.section[0].taken_percent = Some(100.0);
        file.section[0].lowlights = serde_json::from_value(lowlights).ok();
    }
}

/// Fields that are not given are not written either.
fn without_nulls(value: &mut Value) {
    match value {
        Value::Object(fields) => {
            fields.retain(|_, field| !field.is_null());
            fields.values_mut().for_each(without_nulls);
        }
        Value::Array(items) => items.iter_mut().for_each(without_nulls),
        _ => {}
    }
}

#[rstest]
#[case::both(
    json!({ "contrast_levels": 2, "level": 6, "reads_as_level": 8 }),
    "both `level` and `contrast_levels` are given: keep one of them"
)]
#[case::neither(
    json!({ "reads_as_level": 8 }),
    "neither `level` nor `contrast_levels` is given: give one of them"
)]
fn lowlights_have_one_level(#[case] lowlights: Value, #[case] want: &str) {
    let mut file = fine();
    deeper(lowlights)(&mut file);
    let of_file = plan(&file).unwrap_err().to_string();
    let mut written = serde_json::to_value(&file).unwrap();
    without_nulls(&mut written);
    let of_text = plan_text(&written.to_string(), Format::Json).unwrap_err().to_string();
    for refused in [of_file, of_text] {
        assert!(refused.contains("section[1].lowlights") && refused.contains(want), "{refused}");
    }
}

fn combed(covered: Option<f64>) -> Plan {
    changed(fine(), |file| {
        let top = &mut file.section[0];
        (top.technique, top.foils, top.taken_percent, top.covered_percent) =
            (Technique::BackComb, None, Some(60.0), covered);
    })
}

/// Light adds up: of the area 60 % is taken, and of that 20, 60 and 100 % is coloured. The level is found by bisection over natural
/// levels, as elsewhere.
#[rstest]
#[case(20.0, 0.12)]
#[case(60.0, 0.36)]
#[case(100.0, 0.6)]
fn from_afar_what_is_covered_counts(#[case] covered: f64, #[case] part: f64) {
    let found = combed(Some(covered));
    let look = found.colour[0].look.as_ref().unwrap();
    let y = |swatch: &Swatch| swatch.samples()[0][1];
    let want = (1.0 - part) * y(&found.colour[0].natural) + part * y(&found.colour[0].swatch);
    let (mut low, mut high) = (1.0, 12.0);
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if y(&Swatch::natural(Level::new(middle).unwrap())) < want { low = middle } else { high = middle }
    }
    near(look.perceived_level.best().number(), low, 0.01);
}

/// A comb covers 60 % (50 to 70): its look is as open as that.
#[test]
fn the_look_is_as_open_as_what_is_covered() {
    let level = |covered| combed(covered).colour[0].look.as_ref().unwrap().perceived_level;
    let (open, least, most) = (level(None), level(Some(50.0)), level(Some(70.0)));
    near(open.best().number(), level(Some(60.0)).best().number(), 1e-9);
    assert!(open.low() <= least.low() && open.high() >= most.high(), "{open:?} {least:?} {most:?}");
}

/// Where nobody says how much is taken, the hair that is taken is still not covered in full: 6 lit to 9 by 20 % reads far below 8.
#[test]
fn lowlights_start_from_what_is_covered() {
    let mut file = fine();
    deeper(json!({ "level": 6.5, "reads_as_level": 8 }))(&mut file);
    let top = &mut file.section[0];
    (top.technique, top.foils, top.taken_percent, top.covered_percent) = (Technique::BackComb, None, None, Some(20.0));
    let refused = plan(&file).unwrap_err().to_string();
    let want =
        "`reads_as_level` level 8 is not darker than what the section reads as by the model without lowlights, level 6";
    assert!(refused.contains(want), "{refused}");
}

#[test]
fn the_dark_foils_are_said_to_be_nowhere_else() {
    let said = "the dark foils are in no bowl, time, price, stock or look: give them a section of their own";
    assert!(
        one_line(&changed(fine(), deeper(json!({ "level": 6.5, "reads_as_level": 8 }))).to_string()).contains(said)
    );
    assert!(!one_line(&changed(fine(), |_| ()).to_string()).contains(said));
}

/// 9 less 2 is 7: to read as 7, all of the hair is dark.
#[test]
fn lowlights_over_all_of_the_hair_leave_no_light() {
    let dark = changed(fine(), deeper(json!({ "contrast_levels": 2, "reads_as_level": 7 })));
    let sheet = one_line(&dark.to_string());
    assert!(sheet.contains("100 % of the hair there: no light hair remains there"), "{sheet}");
    assert!(!sheet.contains("they go behind light foil"), "{sheet}");
    let warned = |plan: &Plan| {
        let about = |text: &str| text.contains("no light hair remains");
        plan.findings
            .iter()
            .any(|found| found.rule == Rule::HeadReads && found.verdict == Verdict::Warning && about(&found.text))
    };
    assert!(warned(&dark) && !warned(&changed(fine(), deeper(json!({ "contrast_levels": 2, "reads_as_level": 8 })))));
}

/// Lowlights as dark as natural hair may be no darker, those two levels lighter may: what would be refused is not advised.
#[test]
fn darker_lowlights_are_advised_only_where_they_may_be() {
    let natural = fine().analysis.natural_level;
    let told = |level: f64| {
        let dark = changed(fine(), deeper(json!({ "level": level, "reads_as_level": level })));
        let found = dark.findings.iter().find(|found| found.text.contains("no light hair remains"));
        found.unwrap_or_else(|| panic!("{level}: all of it is dark")).text.clone()
    };
    assert!(told(natural).ends_with("(give a lighter `reads_as_level`)"), "{}", told(natural));
    assert!(
        told(natural + 0.5).ends_with("(give a lighter `reads_as_level` or darker lowlights)"),
        "{}",
        told(natural + 0.5)
    );
}

/// What the sheet says of them is on the page.
#[test]
fn lowlights_are_on_the_page() {
    let page = foilwork::sheet::bench_page(&changed(fine(), deeper(json!({ "level": 6.5, "reads_as_level": 8 }))));
    assert!(page.contains("Darker strands") && page.contains("foils of level 6.5, "), "{page}");
    assert!(page.contains("behind light foils 3, 8"), "{page}");
}
