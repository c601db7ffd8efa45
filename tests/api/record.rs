//! The log and the record: torn lines, words, and figures worked out by hand.

use super::common::school;
use foilwork::{
    colour::Level,
    day::PieceKind,
    finding::Verdict,
    quantity::{Duration, Mass},
    reader::Format,
    record::{
        Comfort, Compared, FoilHeat, LogEntry, Noted, instructions, levels_seen, log_line, read_log, record, replay,
        rest_of_service, trace_record,
    },
    service::{Plan, parse, plan, shape::Elasticity},
    source::Basis,
};
use std::process::Command;

pub(super) fn min(value: f64) -> Duration {
    Duration::from_min(value).unwrap()
}

pub(super) fn of(at: f64, what: Noted, section: &str) -> LogEntry {
    LogEntry { section: Some(section.to_owned()), ..LogEntry::new(min(at), what) }
}

fn whole() -> Vec<LogEntry> {
    let level = |entry, level| LogEntry { level: Some(Level::new(level).unwrap()), ..entry };
    vec![
        LogEntry { mass: Some(Mass::from_g(52.2).unwrap()), ..of(0.0, Noted::Weighed, "nape") },
        of(2.0, Noted::Begun, "nape"),
        of(23.5, Noted::Applied, "nape"),
        level(of(25.0, Noted::Seen, "nape"), 7.0),
        LogEntry { comfort: Some(Comfort::Fine), ..LogEntry::new(min(26.0), Noted::Comfort) },
        LogEntry {
            note: Some("cape \"slipped\"\nonto the collar".to_owned()),
            ..LogEntry::new(min(30.0), Noted::Incident)
        },
        of(46.0, Noted::Rinsed, "nape"),
        LogEntry { elasticity: Some(Elasticity::Reduced), ..of(50.0, Noted::Elasticity, "nape") },
        LogEntry { tone: Some("beige".to_owned()), ..level(of(60.0, Noted::Result, "nape"), 8.5) },
        level(of(60.0, Noted::Result, "crown"), 8.0),
    ]
}

/// Cut at every byte, a log is a prefix of itself: at most the line that was being written is missing, and it is told.
#[test]
fn a_log_cut_at_any_byte_loses_at_most_one_line() {
    let entries = whole();
    let lines: Vec<String> = entries.iter().map(log_line).collect();
    let text = lines.concat();
    assert_eq!(read_log(&text).entries, entries);
    for cut in 0..=text.len() {
        let read = read_log(&String::from_utf8_lossy(&text.as_bytes()[..cut]));
        let (mut whole, mut ends) = (0, 0);
        for line in &lines {
            ends += line.len();
            // The line break is no part of what a line says.
            whole += usize::from(ends - 1 <= cut);
        }
        assert_eq!(read.entries, entries[..whole], "cut at {cut}");
        assert!(read.problems.len() <= 1);
        if let Some(problem) = read.problems.first() {
            assert!(problem.message.starts_with("torn"), "{problem}");
        }
        // The next line begins on a line of its own.
        let mended = format!("{}\n{}", String::from_utf8_lossy(&text.as_bytes()[..cut]), lines[1]);
        let mended = read_log(&mended);
        assert_eq!((mended.entries.len(), mended.entries.last()), (whole + 1, Some(&entries[1])));
    }
}

#[test]
fn every_message_of_a_line() {
    let told = |line: &str| read_log(line).problems.first().map(ToString::to_string).unwrap();
    let line = |rest: &str| format!("{{\"format\":1,\"at_min\":1,{rest}}}");
    assert_eq!(
        told("{\"format\":1"),
        "line 1: torn: the line has no end (the program was stopped while it was written; enter it again)"
    );
    assert_eq!(told(&line("\"what\":\"begun\"")), "line 1: begun: `section` is missing (give it)");
    assert_eq!(told(&line("\"what\":\"seen\",\"section\":\"a\"")), "line 1: seen: `level` is missing (give it)");
    assert!(told(&line("\"what\":\"seen\",\"section\":\"a\",\"level\":99")).starts_with("line 1: level: "));
    assert!(told(&line("\"what\":\"weighed\",\"section\":\"a\",\"mass_g\":-1")).starts_with("line 1: mass_g: "));
    assert!(told("{\"format\":1,\"at_min\":-1,\"what\":\"begun\"}").starts_with("line 1: at_min: "));
    assert_eq!(told("{\"format\":2,\"at_min\":1,\"what\":\"begun\"}"), "line 1: format 2: this release reads 1");
    assert!(told(&line("\"what\":\"sung\"")).starts_with("line 1: not a line of a log: unknown variant `sung`"));
}

