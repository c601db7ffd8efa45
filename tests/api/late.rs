//! What is noted late or corrected, and what is on for longer than it may be; minutes are worked out by hand.

use super::noted::{feels, of, run, seen, strand};
use foilwork::{
    colour::Level,
    finding::Verdict,
    history::{home_care, keep, record_line},
    reader::Format,
    record::{
        Again, Comfort, Compared, LogEntry, Noted, Record, SecondApplication, after_levels, levels_seen, log_line,
        record, replay, rest_of_service, second_applications,
    },
    service::{Evidence, Plan, parse, plan, plan_text, plan_with, shape::Elasticity},
};
use rstest::rstest;
use std::{fs, path::Path};

const GRADIENT: &str = include_str!("../../examples/soft-gradient.toml");
const LONGEST: &str = "longest_min = 50\nlongest_counts_from = \"first-strand\"\n";

/// The nape goes from level 6 to 9 and is planned for 18 min of applying and 30 more; its powder may stay on for 50 min.
fn gradient() -> Plan {
    by(LONGEST)
}

/// The same where the powder says something else of its longest time.
fn by(longest: &str) -> Plan {
    assert!(GRADIENT.contains(LONGEST));
    plan(&parse(&GRADIENT.replacen(LONGEST, longest, 1), Format::Toml).unwrap()).unwrap()
}

fn decided(entries: &[LogEntry]) -> SecondApplication {
    second_applications(&gradient(), &replay(entries)).remove(0)
}

fn held(plan: &Plan, entries: &[LogEntry]) -> Record {
    record(plan, &replay(entries))
}

fn stops(found: &Record) -> Vec<&str> {
    found.instructions.iter().filter(|one| one.verdict == Verdict::Stop).map(|one| one.text.as_str()).collect()
}

/// What was begun at minute 30 is on for 85 - 30 = 55 min, 5 beyond the 50 of the powder, whatever is said of a rinse before.
#[rstest]
#[case::noted_late(&[(0.0, Noted::Begun), (30.0, Noted::Begun), (28.0, Noted::Rinsed)])]
#[case::and_corrected(&[(0.0, Noted::Begun), (30.0, Noted::Begun), (28.0, Noted::Rinsed), (29.0, Noted::Rinsed)])]
#[case::in_order_and_corrected(&[(0.0, Noted::Begun), (28.0, Noted::Rinsed), (30.0, Noted::Begun), (29.0, Noted::Rinsed)])]
#[case::of_the_same_minute(&[(0.0, Noted::Begun), (30.0, Noted::Begun), (30.0, Noted::Rinsed)])]
#[case::of_what_was_before_it(&[(30.0, Noted::Begun), (29.0, Noted::Rinsed)])]
#[case::before_any_begin(&[(10.0, Noted::Rinsed), (30.0, Noted::Begun)])]
fn a_rinse_of_before_does_not_rinse_what_is_on(#[case] lines: &[(f64, Noted)]) {
    let mut entries: Vec<LogEntry> = lines.iter().map(|(at, what)| of(*at, *what)).collect();
    entries.push(seen(85.0, 8.0));
    assert_eq!(decided(&entries).reasons[0], "rinse now: 5 min beyond the longest that the product allows");
}

/// Of three begins without a rinse the first is 20 min beyond at minute 70. A rinse at 29 leaves what was begun at 30: 82 - 30 - 50.
#[test]
fn a_late_rinse_is_of_the_application_that_was_on() {
    let mut entries = vec![of(0.0, Noted::Begun), of(30.0, Noted::Begun), of(60.0, Noted::Begun), seen(70.0, 8.0)];
    assert_eq!(decided(&entries).reasons[0], "rinse now: 20 min beyond the longest that the product allows");
    entries.extend([of(29.0, Noted::Rinsed), seen(82.0, 8.0)]);
    assert_eq!(decided(&entries).reasons[0], "rinse now: 2 min beyond the longest that the product allows");
    let found = held(&gradient(), &entries);
    let missing: Vec<&str> = found
        .instructions
        .iter()
        .filter(|one| one.text.starts_with("no rinse was noted"))
        .map(|one| one.text.as_str())
        .collect();
    assert!(missing.len() == 1 && missing[0].contains("before minute 60"), "{missing:?}");
    // All on at 20 is of the first, too.
    entries.push(of(20.0, Noted::Applied));
    let nape = &replay(&entries).sections[0];
    assert_eq!((nape.earlier[0].applied.map(|at| at.min()), nape.applied), (Some(20.0), None));
}

