//! Levels that are read with a toner on: toner darkens (common practice), so they decide on no more lightener and teach no lift.

use super::noted::{feels, of, run, seen, strand};
use foilwork::{
    colour::Level,
    history::{keep, lessons, strand_readings},
    reader::Format,
    record::{
        Again, Comfort, LogEntry, Noted, SecondApplication, levels_seen, log_line, record, replay, second_applications,
    },
    service::{Plan, plan_text, shape::Elasticity},
};
use std::sync::LazyLock;

/// The nape goes from 6 to 9, the crown to 8; the toner "lengths" goes on nape and hairline, "crown gloss" on the crown.
static GRADIENT: LazyLock<Plan> = LazyLock::new(|| {
    plan_text(&std::fs::read_to_string("examples/soft-gradient.toml").unwrap(), Format::Toml).unwrap()
});

fn at(section: &str, entry: LogEntry) -> LogEntry {
    LogEntry { section: Some(section.to_owned()), ..entry }
}

fn came_to(minute: f64, level: f64) -> LogEntry {
    LogEntry { level: Some(Level::new(level).unwrap()), ..of(minute, Noted::Result) }
}

/// The nape rinsed at 45 and tested, read if so at 49, and toned from 85 to 100.
fn toned(read_before: Option<f64>, more: &[LogEntry]) -> Vec<LogEntry> {
    let nape = [of(0.0, Noted::Begun), of(18.0, Noted::Applied), of(45.0, Noted::Rinsed)];
    let tested = [strand(48.0, Elasticity::Good), feels(48.0, Comfort::Fine)];
    let read = read_before.map(|level| came_to(49.0, level));
    let toner = [at("lengths", of(85.0, Noted::Begun)), at("lengths", of(100.0, Noted::Rinsed))];
    [&nape[..], &tested, read.as_slice(), &toner, &[feels(104.0, Comfort::Fine)], more].concat()
}

fn left_out(entries: &[LogEntry]) -> Vec<String> {
    levels_seen(&GRADIENT, &replay(entries)).left_out.iter().map(ToString::to_string).collect()
}

fn decided(entries: &[LogEntry]) -> Vec<SecondApplication> {
    second_applications(&GRADIENT, &replay(entries))
}

/// 9 was wanted and read; the 8 of after the toner asks for no lightener.
#[test]
fn a_toned_level_decides_on_no_more_lightener() {
    for toned_level in [came_to(105.0, 8.0), seen(105.0, 8.0)] {
        let [nape] = &decided(&toned(Some(9.0), std::slice::from_ref(&toned_level)))[..] else { panic!() };
        assert_eq!((nape.decision, nape.level), (Again::StopAndTone, Level::new(9.0).unwrap()));
        assert_eq!(
            nape.reasons.last().unwrap(),
            "level 8 at minute 105: read after the toner, which is no level of lifting"
        );
        // Of nothing that was read before it, nothing follows, and that is told.
        let entries = toned(None, &[toned_level]);
        assert_eq!(decided(&entries), []);
        assert_eq!(
            left_out(&entries),
            ["nape: level 8 at minute 105: read after the toner, which is no level of lifting"]
        );
    }
    // A strand and a scalp of before the toner are tested again before lightener goes on what is toned.
    let [nape] = &decided(&toned(Some(8.5), &[came_to(105.0, 8.0)]))[..] else { panic!() };
    assert_eq!((nape.decision, nape.level), (Again::TestFirst, Level::new(8.5).unwrap()));
    assert!(nape.reasons.iter().any(|why| why.contains("tested at minute 48, before minute 85")), "{nape:#?}");
    // When the toner went on, nobody noted: nothing that was read since the rinse is taken as bare.
    let only_rinsed = [
        of(0.0, Noted::Begun),
        of(45.0, Noted::Rinsed),
        came_to(95.0, 8.0),
        at("lengths", of(100.0, Noted::Rinsed)),
        strand(101.0, Elasticity::Good),
        feels(101.0, Comfort::Fine),
    ];
    assert_eq!(decided(&only_rinsed), []);
    let told = "nape: level 8 at minute 95: read after the rinse, and when the toner went on is not noted";
    assert_eq!(left_out(&only_rinsed), [told]);
    // Nor after a second application.
    let twice = [
        of(0.0, Noted::Begun),
        of(45.0, Noted::Rinsed),
        of(50.0, Noted::Begun),
        of(70.0, Noted::Rinsed),
        at("lengths", of(100.0, Noted::Rinsed)),
        strand(101.0, Elasticity::Good),
        feels(101.0, Comfort::Fine),
        came_to(105.0, 8.0),
    ];
    assert_eq!(decided(&twice), []);
}

/// Nape and crown came to their targets, 9 and 8: neither is behind because the nape is toned to 8.
#[test]
fn a_toned_level_is_no_shortfall() {
    let crown =
        [at("crown", of(10.0, Noted::Begun)), at("crown", of(50.0, Noted::Rinsed)), at("crown", came_to(55.0, 8.0))];
    let entries = [toned(Some(9.0), &[came_to(105.0, 8.0)]), crown.to_vec()].concat();
    let even = record(&GRADIENT, &replay(&entries)).evenness.unwrap();
    assert_eq!((even.spread_levels, even.short_levels), (0.0, 0.0), "{even:#?}");
}

