//! Every message of the day, and cases worked out by hand.

use foilwork::{
    chart::{DayChart, day_chart},
    day::{
        Before, CannotArrange, Effort, Floor, NoHands, OnHair, OrderRule, PieceKind, SectionWork, Timeline, Underway,
        Until, arrange, go_on, in_this_order, share_floor,
    },
    quantity::Duration,
};
use rstest::rstest;

pub(super) fn min(value: f64) -> Duration {
    Duration::from_min(value).unwrap()
}

pub(super) fn section(name: &str, apply: f64, develop: f64, longest: f64) -> SectionWork {
    SectionWork::new(name, min(apply), min(develop), min(longest))
}

fn before(first: usize, then: usize, until: Until, rule: OrderRule) -> Before {
    Before { first, then, until, rule }
}

/// No looks, so that sums are easy.
pub(super) fn plain() -> Floor {
    Floor { look: Duration::ZERO, ..Floor::default() }
}

/// By hand: mix 3, nape on 3 to 18, mix to 21, hairline on 21 to 31. The nape has developed at 18 + 35 = 53, the hairline at
/// 31 + 20 = 51: rinsed from 53 and 56 (or 51 and 54), through at 59 (57): the hairline first. The other order: hairline on 3
/// to 13, nape on 16 to 31, rinsed at 33 and, developed, at 66: through at 69.
#[test]
fn the_slowest_goes_first() {
    let work = [section("hairline", 10.0, 20.0, 60.0), section("nape", 15.0, 35.0, 60.0)];
    let day = arrange(&work, &[], &plain(), Effort::Thorough).unwrap();
    let names: Vec<&str> = day.sections.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(names, ["nape", "hairline"]);
    assert_eq!((day.finish.min(), day.visits, day.proven), (57.0, 1, true));
    let other = in_this_order(&work, &[], &plain(), &[0, 1]).unwrap();
    assert_eq!((other.finish.min(), other.visits), (69.0, 2));
    // Hands: 2 bowls, 25 min of applying, a walk of 2, 2 rinses; from 31 to 49 nobody works.
    assert_eq!((day.hands[0].min(), day.idle.min()), (39.0, 18.0));
}

/// By hand: the hairline may be on for 25 min. On first, from 3 to 8, it is developed at 28, when the nape is on from 11 to 26:
/// rinsed from 28 to 31, the nape developed at 61: through at 64. After the nape (3 to 18), on from 21 to 26, it is developed
/// at 46 and due before the nape at 53: through at 56.
#[test]
fn what_may_not_be_on_long_is_rinsed_apart() {
    let work = [section("nape", 15.0, 35.0, 60.0), section("hairline", 5.0, 20.0, 25.0)];
    let day = arrange(&work, &[], &plain(), Effort::Thorough).unwrap();
    let hairline = &day.sections[1];
    assert_eq!((hairline.start.min(), hairline.rinse.min(), hairline.on_hair.min()), (21.0, 46.0, 25.0));
    assert_eq!((hairline.spare.min(), day.finish.min(), day.visits), (0.0, 56.0, 2));
}

/// By hand: every section takes 7 min, and 3 begins when 2 is rinsed. So 28 min of painting, a walk of 2 and a rinse of 2 come
/// before the last section is on, be it 0 or 3, and its 9 min and 2 at the basin after: 43. And 43 it is: on 1 at 0, 2 at 7, 0
/// at 14, rinse 2 at 23, on 3 at 25, rinse 1 at 34, 0 at 36, 3 at 41.
#[test]
fn a_section_that_others_wait_for_is_not_taken_for_another() {
    let work = ["0", "1", "2", "3"].map(|name| section(name, 7.0, 9.0, 37.0));
    let rules = [before(1, 2, Until::Applied, OrderRule::Stated), before(2, 3, Until::Rinsed, OrderRule::Stated)];
    let floor = Floor { mix: Duration::ZERO, rinse: min(2.0), walk: min(2.0), ..plain() };
    let day = arrange(&work, &rules, &floor, Effort::Thorough).unwrap();
    assert_eq!((day.finish.min(), day.proven), (43.0, true));
}