/// Begun at 4, at 40, and no, at 41: 37 and 19 min to the rinse at 60, which are 60 - 4.
#[test]
fn a_second_begin_that_is_corrected_moves_the_end_of_the_first() {
    let nape = replay(&[4.0, 40.0, 41.0].map(|at| of(at, Noted::Begun))).sections.remove(0);
    assert_eq!((nape.earlier.len(), nape.earlier[0].rinsed.min()), (1, 41.0));
    let rinsed = [of(4.0, Noted::Begun), of(40.0, Noted::Begun), of(41.0, Noted::Begun), of(60.0, Noted::Rinsed)];
    assert_eq!(replay(&rinsed).sections[0].carried().map(|on| on.min()), Some(56.0));
}

/// 65 - 3 = 62 min are 12 beyond the 50 of the powder, whatever the line is about; by the plan alone they are 14 beyond 48.
#[test]
fn too_long_is_told_whatever_is_noted() {
    let entries = [of(3.0, Noted::Begun), feels(65.0, Comfort::Fine)];
    let found = held(&gradient(), &entries);
    assert_eq!(stops(&found), ["rinse now: 12 min beyond the longest that the product allows"]);
    assert_eq!(found.instructions[0].section.as_deref(), Some("nape"));
    let rest = rest_of_service(&gradient(), &replay(&entries), &[]);
    assert_eq!(rest.at_once, ["nape: rinse now: 12 min beyond the longest that the product allows"]);
    let unknown = held(&by(""), &entries);
    assert!(stops(&unknown).is_empty());
    assert!(unknown.instructions[0].text.starts_with("rinse now: 14 min beyond the planned time"), "{unknown:#?}");
    let rinsed = held(&gradient(), &[of(3.0, Noted::Begun), of(50.0, Noted::Rinsed), feels(65.0, Comfort::Fine)]);
    assert!(rinsed.instructions.is_empty(), "{:?}", rinsed.instructions);
}

/// Planned for 18 + 30 min, put on in 3, and allowed for 30 from then: 33 in all, of which minute 32 leaves 1. At 40 it is 7 beyond,
/// 8 less than planned.
#[test]
fn the_product_may_leave_less_than_the_plan() {
    let plan = by("longest_min = 30\nlongest_counts_from = \"end-of-application\"\n");
    assert!(!plan.blocked);
    let mut entries = vec![of(0.0, Noted::Begun), of(3.0, Noted::Applied), seen(32.0, 8.0)];
    let one = second_applications(&plan, &replay(&entries)).remove(0);
    assert_eq!(one.decision, Again::GoOn);
    assert!(one.reasons[1].contains("; 1 min are left of the longest that the product allows"), "{one:#?}");
    entries.push(seen(40.0, 8.0));
    let seven = "rinse now: 7 min beyond the longest that the product allows";
    assert_eq!(second_applications(&plan, &replay(&entries)).remove(0).reasons[0], seven);
    assert_eq!(stops(&held(&plan, &entries)), [seven]);
    entries.push(of(40.0, Noted::Rinsed));
    let found = held(&plan, &entries);
    let on_hair = found.pairs.iter().find(|pair| pair.what == Compared::OnHair).unwrap();
    assert_eq!(on_hair.words, "8 less than planned; beyond the longest time, 33 min");
    assert!(stops(&found)[0].starts_with("it was on for 7 min beyond"), "{:?}", found.instructions);
}

