//! Slips of the pen during a service, and what has to come off whatever else is said.

use super::noted::{feels, foil, of, run, seen, strand};
use foilwork::{
    colour::Level,
    finding::Verdict,
    history::{keep, lessons, read_records, read_records_csv, record_line, records_csv, strand_readings},
    quantity::{Duration, Mass},
    reader::Format,
    record::{
        Again, Comfort, Compared, FoilHeat, LogEntry, Noted, RestOfService, after_levels, instructions, levels_seen,
        record, replay, rest_of_service, second_applications,
    },
    service::{Evidence, Plan, parse, plan_with, shape::Elasticity},
};
use rstest::rstest;

/// The nape goes from level 6 to 9, is planned for 18 min of applying and 30 more, and its powder may stay on for 50 min.
fn planned(entries: &[LogEntry]) -> Plan {
    let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml").unwrap(), Format::Toml).unwrap();
    let before = plan_with(&file, &Evidence::default()).unwrap();
    let seen = levels_seen(&before, &replay(entries)).levels;
    plan_with(&file, &Evidence { seen, ..Evidence::default() }).unwrap()
}

fn rest(entries: &[LogEntry]) -> RestOfService {
    let (moved, so_far) = (planned(entries), replay(entries));
    rest_of_service(&moved, &so_far, &after_levels(&moved, &so_far))
}

fn decided(entries: &[LogEntry]) -> Again {
    second_applications(&planned(entries), &replay(entries)).remove(0).decision
}

/// What was seen before the scalp burned does not say to go on.
#[test]
fn a_look_does_not_go_on_where_something_else_says_stop() {
    let look = [of(0.0, Noted::Begun), seen(20.0, 6.6), seen(25.0, 7.0)];
    let levels = |entries: &[LogEntry]| after_levels(&planned(entries), &replay(entries));
    let one = levels(&look);
    assert_eq!((one.len(), one[0].at.min(), one[0].next.to_string()), (1, 25.0, "go on".to_owned()));
    let burning = levels(&[&look[..], &[feels(26.0, Comfort::Burning)]].concat());
    assert_eq!((burning[0].next.to_string(), burning[0].look_again), ("rinse".to_owned(), None));
    assert!(burning[0].why.contains("burning"), "{:?}", burning);
    assert!(levels(&[&look[..], &[of(30.0, Noted::Rinsed)]].concat()).is_empty());
}

/// Each of these says to rinse now: what is on comes off, and where it concerns the guest or all of the hair nothing more is begun.
#[rstest]
#[case::itching(feels(26.0, Comfort::Itching), true)]
#[case::burning(feels(26.0, Comfort::Burning), true)]
#[case::swollen(foil(10.0, FoilHeat::Swollen), true)]
#[case::returns_slowly(strand(26.0, Elasticity::Reduced), false)]
fn what_comes_off_now_comes_off_in_the_rest_of_the_day_too(#[case] sign: LogEntry, #[case] nothing_more: bool) {
    let found = rest(&[of(0.0, Noted::Begun), sign.clone()]);
    assert!(found.at_once.iter().any(|one| one.starts_with("nape: ")), "{:?}", found.at_once);
    assert_eq!(found.timeline.is_none(), nothing_more, "{:?}", found.why_not);
    let rinsed = rest(&[of(0.0, Noted::Begun), sign, of(27.0, Noted::Rinsed)]);
    assert_eq!(rinsed.timeline.is_none(), nothing_more, "after the rinse, {:?}", rinsed.why_not);
}

