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