/// The same 33 min are the limit of the day: three looks while it is put on leave 48 - 18 - 3 = 27 min to develop, so that it is rinsed from
/// minute 3 + 27 on, and not by minute 48. Two minutes to the basin from minute 32 end in minute 34, one beyond. Until minute 33 a
/// forecast for minute 48 says nothing.
#[test]
fn the_rest_of_a_day_ends_where_the_product_does() {
    let own = "longest_min = 30\nlongest_counts_from = \"end-of-application\"\n";
    let plan = by(own);
    let entries = |last: LogEntry| [of(0.0, Noted::Begun), of(3.0, Noted::Applied), last];
    let of_day = |now: f64| {
        let rest = rest_of_service(&plan, &replay(&entries(feels(now, Comfort::Fine))), &[]);
        let nape = rest.timeline.unwrap().sections.into_iter().find(|one| one.name == "nape").unwrap();
        (nape.rinse.min(), rest.overdue)
    };
    let (rinse, overdue) = of_day(3.0);
    assert!((30.0..=33.0).contains(&rinse) && overdue.is_empty(), "{rinse} {overdue:?}");
    assert_eq!(of_day(31.0), (33.0, Vec::new()));
    assert_eq!(of_day(32.0), (34.0, vec!["nape".to_owned()]));
    let so_far = replay(&entries(seen(20.0, 8.0)));
    let evidence = Evidence { seen: levels_seen(&plan, &so_far).levels, ..Evidence::default() };
    let file = parse(&GRADIENT.replacen(LONGEST, own, 1), Format::Toml).unwrap();
    let moved = plan_with(&file, &evidence).unwrap();
    let why = &after_levels(&moved, &so_far)[0].why;
    assert!(why.contains("13 min are left of the longest") && !why.contains("of 100"), "{why}");
}

/// Begun again without a rinse nobody knows that it was put on twice: once, everywhere but in what is learned from, for 60 min.
#[test]
fn what_nobody_knows_to_be_two_applications_is_one() {
    let entries = [of(0.0, Noted::Begun), of(50.0, Noted::Begun), of(60.0, Noted::Rinsed)];
    let once = [of(0.0, Noted::Begun), of(60.0, Noted::Rinsed)];
    let found = held(&gradient(), &entries);
    assert!(found.to_repeat[0].contains("60 min from the first strand; "), "{:?}", found.to_repeat);
    let on_hair = found.pairs.iter().find(|pair| pair.what == Compared::OnHair).unwrap();
    assert_eq!(on_hair.words, "12 more than planned; beyond the longest time, 50 min");
    let [care, of_once] = [&entries[..], &once].map(|log| home_care(&gradient(), &replay(log)));
    assert!(care.condition.ends_with("(60 min on nape)"), "{care:?}");
    assert_eq!(care.strain, of_once.strain);
    assert_eq!(keep(&gradient(), &replay(&entries)).section[0].applications, Some(2));
}

/// All that was stopped for is kept in words, and told with its day before any formula.
#[test]
fn what_was_stopped_for_is_kept_and_told_first() {
    let itch = "swelling of the eyelids";
    let entries = [
        of(0.0, Noted::Begun),
        feels(15.0, Comfort::Burning),
        strand(16.0, Elasticity::Poor),
        LogEntry { section: None, note: Some(itch.to_owned()), ..of(17.0, Noted::Incident) },
        of(18.0, Noted::Rinsed),
    ];
    let kept = keep(&gradient(), &replay(&entries));
    assert_eq!((kept.incident.len(), kept.incident[0].as_str()), (3, itch));
    assert!(kept.incident[1].starts_with("burning or pain at minute 15"), "{:?}", kept.incident);
    assert!(kept.incident[2].starts_with("nape: a strand stays stretched or breaks"), "{:?}", kept.incident);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("records.jsonl");
    fs::write(&path, record_line(&kept)).unwrap();
    let path = path.to_str().unwrap();
    let (_, text) = run(&["history", path, "--guest", "J-014"]);
    let places = ["2026-11-25 J-014: swelling of the eyelids", "J-014: elasticity of nape: poor", "EARLIER SERVICES"];
    let places = places.map(|words| text.find(words).unwrap_or_else(|| panic!("{words}: {text}")));
    assert!(places.is_sorted(), "{text}");
    let (_, all) = run(&["history", path]);
    assert!(all.contains("2026-11-25 J-014: swelling of the eyelids"), "{all}");
}

