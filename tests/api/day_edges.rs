//! The edges of what is arranged at all, and the messages beyond them.

use super::day::{min, plain, section};
use foilwork::day::{
    Before, CannotArrange, Effort, Floor, OnHair, OrderRule, SectionWork, Timeline, Underway, Until, arrange, go_on,
    in_this_order, share_floor,
};

fn told<T: std::fmt::Debug>(outcome: Result<T, CannotArrange>) -> String {
    outcome.unwrap_err().to_string()
}

fn rule(first: usize, then: usize, until: Until) -> Before {
    Before { first, then, until, rule: OrderRule::Stated }
}

#[test]
fn as_much_as_a_day_bears_is_arranged_and_no_more() {
    let one = section("nape", 10.0, 20.0, 40.0);
    let quick = |work: &[SectionWork], rules: &[Before], floor: &Floor| arrange(work, rules, floor, Effort::Quick);
    let two = [one.clone(), section("crown", 10.0, 20.0, 40.0)];
    assert!(quick(&two, &vec![rule(0, 1, Until::Applied); 2_000], &plain()).is_ok());
    assert_eq!(quick(&two, &[], &Floor { people: 8, ..plain() }).unwrap().hands.len(), 8);
    let bowls = |bowls: u32| quick(&[SectionWork { bowls, longest: min(400.0), ..one.clone() }], &[], &plain());
    assert_eq!(bowls(100).unwrap().sections[0].mix_at.len(), 100);
    assert_eq!(told(bowls(101)), "nape: 101 bowls: at most 100 for a section (mix larger ones)");
    // A look every minute is one; where a look takes no time, or there is none, it may be said as one likes.
    let every = |look: f64, every: f64| {
        quick(std::slice::from_ref(&one), &[], &Floor { look: min(look), look_every: min(every), ..Floor::default() })
    };
    assert!(every(0.5, 1.0).is_ok() && every(0.0, 0.5).is_ok() && every(1.0, 0.0).is_ok());
    assert_eq!(
        told(every(0.5, 0.99)),
        "a look every 0.99 min: at least 1 min lie between two (or let a look take no time)"
    );
}

/// By hand: a week is 7 x 24 x 60 = 10 080 min. One section: 3 to mix, its painting, its development, 2 to the basin, 3 to rinse. Another:
/// two bowls of 3, 18 to paint with looks of 1 after 5, 10 and 15, develops 20: 6 + 18 + 3 + 20 + 5 = 52.
#[test]
fn no_more_than_a_week_is_arranged() {
    let long = |develop: f64| section("nape", 10.0, develop, 20_000.0);
    let other = SectionWork { bowls: 2, ..section("crown", 18.0, 20.0, 20_000.0) };
    let quick = |work: &[SectionWork], floor: &Floor| arrange(work, &[], floor, Effort::Quick);
    assert!(quick(&[long(10_062.0)], &plain()).is_ok());
    let message = "10081 min of work and development: at most 10080 min, a week, are arranged (check the minutes)";
    assert_eq!(told(quick(&[long(10_063.0)], &plain())), message);
    // 10 min of painting with a look after 5: 3 + 10 + 1 + 2 + 3 = 19 besides the development.
    assert!(quick(&[long(10_080.0 - 52.0 - 19.0), other.clone()], &Floor::default()).is_ok());
    assert_eq!(told(quick(&[long(10_081.0 - 52.0 - 19.0), other], &Floor::default())), message);
}

#[test]
fn rules_and_orders_name_what_is_there() {
    let work =
        [section("nape", 10.0, 20.0, 90.0), section("crown", 10.0, 20.0, 90.0), section("top", 10.0, 20.0, 90.0)];
    let with = |first: usize, then: usize| {
        arrange(&work, &[rule(0, 1, Until::Applied), rule(first, then, Until::Applied)], &plain(), Effort::Quick)
    };
    let message = |first: usize, then: usize| {
        format!("rule 1: section {first} before section {then}, counted from 0, of 3 (name two that are there)")
    };
    for (first, then) in [(3, 1), (1, 3), (1, 1), (7, 9)] {
        assert_eq!(told(with(first, then)), message(first, then));
    }
    assert!(with(2, 1).is_ok());
    // Each once: none left out, none too many, none twice.
    for order in [&[0, 1][..], &[0, 1, 1], &[0, 1, 2, 2], &[1, 2, 3], &[]] {
        assert_eq!(
            told(in_this_order(&work, &[], &plain(), order)),
            "the order must name each of 3 sections once, counted from 0"
        );
    }
    // A foil is painted in one go, and in the order that its rules ask for.
    let mut foil = work.clone();
    (foil[0].same_foil, foil[2].same_foil) = (Some(1), Some(1));
    let order = |rules: &[Before], order: &[usize]| in_this_order(&foil, rules, &plain(), order);
    let names = |day: Timeline| day.sections.into_iter().map(|one| one.section).collect::<Vec<_>>();
    assert_eq!(names(order(&[], &[0, 2, 1]).unwrap()), [0, 2, 1]);
    assert_eq!(names(order(&[], &[1, 0, 2]).unwrap()), [1, 0, 2]);
    assert_eq!(names(order(&[rule(2, 0, Until::Applied)], &[2, 0, 1]).unwrap()), [2, 0, 1]);
    for wrong in [order(&[], &[0, 1, 2]), order(&[], &[2, 0, 1]), order(&[rule(1, 2, Until::Applied)], &[0, 2, 1])] {
        assert_eq!(wrong.unwrap_err(), CannotArrange::OrderBreaksRules);
    }
    assert!(order(&[rule(1, 2, Until::Applied)], &[1, 0, 2]).is_ok());
}