#[test]
fn what_hurts_comes_first() {
    let verdicts = |entries: &[LogEntry]| -> Vec<Verdict> {
        instructions(&replay(entries)).iter().map(|one| one.verdict).collect()
    };
    let comfort = |comfort| LogEntry { comfort: Some(comfort), ..LogEntry::new(min(20.0), Noted::Comfort) };
    assert_eq!(verdicts(&[comfort(Comfort::Burning)]), [Verdict::Stop]);
    assert_eq!(verdicts(&[comfort(Comfort::Itching)]), [Verdict::Warning]);
    assert_eq!(verdicts(&[comfort(Comfort::Fine)]), []);
    let foil = |foil| LogEntry { foil: Some(foil), ..of(20.0, Noted::Foil, "nape") };
    assert_eq!(verdicts(&[foil(FoilHeat::Swollen)]), [Verdict::Stop]);
    assert_eq!(verdicts(&[foil(FoilHeat::Hot), foil(FoilHeat::Warm)]), [], "the last look counts");
    let strand = |elasticity| LogEntry { elasticity: Some(elasticity), ..of(20.0, Noted::Elasticity, "nape") };
    assert_eq!(verdicts(&[strand(Elasticity::Poor)]), [Verdict::Stop]);
    assert_eq!(verdicts(&[strand(Elasticity::Reduced), foil(FoilHeat::Swollen)]), [Verdict::Stop, Verdict::Warning]);
    // Nobody asked from minute 2 to minute 20.
    assert_eq!(verdicts(&[of(2.0, Noted::Begun, "nape"), foil(FoilHeat::Cool)]), [Verdict::Warning]);
    assert_eq!(verdicts(&[of(2.0, Noted::Begun, "nape"), comfort(Comfort::Fine), foil(FoilHeat::Cool)]), []);
}

fn example() -> Plan {
    let text = std::fs::read_to_string("examples/soft-gradient.toml").unwrap();
    plan(&parse(&text, Format::Toml).unwrap()).unwrap()
}

/// By hand from the file: 46.4 g are made for the nape, put on in 18 min, 48 min to the rinse, target 9, crown 8.
#[test]
fn planned_stands_beside_actual() {
    let found = record(&example(), &replay(&whole()));
    let of = |section: &str, what: Compared| {
        let pair = found.pairs.iter().find(|pair| pair.section == section && pair.what == what).unwrap();
        (pair.planned, pair.actual, pair.words.as_str())
    };
    let (planned, actual, words) = of("nape", Compared::Mass);
    assert!((planned - 46.4).abs() < 1e-9 && (actual - 52.2).abs() < 1e-9);
    assert_eq!(words, "5.8 more than planned");
    assert_eq!(of("nape", Compared::Applying), (18.0, 21.5, "3.5 more than planned"));
    assert_eq!(of("nape", Compared::OnHair), (48.0, 44.0, "4 less than planned"));
    assert_eq!(of("nape", Compared::Level), (9.0, 8.5, "0.5 less than planned"));
    assert_eq!(of("crown", Compared::Level).2, "as planned");
    let even = found.evenness.unwrap();
    assert_eq!((even.spread_levels, even.worst.as_str(), even.short_levels), (0.5, "nape", 0.5));
    // Rinsed, with a result: no more time on the hair to give.
    assert_eq!(even.text, "nape is behind: tone the others down to it; no fresh mix on what is there");
    assert_eq!(even.basis, Basis::Assumed);
    assert_eq!((found.forecasts, found.for_planned_time.as_slice()), (2, ["crown".to_owned()].as_slice()));
    // 52.2 of 46.4 g: powder 15, developer 30, additive 1.4 g, each times 1.125.
    assert!(
        found.to_repeat[0].starts_with(
            "nape: 52.2 g: 16.9 g Foam Line powder, 33.8 g developer 6 and 1.6 g bond additive; 3.88 % w/w on the hair; 44 \
             min from the first strand; from level 6 (5.5 to 6.5)"
        ),
        "{}",
        found.to_repeat[0]
    );
    assert!(found.to_repeat[0].ends_with("to level 8.5 beige"));
}

