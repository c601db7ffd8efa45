//! Wrappers of `foilwork::head`: grams and minutes.

use super::strand::Profile;
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    error::raise,
    hair::HairFacts,
};
use foilwork::{
    head::{self, Technique},
    quantity::{Area, Duration, Length, Mass, Share},
    source::Interval,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.head";
    /// What hair takes; made by ``demand``.
    Demand {
        /// Hair that is covered, in g.
        hair_g: Estimate<f64>,
        /// Mixture on it, without spare, in g.
        mix_g: Estimate<f64>,
        /// Mixture for one foil, in g, where there are foils.
        mix_per_foil_g: Option<Estimate<f64>>,
        /// Minutes for the foils, where there are foils.
        apply_min: Option<Estimate<f64>>,
    }
}

/// The grams that hair takes: a share of all of it, of which some is lifted, covered along the strand, times the take-up.
///
/// Args:
///     facts: what is known of the hair.
///     technique: as for ``profile``.
///     length_cm: mean length of the hair, or its bounds.
///     share_percent: the hair of the area worked on, of all of it.
///     taken_percent: of that hair, what is lifted.
///     lightens: whether the mix is a lightener.
///     profile: how the strand is covered; usual for the technique where it is not said.
///     foils: how many, or their bounds.
///     scalp_cm2: scalp that the mix touches; it leaves a film there.
///
/// Returns:
///     A ``Demand``.
///
/// Raises:
///     FoilworkError: a value out of range, or another technique.
///
/// Source:
///     Take-up and film are assumed, chosen so that an average head takes what the trade uses on it.
///
/// Examples:
///     >>> from foilwork.hair import HairFacts
///     >>> from foilwork.head import demand
///     >>> weaves = demand(HairFacts(), "weave", 20, taken_percent=45, lightens=True, foils=80)
///     >>> 120 < weaves.mix_g.best < 300, round(weaves.mix_per_foil_g.best * 80 / weaves.mix_g.best, 6)
///     (True, 1.0)
#[pyfunction]
#[pyo3(signature = (facts, technique, length_cm, *, share_percent = None, taken_percent = None, lightens = false, profile = None, foils = None, scalp_cm2 = None), text_signature = "(facts, technique, length_cm, *, share_percent=100, taken_percent=100, lightens=False, profile=None, foils=None, scalp_cm2=None)")]
#[allow(clippy::too_many_arguments)]
pub fn demand(
    facts: &HairFacts,
    technique: &str,
    length_cm: Stated<Length>,
    share_percent: Option<Stated<Share>>,
    taken_percent: Option<Stated<Share>>,
    lightens: bool,
    profile: Option<Profile>,
    foils: Option<Foils>,
    scalp_cm2: Option<Stated<Area>>,
) -> PyResult<Demand> {
    let technique: Technique = technique.parse().map_err(raise)?;
    let all = |stated: Option<Stated<Share>>| stated.map_or(Share::ALL.into(), |stated| stated.0);
    let covered = match profile {
        Some(profile) => profile.core()?,
        None => technique.profile(length_cm.0.best()).value,
    };
    let found = head::demand(
        &facts.core()?.head().shared(all(share_percent)),
        all(taken_percent),
        &covered,
        length_cm.0,
        head::take_up(technique, lightens).value,
        scalp_cm2.map(|stated| stated.0),
        foils.map(|foils| foils.0),
    );
    Ok(Demand {
        hair_g: found.hair.into(),
        mix_g: found.mix.into(),
        mix_per_foil_g: found.mix_per_foil.map(Into::into),
        apply_min: found.apply.map(Into::into),
    })
}

