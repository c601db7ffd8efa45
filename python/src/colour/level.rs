use crate::{
    answer::{Reduced, answer},
    bounds::Estimate,
    columns::{Column, OnRefusal, apply_kernel},
    error::{FoilworkError, raise},
    target::How,
};
use foilwork::{
    colour::{self, ArithmeticError, Canvas, Hue, InvalidLevel, Naming, ProductKind, Scale},
    column::{self, Cells},
    source::{Interval, Sourced},
};
use pyo3::{prelude::*, types::PyString};

/// How light hair is, on the European naming: 1 black to 10 lightest blond, up to 12 on scales that run so.
///
/// Args:
///     level: a number, a text such as ``"6.5"`` or ``"6,5"``, or a level.
///
/// Raises:
///     FoilworkError: outside 1 to 12, or not a number.
///
/// Examples:
///     >>> from foilwork.colour import Level
///     >>> level = Level("6,5")
///     >>> level.number, level.name()
///     (6.5, 'between dark blond and medium blond')
///     >>> Level(5).name("us")
///     'medium brown'
///     >>> Level(6).underlying_pigment().neutraliser
///     ('blue', 'blue')
#[pyclass(frozen, module = "foilwork.colour", eq, ord, from_py_object)]
#[derive(Clone, Copy, PartialEq, PartialOrd)]
pub struct Level(pub colour::Level);

/// A level given as a number, a text or a ``Level``.
pub struct AnyLevel(pub colour::Level);

impl FromPyObject<'_, '_> for AnyLevel {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        if let Ok(level) = obj.extract::<Level>() {
            Ok(Self(level.0))
        } else if obj.is_instance_of::<PyString>() {
            Ok(Self(obj.extract::<&str>()?.parse().map_err(raise)?))
        } else {
            Ok(Self(colour::Level::new(obj.extract()?).map_err(raise)?))
        }
    }
}

/// A level as far as its reading may be off: one that is known exactly, or `Bounds` (or a tuple) of three.
pub struct StatedLevel(pub Interval<colour::Level>);

impl FromPyObject<'_, '_> for StatedLevel {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        if let Ok(Estimate([low, best, high])) = obj.extract::<Estimate<f64>>() {
            let [low, best, high] = [low, best, high].map(|level| colour::Level::new(level).map_err(raise));
            return Interval::new(low?, best?, high?).map(Self).map_err(raise);
        }
        obj.extract::<AnyLevel>().map(|level| Self(Interval::exact(level.0)))
    }
}

#[pymethods]
impl Level {
    #[new]
    fn new(level: AnyLevel) -> Self {
        Self(level.0)
    }

    /// The number of the level.
    #[getter]
    fn number(&self) -> f64 {
        self.0.number()
    }

    /// The name of the level, ``None`` above 10.
    ///
    /// Args:
    ///     naming: ``"european"`` or ``"us"``; the two differ at levels 5 to 7.
    ///
    /// Raises:
    ///     FoilworkError: another naming.
    #[pyo3(signature = (naming = "european"))]
    fn name(&self, naming: &str) -> PyResult<Option<String>> {
        let naming: Naming = naming.parse().map_err(raise)?;
        Ok(self.0.name(naming).map(|name| name.value.to_string()))
    }

    /// The pigment exposed when natural hair is lightened to this level, and the hue that neutralises it.
    ///
    /// Returns:
    ///     An ``UnderlyingPigment``. How much shows is ``swatch(level, lightened_from=natural)``.
    fn underlying_pigment(&self) -> UnderlyingPigment {
        underlying_pigment(AnyLevel(self.0))
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        Ok((slf.get_type().into_any(), (slf.get().0.number(),).into_pyobject(slf.py())?))
    }

    fn __float__(&self) -> f64 {
        self.0.number()
    }

    fn __hash__(&self) -> u64 {
        self.0.number().to_bits()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Level({})", self.0.number())
    }
}

/// The hue opposite on the colour wheel.
///
/// Args:
///     hue: one of the twelve hues, such as ``"yellow-orange"``.
///
/// Raises:
///     FoilworkError: not one of the twelve.
///
/// Source:
///     Pairs of primaries and secondaries as printed in a cosmetology study guide; the pairs between, common practice.
///
/// Examples:
///     >>> from foilwork.colour import complement
///     >>> complement("yellow")
///     'violet'
#[pyfunction]
pub fn complement(hue: &str) -> PyResult<&'static str> {
    Ok(hue.parse::<Hue>().map_err(raise)?.complement().words())
}

