//! Wrappers of `foilwork::day`: the rest of a day in its midst.

use super::{
    arrange::core,
    timeline::Timeline,
    work::{Before, Floor, SectionWork, minutes},
};
use crate::{answer::answer, error::raise, sequence::Sequence};
use foilwork::day;
use pyo3::prelude::*;

answer! {
    in "foilwork.day";
    /// A section on the hair.
    ///
    /// Args:
    ///     section: its place in the list of the work, from 0.
    ///     start_min: its first strand.
    ///     applied_min: when all of it was on; as its work says where that is not known or not over.
    ///     at_once: whether it has to come off now, developed or not.
    ///     left_on_until_min: until when a look says to leave it on, longer than its work says; no later than its longest time.
    ///     comes_off_by_min: when its longest time is over by what was noted, where that is known: it comes off no later, nor later than
    ///         its work says unless a look leaves it on.
    ///
    /// Raises:
    ///     FoilworkError: a time out of range.
    ///
    /// Examples:
    ///     >>> from foilwork.day import OnHair
    ///     >>> OnHair(0, start_min=3, applied_min=25).at_once
    ///     False
    OnHair {
        /// Its place in the list of the work, from 0.
        section: usize,
        /// Its first strand, in min.
        start_min: f64,
        /// When all of it was on, in min.
        applied_min: Option<f64>,
        /// Whether it has to come off now.
        at_once: bool,
        /// Until when a look says to leave it on, in min.
        left_on_until_min: Option<f64>,
        /// When its longest time is over by what was noted, in min.
        comes_off_by_min: Option<f64>,
    }
    impl {
        #[new]
        #[pyo3(signature = (section, *, start_min, applied_min = None, at_once = false, left_on_until_min = None, comes_off_by_min = None))]
        fn new(
            section: usize,
            start_min: f64,
            applied_min: Option<f64>,
            at_once: bool,
            left_on_until_min: Option<f64>,
            comes_off_by_min: Option<f64>,
        ) -> PyResult<Self> {
            let made = Self { section, start_min, applied_min, at_once, left_on_until_min, comes_off_by_min };
            made.core()?;
            Ok(made)
        }
    }
}

impl OnHair {
    fn core(&self) -> PyResult<day::OnHair> {
        Ok(day::OnHair {
            section: self.section,
            start: minutes(self.start_min)?,
            applied: self.applied_min.map(minutes).transpose()?,
            at_once: self.at_once,
            left_on_until: self.left_on_until_min.map(minutes).transpose()?,
            comes_off_by: self.comes_off_by_min.map(minutes).transpose()?,
        })
    }
}

answer! {
    in "foilwork.day";
    /// The rest of a day.
    RestOfDay {
        /// What is left to do, on the clock of the argument ``now_min``.
        timeline: Timeline,
        /// Sections that are on the hair for longer than they may before the water can reach them, by their places.
        overdue: Vec<usize>,
    }
}

/// Arrange what is left of a day: the same rules, the same limits, from where it stands.
///
/// What has to come off at once, or would pass its longest time, is rinsed before anything else is begun.
///
/// Args:
///     work: all the sections.
///     now_min: what time it is, on a clock of your own; all other times are of the same.
///     on: what is on the hair.
///     rinsed: what is rinsed, by its place in the list of the work.
///     before: what comes before what.
///     floor: hands, basins and the small work; one pair of hands where it is not said.
///     effort: ``"quick"`` for a few thousandths of a second, ``"thorough"`` for about one.
///
/// Returns:
///     What is left, and what is overdue.
///
/// Raises:
///     FoilworkError: as for ``arrange``; a section that is named twice, does not exist or has its first strand after now; a time more
///         than a week from the zero of the clock.
///
/// Examples:
///     >>> from foilwork.day import OnHair, SectionWork, go_on
///     >>> nape = SectionWork("nape", apply_min=15, develop_min=35, longest_min=60)
///     >>> hairline = SectionWork("hairline", apply_min=10, develop_min=20, longest_min=50)
///     >>> rest = go_on([nape, hairline], now_min=25, on=[OnHair(0, start_min=3, applied_min=25)])
///     >>> [(section.name, section.mix_at_min) for section in rest.timeline.sections]
///     [('nape', []), ('hairline', [25.0])]
#[pyfunction]
#[pyo3(signature = (work, *, now_min, on = None, rinsed = None, before = None, floor = None, effort = "quick"))]
#[expect(clippy::too_many_arguments, reason = "keywords of one Python function")]
pub fn go_on(
    py: Python<'_>,
    work: Sequence<SectionWork>,
    now_min: f64,
    on: Option<Sequence<OnHair>>,
    rinsed: Option<Sequence<usize>>,
    before: Option<Sequence<Before>>,
    floor: Option<Floor>,
    effort: &str,
) -> PyResult<RestOfDay> {
    let effort = effort.parse().map_err(raise)?;
    let (work, before, floor) = core(&work.0, before, floor)?;
    let on = on.map(|on| on.0).unwrap_or_default();
    let underway = day::Underway {
        now: minutes(now_min)?,
        on: on.iter().map(OnHair::core).collect::<PyResult<_>>()?,
        rinsed: rinsed.map(|rinsed| rinsed.0).unwrap_or_default(),
    };
    let found = py.detach(|| day::go_on(&work, &before, &floor, &underway, effort)).map_err(raise)?;
    Ok(RestOfDay { timeline: Timeline::from(&found.timeline), overdue: found.overdue })
}