/// Mass of all the hair by its length, in g/cm, as an earlier use on it says: what was used, less the film on the scalp, over
/// what a gram of hair takes. Goes into ``HairFacts(by_use_g_per_cm=...)``.
///
/// Args:
///     used_g: what was put on the hair, not what was mixed.
///     technique: as for ``profile``.
///     length_cm: mean length of the hair, or its bounds.
///     share_percent: the hair that carried it, of all the hair.
///     lightens: whether the mix is a lightener.
///     profile: how the strand was covered; usual for the technique where it is not said.
///     scalp_cm2: scalp that the mix touched; it left a film there.
///
/// Returns:
///     ``Bounds`` in g/cm, or ``None`` where the film alone may be all that was used.
///
/// Raises:
///     FoilworkError: a value out of range, or another technique.
///
/// Source:
///     Take-up and film are assumed, and so is that one use repeats another within a factor of 1.2.
///
/// Examples:
///     >>> from foilwork.hair import HairFacts
///     >>> from foilwork.head import hair_by_use
///     >>> by_use = hair_by_use(90, "weave", 20, share_percent=45, lightens=True)
///     >>> known = HairFacts(by_use_g_per_cm=by_use).part().mass_g(20)
///     >>> guessed = HairFacts().part().mass_g(20)
///     >>> known.high / known.low < guessed.high / guessed.low
///     True
#[pyfunction]
#[pyo3(signature = (used_g, technique, length_cm, *, share_percent, lightens = false, profile = None, scalp_cm2 = None))]
pub fn hair_by_use(
    used_g: f64,
    technique: &str,
    length_cm: Stated<Length>,
    share_percent: Stated<Share>,
    lightens: bool,
    profile: Option<Profile>,
    scalp_cm2: Option<Stated<Area>>,
) -> PyResult<Option<Estimate<f64>>> {
    let technique: Technique = technique.parse().map_err(raise)?;
    let covered = match profile {
        Some(profile) => profile.core()?,
        None => technique.profile(length_cm.0.best()).value,
    };
    let (used, takes) = (Mass::from_g(used_g).map_err(raise)?, head::take_up(technique, lightens).value);
    let scalp = scalp_cm2.map(|stated| stated.0);
    let past = head::PastUse::of(used, share_percent.0, &covered, length_cm.0, takes, scalp);
    Ok(head::hair_by_use(&[past]).map(Into::into))
}

/// A count of foils, or its bounds.
pub struct Foils(Interval<u32>);

impl<'py> FromPyObject<'_, 'py> for Foils {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(count) = obj.extract::<u32>() {
            return Ok(Self(count.into()));
        }
        let Estimate([low, best, high]) = obj.extract::<Estimate<u32>>()?;
        Interval::new(low, best, high).map(Self).map_err(raise)
    }
}

/// How much mixture a gram of hair takes up, in g/g; assumed.
///
/// Args:
///     technique: as for ``profile``.
///     lightens: whether the mix is a lightener.
///
/// Returns:
///     ``Bounds`` in g/g.
///
/// Raises:
///     FoilworkError: another technique.
///
/// Source:
///     Assumed; ``"liquor-ratio"`` for the laboratory's 1 g on 1 g.
///
/// Examples:
///     >>> from foilwork.head import take_up
///     >>> take_up("weave", lightens=True).best
///     2.5
#[pyfunction]
#[pyo3(signature = (technique, *, lightens))]
pub fn take_up(technique: &str, lightens: bool) -> PyResult<Estimate<f64>> {
    Ok(head::take_up(technique.parse().map_err(raise)?, lightens).value.into())
}

/// What a mixture at the scalp leaves on it, in g/cm2; assumed from the trade's amount for a regrowth.
///
/// Returns:
///     ``Bounds`` in g/cm2.
///
/// Examples:
///     >>> from foilwork.head import film
///     >>> film().best
///     0.08
#[pyfunction]
pub fn film() -> Estimate<f64> {
    head::film().value.into()
}

/// Minutes for a foil from parting to closing; assumed until you write down your own.
///
/// Returns:
///     ``Bounds`` in min.
///
/// Examples:
///     >>> from foilwork.head import minutes_per_foil
///     >>> minutes_per_foil().best
///     1.3
#[pyfunction]
pub fn minutes_per_foil() -> Estimate<f64> {
    Estimate::by(head::minutes_per_foil().value, Duration::min)
}