/// The pigment exposed when natural hair is lightened to a level, and the hue that neutralises it.
///
/// Args:
///     level: the level it is lightened to.
///
/// Returns:
///     An ``UnderlyingPigment``. How much shows is ``swatch(level, lightened_from=natural)``.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Source:
///     Common practice; the words are those of the trade's list.
///
/// Examples:
///     >>> from foilwork.colour import underlying_pigment
///     >>> underlying_pigment(8).exposed, underlying_pigment(8).neutraliser
///     (('yellow', 'yellow'), ('violet', 'violet'))
#[pyfunction]
pub fn underlying_pigment(level: AnyLevel) -> UnderlyingPigment {
    let Sourced { value, basis, .. } = colour::underlying_pigment(level.0);
    let words = |(darker, lighter): (Hue, Hue)| (darker.words().to_owned(), lighter.words().to_owned());
    let (darker, lighter) = value.visibility;
    UnderlyingPigment {
        words: (value.words.0.to_owned(), value.words.1.to_owned()),
        exposed: words(value.exposed),
        visibility: (darker.to_string(), lighter.to_string()),
        neutraliser: value.neutraliser.map(words),
        basis: basis.code().to_owned(),
    }
}

#[derive(Debug, thiserror::Error)]
enum Refusal {
    #[error(transparent)]
    Level(#[from] InvalidLevel),
    #[error(transparent)]
    Arithmetic(#[from] ArithmeticError),
}

pub fn product_of(product: &str) -> PyResult<ProductKind> {
    product.parse().map_err(raise)
}

/// The level a permanent shade must have to bring natural hair to the target: ``2 * target - natural``.
///
/// Args:
///     natural_level: natural level, a number or an array of any shape.
///     target_level: level wanted, a number or an array of any shape.
///     product: ``"permanent"``; every other product is refused with the reason.
///     coloured: whether the hair carries artificial colour, which colour does not lighten.
///     top_level: top of the scale the shades are numbered on, 10 or 12.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     The level of the shade, a float or an array.
///
/// Raises:
///     FoilworkError: another product, coloured hair to be lifted, or a shade outside the scale.
///
/// Source:
///     CK-12 Foundation, Ratios: The Perfect Blond (worked example). A rule of thumb: a strand test decides.
///
/// Examples:
///     >>> from foilwork.colour import formula_level
///     >>> formula_level(6, 8)
///     10.0
#[pyfunction]
#[pyo3(signature = (natural_level, target_level, *, product = "permanent", coloured = false, top_level = 10, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(natural_level, target_level, *, product='permanent', coloured=False, top_level=10, errors='raise', out=None, where=None)")]
pub fn formula_level<'py>(
    py: Python<'py>,
    natural_level: Column<'py>,
    target_level: Column<'py>,
    product: &str,
    coloured: bool,
    top_level: u8,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let product = product_of(product)?;
    let canvas = if coloured { Canvas::Coloured } else { Canvas::Natural };
    let scale = match top_level {
        10 => Scale::European10,
        12 => Scale::Twelve,
        other => return Err(FoilworkError::new_err(format!("unknown top_level {other}: give 10 or 12"))),
    };
    let rule = |[natural, target]: [f64; 2]| {
        let (natural, target) = (colour::Level::new(natural)?, colour::Level::new(target)?);
        let shade = colour::formula_level(natural, target, product, canvas, scale)?;
        Ok::<_, Refusal>([shade.value.number()])
    };
    let kernel = |[natural, target]: [Cells<'_>; 2], [out]: [&mut [f64]; 1]| {
        column::formula_levels(natural, target, (product, canvas, scale), out)
    };
    let [found] = apply_kernel(py, [&natural_level, &target_level], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}

/// The level natural hair reaches under a permanent shade: the mean of natural and applied level.
///
/// Args:
///     natural_level: natural level, a number or an array of any shape.
///     applied_level: level of the shade, a number or an array of any shape.
///     product: ``"permanent"``; every other product is refused with the reason.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     The resulting level, a float or an array. White hair takes the shade's own level instead.
///
/// Raises:
///     FoilworkError: another product, or a level outside 1 to 12.
///
/// Source:
///     A colour educator's teaching blog, 2022. A rule of thumb: a strand test decides.
///
/// Examples:
///     >>> from foilwork.colour import result_level
///     >>> result_level(2, 6)
///     4.0
#[pyfunction]
#[pyo3(signature = (natural_level, applied_level, *, product = "permanent", errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(natural_level, applied_level, *, product='permanent', errors='raise', out=None, where=None)")]
pub fn result_level<'py>(
    py: Python<'py>,
    natural_level: Column<'py>,
    applied_level: Column<'py>,
    product: &str,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let product = product_of(product)?;
    let rule = |[natural, applied]: [f64; 2]| {
        let (natural, applied) = (colour::Level::new(natural)?, colour::Level::new(applied)?);
        Ok::<_, Refusal>([colour::result_level(natural, applied, product)?.value.number()])
    };
    let kernel = |[natural, applied]: [Cells<'_>; 2], [out]: [&mut [f64]; 1]| {
        column::result_levels(natural, applied, product, out)
    };
    let [found] = apply_kernel(py, [&natural_level, &applied_level], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}

/// How far hair has to go, in levels: positive is lift, negative is deposit.
///
/// Args:
///     from_level: level now, a number or an array of any shape.
///     target_level: level wanted, a number or an array of any shape.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a value is refused and warn once.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Signed levels, a float or an array.
///
/// Raises:
///     FoilworkError: a level outside 1 to 12.
///
/// Examples:
///     >>> from foilwork.colour import lift_needed
///     >>> lift_needed(5, 9)
///     4.0
#[pyfunction]
#[pyo3(signature = (from_level, target_level, *, errors = OnRefusal::Raise, out = None, r#where = None), text_signature = "(from_level, target_level, *, errors='raise', out=None, where=None)")]
pub fn lift_needed<'py>(
    py: Python<'py>,
    from_level: Column<'py>,
    target_level: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let rule = |[from, target]: [f64; 2]| {
        let change = colour::lift_needed(colour::Level::new(from)?, colour::Level::new(target)?);
        Ok::<_, InvalidLevel>([change.levels()])
    };
    let kernel = |[from, target]: [Cells<'_>; 2], [out]: [&mut [f64]; 1]| column::lifts_needed(from, target, out);
    let [found] = apply_kernel(py, [&from_level, &target_level], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}

answer! {
    in "foilwork.colour";
    /// The warm colour left when hair is lightened to a level; made by ``Level.underlying_pigment``.
    ///
    /// Each pair runs from the darker row of the trade's list to the lighter one; for a whole level they are one.
    UnderlyingPigment {
        /// The words of the list.
        words: (String, String),
        /// The exposed hue.
        exposed: (String, String),
        /// How strongly it shows.
        visibility: (String, String),
        /// The neutralising hue, ``None`` where nothing shows.
        neutraliser: Option<(String, String)>,
        /// What the row rests on.
        basis: String,
    }
}

/// The level of the shade that brings hair to a target: the rule for lifting, the target itself for going darker.
///
/// Args:
///     natural_level: level of the hair.
///     target_level: level wanted.
///     product: ``"permanent"``, or another kind of product.
///     coloured: whether the hair carries artificial colour, which colour does not lighten.
///
/// Returns:
///     The level of the shade.
///
/// Raises:
///     FoilworkError: a lift that this product or the scale does not give.
///
/// Source:
///     CK-12 Foundation, Ratios: The Perfect Blond, for lifting; common practice for deposit.
///
/// Examples:
///     >>> from foilwork.colour import shade_level
///     >>> shade_level(6, 8), shade_level(9, 5)
///     (10.0, 5.0)
#[pyfunction]
#[pyo3(signature = (natural_level, target_level, *, product = "permanent", coloured = false))]
pub fn shade_level(natural_level: AnyLevel, target_level: AnyLevel, product: &str, coloured: bool) -> PyResult<f64> {
    let canvas = if coloured { Canvas::Coloured } else { Canvas::Natural };
    let product = product_of(product)?;
    let found = colour::shade_level(natural_level.0, target_level.0, product, canvas, Scale::European10);
    Ok(found.map_err(raise)?.value.number())
}