/// By hand from the file: the hairline goes on from minute 34 to 46 and comes off by minute 81, 47 after its first strand.
#[test]
fn a_section_that_is_not_the_first_has_minutes_of_its_own() {
    let entries = [(40.0, Noted::Begun), (50.0, Noted::Applied), (90.0, Noted::Rinsed)];
    let found = record(&example(), &replay(&entries.map(|(at, what)| of(at, what, "hairline"))));
    let pair = |what: Compared| {
        let pair = found.pairs.iter().find(|pair| pair.section == "hairline" && pair.what == what).unwrap();
        (pair.planned, pair.actual)
    };
    assert_eq!((pair(Compared::Applying), pair(Compared::OnHair)), ((12.0, 10.0), (47.0, 50.0)));
}

/// A section that is on and sound may stay; one with a weak strand, or where a stop says to rinse, may not.
#[test]
fn what_must_come_off_is_not_left_on() {
    let level = |section: &str, level: f64| LogEntry {
        level: Some(Level::new(level).unwrap()),
        ..of(25.0, Noted::Seen, section)
    };
    let on = vec![
        of(2.0, Noted::Begun, "nape"),
        LogEntry { comfort: Some(Comfort::Fine), ..LogEntry::new(min(20.0), Noted::Comfort) },
        level("nape", 7.0),
        level("crown", 8.0),
    ];
    let advice = |more: LogEntry| {
        let mut entries = on.clone();
        entries.push(more);
        record(&example(), &replay(&entries)).evenness.unwrap().text
    };
    let stays =
        "nape is behind: leave it on within its limit, or tone the others down to it; no fresh mix on what is there";
    let off = "nape is behind: tone the others down to it; no fresh mix on what is there";
    let foil = |section, foil| LogEntry { foil: Some(foil), ..of(26.0, Noted::Foil, section) };
    let strand = |elasticity| LogEntry { elasticity: Some(elasticity), ..of(26.0, Noted::Elasticity, "nape") };
    assert_eq!(advice(strand(Elasticity::Good)), stays);
    assert_eq!(advice(foil("crown", FoilHeat::Swollen)), stays);
    assert_eq!(advice(foil("nape", FoilHeat::Swollen)), off);
    assert_eq!(advice(strand(Elasticity::Poor)), off);
    assert_eq!(advice(strand(Elasticity::Reduced)), off);
    assert_eq!(advice(of(26.0, Noted::Rinsed, "nape")), off);
    let burns = LogEntry { comfort: Some(Comfort::Burning), ..LogEntry::new(min(26.0), Noted::Comfort) };
    assert_eq!(advice(burns), off);
}

/// The nape is to be rinsed 48 min after its first strand and is looked at before. What it is worth at a look is known from the
/// plan; half-way between two looks, half-way between those levels.
#[test]
fn a_result_is_held_against_the_forecast_for_its_own_minutes() {
    let plan = example();
    let lift = plan.lift.iter().find(|lift| lift.section == "nape").unwrap();
    let error = |minutes: f64| {
        let result = LogEntry { level: Some(Level::new(8.0).unwrap()), ..of(90.0, Noted::Result, "nape") };
        let entries = [of(3.0, Noted::Begun, "nape"), of(3.0 + minutes, Noted::Rinsed, "nape"), result];
        record(&plan, &replay(&entries))
    };
    let [one, two, ..] = lift.looks.as_slice() else { panic!("looks") };
    let (a, b) = (one.level.best().number(), two.level.best().number());
    let near = |minutes: f64, level: f64| {
        let found = error(minutes).model_error_levels.unwrap();
        assert!((found - (8.0 - level)).abs() < 1e-9, "{minutes} min: {found}");
    };
    near(one.on_hair.min(), a);
    near(f64::midpoint(one.on_hair.min(), two.on_hair.min()), f64::midpoint(a, b));
    near(48.0, lift.first_strand.best().number());
    // "As planned" by a clock read to the minute is the planned time; half a minute more is not.
    near(48.4, lift.first_strand.best().number());
    near(one.on_hair.min() - 0.4, a);
    assert_eq!(error(48.5).not_judged, ["nape: on the hair for 48.5 min, and forecast from 15 to 48 min"]);
    let late = error(60.0);
    assert_eq!((late.forecasts, late.model_error_levels), (0, None));
    assert_eq!(late.not_judged, ["nape: on the hair for 60 min, and forecast from 15 to 48 min"]);
}

