//! Days worked out by hand minute by minute: every piece of work and every time of every section.

use super::day::{min, plain, section};
use foilwork::day::{
    Effort, Floor, OnHair, Piece, PieceKind, SectionTimes, SectionWork, Timeline, Underway, arrange, go_on,
    in_this_order,
};

/// A piece as its kind, section, person, begin, end and foils.
type Told = (PieceKind, Option<usize>, usize, f64, f64, Option<(u32, u32)>);

fn pieces(day: &Timeline) -> Vec<Told> {
    let told = |one: &Piece| {
        let foils = one.foils.map(|foils| (foils.first, foils.last));
        (one.kind, one.section, one.person, one.from.min(), one.to.min(), foils)
    };
    day.pieces.iter().map(told).collect()
}

/// A section as its place, visit and person; its bowls; first strand, last strand, rinse, rinsed out, time on the hair, time to spare; its
/// looks.
type Times = ((usize, usize, usize), Vec<f64>, [f64; 6], Vec<f64>);

fn times(day: &Timeline) -> Vec<Times> {
    let told = |one: &SectionTimes| {
        let minutes = [one.start, one.applied, one.rinse, one.rinsed, one.on_hair, one.spare].map(|time| time.min());
        let each = |times: &[foilwork::quantity::Duration]| times.iter().map(|time| time.min()).collect::<Vec<_>>();
        ((one.section, one.visit, one.person), each(&one.mix_at), minutes, each(&one.looks))
    };
    day.sections.iter().map(told).collect()
}

/// Visits, finish, idle, the hands of each person and the bound.
fn ends(day: &Timeline) -> (usize, f64, f64, Vec<f64>, f64) {
    let hands = day.hands.iter().map(|hands| hands.min()).collect();
    (day.visits, day.finish.min(), day.idle.min(), hands, day.bound.min())
}

use PieceKind::{Apply, Look, Mix, Rinse, Walk};

/// By hand: the nape takes two bowls of 6 min of painting each, with a look after 5 and 10; of its 8 foils 3 are closed after 5 min (8 x 5 / 12),
/// 4 after 6, 6 after 10. On from 3 to 20, developed at 50. The hairline is on from 23 to 27 and developed at 47. So the hairline is rinsed
/// at 47 and the nape at 50. Idle hands look at 32, 38 and 44: for the nape, from 18 on, all of these count; for the hairline those from 38.
#[test]
fn a_day_of_looks_foils_and_fresh_bowls() {
    let nape = SectionWork { bowls: 2, foils: Some(8), ..section("nape", 12.0, 30.0, 60.0) };
    let work = [nape, section("hairline", 4.0, 20.0, 50.0)];
    let day = in_this_order(&work, &[], &Floor::default(), &[0, 1]).unwrap();
    let want = [
        (Mix, Some(0), 0, 0.0, 3.0, None),
        (Apply, Some(0), 0, 3.0, 8.0, Some((1, 3))),
        (Look, None, 0, 8.0, 9.0, None),
        (Apply, Some(0), 0, 9.0, 10.0, Some((4, 4))),
        (Mix, Some(0), 0, 10.0, 13.0, None),
        (Apply, Some(0), 0, 13.0, 17.0, Some((5, 6))),
        (Look, None, 0, 17.0, 18.0, None),
        (Apply, Some(0), 0, 18.0, 20.0, Some((7, 8))),
        (Mix, Some(1), 0, 20.0, 23.0, None),
        (Apply, Some(1), 0, 23.0, 27.0, None),
        (Look, None, 0, 32.0, 33.0, None),
        (Look, None, 0, 38.0, 39.0, None),
        (Look, None, 0, 44.0, 45.0, None),
        (Walk, None, 0, 45.0, 47.0, None),
        (Rinse, Some(1), 0, 47.0, 50.0, None),
        (Rinse, Some(0), 0, 50.0, 53.0, None),
    ];
    assert_eq!(pieces(&day), want);
    let nape = ((0, 1, 0), vec![0.0, 10.0], [3.0, 20.0, 50.0, 53.0, 47.0, 13.0], vec![32.0, 38.0, 44.0]);
    let hairline = ((1, 1, 0), vec![20.0], [23.0, 27.0, 47.0, 50.0, 24.0, 26.0], vec![38.0, 44.0]);
    assert_eq!(times(&day), [nape, hairline]);
    // Idle from 27 to 32, 33 to 38 and 39 to 44. The nape alone is not rinsed out before 50 + 3.
    assert_eq!((ends(&day), day.proven), ((1, 53.0, 15.0, vec![38.0], 53.0), true));
}

