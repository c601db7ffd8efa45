//! Wrappers of `foilwork::lift`: forecasts and inverse questions.

use super::{
    belief::Belief,
    situation::{Situation, minutes},
};
use crate::{
    answer::{Reduced, answer},
    bounds::Estimate,
    colour::{AnyLevel, StatedLevel},
    columns::{Column, OnRefusal, apply, apply_bounded, apply_bounded_kernel},
    error::raise,
    sequence::Sequence,
    source::TracedResult,
    target::How,
};
use foilwork::{
    chart::{LevelChart, level_chart},
    colour::Level,
    column::levels_after,
    lift,
    quantity::{Duration, Share},
    source::Interval,
};
use pyo3::{prelude::*, types::PyType};
use std::hash::{DefaultHasher, Hash, Hasher};

answer! {
    in "foilwork.lift";
    /// When a level is reached, in min; ``None`` where the mixture is spent before.
    TimeTo {
        /// The earliest of the 80 % interval.
        early_min: Option<f64>,
        /// As likely before as after.
        median_min: Option<f64>,
        /// The latest of the 80 % interval.
        late_min: Option<f64>,
    }
}

impl From<lift::TimeTo> for TimeTo {
    fn from(time: lift::TimeTo) -> Self {
        let [early_min, median_min, late_min] = [time.early, time.median, time.late].map(|at| at.map(Duration::min));
        Self { early_min, median_min, late_min }
    }
}

/// A belief about one hair, made ready for one mixture: what all forecasts and inverse questions start from.
///
/// In a notebook it shows level against time, with its band, for 45 min.
///
/// Args:
///     situation: the mixture and the hair.
///     start_level: the level now, or its bounds as far as its reading may be off: then every answer reaches as far as those
///         from either bound.
///     belief: what is known of this hair; without it, that nobody has tested it.
///
/// Raises:
///     FoilworkError: a level off the scale.
///
/// Source:
///     The law with its two rates and two pigments is foilwork's, fitted near ``"lightening-series"``; a model, a strand
///     decides.
///
/// Examples:
///     >>> from foilwork.lift import Lightening, Situation
///     >>> lightening = Lightening(Situation(4), 4)
///     >>> low, best, high = lightening.level_after(40)
///     >>> best - low >= 2, round(best, 1)
///     (True, 7.7)
///     >>> lightening.level_after([0, 20, 40])[1].round(1).tolist()
///     [4.0, 6.7, 7.7]
///     >>> Lightening(Situation(4), (3.5, 4, 4.5)).level_after(0)
///     Bounds(low=3.5, best=4.0, high=4.5)
#[pyclass(frozen, eq, from_py_object, module = "foilwork.lift")]
#[derive(Clone, PartialEq)]
pub struct Lightening {
    pub core: lift::Lightening,
    pub situation: Situation,
    belief: Belief,
    earlier_min: Vec<f64>,
}

impl Lightening {
    fn of(situation: Situation, start: Interval<Level>, belief: Belief, earlier_min: Vec<f64>) -> PyResult<Self> {
        let mut core = lift::Lightening::new(&belief.core, &situation.core()?, start);
        for time in &earlier_min {
            core = core.after(minutes(*time)?);
        }
        Ok(Self { core, situation, belief, earlier_min })
    }
}

#[pymethods]
impl Lightening {
    #[new]
    #[pyo3(signature = (situation, start_level, belief = None))]
    fn new(py: Python<'_>, situation: Situation, start_level: StatedLevel, belief: Option<Belief>) -> PyResult<Self> {
        let belief = match belief {
            Some(belief) => belief,
            None => py.get_type::<Belief>().call0()?.extract()?,
        };
        Self::of(situation, start_level.0, belief, Vec::new())
    }

    /// The level it starts from, as far as its reading may be off.
    #[getter]
    fn start_level(&self) -> Estimate<f64> {
        Estimate::by(self.core.starts(), Level::number)
    }