/// The nape is begun at 10 instead of 0, so what is seen at minute 35 has been on for 25 min.
#[test]
fn levels_count_from_the_begin_that_is_noted() {
    let seen =
        |section: &str, at: f64| LogEntry { level: Some(Level::new(7.0).unwrap()), ..of(at, Noted::Seen, section) };
    let entries =
        [of(10.0, Noted::Begun, "nape"), seen("nape", 35.0), seen("nape", 9.0), seen("crown", 12.0), seen("nap", 12.0)];
    let found = levels_seen(&example(), &replay(&entries));
    let told: Vec<String> = found.levels.iter().map(ToString::to_string).collect();
    assert_eq!(told, ["nape=7@25"]);
    assert_eq!(
        found.left_out.iter().map(ToString::to_string).collect::<Vec<_>>(),
        [
            "nape: level 7 at minute 9: not after its begin, 10 as noted",
            "crown: level 7 at minute 12: not after its begin, 18 as planned (note when it was begun)",
            "nap: level 7 at minute 12: no section of this name is lightened",
        ]
    );
    let strange = record(&example(), &replay(&entries)).left_out;
    assert!(
        strange[0].starts_with("lines of \"nap\", which the plan does not have: it has nape, crown"),
        "{strange:?}"
    );
}

/// What must come off comes off first; where all must, nothing more is begun.
#[test]
fn the_rest_of_the_service_follows_from_the_log() {
    let rest = |more: LogEntry| {
        let fine = LogEntry { comfort: Some(Comfort::Fine), ..LogEntry::new(min(20.0), Noted::Comfort) };
        let entries = [of(2.0, Noted::Begun, "nape"), of(23.0, Noted::Applied, "nape"), fine, more];
        rest_of_service(&example(), &replay(&entries), &[])
    };
    let foil = |foil| LogEntry { foil: Some(foil), ..of(24.0, Noted::Foil, "nape") };
    let cool = rest(foil(FoilHeat::Cool));
    let day = cool.timeline.unwrap();
    // Nothing is wrong: the crown is mixed at once.
    assert_eq!((day.pieces[0].kind, day.pieces[0].from.min(), cool.at_once.len()), (PieceKind::Mix, 24.0, 0));
    let swollen = rest(foil(FoilHeat::Swollen));
    assert!(
        swollen.timeline.is_none() && swollen.why_not.unwrap().contains("nothing more is begun: nape: a foil swells")
    );
    assert!(swollen.at_once[0].starts_with("nape: a foil swells or bubbles"), "{:?}", swollen.at_once);
    let burns = rest(LogEntry { comfort: Some(Comfort::Burning), ..LogEntry::new(min(24.0), Noted::Comfort) });
    let why_not = burns.why_not.unwrap();
    assert!(
        burns.timeline.is_none() && why_not.starts_with("everything comes off, and nothing more is begun: burning")
    );
    // A weak strand comes off first, and the day goes on.
    let weak = rest(LogEntry { elasticity: Some(Elasticity::Reduced), ..of(24.0, Noted::Elasticity, "nape") });
    let day = weak.timeline.unwrap();
    assert_eq!((day.pieces[0].kind, day.pieces[0].from.min()), (PieceKind::Walk, 24.0));
    assert_eq!(
        (day.pieces[1].kind, day.pieces[1].section, day.pieces[1].from.min()),
        (PieceKind::Rinse, Some(0), 26.0)
    );
    // What is on the hair is named, whatever comes of the order.
    assert_eq!(burns.at_once.len(), 1);
    assert!(burns.at_once[0].starts_with("nape: burning or pain at minute 24"), "{:?}", burns.at_once);
    let plan = Plan { day: None, ..example() };
    let entries = [of(2.0, Noted::Begun, "nape"), foil(FoilHeat::Swollen)];
    let without = rest_of_service(&plan, &replay(&entries), &[]);
    assert!(without.timeline.is_none() && without.at_once[0].starts_with("nape: a foil swells"), "{without:?}");
}

