use super::{level::AnyLevel, shade::tone_of};
use crate::{
    answer::{Reduced, answer},
    bounds::Estimate,
    error::{FoilworkError, Shaped, Three, raise},
    sequence::Sequence,
};
use foilwork::{
    colour::{self, Hue, Lab, White},
    quantity::Share,
    source::Basis,
};
use pyo3::prelude::*;
use std::hash::{DefaultHasher, Hash, Hasher};

answer! {
    in "foilwork.colour";
    /// How far two colours are apart, as one number and as the directions a colourist names; made by ``difference_to``.
    Difference {
        /// CIEDE2000 colour difference.
        ciede2000: f64,
        /// L* of the second minus the first: above 0 is lighter.
        lighter: f64,
        /// a* of the second minus the first: above 0 is redder, below greener.
        redder: f64,
        /// b* of the second minus the first: above 0 is yellower, below bluer.
        yellower: f64,
        /// Chroma of the second minus the first.
        more_intense: f64,
    }
}

impl From<colour::Difference> for Difference {
    fn from(found: colour::Difference) -> Self {
        let colour::Difference { ciede2000, lighter, redder, yellower, more_intense } = found;
        Self { ciede2000, lighter, redder, yellower, more_intense }
    }
}

/// A modelled or measured colour of hair, with bounds; made by ``swatch``.
///
/// A notebook shows it as a patch of colour with the same facts in words beside it.
#[pyclass(frozen, eq, from_py_object, module = "foilwork.colour")]
#[derive(Clone, PartialEq)]
pub struct Swatch {
    pub swatch: colour::Swatch,
    pub label: String,
}

#[pymethods]
impl Swatch {
    /// L*, a*, b* of the best estimate (D65, 10 degrees unless measured otherwise).
    #[getter]
    fn lab(&self) -> (f64, f64, f64) {
        let lab = self.swatch.lab();
        (lab.l(), lab.a(), lab.b())
    }

    /// L* with its bounds over the assumptions of the model.
    #[getter]
    fn lightness(&self) -> Estimate<f64> {
        self.swatch.lightness().into()
    }

    /// a* with its bounds.
    #[getter]
    fn redness(&self) -> Estimate<f64> {
        self.swatch.redness().into()
    }

    /// b* with its bounds.
    #[getter]
    fn yellowness(&self) -> Estimate<f64> {
        self.swatch.yellowness().into()
    }

    /// Chroma with its bounds.
    #[getter]
    fn chroma(&self) -> Estimate<f64> {
        self.swatch.chroma().into()
    }

    /// Largest CIEDE2000 from the best estimate to any set of assumptions.
    #[getter]
    fn uncertainty(&self) -> f64 {
        self.swatch.uncertainty()
    }

    /// The nearest colour a screen can show, such as ``"#9d8b6c"``.
    #[getter]
    fn srgb(&self) -> String {
        self.swatch.srgb().to_string()
    }

    /// The hue in the words of the wheel, ``None`` for a colour too grey to tell.
    #[getter]
    fn hue(&self) -> Option<&'static str> {
        self.swatch.hue().map(Hue::words)
    }

    /// What the colour rests on: ``"assumed"`` or ``"measured by you"``.
    #[getter]
    fn basis(&self) -> &'static str {
        self.swatch.basis().words()
    }

    /// The words to show beside the colour.
    #[getter]
    fn notice(&self) -> &'static str {
        self.swatch.notice()
    }

    /// From this colour to another.
    ///
    /// Args:
    ///     other: the other swatch.
    fn difference_to(&self, other: &Self) -> Difference {
        self.swatch.difference_to(&other.swatch).into()
    }

    /// CIEDE2000 to another colour, with its bounds over the assumptions of the model.
    ///
    /// Args:
    ///     other: the other swatch.
    fn difference_bounds(&self, other: &Self) -> Estimate<f64> {
        Estimate(self.swatch.difference_bounds(&other.swatch).to_array())
    }

    /// Strands of this and another colour side by side, as a section with highlights looks.
    ///
    /// Args:
    ///     other: the other swatch.
    ///     share_percent: share of the other, from 0 to 100 %.
    ///
    /// Raises:
    ///     FoilworkError: a share outside 0 to 100 %.
    fn beside(&self, other: &Self, share_percent: f64) -> PyResult<Self> {
        let share = Share::from_percent(share_percent).map_err(raise)?;
        let label = format!("{} with {share} of {}", self.label, other.label);
        Ok(Self { swatch: self.swatch.beside(&other.swatch, share), label })
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        self.label.hash(&mut hasher);
        for value in self.swatch.samples().iter().flatten() {
            value.to_bits().hash(&mut hasher);
        }
        hasher.finish()
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<Reduced<'py>> {
        let this = slf.get();
        let state = (this.swatch.samples().to_vec(), this.swatch.basis().code(), this.label.clone());
        Ok((slf.get_type().getattr("_restore")?, state.into_pyobject(slf.py())?))
    }

    #[staticmethod]
    fn _restore(samples: Sequence<[f64; 3]>, basis: &str, label: String) -> PyResult<Self> {
        let samples = samples.0;
        let basis: Basis = basis.parse().map_err(raise)?;
        let swatch = colour::Swatch::from_samples(&samples, basis);
        swatch.map(|swatch| Self { swatch, label }).ok_or_else(|| FoilworkError::new_err("not the samples of a swatch"))
    }

    fn __str__(&self) -> String {
        format!("{}: {}", self.label, self.swatch)
    }

    fn __repr__(&self) -> String {
        format!("<Swatch {self}>", self = self.__str__())
    }

    fn _repr_html_(&self) -> String {
        self.swatch.html(&self.label)
    }
}

