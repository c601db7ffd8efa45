//! The laws of the day, and its optimum against every order tried minute by minute.

use foilwork::{
    day::{
        Before, CannotArrange, Effort, Floor, OnHair, OrderRule, PieceKind, SectionWork, Timeline, Underway, Until,
        arrange, go_on, in_this_order, share_floor,
    },
    quantity::Duration,
};
use proptest::{collection::vec, prelude::*};

fn min(value: u32) -> Duration {
    Duration::from_min(f64::from(value)).unwrap()
}

/// A section in whole minutes, so that minutes can be counted one by one.
#[derive(Debug, Clone, Copy)]
struct Plain {
    apply: u32,
    develop: u32,
    longest: u32,
}

/// Minutes to the basin.
const WALK: u32 = 2;

prop_compose! {
    fn plain()(apply in 2u32..14, develop in 4u32..30, more in 3u32..25) -> Plain {
        Plain { apply, develop, longest: apply + develop + more }
    }
}

#[derive(Debug, Clone)]
struct Case {
    sections: Vec<Plain>,
    before: Vec<(usize, usize, bool)>,
    mix: u32,
    look: u32,
    rinse: u32,
}

prop_compose! {
    fn case(most: usize)(
        sections in vec(plain(), 1..=most),
        pairs in vec((0usize..8, 0usize..8, prop::bool::weighted(0.7)), 0..5),
        mix in 0u32..4,
        look in 0u32..2,
        rinse in 1u32..5,
    ) -> Case {
        let count = sections.len();
        let before = pairs.into_iter().map(|(a, b, rinsed)| (a % count, b % count, rinsed)).filter(|(a, b, _)| a < b);
        Case { before: before.collect(), sections, mix, look, rinse }
    }
}

impl Case {
    fn work(&self) -> Vec<SectionWork> {
        let one = |(i, plain): (usize, &Plain)| {
            let foils = Some(3 + i as u32);
            let times = [plain.apply, plain.develop, plain.longest].map(min);
            SectionWork { foils, ..SectionWork::new(&format!("section {i}"), times[0], times[1], times[2]) }
        };
        self.sections.iter().enumerate().map(one).collect()
    }

    fn before(&self) -> Vec<Before> {
        let one = |(first, then, rinsed): &(usize, usize, bool)| {
            let until = if *rinsed { Until::Rinsed } else { Until::Applied };
            Before { first: *first, then: *then, until, rule: OrderRule::Stated }
        };
        self.before.iter().map(one).collect()
    }

    fn floor(&self, people: u32) -> Floor {
        let [mix, look, rinse] = [self.mix, self.look, self.rinse].map(min);
        Floor { people, mix, look, rinse, ..Floor::default() }
    }

    /// From the begin of the bowl until a section is on, counted minute by minute: a look after every five of painting.
    fn block(&self, section: usize) -> u32 {
        let (mut minutes, mut painted) = (self.mix, 0);
        while painted < self.sections[section].apply {
            painted += 1;
            minutes += 1;
            if painted % 5 == 0 && painted < self.sections[section].apply {
                minutes += self.look;
            }
        }
        minutes
    }

    /// The best over all rows of steps: an evaluation that shares nothing with the one under test.
    fn brute(&self) -> Option<u32> {
        let mut best = None;
        self.steps(0, &mut vec![None; self.sections.len()], &mut vec![false; self.sections.len()], false, &mut best);
        best
    }

    fn steps(
        &self,
        now: u32,
        begun: &mut Vec<Option<u32>>,
        rinsed: &mut Vec<bool>,
        at_basin: bool,
        best: &mut Option<u32>,
    ) {
        if rinsed.iter().all(|rinsed| *rinsed) {
            *best = Some(best.map_or(now, |best: u32| best.min(now)));
            return;
        }
        for i in 0..self.sections.len() {
            let one = self.sections[i];
            match begun[i] {
                None => {
                    let waits = self.before.iter().any(|(first, then, until)| {
                        *then == i && if *until { !rinsed[*first] } else { begun[*first].is_none() }
                    });
                    if !waits {
                        begun[i] = Some(now);
                        self.steps(now + self.block(i), begun, rinsed, false, best);
                        begun[i] = None;
                    }
                }
                Some(begin) if !rinsed[i] => {
                    let walk = if at_basin { 0 } else { WALK };
                    let at = (now + walk).max(begin + self.block(i) + one.develop);
                    if at <= begin + self.mix + one.longest {
                        rinsed[i] = true;
                        self.steps(at + self.rinse, begun, rinsed, true, best);
                        rinsed[i] = false;
                    }
                }
                Some(_) => {}
            }
        }
    }
}

