//! What a section carries and how light it reads along the strand, by hand; an outline that is wanted solid or soft.

use super::base::{changed, near, only_lightener};
use foilwork::{
    colour::{Level, Swatch},
    finding::{Rule, Verdict},
    head::{Softness, Solidity, Technique},
    service::{Plan, SectionPlan, ServiceFile, plan, shape::Zone},
    source::Basis,
};
use rstest::rstest;
use serde_json::json;

/// Hair of 20 cm that is measured: 500 cm2 of 200 hairs/cm2, round hairs of 70 um are 5.08 g for each cm of all of it, and the
/// section has a fifth of it.
fn measured(file: &mut ServiceFile) {
    let hair = &mut file.analysis;
    (hair.scalp_cm2, hair.hairs_per_cm2) = (Some(500.0), Some(200.0));
    (hair.diameter_um, hair.length_cm) = (Some(70.0), Some(20.0));
    let top = &mut file.section[0];
    (top.mix_g, top.zone, top.technique) = (None, Zone::Whole, Technique::Block);
    top.start_cm = Some(10.0);
}

fn with(change: impl FnOnce(&mut ServiceFile)) -> (SectionPlan, String) {
    let plan = changed(only_lightener(), |file| {
        measured(file);
        change(file);
    });
    let sheet = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    (plan.head.sections[0].clone(), sheet)
}

/// From, to, and the best level of each stretch, to a thousandth.
fn stretches(section: &SectionPlan) -> Vec<(f64, f64, f64)> {
    let all = &section.along.as_ref().unwrap().stretches;
    let milli = |number: f64| (number * 1000.0).round() / 1000.0;
    all.iter().map(|cm| (milli(cm.from.cm()), milli(cm.to.cm()), milli(cm.level.best().number()))).collect()
}

/// A block that begins at 10 cm over 2 mm: natural before it, as wanted behind it. Hair that is lightened until it is as light
/// as natural level 9 reads as level 9: that is what the level means.
#[test]
fn a_block_reads_natural_before_its_start_and_as_wanted_behind() {
    let (section, sheet) = with(|_| ());
    assert_eq!(stretches(&section), [(0.0, 10.0, 6.0), (10.0, 20.0, 9.0)]);
    assert!(sheet.contains("level along the strand, in cm: 0-10: 6; 10-20: 9"), "{sheet}");
    assert!(sheet.contains("[of the taken hair alone; assumed]"), "{sheet}");
    // Read half a level off, it is so along the strand.
    let (section, _) = with(|file| file.analysis.natural_level_plus_minus = Some(0.5));
    let level = section.along.unwrap().stretches[0].level;
    assert_eq!((level.low().number(), level.high().number()), (5.5, 6.5));
}

/// 20 cm less 2.5 cm of roots: the last third begins at 14.17 cm, so the middle of the 15th centimetre is on the ends, which are
/// level 8 already and not worked; in cm they begin where it is stated.
#[test]
fn what_is_there_already_shows_where_the_section_ends() {
    let ends = |entry: serde_json::Value| {
        move |file: &mut ServiceFile| {
            file.section[0].zone = Zone::MidLengths;
            file.section[0].start_cm = Some(5.0);
            file.analysis.existing = vec![serde_json::from_value(entry).unwrap()];
        }
    };
    let (section, _) = with(ends(json!({ "zone": "ends", "level": 8, "artificial": false })));
    assert_eq!(stretches(&section), [(0.0, 5.0, 6.0), (5.0, 14.0, 9.0), (14.0, 20.0, 8.0)]);
    let (section, _) = with(|file| {
        ends(json!({ "from_cm": 17, "level": 8, "artificial": false }))(file);
        file.section[0].zone = Zone::Whole;
        file.section[0].ends_between = None;
    });
    assert_eq!(stretches(&section), [(0.0, 5.0, 6.0), (5.0, 20.0, 9.0)]);
}

/// Where strands are left between, the section reads between the two levels; of a strand that is combed, more and more.
#[test]
fn left_hair_and_a_combed_start_read_between_the_two_levels() {
    let (section, sheet) = with(|file| {
        let top = &mut file.section[0];
        (top.technique, top.start_cm, top.taken_percent) = (Technique::BackComb, None, Some(60.0));
    });
    let along = section.along.unwrap();
    let levels: Vec<f64> = along.stretches.iter().map(|cm| cm.level.best().number()).collect();
    assert!(levels.len() > 2 && levels.windows(2).all(|two| two[0] < two[1]), "{levels:?}");
    assert!(levels.iter().all(|level| (6.0..9.0).contains(level)));
    // Light adds up: at the ends 36 % of it is that of level 9, found here by bisection over natural levels.
    let level = |number: f64| Level::new(number).unwrap();
    let y = |swatch: Swatch| swatch.samples()[0][1];
    let want = 0.64 * y(Swatch::natural(level(6.0))) + 0.36 * y(Swatch::lightened(level(6.0), level(9.0)));
    let (mut low, mut high) = (6.0, 9.0);
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if y(Swatch::natural(level(middle))) < want { low = middle } else { high = middle }
    }
    // The last stretch takes in what is within half a level of it.
    near(*levels.last().unwrap(), low, 0.1);
    assert!(along.stretches.iter().all(|cm| cm.level.contains(cm.level.best())));
    // Somewhere between 3 and 8 cm it begins: from there on the bounds are open.
    let open = along.stretches.iter().find(|cm| !cm.level.is_exact()).unwrap();
    assert!(open.from.cm() <= 3.0);
    near(along.stretches.last().unwrap().to.cm(), 20.0, 1e-9);
    assert!(sheet.contains("[with the hair left between; assumed]"), "{sheet}");
}

