//! One decision on a second application: what comes before what is common practice; days and minutes are worked out by hand.

use super::noted::{feels, foil, of, seen, strand};
use foilwork::{
    colour::Level,
    lift::Strain,
    reader::Format,
    record::{
        Again, Comfort, FoilHeat, LogEntry, Noted, SecondApplication, after_levels, instructions, levels_seen,
        read_log, record, replay, second_applications,
    },
    service::{Evidence, Plan, parse, plan, plan_with, shape::Elasticity},
};

/// The nape goes from level 6 to 9 and is planned for 18 min of applying and 30 more, on 25 November 2026.
fn gradient() -> Plan {
    plan(&parse(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap()).unwrap()
}

/// On for 48 min, seen at `level` and rinsed, and then what else is noted.
fn rinsed_at(level: f64, more: Vec<LogEntry>) -> Vec<LogEntry> {
    [vec![of(0.0, Noted::Begun), seen(48.0, level), of(48.0, Noted::Rinsed)], more].concat()
}

fn decided(entries: &[LogEntry]) -> SecondApplication {
    let mut found = second_applications(&gradient(), &replay(entries));
    assert_eq!(found.len(), 1);
    found.remove(0)
}

fn why_not(one: &SecondApplication, what: Again) -> &str {
    one.rejected.iter().find(|rejected| rejected.what == what).map_or("", |rejected| rejected.why.as_str())
}

#[test]
fn a_level_that_is_there_is_toned() {
    let one = decided(&rinsed_at(9.0, Vec::new()));
    assert_eq!((one.decision, one.fresh, one.visits.len()), (Again::StopAndTone, None, 0));
    assert!(why_not(&one, Again::FreshMix).contains("oxidises the fibre for nothing"));
    // Nobody tested it: that is said before the toner.
    assert!(one.reasons.iter().any(|why| why.contains("test a damp strand before the toner")), "{:?}", one.reasons);
}

/// What is left at the longest of 50 min is one figure with its bounds, whether the plan is told what was seen or the log is.
#[test]
fn a_fresh_mix_after_the_limit_is_one_figure_for_plan_and_log() {
    let file = parse(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap();
    for level in [7.0, 7.5, 8.5] {
        let so_far = replay(&[of(0.0, Noted::Begun), seen(50.0, level)]);
        let seen = levels_seen(&gradient(), &so_far).levels;
        assert_eq!(seen[0].to_string(), format!("nape={level}@50"));
        let moved = plan_with(&file, &Evidence { seen, ..Evidence::default() }).unwrap();
        let (by_plan, by_log) = (&moved.lift[0].seen[0], &after_levels(&moved, &so_far)[0]);
        assert_eq!((by_plan.next, &by_plan.why), (by_log.next, &by_log.why));
        let chance = second_applications(&moved, &so_far)[0].fresh_chance;
        let [low, best, high] = chance.to_array().map(|chance| format!("{:.0}", chance.percent()));
        assert!(by_plan.why.contains(&format!(" {best} ({low} to {high}) of 100 cases")), "{}", by_plan.why);
    }
}

#[test]
fn what_is_on_and_not_due_is_left_on() {
    let one = decided(&[of(0.0, Noted::Begun), seen(30.0, 8.0)]);
    assert_eq!((one.decision, one.on_hair.min()), (Again::GoOn, 30.0));
    // 48 min less 30.
    assert!(one.reasons.iter().any(|why| why.starts_with("18 min are left")), "{:?}", one.reasons);
}

/// Half a level short, good elasticity, a quiet scalp: a fresh mix, no longer than the first application, and what is unknown
/// stands in its way.
#[test]
fn a_fresh_mix_needs_a_known_condition() {
    let known = vec![strand(50.0, Elasticity::Good), feels(50.0, Comfort::Fine)];
    let one = decided(&rinsed_at(8.5, known.clone()));
    assert_eq!((one.decision, one.applications), (Again::FreshMix, 1), "{one:#?}");
    let fresh = one.fresh.unwrap();
    assert!(fresh.low().min() >= 5.0 && fresh.high().min() <= 48.0 && one.fresh_chance.best().percent() >= 50.0);
    for missing in 0..2 {
        let half = decided(&rinsed_at(8.5, vec![known[missing].clone()]));
        assert_eq!(half.decision, Again::TestFirst);
        let asks = ["nobody asked how the scalp feels", "elasticity is not noted"][missing];
        assert!(why_not(&half, Again::FreshMix).contains(asks), "{half:#?}");
    }
}

/// A look 18 min before the rinse is not the level that it came to.
#[test]
fn an_old_look_is_read_anew_and_a_result_counts_first() {
    let known = [strand(50.0, Elasticity::Good), feels(50.0, Comfort::Fine)];
    let looked = [vec![of(0.0, Noted::Begun), seen(30.0, 8.5), of(48.0, Noted::Rinsed)], known.to_vec()].concat();
    let one = decided(&looked);
    assert_eq!(one.decision, Again::TestFirst);
    assert!(why_not(&one, Again::FreshMix).contains("seen 18 min before the rinse"), "{one:#?}");
    let result = LogEntry { what: Noted::Result, ..seen(55.0, 9.0) };
    assert_eq!(decided(&[looked, vec![result]].concat()).decision, Again::StopAndTone);
}

/// 48 min at 3.9 % on the hair are (48 * 3.9 / 40 / 4)^0.5 = 1.08 of a usual application: two to six weeks, so from 9 December.
#[test]
fn hair_that_is_weakened_waits_for_another_visit() {
    let one = decided(&rinsed_at(8.5, vec![strand(50.0, Elasticity::Reduced), feels(50.0, Comfort::Fine)]));
    assert_eq!((one.decision, one.not_before.unwrap().to_string().as_str()), (Again::NextVisit, "2026-12-09"));
    assert_eq!(one.wait.to_array().map(|weeks| weeks.weeks()), [2.0, 4.0, 6.0]);
    assert!(!one.visits.is_empty() && why_not(&one, Again::FreshMix).contains("returns slowly"));
    assert!(why_not(&one, Again::StopAndTone).contains("toned at"));
}

#[test]
fn hair_and_scalp_come_before_the_level() {
    // Even at the level, broken hair is not toned.
    let broken = decided(&rinsed_at(9.0, vec![strand(50.0, Elasticity::Poor)]));
    assert_eq!(broken.decision, Again::TreatOnly);
    assert!(why_not(&broken, Again::StopAndTone).contains("stays stretched or breaks"));
    let burnt = decided(&rinsed_at(8.5, vec![strand(50.0, Elasticity::Good), feels(50.0, Comfort::Burning)]));
    assert_eq!(burnt.decision, Again::TreatOnly);
    let itches = decided(&rinsed_at(8.5, vec![strand(50.0, Elasticity::Good), feels(50.0, Comfort::Itching)]));
    assert_eq!(itches.decision, Again::NextVisit);
    assert!(why_not(&itches, Again::FreshMix).contains("the scalp itches since minute 50"));
}

/// Twice on the same hair is the most in a visit: 48 + 30 = 78 min, all together.
#[test]
fn a_third_application_is_not_for_today() {
    let more = vec![
        strand(50.0, Elasticity::Good),
        feels(50.0, Comfort::Fine),
        of(60.0, Noted::Begun),
        of(70.0, Noted::Applied),
        seen(90.0, 8.5),
        of(90.0, Noted::Rinsed),
    ];
    let entries = rinsed_at(8.0, more);
    let one = decided(&entries);
    assert_eq!((one.decision, one.applications, one.on_hair.min()), (Again::NextVisit, 2, 78.0));
    assert!(why_not(&one, Again::FreshMix).contains("put on 2 times today"), "{one:#?}");
    assert!(one.strain_with_fresh > Strain::Usual);
    // The record counts both, and judges no forecast by them.
    let found = record(&gradient(), &replay(&entries));
    let on_hair = found.pairs.iter().find(|pair| pair.what.code() == "on-hair-min").unwrap();
    assert_eq!(on_hair.actual, 78.0);
    assert!(found.to_repeat[0].contains("78 min from the first strand, in 2 applications"), "{:?}", found.to_repeat);
    // What is seen on the fresh mix does not move a forecast of the first.
    let levels = foilwork::record::levels_seen(&gradient(), &replay(&entries));
    assert_eq!((levels.levels.len(), levels.left_out.len()), (1, 1));
}

/// What was noted before a second application says nothing of the hair after it: neither a good strand nor the level of then.
#[test]
fn a_second_application_is_judged_by_what_is_found_after_it() {
    let result = LogEntry { what: Noted::Result, ..seen(52.0, 8.0) };
    let again = [of(60.0, Noted::Begun), seen(80.0, 9.0), of(80.0, Noted::Rinsed)];
    let of_first = |elasticity| vec![result.clone(), strand(50.0, elasticity), feels(50.0, Comfort::Fine)];
    let good = decided(&rinsed_at(8.0, [of_first(Elasticity::Good), again.to_vec()].concat()));
    assert_eq!((good.decision, good.level), (Again::StopAndTone, Level::new(9.0).unwrap()));
    assert!(good.reasons.iter().any(|why| why.contains("elasticity is not noted")), "{:?}", good.reasons);
    // A weak strand has not become a strong one.
    let weak = decided(&rinsed_at(8.0, [of_first(Elasticity::Poor), again.to_vec()].concat()));
    assert_eq!(weak.decision, Again::TreatOnly);
}

/// A result that is older than a look does not win over it.
#[test]
fn the_level_read_last_counts() {
    let result = LogEntry { what: Noted::Result, ..seen(32.0, 8.0) };
    let one = decided(&[of(0.0, Noted::Begun), seen(30.0, 8.0), result, seen(40.0, 9.0)]);
    assert_eq!((one.decision, one.level), (Again::StopAndTone, Level::new(9.0).unwrap()));
}

/// What swelled, was hot, burned or itched once that day is not taken back by a later rinse or a better answer.
#[test]
fn the_worst_of_the_day_counts() {
    let known = [strand(50.0, Elasticity::Good), feels(50.0, Comfort::Fine)];
    let with = |before: &[LogEntry]| decided(&rinsed_at(8.5, [before, &known].concat()));
    let swollen = with(&[foil(15.0, FoilHeat::Swollen), foil(18.0, FoilHeat::Cool)]);
    assert_eq!((swollen.decision, swollen.visits.len(), swollen.not_before), (Again::TreatOnly, 0, None));
    assert!(why_not(&swollen, Again::FreshMix).contains("think of metal salts"), "{swollen:#?}");
    let hot = with(&[foil(15.0, FoilHeat::Hot), foil(18.0, FoilHeat::Cool)]);
    assert_eq!(hot.decision, Again::TestFirst);
    assert!(why_not(&hot, Again::FreshMix).contains("a foil was hot"), "{hot:#?}");
    // Metal salts are seldom in one strand alone.
    let elsewhere = with(&[LogEntry { section: Some("crown".to_owned()), ..foil(15.0, FoilHeat::Swollen) }]);
    assert_eq!(elsewhere.decision, Again::TestFirst);
    assert!(why_not(&elsewhere, Again::FreshMix).contains("a foil of crown swelled"), "{elsewhere:#?}");
    let burned = with(&[feels(20.0, Comfort::Burning)]);
    assert_eq!(burned.decision, Again::TreatOnly);
    assert!(burned.reasons[0].contains("burning or pain at minute 20"), "{burned:#?}");
    let itched = with(&[feels(20.0, Comfort::Itching)]);
    assert_eq!(itched.decision, Again::NextVisit);
    assert!(why_not(&itched, Again::FreshMix).contains("the scalp itched at minute 20"), "{itched:#?}");
}

/// A service that was not to be begun is not gone on with, and hair that was weak before is not put on twice.
#[test]
fn what_the_plan_found_is_asked_too() {
    let entries = rinsed_at(8.5, vec![strand(50.0, Elasticity::Good), feels(50.0, Comfort::Fine)]);
    let by = |from: &str, to: &str| {
        let text = include_str!("../../examples/soft-gradient.toml");
        assert!(text.contains(from));
        let plan = plan(&parse(&text.replacen(from, to, 1), Format::Toml).unwrap()).unwrap();
        (plan.blocked, second_applications(&plan, &replay(&entries)).remove(0))
    };
    let (blocked, salts) = by("history = [\"lightened\"]", "history = [\"lightened\", \"metallic-salts\"]");
    assert_eq!((blocked, salts.decision, salts.visits.len()), (true, Again::TreatOnly, 0));
    assert!(salts.reasons.iter().any(|why| why.contains("metallic salts in the history")), "{salts:#?}");
    let (blocked, weak) = by("elasticity = \"good\"", "elasticity = \"reduced\"");
    assert_eq!((blocked, weak.decision), (false, Again::NextVisit));
    assert!(why_not(&weak, Again::FreshMix).contains("elasticity was reduced before the service"), "{weak:#?}");
}

/// A strand and a scalp of before the mixture say nothing of them after it.
#[test]
fn what_was_tested_before_the_rinse_is_tested_again() {
    let early = [of(0.0, Noted::Begun), strand(0.0, Elasticity::Good), feels(0.0, Comfort::Fine)];
    let one = decided(&[&early[..], &[seen(48.0, 8.5), of(48.0, Noted::Rinsed)]].concat());
    assert_eq!(one.decision, Again::TestFirst);
    for asks in
        ["tested at minute 0, before minute 48: test again", "asked about at minute 0, before minute 48: ask again"]
    {
        assert!(why_not(&one, Again::FreshMix).contains(asks), "{one:#?}");
    }
}

/// Time is left, 30 of 48 min, and hair or scalp do not bear it.
#[test]
fn what_hurts_is_not_left_on() {
    for sign in [strand(30.0, Elasticity::Reduced), feels(30.0, Comfort::Itching)] {
        let one = decided(&[of(0.0, Noted::Begun), seen(30.0, 8.0), sign]);
        assert_eq!(one.decision, Again::NextVisit);
        assert!(one.reasons[0].starts_with("rinse now: ") && !why_not(&one, Again::GoOn).is_empty(), "{one:#?}");
    }
}

/// 90 min on and not rinsed are 40 beyond the 50 of the powder; 50 and 10 without a rinse between them are 10 beyond.
#[test]
fn what_is_on_for_too_long_is_rinsed_before_all_else() {
    let known = [strand(90.0, Elasticity::Good), feels(90.0, Comfort::Fine)];
    let one = decided(&[&[of(0.0, Noted::Begun), seen(90.0, 8.5)], &known[..]].concat());
    assert_eq!(one.decision, Again::TreatOnly);
    assert_eq!(one.reasons[0], "rinse now: 40 min beyond the longest that the product allows");
    let again = [of(0.0, Noted::Begun), of(50.0, Noted::Begun), seen(60.0, 8.0)];
    let one = decided(&again);
    // Nobody knows whether it was put on twice: that is asked, and not counted.
    assert_eq!((one.decision, one.applications, one.on_hair.min()), (Again::TreatOnly, 1, 60.0));
    assert_eq!(one.reasons[0], "rinse now: 10 min beyond the longest that the product allows");
    let told = instructions(&replay(&again));
    assert!(told.iter().any(|one| one.text.starts_with("no rinse was noted before minute 50")), "{told:#?}");
    // A rinse that is noted late is that one: 45 and 10 min, and twice are the most.
    let late = [&again[..], &[of(45.0, Noted::Rinsed)]].concat();
    let one = decided(&late);
    assert_eq!((one.applications, one.on_hair.min()), (2, 55.0));
    let rinsed = decided(&[&late[..], &[of(60.0, Noted::Rinsed)]].concat());
    assert_eq!(rinsed.decision, Again::NextVisit);
    assert!(why_not(&rinsed, Again::FreshMix).contains("put on 2 times today"), "{rinsed:#?}");
}

fn changed(from: &str, to: &str) -> Plan {
    let text = include_str!("../../examples/soft-gradient.toml");
    assert!(text.contains(from));
    plan(&parse(&text.replacen(from, to, 1), Format::Toml).unwrap()).unwrap()
}

/// Planned for 5 + 15 = 20 min, allowed for 50: in minute 25 the plan's time is up and the product leaves 25. Counted from the end
/// of an application of 10 min it leaves 10 + 50 - 25 = 35. Where the shelf does not say, the plan's time is the longest.
#[test]
fn the_planned_time_is_not_the_longest_that_the_product_allows() {
    let text = include_str!("../../examples/soft-gradient.toml");
    let own = "longest_min = 50\nlongest_counts_from = \"first-strand\"\n";
    assert!(text.contains(own));
    let at = |minute: f64, own_instead: &str| {
        let text = text.replacen(own, own_instead, 1);
        let text = text.replacen("apply_min = 18\ndevelop_min = 30", "apply_min = 5\ndevelop_min = 15", 1);
        let entries = [of(0.0, Noted::Begun), of(10.0, Noted::Applied), seen(minute, 8.0)];
        second_applications(&plan(&parse(&text, Format::Toml).unwrap()).unwrap(), &replay(&entries)).remove(0)
    };
    let one = at(25.0, own);
    assert_eq!(one.decision, Again::GoOn, "{one:#?}");
    assert!(one.reasons[1].starts_with("the planned time is up; 25 min are left of the longest"), "{one:#?}");
    let over = at(55.0, own);
    assert_ne!(over.decision, Again::GoOn);
    assert_eq!(over.reasons[0], "rinse now: 5 min beyond the longest that the product allows");
    let from_end = at(25.0, &own.replace("first-strand", "end-of-application"));
    assert!(from_end.reasons[1].contains("35 min are left"), "{from_end:#?}");
    let unknown = at(25.0, "");
    assert_ne!(unknown.decision, Again::GoOn);
    assert!(unknown.reasons[0].starts_with("rinse now: 5 min beyond the planned time"), "{unknown:#?}");
}

/// The gloss of the crown, 3 + 25 min where its shades allow 20, says nothing of the nape, and of the crown only that it is not
/// toned so; the nape's own 18 + 40 min where the powder allows 50 do.
#[test]
fn a_stop_of_the_plan_counts_where_it_is_about() {
    let known = vec![strand(50.0, Elasticity::Good), feels(50.0, Comfort::Fine)];
    let nape = rinsed_at(8.5, known);
    let gloss = changed("apply_min = 3\ndevelop_min = 12", "apply_min = 3\ndevelop_min = 25");
    assert!(gloss.blocked);
    assert_eq!(second_applications(&gloss, &replay(&nape))[0].decision, Again::FreshMix);
    let crown: Vec<LogEntry> = rinsed_at(8.0, Vec::new())
        .into_iter()
        .map(|entry| LogEntry { section: Some("crown".to_owned()), ..entry })
        .collect();
    let crown = second_applications(&gloss, &replay(&crown)).remove(0);
    assert_eq!(crown.decision, Again::StopAndTone);
    assert!(crown.reasons.iter().any(|why| why.starts_with("the plan says stop to its toner: ")), "{crown:#?}");
    let own = changed("apply_min = 18\ndevelop_min = 30", "apply_min = 18\ndevelop_min = 40");
    assert_eq!(second_applications(&own, &replay(&nape))[0].decision, Again::TreatOnly);
}

/// Nobody puts lightener on and on anew within 3 min: the begin is corrected, and 48 - 3 = 45 min count, once.
#[test]
fn a_begin_noted_again_at_once_is_corrected() {
    let entries = |second: f64| {
        [of(0.0, Noted::Begun), of(second, Noted::Begun), seen(48.0, 8.5), of(48.0, Noted::Rinsed)]
            .into_iter()
            .chain([strand(50.0, Elasticity::Good), feels(50.0, Comfort::Fine)])
            .collect::<Vec<_>>()
    };
    let one = decided(&entries(3.0));
    assert_eq!((one.decision, one.applications, one.on_hair.min()), (Again::FreshMix, 1, 45.0));
    let later = decided(&entries(20.0));
    assert_eq!((later.decision, later.applications, later.on_hair.min()), (Again::TestFirst, 1, 48.0));
    // What was noted between says that it was on.
    let mut noted = entries(3.0);
    noted.insert(1, of(2.0, Noted::Applied));
    assert_eq!(decided(&noted).on_hair.min(), 48.0);
    // A level of after the second begin is not told to be one of after a rinse.
    let left_out = foilwork::record::levels_seen(&gradient(), &replay(&entries(20.0))).left_out;
    assert!(left_out.len() == 1 && left_out[0].why.contains("seen after it was begun again"), "{left_out:?}");
}

/// The log and the decision do not say two things of one itch.
#[test]
fn an_itch_asks_for_the_same_everywhere() {
    let entries = [of(0.0, Noted::Begun), seen(30.0, 8.0), feels(30.0, Comfort::Itching)];
    let follows = foilwork::record::instructions(&replay(&entries));
    let itch = follows.iter().find(|one| one.text.contains("itching at minute 30")).unwrap();
    assert!(itch.text.starts_with("rinse now"));
    assert!(decided(&entries).reasons.contains(&itch.text));
}

/// What an estimate says is told with its bounds.
#[test]
fn the_chance_of_a_fresh_mix_has_bounds() {
    let one = decided(&rinsed_at(8.5, vec![strand(50.0, Elasticity::Good), feels(50.0, Comfort::Fine)]));
    let [low, _, high] = one.fresh_chance.to_array().map(|chance| chance.percent());
    assert!(low < high && high < 99.5);
    let bounds = format!("({low:.0} to {high:.0}) of 100 cases");
    assert!(one.reasons.iter().any(|why| why.contains(&bounds)), "{bounds}: {:?}", one.reasons);
    let by_the_estimate = one.reasons.iter().any(|why| why.contains("by the estimate, not by its bounds"));
    assert_eq!(by_the_estimate, low < 50.0);
}

#[test]
fn without_a_level_nothing_is_decided() {
    assert!(second_applications(&gradient(), &replay(&[of(0.0, Noted::Begun)])).is_empty());
    let lost = read_log("{\"format\":1,\"at_min\":9,\"what\":\"seen\",\"section\":\"elsewhere\",\"level\":7}\n");
    assert!(second_applications(&gradient(), &replay(&lost.entries)).is_empty());
}
