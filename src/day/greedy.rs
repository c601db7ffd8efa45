//! A day by simple habits: put on whatever comes next while nothing that is on has to go to the basin before that is done.

use super::{
    step::{Does, Step, Steps},
    tables::Tables,
};

/// When what is ready is rinsed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Habit {
    /// As late as it can be: fewer walks.
    Late,
    /// As soon as it has developed.
    Soon,
}

/// The day of this order of units; where `strict`, none is put on before those in front of it. None where a limit is passed.
pub(super) fn greedy(tables: &Tables, order: &[usize], habit: Habit, strict: bool) -> Option<Steps> {
    let started = &tables.started;
    let units = 0..tables.units.len();
    let mut day = Day {
        tables,
        free: vec![started.at; tables.people],
        on: started.on.clone(),
        rinsed: units.clone().map(|unit| started.rinsed.contains(&unit)).collect(),
        applied: units.map(|unit| started.has(unit).then_some(started.at)).collect(),
        last_rinse: None,
        steps: Vec::new(),
    };
    let mut left: Vec<usize> = order.iter().copied().filter(|unit| !started.has(*unit)).collect();
    loop {
        let next = left.iter().position(|unit| day.may_begin(*unit)).filter(|place| !strict || *place == 0);
        match next.and_then(|place| Some((place, *left.get(place)?))) {
            Some((place, unit)) if day.fits(unit, habit) => {
                left.remove(place);
                day.put_on(unit)?;
            }
            _ if day.on.is_empty() => break,
            _ => day.rinse()?,
        }
    }
    let finish = day.free.iter().copied().max().unwrap_or(started.at);
    left.is_empty().then_some(Steps { steps: day.steps, finish })
}

struct Day<'t> {
    tables: &'t Tables,
    /// When each person is free.
    free: Vec<i64>,
    /// Units on the hair, and when they were begun.
    on: Vec<(usize, i64)>,
    rinsed: Vec<bool>,
    /// When a unit is all on.
    applied: Vec<Option<i64>>,
    /// When the guest left the basin last.
    last_rinse: Option<i64>,
    steps: Vec<Step>,
}

impl Day<'_> {
    fn may_begin(&self, unit: usize) -> bool {
        let Some(unit) = self.tables.unit(unit) else { return false };
        let rinsed = |before: &usize| self.rinsed.get(*before).is_some_and(|rinsed| *rinsed);
        let applied = |before: &usize| self.applied.get(*before).is_some_and(Option::is_some);
        unit.rinsed_before.iter().all(rinsed) && unit.applied_before.iter().all(applied)
    }

    /// Who is free first.
    fn hands(&self) -> usize {
        self.free.iter().enumerate().min_by_key(|(_, free)| **free).map_or(0, |(person, _)| person)
    }

    /// When this person may begin a unit.
    fn begin(&self, unit: usize, person: usize) -> i64 {
        let before = self.tables.unit(unit).map(|unit| unit.applied_before.as_slice()).unwrap_or_default();
        // The bowl may be mixed before what it waits for is on; its first strand comes after.
        let ready = before.iter().filter_map(|before| *self.applied.get(*before)?).max();
        let free = self.free.get(person).copied().unwrap_or(0);
        ready.map_or(free, |ready| free.max(ready - self.tables.mix))
    }

    /// Whether all that is on can still be rinsed in time when this unit is put on first, and this unit as well.
    fn fits(&self, unit: usize, habit: Habit) -> bool {
        let Some(block) = self.tables.unit(unit).map(|unit| unit.block) else { return false };
        let begin = self.begin(unit, self.hands());
        let done = self.free.iter().copied().fold(begin + block, i64::max);
        let mut windows: Vec<(i64, i64, i64)> =
            self.on.iter().filter_map(|(on, begun)| self.window(*on, *begun)).collect();
        if habit == Habit::Soon && windows.iter().any(|(low, ..)| *low <= begin) {
            return false;
        }
        windows.extend(self.window(unit, begin));
        windows.sort_by_key(|(_, high, _)| *high);
        let mut at = done + self.tables.walk;
        windows.iter().all(|(low, high, rinse)| {
            let start = at.max(*low);
            at = start + rinse;
            start <= *high
        })
    }

    fn window(&self, unit: usize, begun: i64) -> Option<(i64, i64, i64)> {
        let unit = self.tables.unit(unit)?;
        Some((begun + unit.low, begun + unit.high, unit.rinse))
    }

    fn put_on(&mut self, unit: usize) -> Option<()> {
        let person = self.hands();
        let begin = self.begin(unit, person);
        let done = begin + self.tables.unit(unit)?.block;
        *self.free.get_mut(person)? = done;
        *self.applied.get_mut(unit)? = Some(done);
        self.on.push((unit, begin));
        self.steps.push(Step { does: Does::PutOn, unit, person, begin });
        Some(())
    }

    /// Rinses what has to go first; everybody waits, for the guest is at the basin.
    fn rinse(&mut self) -> Option<()> {
        let urgent = |(unit, begun): &(usize, i64)| self.window(*unit, *begun).map_or(0, |(_, high, _)| high);
        let place = self.on.iter().enumerate().min_by_key(|(_, one)| urgent(one)).map(|(place, _)| place)?;
        let (unit, begun) = self.on.remove(place);
        let (low, high, rinse) = self.window(unit, begun)?;
        let free = self.free.iter().copied().max()?;
        let walk = if self.last_rinse == Some(free) { 0 } else { self.tables.walk };
        let begin = (free + walk).max(low);
        if begin > high {
            return None;
        }
        self.free.iter_mut().for_each(|one| *one = begin + rinse);
        *self.rinsed.get_mut(unit)? = true;
        self.last_rinse = Some(begin + rinse);
        self.steps.push(Step { does: Does::Rinse, unit, person: 0, begin });
        Some(())
    }
}