#[test]
fn without_a_length_nothing_is_laid_along_the_strand() {
    let plan = changed(only_lightener(), |_| ());
    assert!(plan.head.sections[0].along.is_none() && plan.head.sections[0].zones.is_empty());
}

/// A fifth of 5.08 g/cm is 1.016 g/cm. The block begins at 10 cm over 0.2 cm, so that 0.1 cm are as if not covered: of the
/// mid-lengths, 2.5 to 14.17 cm, 4.07 cm carry mixture, of the ends 5.83, of the roots nothing. The surface is that of round
/// hairs of 0.225 mm (an ellipse of 1.41 to 1 has 1.022 times the way around) times 20 000.
#[test]
fn grams_and_surface_of_a_section_by_zone() {
    let (section, sheet) = with(|_| ());
    let (mid, ends) = (17.5 * 2.0 / 3.0 + 2.5 - 10.1, 17.5 / 3.0);
    for (zone, cm) in section.zones.iter().zip([0.0, mid, ends]) {
        near(zone.hair.best().g(), 1.016 * cm, 0.005);
        near(zone.surface.best().cm2(), 20_000.0 * 0.0225 * cm, 0.01 * 450.0 * cm + 1e-9);
    }
    let all: f64 = section.zones.iter().map(|zone| zone.hair.best().g()).sum();
    near(all, section.hair.unwrap().best().g(), 1e-9);
    assert!(sheet.contains("of its hair, mixture lies on: mid lengths 4"), "{sheet}");
}

/// Of the standard template, the hair of a whole head and of its outline: area times density against the mean.
const HEAD: f64 =
    5.0 * 0.9 + 15.0 + 13.0 * 1.05 + 12.0 * 1.05 + 7.0 * 0.66 + 20.0 * 0.79 + 20.0 * 1.02 + 5.0 * 0.85 + 3.0 * 0.7;
const OUTLINE: f64 = 5.0 * 0.9 + 7.0 * 0.66 + 3.0 * 0.7;

/// A section all along the outline.
fn edged(taken: f64, technique: Technique, wish: Solidity) -> Plan {
    edged_in(taken, technique, wish, &["front hairline", "left temple", "right temple", "nape line"], |_| ())
}

fn edged_in(
    taken: f64,
    technique: Technique,
    wish: Solidity,
    regions: &[&str],
    change: impl FnOnce(&mut ServiceFile),
) -> Plan {
    changed(only_lightener(), |file| {
        file.service.outline = Some(wish);
        let edge = &mut file.section[0];
        (edge.technique, edge.zone, edge.taken_percent) = (technique, Zone::Whole, None);
        edge.name = "edge".to_owned();
        let regions: Vec<_> = regions.iter().map(|name| json!({ "name": name })).collect();
        edge.regions = serde_json::from_value(json!(regions)).unwrap();
        let hair = if regions.len() == 1 { 4.5 } else { OUTLINE };
        edge.share_percent = Some(taken * hair / HEAD);
        change(file);
    })
}

/// Only the front hairline is light: 4.5 of 11.22 parts of the outline's hair, and the rest is named. A dark block makes none of it
/// light, whatever it covers.
#[test]
fn what_is_left_or_darkened_is_no_light_outline() {
    let part = edged_in(100.0, Technique::Block, Solidity::Solid, &["front hairline"], |_| ());
    let outline = part.head.look.unwrap().outline.unwrap();
    near(outline.light.best().percent(), 100.0 * 4.5 / OUTLINE, 1e-6);
    assert_eq!(outline.as_wanted, Some(false));
    assert!(outline.changes.iter().any(|change| change.section == "nape line"), "{outline:#?}");
    // The hair that grows there is known within bounds, and so is how much of it the section takes.
    assert!(outline.light.low() < outline.light.best());
    let all = ["front hairline", "left temple", "right temple", "nape line"];
    let dark = edged_in(100.0, Technique::Block, Solidity::Solid, &all, |file| {
        file.section[0].product = Some("J6".to_owned());
        file.section[0].target_level = 4.0;
    });
    let outline = dark.head.look.unwrap().outline.unwrap();
    assert_eq!((outline.light.high().percent(), outline.as_wanted), (0.0, Some(false)));
    // Stated of the hair there, nothing of it hangs on how much grows there.
    let stated =
        edged_in(80.0, Technique::Weave, Solidity::Solid, &all, |file| file.section[0].taken_percent = Some(80.0));
    let outline = stated.head.look.unwrap().outline.unwrap();
    near(outline.light.best().percent(), 80.0, 1e-6);
    assert_eq!(outline.light.low().percent(), outline.light.best().percent());
}