/// Of two notes the later minute says how it is now, in whatever order they were written down.
#[test]
fn a_late_note_is_no_latest_word() {
    let begun = of(0.0, Noted::Begun);
    let itches = replay(&[begun.clone(), feels(30.0, Comfort::Itching), feels(10.0, Comfort::Fine)]);
    assert!(instructions(&itches).iter().any(|one| one.text.contains("itching at minute 30")));
    let looks = replay(&[begun.clone(), seen(45.0, 9.0), seen(25.0, 7.0)]);
    assert_eq!(looks.sections[0].seen.iter().map(|(at, _)| at.min()).collect::<Vec<_>>(), [25.0, 45.0]);
    let entries = [begun.clone(), seen(45.0, 9.0), seen(25.0, 7.0)];
    assert_eq!(decided(&entries), decided(&[begun.clone(), seen(25.0, 7.0), seen(45.0, 9.0)]));
    let hot = replay(&[begun.clone(), foil(30.0, FoilHeat::Hot), foil(20.0, FoilHeat::Warm)]);
    assert_eq!(hot.sections[0].foil, Some(FoilHeat::Hot));
    let cooled = replay(&[begun, foil(20.0, FoilHeat::Hot), foil(30.0, FoilHeat::Warm)]);
    assert_eq!(cooled.sections[0].foil, Some(FoilHeat::Warm));
}

/// A strand that broke is not mended by one that holds, in whatever order they were noted.
#[rstest]
#[case::good_after(&[strand(46.0, Elasticity::Poor), strand(47.0, Elasticity::Good)])]
#[case::good_noted_late(&[strand(46.0, Elasticity::Poor), strand(20.0, Elasticity::Good)])]
fn a_good_strand_does_not_take_back_a_broken_one(#[case] strands: &[LogEntry]) {
    let service = [of(0.0, Noted::Begun), seen(43.0, 8.5), of(44.0, Noted::Rinsed), feels(45.0, Comfort::Fine)];
    let entries = [&service[..], strands].concat();
    assert_eq!(decided(&entries), Again::TreatOnly);
    let kept = keep(&planned(&entries), &replay(&entries));
    assert_eq!(kept.section[0].elasticity, Some(Elasticity::Poor));
    assert!(kept.incident.iter().any(|one| one.contains("stays stretched or breaks")), "{:?}", kept.incident);
}

/// A good strand of before the second application is none of it, also where it is noted late.
#[test]
fn a_good_strand_of_before_does_not_count_for_what_went_on_after_it() {
    let twice = [of(0.0, Noted::Begun), of(30.0, Noted::Rinsed), of(40.0, Noted::Begun)];
    let late = replay(&[&twice[..], &[strand(20.0, Elasticity::Good)]].concat());
    assert_eq!(late.sections[0].elasticity, None);
    let weak = replay(&[&twice[..], &[strand(20.0, Elasticity::Reduced)]].concat());
    assert_eq!(weak.sections[0].elasticity, Some(Elasticity::Reduced));
}

/// On from 0 to 30: a begin at 28 is a slip, before the rinse was noted or after it. The time on the hair stays 30 min.
#[test]
fn a_begin_while_it_is_on_does_not_shorten_the_time() {
    let entries = [of(0.0, Noted::Begun), of(30.0, Noted::Rinsed), of(28.0, Noted::Begun)];
    let so_far = replay(&entries);
    assert_eq!(so_far.sections[0].carried().map(Duration::min), Some(30.0));
    let told = &record(&planned(&entries), &so_far).left_out;
    assert_eq!(
        told,
        &[
            "nape: minute 28, begun: it was on then; correct the minute, or the begin or rinse noted before where that is wrong"
        ]
    );
    // Two minutes after the begin it corrects it.
    let corrected = replay(&[of(0.0, Noted::Begun), of(30.0, Noted::Rinsed), of(2.0, Noted::Begun)]);
    assert_eq!(corrected.sections[0].begun.map(Duration::min), Some(2.0));
}

/// All on at 20 after the 18 min that are planned, and rinsed at 118, the begin not noted: 116 min, of 50 that are allowed.
#[test]
fn too_long_is_told_after_the_rinse_without_a_begin_too() {
    for entries in
        [vec![of(20.0, Noted::Applied), seen(118.0, 9.0)], vec![of(20.0, Noted::Applied), of(118.0, Noted::Rinsed)]]
    {
        let found = record(&planned(&entries), &replay(&entries));
        let stop = found.instructions.iter().find(|one| one.verdict == Verdict::Stop);
        assert!(stop.is_some_and(|one| one.text.contains("66 min beyond the longest")), "{:?}", found.instructions);
    }
}