#[cfg(test)]
mod tests {
    use super::{
        super::{
            step::Does,
            tables::{Started, Tables, Unit},
        },
        Habit, greedy,
    };

    /// A unit: putting it on, when it may be rinsed and when it must, its rinse.
    fn unit(block: i64, low: i64, high: i64, rinse: i64) -> Unit {
        Unit { jobs: Vec::new(), block, low, high, rinse, applied_before: Vec::new(), rinsed_before: Vec::new() }
    }

    /// Mixing takes 1, the walk 2.
    fn day(units: Vec<Unit>, people: usize, started: Started) -> Tables {
        Tables { units, mix: 1, rinse: 1, walk: 2, people, started }
    }

    /// A step as its unit, whether it is put on or rinsed, who does it and when.
    type Told = (usize, char, usize, i64);

    /// The steps and the finish.
    fn told(tables: &Tables, order: &[usize], (habit, strict): (Habit, bool)) -> Option<(Vec<Told>, i64)> {
        let found = greedy(tables, order, habit, strict)?;
        let sign = |does: Does| if does == Does::PutOn { 'p' } else { 'r' };
        let steps = found.steps.iter().map(|step| (step.unit, sign(step.does), step.person, step.begin));
        Some((steps.collect(), found.finish))
    }

    const LATE: (Habit, bool) = (Habit::Late, false);
    const SOON: (Habit, bool) = (Habit::Soon, false);

    /// By hand. Unit 1 must go by 5 + 20, unit 0 by 30: unit 1 is rinsed when it has developed, at 5 + 8.
    #[test]
    fn the_most_urgent_is_rinsed_first() {
        let two = vec![unit(5, 9, 30, 3), unit(4, 8, 20, 2)];
        let want = (vec![(0, 'p', 0, 0), (1, 'p', 0, 5), (1, 'r', 0, 13), (0, 'r', 0, 15)], 18);
        assert_eq!(told(&day(two.clone(), 1, Started::default()), &[0, 1], LATE), Some(want));
        // With a third: late, all three are on by 12. Soon, unit 0 has developed at 9, when the third would begin: both are rinsed first,
        // and the third is put on from 18 and rinsed at 18 + 6.
        let three = day([two, vec![unit(3, 6, 40, 1)]].concat(), 1, Started::default());
        let on = [(0, 'p', 0, 0), (1, 'p', 0, 5)];
        let late = [(2, 'p', 0, 9), (1, 'r', 0, 14), (0, 'r', 0, 16), (2, 'r', 0, 19)];
        assert_eq!(told(&three, &[0, 1, 2], LATE), Some(([&on[..], &late].concat(), 20)));
        let soon = [(1, 'r', 0, 13), (0, 'r', 0, 15), (2, 'p', 0, 18), (2, 'r', 0, 24)];
        assert_eq!(told(&three, &[0, 1, 2], SOON), Some(([&on[..], &soon].concat(), 25)));
        // A second later developed, it waits for nobody.
        let mut later = three.clone();
        later.units[0].low = 10;
        assert_eq!(told(&later, &[0, 1, 2], SOON), Some(([&on[..], &late].concat(), 20)));
    }

