//! Wrappers of `foilwork::head`: the strand under a technique.

use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    error::raise,
    hair::{interval, rate_of},
};
use foilwork::{
    hair::GrowthRate,
    head::{self, Technique},
    quantity::{Length, Share},
};
use pyo3::prelude::*;

answer! {
    in "foilwork.head";
    /// How much of a strand is covered, at every centimetre: nothing up to the start, then rising evenly over the
    /// transition. Back-combing leaves the rest at the scalp, as it was.
    ///
    /// Args:
    ///     covered_percent: of the hair taken, what is covered behind the transition.
    ///     start_cm: from the scalp to the first colour.
    ///     transition_cm: from the first colour to where the share is covered in full.
    ///
    /// Raises:
    ///     FoilworkError: a value out of range.
    ///
    /// Examples:
    ///     >>> from foilwork.head import Profile
    ///     >>> combed = Profile(60, start_cm=5, transition_cm=4)
    ///     >>> combed.covered_at(7).best, combed.softness
    ///     (30.0, 'diffuse')
    Profile {
        /// Of the hair taken, what is covered behind the transition, in percent.
        covered_percent: Estimate<f64>,
        /// From the scalp to the first colour, in cm.
        start_cm: Estimate<f64>,
        /// From the first colour to where the share is covered in full, in cm.
        transition_cm: Estimate<f64>,
    }
    impl {
        #[new]
        fn new(covered_percent: Stated<Share>, start_cm: Stated<Length>, transition_cm: Stated<Length>) -> Self {
            Self {
                covered_percent: covered_percent.0.into(),
                start_cm: start_cm.0.into(),
                transition_cm: transition_cm.0.into(),
            }
        }

        /// The share that is covered at a place, in percent.
        ///
        /// Args:
        ///     at_cm: from the scalp.
        fn covered_at(&self, at_cm: f64) -> PyResult<Estimate<f64>> {
            Ok(self.core()?.covered_at(Length::from_cm(at_cm).map_err(raise)?).into())
        }

        /// The length that would hold as much product if it were covered in full, in cm.
        ///
        /// Args:
        ///     length_cm: of the hair, or its bounds.
        fn painted_cm(&self, length_cm: Stated<Length>) -> PyResult<Estimate<f64>> {
            Ok(self.core()?.painted(length_cm.0).into())
        }

        /// How the start looks: ``"line"``, ``"soft"`` or ``"diffuse"``.
        #[getter]
        fn softness(&self) -> PyResult<String> {
            Ok(self.core()?.softness().code().to_owned())
        }
    }
}

impl Profile {
    pub fn core(&self) -> PyResult<head::Profile> {
        Ok(head::Profile {
            covered: interval(self.covered_percent)?,
            start: interval(self.start_cm)?,
            transition: interval(self.transition_cm)?,
        })
    }
}

/// How a technique covers a strand when nothing else is stated; assumed from common practice.
///
/// Args:
///     technique: ``"weave"``, ``"slice"``, ``"back-comb"``, ``"block"``, ``"freehand"``, ``"freehand-in-foil"`` or
///         ``"regrowth"``.
///     length_cm: of the hair; on hair shorter than 20 cm start and transition shrink with it.
///
/// Returns:
///     A ``Profile``.
///
/// Raises:
///     FoilworkError: another word, or a length out of range.
///
/// Examples:
///     >>> from foilwork.head import profile
///     >>> profile("back-comb", 30).start_cm.best > profile("weave", 30).start_cm.high
///     True
#[pyfunction]
pub fn profile(technique: &str, length_cm: f64) -> PyResult<Profile> {
    let technique: Technique = technique.parse().map_err(raise)?;
    let usual = technique.profile(Length::from_cm(length_cm).map_err(raise)?).value;
    Ok(Profile {
        covered_percent: usual.covered.into(),
        start_cm: usual.start.into(),
        transition_cm: usual.transition.into(),
    })
}

/// The weeks until the regrowth shows: soon above a line, late above a start that nobody sees.
///
/// Args:
///     profile: how the strand is covered.
///     rate_cm_per_month: how fast the hair grows; without it as people do.
///
/// Returns:
///     ``Bounds`` in weeks, assumed with wide bounds.
///
/// Raises:
///     FoilworkError: a rate out of range.
///
/// Examples:
///     >>> from foilwork.head import line_shows_after, profile
///     >>> line_shows_after(profile("slice", 30)).best < line_shows_after(profile("back-comb", 30)).best
///     True
#[pyfunction]
#[pyo3(signature = (profile, rate_cm_per_month = None))]
pub fn line_shows_after(profile: &Profile, rate_cm_per_month: Option<Stated<GrowthRate>>) -> PyResult<Estimate<f64>> {
    Ok(head::line_shows_after(&profile.core()?, rate_of(rate_cm_per_month)).value.into())
}