/// Ten minutes beyond the longest it is treated only, whether it was rinsed in that minute or not.
#[test]
fn too_long_is_no_milder_while_it_is_on() {
    let on = [of(0.0, Noted::Begun), seen(60.0, 8.0)];
    assert_eq!(decided(&on), Again::TreatOnly);
    assert_eq!(decided(&[&on[..], &[of(60.0, Noted::Rinsed)]].concat()), Again::TreatOnly);
}

/// Begun at 3, then noted as begun at 12: 9 min are more than the 5 by which a begin corrects one before it, so it counts from 3, and
/// whoever notes it or asks for the rest of the day is told so, why, and what to do where it was a slip.
#[test]
fn a_begin_that_was_to_be_corrected_is_told_as_what_counts() {
    let entries = [of(3.0, Noted::Begun), of(12.0, Noted::Begun)];
    let want = "no rinse was noted before minute 12, when it was begun again: it is counted as on from minute 3, for the longer \
                time is the safe side, and as put on once (note the rinse if there was one; if minute 12 was to correct minute 3, \
                take the line of minute 3 out of the log: a begin corrects by itself only one that is no more than 5 min earlier)";
    assert!(rest(&entries).instructions.iter().any(|one| one.text == want), "{:#?}", rest(&entries).instructions);
    let folder = tempfile::tempdir().unwrap();
    let log = folder.path().join("today.jsonl");
    let log = log.to_str().unwrap();
    for at in ["3", "12"] {
        let (_, said) = run(&["note", log, "--at", at, "--section", "nape", "--begun"]);
        assert_eq!(said.contains(want), at == "12", "{said}");
    }
    // Of three the last goes on from the first, too.
    let told = instructions(&replay(&[&entries[..], &[of(30.0, Noted::Begun)]].concat()));
    assert!(told[1].text.contains("on from minute 3,") && told[1].text.contains("line of minute 12 out"), "{told:#?}");
    // Taken out it counts from 12.
    assert!(rest(&entries[1..]).instructions.iter().all(|one| !one.text.contains("no rinse was noted")));
}

/// Begins noted foil by foil, every four minutes: 8 is more than 5 min after the first, so it all counts from the first strand at 0, and
/// of the 50 min that the powder may be on none are left at 60. Rinsed at 64 it was on for 14 min more than that.
#[test]
fn begins_in_a_row_do_not_move_the_first_strand_without_end() {
    let begins = [0.0, 4.0, 8.0, 12.0, 16.0].map(|at| of(at, Noted::Begun));
    assert_eq!(replay(&begins[..2]).sections[0].begun.map(Duration::min), Some(4.0));
    let warned = "no rinse was noted before minute 8, when it was begun again: it is counted as on from minute 0,";
    assert!(instructions(&replay(&begins[..3])).iter().any(|one| one.text.starts_with(warned)));
    let on = [&begins[..], &[seen(60.0, 8.0)]].concat();
    assert!(rest(&on).at_once[0].starts_with("nape: rinse now: 10 min beyond the longest"), "{:?}", rest(&on).at_once);
    assert_eq!(decided(&on), Again::TreatOnly);
    let entries = [&begins[..], &[of(64.0, Noted::Rinsed)]].concat();
    let so_far = replay(&entries);
    assert_eq!(so_far.sections[0].carried().map(Duration::min), Some(64.0));
    let found = record(&planned(&[]), &so_far);
    let stop = found.instructions.iter().find(|one| one.verdict == Verdict::Stop).unwrap();
    assert!(stop.text.starts_with("it was on for 14 min beyond the longest"), "{}", stop.text);
}

