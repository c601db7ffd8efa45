//! Wrappers of `foilwork::lift`: strengths and starts that make sections finish together.

use super::{
    belief::Belief,
    situation::{Situation, minutes},
};
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    colour::{AnyLevel, StatedLevel},
    error::raise,
    sequence::Sequence,
};
use foilwork::{
    colour::{Level, LevelChange},
    lift,
    quantity::{Duration, MassFraction},
    source::Interval,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.lift";
    /// A section that is to finish with the others.
    ///
    /// Args:
    ///     situation: the mixture and the hair; its strength is replaced by each of those to choose from.
    ///     on_hair_ww_percent: strengths on the hair to choose from, in % w/w; a fixed one is a list of one.
    ///     start_level: the level now, or its bounds as far as its reading may be off.
    ///     target_level: the level wanted.
    ///     apply_min: how long its application takes.
    ///     longest_min: the longest that any strand may carry the mixture, from the first one.
    ///     tolerance_levels: how far the target may be overshot.
    ///     busy_before_min: how long other work keeps the hands busy before it.
    ///     belief: what is known of this hair.
    ///
    /// Raises:
    ///     FoilworkError: a value out of range.
    ///
    /// Examples:
    ///     >>> from foilwork.lift import Situation, TimedSection
    ///     >>> nape = TimedSection(Situation(4), [2, 4, 6], start_level=4, target_level=7, apply_min=10, longest_min=50)
    ///     >>> nape.tolerance_levels
    ///     0.5
    TimedSection {
        /// The mixture and the hair.
        situation: Situation,
        /// Strengths on the hair to choose from, in % w/w.
        on_hair_ww_percent: Vec<Estimate<f64>>,
        /// The level now, as far as its reading may be off.
        start_level: Estimate<f64>,
        /// The level wanted.
        target_level: f64,
        /// How long its application takes, in min.
        apply_min: f64,
        /// The longest that any strand may carry the mixture, in min.
        longest_min: f64,
        /// How far the target may be overshot.
        tolerance_levels: f64,
        /// How long other work keeps the hands busy before it, in min.
        busy_before_min: f64,
        /// What is known of this hair; ``None`` for hair that nobody has tested.
        belief: Option<Belief>,
    }
    impl {
        #[new]
        #[pyo3(signature = (situation, on_hair_ww_percent, *, start_level, target_level, apply_min, longest_min, tolerance_levels = 0.5, busy_before_min = 0.0, belief = None))]
        fn new(
            situation: Situation,
            on_hair_ww_percent: Sequence<Stated<MassFraction>>,
            start_level: StatedLevel,
            target_level: AnyLevel,
            apply_min: f64,
            longest_min: f64,
            tolerance_levels: f64,
            busy_before_min: f64,
            belief: Option<Belief>,
        ) -> PyResult<Self> {
            let made = Self {
                situation,
                on_hair_ww_percent: on_hair_ww_percent.0.into_iter().map(|stated| stated.0.into()).collect(),
                start_level: Estimate::by(start_level.0, Level::number),
                target_level: target_level.0.number(),
                apply_min,
                longest_min,
                tolerance_levels,
                busy_before_min,
                belief,
            };
            made.core()?;
            Ok(made)
        }
    }
}

impl TimedSection {
    fn core(&self) -> PyResult<lift::TimedSection> {
        let [low, best, high] = self.start_level.0.map(|level| Level::new(level).map_err(raise));
        let strength = |Estimate(bounds): &Estimate<f64>| {
            let [low, best, high] = bounds.map(|percent| MassFraction::from_ww_percent(percent).map_err(raise));
            Interval::new(low?, best?, high?).map_err(raise)
        };
        Ok(lift::TimedSection {
            belief: self.belief.as_ref().map_or_else(lift::Belief::untested, |belief| belief.core),
            situation: self.situation.core()?,
            on_hair: self.on_hair_ww_percent.iter().map(strength).collect::<PyResult<_>>()?,
            start: Interval::new(low?, best?, high?).map_err(raise)?,
            target: Level::new(self.target_level).map_err(raise)?,
            tolerance: LevelChange::from_levels(self.tolerance_levels).map_err(raise)?,
            busy_before: minutes(self.busy_before_min)?,
            apply: minutes(self.apply_min)?,
            longest: minutes(self.longest_min)?,
        })
    }
}

answer! {
    in "foilwork.lift";
    /// What is chosen for one section. Times count from the start of the first application.
    TimedChoice {
        /// The place of the strength among those to choose from, from 0.
        strength: usize,
        /// When its application begins, in min.
        begin_min: f64,
        /// When its middle strand is expected to reach the target (median), in min.
        reaches_min: f64,
        /// Level expected at the common rinse: median and 80 % interval, for the middle strand.
        level: Estimate<f64>,
    }
}

answer! {
    in "foilwork.lift";
    /// Sections that finish together.
    FinishTogether {
        /// One choice for each section, in the order given.
        sections: Vec<TimedChoice>,
        /// When all are rinsed, in min.
        rinse_min: f64,
        /// The window that was needed, in min: the one asked for, or a wider one.
        window_min: f64,
        /// By how many levels the section furthest behind falls short at the rinse.
        short_levels: f64,
    }
}

/// Choose strength and start of each section so that all reach their targets within a window before one common rinse.
///
/// The sum of the strengths is the lowest possible: the search is exact. No strand carries the mixture beyond its limit and
/// none overshoots beyond its tolerance. Where nothing fits, the window is widened by the fewest minutes, or the targets are
/// missed by the fewest levels, and the answer says by how much.
///
/// Args:
///     sections: the sections in the order in which they are applied, by one pair of hands.
///     window_min: how far apart they may reach their targets.
///
/// Returns:
///     The choices and the common rinse.
///
/// Raises:
///     FoilworkError: no section, a section without strengths, or one that cannot be applied in its longest time.
///
/// Examples:
///     >>> from foilwork.lift import Situation, TimedSection, finish_together
///     >>> def section(start):
///     ...     return TimedSection(Situation(4), [2, 6], start_level=start, target_level=7, apply_min=10,
///     ...                         longest_min=50, tolerance_levels=1)
///     >>> together = finish_together([section(4), section(6)], window_min=10)
///     >>> [choice.strength for choice in together.sections]
///     [1, 0]
#[pyfunction]
pub fn finish_together(py: Python<'_>, sections: Sequence<TimedSection>, window_min: f64) -> PyResult<FinishTogether> {
    let sections = sections.0.iter().map(TimedSection::core).collect::<PyResult<Vec<_>>>()?;
    let window = minutes(window_min)?;
    let found = py.detach(|| lift::finish_together(&sections, window)).map_err(raise)?;
    let choice = |choice: &lift::TimedChoice| TimedChoice {
        strength: choice.strength,
        begin_min: choice.begin.min(),
        reaches_min: choice.reaches.min(),
        level: Estimate::by(choice.level, Level::number),
    };
    Ok(FinishTogether {
        sections: found.sections.iter().map(choice).collect(),
        rinse_min: Duration::min(found.rinse),
        window_min: found.window.min(),
        short_levels: found.short.levels(),
    })
}