/// What was stopped is not offered again, and only what was begun has a strain: the nape, for 5 min.
#[test]
fn what_was_stopped_is_not_repeated() {
    let folder = tempfile::tempdir().unwrap();
    let entries = [of(0.0, Noted::Begun), feels(5.0, Comfort::Burning), of(5.0, Noted::Rinsed)];
    let log = written(folder.path(), &entries);
    let (status, text) = run(&["record", "examples/soft-gradient.toml", &log]);
    assert_eq!(status, 1);
    assert!(text.contains("WHAT WAS ON") && text.contains("Do not repeat it: burning or pain"), "{text}");
    assert!(
        text.contains("No day by the regrowth is named, for it was stopped") && !text.contains("Regrowth shows"),
        "{text}"
    );
    assert!(!text.contains("TO REPEAT IT") && text.contains("(5 min on nape)"), "{text}");
    let (_, data) = run(&["record", "examples/soft-gradient.toml", &log, "--json"]);
    let data: serde_json::Value = serde_json::from_str(&data).unwrap();
    assert!(data["rebooking"].is_null(), "{data}");
}

/// Of what was stopped, what never went on was not used, and nobody knows what was paid. The nape alone was on.
#[test]
fn what_never_went_on_is_not_kept_of_a_stopped_service() {
    let entries = [of(0.0, Noted::Begun), feels(15.0, Comfort::Burning), of(16.0, Noted::Rinsed)];
    let kept = keep(&gradient(), &replay(&entries));
    let names: Vec<&str> = kept.section.iter().map(|section| section.name.as_str()).collect();
    assert_eq!((names.as_slice(), kept.price), (&["nape"][..], None));
    let whole = keep(&gradient(), &replay(&entries[..1]));
    assert!(whole.section.len() > 1 && whole.price.is_some());
}

/// Rinsed at 118 after 50 that the powder allows is 68 too long; the rinse does not take that back.
#[test]
fn a_rinse_does_not_take_back_that_it_was_on_too_long() {
    let entries = [of(0.0, Noted::Begun), of(118.0, Noted::Rinsed), seen(120.0, 8.0)];
    let found = held(&gradient(), &entries);
    let want = "it was on for 68 min beyond the longest that the product allows";
    assert!(stops(&found).iter().any(|text| text.starts_with(want)), "{:?}", found.instructions);
    assert_eq!(decided(&entries).decision, Again::TreatOnly);
    let kept = keep(&gradient(), &replay(&entries));
    assert!(kept.incident.iter().any(|text| text.starts_with(&format!("nape: {want}"))), "{:?}", kept.incident);
    // Before the rinse it is kept too, and within the 50 min there is nothing to tell.
    let unrinsed = keep(&gradient(), &replay(&[of(0.0, Noted::Begun), seen(118.0, 8.0)]));
    assert!(unrinsed.incident.iter().any(|text| text.contains("68 min beyond")), "{:?}", unrinsed.incident);
    assert!(stops(&held(&gradient(), &[of(0.0, Noted::Begun), of(50.0, Noted::Rinsed)])).is_empty());
}

fn came_to(at: f64, level: f64) -> LogEntry {
    LogEntry { level: Some(Level::new(level).unwrap()), ..of(at, Noted::Result) }
}