/// By hand: 18 min of painting with a look after 5, 10 and 15: on from 3 to 24; foils in goes of 5 min, 12 foils in 18 min.
#[test]
fn the_brush_is_put_down_for_a_look() {
    let nape = SectionWork { foils: Some(12), ..section("nape", 18.0, 25.0, 50.0) };
    let day = arrange(&[nape], &[], &Floor::default(), Effort::Thorough).unwrap();
    let applied: Vec<(f64, f64, u32, u32)> = day
        .pieces
        .iter()
        .filter(|piece| piece.kind == PieceKind::Apply)
        .map(|piece| (piece.from.min(), piece.to.min(), piece.foils.unwrap().first, piece.foils.unwrap().last))
        .collect();
    assert_eq!(applied, [(3.0, 8.0, 1, 3), (9.0, 14.0, 4, 6), (15.0, 20.0, 7, 10), (21.0, 24.0, 11, 12)]);
    // Developed at 24 + 25; first strand at 3; the first look that is due for it is that at 20.
    assert_eq!((day.sections[0].rinse.min(), day.sections[0].on_hair.min()), (49.0, 46.0));
    // On until 24, so a look at 29, 35 and 41; the next would end with the walk, which is from 47.
    let looks: Vec<f64> = day.sections[0].looks.iter().map(|at| at.min()).collect();
    assert_eq!(looks, [20.0, 29.0, 35.0, 41.0]);
    let walk = day.pieces.iter().find(|piece| piece.kind == PieceKind::Walk).unwrap();
    assert_eq!((walk.from.min(), walk.to.min(), walk.section), (47.0, 49.0, None));
}

/// By hand: 24 min, then a fresh bowl of 3 min in the middle.
#[test]
fn fresh_bowls_are_mixed_on_the_way() {
    let nape = SectionWork { bowls: 2, ..section("nape", 24.0, 20.0, 60.0) };
    let day = arrange(&[nape], &[], &plain(), Effort::Thorough).unwrap();
    let mixed: Vec<f64> = day.sections[0].mix_at.iter().map(|at| at.min()).collect();
    assert_eq!((mixed.as_slice(), day.sections[0].applied.min()), ([0.0, 15.0].as_slice(), 30.0));
}

#[test]
fn what_shares_a_foil_is_painted_and_rinsed_together() {
    let foil = |one| SectionWork { same_foil: Some(1), ..one };
    let work = [
        foil(section("light", 10.0, 20.0, 60.0)),
        section("nape", 10.0, 40.0, 60.0),
        foil(section("dark", 5.0, 20.0, 60.0)),
    ];
    let rules = [before(2, 0, Until::Applied, OrderRule::DarkestFirst)];
    let day = arrange(&work, &rules, &plain(), Effort::Thorough).unwrap();
    let names: Vec<&str> = day.sections.iter().map(|one| one.name.as_str()).collect();
    assert_eq!(names, ["nape", "dark", "light"]);
}

