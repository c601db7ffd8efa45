//! From the planned minute to the longest that the product allows: one rule at every door, by cases worked out by hand.
//!
//! The nape goes from 6 to 9, is put on in 5 min and planned for 15 more: 20 min. Its powder allows 50 from the first strand. Looks are
//! five minutes apart. By its log it is begun in minute 4, so that 20 min on the hair are minute 24, and 50 are minute 54.

use super::noted::{feels, foil, of, run, seen, strand};
use foilwork::{
    lift::Next,
    quantity::Duration,
    reader::Format,
    record::{
        AfterLevel, Again, Comfort, FoilHeat, LogEntry, Noted, RestOfService, SecondApplication, after_levels,
        levels_seen, log_line, replay, rest_of_service, second_applications,
    },
    service::{Evidence, SeenNow, ServiceFile, parse, plan, plan_with, shape::Elasticity},
};
use rstest::rstest;

pub(super) const OWN: &str = "longest_min = 50\nlongest_counts_from = \"first-strand\"\n";

pub(super) fn text(own: &str) -> String {
    let text = include_str!("../../examples/soft-gradient.toml");
    let changed = text.replacen(OWN, own, 1);
    changed.replacen("apply_min = 18\ndevelop_min = 30", "apply_min = 5\ndevelop_min = 15", 1)
}

pub(super) fn file(own: &str) -> ServiceFile {
    parse(&text(own), Format::Toml).unwrap()
}

/// Begun in minute 4 and all on five minutes later; a level seen after so long on the hair, and where that is later, somebody asked
/// the guest after so long.
pub(super) fn log(seen_after: Option<(f64, f64)>, now: f64) -> Vec<LogEntry> {
    let look = seen_after.map(|(after, level)| seen(4.0 + after, level));
    let lines = [of(4.0, Noted::Begun), of(9.0, Noted::Applied)].into_iter().chain(look);
    lines.chain([feels(4.0 + now, Comfort::Fine)]).collect()
}

pub(super) struct Doors {
    pub(super) note: SecondApplication,
    pub(super) after: AfterLevel,
    pub(super) rest: RestOfService,
    pub(super) sheet: SeenNow,
}

/// What each door says of the nape.
pub(super) fn doors(own: &str, entries: &[LogEntry]) -> Doors {
    let (file, so_far) = (file(own), replay(entries));
    let levels = levels_seen(&plan(&file).unwrap(), &so_far).levels;
    let moved = plan_with(&file, &Evidence { seen: levels, ..Evidence::default() }).unwrap();
    let after = after_levels(&moved, &so_far);
    let rest = rest_of_service(&moved, &so_far, &after);
    let note = second_applications(&moved, &so_far).remove(0);
    Doors { note, after: after[0].clone(), rest, sheet: moved.lift[0].seen[0].clone() }
}

pub(super) fn min(value: f64) -> Duration {
    Duration::from_min(value).unwrap()
}

