//! The bench sheet: the chair first and on one page, parts to choose from, and no choice that hides a STOP.

use super::base::{changed, example, fine};
use foilwork::{
    finding::Verdict,
    reader::Format,
    service::{Plan, parse, parse_with_shop, plan, shape::Scalp},
    sheet::{SheetPart, bench_sheet, bench_sheet_of},
    shop::parse_shop,
};
use rstest::rstest;
use std::{
    io::Write,
    process::{Command, Output, Stdio},
};

/// The plan of a text; the shop of the salon stands in for a shop file.
fn of(text: &str) -> Plan {
    let shop = parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    let file = match text.contains("shop_file") {
        true => parse_with_shop(text, Format::Toml, &shop),
        false => parse(text, Format::Toml),
    };
    plan(&file.unwrap()).unwrap()
}

fn soft_gradient() -> Plan {
    of(&example("soft-gradient.toml"))
}

/// What is booked: the end of the day and so many minutes of other work, in quarters of an hour begun.
fn booked(plan: &Plan, other_min: u32) -> u32 {
    let minutes = plan.day.as_ref().unwrap().finish.unwrap().min().ceil() as u32 + other_min;
    minutes.div_ceil(15) * 15
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn foilwork(args: &[&str]) -> Output {
    let examples = concat!(env!("CARGO_MANIFEST_DIR"), "/examples");
    Command::new(env!("CARGO_BIN_EXE_foilwork")).current_dir(examples).args(args).output().unwrap()
}

/// A page of 11 inches at six lines to the inch, the oldest form there is, has 66 lines.
#[rstest]
fn what_is_needed_at_the_chair_fits_on_one_page(
    #[values("soft-gradient.toml", "grey-blend.toml", "gloss-refresh.toml")] name: &str,
) {
    let sheet = bench_sheet_of(&of(&example(name)), SheetPart::SHORT);
    assert!(sheet.lines().count() <= 66, "{name}: {} lines", sheet.lines().count());
}

/// By hand from the file: 18 + 16 + 12 min of applying from 10:00, 30, 30 and 35 min of developing, 5 + 15 min of toner,
/// and 35 min of other work; powder and clay may stay on for 50 min from the first strand, and the toner for its 20 as planned: 81 + 20 + 35 = 136 min. What is booked counts bowls, looks, walks and rinses too: when the day is
/// over, with the other work, to the next quarter of an hour.
#[test]
fn times_are_those_of_the_clock() {
    let plan = soft_gradient();
    let sheet = flat(&bench_sheet(&plan));
    let booked = booked(&plan, 35);
    let finished = format!("{}:{:02}", 10 + booked / 60, booked % 60);
    let all = format!(
        "finished at {finished}, if all goes as planned: book {booked} min, with bowls, looks, walks, rinses and 35 min of other work"
    );
    assert!(booked > 136 && sheet.contains(&all), "{all}\n{sheet}");
    for words in [
        "10:00 1. nape: a bowl of 46.4 g, 3.9 % w/w on the hair",
        "weigh 15 g Foam Line powder, 30 g developer 6 (45 g), 1.4 g bond additive (46.4 g)",
        "all on by 10:18; PLANNED RINSE 10:48, LATEST 10:50; this bowl until 10:40 look 10:15 10:20",
        "10:18 2. crown",
        "PLANNED RINSE 11:04, LATEST 11:08",
        "10:34 3. hairline",
        "PLANNED RINSE 11:21, LATEST 11:24",
        "After rinsing; these times are the earliest, as if rinsing took none: 11:21 4. lengths",
        "all on by 11:26; RINSE BY 11:41; this bowl until 11:51",
    ] {
        assert!(sheet.contains(words), "{words}\n{sheet}");
    }
}

#[test]
fn a_bare_day_gives_minutes_and_no_invented_time() {
    let text = example("soft-gradient.toml").replace("start = 2026-11-25T10:00:00", "start = 2026-11-25");
    let plan = of(&text);
    let sheet = flat(&bench_sheet_of(&plan, SheetPart::SHORT));
    assert!(sheet.contains("18 2. crown") && sheet.contains("PLANNED RINSE 64, LATEST 68"), "{sheet}");
    assert!(sheet.contains("After rinsing, counted anew from its end: 0 4. lengths"), "{sheet}");
    let booked = format!("book {} min, with bowls", booked(&plan, 35));
    assert!(sheet.contains(&booked) && !sheet.contains("finished at"), "{sheet}");
}

#[test]
fn what_is_not_stated_is_not_counted_in_silence() {
    let text =
        example("soft-gradient.toml").replace("other_work_min = 35 # consultation 10, washing 5, drying 20\n", "");
    let plan = of(&text);
    let sheet = flat(&bench_sheet(&plan));
    let booked = format!("book {} min and consultation, drying, for which", booked(&plan, 0));
    assert!(sheet.contains(&booked), "{booked}\n{sheet}");
}

#[rstest]
fn nothing_hides_a_stop(#[values(true, false)] small: bool) {
    let in_code = || changed(fine(), |file| file.analysis.scalp = Some(Scalp::Broken));
    let broken = if small { in_code() } else { of(&stopped()) };
    assert!(broken.blocked);
    let stop = broken.findings.iter().find(|finding| finding.verdict == Verdict::Stop).unwrap();
    let mut choices: Vec<Vec<SheetPart>> = SheetPart::ALL.iter().map(|part| vec![*part]).collect();
    choices.extend([Vec::new(), SheetPart::ALL.to_vec(), SheetPart::SHORT.to_vec()]);
    for parts in choices {
        let sheet = flat(&bench_sheet_of(&broken, &parts));
        let banner = sheet.find("*** DO NOT BEGIN").unwrap_or_else(|| panic!("{parts:?}: {sheet}"));
        let first_part = sheet.find("-----").unwrap_or(sheet.len());
        assert!(banner < first_part, "{parts:?}");
        let said = sheet.find(&flat(&format!("[STOP] {}: {}", stop.rule, stop.text))).unwrap();
        assert!(said < first_part, "{parts:?}");
        assert_eq!(sheet.matches("[STOP]").count(), of_verdict(&broken, Verdict::Stop), "{parts:?}: said once");
    }
}

fn stopped() -> String {
    example("soft-gradient.toml").replace("scalp = \"intact\"", "scalp = \"broken\"")
}

fn of_verdict(plan: &Plan, verdict: Verdict) -> usize {
    plan.findings.iter().filter(|finding| finding.verdict == verdict).count()
}

#[test]
fn what_a_choice_leaves_out_is_counted() {
    let plan = soft_gradient();
    let of = |verdict| of_verdict(&plan, verdict);
    let (warnings, open, notes) = (of(Verdict::Warning), of(Verdict::NotJudged), of(Verdict::Note));
    assert_eq!(notes, 1, "the look rests on a section that hardly reaches its target");
    let money = flat(&bench_sheet_of(&plan, &[SheetPart::Money]));
    let said = format!(
        "Not on this sheet: {warnings} warnings, {open} open questions and 1 note of the checks (part `checks`)."
    );
    assert!(money.contains(&said), "{money}");
    let checks = bench_sheet_of(&plan, &[SheetPart::Checks]);
    assert_eq!(checks.matches("[WARN]").count(), warnings, "without the chair, the checks show the warnings");
    let whole = bench_sheet(&plan);
    assert_eq!(whole.matches("[WARN]").count(), warnings, "and else they stand once");
}

/// Passed checks take one line among the checks; what they looked at stands with the sources.
#[test]
fn passed_checks_fold_to_one_line() {
    let checks = bench_sheet_of(&soft_gradient(), &[SheetPart::Checks]);
    assert_eq!(checks.matches("[ok]").count(), 1);
    assert!(flat(&checks).contains("[ok] metal salts, scalp, skin test, strand test,"), "{checks}");
    // What is open of one bowl is not simply ok of the rest.
    assert!(checks.contains("[OPEN] law: root shadow") && flat(&checks).contains(", law (in part), "), "{checks}");
    let sources = bench_sheet_of(&soft_gradient(), &[SheetPart::Sources]);
    assert!(sources.contains("- scalp: stated intact"), "{sources}");
}

#[test]
fn reminders_are_about_what_is_in_the_bowls() {
    let short = |name: &str| flat(&bench_sheet_of(&of(&example(name)), SheetPart::SHORT));
    let lightener = short("soft-gradient.toml");
    for words in ["gloves", "never close a mixed bowl", "a foil hot or swelling: open and rinse"] {
        assert!(lightener.contains(words), "{lightener}");
    }
    assert!(!short("gloss-refresh.toml").contains("a foil hot"), "no lightener, no hot foil");
}

#[test]
fn no_column_name_is_broken() {
    let colour = bench_sheet_of(&soft_gradient(), &[SheetPart::Colour]);
    let head = colour.lines().find(|line| line.starts_with("section")).unwrap();
    for name in ["with", "level", "levels", "exposes", "neutraliser", "wanted"] {
        assert!(head.split_whitespace().any(|word| word == name), "{name}: {head}");
    }
}

#[test]
fn the_command_line_chooses_parts() {
    let out = |args: &[&str]| {
        let output = foilwork(&[&["plan", "soft-gradient.toml"], args].concat());
        assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap()
    };
    let whole = out(&[]);
    assert_eq!(whole, bench_sheet(&soft_gradient()));
    assert_eq!(out(&["--short"]), bench_sheet_of(&soft_gradient(), SheetPart::SHORT));
    assert_eq!(out(&["--only", "money,hair"]), bench_sheet_of(&soft_gradient(), &[SheetPart::Hair, SheetPart::Money]));
    let without = out(&["--without", "money", "--without", "sources"]);
    assert!(!without.contains("COST AND PRICE") && !without.contains("SOURCES") && without.contains("AT THE CHAIR"));
    let unknown = foilwork(&["plan", "soft-gradient.toml", "--only", "mony"]);
    let complaint = String::from_utf8(unknown.stderr).unwrap();
    assert_eq!(unknown.status.code(), Some(2));
    assert!(complaint.contains("--only") && complaint.contains("did you mean money?"), "{complaint}");
}

/// The same service in both forms, under any name and from the standard input.
#[test]
fn a_file_is_what_it_holds_whatever_it_is_called() {
    let folder = tempfile::tempdir().unwrap();
    let want = foilwork(&["plan", "lowlights.json"]).stdout;
    let (json, toml) = (example("lowlights.json"), example("soft-gradient.toml"));
    for (name, text, want) in [
        ("lowlights.toml", &json, &want),
        ("lowlights", &json, &want),
        ("soft.json", &toml, &foilwork(&["plan", "soft-gradient.toml"]).stdout),
    ] {
        let path = folder.path().join(name);
        std::fs::write(&path, text).unwrap();
        let got = foilwork(&["plan", path.to_str().unwrap()]);
        assert_eq!(&got.stdout, want, "{name}: {}", String::from_utf8_lossy(&got.stderr));
    }
    let mut child = Command::new(env!("CARGO_BIN_EXE_foilwork"))
        .args(["plan", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all(json.as_bytes()).unwrap();
    assert_eq!(child.wait_with_output().unwrap().stdout, want, "JSON on the standard input");
}
