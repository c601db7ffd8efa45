use super::swatches::white;
use crate::{
    answer::answer,
    columns::OnRefusal,
    error::{FoilworkError, raise},
    sequence::Sequence,
    target::How,
    triples::{Triples, apply_pairs, on_a_screen},
};
use foilwork::{
    colour::{self, Difference, InvalidColour, Lab, Lch, Reflectance, White, Xyz},
    column::{self, Coordinates},
};
use pyo3::{prelude::*, types::PyTuple};

/// CIEDE2000 colour difference.
///
/// Args:
///     lab_1: L*, a*, b*: three numbers or an array of shape (..., 3).
///     lab_2: the same, with the same white; the shapes broadcast.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
///         ``out``, or NaN.
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
#[pyo3(signature = (lab_1, lab_2, *, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(lab_1, lab_2, *, errors='raise', out=None, where=None)")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn ciede2000<'py>(
    py: Python<'py>,
    lab_1: Triples<'py>,
    lab_2: Triples<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let rule = |[first, second]: [[f64; 3]; 2]| {
        // The difference does not depend on which white both are counted from.
        let lab = |[l, a, b]: [f64; 3]| Lab::new(l, a, b, White::D65TwoDegree);
        let (first, second) = (lab(first)?, lab(second)?);
        Ok::<_, InvalidColour>(Difference::between(first, second).map_or(f64::NAN, |found| found.ciede2000))
    };
    let how = How::new(errors, out, r#where)?;
    apply_pairs(py, [&lab_1, &lab_2], how, rule, |[first, second], out| column::ciede2000(first, second, out))
}

/// CIELAB to tristimulus values X, Y, Z with Y = 1 for white.
///
/// Args:
///     lab: L*, a*, b*: three numbers or an array of shape (..., 3).
///     observer_degrees: 2 or 10; the white is D65.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
///         ``out``, or NaN.
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
#[pyo3(signature = (lab, *, observer_degrees = 10, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(lab, *, observer_degrees=10, errors='raise', out=None, where=None)")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn lab_to_xyz<'py>(
    py: Python<'py>,
    lab: Triples<'py>,
    observer_degrees: u8,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let white = white(observer_degrees)?;
    lab.turned(py, How::new(errors, out, r#where)?, (Coordinates::LabToXyz, white), |[l, a, b]| {
        Ok::<_, InvalidColour>(Lab::new(l, a, b, white)?.xyz().to_array())
    })
}

/// Tristimulus values X, Y, Z (Y = 1 for white) to CIELAB.
///
/// Args:
///     xyz: X, Y, Z: three numbers or an array of shape (..., 3).
///     observer_degrees: 2 or 10; the white is D65.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
///         ``out``, or NaN.
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
#[pyo3(signature = (xyz, *, observer_degrees = 10, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(xyz, *, observer_degrees=10, errors='raise', out=None, where=None)")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn xyz_to_lab<'py>(
    py: Python<'py>,
    xyz: Triples<'py>,
    observer_degrees: u8,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let white = white(observer_degrees)?;
    xyz.turned(py, How::new(errors, out, r#where)?, (Coordinates::XyzToLab, white), |[x, y, z]| {
        let lab = Xyz::new(x, y, z, white)?.lab();
        Ok::<_, InvalidColour>([lab.l(), lab.a(), lab.b()])
    })
}

/// CIELAB to lightness, chroma and hue angle in degrees.
///
/// Args:
///     lab: L*, a*, b*: three numbers or an array of shape (..., 3).
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
///         ``out``, or NaN.
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
#[pyo3(signature = (lab, *, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(lab, *, errors='raise', out=None, where=None)")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn lab_to_lch<'py>(
    py: Python<'py>,
    lab: Triples<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    lab.turned(py, How::new(errors, out, r#where)?, (Coordinates::LabToLch, White::default()), |[l, a, b]| {
        let lch = Lab::new(l, a, b, White::D65TwoDegree)?.lch();
        Ok::<_, InvalidColour>([lch.l(), lch.chroma(), lch.hue_degrees()])
    })
}

/// Lightness, chroma and hue angle to CIELAB.
///
/// Args:
///     lch: L*, C*, h in degrees: three numbers or an array of shape (..., 3).
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans, one for each colour: those that are False are not worked on, and stay as they are in
///         ``out``, or NaN.
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
#[pyo3(signature = (lch, *, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(lch, *, errors='raise', out=None, where=None)")]
#[expect(clippy::needless_pass_by_value, reason = "extracted from Python")]
pub fn lch_to_lab<'py>(
    py: Python<'py>,
    lch: Triples<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    lch.turned(py, How::new(errors, out, r#where)?, (Coordinates::LchToLab, White::default()), |[l, c, h]| {
        let lab = Lch::new(l, c, h, White::D65TwoDegree)?.lab();
        Ok::<_, InvalidColour>([lab.l(), lab.a(), lab.b()])
    })
}

answer! {
    in "foilwork.colour";
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
///     lab: L*, a*, b*: three numbers or an array of shape (..., 3).
///     observer_degrees: 2 or 10; the white is D65, adapted to that of sRGB.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a colour is refused and warn once.
///
/// Returns:
///     For numbers the colour, such as ``"#f2d16b"``, and whether it lies within the gamut of sRGB. For an array two: red,
///     green and blue from 0 to 255 as float64 of the same shape, and booleans of the shape without the last axis, False
///     where a colour is missing.
///
/// Raises:
///     FoilworkError: a coordinate out of range.
///
/// Examples:
///     >>> from foilwork.colour import lab_to_srgb
///     >>> lab_to_srgb((100, 0, 0))
///     Srgb(hex='#ffffff', in_gamut=True)
///     >>> channels, in_gamut = lab_to_srgb([[100, 0, 0], [0, 0, 0]])
///     >>> channels.tolist(), in_gamut.tolist()
///     ([[255.0, 255.0, 255.0], [0.0, 0.0, 0.0]], [True, True])
#[pyfunction]
#[pyo3(signature = (lab, *, observer_degrees = 10, errors = OnRefusal::Raise), text_signature = "(lab, *, observer_degrees=10, errors='raise')")]
pub fn lab_to_srgb<'py>(
    py: Python<'py>,
    lab: Triples<'py>,
    observer_degrees: u8,
    errors: OnRefusal,
) -> PyResult<Bound<'py, PyAny>> {
    let white = white(observer_degrees)?;
    match lab {
        Triples::One([l, a, b]) => {
            let (colour, in_gamut) = colour::Srgb::nearest(Lab::new(l, a, b, white).map_err(raise)?);
            Ok(Srgb { hex: colour.to_string(), in_gamut }.into_pyobject(py)?.into_any())
        }
        Triples::Many(labs) => {
            let rule = |[l, a, b]: [f64; 3]| Lab::new(l, a, b, white).map(drop);
            Ok(PyTuple::new(py, on_a_screen(py, &labs, white, errors, rule)?)?.into_any())
        }
    }
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
