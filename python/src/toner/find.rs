//! Wrapper of `foilwork::toner`: the search and its answer.

use crate::{
    colour::{AnyLevel, Shade, Swatch, tone_of, white},
    error::{FoilworkError, raise},
};
use foilwork::{
    colour::Lab,
    quantity::Mass,
    toner::{Exposed, Outcome, Porosity, Target, TonerAnswer as Answer, TonerMix, TonerRequest, find_toner},
};
use pyo3::prelude::*;

/// The answer of a toner search; made by ``toner``.
///
/// A notebook shows target and prediction as swatches with their text, the mixes and the findings.
#[pyclass(frozen, module = "foilwork.toner")]
#[derive(Clone)]
pub struct TonerAnswer(Answer);

fn parts(mix: &TonerMix) -> Vec<(String, f64)> {
    mix.parts.iter().map(|part| (part.code.clone(), part.mass.g())).collect()
}

fn loads<'py>(py: Python<'py>, value: &impl serde::Serialize) -> PyResult<Bound<'py, PyAny>> {
    let json = serde_json::to_string(value).map_err(raise)?;
    py.import("json")?.call_method1("loads", (json,))
}

#[pymethods]
impl TonerAnswer {
    /// Whether the best mix is predicted as close to the target as two readings of one tress, and closer than the hair was.
    #[getter]
    fn reached(&self) -> bool {
        self.0.outcome == Outcome::Reached
    }

    /// The best mix: codes with masses in g, largest first; a further shade counts only where it is worth 0.25 CIEDE2000.
    #[getter]
    fn mix_g(&self) -> Vec<(String, f64)> {
        parts(&self.0.best)
    }

    /// The toned hair as predicted, with bounds.
    #[getter]
    fn predicted(&self) -> Swatch {
        Swatch { swatch: self.0.best.predicted, label: "predicted".to_owned() }
    }

    /// The colour asked for.
    #[getter]
    fn target(&self) -> Swatch {
        Swatch { swatch: self.0.target, label: "target".to_owned() }
    }

    /// CIEDE2000 from the prediction to the target.
    #[getter]
    fn residual(&self) -> f64 {
        self.0.best.residual.ciede2000
    }

    /// CIEDE2000 from the untoned hair to the target.
    #[getter]
    fn before(&self) -> f64 {
        self.0.before.ciede2000
    }

    /// Other mixes as (codes with masses in g, CIEDE2000 to the target); the nearest of all is among them.
    #[getter]
    fn alternatives(&self) -> Vec<(Vec<(String, f64)>, f64)> {
        self.0.alternatives.iter().map(|mix| (parts(mix), mix.residual.ciede2000)).collect()
    }

    /// What the rules of the trade say: dicts with ``rule``, ``verdict``, ``text`` and ``sources``.
    fn findings<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        loads(py, &self.0.findings)
    }

    /// The whole answer as dicts, lists, strings and numbers; every key carries its unit.
    fn data<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        loads(py, &self.0)
    }

    fn __str__(&self) -> String {
        self.0.summary()
    }

    fn __repr__(&self) -> String {
        format!("<TonerAnswer {}>", self.0.summary())
    }

    fn _repr_html_(&self) -> String {
        self.0.html()
    }
}

/// Find the mix of shades that brings exposed pigment nearest to a target.
///
/// Every choice of up to ``most_shades`` shades is tried, in masses the scale can weigh; dyes mix subtractively.
///
/// Args:
///     shades: the shades at hand, at most 48 (24 when mixes may have 4 shades).
///     lifted_level: level the hair was lifted to.
///     natural_level: natural level it was lifted from; not needed with ``exposed_lab``.
///     exposed_lab: L*, a*, b* measured on the lifted hair, instead of the model.
///     target_level: level wanted, with ``target_tones``.
///     target_tones: hue words wanted, the main one first; empty is neutral.
///     target_lab: L*, a*, b* wanted, instead of level and tones.
///     observer_degrees: observer of the measured colours, 2 or 10.
///     porous: whether the hair is porous.
///     most_shades: most shades in a mix, from 1 to 4.
///     bowl_g: mass of all shades together, without developer, in g.
///     division_g: division of the scale, in g.
///
/// Returns:
///     A ``TonerAnswer`` with the mix, alternatives, what is left undone and findings.
///
/// Raises:
///     FoilworkError: no shades, a value out of range, a bowl the scale cannot weigh, or no single target.
///
/// Source:
///     The model of ``swatch``; how much of a shade hair takes up is assumed (half, from a quarter to all). A strand
///     test decides.
///
/// Examples:
///     >>> from foilwork.colour import Shade
///     >>> from foilwork.toner import toner
///     >>> shades = [Shade("10-0", 10), Shade("9-7", 9, ["violet"]), Shade("8-8", 8, ["blue-violet"])]
///     >>> answer = toner(shades, lifted_level=9, natural_level=5, target_level=8, target_tones=["violet"])
///     >>> sum(mass for _, mass in answer.mix_g)
///     30.0
///     >>> answer.residual < answer.before
///     True
#[pyfunction]
#[pyo3(signature = (shades, *, lifted_level, natural_level = None, exposed_lab = None, target_level = None, target_tones = None, target_lab = None, observer_degrees = 10, porous = false, most_shades = 3, bowl_g = 30.0, division_g = 1.0))]
#[expect(clippy::too_many_arguments, clippy::needless_pass_by_value, reason = "keywords of one Python function")]
pub fn toner(
    py: Python<'_>,
    shades: Vec<PyRef<'_, Shade>>,
    lifted_level: AnyLevel,
    natural_level: Option<AnyLevel>,
    exposed_lab: Option<(f64, f64, f64)>,
    target_level: Option<AnyLevel>,
    target_tones: Option<Vec<String>>,
    target_lab: Option<(f64, f64, f64)>,
    observer_degrees: u8,
    porous: bool,
    most_shades: usize,
    bowl_g: f64,
    division_g: f64,
) -> PyResult<TonerAnswer> {
    let white = white(observer_degrees)?;
    let measured = |(l, a, b)| Lab::new(l, a, b, white).map_err(raise);
    let exposed = match (exposed_lab, natural_level) {
        (Some(lab), _) => Exposed::measured(measured(lab)?, lifted_level.0),
        (None, Some(natural)) => Exposed::lightened(natural.0, lifted_level.0),
        (None, None) => return Err(FoilworkError::new_err("give natural_level, or exposed_lab measured on the hair")),
    };
    let target = match (target_lab, target_level) {
        (Some(lab), None) if target_tones.is_none() => Target::Lab(measured(lab)?),
        (None, Some(level)) => Target::Look { level: level.0, tone: tone_of(&target_tones.unwrap_or_default())? },
        _ => return Err(FoilworkError::new_err("give one target: target_level with target_tones, or target_lab")),
    };
    let request = TonerRequest {
        exposed: exposed.with_porosity(if porous { Porosity::Porous } else { Porosity::Normal }),
        target,
        shades: shades.iter().map(|shade| &shade.0).collect(),
        most_shades,
        bowl: Mass::from_g(bowl_g).map_err(raise)?,
        division: Mass::from_g(division_g).map_err(raise)?,
    };
    py.detach(|| find_toner(&request)).map(TonerAnswer).map_err(raise)
}