/// On the hair until the look, until now, and what follows: to leave it on and look again after so long, or to look now.
#[rstest]
#[case::before_the_planned_minute(14.0, 14.0, Again::GoOn, 19.0)]
#[case::the_planned_minute_is_a_look(17.0, 17.0, Again::GoOn, 20.0)]
#[case::a_minute_before_it_an_old_look_is_due(10.0, 19.0, Again::GoOn, 19.0)]
#[case::at_the_planned_minute(20.0, 20.0, Again::GoOn, 25.0)]
#[case::looked_at_four_minutes_ago(16.0, 20.0, Again::GoOn, 21.0)]
#[case::looked_at_five_minutes_ago(15.0, 20.0, Again::LookNow, 20.0)]
#[case::after_it(30.0, 34.0, Again::GoOn, 35.0)]
#[case::after_it_and_five_minutes_ago(30.0, 35.0, Again::LookNow, 35.0)]
#[case::no_look_is_later_than_the_longest(47.0, 49.0, Again::GoOn, 50.0)]
#[case::half_a_minute_before_the_longest(46.0, 49.5, Again::GoOn, 50.0)]
fn until_the_longest_it_is_left_on_as_long_as_somebody_looks(
    #[case] look: f64,
    #[case] now: f64,
    #[case] want: Again,
    #[case] again: f64,
) {
    let found = doors(OWN, &log(Some((look, 8.0)), now));
    assert_eq!((found.note.decision, found.note.look_again), (want, Some(min(4.0 + again))), "{:#?}", found.note);
    let next = if want == Again::GoOn { Next::GoOn } else { Next::LookNow };
    assert_eq!((found.after.next, found.after.look_again), (next, Some(min(4.0 + again))), "{:#?}", found.after);
    assert_eq!(found.rest.at_once, Vec::<String>::new());
    // Nobody is told to rinse it, and nobody arranges that before the next look.
    let rinsed = found.rest.timeline.unwrap().sections.into_iter().find(|one| one.name == "nape").unwrap().rinse;
    assert!(rinsed.min() >= 4.0 + again || want == Again::LookNow, "{rinsed}");
    // Nor later than the longest, where the basin is reached by then.
    assert!(rinsed.min() <= 54.0 || now > 45.0, "{rinsed}");
    // The plan knows the look as if it were just made, on the clock of its sheet: five minutes later, or at the two bounds.
    let later = if look < 20.0 { (look + 5.0).min(20.0) } else { (look + 5.0).min(50.0) };
    assert_eq!((found.sheet.next, found.sheet.look_again), (Next::GoOn, Some(min(later))));
    // From the planned minute on each says until when it may stay.
    let until = "rinse at minute 54 at the latest, whatever the level";
    let told = now >= 20.0;
    for said in [found.note.reasons.join("; "), found.after.why] {
        assert_eq!(said.contains(until), told, "{said}");
    }
    assert_eq!(found.sheet.why.contains("rinse at minute 50 at the latest"), look >= 20.0, "{}", found.sheet.why);
}

/// Planned for 20 and 10 more by the house, it may stay for 50 where a look leaves it on: 29 min after the first strand nothing is overdue,
/// and it is rinsed between the next look, in minute 38, and minute 54. 12 min after a look it is looked at now, and still has 50. Two
/// minutes to the basin from minute 53 end in minute 55, one beyond.
#[test]
fn what_a_look_leaves_on_is_overdue_by_its_longest_alone() {
    let of_day = |look: f64, now: f64| {
        let rest = doors(OWN, &log(Some((look, 8.0)), now)).rest;
        let nape = rest.timeline.unwrap().sections.into_iter().find(|one| one.name == "nape").unwrap();
        (nape.rinse.min(), rest.overdue)
    };
    let (rinse, overdue) = of_day(29.0, 29.0);
    assert!((38.0..=54.0).contains(&rinse) && overdue.is_empty(), "{rinse} {overdue:?}");
    let (rinse, overdue) = of_day(20.0, 32.0);
    assert!(rinse <= 54.0 && overdue.is_empty(), "{rinse} {overdue:?}");
    assert_eq!(of_day(49.0, 49.0), (55.0, vec!["nape".to_owned()]));
    assert_eq!(of_day(48.0, 48.0), (54.0, Vec::new()));
}

/// At the longest it comes off, whatever it shows, and is beyond it from the next half minute on.
#[rstest]
#[case::just_looked_at(50.0, 50.0, "rinse now: the longest that the product allows is up")]
#[case::looked_at_before(48.0, 50.0, "rinse now: the longest that the product allows is up")]
#[case::beyond(53.0, 53.0, "rinse now: 3 min beyond the longest that the product allows")]
fn at_the_longest_it_is_rinsed(#[case] look: f64, #[case] now: f64, #[case] told: &str) {
    let found = doors(OWN, &log(Some((look, 8.0)), now));
    assert!(!matches!(found.note.decision, Again::GoOn | Again::LookNow | Again::StopAndTone), "{:#?}", found.note);
    assert_eq!((found.note.reasons[0].as_str(), found.note.look_again), (told, None));
    assert!(!matches!(found.after.next, Next::GoOn | Next::LookNow) && found.after.look_again.is_none());
    assert!(found.rest.at_once.len() == 1 && found.rest.at_once[0].starts_with("nape: "), "{:?}", found.rest.at_once);
    if look >= 50.0 {
        assert!(matches!(found.sheet.next, Next::FreshMix | Next::NextVisit));
        assert!(found.sheet.why.starts_with("the limit of 50 min is reached at level 8"), "{}", found.sheet.why);
    }
}