    /// The same hair after an application of the same mixture: what a fresh one adds comes on top.
    ///
    /// Args:
    ///     time_min: how long that application lay on the hair.
    fn after(&self, time_min: f64) -> PyResult<Self> {
        let mut earlier = self.earlier_min.clone();
        earlier.push(time_min);
        Self::of(self.situation.clone(), self.core.starts(), self.belief.clone(), earlier)
    }

    /// How the level after a time comes about: start, mixture, time, and every lever with its bounds.
    ///
    /// Args:
    ///     time_min: min from the first strand.
    ///
    /// Returns:
    ///     A :class:`foilwork.source.TracedResult`.
    ///
    /// Examples:
    ///     >>> from foilwork.lift import Lightening, Situation
    ///     >>> Lightening(Situation(4), 4).trail(40).inputs[0].value
    ///     '4'
    fn trail(&self, time_min: f64) -> PyResult<TracedResult> {
        Ok(self.core.trail(minutes(time_min)?, self.belief.core.readings()).into())
    }

    /// The level after this time: median and 80 % interval.
    ///
    /// Args:
    ///     time_min: min from the first strand, a number or an array of any shape.
    ///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
    ///     out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
    ///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
    ///         are in ``out``, or NaN.
    ///
    /// Returns:
    ///     ``Bounds`` for a number; for an array three arrays of its shape: low, best, high.
    #[pyo3(signature = (time_min, *, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "($self, time_min, *, errors='raise', out=None, where=None)")]
    fn level_after<'py>(
        &self,
        py: Python<'py>,
        time_min: Column<'py>,
        errors: OnRefusal,
        out: Option<Bound<'py, PyAny>>,
        r#where: Option<Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let rule =
            |time: f64| Duration::from_min(time).map(|time| self.core.level_after(time).to_array().map(Level::number));
        let kernel = |times: &[f64], out: &mut [f64]| levels_after(&self.core, times, out);
        apply_bounded_kernel(py, &time_min, How::new(errors, out, r#where)?, rule, kernel)
    }

    /// The time at which the target is reached: median and 80 % interval.
    ///
    /// Args:
    ///     target_level: the level wanted.
    ///
    /// Returns:
    ///     The times; ``None`` where the mixture is spent before.
    fn time_to(&self, target_level: AnyLevel) -> TimeTo {
        self.core.time_to(target_level.0).into()
    }

    /// The min to levels, for arrays: ``inf`` where the mixture is spent before.
    ///
    /// Args:
    ///     target_level: the levels wanted, a number or an array of any shape.
    ///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
    ///     out: a tuple of three arrays of float64 to put the results into, of their shape; without it new ones are made.
    ///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
    ///         are in ``out``, or NaN.
    ///
    /// Returns:
    ///     ``Bounds`` for a number; for an array three arrays of its shape: earliest, median, latest of the 80 % interval.
    #[pyo3(signature = (target_level, *, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "($self, target_level, *, errors='raise', out=None, where=None)")]
    fn minutes_to<'py>(
        &self,
        py: Python<'py>,
        target_level: Column<'py>,
        errors: OnRefusal,
        out: Option<Bound<'py, PyAny>>,
        r#where: Option<Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let rule = |level: f64| {
            Level::new(level).map(|level| {
                let time = self.core.time_to(level);
                [time.early, time.median, time.late].map(|at| at.map_or(f64::INFINITY, Duration::min))
            })
        };
        apply_bounded(py, &target_level, How::new(errors, out, r#where)?, rule)
    }

    /// The chance in percent that the level is reached after this time. The arguments broadcast.
    ///
    /// Args:
    ///     target_level: the level wanted, a number or an array of any shape.
    ///     time_min: min from the first strand, a number or an array of any shape.
    ///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
    ///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
    ///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
    ///         are in ``out``, or NaN.
    ///
    /// Returns:
    ///     A number for numbers, an array otherwise.
    #[pyo3(signature = (target_level, time_min, *, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "($self, target_level, time_min, *, errors='raise', out=None, where=None)")]
    fn chance_by<'py>(
        &self,
        py: Python<'py>,
        target_level: Column<'py>,
        time_min: Column<'py>,
        errors: OnRefusal,
        out: Option<Bound<'py, PyAny>>,
        r#where: Option<Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyAny>> {
        let [chance] = apply(py, [&target_level, &time_min], How::new(errors, out, r#where)?, |[level, time]| {
            let (level, time) =
                (Level::new(level).map_err(Refused::Level)?, Duration::from_min(time).map_err(Refused::Time)?);
            Ok::<_, Refused>([self.core.chance_by(level, time).percent()])
        })?;
        Ok(chance)
    }

