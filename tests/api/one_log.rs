//! One log gives one answer at each door: a begin that nobody noted, mixes of which only some state their longest, weak strands, and the
//! minutes that are shown. Cases are worked out by hand on the nape of `due`: put on in 5 min and planned for 20, its powder allows 50.

use super::{
    due::{OWN, doors, file, log, min, text},
    noted::{feels, of, run, seen, strand},
};
use foilwork::{
    finding::Verdict,
    history::home_care,
    lift::Next,
    reader::Format,
    record::{
        Again, Comfort, Instruction, LogEntry, Noted, instructions, levels_seen, log_line, record, replay,
        rest_of_service, second_applications,
    },
    service::{Plan, parse, plan, plan_text, shape::Elasticity},
    sheet::{bench_page, bench_sheet},
};
use rstest::rstest;

/// All on in minute 34, five minutes before that it was begun: 20 min on the hair are minute 49, and 50 are minute 79. The sheet begins
/// it in minute 0.
fn all_on(more: &[LogEntry]) -> Vec<LogEntry> {
    [&[of(34.0, Noted::Applied)], more].concat()
}

/// The same where somebody noted the begin.
fn begun(more: &[LogEntry]) -> Vec<LogEntry> {
    [&[of(29.0, Noted::Begun), of(34.0, Noted::Applied)], more].concat()
}

#[test]
fn a_begin_that_nobody_noted_is_before_the_end_of_its_application_at_every_door() {
    let plan = plan(&file(OWN)).unwrap();
    let on_the_sheet = |entries: &[LogEntry]| levels_seen(&plan, &replay(entries)).levels[0].to_string();
    assert_eq!(on_the_sheet(&all_on(&[seen(49.0, 8.0)])), "nape=8@20");
    let before = levels_seen(&plan, &replay(&all_on(&[seen(28.0, 7.0)]))).left_out.remove(0).why;
    assert!(before.starts_with("not after its begin, 29 as planned before it was all on"), "{before}");
    let looked = doors(OWN, &all_on(&[seen(49.0, 8.0)]));
    assert_eq!((looked.note.decision, looked.note.look_again), (Again::GoOn, Some(min(54.0))), "{:#?}", looked.note);
    assert_eq!((looked.after.next, looked.after.at), (Next::GoOn, min(49.0)));
    assert_eq!(looked.after.look_again, Some(min(54.0)));
    assert!(looked.rest.at_once.is_empty(), "{:?}", looked.rest.at_once);
    // The look of 15 min is old.
    let old = doors(OWN, &all_on(&[seen(44.0, 8.0), feels(49.0, Comfort::Fine)]));
    assert_eq!((old.note.decision, old.after.next), (Again::LookNow, Next::LookNow), "{:#?}", old.note);
    assert!(old.rest.instructions.iter().any(|one| one.text.contains("rinse at minute 79 at the latest")));
    let up = doors(OWN, &all_on(&[seen(79.0, 8.0)]));
    assert_eq!(up.note.reasons[0], "rinse now: the longest that the product allows is up");
    assert!(!matches!(up.after.next, Next::GoOn | Next::LookNow) && up.rest.at_once.len() == 1, "{:#?}", up.after);
}

/// What is taken as begun is answered as what is noted to be, and told.
#[rstest]
fn a_begin_taken_as_planned_is_answered_as_a_noted_one(
    #[values(40.0, 49.0, 60.0, 79.0, 90.0)] at: f64,
    #[values(8.0, 9.0)] level: f64,
) {
    let entries = |log: fn(&[LogEntry]) -> Vec<LogEntry>| log(&[seen(at, level), feels(at, Comfort::Fine)]);
    let [mut taken, noted] = [all_on, begun].map(|log| doors(OWN, &entries(log)));
    let told = "its begin is not noted: taken as on from minute 29, as planned (note --begun)";
    assert_eq!(taken.note.reasons.pop().as_deref(), Some(told));
    assert_eq!(taken.note, noted.note);
    assert_eq!(
        (taken.after.next, taken.after.at, taken.after.look_again, taken.sheet),
        (noted.after.next, noted.after.at, noted.after.look_again, noted.sheet)
    );
    assert_eq!((taken.rest.at_once, taken.rest.instructions), (noted.rest.at_once, noted.rest.instructions));
}

/// The guest is asked from when it is on; without a plan that is the end of its application: 45 - 34 = 11 min, and 16 by a plan.
#[test]
fn the_guest_is_asked_though_nobody_noted_the_begin() {
    let so_far = replay(&all_on(&[seen(45.0, 7.5)]));
    let asked = |found: Vec<Instruction>| found.into_iter().find(|one| one.text.contains("not asked")).unwrap().text;
    assert!(asked(instructions(&so_far)).contains("for 11 min"));
    assert!(asked(record(&plan(&file(OWN)).unwrap(), &so_far).instructions).contains("for 16 min"));
}