/// Nobody in two places, one basin, hands and rinses apart, no strand beyond its limit, rules kept, every minute accounted.
fn holds(case: &Case, day: &Timeline, people: usize) {
    let tiny = 1e-9;
    for person in 0..people {
        let own: Vec<_> = day.pieces.iter().filter(|piece| piece.person == person).collect();
        for pair in own.windows(2) {
            assert!(pair[0].to.min() <= pair[1].from.min() + tiny, "{pair:?} of one person");
        }
    }
    let rinses: Vec<_> = day.pieces.iter().filter(|piece| piece.kind == PieceKind::Rinse).collect();
    for rinse in &rinses {
        let others = day.pieces.iter().filter(|piece| *piece != *rinse);
        let beside = |piece: &&foilwork::day::Piece| {
            piece.from.min() < rinse.to.min() - tiny && piece.to.min() > rinse.from.min() + tiny
        };
        assert_eq!(others.filter(beside).count(), 0, "the guest is at the basin");
    }
    for section in &day.sections {
        let plain = case.sections[section.section];
        let on_hair = section.rinse.min() - section.start.min();
        assert!(on_hair <= f64::from(plain.longest) + tiny, "{section:?}");
        assert!(section.rinse.min() - section.applied.min() >= f64::from(plain.develop) - tiny, "{section:?}");
        let worked = |kind| -> f64 {
            let own = day.pieces.iter().filter(|piece| piece.section == Some(section.section) && piece.kind == kind);
            own.map(|piece| piece.to.min() - piece.from.min()).sum()
        };
        assert!((worked(PieceKind::Apply) - f64::from(plain.apply)).abs() < 1e-6);
        assert!((worked(PieceKind::Mix) - f64::from(case.mix)).abs() < 1e-6);
        let foils: u32 = day
            .pieces
            .iter()
            .filter(|piece| piece.section == Some(section.section))
            .filter_map(|piece| piece.foils)
            .map(|foils| foils.last - foils.first + 1)
            .sum();
        assert_eq!(foils, 3 + section.section as u32, "every foil is closed once");
    }
    for (first, then, rinsed) in &case.before {
        let of = |place: usize| day.sections.iter().find(|one| one.section == place).unwrap();
        let over = if *rinsed { of(*first).rinsed } else { of(*first).applied };
        assert!(over.min() <= of(*then).start.min() + tiny);
    }
    assert!(day.bound.min() <= day.finish.min() + tiny);
    assert!(day.idle.min() <= day.finish.min() + tiny);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn the_best_order_is_that_of_trying_all(case in case(4)) {
        let day = arrange(&case.work(), &case.before(), &case.floor(1), Effort::Thorough);
        match case.brute() {
            Some(best) => {
                let day = day.unwrap();
                prop_assert!((day.finish.min() - f64::from(best)).abs() < 1e-6, "{} of {best}", day.finish.min());
                prop_assert!(day.proven);
                holds(&case, &day, 1);
                let quick = arrange(&case.work(), &case.before(), &case.floor(1), Effort::Quick).unwrap();
                prop_assert!(quick.bound.min() <= f64::from(best) + 1e-6 && quick.finish.min() >= f64::from(best) - 1e-6);
            }
            None => prop_assert!(matches!(day, Err(CannotArrange::Clash(_))), "{day:?}"),
        }
    }

    #[test]
    fn many_sections_keep_the_laws(case in case(9), people in 1u32..4) {
        let (work, before) = (case.work(), case.before());
        // Each section fits alone, and one after the other breaks no rule: there is always a day.
        let day = arrange(&work, &before, &case.floor(people), Effort::Quick).unwrap();
        holds(&case, &day, people as usize);
        let order: Vec<usize> = day.sections.iter().map(|one| one.section).collect();
        let again = in_this_order(&work, &before, &case.floor(people), &order).unwrap();
        prop_assert!(!day.proven || people > 1 || (again.finish.min() - day.finish.min()).abs() < 1e-6);
    }

    #[test]
    fn no_order_beats_the_proven_one(case in case(5), other in vec(0usize..1000, 7)) {
        let (work, before) = (case.work(), case.before());
        let Ok(best) = arrange(&work, &before, &case.floor(1), Effort::Thorough) else { return Ok(()) };
        let mut order: Vec<usize> = (0..work.len()).collect();
        order.sort_by_key(|i| other[*i]);
        if let Ok(day) = in_this_order(&work, &before, &case.floor(1), &order) {
            holds(&case, &day, 1);
            prop_assert!(day.finish.min() >= best.finish.min() - 1e-6);
        }
    }

    #[test]
    fn no_order_beats_the_bound(case in case(10), other in vec(0usize..1000, 12)) {
        let (work, before) = (case.work(), case.before());
        let Ok(found) = arrange(&work, &before, &case.floor(1), Effort::Quick) else { return Ok(()) };
        prop_assert!(found.proven || found.bound < found.finish);
        let mut order: Vec<usize> = (0..work.len()).collect();
        order.sort_by_key(|i| other[*i]);
        if let Ok(day) = in_this_order(&work, &before, &case.floor(1), &order) {
            prop_assert!(day.finish.min() >= found.bound.min() - 1e-6);
        }
    }

    #[test]
    fn one_more_pair_of_hands_ends_no_later(case in case(7), other in vec(0usize..1000, 7)) {
        let (work, before) = (case.work(), case.before());
        let mut order: Vec<usize> = (0..work.len()).collect();
        order.sort_by_key(|i| other[*i]);
        let (mut best, mut given) = (f64::INFINITY, f64::INFINITY);
        for people in 1..4 {
            let day = arrange(&work, &before, &case.floor(people), Effort::Quick).unwrap();
            holds(&case, &day, people as usize);
            prop_assert_eq!(day.hands.len(), people as usize);
            prop_assert!(day.finish.min() <= best + 1e-6, "{people}: {} after {best}", day.finish.min());
            best = day.finish.min();
            match in_this_order(&work, &before, &case.floor(people), &order) {
                Ok(day) => {
                    prop_assert!(day.finish.min() <= given + 1e-6, "{people}: {} after {given}", day.finish.min());
                    given = day.finish.min();
                }
                Err(_) => prop_assert!(given.is_infinite()),
            }
        }
    }

    #[test]
    fn a_larger_floor_ends_no_later(one in case(3), two in case(3), three in case(2)) {
        let days: Vec<Timeline> =
            [&one, &two, &three].iter().filter_map(|case| arrange(&case.work(), &case.before(), &case.floor(1), Effort::Quick).ok()).collect();
        let ends = |people, basins| share_floor(&days, &Floor { people, basins, ..Floor::default() }).unwrap().finish.min();
        for (people, basins) in [(1, 1), (2, 1), (1, 2), (2, 2)] {
            prop_assert!(ends(people + 1, basins) <= ends(people, basins) + 1e-6);
            prop_assert!(ends(people, basins + 1) <= ends(people, basins) + 1e-6);
        }
    }

    #[test]
    fn guests_share_people_and_basins(one in case(3), two in case(3), people in 1u32..3, basins in 1u32..3) {
        let days: Vec<Timeline> =
            [&one, &two].iter().filter_map(|case| arrange(&case.work(), &case.before(), &case.floor(1), Effort::Quick).ok()).collect();
        let floor = Floor { people, basins, ..Floor::default() };
        let shared = share_floor(&days, &floor).unwrap();
        let all: Vec<_> = shared.guests.iter().flat_map(|guest| &guest.pieces).collect();
        for (i, piece) in all.iter().enumerate() {
            let at_once = |kind: Option<PieceKind>| {
                let now = |other: &&&foilwork::day::Piece| {
                    other.from.min() <= piece.from.min() + 1e-9 && other.to.min() > piece.from.min() + 1e-9
                };
                all.iter().filter(now).filter(|other| kind.is_none_or(|kind| other.kind == kind)).count()
            };
            prop_assert!(at_once(Some(PieceKind::Rinse)) <= basins as usize);
            prop_assert!(at_once(None) <= people as usize);
            for other in &all[i + 1..] {
                let apart = piece.to.min() <= other.from.min() + 1e-9 || other.to.min() <= piece.from.min() + 1e-9;
                prop_assert!(apart || piece.person != other.person, "{piece:?} and {other:?}");
            }
        }
        prop_assert!(shared.bound.min() <= shared.finish.min() + 1e-6);
        prop_assert!(shared.finish.min() <= shared.in_turn.min() + days.len() as f64);
    }
}