/// What is read after the rinse at 48 is what was reached by then, as a look at 48 would be; after a toner it is no level of lifting.
#[test]
fn a_result_moves_the_forecast_like_a_look() {
    let begun = [of(0.0, Noted::Begun), of(48.0, Noted::Rinsed)];
    let levels = |more: &[LogEntry]| levels_seen(&gradient(), &replay(&[&begun[..], more].concat())).levels;
    let said = |more: &[LogEntry]| levels(more).iter().map(ToString::to_string).collect::<Vec<_>>();
    assert_eq!(said(&[came_to(52.0, 6.5)]), ["nape=6.5@48"]);
    assert_eq!(said(&[came_to(52.0, 6.5)]), said(&[seen(48.0, 6.5)]));
    assert_eq!(said(&[seen(48.0, 7.0), came_to(52.0, 6.5)]), ["nape=6.5@48"]);
    assert_eq!(said(&[seen(30.0, 6.2), came_to(52.0, 6.5)]), ["nape=6.2@30", "nape=6.5@48"]);
    let toned = LogEntry { section: Some("lengths".to_owned()), ..of(50.0, Noted::Begun) };
    assert!(said(&[toned, came_to(70.0, 8.0)]).is_empty());
}

/// An end of application before the begin, and a rinse before the only begin, count for nothing, and that stays told.
#[test]
fn what_counts_for_nothing_stays_told() {
    let entries = [of(10.0, Noted::Begun), of(5.0, Noted::Applied), of(2.0, Noted::Rinsed)];
    let so_far = replay(&entries);
    assert_eq!((so_far.sections[0].applied, so_far.sections[0].rinsed), (None, None));
    let found = held(&gradient(), &entries);
    let told =
        |minute: u32, what: &str| format!("nape: minute {minute}, {what}: it was not on then; correct the minute");
    assert_eq!(found.left_out, [told(5, "applied"), told(2, "rinsed")]);
    let late = replay(&[of(5.0, Noted::Applied), of(10.0, Noted::Begun)]);
    assert_eq!(late.sections[0].applied, None);
}

/// A strand of another service says nothing of this one.
#[test]
fn a_section_that_is_not_planned_has_no_say() {
    let entries = [strand(50.0, Elasticity::Good)];
    assert_eq!(home_care(&gradient(), &replay(&entries)).elasticity, Some(Elasticity::Good));
    let elsewhere = entries.map(|entry| LogEntry { section: Some("fringe".to_owned()), ..entry });
    assert_eq!(home_care(&gradient(), &replay(&elsewhere)).elasticity, None);
}

/// The look and the decision tell one chance, and what was all on at 25 by the log is told so.
#[test]
fn one_question_has_one_answer() {
    let entries = [of(0.0, Noted::Begun), of(25.0, Noted::Applied), seen(50.0, 7.5), feels(50.0, Comfort::Fine)];
    let so_far = replay(&entries);
    let file = parse(GRADIENT, Format::Toml).unwrap();
    let seen = levels_seen(&gradient(), &so_far).levels;
    let moved = plan_with(&file, &Evidence { seen, ..Evidence::default() }).unwrap();
    let [low, best, high] =
        second_applications(&moved, &so_far)[0].fresh_chance.to_array().map(|chance| chance.percent());
    let levels = after_levels(&moved, &so_far);
    let told = format!("{best:.0} ({low:.0} to {high:.0}) of 100");
    assert!(levels[0].why.contains(&told), "{told}: {levels:?}");
    let rest = rest_of_service(&moved, &so_far, &levels).timeline.unwrap();
    let nape = rest.sections.iter().find(|one| one.name == "nape").unwrap();
    assert_eq!(nape.applied.min(), 25.0);
}

/// By the price list the guest pays 118.00 with 20 % tax: 98.33 without. A list without the class leaves the price by the costs.
#[test]
fn the_price_that_is_kept_is_what_the_guest_pays() {
    let text = fs::read_to_string("examples/grey-blend.toml").unwrap();
    let kept = keep(&plan_text(&text, Format::Toml).unwrap(), &replay(&[]));
    assert_eq!(kept.price.as_deref(), Some("98.33"));
    let other = plan_text(&text.replacen("class = \"regrowth\"", "class = \"partial\"", 1), Format::Toml).unwrap();
    let by_cost = other.money.as_ref().unwrap().price.as_ref().unwrap().price.decimal().to_string();
    assert_eq!(keep(&other, &replay(&[])).price, Some(by_cost));
}