/// Where the shelf does not say the longest, the planned minute is the limit: 20 min.
#[rstest]
#[case(19.0, true)]
#[case(20.0, false)]
fn without_a_longest_the_planned_minute_is_the_limit(#[case] now: f64, #[case] stays: bool) {
    let found = doors("", &log(Some((now, 8.5)), now));
    assert_eq!((found.note.decision == Again::GoOn, found.after.next == Next::GoOn), (stays, stays));
    assert_eq!((found.sheet.next == Next::GoOn, found.rest.at_once.is_empty()), (stays, stays));
    let first = &found.note.reasons[0];
    let rinse = "rinse now: the planned time is up, and the product's longest is not on the shelf";
    assert!(stays || first == rinse, "{first}");
}

/// Nobody looked: the day rinses it in minute 24, 20 after its begin, and from then on says so as `note` does; a minute before, the two
/// to the basin end in minute 25.
#[test]
fn without_a_longest_the_day_ends_it_at_the_planned_minute() {
    let of_day = |now: f64| rest_of_service(&plan(&file("")).unwrap(), &replay(&log(None, now)), &[]);
    let rinse = |rest: &RestOfService| {
        let sections = &rest.timeline.as_ref().unwrap().sections;
        sections.iter().find(|one| one.name == "nape").unwrap().rinse.min()
    };
    for now in [5.0, 18.0] {
        let rest = of_day(now);
        assert_eq!((rinse(&rest), rest.overdue.len(), rest.at_once.len()), (24.0, 0, 0), "{now}");
    }
    let late = of_day(19.0);
    assert_eq!((rinse(&late), late.overdue.as_slice(), late.at_once.len()), (25.0, &["nape".to_owned()][..], 0));
    let beyond = "nape: rinse now: 1 min beyond the planned time, and the product's longest is not on the shelf";
    let rest = of_day(21.0);
    assert_eq!((rinse(&rest), rest.at_once, rest.overdue.len()), (27.0, vec![beyond.to_owned()], 0));
}

/// Counted from the end of an application that took 10 min where 5 were planned, 30 end 40 min after the first strand, and 35 by the plan.
#[test]
fn a_longest_from_the_end_of_the_application_goes_by_the_log() {
    let own = "longest_min = 30\nlongest_counts_from = \"end-of-application\"\n";
    let entries = |now: f64| [of(4.0, Noted::Begun), of(14.0, Noted::Applied), seen(4.0 + now, 8.0)];
    for (now, stays) in [(34.0, true), (36.0, true), (39.0, true), (40.0, false)] {
        let found = doors(own, &entries(now));
        assert_eq!(found.note.decision == Again::GoOn, stays, "{:#?}", found.note);
        assert_eq!((found.after.next == Next::GoOn, found.rest.at_once.is_empty()), (stays, stays), "{now}");
        assert!(!stays || found.after.why.contains("rinse at minute 44 at the latest"), "{}", found.after.why);
    }
}

/// There or past it, and what hurts, breaks or swells: it comes off at every door, before and after the planned minute.
#[rstest]
fn what_is_there_or_hurts_is_rinsed(#[values(15.0, 20.0, 30.0)] now: f64) {
    for level in [8.75, 9.0, 9.5] {
        let found = doors(OWN, &log(Some((now, level)), now));
        assert_eq!(
            (found.note.decision, found.after.next, found.sheet.next),
            (Again::StopAndTone, Next::Rinse, Next::Rinse)
        );
        assert!(found.note.rejected.iter().any(|one| one.what == Again::GoOn), "{:#?}", found.note);
        assert_eq!(found.rest.at_once.len(), 1);
    }
    let short = doors(OWN, &log(Some((now, 8.74)), now));
    assert_eq!((short.note.decision, short.after.next), (Again::GoOn, Next::GoOn));
    let at = 4.0 + now;
    for sign in [
        strand(at, Elasticity::Reduced),
        strand(at, Elasticity::Poor),
        feels(at, Comfort::Itching),
        feels(at, Comfort::Burning),
        foil(at, FoilHeat::Swollen),
    ] {
        let found = doors(OWN, &[log(Some((now, 8.0)), now), vec![sign.clone()]].concat());
        assert!(!matches!(found.note.decision, Again::GoOn | Again::LookNow), "{sign:?}: {:#?}", found.note);
        assert!(!matches!(found.after.next, Next::GoOn | Next::LookNow), "{sign:?}: {:#?}", found.after);
        assert_eq!((found.rest.at_once.len(), found.note.look_again), (1, None), "{sign:?}");
    }
}

