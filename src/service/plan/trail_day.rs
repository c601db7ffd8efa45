//! The way to the minutes of the day.

use super::{ChairClock, Plan};
use crate::{
    day::{SectionWork, Timeline, in_this_order},
    quantity::{Duration, Quantity},
    source::{Interval, TracedInput, TracedResult},
    text::traced,
};

impl Plan {
    /// How the minutes of the day in its best order come about: the time of each first strand, and the finish. Where the minutes of
    /// putting on are estimates, the bounds are those of the same order with all of them at their least, and at their most; there
    /// are none where no day can be laid out with them. Empty where no day is laid out.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// assert!(plan.trail_of_day().iter().any(|one| one.what == "finish" && one.unit == "min"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail_of_day(&self) -> Vec<TracedResult> {
        let Some(best) = self.day.as_ref().and_then(|day| day.proposed.as_ref()) else { return Vec::new() };
        let mut trail = best.trail();
        let ends = [Interval::low, Interval::high].map(|of| self.with_minutes(best, of));
        for (result, place) in trail.iter_mut().zip(0..) {
            // The minutes of the small work may all be stated: the time in the chair knows.
            if self.chair.clock == ChairClock::Day {
                result.basis = self.chair.basis;
            }
            let of = |day: &Timeline| match best.sections.get(place) {
                Some(one) => day.sections.iter().find(|there| there.section == one.section).map(|there| there.on_hair),
                None => Some(day.finish),
            };
            if let [Some(least), Some(most)] = &ends
                && let (Some(least), Some(most)) = (of(least), of(most))
            {
                let now = result.value.parse().unwrap_or_default();
                let (low, high) = (least.min().min(most.min()).min(now), least.min().max(most.min()).max(now));
                result.bounds = (high - low > 1e-9).then(|| [low.to_string(), high.to_string()]);
            }
            result.inputs.extend(self.put_on(best.sections.get(place).map(|one| one.name.as_str())));
        }
        trail
    }

    /// The minutes of putting on of a section, or of all, where they are estimates.
    fn put_on<'p>(&'p self, name: Option<&'p str>) -> impl Iterator<Item = TracedInput> + 'p {
        let own = self.head.sections.iter().filter(move |one| name.is_none_or(|name| name == one.section));
        own.filter(|one| !one.applying.time.is_exact())
            .map(|one| traced(format!("{}, putting on", one.section), one.applying.time).resting(one.applying.basis))
    }

    /// The same order with the minutes of putting on at one of their bounds; none where they are exact or cannot be laid out.
    fn with_minutes(&self, best: &Timeline, of: fn(&Interval<Duration>) -> Duration) -> Option<Timeline> {
        let day = self.day.as_ref()?;
        let bound = |work: &SectionWork| {
            let time = self.head.sections.iter().find(|one| one.section == work.name)?.applying.time;
            (!time.is_exact()).then(|| of(&time))
        };
        if !day.work.iter().any(|work| bound(work).is_some()) {
            return None;
        }
        let work: Vec<SectionWork> = day
            .work
            .iter()
            .map(|work| {
                let apply = bound(work).unwrap_or(work.apply);
                // What takes longer to put on, with the looks meanwhile, is longer on the hair.
                let busy = |apply: Duration| apply.min() + day.floor.looks_while(apply).min();
                let longest = work.longest.min() + busy(apply) - busy(work.apply);
                SectionWork { apply, longest: Duration::nearest(longest), ..work.clone() }
            })
            .collect();
        let order: Vec<usize> = best.sections.iter().map(|one| one.section).collect();
        in_this_order(&work, &day.before(), &day.floor, &order).ok()
    }
}
