//! Wrappers of `foilwork::toner`: how much of one shade, what the trade says of it, what to put back first.

use super::find::{TonerPart, exposed};
use crate::{
    answer::answer,
    bounds::Estimate,
    colour::{AnyLevel, Difference, PrePigmentation, Shade, product_of, white},
    error::{Three, raise},
    finding::Finding,
    sequence::Sequence,
};
use foilwork::{quantity::Mass, toner};
use pyo3::prelude::*;

answer! {
    in "foilwork.toner";
    /// How much of a neutralising shade balances the exposed warmth; made by ``neutralising_dose``.
    NeutralisingDose {
        /// Share of the neutralising shade, in percent of the bowl.
        share_percent: Estimate<f64>,
        /// The same, in g.
        mass_g: Estimate<f64>,
        /// Warmth before toning: CIELAB units away from natural hair as light as this.
        warmth_before: Estimate<f64>,
        /// Warmth that is left at this share.
        warmth_left: Estimate<f64>,
        /// What follows for the bowl.
        finding: Finding,
    }
}

/// The dose of a neutralising shade that takes exposed warmth down to that of natural hair.
///
/// Args:
///     neutraliser: the neutralising shade.
///     carrier: the neutral or clear shade that makes up the rest of the bowl.
///     lifted_level: level the hair was lifted to; ``None`` for white hair.
///     natural_level: natural level it was lifted from; its look is modelled.
///     seen: the exposed pigment as you see it, such as ``"orange"``; counts before the model.
///     exposed_lab: L*, a*, b* (D65, 10 degrees) measured on the lifted hair; counts before both.
///     porous: whether the hair is porous: it takes up more, so that less is enough.
///     bowl_g: mass of both shades together, in g.
///
/// Returns:
///     A ``NeutralisingDose``; more than its best estimate over-tones by the model.
///
/// Raises:
///     FoilworkError: a value out of range, or nothing that says how the hair looks.
///
/// Source:
///     The model of ``swatch``, assumed.
///
/// Examples:
///     >>> from foilwork.colour import Shade
///     >>> from foilwork.toner import neutralising_dose
///     >>> violet, plain = Shade("J9-mist", 9, ["violet"]), Shade("J9-plain", 9)
///     >>> dose = neutralising_dose(violet, plain, lifted_level=9, natural_level=5)
///     >>> dose.warmth_left.best < dose.warmth_before.best
///     True
#[pyfunction]
#[pyo3(signature = (neutraliser, carrier, *, lifted_level, natural_level = None, seen = None, exposed_lab = None, porous = false, bowl_g = 30.0))]
pub fn neutralising_dose(
    neutraliser: &Shade,
    carrier: &Shade,
    lifted_level: Option<AnyLevel>,
    natural_level: Option<AnyLevel>,
    seen: Option<&str>,
    exposed_lab: Option<Three>,
    porous: bool,
    bowl_g: f64,
) -> PyResult<NeutralisingDose> {
    let hair = exposed(lifted_level, natural_level, seen, (exposed_lab, white(10)?), porous)?;
    let bowl = Mass::from_g(bowl_g).map_err(raise)?;
    let dose = toner::neutralising_dose(&hair, &neutraliser.0, &carrier.0, bowl);
    Ok(NeutralisingDose {
        share_percent: dose.share.into(),
        mass_g: dose.mass.into(),
        warmth_before: dose.warmth_before.into(),
        warmth_left: dose.warmth_left.into(),
        finding: (&dose.finding).into(),
    })
}

/// What the trade says of one shade as a toner on this hair.
///
/// Its level is held against the hair's, its tone against the exposed warmth, and the target against what the product
/// can do.
///
/// Args:
///     shade: the shade.
///     lifted_level: level the hair was lifted to; ``None`` for white hair.
///     natural_level: natural level it was lifted from; its look is modelled.
///     seen: the exposed pigment as you see it, such as ``"orange"``; counts before the model.
///     exposed_lab: L*, a*, b* (D65, 10 degrees) measured on the lifted hair; counts before both.
///     target_level: level wanted.
///     product: kind of the product, for example ``"quasi-permanent"``.
///
/// Returns:
///     The findings; without anything to say, one that it was looked at.
///
/// Raises:
///     FoilworkError: a value out of range, or nothing that says how the hair looks.
///
/// Source:
///     Common practice.
///
/// Examples:
///     >>> from foilwork.colour import Shade
///     >>> from foilwork.toner import check_toner
///     >>> [finding.verdict for finding in check_toner(Shade("J5-plain", 5), lifted_level=9, natural_level=5)]
///     ['warning']
#[pyfunction]
#[pyo3(signature = (shade, *, lifted_level, natural_level = None, seen = None, exposed_lab = None, target_level = None, product = "quasi-permanent"))]
pub fn check_toner(
    shade: &Shade,
    lifted_level: Option<AnyLevel>,
    natural_level: Option<AnyLevel>,
    seen: Option<&str>,
    exposed_lab: Option<Three>,
    target_level: Option<AnyLevel>,
    product: &str,
) -> PyResult<Vec<Finding>> {
    let hair = exposed(lifted_level, natural_level, seen, (exposed_lab, white(10)?), false)?;
    let target = target_level.map(|level| level.0);
    Ok(toner::check_toner(&hair, &shade.0, target, product_of(product)?).iter().map(Finding::from).collect())
}

answer! {
    in "foilwork.toner";
    /// The shade to put warmth back with, weighed; made by ``pre_pigment``.
    PrePigmentMix {
        /// The level and tone that the rule asks for.
        wanted: PrePigmentation,
        /// The shade nearest to that, with the whole bowl.
        part: TonerPart,
        /// From the shade to what the rule asks for.
        residual: Difference,
    }
}

/// The shade and grams for pre-pigmentation before lightened hair is taken darker.
///
/// Args:
///     lightened_level: level of the lightened hair.
///     target_level: darker level wanted.
///     shades: the shades at hand.
///     bowl_g: mass of the bowl, without developer, in g.
///
/// Returns:
///     A ``PrePigmentMix``; ``None`` for less than two levels, or when there is no shade.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Source:
///     Common practice for what is put back; the nearest shade by CIEDE2000 in the model of ``swatch``.
///
/// Examples:
///     >>> from foilwork.colour import Shade
///     >>> from foilwork.toner import pre_pigment
///     >>> shades = [Shade("J7-moss", 7, ["green"]), Shade("J7-amber", 7, ["yellow-orange"])]
///     >>> mix = pre_pigment(9, 6, shades, 40)
///     >>> mix.part.code, mix.part.mass_g
///     ('J7-amber', 40.0)
#[pyfunction]
#[pyo3(signature = (lightened_level, target_level, shades, bowl_g = 30.0))]
pub fn pre_pigment(
    lightened_level: AnyLevel,
    target_level: AnyLevel,
    shades: Sequence<PyRef<'_, Shade>>,
    bowl_g: f64,
) -> PyResult<Option<PrePigmentMix>> {
    let shades = shades.0;
    let bowl = Mass::from_g(bowl_g).map_err(raise)?;
    let found = toner::pre_pigment(lightened_level.0, target_level.0, shades.iter().map(|shade| &shade.0), bowl);
    Ok(found.map(|mix| PrePigmentMix {
        wanted: (&mix.wanted).into(),
        part: (&mix.part).into(),
        residual: mix.residual.into(),
    }))
}
