//! Wrappers of `foilwork::lift`: what is believed of a hair, and which test teaches most.

use super::{
    book::{StrandReading, core},
    situation::{Situation, minutes},
};
use crate::{
    answer::{Reduced, answer},
    bounds::Estimate,
    colour::StatedLevel,
    sequence::Sequence,
};
use foilwork::{
    colour::Level,
    lift::{self, Experience},
};
use pyo3::{prelude::*, types::PyType};
use std::hash::{DefaultHasher, Hash, Hasher};

/// What is known of how a hair lightens: two rates and an end point, each with its spread.
///
/// Args:
///     readings: strand readings of the salon; without any, what is believed of hair that nobody has tested.
///     guest: whose hair it is about, by the code of the readings.
///     product: which product it is about.
///
/// Raises:
///     FoilworkError: a reading out of range.
///
/// Source:
///     Rates near the one published series of levels; see ``foilwork.source.register()``, ``"lightening-series"``.
///
/// Examples:
///     >>> from foilwork.lift import Belief, Situation, StrandReading
///     >>> strand = StrandReading(Situation(4), time_min=30, before_level=4, after_level=8.5, guest="J-014")
///     >>> known, unknown = Belief([strand], guest="J-014"), Belief()
///     >>> known.readings, known.pigment_per_min.best > unknown.pigment_per_min.best
///     (1, True)
#[pyclass(frozen, eq, from_py_object, module = "foilwork.lift")]
#[derive(Clone, PartialEq)]
pub struct Belief {
    pub core: lift::Belief,
    from: Vec<StrandReading>,
    guest: Option<String>,
    product: Option<String>,
    later: Vec<StrandReading>,
}

impl Belief {
    fn of(
        from: Vec<StrandReading>,
        guest: Option<String>,
        product: Option<String>,
        later: Vec<StrandReading>,
    ) -> PyResult<Self> {
        let known = if from.is_empty() {
            lift::Belief::untested()
        } else {
            Experience::from_readings(&core(&from)?).of(guest.as_deref(), product.as_deref())
        };
        Ok(Self { core: known.after_readings(&core(&later)?), from, guest, product, later })
    }
}

#[pymethods]
impl Belief {
    #[new]
    #[pyo3(signature = (readings = Sequence(Vec::new()), *, guest = None, product = None), text_signature = "(readings=(), *, guest=None, product=None)")]
    fn new(readings: Sequence<StrandReading>, guest: Option<String>, product: Option<String>) -> PyResult<Self> {
        Self::of(readings.0, guest, product, Vec::new())
    }

    /// Strand readings it rests on: those of the guest, or of the product where none is of the guest.
    #[getter]
    fn readings(&self) -> usize {
        self.core.readings()
    }

    /// The rate of pigment loss of the reference mixture, per min: median and 80 % interval.
    #[getter]
    fn pigment_per_min(&self) -> Estimate<f64> {
        Estimate(self.core.pigment_per_min().to_array())
    }

    /// The rate at which the oxidant is used up, per min: median and 80 % interval.
    #[getter]
    fn oxidant_per_min(&self) -> Estimate<f64> {
        Estimate(self.core.oxidant_per_min().to_array())
    }

    /// The level reached at the very end: median and 80 % interval.
    #[getter]
    fn ceiling(&self) -> Estimate<f64> {
        Estimate::by(self.core.ceiling(), Level::number)
    }

    /// The same belief after more readings of this hair and product, for example a level seen during the service.
    ///
    /// Args:
    ///     readings: the readings.
    fn after_readings(&self, readings: Sequence<StrandReading>) -> PyResult<Self> {
        let mut later = self.later.clone();
        later.extend(readings.0);
        Self::of(self.from.clone(), self.guest.clone(), self.product.clone(), later)
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        let bounds =
            [self.core.pigment_per_min(), self.core.oxidant_per_min()].map(foilwork::prelude::Interval::to_array);
        (self.readings(), bounds.map(|rate| rate.map(f64::to_bits))).hash(&mut hasher);
        hasher.finish()
    }

    fn __repr__(&self) -> String {
        format!("<Belief of {} readings: {:.4} per min>", self.readings(), self.core.pigment_per_min().best())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        let this = slf.get().clone();
        let state = (this.from, this.guest, this.product, this.later);
        Ok((slf.get_type().getattr("_restore")?, state.into_pyobject(slf.py())?))
    }

    #[classmethod]
    fn _restore(
        _cls: &Bound<'_, PyType>,
        from: Sequence<StrandReading>,
        guest: Option<String>,
        product: Option<String>,
        later: Sequence<StrandReading>,
    ) -> PyResult<Self> {
        let from = from.0;
        let later = later.0;
        Self::of(from, guest, product, later)
    }
}

answer! {
    in "foilwork.lift";
    /// What strand tests have pinned down, and which test to do next.
    Advice {
        /// What is known and what is not, in words.
        known: String,
        /// After how many min the next reading narrows the forecast most.
        read_at_min: f64,
        /// Width of the 80 % interval of the level at the planned time now, in levels.
        width_now: f64,
        /// The same after that reading, if it comes out as expected.
        width_then: f64,
    }
}

/// What the readings so far have and have not pinned down, and when to read the next strand.
///
/// Args:
///     belief: what is known.
///     situation: the mixture and the hair.
///     start_level: the level now, or its bounds as far as its reading may be off.
///     planned_min: the time that is planned.
///
/// Returns:
///     The advice. The times tried are every five minutes up to the planned one.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.lift import Belief, Situation, advice
///     >>> told = advice(Belief(), Situation(4), start_level=4, planned_min=40)
///     >>> told.width_then < told.width_now
///     True
#[pyfunction]
pub fn advice(belief: Belief, situation: Situation, start_level: StatedLevel, planned_min: f64) -> PyResult<Advice> {
    let told = lift::advice(&belief.core, &situation.core()?, start_level.0, minutes(planned_min)?);
    Ok(Advice {
        known: told.known,
        read_at_min: told.read_at.min(),
        width_now: told.width_now,
        width_then: told.width_then,
    })
}
