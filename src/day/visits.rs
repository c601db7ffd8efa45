//! How few visits to the basin a set of units needs, and how a day of them can end.

use super::{
    state::{State, Work},
    tables::Unit,
};
use std::collections::HashMap;

/// A way in which the units that are not on yet can end: some of them are on when the last of them is, the others are rinsed by then.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Ending {
    /// Visits before the last unit is on, at least.
    visits: i64,
    /// Rinsing in them.
    rinses: i64,
    /// From the end of the last unit until it is rinsed, at least.
    last: i64,
}

/// Tables over all sets of units, a bit for each.
pub(super) struct Visits {
    /// Which sets can be rinsed in one visit: all of a set are on when it begins, none of them too long.
    together: Vec<bool>,
    /// The least number of visits in which a set can be rinsed.
    least: Vec<u8>,
    /// By the units that are on or rinsed: the endings of the others that no other is as good as in everything.
    endings: HashMap<u64, Vec<Ending>>,
}

impl Visits {
    pub(super) fn of(work: &Work<'_>) -> Self {
        let units = &work.tables.units;
        let sets = 1usize << units.len();
        let mut by_high: Vec<(usize, &Unit)> = units.iter().enumerate().collect();
        by_high.sort_by_key(|(_, unit)| unit.high);
        // In the best order what may stay longest is begun first, so that the others count in its time and it counts in none.
        let fits = |set: usize| {
            let mut time = work.tables.walk;
            by_high.iter().filter(|(place, _)| set >> place & 1 == 1).all(|(place, unit)| {
                time += unit.block;
                let waits = work.rinsed_before.get(*place).is_some_and(|before| before & set as u64 != 0);
                time <= unit.high && !waits
            })
        };
        let together: Vec<bool> = (0..sets).map(fits).collect();
        let mut least = vec![0u8; sets];
        for set in 1..sets {
            let first = 1usize << set.trailing_zeros();
            let rest = set & !first;
            let mut fewest = u8::MAX;
            // All sets with the first unit that can be rinsed in one visit.
            let mut more = rest;
            loop {
                if together.get(first | more).is_some_and(|fit| *fit) {
                    fewest = fewest.min(1 + least.get(rest & !more).copied().unwrap_or(0));
                }
                if more == 0 || fewest == 1 {
                    break;
                }
                more = (more - 1) & rest;
            }
            if let Some(entry) = least.get_mut(set) {
                *entry = if fewest == u8::MAX { 1 } else { fewest };
            }
        }
        Self { together, least, endings: HashMap::new() }
    }

    /// The earliest finish of a state in which not all is on; `blocks` and `rinses` are those of the units that are not.
    pub(super) fn finish(&mut self, work: &Work<'_>, state: &State, blocks: i64, rinses: i64) -> i64 {
        let walk = work.tables.walk;
        let left = work.all & !state.applied;
        let (together, least) = (&self.together, &self.least);
        let endings =
            self.endings.entry(state.applied).or_insert_with(|| endings(work, together, least, left as usize));
        let all: i64 = rinses + work.windows(state).map(|one| one.rinse).sum::<i64>();
        let finish = endings.iter().map(|ending| {
            let (mut gone, mut walks) = (0, ending.visits * walk);
            // What cannot stay until the last unit is on is rinsed before; by that the last comes later, and more may have to go.
            for _ in 0..2 {
                let all_on = state.at + blocks + walks + ending.rinses + gone;
                let goes = || work.windows(state).filter(|one| one.high < all_on + walk);
                gone = goes().map(|one| one.rinse).sum();
                // At the basin that needs no walk, nor where the guest goes there for others.
                if ending.visits == 0 && !state.at_basin && goes().next().is_some() {
                    walks = walk;
                }
            }
            let now = state.at + blocks + walks;
            (now + walk + all).max(now + ending.rinses + gone + ending.last)
        });
        finish.min().unwrap_or(0)
    }
}