#[test]
fn what_cannot_be_is_told_by_the_smallest_set_of_rules() {
    let work = [
        section("nape", 10.0, 20.0, 40.0),
        section("crown", 10.0, 20.0, 40.0),
        section("outline", 10.0, 20.0, 40.0),
        section("top", 10.0, 20.0, 40.0),
    ];
    let message = |rules: &[Before]| arrange(&work, rules, &plain(), Effort::Thorough).unwrap_err().to_string();
    // A circle of four, in it one of two.
    let rules = [
        before(0, 1, Until::Applied, OrderRule::SlowestFirst),
        before(1, 3, Until::Applied, OrderRule::Stated),
        before(3, 2, Until::Applied, OrderRule::Stated),
        before(2, 0, Until::Applied, OrderRule::OutlineFirst),
        before(1, 2, Until::Rinsed, OrderRule::Stated),
        before(2, 1, Until::Applied, OrderRule::OutlineFirst),
    ];
    assert_eq!(
        message(&rules),
        "these cannot hold together: outline after crown is rinsed (as the service says); crown after outline (outline \
         before crown) (leave one of them out)"
    );
    let mut foil = work.clone();
    foil[0].same_foil = Some(7);
    foil[3].same_foil = Some(7);
    let between =
        [before(0, 1, Until::Applied, OrderRule::Stated), before(1, 3, Until::Applied, OrderRule::MidLengthsFirst)];
    assert_eq!(
        arrange(&foil, &between, &plain(), Effort::Thorough).unwrap_err().to_string(),
        "these cannot hold together: crown after nape (as the service says); top after crown (mid-lengths before roots on \
         virgin hair); top with nape (one foil, painted and rinsed together) (leave one of them out)"
    );
    let rinsed = [before(0, 3, Until::Rinsed, OrderRule::Stated)];
    assert_eq!(
        arrange(&foil, &rinsed, &plain(), Effort::Thorough).unwrap_err().to_string(),
        "these cannot hold together: top after nape is rinsed (as the service says); top with nape (one foil, painted and \
         rinsed together) (leave one of them out)"
    );
    assert_eq!(
        arrange(&[section("nape", 30.0, 30.0, 50.0)], &[], &plain(), Effort::Thorough).unwrap_err().to_string(),
        "these cannot hold together: nape: 30 min to apply besides looks and fresh bowls, 30 min to develop, 50 min on the \
         hair at most (the longest time on the hair) (leave one of them out)"
    );
}

#[test]
fn every_other_message() {
    let work = [section("nape", 10.0, 20.0, 40.0), section("crown", 10.0, 20.0, 40.0)];
    let told = |outcome: Result<_, CannotArrange>| outcome.err().map(|error: CannotArrange| error.to_string());
    assert_eq!(told(arrange(&[], &[], &plain(), Effort::Thorough)).unwrap(), "no section: give at least one");
    let rules = [before(0, 2, Until::Applied, OrderRule::Stated)];
    assert_eq!(
        told(arrange(&work, &rules, &plain(), Effort::Thorough)).unwrap(),
        "rule 0: section 0 before section 2, counted from 0, of 2 (name two that are there)"
    );
    assert_eq!(
        told(in_this_order(&work, &[], &plain(), &[0, 0])).unwrap(),
        "the order must name each of 2 sections once, counted from 0"
    );
    let rules = [before(0, 1, Until::Applied, OrderRule::Stated)];
    assert_eq!(
        told(in_this_order(&work, &rules, &plain(), &[1, 0])).unwrap(),
        "in this order the rules and the longest times cannot be kept (let the plan choose the order)"
    );
    let too_much = |work: &[SectionWork], rules: &[Before], floor: &Floor| {
        told(arrange(work, rules, floor, Effort::Quick)).unwrap()
    };
    let many = vec![work[0].clone(); 41];
    assert_eq!(too_much(&many, &[], &plain()), "41 sections: at most 40 are arranged (join those that are alike)");
    assert_eq!(
        too_much(&work, &vec![before(0, 1, Until::Applied, OrderRule::Stated); 2001], &plain()),
        "2001 rules: at most 2000 are kept (leave out those that follow from others)"
    );
    assert_eq!(
        too_much(&work, &[], &Floor { people: 9, ..plain() }),
        "9 people: at most 8 work on one guest (give fewer)"
    );
    assert_eq!(
        too_much(&[SectionWork { bowls: u32::MAX, ..work[0].clone() }], &[], &plain()),
        "nape: 4294967295 bowls: at most 100 for a section (mix larger ones)"
    );
    assert_eq!(
        too_much(&work, &[], &Floor { look_every: min(0.01), ..Floor::default() }),
        "a look every 0.01 min: at least 1 min lie between two (or let a look take no time)"
    );
    // 3 to mix, 1e9 to apply, 20 to develop, 2 to the basin, 3 to rinse.
    assert_eq!(
        too_much(&[section("nape", 1e9, 20.0, 40.0)], &[], &plain()),
        "1000000028 min of work and development: at most 10080 min, a week, are arranged (check the minutes)"
    );
    let two = Floor { people: 2, ..plain() };
    let day = arrange(&work, &[], &two, Effort::Thorough).unwrap();
    assert_eq!(
        share_floor(std::slice::from_ref(&day), &plain()).unwrap_err().to_string(),
        "guest 0: the work needs 2 people at once, the floor has 1 (arrange it for fewer)"
    );
    assert_eq!(share_floor(&[day], &Floor { basins: 0, ..two }).unwrap_err(), NoHands::Basin);
    assert_eq!(NoHands::Basin.to_string(), "the floor has no basin (give at least one)");
    let shared = |days: &[Timeline], floor: &Floor| share_floor(days, floor).unwrap_err().to_string();
    let short = arrange(&work[..1], &[], &plain(), Effort::Quick).unwrap();
    assert_eq!(shared(&vec![short.clone(); 51], &plain()), "51 guests: at most 50 share a floor (part them)");
    assert_eq!(
        shared(std::slice::from_ref(&short), &Floor { people: 101, ..plain() }),
        "101 people: at most 100 share a floor (give fewer)"
    );
    let whole = Timeline { finish: min(1440.0), ..short.clone() };
    assert!(share_floor(&[whole], &plain()).is_ok(), "a day is not too long");
    let long = Timeline { finish: min(1500.0), ..short };
    assert_eq!(shared(&[long], &plain()), "guest 0: 1500 min: at most 1440 min are laid beside others (part the work)");
}

