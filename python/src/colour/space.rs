use super::swatches::white;
use crate::{
    answer::answer,
    columns::OnRefusal,
    error::{FoilworkError, Shaped, Three, raise},
    sequence::Sequence,
    triples::{Triples, apply_pairs},
};
use foilwork::{
    colour::{self, Difference, InvalidColour, Lab, Lch, Reflectance, White, Xyz},
    column::{self, Coordinates},
};
use pyo3::prelude::*;

/// CIEDE2000 colour difference.
///
/// Args:
///     lab_1: L*, a*, b*: three numbers or an array of shape (..., 3).
///     lab_2: the same, with the same white; the shapes broadcast.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///
/// Returns:
///     A float, or an array of the broadcast shape without the last axis. NaN stays NaN.
///
/// Raises:
///     FoilworkError: L* outside 0 to 100, a* or b* outside -200 to 200.
///
/// Source:
///     Sharma, Wu, Dalal, Color Res. Appl. 30(1):21-30, 2005.
///
/// Examples:
///     >>> from foilwork.colour import ciede2000
///     >>> round(ciede2000((50, 2.6772, -79.7751), (50, 0, -82.7485)), 4)
///     2.0425
#[pyfunction]
#[pyo3(signature = (lab_1, lab_2, *, errors = OnRefusal::Raise), text_signature = "(lab_1, lab_2, *, errors='raise')")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn ciede2000<'py>(
    py: Python<'py>,
    lab_1: Triples<'py>,
    lab_2: Triples<'py>,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    let rule = |[first, second]: [[f64; 3]; 2]| {
        // The difference does not depend on which white both are counted from.
        let lab = |[l, a, b]: [f64; 3]| Lab::new(l, a, b, White::D65TwoDegree);
        let (first, second) = (lab(first)?, lab(second)?);
        Ok::<_, InvalidColour>(Difference::between(first, second).map_or(f64::NAN, |found| found.ciede2000))
    };
    apply_pairs(py, [&lab_1, &lab_2], errors, rule, |[first, second], out| column::ciede2000(first, second, out))
}

/// CIELAB to tristimulus values X, Y, Z with Y = 1 for white.
///
/// Args:
///     lab: L*, a*, b*: three numbers or an array of shape (..., 3).
///     observer_degrees: 2 or 10; the white is D65.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///
/// Returns:
///     Three numbers or an array of the same shape.
///
/// Raises:
///     FoilworkError: a coordinate out of range.
///
/// Source:
///     CIE 1976; whites of ASTM E308, computed by the Rust crate palette.
///
/// Examples:
///     >>> from foilwork.colour import lab_to_xyz
///     >>> lab_to_xyz((100, 0, 0), observer_degrees=10)
///     (0.94811, 1.0, 1.07304)
#[pyfunction]
#[pyo3(signature = (lab, *, observer_degrees = 10, errors = OnRefusal::Raise), text_signature = "(lab, *, observer_degrees=10, errors='raise')")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn lab_to_xyz<'py>(
    py: Python<'py>,
    lab: Triples<'py>,
    observer_degrees: u8,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    let white = white(observer_degrees)?;
    lab.turned(py, errors, (Coordinates::LabToXyz, white), |[l, a, b]| {
        Ok::<_, InvalidColour>(Lab::new(l, a, b, white)?.xyz().to_array())
    })
}

/// Tristimulus values X, Y, Z (Y = 1 for white) to CIELAB.
///
/// Args:
///     xyz: X, Y, Z: three numbers or an array of shape (..., 3).
///     observer_degrees: 2 or 10; the white is D65.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///
/// Returns:
///     Three numbers or an array of the same shape.
///
/// Raises:
///     FoilworkError: a value outside 0 to 2.
///
/// Source:
///     CIE 1976; whites of ASTM E308, computed by the Rust crate palette.
///
/// Examples:
///     >>> from foilwork.colour import xyz_to_lab
///     >>> [round(value, 6) + 0.0 for value in xyz_to_lab((0.94811, 1.0, 1.07304))]
///     [100.0, 0.0, 0.0]
#[pyfunction]
#[pyo3(signature = (xyz, *, observer_degrees = 10, errors = OnRefusal::Raise), text_signature = "(xyz, *, observer_degrees=10, errors='raise')")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn xyz_to_lab<'py>(
    py: Python<'py>,
    xyz: Triples<'py>,
    observer_degrees: u8,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    let white = white(observer_degrees)?;
    xyz.turned(py, errors, (Coordinates::XyzToLab, white), |[x, y, z]| {
        let lab = Xyz::new(x, y, z, white)?.lab();
        Ok::<_, InvalidColour>([lab.l(), lab.a(), lab.b()])
    })
}

/// CIELAB to lightness, chroma and hue angle in degrees.
///
/// Args:
///     lab: L*, a*, b*: three numbers or an array of shape (..., 3).
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///
/// Returns:
///     L*, C*, h: three numbers or an array of the same shape; h is from 0 to 360 degrees.
///
/// Raises:
///     FoilworkError: a coordinate out of range.
///
/// Examples:
///     >>> from foilwork.colour import lab_to_lch
///     >>> lab_to_lch((50, 0, 20))
///     (50.0, 20.0, 90.0)
#[pyfunction]
#[pyo3(signature = (lab, *, errors = OnRefusal::Raise), text_signature = "(lab, *, errors='raise')")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn lab_to_lch<'py>(py: Python<'py>, lab: Triples<'py>, errors: OnRefusal) -> PyResult<Bound<'py, PyAny>> {
    lab.turned(py, errors, (Coordinates::LabToLch, White::default()), |[l, a, b]| {
        let lch = Lab::new(l, a, b, White::D65TwoDegree)?.lch();
        Ok::<_, InvalidColour>([lch.l(), lch.chroma(), lch.hue_degrees()])
    })
}