/// What was rinsed in minute 109 was on for 80 min, and not for the 20 of the plan.
#[test]
fn hair_is_not_read_better_for_a_begin_that_nobody_noted() {
    let of_log = |entries: Vec<LogEntry>| home_care(&plan(&file(OWN)).unwrap(), &replay(&entries)).strain;
    let rinsed = [of(109.0, Noted::Rinsed)];
    assert_eq!(of_log(all_on(&rinsed)), of_log(begun(&rinsed)));
    assert_ne!(of_log(all_on(&rinsed)), of_log(begun(&[of(49.0, Noted::Rinsed)])));
}

/// Of the two shades of the regrowth one may stay on for 45 min from the end of its application, 25 + 45 = 70 from the first strand; of
/// the other the shelf says nothing, and the planned minute, 25 + 40 = 65, is the limit.
fn half_stated() -> Plan {
    let text = include_str!("../../examples/grey-blend.toml");
    let (before, after) = text.rsplit_once("longest_min = 45\nlongest_counts_from = \"end-of-application\"\n").unwrap();
    plan(&parse(&[before, after].concat(), Format::Toml).unwrap()).unwrap()
}

#[rstest]
#[case::within_all(64.0, None, None)]
#[case::beyond_the_plan(
    68.0,
    Some((Verdict::Warning, "rinse now: 3 min beyond the planned time, and the product's longest is not on the shelf")),
    None
)]
#[case::at_the_stated_one(70.0, Some((Verdict::Stop, "rinse now: the longest that the product allows is up")), None)]
#[case::beyond_it(
    72.0,
    Some((Verdict::Stop, "rinse now: 2 min beyond the longest that the product allows")),
    Some("it was on for 2 min beyond the longest that the product allows")
)]
fn beyond_a_longest_that_one_product_states_is_a_stop_before_and_after_the_rinse(
    #[case] now: f64,
    #[case] on: Option<(Verdict, &str)>,
    #[case] rinsed: Option<&str>,
) {
    let plan = half_stated();
    let at = |entry: LogEntry| LogEntry { section: Some("regrowth".to_owned()), ..entry };
    let told = |last: LogEntry| {
        let entries = [at(of(0.0, Noted::Begun)), at(of(25.0, Noted::Applied)), feels(now, Comfort::Fine), last];
        let so_far = replay(&entries);
        let all = record(&plan, &so_far).instructions;
        let rest = rest_of_service(&plan, &so_far, &[]);
        assert_eq!(rest.instructions, all);
        let of_it = all.into_iter().filter(|one| one.section.is_some());
        (of_it.map(|one| (one.verdict, one.text)).collect::<Vec<_>>(), rest.at_once)
    };
    let (found, at_once) = told(feels(now, Comfort::Fine));
    let want: Vec<_> = on.iter().map(|(verdict, text)| (*verdict, (*text).to_owned())).collect();
    assert_eq!(found, want);
    assert_eq!(at_once, on.iter().map(|(_, text)| format!("regrowth: {text}")).collect::<Vec<_>>());
    let (found, _) = told(at(of(now, Noted::Rinsed)));
    let stopped: Vec<_> = found.iter().map(|(verdict, text)| (*verdict, text.split(':').next().unwrap())).collect();
    assert_eq!(stopped, rinsed.iter().map(|text| (Verdict::Stop, *text)).collect::<Vec<_>>());
}

/// The planned rinse, 65 min from the first brush at 14:30, is no limit where both shades state theirs: that is 70 then. It is where one does not.
#[test]
fn a_planned_rinse_is_told_as_a_limit_only_where_it_is_one() {
    let told = |plan: &Plan| {
        let sheet = bench_sheet(plan).split_whitespace().collect::<Vec<_>>().join(" ");
        let page = bench_page(plan);
        let minute = |what: &str| {
            let line = page.split("<li ").find(|line| line.contains(&format!("data-what=\"{what}")))?;
            Some(line.split("data-minute=\"").nth(1)?.split('"').next()?.to_owned())
        };
        let minutes = ["RINSE BY", "PLANNED RINSE", "RINSE AT LATEST"].map(minute);
        assert_eq!(Some(plan.order[0].off_by.min().to_string()), minutes.iter().flatten().last().cloned());
        // On paper one line says both.
        assert_eq!(page.matches("class=\"rinse paperless\"").count(), usize::from(minutes[2].is_some()));
        assert_eq!(page.contains("PLANNED RINSE, LATEST 15:40"), minutes[1].is_some());
        (sheet, minutes)
    };
    let stated = plan_text(include_str!("../../examples/grey-blend.toml"), Format::Toml).unwrap();
    let (sheet, minutes) = told(&stated);
    assert!(sheet.contains("PLANNED RINSE 15:35, LATEST 15:40;") && !sheet.contains("RINSE BY"), "{sheet}");
    assert!(sheet.contains("; at LATEST whatever it shows."), "{sheet}");
    assert_eq!(minutes, [None, Some("65".to_owned()), Some("70".to_owned())]);
    let (sheet, minutes) = told(&half_stated());
    assert!(sheet.contains("RINSE BY 15:35;") && !sheet.contains("LATEST"), "{sheet}");
    assert!(!sheet.contains("; at LATEST whatever it shows."), "{sheet}");
    assert_eq!(minutes, [Some("65".to_owned()), None, None]);
}