#[rstest]
#[case::woven_thick(80.0, Technique::Weave, Solidity::Solid, None)]
#[case::woven_thin(40.0, Technique::Weave, Solidity::Soft, None)]
#[case::too_thin(
    40.0,
    Technique::Weave,
    Solidity::Solid,
    Some("make 70 % of the hair in \"edge\" light instead of 40 %")
)]
#[case::too_thick(
    80.0,
    Technique::Weave,
    Solidity::Soft,
    Some("make 50 % of the hair in \"edge\" light instead of 80 %")
)]
// Combed, 60 % of what is taken are covered.
#[case::combed(80.0, Technique::BackComb, Solidity::Soft, None)]
fn an_outline_is_solid_or_soft_by_its_light_hair(
    #[case] taken: f64,
    #[case] technique: Technique,
    #[case] wish: Solidity,
    #[case] advice: Option<&str>,
) {
    let plan = edged(taken, technique, wish);
    let said = plan.findings.iter().find(|found| found.rule == Rule::HeadReads).unwrap();
    match advice {
        None => assert!(said.verdict == Verdict::Passed || said.verdict == Verdict::Note, "{said:?}"),
        Some(advice) => assert!(said.verdict == Verdict::Warning && said.to_string().contains(advice), "{said:?}"),
    }
    let outline = plan.head.look.unwrap().outline.unwrap();
    let covered = if technique == Technique::BackComb { 0.6 } else { 1.0 };
    near(outline.light.best().percent(), taken * covered, 1e-6);
    assert_eq!(outline.as_wanted, Some(advice.is_none()));
}

#[test]
fn an_outline_without_a_section_is_told() {
    let plan = changed(only_lightener(), |file| {
        file.service.outline = Some(Solidity::Solid);
        file.section[0].share_percent = Some(5.0);
        file.section[0].regions = serde_json::from_value(json!([{ "name": "crown" }])).unwrap();
    });
    assert!(plan.to_string().contains("solid outline: no section lies there, add one"));
}

/// What a comb pushes away and over what the colour sets in may be stated; else what is usual is assumed and said. By hand: from
/// 10 cm over 4 cm to 20 cm, of 40 % of 1.016 g/cm: 8 cm as if covered in full.
#[test]
fn share_and_softness_of_a_comb_are_the_users() {
    let (section, sheet) = with(|file| {
        let top = &mut file.section[0];
        (top.technique, top.covered_percent, top.transition_cm) = (Technique::BackComb, Some(40.0), Some(4.0));
    });
    near(section.hair.unwrap().best().g(), 0.4 * 8.0 * 1.016, 0.002);
    assert_eq!(section.softness, Softness::Diffuse);
    assert!(!sheet.contains("section[1].covered_percent") && !sheet.contains("section[1].transition_cm"), "{sheet}");
    // 60 % (50 to 70) are usual, over 4 cm (2 to 6).
    let plan = changed(only_lightener(), |file| {
        measured(file);
        file.section[0].technique = Technique::BackComb;
    });
    let said = |field: &str| {
        let used = plan.defaults.iter().find(|default| default.field == field).unwrap();
        (used.value.to_string(), used.basis)
    };
    assert_eq!(said("section[1].covered_percent"), ("60 (50 to 70) %".to_owned(), Basis::Assumed));
    assert_eq!(said("section[1].transition_cm"), ("4 (2 to 6) cm".to_owned(), Basis::Assumed));
    // A weave covers what it takes: nothing is assumed of it.
    let woven = changed(only_lightener(), measured);
    assert!(woven.defaults.iter().all(|default| !default.field.ends_with("covered_percent")));
}

#[test]
fn a_transition_beyond_the_ends_names_both_fields() {
    let mut file = only_lightener();
    measured(&mut file);
    file.section[0].transition_cm = Some(15.0);
    let said = plan(&file).unwrap_err().to_string();
    let want = "section[1].transition_cm: 15 cm behind the start at 10 cm goes beyond the hair's `analysis.length_cm`, 20 cm: at \
                most 10";
    assert!(said.contains(want), "{said}");
}