/// Eight sections, no two alike, drawn once: how few visits their sets need is what proves them in a few thousand states.
#[test]
fn eight_sections_are_proven_quickly() {
    let drawn: [[[u32; 3]; 8]; 2] = [
        [[12, 36, 74], [12, 23, 47], [9, 24, 43], [16, 32, 73], [10, 35, 66], [16, 32, 66], [19, 36, 81], [10, 27, 63]],
        [[8, 36, 64], [9, 25, 54], [14, 26, 54], [18, 35, 72], [19, 32, 64], [19, 21, 68], [15, 34, 69], [17, 24, 56]],
    ];
    for sections in drawn {
        let times = sections.iter().enumerate().map(|(i, [apply, develop, longest])| {
            SectionWork::new(&format!("section {i}"), min(*apply), min(*develop), min(*longest))
        });
        let work: Vec<SectionWork> = times.collect();
        let day = arrange(&work, &[], &Floor::default(), Effort::Quick).unwrap();
        assert!(day.proven, "{} of {}", day.bound.min(), day.finish.min());
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// What is left of the best day is the best that can be made of what is left.
    #[test]
    fn to_go_on_as_planned_is_best(case in case(5), after in 1usize..6) {
        let (work, before, floor) = (case.work(), case.before(), case.floor(1));
        let Ok(best) = arrange(&work, &before, &floor, Effort::Thorough) else { return Ok(()) };
        prop_assume!(best.proven);
        // When the last of so many is on.
        let count = after.min(best.sections.len());
        let now = best.sections[count - 1].applied;
        let (rinsed, on): (Vec<_>, Vec<_>) = best.sections[..count].iter().partition(|one| one.rinsed <= now);
        let one = |one: &&foilwork::day::SectionTimes| {
            OnHair { section: one.section, start: one.start, applied: Some(one.applied), at_once: false, left_on_until: None, comes_off_by: None }
        };
        let underway =
            Underway { now, on: on.iter().map(one).collect(), rinsed: rinsed.iter().map(|one| one.section).collect() };
        let rest = go_on(&work, &before, &floor, &underway, Effort::Thorough).unwrap();
        prop_assert!(rest.overdue.is_empty());
        prop_assert!((rest.timeline.finish.min() - best.finish.min()).abs() < 1e-6, "{} of {}", rest.timeline.finish.min(), best.finish.min());
        let whole = Underway { now: min(40), on: Vec::new(), rinsed: Vec::new() };
        let later = go_on(&work, &before, &floor, &whole, Effort::Thorough).unwrap();
        prop_assert!((later.timeline.finish.min() - best.finish.min() - 40.0).abs() < 1e-6);
    }

    /// What a look leaves on is not rinsed before the next, nor after its longest where the water reaches it by then; the day ends no
    /// earlier for it, and a minute that is over changes nothing.
    #[test]
    fn what_is_left_on_is_rinsed_after_the_next_look(case in case(4), since in 0u32..40, more in 0u32..30) {
        let (work, before, floor) = (case.work(), case.before(), case.floor(1));
        let first = (0..work.len()).find(|place| case.before.iter().all(|(_, after, _)| after != place));
        let Some(section) = first else { return Ok(()) };
        let applied = case.block(section) - case.mix;
        let now = applied + since;
        let rest = |until: Option<u32>, at_once: bool| {
            let left_on_until = until.map(min);
            let on = OnHair { section, start: min(0), applied: Some(min(applied)), at_once, left_on_until, comes_off_by: None };
            go_on(&work, &before, &floor, &Underway { now: min(now), on: vec![on], rinsed: Vec::new() }, Effort::Thorough)
        };
        let (Ok(plain), Ok(left)) = (rest(None, false), rest(Some(now + more), false)) else { return Ok(()) };
        let of = |day: &Timeline| day.sections.iter().find(|one| one.section == section).unwrap().rinse.min();
        let longest = f64::from(case.sections[section].longest);
        let (rinse, want) = (of(&left.timeline), f64::from(now + more).min(longest));
        prop_assert!(rinse >= want - 1e-6, "{} before {}", rinse, want);
        prop_assert!(rinse <= longest + 1e-6 || left.overdue == [section], "{} after {}", rinse, longest);
        prop_assert!(left.timeline.finish.min() >= plain.timeline.finish.min() - 1e-6 || !plain.timeline.proven);
        let over = rest(Some(0), false).unwrap();
        prop_assert!((over.timeline.finish.min() - plain.timeline.finish.min()).abs() < 1e-6);
        // What has to come off at once does, whatever a look said.
        let (off, both) = (rest(None, true).unwrap(), rest(Some(now + more), true).unwrap());
        prop_assert!((of(&off.timeline) - of(&both.timeline)).abs() < 1e-6);
    }
}