#[test]
fn note_says_that_a_toned_level_was_read_with_the_toner_on() {
    let dir = tempfile::tempdir().unwrap();
    let answer = |read_before: Option<f64>, what: &str| {
        let log = dir.path().join("day.jsonl");
        std::fs::write(&log, toned(read_before, &[]).iter().map(log_line).collect::<String>()).unwrap();
        let plan = "examples/soft-gradient.toml";
        run(&["note", log.to_str().unwrap(), "--at", "105", "--section", "nape", what, "8", "--plan", plan])
    };
    for what in ["--seen", "--result"] {
        let (status, text) = answer(Some(9.0), what);
        assert!(status == 0 && text.contains("stop and tone") && !text.contains("a fresh mix today, "), "{text}");
        let (_, text) = answer(None, what);
        let told =
            "nape: level 8 at minute 105: read after the toner, which is no level of lifting; nothing follows from it";
        assert!(text.contains(told) && !text.contains("fresh mix"), "{text}");
    }
}

/// What was read before the toner stays what it came to, in whatever order the two are noted; a result noted anew corrects it.
#[test]
fn the_result_before_the_toner_stays_beside_the_toned_one() {
    let (before, after) = (came_to(51.0, 8.5), came_to(105.0, 7.5));
    for noted in [[before.clone(), after.clone()], [after, before]] {
        let so_far = replay(&toned(None, &noted));
        let kept = [keep(&GRADIENT, &so_far)];
        assert_eq!((kept[0].section[0].result_level, kept[0].section[0].toned_level), (Some(8.5), Some(7.5)));
        assert_eq!((strand_readings(&kept).len(), lessons(&kept).read_toned), (1, 0));
        let found = record(&GRADIENT, &so_far);
        assert_eq!((found.forecasts, found.not_judged.len()), (1, 0));
        let repeat = &found.to_repeat[0];
        assert!(repeat.ends_with("to level 8.5; level 7.5, read with the toner on"), "{repeat}");
        // The level is held against the 9 that was wanted as it was lifted.
        let level = found.pairs.iter().find(|pair| pair.what.code() == "level").unwrap();
        assert_eq!((level.actual, level.words.as_str()), (8.5, "0.5 less than planned"));
        // Read after the rinse at 45, it was reached by then.
        assert_eq!(levels_seen(&GRADIENT, &so_far).levels[0].to_string(), "nape=8.5@45");
    }
    let anew = keep(&GRADIENT, &replay(&toned(None, &[came_to(51.0, 8.5), came_to(51.0, 8.0), came_to(105.0, 7.5)])));
    assert_eq!((anew.section[0].result_level, anew.section[0].toned_level), (Some(8.0), Some(7.5)));
}

/// No toner is on hair that it does not go on, that is not rinsed, or in the minute in which it is begun.
#[test]
fn only_the_own_toner_begun_before_is_on() {
    let kept = |entries: &[LogEntry], section: &str| {
        let kept = keep(&GRADIENT, &replay(entries));
        let one = kept.section.iter().find(|one| one.name == section).unwrap();
        (one.result_level, one.toned_level)
    };
    let lengths = |minute: f64| at("lengths", of(minute, Noted::Begun));
    let same_minute = [of(0.0, Noted::Begun), of(45.0, Noted::Rinsed), came_to(51.0, 8.5), lengths(51.0)];
    assert_eq!(kept(&same_minute, "nape"), (Some(8.5), None));
    let crown = |result: f64| {
        let gloss = at("crown gloss", of(86.0, Noted::Begun));
        let crown =
            [of(18.0, Noted::Begun), of(64.0, Noted::Rinsed), came_to(result, 7.5)].map(|line| at("crown", line));
        [&crown[..], &[lengths(81.0), gloss]].concat()
    };
    assert_eq!(kept(&crown(83.0), "crown"), (Some(7.5), None));
    assert_eq!(kept(&crown(95.0), "crown"), (None, Some(7.5)));
    let hairline = [at("hairline", of(36.0, Noted::Begun)), lengths(81.0), at("hairline", came_to(83.0, 8.0))];
    assert_eq!(kept(&hairline, "hairline"), (Some(8.0), None));
    // What is not rinsed gets no fresh mix by that.
    assert!(decided(&hairline).iter().all(|one| one.decision != Again::FreshMix));
    // Of a root shadow nobody knows where it ends.
    let shadow = at("root shadow, 3 cm", of(82.0, Noted::Begun));
    assert_eq!(kept(&[crown(83.0), vec![shadow]].concat(), "crown"), (None, Some(7.5)));
    // Lightened again after the toner, it is what the lightener came to.
    let again = [of(110.0, Noted::Begun), of(125.0, Noted::Rinsed), came_to(130.0, 8.5)];
    assert_eq!(kept(&toned(Some(8.0), &again), "nape"), (Some(8.5), None));
}
