//! Wrapper of `foilwork::toner`: what a mix of shades gives.

use super::find::exposed;
use crate::{
    colour::{AnyLevel, Shade, Swatch, white},
    error::{FoilworkError, Three, raise},
    sequence::Sequence,
};
use foilwork::{quantity::Share, toner};
use pyo3::prelude::*;

/// Shares of thirds and sevenths add up to this much more than all, in percent.
const ROUNDING: f64 = 0.01;

/// The hair after a mix of shades.
///
/// Args:
///     mix: the shades, each with its share of all of them in percent.
///     lifted_level: level the hair was lifted to; ``None`` for white hair.
///     natural_level: natural level it was lifted from; its look is modelled.
///     seen: the exposed pigment as you see it, such as ``"orange"``; counts before the model.
///     exposed_lab: L*, a*, b* (D65, 10 degrees) measured on the lifted hair; counts before both.
///     porous: whether the hair is porous: it takes up more.
///
/// Returns:
///     A ``Swatch``: the model with its bounds. Developer is not counted: it dilutes all shades alike.
///
/// Raises:
///     FoilworkError: a value out of range, shares above 100 % together, or nothing that says how the hair looks.
///
/// Source:
///     The model of ``swatch``; absorptions add up, and how much is taken up is assumed.
///
/// Examples:
///     >>> from foilwork.colour import Shade, swatch
///     >>> from foilwork.toner import toned
///     >>> violet, plain = Shade("J9-mist", 9, ["violet"]), Shade("J9-plain", 9)
///     >>> before = swatch(9, lightened_from=5)
///     >>> after = toned([(violet, 40), (plain, 60)], lifted_level=9, natural_level=5)
///     >>> after.yellowness.best < before.yellowness.best
///     True
#[pyfunction]
#[pyo3(signature = (mix, *, lifted_level, natural_level = None, seen = None, exposed_lab = None, porous = false))]
pub fn toned(
    mix: Sequence<(PyRef<'_, Shade>, f64)>,
    lifted_level: Option<AnyLevel>,
    natural_level: Option<AnyLevel>,
    seen: Option<&str>,
    exposed_lab: Option<Three>,
    porous: bool,
) -> PyResult<Swatch> {
    let hair = exposed(lifted_level, natural_level, seen, (exposed_lab, white(10)?), porous)?;
    let part = |(shade, percent): &(PyRef<'_, Shade>, f64)| {
        let share = Share::from_percent(*percent).map_err(raise)?;
        Ok((shade.0.clone(), share))
    };
    let parts = mix.0.iter().map(part).collect::<PyResult<Vec<_>>>()?;
    let whole: f64 = parts.iter().map(|(_, share)| share.percent()).sum();
    if whole > 100.0 + ROUNDING {
        let message =
            format!("mix: the shares are {whole} % together (give that of each in all of the mix: at most 100 %)");
        return Err(FoilworkError::new_err(message));
    }
    let swatch = toner::toned(&hair, parts.iter().map(|(shade, share)| (shade, *share)));
    Ok(Swatch { swatch, label: "toned".to_owned() })
}