/// The same where the rinse is noted first, where something else is noted between, and after a begin that was left out.
#[rstest]
#[case::rinsed_first(&[of(0.0, Noted::Begun), of(64.0, Noted::Rinsed), of(4.0, Noted::Begun), of(8.0, Noted::Begun), of(12.0, Noted::Begun)])]
#[case::seen_between(&[of(0.0, Noted::Begun), of(4.0, Noted::Begun), seen(6.0, 6.0), of(8.0, Noted::Begun), of(64.0, Noted::Rinsed)])]
#[case::left_out(&[of(0.0, Noted::Begun), of(64.0, Noted::Rinsed), of(20.0, Noted::Begun), of(22.0, Noted::Begun)])]
fn no_later_begin_shortens_the_time(#[case] entries: &[LogEntry]) {
    assert_eq!(replay(entries).sections[0].carried().map(Duration::min), Some(64.0), "{:?}", replay(entries));
}

/// A later begin of its own is corrected as the first is: begun anew at 50, corrected to 53.
#[test]
fn a_begin_of_its_own_is_corrected_too() {
    let entries = [of(0.0, Noted::Begun), of(40.0, Noted::Rinsed), of(50.0, Noted::Begun), of(53.0, Noted::Begun)];
    let found = replay(&entries);
    assert_eq!((found.sections[0].begun.map(Duration::min), found.sections[0].earlier.len()), (Some(53.0), 1));
}

/// Half a minute more than the 50 that are allowed is told as that, and not as none.
#[test]
fn half_a_minute_beyond_is_not_told_as_none() {
    for (last, want) in [
        (Noted::Rinsed, "it was on for 0.5 min beyond the longest"),
        (Noted::Foil, "rinse now: 0.5 min beyond the longest"),
    ] {
        let entries = [of(0.0, Noted::Begun), of(18.0, Noted::Applied), of(50.5, last)];
        let found = record(&planned(&[]), &replay(&entries)).instructions;
        assert!(found.iter().any(|one| one.verdict == Verdict::Stop && one.text.starts_with(want)), "{found:?}");
    }
}

/// The powder may stay on for 50 min: minutes are read to the whole one, so less than half of one more is none, wherever it is told.
#[rstest]
#[case(50.4, false)]
#[case(50.5, true)]
fn minutes_are_beyond_the_longest_by_one_bound(#[case] rinsed: f64, #[case] beyond: bool) {
    let entries = [of(0.0, Noted::Begun), of(18.0, Noted::Applied), of(rinsed, Noted::Rinsed)];
    let found = record(&planned(&[]), &replay(&entries));
    let pair = found.pairs.iter().find(|pair| pair.what == Compared::OnHair).unwrap();
    assert_eq!(pair.words.contains("beyond the longest time"), beyond, "{}", pair.words);
    let stops = found.instructions.iter().any(|one| one.verdict == Verdict::Stop);
    assert_eq!(stops, beyond, "{:?}", found.instructions);
}

/// Planned are 18 min of applying: 18.4 are the same by a clock that is read to the minute, 18.5 are not.
#[rstest]
#[case(18.4, "as planned")]
#[case(18.5, "0.5 more than planned")]
fn minutes_are_as_planned_by_the_same_bound(#[case] applied: f64, #[case] want: &str) {
    let found = record(&planned(&[]), &replay(&[of(0.0, Noted::Begun), of(applied, Noted::Applied)]));
    assert_eq!(found.pairs.iter().map(|pair| pair.words.as_str()).collect::<Vec<_>>(), [want]);
}

/// An end of application after the rinse is a slip.
#[test]
fn nothing_is_put_on_after_its_rinse() {
    let entries = [of(0.0, Noted::Begun), of(45.0, Noted::Rinsed), of(60.0, Noted::Applied)];
    assert_eq!(replay(&entries).sections[0].applied, None);
    let told = record(&planned(&entries), &replay(&entries)).left_out;
    assert_eq!(told, ["nape: minute 60, applied: it was not on then; correct the minute"]);
}