/// Ten minutes before the planned one, and nobody has read a level: it comes off at every door until it is rinsed; a toner may stay.
#[test]
fn a_weak_strand_comes_off_at_every_door_before_any_level_is_known() {
    const OFF: &str = "rinse now: a strand returns slowly";
    let plan = plan(&file(OWN)).unwrap();
    let weak = [log(None, 10.0), vec![strand(14.0, Elasticity::Reduced)]].concat();
    let so_far = replay(&weak);
    assert!(second_applications(&plan, &so_far).is_empty());
    let rest = rest_of_service(&plan, &so_far, &[]);
    assert_eq!(rest.at_once, [format!("nape: {OFF}")]);
    let is_told = |found: &[Instruction]| found.iter().filter(|one| one.text == OFF).count();
    assert_eq!((is_told(&rest.instructions), is_told(&record(&plan, &so_far).instructions)), (1, 1));
    // Without a plan it is not known here whether it is a toner.
    let bare = |entries: &[LogEntry]| instructions(&replay(entries)).remove(0).text;
    assert!(bare(&weak).starts_with("a strand returns slowly: rinse what lightens now; no second application today"));
    let rinsed = [&weak[..], &[of(15.0, Noted::Rinsed)]].concat();
    assert_eq!(is_told(&record(&plan, &replay(&rinsed)).instructions), 0);
    assert!(bare(&rinsed).starts_with("a strand returns slowly: no second application today"));
    let toner = |entry: LogEntry| LogEntry { section: Some("lengths".to_owned()), ..entry };
    let toned = [toner(of(15.0, Noted::Begun)), toner(strand(16.0, Elasticity::Reduced))];
    assert_eq!(is_told(&record(&plan, &replay(&toned)).instructions), 0);
    let dir = tempfile::tempdir().unwrap();
    let (service, day) = (dir.path().join("service.toml"), dir.path().join("day.jsonl"));
    std::fs::write(&service, text(OWN)).unwrap();
    std::fs::write(&day, weak.iter().map(log_line).collect::<String>()).unwrap();
    let (service, day) = (service.to_str().unwrap(), day.to_str().unwrap());
    let noted = run(&["note", day, "--at", "14", "--comfort", "fine", "--plan", service]);
    for (_, said) in [noted, run(&["record", service, day]), run(&["day", service, "--log", day])] {
        assert!(said.contains(&format!("nape: {OFF}")), "{said}");
    }
}

/// Looked at after 20.6 min, it is looked at again after 25.6: in minute 25 of the sheet, and 4 later by the log. Of 50 min 29.4 are left
/// then, of which 29 are shown; of 20 after 14.4 min 5.6, of which 5 are shown.
#[test]
fn no_minute_is_shown_later_than_it_is() {
    let dir = tempfile::tempdir().unwrap();
    let (service, day) = (dir.path().join("service.toml"), dir.path().join("day.jsonl"));
    std::fs::write(&service, text(OWN)).unwrap();
    std::fs::write(&day, log(Some((20.6, 8.0)), 20.6).iter().map(log_line).collect::<String>()).unwrap();
    let (service, day) = (service.to_str().unwrap(), day.to_str().unwrap());
    let said = |args: &[&str]| run(args).1.split_whitespace().collect::<Vec<_>>().join(" ");
    for told in [said(&["record", service, day]), said(&["day", service, "--log", day])] {
        assert!(told.contains("29 min are left of the longest"), "{told}");
        assert!(told.contains("; look again at 29") && !told.contains("look again at 30"), "{told}");
    }
    let sheet = said(&["plan", service, "--seen", "nape=8@20.6"]);
    assert!(sheet.contains("; look again at minute 25") && !sheet.contains("look again at minute 26"), "{sheet}");
    let short = doors(OWN, &log(Some((14.4, 8.0)), 14.4)).note;
    assert!(short.reasons.iter().any(|why| why == "5 min are left of the planned time"), "{:?}", short.reasons);
}

/// What the text of a day says of the level, its data say too: look again five minutes after minute 24, the planned one.
#[test]
fn the_data_of_a_day_hold_its_levels() {
    let dir = tempfile::tempdir().unwrap();
    let (service, day) = (dir.path().join("service.toml"), dir.path().join("day.jsonl"));
    std::fs::write(&service, text(OWN)).unwrap();
    std::fs::write(&day, log(Some((20.0, 8.0)), 20.0).iter().map(log_line).collect::<String>()).unwrap();
    let (_, said) = run(&["day", service.to_str().unwrap(), "--log", day.to_str().unwrap(), "--json"]);
    let said: serde_json::Value = serde_json::from_str(&said).unwrap();
    let levels = said["levels"].as_array().unwrap();
    assert_eq!(levels.len(), 1);
    let of = |field: &str| levels[0][field].clone();
    assert_eq!((of("section"), of("at_min"), of("level")), ("nape".into(), 24.0.into(), 8.0.into()));
    assert_eq!((of("next"), of("look_again_min")), ("go-on".into(), 29.0.into()));
    assert!(of("why").as_str().unwrap().contains("rinse at minute 54 at the latest"), "{said}");
}