/// By hand: 3 to mix, 10 to paint, 2 to the basin: 12 min from the first strand until the water. With a second section in its foil it
/// is on from 3 to 13, the other to 46 with 30 min of painting, and the nape may be on for 40.
#[test]
fn what_its_longest_time_does_not_allow_is_told_with_its_foil() {
    let quick = |work: &[SectionWork]| arrange(work, &[], &plain(), Effort::Quick);
    assert_eq!(quick(&[section("nape", 10.0, 0.0, 12.0)]).unwrap().finish.min(), 18.0);
    let asks = |name: &str, [apply, develop, longest]: [&str; 3]| {
        format!(
            "{name}: {apply} min to apply besides looks and fresh bowls, {develop} min to develop, {longest} min on the hair at most (the \
             longest time on the hair)"
        )
    };
    let clash = |all: &str| format!("these cannot hold together: {all} (leave one of them out)");
    let late = quick(&[section("crown", 10.0, 0.0, 20.0), section("nape", 10.0, 0.0, 11.9)]);
    assert_eq!(told(late), clash(&asks("nape", ["10", "0", "11.9"])));
    // Developed at the very end of its longest.
    assert!(quick(&[section("nape", 10.0, 20.0, 30.0)]).is_ok());
    let late = quick(&[section("nape", 10.0, 20.0, 29.9)]);
    assert_eq!(told(late), clash(&asks("nape", ["10", "20", "29.9"])));
    let foil = |one| SectionWork { same_foil: Some(1), ..one };
    let (nape, crown) = (foil(section("nape", 10.0, 20.0, 40.0)), foil(section("crown", 30.0, 20.0, 60.0)));
    let both = [asks("nape", ["10", "20", "40"]), asks("crown", ["30", "20", "60"])].join("; ");
    let one_foil = "nape with crown (one foil, painted and rinsed together)";
    assert_eq!(told(quick(&[nape.clone(), crown.clone()])), clash(&format!("{both}; {one_foil}")));
    // One that does not fit alone is the whole reason.
    let never = SectionWork { longest: min(31.0), ..crown.clone() };
    assert_eq!(told(quick(&[nape.clone(), never])), clash(&asks("crown", ["30", "20", "31"])));
    let never = SectionWork { develop: min(0.0), longest: min(31.5), ..crown };
    assert_eq!(told(quick(&[nape, never])), clash(&asks("crown", ["30", "0", "31.5"])));
}

/// Of two circles of two rules the first of the list is told.
#[test]
fn of_clashes_alike_the_first_is_told() {
    let work = ["0", "1", "2", "3"].map(|name| section(name, 5.0, 5.0, 90.0));
    let rules = [(0, 1), (1, 0), (2, 3), (3, 2)].map(|(first, then)| rule(first, then, Until::Applied));
    let Err(CannotArrange::Clash(clash)) = arrange(&work, &rules, &plain(), Effort::Quick) else { panic!() };
    let asks: Vec<&str> = clash.0.iter().map(|one| one.asks.as_str()).collect();
    assert_eq!(asks, ["1 after 0", "0 after 1"]);
    assert_eq!(clash.0.iter().map(|one| one.before).collect::<Vec<_>>(), [Some(rules[0]), Some(rules[1])]);
}