/// By hand: section 0 is on from 3 to 8, section 1 from 11 to 16 and developed at 26: rinsed until 29. Section 0 develops until 38, and who
/// would wait at the basin for longer than the way back and forth, 4 min, waits in the chair; developed at 32 it is worth no way, at 33
/// it is.
#[test]
fn who_has_to_wait_long_waits_in_the_chair() {
    let day = |develop: f64| {
        let work = [section("0", 5.0, develop, 60.0), section("1", 5.0, 10.0, 40.0)];
        in_this_order(&work, &[], &plain(), &[0, 1]).unwrap()
    };
    let apart = day(30.0);
    let want = [
        (Mix, Some(0), 0, 0.0, 3.0, None),
        (Apply, Some(0), 0, 3.0, 8.0, None),
        (Mix, Some(1), 0, 8.0, 11.0, None),
        (Apply, Some(1), 0, 11.0, 16.0, None),
        (Walk, None, 0, 24.0, 26.0, None),
        (Rinse, Some(1), 0, 26.0, 29.0, None),
        (Walk, None, 0, 36.0, 38.0, None),
        (Rinse, Some(0), 0, 38.0, 41.0, None),
    ];
    assert_eq!(pieces(&apart), want);
    let first = ((0, 2, 0), vec![0.0], [3.0, 8.0, 38.0, 41.0, 35.0, 25.0], vec![]);
    let second = ((1, 1, 0), vec![8.0], [11.0, 16.0, 26.0, 29.0, 15.0, 25.0], vec![]);
    assert_eq!(times(&apart), [first, second]);
    assert_eq!(ends(&apart), (2, 41.0, 8.0 + 7.0, vec![26.0], 41.0));
    let visits = |develop: f64| {
        let day = day(develop);
        (day.visits, day.sections[0].visit, day.pieces.iter().filter(|one| one.kind == Walk).count())
    };
    assert_eq!((visits(24.0), visits(25.0)), ((1, 1, 1), (2, 2, 2)));
    // Where there is no way to go, one second is enough.
    let near = |develop: f64| {
        let work = [section("0", 5.0, develop, 60.0), section("1", 5.0, 10.0, 40.0)];
        in_this_order(&work, &[], &Floor { walk: min(0.0), ..plain() }, &[0, 1]).unwrap()
    };
    assert_eq!((near(21.0).visits, near(21.0 + 1.0 / 60.0).visits), (1, 2));
    // A bowl that takes no time and a way that is none are no pieces.
    let work = [section("0", 5.0, 20.0, 60.0)];
    let bare = arrange(&work, &[], &Floor { mix: min(0.0), walk: min(0.0), ..plain() }, Effort::Quick).unwrap();
    assert_eq!(pieces(&bare), [(Apply, Some(0), 0, 0.0, 5.0, None), (Rinse, Some(0), 0, 25.0, 28.0, None)]);
    assert_eq!((bare.sections[0].mix_at.len(), ends(&bare)), (1, (1, 28.0, 20.0, vec![8.0], 28.0)));
}

