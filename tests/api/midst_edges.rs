//! A service in its midst at its edges: minutes that just count, what is rejected beside each decision, and stops of a plan. Minutes are worked
//! out by hand; the nape goes from level 6 to 9, is planned for 18 + 30 min and may stay on for 50, or as in `due` for 5 + 15.

use super::{
    due::{OWN, doors, file, log},
    noted::{feels, foil, of, seen, strand},
};
use foilwork::{
    finding::{Finding, Reason, Rule, Verdict},
    lift::Strain,
    quantity::Mass,
    reader::Format,
    record::{
        Again, Comfort, Compared, FoilHeat, LogEntry, Noted, RestOfService, SecondApplication, levels_seen, record,
        replay, rest_of_service, second_applications,
    },
    service::{Plan, parse, plan, shape::Elasticity},
};
use rstest::rstest;
use std::sync::LazyLock;

static GRADIENT: LazyLock<Plan> =
    LazyLock::new(|| plan(&parse(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap()).unwrap());

fn crown(entry: LogEntry) -> LogEntry {
    LogEntry { section: Some("crown".to_owned()), ..entry }
}

fn result(at: f64, level: f64) -> LogEntry {
    LogEntry { what: Noted::Result, ..seen(at, level) }
}

/// What is decided of the nape.
fn decided(entries: &[LogEntry]) -> SecondApplication {
    let all = second_applications(&GRADIENT, &replay(entries));
    all.into_iter().find(|one| one.section == "nape").unwrap()
}

/// On for 48 min, seen then and rinsed, and then what else is noted.
fn rinsed_at(level: f64, more: &[LogEntry]) -> SecondApplication {
    decided(&[&[of(0.0, Noted::Begun), seen(48.0, level), of(48.0, Noted::Rinsed)], more].concat())
}

fn known(at: f64) -> [LogEntry; 2] {
    [strand(at, Elasticity::Good), feels(at, Comfort::Fine)]
}

fn rejected(one: &SecondApplication) -> Vec<Again> {
    one.rejected.iter().map(|one| one.what).collect()
}

/// Of 20 min planned 10 are left after 10, where the product allows 50 and where it allows just these 20; the plan tells the chance, and its
/// words are those of the look.
#[test]
fn before_the_planned_minute_the_words_are_those_of_the_plan() {
    for own in [OWN, "longest_min = 20\nlongest_counts_from = \"first-strand\"\n"] {
        let found = doors(own, &log(Some((10.0, 8.0)), 10.0));
        assert_eq!(
            (found.note.decision, found.note.reasons[1].as_str()),
            (Again::GoOn, "10 min are left of the planned time")
        );
        assert_eq!(found.after.why, found.sheet.why);
        assert_ne!(found.after.why, found.note.reasons[1]);
    }
}

#[test]
fn what_is_missing_is_said_in_levels() {
    let says = |level: f64| doors(OWN, &log(Some((10.0, level)), 10.0)).note.reasons.remove(0);
    for (level, missing) in [(8.0, "1 level"), (7.5, "1.5 levels"), (8.5, "0.5 levels"), (7.0, "2 levels")] {
        assert!(says(level).contains(&format!(" is seen, {missing} short of ")), "{}", says(level));
    }
}

/// What was not taken stands beside each decision, each once.
#[test]
fn what_is_not_taken_is_told_once() {
    use Again::{FreshMix, GoOn, NextVisit, StopAndTone};
    let on = |level: f64, more: &[LogEntry]| decided(&[&[of(0.0, Noted::Begun), seen(30.0, level)], more].concat());
    let itches = [feels(30.0, Comfort::Itching)];
    let there = on(9.0, &[]);
    assert_eq!((there.decision, rejected(&there)), (StopAndTone, vec![GoOn, FreshMix]));
    assert_eq!(there.rejected[0].why, "the level is there");
    let itching = on(9.0, &itches);
    assert_eq!((itching.decision, rejected(&itching)), (StopAndTone, vec![GoOn, FreshMix]));
    assert_eq!(itching.rejected[0].why, "rinse now: itching at minute 30; look at the scalp");
    let rinsed = rinsed_at(9.0, &[]);
    assert_eq!((rinsed.decision, rejected(&rinsed)), (StopAndTone, vec![FreshMix]));
    let goes_on = on(8.0, &[]);
    assert_eq!((goes_on.decision, rejected(&goes_on)), (GoOn, vec![FreshMix, StopAndTone]));
    let fresh = rinsed_at(8.5, &known(50.0));
    assert_eq!((fresh.decision, rejected(&fresh)), (FreshMix, vec![StopAndTone, NextVisit]));
    let next = on(8.0, &itches);
    assert_eq!((next.decision, rejected(&next)), (NextVisit, vec![GoOn, StopAndTone, FreshMix]));
}

/// The level is there: what is minded before the toner, and no more than that.
#[test]
fn the_toner_is_minded_by_strand_and_scalp() {
    let minded = |more: &[LogEntry]| rinsed_at(9.0, more).reasons[1..].to_vec();
    let (good, itches) = (strand(50.0, Elasticity::Good), feels(50.0, Comfort::Itching));
    assert!(minded(&known(50.0)).is_empty());
    let (scalp, untested) = (
        "the scalp itches: look at it before the toner",
        "elasticity is not noted: test a damp strand before the toner",
    );
    assert_eq!(minded(&[good, itches.clone()]), [scalp]);
    assert_eq!(minded(&[itches]), [untested, scalp]);
    let slow = minded(&[strand(50.0, Elasticity::Reduced), feels(50.0, Comfort::Fine)]);
    assert_eq!(slow, ["a strand returns slowly: tone gently, treat, test again"]);
}

/// Rinsed in minute 48: what is tested and asked in that minute counts, a minute before it does not. A look of five minutes before the rinse is
/// the level it came to, one of six is not; where a result is as late, that counts.
#[test]
fn what_is_known_is_known_since_the_rinse() {
    let open = |one: &SecondApplication| {
        one.rejected.iter().find(|one| one.what == Again::FreshMix).map(|one| one.why.clone())
    };
    assert_eq!(rinsed_at(8.5, &known(48.0)).decision, Again::FreshMix);
    let early = rinsed_at(8.5, &known(47.0));
    let [tested, asked] = [
        "elasticity was tested at minute 47, before minute 48: test again",
        "the scalp was asked about at minute 47, before minute 48: ask again",
    ];
    assert_eq!((early.decision, open(&early)), (Again::TestFirst, Some(format!("{tested}; {asked}"))));
    let looked = |look: &[LogEntry]| {
        decided(&[&[of(0.0, Noted::Begun)], look, &[of(48.0, Noted::Rinsed)], &known(50.0)[..]].concat())
    };
    assert_eq!(looked(&[seen(43.0, 8.5)]).decision, Again::FreshMix);
    let old = "the level was seen 6 min before the rinse: read it on a clean strand";
    assert_eq!(open(&looked(&[seen(42.0, 8.5)])).as_deref(), Some(old));
    assert_eq!(looked(&[seen(40.0, 8.25), result(40.0, 8.5)]).decision, Again::FreshMix);
    let after = looked(&[result(39.0, 8.5), seen(42.0, 8.5)]);
    assert_eq!((after.decision, open(&after).as_deref()), (Again::TestFirst, Some(old)));
    // Neither begun nor rinsed by the log.
    let unknown = decided(&[&[seen(30.0, 8.5)], &known(31.0)[..]].concat());
    let taken = "neither its begin nor its rinse is noted: it is taken as on as planned";
    assert_eq!((unknown.decision, open(&unknown).as_deref()), (Again::TestFirst, Some(taken)));
    // A foil that was hot comes first among what is open.
    let hot = rinsed_at(8.5, &[&[foil(20.0, FoilHeat::Hot)], &known(50.0)[..]].concat());
    let why = "a foil was hot: find out why, and look at scalp and strands below it";
    assert_eq!((hot.decision, open(&hot).as_deref()), (Again::TestFirst, Some(why)));
}

/// A hot foil of the crown is for the crown; one that swells is for all that is on.
#[test]
fn a_stop_elsewhere_counts_where_it_concerns_all() {
    let with = |heat: FoilHeat| {
        decided(&[of(0.0, Noted::Begun), crown(of(26.0, Noted::Begun)), crown(foil(27.0, heat)), seen(30.0, 8.0)])
    };
    assert_eq!(with(FoilHeat::Hot).decision, Again::GoOn);
    let swollen = with(FoilHeat::Swollen);
    assert_eq!(swollen.decision, Again::TreatOnly);
    assert!(swollen.reasons[0].starts_with("crown: a foil swells or bubbles"), "{:?}", swollen.reasons);
    // Its own stop is told without its name.
    let own = decided(&[of(0.0, Noted::Begun), foil(27.0, FoilHeat::Swollen), seen(30.0, 8.0)]);
    assert!(own.reasons[0].starts_with("a foil swells or bubbles"), "{:?}", own.reasons);
}

/// After whatever was on, what speaks against a fresh mix is told with what it would do: a severe strain, a chance below one half, too many
/// times; each where it is so and nowhere else.
#[test]
fn what_speaks_against_a_fresh_mix_is_so() {
    let mut severe = 0;
    for level in [6.25, 7.0, 8.0, 8.5] {
        for times in 1..=4 {
            let mut entries = Vec::new();
            for round in 0..times {
                let at = 60.0 * f64::from(round);
                entries.extend([of(at, Noted::Begun), of(at + 48.0, Noted::Rinsed)]);
            }
            let end = 60.0 * f64::from(times);
            entries.extend([seen(end - 12.0, level), strand(end, Elasticity::Good), feels(end, Comfort::Fine)]);
            let one = decided(&entries);
            let says = |words: &str| one.reasons.iter().any(|why| why.contains(words));
            assert_eq!(one.applications, times as usize);
            assert_eq!(says("the strain would be severe"), one.strain_with_fresh == Strain::Severe, "{one:#?}");
            assert_eq!(says("even a fresh mix reaches it within 48 min in"), one.fresh_chance.best().percent() < 50.0);
            assert_eq!(says(&format!("it was put on {times} times today: 2 are the most in a visit")), times >= 2);
            severe += usize::from(one.strain_with_fresh == Strain::Severe);
        }
    }
    assert!(severe > 0);
}

/// A level of the minute of the rinse, or of the second begin, is of the first application; one of a minute later is not. Of a minute with a
/// result the look is not told as well.
#[test]
fn levels_of_the_first_application_move_its_forecast() {
    let told = |entries: &[LogEntry]| {
        let found = levels_seen(&GRADIENT, &replay(entries));
        let levels: Vec<String> = found.levels.iter().map(ToString::to_string).collect();
        (levels, found.left_out.iter().map(ToString::to_string).collect::<Vec<_>>())
    };
    let begun = of(0.0, Noted::Begun);
    let twice = [begun.clone(), seen(24.0, 7.0), of(24.0, Noted::Rinsed), of(30.0, Noted::Begun), seen(25.0, 7.25)];
    let again = "seen after its first rinse, and put on again: the forecast is of one application";
    assert_eq!(told(&twice), (vec!["nape=7@24".to_owned()], vec![format!("nape: level 7.25 at minute 25: {again}")]));
    let anew = [begun.clone(), of(30.0, Noted::Begun), seen(30.0, 7.0), seen(31.0, 7.25)];
    let again = "seen after it was begun again: the forecast is of one application";
    assert_eq!(told(&anew), (vec!["nape=7@30".to_owned()], vec![format!("nape: level 7.25 at minute 31: {again}")]));
    let both = [begun.clone(), of(48.0, Noted::Rinsed), seen(52.0, 8.0), result(52.0, 8.5)];
    assert_eq!(told(&both).0, ["nape=8.5@48"]);
    assert_eq!(
        told(&[begun, of(48.0, Noted::Rinsed), seen(51.0, 8.0), result(48.0, 8.5)]).0,
        ["nape=8@51", "nape=8.5@48"]
    );
}

/// What follows for the nape of `due`, begun in minute 4. Where its time is up or the scalp itches, a slow strand says it no second time.
#[test]
fn a_slow_strand_is_told_where_nothing_else_takes_it_off() {
    let told = |on: f64, more: &[LogEntry]| -> Vec<String> {
        let entries = [&log(None, on)[..], &[strand(4.0 + on, Elasticity::Reduced)], more].concat();
        let all = rest_of_service(&plan(&file(OWN)).unwrap(), &replay(&entries), &[]).instructions;
        all.into_iter().map(|one| one.text).filter(|text| text.starts_with("rinse now")).collect()
    };
    let slow = "rinse now: a strand returns slowly";
    assert_eq!((told(10.0, &[]), told(49.0, &[])), (vec![slow.to_owned()], vec![slow.to_owned()]));
    assert_eq!(told(50.0, &[]), ["rinse now: the longest that the product allows is up"]);
    assert_eq!(told(10.0, &[feels(14.0, Comfort::Itching)]), ["rinse now: itching at minute 14; look at the scalp"]);
    assert_eq!(told(10.0, &[of(14.0, Noted::Rinsed)]), Vec::<String>::new());
}

fn rest(plan: &Plan, entries: &[LogEntry]) -> RestOfService {
    rest_of_service(plan, &replay(entries), &[])
}

/// The same plan with one more finding, of the mix of a section or of none.
fn with_finding(verdict: Verdict, mix: Option<&str>) -> Plan {
    let mut plan = GRADIENT.clone();
    let place = plan.findings.len();
    plan.findings.push(Finding::new(Rule::SkinTest, verdict, "read after 48 h", Reason::assumed()));
    for one in plan.mixes.iter_mut().filter(|one| Some(one.name.as_str()) == mix) {
        one.findings.push(place);
    }
    plan
}

/// A stop that is of no mix takes off all that is on, one of a mix that mix; either way nothing more is begun. A warning does neither.
#[test]
fn a_stop_of_the_plan_takes_off_what_it_is_about() {
    let both = [of(0.0, Noted::Begun), feels(5.0, Comfort::Fine), crown(of(6.0, Noted::Begun))];
    let says = "the plan says stop: read after 48 h";
    let all = rest(&with_finding(Verdict::Stop, None), &both);
    assert_eq!(all.at_once, [format!("nape: {says}"), format!("crown: {says}")]);
    let why = format!("everything comes off, and nothing more is begun: {says}");
    assert_eq!((all.why_not, all.timeline.is_none()), (Some(why), true));
    let one = rest(&with_finding(Verdict::Stop, Some("crown")), &both);
    assert_eq!(one.at_once, [format!("crown: {says}")]);
    assert_eq!((one.why_not, one.timeline.is_none()), (Some(format!("nothing more is begun: {says}")), true));
    for of_mix in [None, Some("crown")] {
        let warned = rest(&with_finding(Verdict::Warning, of_mix), &both);
        assert_eq!((warned.at_once.len(), warned.why_not, warned.timeline.is_some()), (0, None, true));
    }
    // An itch takes off all of it, in its own words.
    let itch = "rinse now: itching at minute 8; look at the scalp";
    let itches = rest(&GRADIENT, &[&both[..], &[feels(8.0, Comfort::Itching)]].concat());
    assert_eq!(itches.at_once, [format!("nape: {itch}"), format!("crown: {itch}")]);
    assert_eq!(itches.why_not, Some(format!("everything comes off, and nothing more is begun: {itch}")));
    let better = rest(&GRADIENT, &[&both[..], &[feels(8.0, Comfort::Itching), feels(9.0, Comfort::Fine)]].concat());
    assert_eq!((better.at_once.len(), better.timeline.is_some()), (0, true));
    let none = rest(&Plan { day: None, ..GRADIENT.clone() }, &both);
    assert_eq!(none.why_not.as_deref(), Some("the plan arranges no day"));
    // The stop of one section is told without its name twice.
    let swells = rest(&GRADIENT, &[&both[..], &[foil(8.0, FoilHeat::Swollen)]].concat());
    let text = "a foil swells or bubbles: open and rinse it at once; think of metal salts";
    assert_eq!(swells.at_once, [format!("nape: {text}"), format!("crown: nape: {text}")]);
}

/// What was looked at without a begin is told; what was only weighed is not. What is rinsed is not arranged again, and what is on was all on
/// when the log says so.
#[test]
fn the_rest_is_what_the_log_has_not_done() {
    let names = |found: &RestOfService| -> Vec<String> {
        found.timeline.as_ref().unwrap().sections.iter().map(|one| one.name.clone()).collect()
    };
    let looked = rest(&GRADIENT, &[crown(seen(5.0, 7.0))]);
    assert_eq!(
        looked.left_out,
        ["crown: it was looked at, and its begin is not noted: it is planned from now on (note --begun)"]
    );
    let grams = LogEntry { mass: Some(Mass::from_g(40.0).unwrap()), ..of(5.0, Noted::Weighed) };
    let weighed = rest(&GRADIENT, &[grams]);
    assert_eq!((weighed.left_out.len(), names(&weighed).len()), (0, names(&looked).len()));
    let log = [of(0.0, Noted::Begun), of(17.0, Noted::Applied), crown(of(20.0, Noted::Begun)), of(40.0, Noted::Rinsed)];
    let found = rest(&GRADIENT, &log);
    assert!(!names(&found).contains(&"nape".to_owned()) && names(&found).contains(&"crown".to_owned()), "{found:?}");
    assert!(found.timeline.unwrap().sections.iter().all(|one| one.name != "crown" || one.start.min() == 20.0));
    let on = rest(&GRADIENT, &log[..2]).timeline.unwrap();
    let applied: Vec<f64> = on.sections.iter().filter(|one| one.name == "nape").map(|one| one.applied.min()).collect();
    assert_eq!(applied, [17.0]);
}

/// By hand: two applications of 30 min are 60 together, where one may last 50; of 25 each they are 50, which is not beyond; one of 52 is.
#[test]
fn several_applications_are_held_against_the_longest_of_one() {
    let words = |times: &[(f64, f64)]| {
        let log: Vec<LogEntry> =
            times.iter().flat_map(|(from, to)| [of(*from, Noted::Begun), of(*to, Noted::Rinsed)]).collect();
        let found = record(&GRADIENT, &replay(&log));
        found.pairs.into_iter().find(|pair| pair.what == Compared::OnHair).unwrap().words
    };
    let two = "12 more than planned; 2 applications, and the longest time of one is 50 min";
    assert_eq!(words(&[(0.0, 30.0), (40.0, 70.0)]), two);
    assert_eq!(words(&[(0.0, 25.0), (40.0, 65.0)]), "2 more than planned");
    assert_eq!(words(&[(0.0, 52.0)]), "4 more than planned; beyond the longest time, 50 min");
    assert_eq!(words(&[(0.0, 5.0), (40.0, 92.0)]), "9 more than planned; beyond the longest time, 50 min");
    assert_eq!(words(&[(0.0, 48.0)]), "as planned");
}

/// By hand: the nape at 7 is 2 short of 9, the crown at 8 is there. The nape may stay where it is begun, not rinsed and not read as its result.
#[test]
fn only_what_is_on_may_stay_on() {
    let text = |nape: &[LogEntry]| {
        let log = [nape, &[crown(seen(25.0, 8.0)), feels(25.0, Comfort::Fine)]].concat();
        record(&GRADIENT, &replay(&log)).evenness.unwrap().text
    };
    let stays =
        "nape is behind: leave it on within its limit, or tone the others down to it; no fresh mix on what is there";
    let off = "nape is behind: tone the others down to it; no fresh mix on what is there";
    let begun = of(2.0, Noted::Begun);
    assert_eq!(text(&[begun.clone(), seen(25.0, 7.0)]), stays);
    assert_eq!(text(&[seen(25.0, 7.0)]), off);
    assert_eq!(text(&[begun.clone(), result(25.0, 7.0)]), off);
    assert_eq!(text(&[begun.clone(), seen(25.0, 7.0), feels(26.0, Comfort::Itching)]), off);
    assert_eq!(text(&[begun, seen(25.0, 7.0), feels(26.0, Comfort::Tingling)]), stays);
}

/// By hand: the regrowth of the grey blend is put on in 25 min and planned for 40 more, 65. Its two shades allow 45 from the end of the
/// application, 70 if that is at 25 and 60 if it is at 15. Where one of them says nothing, the planned minute is the limit, but for what the
/// other says to end sooner. Two minutes to the basin end two minutes after now.
#[rstest]
#[case::both_say_it(true, 25.0, 64.0, false)]
#[case::both_say_it_and_it_is_over(true, 25.0, 69.0, true)]
#[case::one_says_it(false, 25.0, 63.0, false)]
#[case::one_says_it_and_the_plan_is_over(false, 25.0, 64.0, true)]
#[case::one_ends_sooner(false, 15.0, 58.0, false)]
#[case::one_that_ends_sooner_is_over(false, 15.0, 59.0, true)]
fn what_one_product_says_counts_where_it_ends_no_later(
    #[case] both: bool,
    #[case] applied: f64,
    #[case] now: f64,
    #[case] overdue: bool,
) {
    let text = include_str!("../../examples/grey-blend.toml");
    let own = "longest_min = 45\nlongest_counts_from = \"end-of-application\"\n";
    let (before, after) = text.rsplit_once(own).unwrap();
    let text = if both { text.to_owned() } else { [before, after].concat() };
    let plan = plan(&parse(&text, Format::Toml).unwrap()).unwrap();
    let at = |entry: LogEntry| LogEntry { section: Some("regrowth".to_owned()), ..entry };
    let found = rest(&plan, &[at(of(0.0, Noted::Begun)), at(of(applied, Noted::Applied)), feels(now, Comfort::Fine)]);
    assert!(found.timeline.is_some(), "{:?}", found.why_not);
    assert_eq!(found.overdue, if overdue { vec!["regrowth".to_owned()] } else { Vec::new() });
}