#[test]
fn a_day_in_its_midst_names_what_is_there_on_a_clock_of_a_week() {
    let work = [section("nape", 10.0, 20.0, 90.0), section("crown", 10.0, 20.0, 90.0)];
    let on = |section: usize| OnHair {
        section,
        start: min(3.0),
        applied: None,
        at_once: false,
        left_on_until: None,
        comes_off_by: None,
    };
    let rest = |now: f64, on: &[OnHair], rinsed: &[usize]| {
        let underway = Underway { now: min(now), on: on.to_vec(), rinsed: rinsed.to_vec() };
        go_on(&work, &[], &plain(), &underway, Effort::Quick)
    };
    for (on, rinsed) in [
        (vec![on(2)], vec![]),
        (vec![], vec![2]),
        (vec![on(0), on(0)], vec![]),
        (vec![], vec![1, 1]),
        (vec![on(1)], vec![1]),
    ] {
        assert_eq!(rest(20.0, &on, &rinsed).unwrap_err(), CannotArrange::NotUnderway { count: 2 });
    }
    assert!(rest(20.0, &[on(0), on(1)], &[]).is_ok() && rest(20.0, &[on(1)], &[0]).is_ok());
    assert!(rest(3.0, &[on(0)], &[]).is_ok(), "its first strand is on now");
    let late = |one: OnHair| told(rest(20.0, &[on(0), one], &[]));
    assert_eq!(
        late(OnHair { start: min(20.5), ..on(1) }),
        "section 1: first strand at 20.5 min, but now it is 20 min (leave a section out until it is begun)"
    );
    // The last minute of a week is one; the minute after it is told by its name.
    let way_out =
        "10081 min: at most 10080 min, a week, from the zero of its clock (count from the first work of the day)";
    let (week, after) = (Some(min(10_080.0)), Some(min(10_081.0)));
    for at in [week, None] {
        assert!(rest(10_080.0, &[OnHair { comes_off_by: at, left_on_until: at, ..on(0) }], &[]).is_ok());
    }
    assert_eq!(late(OnHair { left_on_until: after, ..on(1) }), format!("left_on_until {way_out}"));
    assert_eq!(late(OnHair { comes_off_by: after, ..on(1) }), format!("comes_off_by {way_out}"));
    assert_eq!(late(OnHair { start: min(10_081.0), ..on(1) }), format!("start {way_out}"));
    assert_eq!(told(rest(10_081.0, &[], &[])), format!("now {way_out}"));
}

#[test]
fn a_floor_bears_so_many_guests_and_people() {
    let day = arrange(&[section("nape", 10.0, 20.0, 40.0)], &[], &plain(), Effort::Quick).unwrap();
    let floor = Floor { people: 100, ..plain() };
    assert_eq!(share_floor(&vec![day.clone(); 50], &floor).unwrap().guests.len(), 50);
    assert!(share_floor(&[], &floor).unwrap().guests.is_empty());
    let long = Timeline { finish: min(1_441.0), ..day.clone() };
    assert_eq!(
        share_floor(&[day, long], &plain()).unwrap_err().to_string(),
        "guest 1: 1441 min: at most 1440 min are laid beside others (part the work)"
    );
}

/// By hand: so many whole `look_every` as lie before the very end.
#[test]
fn looks_take_their_time_while_hands_put_on() {
    let looks = |apply: f64, look: f64, every: f64| {
        Floor { look: min(look), look_every: min(every), ..Floor::default() }.looks_while(min(apply)).min()
    };
    assert_eq!(
        [looks(16.0, 1.0, 5.0), looks(15.0, 1.0, 5.0), looks(5.0, 1.0, 5.0), looks(0.0, 1.0, 5.0)],
        [3.0, 2.0, 0.0, 0.0]
    );
    assert_eq!([looks(30.0, 0.5, 4.0), looks(30.0, 0.5, 0.0), looks(30.0, 0.0, 4.0)], [3.5, 0.0, 0.0]);
}

/// By hand: through at 53 and 56, by the minutes of the rinses.
#[test]
fn the_trail_of_a_day_names_the_ends_of_its_sections() {
    let work = [section("nape", 15.0, 35.0, 60.0), section("hairline", 10.0, 20.0, 60.0)];
    let day = in_this_order(&work, &[], &plain(), &[0, 1]).unwrap();
    let trail = day.trail();
    let told: Vec<(&str, &str)> = trail.iter().map(|one| (one.what.as_str(), one.value.as_str())).collect();
    // The nape is on from 3, the hairline from 21 to 31; rinsed from 51, and the nape from 54.
    let strand = ["nape: time of the first strand", "hairline: time of the first strand"];
    assert_eq!(told, [(strand[0], "51"), (strand[1], "30"), ("finish", "57")]);
    assert_eq!(trail[2].worked.as_deref(), Some("largest (57, 54)"));
}