#[test]
fn the_command_notes_and_records() {
    let folder = tempfile::tempdir().unwrap();
    let log = folder.path().join("today.log");
    let run = |args: &[&str]| Command::new(env!("CARGO_BIN_EXE_foilwork")).args(args).output().unwrap();
    let log = log.to_str().unwrap();
    assert!(run(&["note", log, "--at", "2", "--section", "nape", "--begun"]).status.success());
    // A line that a crash has torn costs that line alone.
    let mut torn = std::fs::read(log).unwrap();
    torn.extend_from_slice(b"{\"format\":1,\"at_mi");
    std::fs::write(log, torn).unwrap();
    let noted = run(&["note", log, "--at", "20", "--section", "nape", "--seen", "7"]);
    let text = String::from_utf8(noted.stdout).unwrap();
    assert!(
        text.contains("left out: line 2: torn") && text.contains("[WARN] the guest was not asked for 18 min"),
        "{text}"
    );
    let recorded = run(&["record", "examples/soft-gradient.toml", log]);
    let text = String::from_utf8(recorded.stdout).unwrap();
    assert!(text.contains("nape at minute 20") && text.contains("TO REPEAT IT"), "{text}");
    // As data: the record, what to mind at home, and when to come back; the crown shows its regrowth first.
    let data = run(&["record", "examples/soft-gradient.toml", log, "--json"]);
    let data: serde_json::Value = serde_json::from_slice(&data.stdout).unwrap();
    assert!(data["pairs"].is_array() && data["home_care"]["advice"].as_array().unwrap().len() > 4, "{data}");
    assert_eq!(data["rebooking"]["section"], "crown");
    // A level seen before the section is begun costs that level alone.
    assert!(run(&["note", log, "--at", "1", "--section", "nape", "--seen", "7"]).status.success());
    let again = run(&["record", "examples/soft-gradient.toml", log]);
    let text = String::from_utf8(again.stdout).unwrap();
    assert!(
        again.status.success() && text.contains("Left out: nape: level 7 at minute 1: not after its begin"),
        "{text}"
    );
    let left = run(&["day", "examples/soft-gradient.toml", "--log", log]);
    let text = String::from_utf8(left.stdout).unwrap();
    assert!(left.status.success() && text.contains("WHAT IS LEFT, IN MINUTES OF THE LOG"), "{text}");
    assert!(text.contains("Left out: line 2: torn"), "{text}");
    let refused = run(&["note", log, "--at", "20", "--seen", "7"]);
    assert_eq!(refused.status.code(), Some(2));
    assert!(String::from_utf8(refused.stderr).unwrap().contains("seen: `section` is missing (give it)"));
}

/// Nothing is written before the plan can be read, and what says stop has a status.
#[test]
fn a_note_beside_a_plan_is_checked_against_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("today.log");
    let log = path.to_str().unwrap();
    let run = |args: &[&str]| {
        let line = [&["note", log], args].concat();
        let done = Command::new(env!("CARGO_BIN_EXE_foilwork")).args(line).output().unwrap();
        (done.status.code().unwrap(), String::from_utf8(done.stdout).unwrap())
    };
    let plan = "examples/soft-gradient.toml";
    assert_eq!(run(&["--at", "0", "--section", "nape", "--begun", "--plan", "nofile.toml"]).0, 2);
    assert!(!path.exists());
    run(&["--at", "0", "--section", "nape", "--begun"]);
    run(&["--at", "48", "--section", "nape", "--seen", "6.5"]);
    run(&["--at", "48", "--section", "nape", "--rinsed"]);
    // An accident is for a doctor, not for a day in the book.
    let (status, text) = run(&["--at", "50", "--incident", "swelling of the eyelids", "--plan", plan]);
    assert_eq!(status, 1);
    assert!(text.contains("nape: rinse, and treat only [") && !text.contains("not before"), "{text}");
}