/// What a misspelt section was noted for is told, not planned anew in silence.
#[test]
fn a_section_that_the_plan_lacks_is_told_for_the_rest_of_the_day() {
    let found = rest(&[LogEntry { section: Some("nap".to_owned()), ..of(0.0, Noted::Begun) }]);
    assert!(found.left_out[0].starts_with("lines of \"nap\", which the plan does not have"), "{:?}", found.left_out);
}

/// A level that was read after the toner went on judges no forecast of lifting, however the toner was noted.
#[rstest]
#[case(Noted::Begun)]
#[case(Noted::Applied)]
#[case(Noted::Rinsed)]
fn a_level_read_after_the_toner_judges_no_forecast(#[case] what: Noted) {
    let toner = LogEntry { section: Some("lengths".to_owned()), ..of(60.0, what) };
    let result = LogEntry { level: Some(Level::new(8.0).unwrap()), ..of(90.0, Noted::Result) };
    let entries = [of(0.0, Noted::Begun), of(45.0, Noted::Rinsed), toner, result];
    let found = record(&planned(&[]), &replay(&entries));
    assert_eq!((found.forecasts, found.model_error_levels), (0, None));
    assert_eq!(found.not_judged, ["nape: read after the toner, which is no level of lifting"]);
    assert!(found.to_repeat[0].ends_with("to level 8, read with the toner on"), "{:?}", found.to_repeat);
    assert!(found.pairs.iter().any(|pair| pair.words.ends_with("; read with the toner on")), "{:?}", found.pairs);
    // It is kept as what it is, and teaches no lift.
    let kept = [keep(&planned(&[]), &replay(&entries))];
    assert_eq!((kept[0].section[0].result_level, kept[0].section[0].toned_level), (None, Some(8.0)));
    assert!(strand_readings(&kept).is_empty());
    let learned = lessons(&kept);
    assert_eq!((learned.read_toned, learned.level_off), (1, None));
    assert_eq!(read_records_csv(&records_csv(&kept)).records, kept);
    // Read before it, it does; not where nobody noted since when it is on, which may be the rinse.
    let before = LogEntry { at: Duration::from_min(50.0).unwrap(), ..entries[3].clone() };
    let kept = [keep(&planned(&[]), &replay(&[&entries[..3], std::slice::from_ref(&before)].concat()))];
    let (read, toned, teaches) =
        if what == Noted::Begun { (Some(8.0), None, (1, 0)) } else { (None, Some(8.0), (0, 1)) };
    assert_eq!((kept[0].section[0].result_level, kept[0].section[0].toned_level), (read, toned));
    assert_eq!((strand_readings(&kept).len(), lessons(&kept).read_toned), teaches);
    let found = record(&planned(&[]), &replay(&[&entries[..3], &[before]].concat()));
    assert_eq!((found.forecasts, found.not_judged.len()), teaches);
    let unknown = "; read after the rinse, and when the toner went on is not noted";
    assert_eq!(found.pairs.iter().any(|pair| pair.words.ends_with(unknown)), what != Noted::Begun, "{:?}", found.pairs);
    // Nor does a look at what is rinsed move the forecast; what is still on lightens while another section is toned.
    let look = |rinsed: bool| {
        let toner = entries[2].clone();
        let lines = [
            of(0.0, Noted::Begun),
            of(45.0, if rinsed { Noted::Rinsed } else { Noted::Applied }),
            toner,
            seen(65.0, 8.0),
        ];
        levels_seen(&planned(&[]), &replay(&lines))
    };
    assert_eq!(look(true).levels, []);
    assert_eq!(
        look(true).left_out.iter().map(ToString::to_string).collect::<Vec<_>>(),
        ["nape: level 8 at minute 65: read after the toner, which is no level of lifting"]
    );
    assert_eq!((look(false).levels.len(), look(false).left_out.len()), (1, 0));
}

