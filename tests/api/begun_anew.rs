//! What was all on, and is begun again later, though nobody noted its first begin: it was on all the same. Minutes are worked out by
//! hand; the nape of the example is planned for 18 min of applying, and its powder may stay on for 50 min from the first strand.

use super::{
    noted::{feels, of, seen},
    record::min,
};
use foilwork::{
    reader::Format,
    record::{
        Comfort, LogEntry, Noted, SectionSoFar, levels_seen, record, replay, rest_of_service, second_applications,
    },
    service::{Plan, parse, plan},
};
use rstest::rstest;

fn gradient() -> Plan {
    plan(&parse(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap()).unwrap()
}

fn nape(entries: &[LogEntry]) -> SectionSoFar {
    replay(entries).sections.remove(0)
}

/// All on at 20 and begun at 40: on from 20 at the latest, by the log alone. How long it carried nobody knows.
#[test]
fn it_is_an_application_of_its_own_from_the_end_of_its_putting_on() {
    let mut entries = vec![of(20.0, Noted::Applied), of(40.0, Noted::Begun)];
    let one = nape(&entries);
    let first = one.earlier[0];
    assert_eq!(
        (one.earlier.len(), first.begun, first.applied, first.rinsed),
        (1, min(20.0), Some(min(20.0)), min(40.0))
    );
    assert!(!first.begin_noted && !first.rinse_noted);
    assert_eq!(
        (one.begun, one.applied, one.first()),
        (Some(min(40.0)), None, (None, Some(min(20.0)), Some(min(40.0))))
    );
    entries.push(of(70.0, Noted::Rinsed));
    assert_eq!(nape(&entries).carried(), None);
    // Its begin is noted after all: 70 - 3.
    entries.push(of(3.0, Noted::Begun));
    let one = nape(&entries);
    assert_eq!((one.first().0, one.begun, one.carried()), (Some(min(3.0)), Some(min(40.0)), Some(min(67.0))));
    assert!(one.earlier[0].begin_noted && replay(&entries).left_out.is_empty());
}

/// Nothing is put on anew within five minutes: 25 corrects what was noted at 20, 26 does not. A rinse between ends the first.
#[rstest]
#[case::a_correction(&[(20.0, Noted::Applied), (25.0, Noted::Begun)], 0, 1)]
#[case::anew(&[(20.0, Noted::Applied), (26.0, Noted::Begun)], 1, 1)]
#[case::rinsed_between(&[(20.0, Noted::Applied), (45.0, Noted::Rinsed), (50.0, Noted::Begun)], 1, 2)]
#[case::rinsed_only(&[(45.0, Noted::Rinsed), (50.0, Noted::Begun)], 0, 1)]
fn what_counts_as_an_application_before(
    #[case] lines: &[(f64, Noted)],
    #[case] earlier: usize,
    #[case] applied: usize,
) {
    let entries: Vec<LogEntry> = lines.iter().map(|(at, what)| of(*at, *what)).collect();
    assert_eq!(nape(&entries).earlier.len(), earlier);
    let plan = gradient();
    let looked = [entries, vec![seen(60.0, 8.0)]].concat();
    assert_eq!(second_applications(&plan, &replay(&looked))[0].applications, applied);
}

/// All on at 20 it was begun at 20 - 18 = 2 as planned, and is on for 53 min at minute 55: 3 beyond the 50 of the powder. From its
/// noted begin at 40 it would be on for 15.
#[test]
fn every_door_counts_from_its_planned_begin() {
    let (plan, entries) = (gradient(), [of(20.0, Noted::Applied), of(40.0, Noted::Begun), seen(55.0, 8.0)]);
    let so_far = replay(&entries);
    let beyond = "rinse now: 3 min beyond the longest that the product allows";
    let taken = "its begin is not noted: taken as on from minute 2, as planned (note --begun)";
    let decided = &second_applications(&plan, &so_far)[0];
    assert_eq!((decided.reasons[0].as_str(), decided.on_hair), (beyond, min(53.0)));
    assert_eq!(decided.reasons.last().unwrap(), taken);
    let rest = rest_of_service(&plan, &so_far, &[]);
    assert_eq!(rest.at_once, [format!("nape: {beyond}")]);
    let held = record(&plan, &so_far);
    let told: Vec<&str> = held.instructions.iter().map(|one| one.text.as_str()).collect();
    assert!(told.contains(&beyond), "{told:#?}");
    let missing = "no rinse was noted before minute 40, when it was begun again: it is counted as on from minute 2, for the longer time \
                   is the safe side, and as put on once (note the rinse if there was one; note its begin too: before the end of its \
                   application nobody noted one)";
    assert!(told.contains(&missing), "{told:#?}");
    // How long it took to put on is not known, and a level of after the second begin is of no first application.
    assert!(held.pairs.iter().all(|pair| pair.what.code() != "applying-min"), "{:#?}", held.pairs);
    assert!(levels_seen(&plan, &so_far).levels.is_empty());
}

/// Begun at 3 and again at 20, without a rinse: 50 min from the first begin are minute 53, and no rest of the day leaves it on for longer,
/// though 48 min from the second would be minute 68.
#[test]
fn the_rest_of_the_day_counts_from_the_first_begin() {
    let (plan, entries) = (gradient(), [of(3.0, Noted::Begun), of(20.0, Noted::Begun), feels(30.0, Comfort::Fine)]);
    let rest = rest_of_service(&plan, &replay(&entries), &[]);
    let day = rest.timeline.unwrap();
    let nape = day.sections.iter().find(|one| one.name == "nape").unwrap();
    assert!(nape.rinse <= min(53.0), "{nape:?}");
    assert!(rest.overdue.is_empty() && rest.at_once.is_empty());
}