/// What is not to be begun by its plan is told beside every note of it.
#[test]
fn a_plan_that_says_stop_has_a_status_beside_a_log() {
    let folder = tempfile::tempdir().unwrap();
    let (log, file) = (folder.path().join("today.log"), folder.path().join("salts.toml"));
    let text = std::fs::read_to_string("examples/soft-gradient.toml").unwrap();
    let salts = text.replacen("history = [\"lightened\"]", "history = [\"lightened\", \"metallic-salts\"]", 1);
    assert_ne!(salts, text);
    std::fs::write(&file, salts).unwrap();
    let (log, file) = (log.to_str().unwrap(), file.to_str().unwrap());
    for args in
        [&["note", log, "--at", "0", "--section", "nape", "--begun", "--plan", file][..], &["record", file, log]]
    {
        let done = Command::new(env!("CARGO_BIN_EXE_foilwork")).args(args).output().unwrap();
        let text = String::from_utf8(done.stdout).unwrap();
        assert_eq!(done.status.code(), Some(1), "{text}");
        assert!(text.contains("[STOP] the plan says stop: ") && text.contains("metallic salts"), "{text}");
    }
}

/// Where the last of the visits does not reach it often, it is not told that so many visits do.
#[test]
fn visits_that_do_not_reach_the_target_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("today.log");
    let line = |at: f64, what, level: Option<f64>| {
        log_line(&LogEntry { level: level.map(|level| Level::new(level).unwrap()), ..of(at, what, "nape") })
    };
    let lines = [line(0.0, Noted::Begun, None), line(48.0, Noted::Seen, Some(6.25)), line(48.0, Noted::Rinsed, None)];
    std::fs::write(&path, lines.concat()).unwrap();
    let run = |more: &[&str]| {
        let line = [&["record", "examples/soft-gradient.toml", path.to_str().unwrap()], more].concat();
        String::from_utf8(Command::new(env!("CARGO_BIN_EXE_foilwork")).args(line).output().unwrap().stdout).unwrap()
    };
    let data: serde_json::Value = serde_json::from_str(&run(&["--json"])).unwrap();
    let visits = data["second_applications"][0]["visits"].as_array().unwrap();
    let best = visits.last().unwrap()["chance_percent"]["best"].as_f64().unwrap();
    assert!(visits.len() == 4 && best < 80.0, "{visits:?}");
    let text = run(&[]).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains(&format!("; even 4 visits reach it in {best:.0} (")), "{text}");
    assert!(!text.contains("it may take 4 visits"), "{text}");
}

/// The error of the forecast is the mean of what came out less what was forecast, worked again here from its inputs.
#[test]
fn the_error_of_the_forecast_is_worked_from_every_section() {
    let begun = of(20.0, Noted::Begun, "crown");
    let mut entries = whole();
    entries.truncate(7);
    let result =
        |section: &str, level| LogEntry { level: Some(Level::new(level).unwrap()), ..of(60.0, Noted::Result, section) };
    entries.extend([begun, of(58.0, Noted::Rinsed, "crown"), result("nape", 8.5), result("crown", 8.0)]);
    let trail = trace_record(&example(), &replay(&entries));
    let off = trail.iter().find(|one| one.what == "error of the forecast").unwrap();
    let number = |what: &str| -> Vec<f64> {
        off.inputs.iter().filter(|one| one.what.ends_with(what)).map(|one| one.value.parse().unwrap()).collect()
    };
    let (came, forecast) = (number("level that came out"), number("forecast"));
    assert_eq!(came, [8.5, 8.0]);
    let mean = (came[0] - forecast[0] + came[1] - forecast[1]) / 2.0;
    let told: f64 = off.value.parse().unwrap();
    assert!(
        (told - mean).abs() < 1e-9 && (school(off.worked.as_ref().unwrap()).unwrap() - mean).abs() < 1e-9,
        "{off:?}"
    );
}