/// Lightness, chroma and hue angle to CIELAB.
///
/// Args:
///     lch: L*, C*, h in degrees: three numbers or an array of shape (..., 3).
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///
/// Returns:
///     L*, a*, b*: three numbers or an array of the same shape.
///
/// Raises:
///     FoilworkError: L* outside 0 to 100, C* outside 0 to 200, h outside -360 to 360 degrees.
///
/// Examples:
///     >>> from foilwork.colour import lch_to_lab
///     >>> [round(value, 9) for value in lch_to_lab((50, 20, 90))]
///     [50.0, 0.0, 20.0]
#[pyfunction]
#[pyo3(signature = (lch, *, errors = OnRefusal::Raise), text_signature = "(lch, *, errors='raise')")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn lch_to_lab<'py>(py: Python<'py>, lch: Triples<'py>, errors: OnRefusal) -> PyResult<Bound<'py, PyAny>> {
    lch.turned(py, errors, (Coordinates::LchToLab, White::default()), |[l, c, h]| {
        let lab = Lch::new(l, c, h, White::D65TwoDegree)?.lab();
        Ok::<_, InvalidColour>([lab.l(), lab.a(), lab.b()])
    })
}

answer! {
    /// A colour for a screen; made by ``lab_to_srgb``.
    Srgb {
        /// Six hexadecimal digits after a ``#``.
        hex: String,
        /// Whether it is the colour itself rather than the nearest one at the edge of what sRGB can show.
        in_gamut: bool,
    }
}

/// CIELAB to the nearest sRGB colour a screen can show.
///
/// Args:
///     lab: L*, a*, b* as three numbers.
///     observer_degrees: 2 or 10; the white is D65, adapted to that of sRGB.
///
/// Returns:
///     The colour, such as ``"#f2d16b"``, and whether it lies within the gamut of sRGB.
///
/// Raises:
///     FoilworkError: a coordinate out of range.
///
/// Examples:
///     >>> from foilwork.colour import lab_to_srgb
///     >>> lab_to_srgb((100, 0, 0))
///     Srgb(hex='#ffffff', in_gamut=True)
#[pyfunction]
#[pyo3(signature = (lab, *, observer_degrees = 10))]
pub fn lab_to_srgb(lab: Three, observer_degrees: u8) -> PyResult<Srgb> {
    let Shaped((l, a, b)) = lab;
    let lab = Lab::new(l, a, b, white(observer_degrees)?).map_err(raise)?;
    let (colour, in_gamut) = colour::Srgb::nearest(lab);
    Ok(Srgb { hex: colour.to_string(), in_gamut })
}

/// An sRGB colour to CIELAB for D65 and the 2 degree observer.
///
/// Args:
///     srgb: six hexadecimal digits after a ``#``.
///
/// Returns:
///     L*, a*, b*.
///
/// Raises:
///     FoilworkError: not such a text.
///
/// Examples:
///     >>> from foilwork.colour import srgb_to_lab
///     >>> [round(value, 1) + 0.0 for value in srgb_to_lab("#ffffff")]
///     [100.0, 0.0, 0.0]
#[pyfunction]
pub fn srgb_to_lab(srgb: &str) -> PyResult<(f64, f64, f64)> {
    let lab = srgb.parse::<colour::Srgb>().map_err(raise)?.lab();
    Ok((lab.l(), lab.a(), lab.b()))
}

/// The reflectance of hair to CIELAB under daylight D65.
///
/// Args:
///     reflectance: 31 numbers from 0 to 1, at 400 to 700 nm in steps of 10 nm.
///     observer_degrees: 2 or 10.
///
/// Returns:
///     L*, a*, b*.
///
/// Raises:
///     FoilworkError: another count of numbers, or one outside 0 to 1.
///
/// Source:
///     ISO/CIE 11664-1 and -2: matching functions of both observers, power of D65.
///
/// Examples:
///     >>> from foilwork.colour import reflectance_to_lab
///     >>> [round(value, 6) + 0.0 for value in reflectance_to_lab([1.0] * 31)]
///     [100.0, 0.0, 0.0]
#[pyfunction]
#[pyo3(signature = (reflectance, *, observer_degrees = 10))]
pub fn reflectance_to_lab(reflectance: Sequence<f64>, observer_degrees: u8) -> PyResult<(f64, f64, f64)> {
    let reflectance = reflectance.0;
    let white = white(observer_degrees)?;
    let bands = reflectance.as_slice().try_into();
    let wrong = |_| FoilworkError::new_err(format!("a reflectance has 31 numbers (got {})", reflectance.len()));
    let lab = Reflectance::new(bands.map_err(wrong)?).map_err(raise)?.lab(white);
    Ok((lab.l(), lab.a(), lab.b()))
}