/// By hand for two people: both bowls mixed by minute 3, both sections on by 18, developed at 48: through at 54.
#[test]
fn a_helper_saves_time() {
    let work = [section("left", 15.0, 30.0, 60.0), section("right", 15.0, 30.0, 60.0)];
    let two = Floor { people: 2, ..plain() };
    assert_eq!(arrange(&work, &[], &two, Effort::Thorough).unwrap().finish.min(), 54.0);
    // Alone: on by 18 and 36, developed at 48 and 66: through at 69.
    assert_eq!(arrange(&work, &[], &plain(), Effort::Thorough).unwrap().finish.min(), 69.0);
}

/// By hand: each guest takes 3 + 15 + 35 + 3 = 56 min, with hands in 0 to 18 and 53 to 56; the second begins at 18.
#[test]
fn a_second_guest_is_begun_while_the_first_develops() {
    let day = arrange(&[section("nape", 15.0, 35.0, 50.0)], &[], &plain(), Effort::Thorough).unwrap();
    let shared = share_floor(&[day.clone(), day], &plain()).unwrap();
    let starts: Vec<f64> = shared.guests.iter().map(|guest| guest.start.min()).collect();
    assert_eq!(starts, [0.0, 18.0]);
    assert_eq!((shared.finish.min(), shared.in_turn.min()), (74.0, 112.0));
}

#[test]
fn a_few_sections_are_proven_and_many_are_bounded() {
    let many = |count: usize| -> Vec<SectionWork> {
        let one = |i: usize| section(&format!("s{i}"), 6.0 + (i % 4) as f64, 20.0 + (i * 7 % 13) as f64, 50.0);
        (0..count).map(one).collect()
    };
    let day = arrange(&many(5), &[], &Floor::default(), Effort::Quick).unwrap();
    assert!(day.proven && day.bound == day.finish);
    for count in [13, 40] {
        let day = arrange(&many(count), &[], &Floor::default(), Effort::Quick).unwrap();
        assert!(day.bound <= day.finish && day.sections.len() == count);
    }
    // Six pairs alike, as left and right are: which of a pair comes first is all one, and the proof is quick.
    let pairs: Vec<SectionWork> =
        (0..12).map(|i| section(&format!("s{i}"), [8.0, 11.0, 14.0][i / 2 % 3], [25.0, 20.0][i / 6], 50.0)).collect();
    let day = arrange(&pairs, &[], &Floor::default(), Effort::Thorough).unwrap();
    assert!(day.proven, "{} of {}", day.bound.min(), day.finish.min());
}