fn endings(work: &Work<'_>, together: &[bool], least: &[u8], left: usize) -> Vec<Ending> {
    let walk = work.tables.walk;
    let sum = |set: usize| -> (i64, i64) {
        let units = work.tables.units.iter().enumerate().filter(|(place, _)| set >> place & 1 == 1);
        units.fold((0, i64::MAX), |(rinses, last), (_, unit)| {
            (rinses + unit.rinse, last.min((unit.low - unit.block).max(walk) + unit.rinse))
        })
    };
    let mut found: Vec<Ending> = Vec::new();
    let mut on = left;
    while on > 0 {
        if together.get(on).is_some_and(|fit| *fit) {
            let before = left & !on;
            let ending = Ending {
                visits: least.get(before).map_or(0, |visits| i64::from(*visits)),
                rinses: sum(before).0,
                last: sum(on).1,
            };
            let beats = |a: &Ending, b: &Ending| a.visits <= b.visits && a.rinses <= b.rinses && a.last <= b.last;
            if !found.iter().any(|one| beats(one, &ending)) {
                found.retain(|one| !beats(&ending, one));
                found.push(ending);
            }
        }
        on = (on - 1) & left;
    }
    found
}

#[cfg(test)]
mod tests {
    use super::{
        super::{
            state::Work,
            tables::{Started, Tables, Unit},
        },
        Visits,
    };

    /// By hand, with a walk of 2. Unit 0 takes 3 and may stay 10, unit 1 takes 4 and may stay 6, unit 2 takes 5 and may stay 9, unit 3
    /// waits for the rinse of unit 0. Of two, what may stay longer goes on first: 0 and then 1, which stays 4 + 2 = 6, and 0 stays
    /// 3 + 4 + 2 = 9; 0 and then 2, 3 + 5 + 2 = 10; 2 and then 1 would stay 5 + 4 + 2 = 11. Unit 3 takes 1 and may stay 30.
    #[test]
    fn a_visit_is_for_what_can_be_on_together() {
        let unit = |block: i64, high: i64, rinsed_before: &[usize]| Unit {
            jobs: Vec::new(),
            block,
            low: block,
            high,
            rinse: 1,
            applied_before: Vec::new(),
            rinsed_before: rinsed_before.to_vec(),
        };
        let units = vec![unit(3, 10, &[]), unit(4, 6, &[]), unit(5, 9, &[]), unit(1, 30, &[0])];
        let tables = Tables { units, mix: 0, rinse: 1, walk: 2, people: 1, started: Started::default() };
        let visits = Visits::of(&Work::of(&tables, None));
        let together: Vec<usize> = (0..16).filter(|set| visits.together[*set]).collect();
        // Nothing, each alone, 0 with 1, 0 with 2, and unit 3 with 1 or with 2.
        assert_eq!(together, [0b0000, 0b0001, 0b0010, 0b0011, 0b0100, 0b0101, 0b1000, 0b1010, 0b1100]);
        assert_eq!(visits.least, [0, 1, 1, 1, 1, 1, 2, 2, 1, 2, 1, 2, 1, 2, 2, 2]);
    }

    /// What cannot even be rinsed in time alone counts as a visit, and so does each set with it in which nothing else fits.
    #[test]
    fn what_is_too_late_anyhow_is_a_visit() {
        let unit = |high: i64| Unit {
            jobs: Vec::new(),
            block: 3,
            low: 3,
            high,
            rinse: 1,
            applied_before: Vec::new(),
            rinsed_before: Vec::new(),
        };
        let tables = |highs: [i64; 2]| Tables {
            units: highs.map(unit).to_vec(),
            mix: 0,
            rinse: 1,
            walk: 2,
            people: 1,
            started: Started::default(),
        };
        let least = |highs: [i64; 2]| Visits::of(&Work::of(&tables(highs), None)).least;
        // The walk alone passes a high of 4; 5 is just kept.
        assert_eq!(least([4, 5]), [0, 1, 1, 1]);
        assert_eq!(least([5, 5]), [0, 1, 1, 2]);
        assert_eq!(least([8, 5]), [0, 1, 1, 1]);
    }
}