/// A slip in the name is refused before it is written; what takes the place of an older line says so; too long has a status.
#[test]
fn the_command_tells_slips_and_corrections() {
    let folder = tempfile::tempdir().unwrap();
    let log = folder.path().join("today.jsonl");
    let log = log.to_str().unwrap();
    let plan = "examples/soft-gradient.toml";
    let note = |args: &[&str]| run(&[&["note", log], args].concat());
    assert_eq!(note(&["--at", "0", "--section", "nap", "--begun", "--plan", plan]).0, 2);
    assert!(!Path::new(log).exists());
    note(&["--at", "0", "--section", "nape", "--begun"]);
    let told = |args: &[&str], words: &str| {
        let (_, text) = note(args);
        assert!(text.lines().next().unwrap().ends_with(words), "{words}: {text}");
    };
    told(&["--at", "3", "--section", "nape", "--begun"], "minute 3, begun (corrects minute 0)");
    told(&["--at", "25", "--section", "nape", "--applied"], "minute 25, applied");
    told(&["--at", "5", "--section", "nape", "--applied"], "minute 5, applied (corrects minute 25)");
    told(&["--at", "2", "--section", "nape", "--rinsed"], "(left out: it was not on then; correct the minute)");
    let (status, text) = note(&["--at", "66", "--section", "nape", "--seen", "7.6", "--plan", plan]);
    assert_eq!(status, 1);
    // 66 - 3 - 50.
    assert!(text.contains("[STOP] nape: rinse now: 13 min beyond"), "{text}");
    assert!(text.contains("\nnape: rinse, and treat only"), "{text}");
    assert_eq!(run(&["day", plan, "--log", log]).0, 1);
}

fn written(folder: &Path, entries: &[LogEntry]) -> String {
    let path = folder.join("today.jsonl");
    fs::write(&path, entries.iter().map(log_line).collect::<String>()).unwrap();
    path.to_string_lossy().into_owned()
}

/// What is said of a look is on the clock of the log, whenever the sheet begins that section and whenever it was begun.
#[rstest]
fn a_look_is_answered_at_its_own_minute(#[values("nape", "hairline")] section: &str, #[values(7.0, 90.0)] begun: f64) {
    let file = parse(GRADIENT, Format::Toml).unwrap();
    let named = |entry: LogEntry| LogEntry { section: Some(section.to_owned()), ..entry };
    let so_far = replay(&[named(of(begun, Noted::Begun)), named(seen(begun + 12.0, 6.5))]);
    let seen = levels_seen(&plan(&file).unwrap(), &so_far).levels;
    let moved = plan_with(&file, &Evidence { seen, ..Evidence::default() }).unwrap();
    let after = after_levels(&moved, &so_far);
    assert_eq!(after.len(), 1);
    assert!((after[0].at.min() - begun - 12.0).abs() < 1e-9, "{} of {begun}", after[0].at);
    assert!(after[0].look_again.is_none_or(|again| again > after[0].at), "{after:?}");
}

/// What begins later on the sheet is held against its own minutes, from its begin to its rinse, not against the clock.
#[test]
fn the_planned_minutes_are_those_from_its_own_begin() {
    let text = GRADIENT.replace(LONGEST, "");
    let plan = plan(&parse(&text, Format::Toml).unwrap()).unwrap();
    let later = |name: &str| plan.lift.iter().any(|lift| lift.section == name);
    let step = plan.order.iter().find(|step| step.begin.min() > 0.0 && later(&step.name)).unwrap();
    let planned = step.rinse_by.min() - step.begin.min();
    let entries = [super::record::of(2.0, Noted::Begun, &step.name), feels(2.0 + planned + 3.0, Comfort::Fine)];
    let found = held(&plan, &entries);
    let told = found.instructions.iter().find(|one| one.section.as_ref() == Some(&step.name)).unwrap();
    assert!(told.text.starts_with("rinse now: 3 min beyond the planned time"), "{told:#?}");
}