#[test]
fn the_picture_says_in_words_what_it_shows() {
    let day = arrange(&[section("nape <1>", 15.0, 35.0, 50.0)], &[], &plain(), Effort::Thorough).unwrap();
    let svg = day_chart(&DayChart { title: "day", timeline: &day });
    assert!(svg.contains("<desc>In minutes. nape &lt;1&gt;: first strand 3, all on 18, rinse 53."));
    assert!(!svg.contains("<script") && svg.contains("hands 1"));
    // A long name is cut beside the bars and whole in the words.
    let long = "a section whose name is much too long for the picture";
    let day = arrange(&[section(long, 15.0, 35.0, 50.0)], &[], &plain(), Effort::Thorough).unwrap();
    let svg = day_chart(&DayChart { title: "day", timeline: &day });
    assert!(
        svg.contains(&format!("{long}: first strand 3")) && svg.contains(">a section who") && svg.contains("\u{2026}<"),
        "{svg}"
    );
}

/// Nape on from 3, by hand: late, it is on at 25 instead of 18 and developed at 60. The hairline is mixed at 25, on from 28 to 38
/// and developed at 58: rinsed first, the nape at 61, through at 64. If the nape has to come off at 30, it is rinsed at 32, the
/// hairline on from 38 to 48 and rinsed at 68. At 70 the nape is past its 60 min, which end at 63.
#[test]
fn a_day_in_its_midst_is_arranged_from_where_it_stands() {
    let work = [section("nape", 15.0, 35.0, 60.0), section("hairline", 10.0, 20.0, 60.0)];
    let nape = OnHair {
        section: 0,
        start: min(3.0),
        applied: Some(min(25.0)),
        at_once: false,
        left_on_until: None,
        comes_off_by: None,
    };
    let rest = |now: f64, on: &[OnHair], rinsed: &[usize], rules: &[Before]| {
        let underway = Underway { now: min(now), on: on.to_vec(), rinsed: rinsed.to_vec() };
        go_on(&work, rules, &plain(), &underway, Effort::Thorough)
    };
    let times = |timeline: &Timeline, name: &str| {
        let one = timeline.sections.iter().find(|one| one.name == name).unwrap();
        (one.start.min(), one.rinse.min(), one.on_hair.min())
    };
    let late = rest(25.0, &[nape], &[], &[]).unwrap();
    assert_eq!(
        (times(&late.timeline, "nape"), times(&late.timeline, "hairline")),
        ((3.0, 61.0, 58.0), (28.0, 58.0, 30.0))
    );
    assert_eq!((late.timeline.finish.min(), late.timeline.proven, late.overdue.len()), (64.0, true, 0));
    // A bowl, 10 min of painting, a walk, two rinses; nobody works from 38 to 56.
    assert_eq!((late.timeline.hands[0].min(), late.timeline.idle.min()), (21.0, 18.0));
    let off = OnHair { applied: Some(min(18.0)), at_once: true, ..nape };
    let off = rest(30.0, &[off], &[], &[]).unwrap();
    assert_eq!((times(&off.timeline, "nape").1, times(&off.timeline, "hairline")), (32.0, (38.0, 68.0, 30.0)));
    assert!(off.overdue.is_empty(), "it is asked for");
    let overdue = rest(70.0, &[nape], &[], &[]).unwrap();
    assert_eq!((overdue.overdue.as_slice(), times(&overdue.timeline, "nape").1), ([0].as_slice(), 72.0));
    // Still being put on: hands are free at 18.
    let painting = rest(10.0, &[OnHair { applied: None, ..nape }], &[], &[]).unwrap();
    assert_eq!(times(&painting.timeline, "hairline").0, 21.0);
    let waits = rest(25.0, &[nape], &[], &[before(0, 1, Until::Rinsed, OrderRule::Stated)]).unwrap();
    assert_eq!((times(&waits.timeline, "hairline").0, waits.timeline.finish.min()), (66.0, 99.0));
    let done = rest(80.0, &[], &[0, 1], &[]).unwrap();
    assert_eq!((done.timeline.finish.min(), done.timeline.sections.len()), (80.0, 0));
    let one_left = rest(80.0, &[], &[0], &[before(0, 1, Until::Rinsed, OrderRule::Stated)]).unwrap();
    assert_eq!(times(&one_left.timeline, "hairline"), (83.0, 113.0, 30.0));
    assert_eq!(
        rest(25.0, &[nape], &[0], &[]).unwrap_err().to_string(),
        "what is on and what is rinsed must name sections once, counted from 0, of 2 (name each that is there)"
    );
    // A clock that a slip of the hand set: no picture of millions of minutes.
    let refused = |now: f64, on: OnHair| rest(now, &[on], &[], &[]).unwrap_err().to_string();
    let way_out = "at most 10080 min, a week, from the zero of its clock (count from the first work of the day)";
    assert_eq!(refused(1e9, nape), format!("now 1000000000 min: {way_out}"));
    let applied = Some(min(10_081.0));
    assert_eq!(refused(25.0, OnHair { applied, ..nape }), format!("applied 10081 min: {way_out}"));
    assert_eq!(
        refused(2.0, nape),
        "section 0: first strand at 3 min, but now it is 2 min (leave a section out until it is begun)"
    );
}