/// A strand that breaks is treated only, also at the longest: nobody is told to consider a fresh mix.
#[test]
fn no_fresh_mix_is_considered_on_hair_that_breaks() {
    let broken = [log(Some((50.0, 8.5)), 50.0), vec![strand(54.0, Elasticity::Poor)]].concat();
    let found = doors(OWN, &broken);
    assert_eq!((found.note.decision, found.after.next), (Again::TreatOnly, Next::Rinse), "{:#?}", found.after);
    let itches = [log(Some((50.0, 8.5)), 50.0), vec![feels(54.0, Comfort::Itching)]].concat();
    let found = doors(OWN, &itches);
    assert_eq!((found.note.decision, found.after.next), (Again::NextVisit, Next::NextVisit), "{:#?}", found.after);
}

/// The instructions of the nape.
fn told(entries: &[LogEntry]) -> Vec<String> {
    let so_far = replay(entries);
    let found = rest_of_service(&plan(&file(OWN)).unwrap(), &so_far, &[]).instructions;
    let of_nape = found.into_iter().filter(|one| one.section.as_deref() == Some("nape"));
    of_nape.map(|one| one.text).collect()
}

/// A look is old after five minutes; where the level was there, or something says that it comes off, nobody is sent to look again.
#[test]
fn what_comes_off_is_not_looked_at_again() {
    for level in [8.75, 9.0, 9.5] {
        assert_eq!(told(&log(Some((20.0, level)), 25.0)), ["rinse now: the level is there"], "{level}");
    }
    let short = told(&log(Some((20.0, 8.74)), 25.0));
    assert!(short.len() == 1 && short[0].contains("look now, and rinse if it is there"), "{short:?}");
    // The level of what was rinsed says nothing of what is on.
    let again = [of(4.0, Noted::Begun), seen(40.0, 9.0), of(41.0, Noted::Rinsed), of(60.0, Noted::Begun)];
    let again = told(&[&again[..], &[feels(80.0, Comfort::Fine)]].concat());
    assert!(again.len() == 1 && again[0].contains("look now, and rinse if it is there"), "{again:?}");
    for sign in [
        strand(29.0, Elasticity::Reduced),
        strand(29.0, Elasticity::Poor),
        feels(29.0, Comfort::Itching),
        feels(29.0, Comfort::Burning),
        foil(29.0, FoilHeat::Swollen),
    ] {
        let found = told(&[log(Some((20.0, 8.0)), 25.0), vec![sign.clone()]].concat());
        assert!(found.iter().all(|text| !text.contains("look now") && !text.contains("at the latest")), "{found:?}");
        let slow = found.iter().any(|text| text == "rinse now: a strand returns slowly");
        let want = sign.elasticity == Some(Elasticity::Reduced);
        assert_eq!(slow, want, "{sign:?}: {found:?}");
    }
}