/// What is kept says what went wrong: a foil that was hot, and whole words, or that some are cut.
#[test]
fn what_went_wrong_is_kept() {
    let entries = [of(0.0, Noted::Begun), foil(20.0, FoilHeat::Hot), of(21.0, Noted::Rinsed)];
    let kept = keep(&planned(&[]), &replay(&entries));
    assert_eq!(kept.incident, ["nape: a foil was hot"]);
    assert!(kept.price.is_some(), "it was not stopped");
    let note = LogEntry { section: None, note: Some("x".repeat(300)), ..of(20.0, Noted::Incident) };
    let cut = &keep(&planned(&[]), &replay(&[note])).incident[0];
    assert_eq!((cut.chars().count(), cut.ends_with("x…")), (200, true));
    assert!(LogEntry { note: Some("  ".to_owned()), ..of(1.0, Noted::Incident) }.checked().is_err());
}

/// By hand: of a service that was stopped with the nape alone on, its products are counted and those of no other section.
#[test]
fn a_stopped_service_costs_what_went_on() {
    let nothing = LogEntry { section: Some("crown".to_owned()), mass: Some(Mass::ZERO), ..of(1.0, Noted::Weighed) };
    let entries = [of(0.0, Noted::Begun), nothing, feels(15.0, Comfort::Burning), of(16.0, Noted::Rinsed)];
    let (before, so_far) = (planned(&[]), replay(&entries));
    let kept = keep(&before, &so_far);
    assert_eq!(kept.section.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(), ["nape"]);
    let lines = before.money.as_ref().unwrap().cost.lines();
    let others = lines.iter().filter(|line| line.kind.code() == "product" || line.kind.code() == "additive");
    let others = others.filter(|line| line.section.as_deref().is_some_and(|section| section != "nape"));
    let left: rust_decimal::Decimal = lines.iter().map(|line| line.amount.decimal()).sum::<rust_decimal::Decimal>()
        - others.map(|line| line.amount.decimal()).sum::<rust_decimal::Decimal>();
    assert_eq!(kept.cost.as_deref(), Some(left.to_string().as_str()));
    assert!(record(&before, &so_far).to_repeat.iter().all(|line| !line.starts_with("crown")));
    assert!(read_records(&record_line(&kept)).problems.is_empty());
}

/// Rinsed at 118, 68 min beyond its 50: put on again it stays so.
#[test]
fn too_long_is_not_taken_back_by_another_application() {
    let service = [
        of(0.0, Noted::Begun),
        of(20.0, Noted::Applied),
        of(118.0, Noted::Rinsed),
        feels(119.0, Comfort::Fine),
        strand(120.0, Elasticity::Good),
        of(125.0, Noted::Begun),
        seen(130.0, 7.6),
    ];
    let found = record(&planned(&service), &replay(&service));
    assert!(found.instructions.iter().any(|one| one.verdict == Verdict::Stop && one.text.contains("68 min beyond")));
    assert_eq!(decided(&service), Again::TreatOnly);
    assert!(!keep(&planned(&service), &replay(&service)).incident.is_empty());
    assert!(rest(&service).at_once[0].contains("68 min beyond"), "{:?}", rest(&service).at_once);
}

/// What is on, its begin not noted, is not begun again. All on at 20 after the 18 min that are planned, it was begun at 2: it comes off
/// by 52, and at 69 it is 17 min beyond.
#[test]
fn what_is_on_is_not_planned_anew() {
    let found = rest(&[of(20.0, Noted::Applied), feels(30.0, Comfort::Fine)]);
    let day = found.timeline.unwrap();
    let nape = day.sections.iter().find(|one| one.name == "nape").unwrap();
    assert!(nape.start.min() <= 20.0 && nape.rinse.min() <= 52.0, "{nape:?}");
    assert_eq!(found.left_out, ["nape: its begin is not noted: taken as on from minute 2, as planned (note --begun)"]);
    let late = [of(20.0, Noted::Applied), seen(69.0, 8.0)];
    let found = record(&planned(&late), &replay(&late));
    assert!(found.instructions.iter().any(|one| one.verdict == Verdict::Stop && one.text.contains("17 min beyond")));
    assert_eq!(decided(&late), Again::TreatOnly);
    // A strand that is tested before is no look at what is on.
    assert!(rest(&[strand(0.0, Elasticity::Good)]).left_out.is_empty());
    assert!(
        rest(&[seen(50.0, 8.0)]).left_out.iter().any(|text| text.starts_with("nape: it was looked at, and its begin"))
    );
}

