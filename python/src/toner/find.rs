//! Wrapper of `foilwork::toner`: the search and its answer.

use crate::{
    answer::answer,
    bounds::Estimate,
    colour::{AnyLevel, Difference, Shade, Swatch, tone_of, white},
    error::{FoilworkError, Shaped, Three, raise},
    finding::Finding,
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::{
    colour::{Lab, White},
    quantity::Mass,
    toner::{self, Exposed, KnownStart, Target, TonerRequest, ToningPorosity},
};
use pyo3::prelude::*;

answer! {
    in "foilwork.toner";
    /// One shade of a mix, weighable.
    TonerPart {
        /// The code on the tube.
        code: String,
        /// Mass to weigh, in g.
        mass_g: f64,
        /// Share of the mix, in percent.
        share_percent: f64,
    }
}

impl From<&toner::TonerPart> for TonerPart {
    fn from(part: &toner::TonerPart) -> Self {
        Self { code: part.code.clone(), mass_g: part.mass.g(), share_percent: part.share.percent() }
    }
}

answer! {
    in "foilwork.toner";
    /// A mix of shades and what it is predicted to give.
    TonerMix {
        /// The shades, largest mass first.
        parts: Vec<TonerPart>,
        /// Mean level of the mix.
        level: f64,
        /// Tone of the mix in words.
        tone: String,
        /// The toned hair, with bounds.
        predicted: Swatch,
        /// From the prediction to the target: what is left undone.
        residual: Difference,
    }
}

impl From<&toner::TonerMix> for TonerMix {
    fn from(mix: &toner::TonerMix) -> Self {
        Self {
            parts: mix.parts.iter().map(Into::into).collect(),
            level: mix.level.number(),
            tone: mix.tone.to_string(),
            predicted: Swatch { swatch: mix.predicted, label: "predicted".to_owned() },
            residual: mix.residual.into(),
        }
    }
}

answer! {
    in "foilwork.toner";
    /// A toner for porous hair, beside one for hair that is not: either its time or its dye is less, never both.
    ///
    /// A range to test strands in, not a promise.
    ///
    /// Examples:
    ///     >>> from foilwork.colour import Shade
    ///     >>> from foilwork.toner import find_toner
    ///     >>> mist = [Shade("J9-mist", 9, ["violet"])]
    ///     >>> porous = find_toner(mist, lifted_level=9, natural_level=5, target_level=9, porous=True).porous
    ///     >>> round(porous.clear_g.best, 1), porous.basis
    ///     (10.0, 'assumed')
    PorousToning {
        /// Of the usual time, at the usual strength, in percent.
        time_percent: Estimate<f64>,
        /// Of the shades, at the usual time, in percent; the rest of the bowl is clear.
        dyed_percent: Estimate<f64>,
        /// Clear shade of the same kind in this bowl, in g.
        clear_g: Estimate<f64>,
        /// What the bounds rest on.
        basis: String,
    }
}

answer! {
    in "foilwork.toner";
    /// The answer of a toner search; made by ``find_toner``.
    ///
    /// A notebook shows target and prediction as swatches with their text, the mixes and the findings.
    TonerAnswer {
        /// ``"reached"``, ``"nearest-only"``, ``"already-nearer"`` or ``"too-close-to-tell"``.
        outcome: String,
        /// The answer in one sentence.
        summary: String,
        /// The warmth that the mix is chosen against, in the words of the trade's list.
        against: Option<String>,
        /// The colour asked for.
        target: Swatch,
        /// From the untoned hair to the target.
        before: Difference,
        /// The mix that is taken; a further shade counts only where it is worth 0.25 CIEDE2000, and against warmth its complement
        /// decides between mixes that the model cannot tell apart.
        best: TonerMix,
        /// Other mixes that differ in something that matters.
        alternatives: Vec<TonerMix>,
        /// What the rules of the trade say.
        findings: Vec<Finding>,
        /// How the best mix came about, a :class:`foilwork.source.TracedResult` for each shade and for what is left.
        traced: Vec<TracedResult>,
        /// On porous hair, what a mix that is meant for other hair would want instead; this one counts on the best estimate
        /// already.
        porous: Option<PorousToning>,
        /// The same as a piece of HTML.
        html: String,
    }
    impl {
        fn __str__(&self) -> String {
            self.summary.clone()
        }

        fn _repr_html_(&self) -> String {
            self.html.clone()
        }
    }
}

impl From<toner::TonerAnswer> for TonerAnswer {
    fn from(answer: toner::TonerAnswer) -> Self {
        Self {
            outcome: answer.outcome.code().to_owned(),
            summary: answer.summary(),
            against: answer.against.map(|warmth| warmth.shown()),
            target: Swatch { swatch: answer.target, label: "target".to_owned() },
            before: answer.before.into(),
            best: (&answer.best).into(),
            alternatives: answer.alternatives.iter().map(Into::into).collect(),
            findings: answer.findings.iter().map(Into::into).collect(),
            traced: answer.trail().into_iter().map(Into::into).collect(),
            porous: answer.porous.map(|porous| PorousToning {
                time_percent: porous.time.into(),
                dyed_percent: porous.dyed.into(),
                clear_g: porous.clear.into(),
                basis: porous.basis.code().to_owned(),
            }),
            html: answer.html(),
        }
    }
}

/// The hair before toning, from what is known best.
pub fn exposed(
    lifted_level: Option<AnyLevel>,
    natural_level: Option<AnyLevel>,
    seen: Option<&str>,
    (exposed_lab, white): (Option<Three>, White),
    porous: bool,
) -> PyResult<Exposed> {
    let porosity = if porous { ToningPorosity::Porous } else { ToningPorosity::Normal };
    let measured = exposed_lab.map(|Shaped((l, a, b))| Lab::new(l, a, b, white).map_err(raise)).transpose()?;
    let natural = natural_level.map(|level| level.0);
    let hair = match lifted_level {
        None => Exposed::white(),
        Some(AnyLevel(lifted)) => {
            let seen = seen.map(str::parse).transpose().map_err(raise)?;
            KnownStart { measured, seen }.exposed(natural, lifted).map_err(raise)?
        }
    };
    Ok(hair.with_porosity(porosity))
}

/// Find the mix of shades that brings exposed pigment nearest to a target.
///
/// Every choice of up to ``most_shades`` shades is tried, in masses the scale can weigh; dyes mix subtractively. Shades
/// lighter than the hair are left out. Where the hair was not measured, the complement that the trade names wins over a
/// mix that the model prefers by less than its own error.
///
/// Args:
///     shades: the shades at hand, at most 48 (24 when mixes may have 4 shades).
///     lifted_level: level the hair was lifted to; ``None`` for white hair.
///     natural_level: natural level it was lifted from; its look is modelled.
///     seen: the exposed pigment as you see it, such as ``"orange"`` or ``"pale yellow"``; counts before the model.
///     exposed_lab: L*, a*, b* measured on the lifted hair; counts before both.
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
///     >>> from foilwork.toner import find_toner
///     >>> shades = [Shade("J9-plain", 9), Shade("J9-mist", 9, ["violet"]), Shade("J8-ink", 8, ["blue-violet"])]
///     >>> answer = find_toner(shades, lifted_level=9, natural_level=5, target_level=8.5)
///     >>> sum(part.mass_g for part in answer.best.parts)
///     30.0
///     >>> answer.summary.startswith("violet against pale yellow: ")
///     True
#[pyfunction]
#[pyo3(signature = (shades, *, lifted_level, natural_level = None, seen = None, exposed_lab = None, target_level = None, target_tones = None, target_lab = None, observer_degrees = 10, porous = false, most_shades = 3, bowl_g = 30.0, division_g = 1.0))]
pub fn find_toner(
    py: Python<'_>,
    shades: Sequence<PyRef<'_, Shade>>,
    lifted_level: Option<AnyLevel>,
    natural_level: Option<AnyLevel>,
    seen: Option<&str>,
    exposed_lab: Option<Three>,
    target_level: Option<AnyLevel>,
    target_tones: Option<Vec<String>>,
    target_lab: Option<Three>,
    observer_degrees: u8,
    porous: bool,
    most_shades: usize,
    bowl_g: f64,
    division_g: f64,
) -> PyResult<TonerAnswer> {
    let shades = shades.0;
    let white = white(observer_degrees)?;
    let measured = |Shaped((l, a, b))| Lab::new(l, a, b, white).map_err(raise);
    let exposed = exposed(lifted_level, natural_level, seen, (exposed_lab, white), porous)?;
    let target = match (target_lab, target_level) {
        (Some(lab), None) if target_tones.is_none() => Target::Lab(measured(lab)?),
        (None, Some(level)) => Target::Look { level: level.0, tone: tone_of(&target_tones.unwrap_or_default())? },
        _ => return Err(FoilworkError::new_err("give one target: target_level with target_tones, or target_lab")),
    };
    let request = TonerRequest {
        exposed,
        target,
        shades: shades.iter().map(|shade| &shade.0).collect(),
        most_shades,
        bowl: Mass::from_g(bowl_g).map_err(raise)?,
        division: Mass::from_g(division_g).map_err(raise)?,
    };
    py.detach(|| toner::find_toner(&request)).map(Into::into).map_err(raise)
}