/// What nobody looked at since it is on is looked at at the planned minute; a look at what was on before does not count.
#[test]
fn what_nobody_looked_at_is_looked_at_when_its_planned_time_is_up() {
    assert_eq!(told(&log(None, 19.0)), Vec::<String>::new());
    let look = "the planned time is up, and nobody looked at its level: look now, and rinse if it is there; rinse at minute 54 at the \
                latest, whatever the level";
    assert_eq!(told(&log(None, 20.0)), [look]);
    assert_eq!(told(&log(None, 49.0)), [look]);
    assert_eq!(told(&log(None, 50.0)), ["rinse now: the longest that the product allows is up"]);
    let since = told(&log(Some((15.0, 8.0)), 20.0));
    assert!(since.len() == 1 && since[0].contains("looked at its level since minute 19: look now"), "{since:?}");
    assert_eq!(told(&log(Some((16.0, 8.0)), 20.0)), Vec::<String>::new());
    // Put on again in minute 60, after a look in minute 40.
    let again = [of(4.0, Noted::Begun), seen(40.0, 8.0), of(41.0, Noted::Rinsed), of(60.0, Noted::Begun)];
    let again = [&again[..], &[feels(80.0, Comfort::Fine)]].concat();
    assert_eq!(told(&again), [look.replace("minute 54", "minute 110")]);
    // Its end of application alone is noted, in minute 9: five minutes before that it was begun.
    assert_eq!(told(&[of(9.0, Noted::Applied), feels(24.0, Comfort::Fine)]), [look]);
    assert_eq!(told(&[of(9.0, Noted::Applied), feels(23.0, Comfort::Fine)]), Vec::<String>::new());
}

/// A level of a second application, which no forecast takes, says the same at every door.
#[test]
fn a_second_application_is_told_alike() {
    let file = file(OWN);
    let before = plan(&file).unwrap();
    let at = |level: f64| {
        let entries = [
            of(4.0, Noted::Begun),
            seen(24.0, 7.0),
            of(24.0, Noted::Rinsed),
            of(30.0, Noted::Begun),
            seen(50.0, level),
        ];
        let so_far = replay(&entries);
        let moved =
            plan_with(&file, &Evidence { seen: levels_seen(&before, &so_far).levels, ..Evidence::default() }).unwrap();
        let after = after_levels(&moved, &so_far);
        let rest = rest_of_service(&moved, &so_far, &after);
        (second_applications(&moved, &so_far)[0].decision, after[0].clone(), rest.at_once.len())
    };
    let (decision, after, off) = at(8.0);
    assert_eq!(
        (decision, after.next, after.at, after.level.number(), off),
        (Again::GoOn, Next::GoOn, min(50.0), 8.0, 0)
    );
    let (decision, after, off) = at(9.0);
    assert_eq!((decision, after.next, after.level.number(), off), (Again::StopAndTone, Next::Rinse, 9.0, 1));
}

/// The commands say it in the same words: `note`, `record` and `day --log` on the clock of the log, `plan --seen` on that of the sheet.
#[test]
fn the_commands_say_the_same() {
    let dir = tempfile::tempdir().unwrap();
    let (service, day) = (dir.path().join("service.toml"), dir.path().join("day.jsonl"));
    std::fs::write(&service, text(OWN)).unwrap();
    let (service, day) = (service.to_str().unwrap(), day.to_str().unwrap());
    let said = |entries: &[LogEntry]| {
        std::fs::write(day, entries.iter().map(log_line).collect::<String>()).unwrap();
        let asked = run(&["note", day, "--at", "24", "--comfort", "fine", "--plan", service]);
        let record = run(&["record", service, day]);
        [asked, record, run(&["day", service, "--log", day])]
            .map(|(status, text)| (status, text.split_whitespace().collect::<Vec<_>>().join(" ")))
    };
    for (_, text) in said(&log(Some((20.0, 8.0)), 20.0)) {
        assert!(text.contains("look again at minute 29, and rinse at minute 54 at the latest"), "{text}");
        assert!(!text.to_lowercase().contains("rinse now"), "{text}");
    }
    for (_, text) in said(&log(Some((15.0, 8.0)), 20.0)) {
        assert!(text.contains("look now, and rinse if it is there; rinse at minute 54 at the latest"), "{text}");
        assert!(!text.to_lowercase().contains("rinse now"), "{text}");
    }
    let [note, record, rest] = said(&log(Some((20.0, 9.0)), 20.0));
    assert!(note.1.contains("nape: rinse now; then stop and tone"), "{}", note.1);
    assert!(record.1.contains("nape: rinse now; then stop and tone"), "{}", record.1);
    assert!(rest.0 == 1 && rest.1.contains("*** RINSE NOW: nape: level 9 is seen"), "{}", rest.1);
    let (_, sheet) = run(&["plan", service, "--seen", "nape=8@20"]);
    let sheet = sheet.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(sheet.contains("look again at minute 25, and rinse at minute 50 at the latest"), "{sheet}");
}