/// Where a foil swelled, salts may be in all of the hair: nothing stays on, and nothing more goes on.
#[test]
fn a_foil_that_swelled_elsewhere_lets_nothing_stay_on() {
    let crown = |entry: LogEntry| LogEntry { section: Some("crown".to_owned()), ..entry };
    let entries = [
        of(0.0, Noted::Begun),
        feels(21.0, Comfort::Fine),
        crown(of(26.0, Noted::Begun)),
        crown(foil(27.0, FoilHeat::Swollen)),
        seen(28.0, 7.6),
    ];
    let (moved, so_far) = (planned(&entries), replay(&entries));
    assert!(second_applications(&moved, &so_far).iter().all(|one| one.decision == Again::TreatOnly));
    assert!(after_levels(&moved, &so_far).iter().all(|one| one.next.to_string() == "rinse"));
}

/// A tone is not offered without a word of it either.
#[test]
fn a_foil_that_swelled_elsewhere_is_told_before_the_toner() {
    let crown = |entry: LogEntry| LogEntry { section: Some("crown".to_owned()), ..entry };
    let swollen = [crown(of(0.0, Noted::Begun)), crown(foil(20.0, FoilHeat::Swollen)), crown(of(21.0, Noted::Rinsed))];
    for level in [9.0, 7.6] {
        let nape =
            [of(0.0, Noted::Begun), seen(44.0, level), of(44.0, Noted::Rinsed), strand(45.0, Elasticity::Reduced)];
        let entries = [&swollen[..], &nape, &[feels(46.0, Comfort::Fine)]].concat();
        let all = second_applications(&planned(&entries), &replay(&entries));
        let one = all.iter().find(|one| one.section == "nape").unwrap();
        assert!(matches!(one.decision, Again::StopAndTone | Again::NextVisit), "{one:?}");
        assert!(one.reasons.iter().any(|why| why.starts_with("a foil of crown swelled")), "{:?}", one.reasons);
    }
}

/// What is no toner comes off where its strand returns slowly, be it forecast or not.
#[test]
fn weak_hair_under_colour_comes_off_too() {
    let text = std::fs::read_to_string("examples/grey-blend.toml").unwrap();
    let plan = plan_with(&parse(&text, Format::Toml).unwrap(), &Evidence::default()).unwrap();
    assert!(plan.lift.iter().all(|lift| lift.section != "regrowth"));
    let at = |entry: LogEntry| LogEntry { section: Some("regrowth".to_owned()), ..entry };
    let entries = [at(of(0.0, Noted::Begun)), feels(5.0, Comfort::Fine), at(strand(10.0, Elasticity::Reduced))];
    let off = rest_of_service(&plan, &replay(&entries), &[]).at_once;
    assert_eq!(off, ["regrowth: rinse now: a strand returns slowly"]);
}

/// Rinsed at 300 is a slip for 30: once that is corrected, the begin at 40 counts and is not left out.
#[test]
fn what_counts_after_a_correction_is_not_left_out() {
    let entries = [
        of(0.0, Noted::Begun),
        of(300.0, Noted::Rinsed),
        of(40.0, Noted::Begun),
        of(30.0, Noted::Rinsed),
        of(40.0, Noted::Begun),
    ];
    let so_far = replay(&entries);
    assert_eq!(
        (so_far.left_out.len(), so_far.now.min(), so_far.sections[0].begun.map(Duration::min)),
        (0, 40.0, Some(40.0))
    );
    assert_eq!(replay(&entries[..3]).left_out.len(), 1);
}