/// The white of an observer given in degrees.
pub fn white(observer_degrees: u8) -> PyResult<White> {
    match observer_degrees {
        2 => Ok(White::D65TwoDegree),
        10 => Ok(White::D65TenDegree),
        other => Err(FoilworkError::new_err(format!("unknown observer of {other} degrees: give 2 or 10"))),
    }
}

/// The colour of hair: a model with bounds, or a measurement.
///
/// Args:
///     level: level of the hair, a number, a text or a ``Level``; ``None`` for white hair or with ``lab``.
///     lightened_from: natural level it was lightened from; ``None`` for natural hair (or with ``tones``).
///     tones: hue words of a colour of this level, shown as on white hair.
///     white_percent: share of white hair mixed in, from 0 to 100 %.
///     lab: L*, a*, b* measured on the hair, instead of a level.
///     observer_degrees: observer of ``lab``, 2 or 10.
///
/// Returns:
///     A ``Swatch``; everything but a measurement is a model, not a photograph.
///
/// Raises:
///     FoilworkError: a value out of range, or ``lab`` together with ``level``.
///
/// Source:
///     Absorption of melanin over the wavelength as published for melanosomes; the rest is fitted to published tresses and
///     to the trade's list of exposed pigment. The misfits of the model are listed in the documentation of the Rust module
///     ``colour``.
///
/// Examples:
///     >>> from foilwork.colour import swatch
///     >>> hair = swatch(8, lightened_from=4)
///     >>> hair.notice
///     'model, not a photograph'
///     >>> hair.lab[0] > swatch(4).lab[0]
///     True
#[pyfunction]
#[pyo3(signature = (level = None, *, lightened_from = None, tones = None, white_percent = 0.0, lab = None, observer_degrees = 10))]
pub fn swatch(
    level: Option<AnyLevel>,
    lightened_from: Option<AnyLevel>,
    tones: Option<Vec<String>>,
    white_percent: f64,
    lab: Option<Three>,
    observer_degrees: u8,
) -> PyResult<Swatch> {
    let either = || FoilworkError::new_err("give one of lab, tones and lightened_from: they exclude each other");
    let (swatch, label) = match (level, lab) {
        (None, Some(Shaped((l, a, b)))) if lightened_from.is_none() && tones.is_none() => {
            let lab = Lab::new(l, a, b, white(observer_degrees)?).map_err(raise)?;
            (colour::Swatch::measured(lab), "measured hair".to_owned())
        }
        (_, Some(_)) => return Err(either()),
        (None, None) if lightened_from.is_none() && tones.is_none() => {
            (colour::Swatch::white(), "white hair".to_owned())
        }
        (None, None) => return Err(FoilworkError::new_err("lightened_from and tones need a level")),
        (Some(AnyLevel(level)), None) => match (lightened_from, tones) {
            (None, None) => (colour::Swatch::natural(level), format!("natural {level}")),
            (Some(AnyLevel(from)), None) => {
                (colour::Swatch::lightened(from, level), format!("{from} lightened to {level}"))
            }
            (None, Some(words)) => {
                let tone = tone_of(&words)?;
                (colour::Swatch::of_look(level, &tone), format!("{level}, {tone}"))
            }
            (Some(_), Some(_)) => return Err(either()),
        },
    };
    let share = Share::from_percent(white_percent).map_err(raise)?;
    if share == Share::NONE {
        return Ok(Swatch { swatch, label });
    }
    let swatch = swatch.beside(&colour::Swatch::white(), share);
    Ok(Swatch { swatch, label: format!("{label}, {share} white") })
}