/// By hand: the foil takes 0 to 21, with section 1 on from 16, developed at 41; its rinse comes 3 min after that of section 0, at 38. The
/// third is on from 24 to 29, developed at 34: rinsed before the foil, for which it would have to wait otherwise: 34 to 37, 38 to 44.
#[test]
fn a_foil_is_rinsed_section_by_section() {
    let foil = |one| SectionWork { same_foil: Some(4), ..one };
    let work =
        [foil(section("0", 10.0, 20.0, 60.0)), section("alone", 5.0, 5.0, 60.0), foil(section("1", 5.0, 20.0, 60.0))];
    let day = in_this_order(&work, &[], &plain(), &[0, 2, 1]).unwrap();
    let rinses: Vec<Told> = pieces(&day).into_iter().filter(|one| matches!(one.0, Rinse | Walk)).collect();
    let want = [
        (Walk, None, 0, 32.0, 34.0, None),
        (Rinse, Some(1), 0, 34.0, 37.0, None),
        (Rinse, Some(0), 0, 38.0, 41.0, None),
        (Rinse, Some(2), 0, 41.0, 44.0, None),
    ];
    assert_eq!(rinses, want);
    let sections = [
        ((0, 1, 0), vec![0.0], [3.0, 13.0, 38.0, 41.0, 35.0, 25.0], vec![]),
        ((2, 1, 0), vec![13.0], [16.0, 21.0, 41.0, 44.0, 25.0, 35.0], vec![]),
        ((1, 1, 0), vec![21.0], [24.0, 29.0, 34.0, 37.0, 10.0, 50.0], vec![]),
    ];
    assert_eq!(times(&day), sections);
    assert_eq!(ends(&day), (1, 44.0, 3.0 + 1.0, vec![40.0], 44.0));
}

/// By hand: both are on from 3 to 18 and developed at 48; the first pair of hands rinses one after the other.
#[test]
fn two_pairs_of_hands_paint_and_one_rinses() {
    let work = [section("left", 15.0, 30.0, 60.0), section("right", 15.0, 30.0, 60.0)];
    let day = arrange(&work, &[], &Floor { people: 2, ..plain() }, Effort::Thorough).unwrap();
    let want = [
        (Mix, Some(0), 0, 0.0, 3.0, None),
        (Mix, Some(1), 1, 0.0, 3.0, None),
        (Apply, Some(0), 0, 3.0, 18.0, None),
        (Apply, Some(1), 1, 3.0, 18.0, None),
        (Walk, None, 0, 46.0, 48.0, None),
        (Rinse, Some(0), 0, 48.0, 51.0, None),
        (Rinse, Some(1), 0, 51.0, 54.0, None),
    ];
    assert_eq!(pieces(&day), want);
    assert_eq!(times(&day).iter().map(|one| one.0).collect::<Vec<_>>(), [(0, 1, 0), (1, 1, 1)]);
    // 18 of work for each, the rinses of both and no less than the development of the first: 48 + 3.
    assert_eq!((ends(&day), day.proven), ((1, 54.0, 28.0, vec![26.0, 18.0], 51.0), false));
}

/// By hand: at 25 the foil is on: section 0 from 5 to 16, with a look after 5 min of painting, section 1 from 19 to 24. It has developed at 44, and
/// its rinse comes 3 min after that of section 0, at 41. Idle hands look at 30 and 36: for section 0 both count, from 20 on, for section 1 the
/// second, from 34 on.
#[test]
fn the_rest_of_a_day_is_told_like_a_day() {
    let foil = |one| SectionWork { same_foil: Some(4), ..one };
    let work = [foil(section("0", 10.0, 20.0, 60.0)), foil(section("1", 5.0, 20.0, 60.0))];
    let on = |section: usize, start: f64| OnHair {
        section,
        start: min(start),
        applied: None,
        at_once: false,
        left_on_until: None,
        comes_off_by: None,
    };
    let underway = Underway { now: min(25.0), on: vec![on(0, 5.0), on(1, 19.0)], rinsed: Vec::new() };
    let rest = go_on(&work, &[], &Floor::default(), &underway, Effort::Quick).unwrap().timeline;
    let want = [
        (Look, None, 0, 30.0, 31.0, None),
        (Look, None, 0, 36.0, 37.0, None),
        (Walk, None, 0, 39.0, 41.0, None),
        (Rinse, Some(0), 0, 41.0, 44.0, None),
        (Rinse, Some(1), 0, 44.0, 47.0, None),
    ];
    assert_eq!(pieces(&rest), want);
    let sections = [
        ((0, 1, 0), vec![], [5.0, 16.0, 41.0, 44.0, 36.0, 24.0], vec![30.0, 36.0]),
        ((1, 1, 0), vec![], [19.0, 24.0, 44.0, 47.0, 25.0, 35.0], vec![36.0]),
    ];
    assert_eq!(times(&rest), sections);
    assert_eq!((ends(&rest), rest.proven), ((1, 47.0, 12.0, vec![10.0], 47.0), true));
}