/// A stop of one mix takes off that mix and begins nothing more; what is on and well stays until its time.
#[test]
fn a_stop_of_one_mix_leaves_the_others_alone() {
    let text = std::fs::read_to_string("examples/soft-gradient.toml").unwrap();
    // The first 9 % is that of the powder, the second that of the clay.
    let parts: Vec<&str> = text.split("strongest_developer_ww_percent = 9\n").collect();
    let clay =
        parts.iter().position(|part| part.ends_with("on_scalp = false\n") && part.contains("Foam Line clay")).unwrap();
    let most = |part: usize| if part == clay { 3 } else { 9 };
    let text = parts.iter().enumerate().fold(String::new(), |all, (i, part)| match i {
        0 => (*part).to_owned(),
        _ => format!("{all}strongest_developer_ww_percent = {}\n{part}", most(i - 1)),
    });
    let plan = plan_with(&parse(&text, Format::Toml).unwrap(), &Evidence::default()).unwrap();
    assert!(plan.blocked);
    let at = |section: &str| LogEntry { section: Some(section.to_owned()), ..of(0.0, Noted::Begun) };
    let of_day = |section: &str| rest_of_service(&plan, &replay(&[at(section), feels(5.0, Comfort::Fine)]), &[]);
    let nape = of_day("nape");
    assert!(nape.at_once.is_empty() && nape.timeline.is_none(), "{:?}", nape.at_once);
    assert!(nape.why_not.unwrap().starts_with("nothing more is begun: the plan says stop: "));
    assert!(of_day("hairline").at_once[0].starts_with("hairline: the plan says stop: "));
}

/// A minute that was corrected, or that counts for nothing, is not what time it is.
#[test]
fn a_slipped_minute_is_not_the_time() {
    let now = |entries: &[LogEntry]| replay(entries).now.min();
    let on = [of(0.0, Noted::Begun), of(20.0, Noted::Applied), feels(45.0, Comfort::Fine)];
    assert_eq!(now(&[&on[..], &[of(470.0, Noted::Rinsed), of(47.0, Noted::Rinsed)]].concat()), 47.0);
    assert_eq!(now(&[&on[..], &[of(47.0, Noted::Rinsed), of(300.0, Noted::Applied)]].concat()), 47.0);
    assert_eq!(now(&on), 45.0);
}

/// On from 0 to 30 and from 40 to 60: a begin at 28 is neither of them.
#[test]
fn a_begin_of_before_does_not_move_the_second_application() {
    let on = [of(0.0, Noted::Begun), of(30.0, Noted::Rinsed), of(40.0, Noted::Begun), of(60.0, Noted::Rinsed)];
    let so_far = replay(&[&on[..], &[of(28.0, Noted::Begun)]].concat());
    assert_eq!((so_far.sections[0].carried().map(Duration::min), so_far.left_out.len()), (Some(50.0), 1));
}

/// Hair that returns slowly is toned gently: the toner is no lightener that has to come off.
#[test]
fn a_toner_on_weak_hair_is_not_rinsed_at_once() {
    let toner = |entry: LogEntry| LogEntry { section: Some("lengths".to_owned()), ..entry };
    let entries = [
        of(0.0, Noted::Begun),
        feels(21.0, Comfort::Fine),
        of(47.0, Noted::Rinsed),
        toner(of(50.0, Noted::Begun)),
        toner(strand(53.0, Elasticity::Reduced)),
    ];
    assert!(rest(&entries).at_once.is_empty(), "{:?}", rest(&entries).at_once);
}

/// A bowl that was mixed and thrown away was used, and a foil that is hot is kept once.
#[test]
fn what_was_mixed_was_used() {
    let left = LogEntry {
        section: Some("crown".to_owned()),
        mass: Some(Mass::from_g(40.0).unwrap()),
        ..of(1.0, Noted::LeftOver)
    };
    let kept = |entries: &[LogEntry]| keep(&planned(&[]), &replay(entries));
    let stopped = kept(&[of(0.0, Noted::Begun), left, feels(5.0, Comfort::Burning)]);
    assert_eq!(stopped.section.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(), ["nape", "crown"]);
    assert_eq!(kept(&[of(0.0, Noted::Begun), foil(20.0, FoilHeat::Hot)]).incident.len(), 1);
}