/// The rest of a day begins at the first strand on the hair, not at minute 0 of the clock.
#[test]
fn the_picture_of_a_rest_begins_where_the_rest_does() {
    let work = [section("nape", 15.0, 35.0, 60.0), section("hairline", 10.0, 20.0, 60.0)];
    let nape = OnHair {
        section: 0,
        start: min(903.0),
        applied: Some(min(925.0)),
        at_once: false,
        left_on_until: None,
        comes_off_by: None,
    };
    let underway = Underway { now: min(925.0), on: vec![nape], rinsed: Vec::new() };
    let rest = go_on(&work, &[], &plain(), &underway, Effort::Thorough).unwrap();
    let svg = day_chart(&DayChart { title: "rest", timeline: &rest.timeline });
    assert!(svg.contains("<desc>In minutes. nape: first strand 903,") && !svg.contains("first work"), "{svg}");
    assert!(svg.contains(">905</text>") && !svg.contains(">0</text>"), "{svg}");
}

/// What no order beats, by hand; a bowl takes 3 min, a walk 2, a rinse 3. One that takes 15 to paint and 35 to develop is through at
/// 3 + 15 + 35 + 3 = 56 at the earliest. Four of 10 min that develop in 1: 4 x 13 of work, a walk, four rinses are 66. Three of 10 min
/// that develop in 30: after 39 of work the last one develops 30 and is rinsed, 72; for two pairs of hands it is half of the work.
#[rstest]
#[case::one_alone(&[(10.0, 20.0), (15.0, 35.0)], 1, 56.0)]
#[case::all_rinses(&[(10.0, 1.0); 4], 1, 66.0)]
#[case::the_last_one(&[(10.0, 30.0); 3], 1, 72.0)]
#[case::the_last_one_of_two_pairs_of_hands(&[(10.0, 30.0); 3], 2, 52.5)]
#[case::a_second_is_not_halved(&[(10.0 + 1.0 / 60.0, 30.0), (10.0, 30.0), (10.0, 30.0)], 2, 52.5 + 1.0 / 60.0)]
#[case::no_development(&[(10.0, 0.0); 2], 1, 34.0)]
fn what_no_order_beats(#[case] work: &[(f64, f64)], #[case] people: u32, #[case] want: f64) {
    let work: Vec<SectionWork> = work
        .iter()
        .enumerate()
        .map(|(i, (apply, develop))| section(&format!("{i}"), *apply, *develop, 200.0))
        .collect();
    // The slowest last is the worst order, so its finish is no bound.
    let order: Vec<usize> = (0..work.len()).collect();
    let day = in_this_order(&work, &[], &Floor { people, ..plain() }, &order).unwrap();
    assert!((day.bound.min() - want).abs() < 1e-9, "{} for {want}, through at {}", day.bound, day.finish);
    assert!(day.finish >= day.bound);
}