    /// By hand: unit 0 must go by 12. With 5 for unit 1 the water reaches it at 10 + 2, with 6 too late.
    #[test]
    fn nothing_is_put_on_that_makes_another_too_late() {
        let with = |block: i64| day(vec![unit(5, 8, 12, 3), unit(block, 7, 30, 2)], 1, Started::default());
        let fits = (vec![(0, 'p', 0, 0), (1, 'p', 0, 5), (0, 'r', 0, 12), (1, 'r', 0, 15)], 17);
        assert_eq!(told(&with(5), &[0, 1], LATE), Some(fits));
        let waits = (vec![(0, 'p', 0, 0), (0, 'r', 0, 8), (1, 'p', 0, 11), (1, 'r', 0, 19)], 21);
        assert_eq!(told(&with(6), &[0, 1], LATE), Some(waits));
        // Both fit, and the second would not after the rinse of the first: 3 + 4 + 2 is 9 and its rinse 6, and it must go by 3 + 11.
        let after = |high: i64| day(vec![unit(3, 3, 9, 6), unit(4, 4, high, 1)], 1, Started::default());
        let fits = (vec![(0, 'p', 0, 0), (1, 'p', 0, 3), (0, 'r', 0, 9), (1, 'r', 0, 15)], 16);
        assert_eq!(told(&after(12), &[0, 1], LATE), Some(fits));
        let waits = (vec![(0, 'p', 0, 0), (0, 'r', 0, 5), (1, 'p', 0, 11), (1, 'r', 0, 17)], 18);
        assert_eq!(told(&after(11), &[0, 1], LATE), Some(waits));
        // What does not fit even alone is no day; just in time, it is one.
        let alone = |high: i64| told(&day(vec![unit(5, 10, high, 3)], 1, Started::default()), &[0], LATE);
        assert_eq!((alone(9), alone(10)), (None, Some((vec![(0, 'p', 0, 0), (0, 'r', 0, 10)], 13))));
        let walk = |high: i64| told(&day(vec![unit(5, 5, high, 3)], 1, Started::default()), &[0], LATE);
        assert_eq!((walk(6), walk(7)), (None, Some((vec![(0, 'p', 0, 0), (0, 'r', 0, 7)], 10))));
    }

    /// By hand: the second pair of hands mixes unit 1 a minute before unit 0 is on, at 5; the first takes unit 2, and both wait for the
    /// rinses from 10 + 2 on.
    #[test]
    fn two_pairs_of_hands_share_the_work() {
        let second = Unit { applied_before: vec![0], ..unit(6, 9, 40, 1) };
        let tables = day(vec![unit(5, 8, 40, 3), second, unit(4, 7, 20, 2)], 2, Started::default());
        let steps = [(0, 'p', 0, 0), (1, 'p', 1, 4), (2, 'p', 0, 5), (2, 'r', 0, 12), (0, 'r', 0, 14), (1, 'r', 0, 17)];
        assert_eq!(told(&tables, &[0, 1, 2], LATE), Some((steps.to_vec(), 18)));
    }

    /// By hand: unit 1 waits for the rinse of unit 0, and unit 2 goes on meanwhile, but not where the order is strict.
    #[test]
    fn what_waits_for_a_rinse_lets_others_go_on_before_it() {
        let waits = Unit { rinsed_before: vec![0], ..unit(4, 6, 40, 2) };
        let tables = day(vec![unit(5, 8, 40, 3), waits, unit(3, 5, 40, 1)], 1, Started::default());
        let meanwhile =
            [(0, 'p', 0, 0), (2, 'p', 0, 5), (0, 'r', 0, 10), (1, 'p', 0, 13), (2, 'r', 0, 19), (1, 'r', 0, 20)];
        assert_eq!(told(&tables, &[0, 1, 2], LATE), Some((meanwhile.to_vec(), 22)));
        let strict =
            [(0, 'p', 0, 0), (0, 'r', 0, 8), (1, 'p', 0, 11), (2, 'p', 0, 15), (1, 'r', 0, 20), (2, 'r', 0, 22)];
        assert_eq!(told(&tables, &[0, 1, 2], (Habit::Late, true)), Some((strict.to_vec(), 23)));
        // Its turn never comes where what it waits for is behind it.
        assert_eq!(told(&tables, &[1, 0, 2], (Habit::Late, true)), None);
    }

    /// By hand: at 20 unit 0 is on since 0 and unit 2 is rinsed; the water reaches unit 0 at 22.
    #[test]
    fn a_day_in_its_midst_goes_on_from_where_it_stands() {
        let waits = Unit { applied_before: vec![0], rinsed_before: vec![2], ..unit(4, 6, 40, 2) };
        let started = Started { at: 20, on: vec![(0, 0)], rinsed: vec![2] };
        let with = |high: i64| day(vec![unit(5, 8, high, 3), waits.clone(), unit(3, 5, 40, 1)], 1, started.clone());
        assert_eq!(told(&with(21), &[0, 1, 2], LATE), None);
        let off = (vec![(0, 'r', 0, 22), (1, 'p', 0, 25), (1, 'r', 0, 31)], 33);
        assert_eq!(told(&with(22), &[0, 1, 2], LATE), Some(off));
        let stays = (vec![(1, 'p', 0, 20), (0, 'r', 0, 26), (1, 'r', 0, 29)], 31);
        assert_eq!(told(&with(26), &[0, 1, 2], LATE), Some(stays));
        let done = day(vec![unit(5, 8, 40, 3)], 1, Started { at: 20, on: Vec::new(), rinsed: vec![0] });
        assert_eq!(told(&done, &[0], LATE), Some((Vec::new(), 20)));
    }
}
