//! When what is on the hair comes off at the latest, by cases worked out by hand.

use super::day::{min, plain, section};
use foilwork::day::{Effort, OnHair, SectionWork, Underway, go_on};

/// In one foil, by hand: mix 3, nape on 3 to 13, mix to 16, hairline on to 26. By their work the nape's rinse begins by 63 and the hairline's,
/// 3 min later, by 76. The hairline is over by 42: the foil is rinsed from 39 at the latest, which takes 2 min of walk before; at 38 the
/// water comes a minute too late. The nape alone ends at 40. A look that leaves it on moves the work's 63 to what is noted, and no
/// further; between the two it is rinsed at once and not overdue.
#[test]
fn what_is_on_comes_off_by_what_was_noted_of_its_longest() {
    let foil = |one| SectionWork { same_foil: Some(1), ..one };
    let work = [foil(section("nape", 10.0, 40.0, 60.0)), foil(section("hairline", 10.0, 40.0, 60.0))];
    let on = |section: usize, by: f64| OnHair {
        section,
        start: min([3.0, 16.0][section]),
        applied: Some(min([13.0, 26.0][section])),
        at_once: false,
        left_on_until: None,
        comes_off_by: Some(min(by)),
    };
    let rest = |now: f64, work: &[SectionWork], on: &[OnHair]| {
        let underway = Underway { now: min(now), on: on.to_vec(), rinsed: Vec::new() };
        let rest = go_on(work, &[], &plain(), &underway, Effort::Thorough).unwrap();
        (rest.timeline.sections.iter().map(|one| one.rinse.min()).collect::<Vec<_>>(), rest.overdue)
    };
    assert_eq!(rest(30.0, &work, &[on(0, 60.0), on(1, 42.0)]), (vec![39.0, 42.0], vec![]));
    assert_eq!(rest(37.0, &work, &[on(0, 60.0), on(1, 42.0)]), (vec![39.0, 42.0], vec![]));
    assert_eq!(rest(38.0, &work, &[on(0, 60.0), on(1, 42.0)]), (vec![40.0, 43.0], vec![0, 1]));
    assert_eq!(rest(30.0, &work, &[on(0, 40.0), on(1, 60.0)]).0, [40.0, 43.0]);
    let alone = [section("nape", 10.0, 40.0, 60.0)];
    let left = |until: f64, by: f64| OnHair { left_on_until: Some(min(until)), ..on(0, by) };
    assert_eq!(rest(62.0, &alone, &[left(67.0, 70.0)]), (vec![67.0], vec![]));
    assert_eq!(rest(62.0, &alone, &[left(72.0, 70.0)]), (vec![70.0], vec![]));
    assert_eq!(rest(62.0, &alone, &[on(0, 70.0)]), (vec![64.0], vec![]));
    assert_eq!(rest(69.0, &alone, &[left(70.0, 70.0)]), (vec![71.0], vec![0]));
    assert_eq!(rest(30.0, &alone, &[on(0, 90.0)]), (vec![53.0], vec![]));
}
