//! The log and the record: torn lines, words, and figures worked out by hand.

use foilwork::{
    colour::Level,
    finding::Verdict,
    quantity::{Duration, Mass},
    reader::Format,
    record::{Comfort, Compared, FoilHeat, LogEntry, Noted, instructions, log_line, read_log, record, replay},
    service::{parse, plan, shape::Elasticity},
};
use std::process::Command;

fn min(value: f64) -> Duration {
    Duration::from_min(value).unwrap()
}

fn of(at: f64, what: Noted, section: &str) -> LogEntry {
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
        assert_eq!(replay(&mended.entries), replay(&mended.entries.clone()));
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
    // Nobody asked from minute 2 to minute 20.
    assert_eq!(verdicts(&[of(2.0, Noted::Begun, "nape"), foil(FoilHeat::Cool)]), [Verdict::Warning]);
    assert_eq!(verdicts(&[of(2.0, Noted::Begun, "nape"), comfort(Comfort::Fine), foil(FoilHeat::Cool)]), []);
}

/// By hand from the file: 46.4 g are made for the nape, put on in 18 min, 48 min to the rinse, target 9, crown 8.
#[test]
fn planned_stands_beside_actual() {
    let text = std::fs::read_to_string("examples/soft-gradient.toml").unwrap();
    let plan = plan(&parse(&text, Format::Toml).unwrap()).unwrap();
    let found = record(&plan, &replay(&whole()));
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
    assert_eq!(found.forecasts, 2);
    // 52.2 of 46.4 g: powder 15, developer 30, additive 1.4 g, each times 1.125.
    assert!(
        found.to_repeat[0].starts_with(
            "nape: 52.2 g: 16.9 g Foam Line powder, 33.8 g developer 6 and 1.6 g bond additive; 3.88 % w/w on the hair; 44 \
             min from the first strand"
        ),
        "{}",
        found.to_repeat[0]
    );
    assert!(found.to_repeat[0].ends_with("to level 8.5 beige"));
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
    let refused = run(&["note", log, "--at", "20", "--seen", "7"]);
    assert_eq!(refused.status.code(), Some(2));
    assert!(String::from_utf8(refused.stderr).unwrap().contains("seen: `section` is missing (give it)"));
}