    /// The chance in percent that the level is reached after this time, with what it is from either bound of the start.
    ///
    /// Args:
    ///     target_level: the level wanted.
    ///     time_min: min from the first strand.
    fn chance_between(&self, target_level: AnyLevel, time_min: f64) -> PyResult<Estimate<f64>> {
        Ok(Estimate::by(self.core.chance_between(target_level.0, minutes(time_min)?), Share::percent))
    }

    /// Level against time as SVG: the median, the band of 80 of 100 cases, target, limit and readings, with the same in words.
    ///
    /// Args:
    ///     limit_min: the longest that a strand may carry the mixture.
    ///     target_level: the level wanted.
    ///     readings: levels that were read, each after how many min.
    ///     title: what stands above it.
    ///
    /// Returns:
    ///     The text of the picture.
    #[pyo3(signature = (limit_min = 45.0, *, target_level = None, readings = Sequence(Vec::new()), title = "Level against time"), text_signature = "($self, limit_min=45.0, *, target_level=None, readings=(), title='Level against time')")]
    fn svg(
        &self,
        limit_min: f64,
        target_level: Option<AnyLevel>,
        readings: Sequence<(f64, f64)>,
        title: &str,
    ) -> PyResult<String> {
        let read = |(time, level): (f64, f64)| Ok((minutes(time)?, Level::new(level).map_err(raise)?));
        let readings = readings.0.into_iter().map(read).collect::<PyResult<Vec<_>>>()?;
        let (limit, target) = (minutes(limit_min)?, target_level.map(|level| level.0));
        Ok(level_chart(&LevelChart { title, lightening: &self.core, limit, target, readings: &readings }))
    }

    fn _repr_svg_(&self) -> PyResult<String> {
        self.svg(45.0, None, Sequence(Vec::new()), "Level against time")
    }

    fn __hash__(&self) -> PyResult<u64> {
        let mut hasher = DefaultHasher::new();
        let level = self.core.level_after(minutes(30.0)?).to_array();
        level.map(|level| level.number().to_bits()).hash(&mut hasher);
        Ok(hasher.finish())
    }

    fn __repr__(&self) -> PyResult<String> {
        let level = self.core.level_after(minutes(30.0)?).best();
        Ok(format!("<Lightening from {}: about {level:.1} after 30 min>", self.core.start()))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        let this = slf.get().clone();
        let state = (this.situation, Estimate::by(this.core.starts(), Level::number), this.belief, this.earlier_min);
        Ok((slf.get_type().getattr("_restore")?, state.into_pyobject(slf.py())?))
    }

    #[classmethod]
    fn _restore(
        _cls: &Bound<'_, PyType>,
        situation: Situation,
        start_level: StatedLevel,
        belief: Belief,
        earlier_min: Sequence<f64>,
    ) -> PyResult<Self> {
        let earlier_min = earlier_min.0;
        Self::of(situation, start_level.0, belief, earlier_min)
    }
}

/// Why a row was refused.
#[derive(Debug)]
enum Refused {
    Level(foilwork::colour::InvalidLevel),
    Time(foilwork::quantity::InvalidQuantity),
}

impl std::fmt::Display for Refused {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Level(error) => error.fmt(f),
            Self::Time(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for Refused {}
