//! Wrappers of `foilwork::hair`: what is known of the hair, and how much of it there is.

use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    columns::{Column, OnRefusal, apply_kernel},
    error::raise,
    source::TracedResult,
    target::How,
};
use foilwork::{
    column::{self, Cells},
    hair::{self, Age, Cut, DensityFact, Diameter, DiameterMethod, HairDensity, MassPerLength, Ponytail, ThreadFact},
    quantity::{Area, InvalidQuantity, Length, Mass, Quantity, Share},
    source::Interval,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.hair";
    /// A part of the hair, of any length; made by ``HairFacts.part`` and ``HairFacts.on``.
    Tress {
        /// How many hairs.
        hairs: Estimate<f64>,
        /// Mass of them all by their length, in g/cm.
        mass_per_length_g_per_cm: Estimate<f64>,
        /// Circumference of one hair, in mm.
        circumference_mm: Estimate<f64>,
    }
    impl {
        /// Mass of a length of it, in g.
        ///
        /// Args:
        ///     length_cm: the mean length of the hair, not the longest, or its bounds.
        fn mass_g(&self, length_cm: Stated<Length>) -> PyResult<Estimate<f64>> {
            Ok(self.core()?.mass(length_cm.0).into())
        }

        /// Surface of a length of it, in cm2.
        ///
        /// Args:
        ///     length_cm: the mean length of the hair, not the longest, or its bounds.
        fn surface_cm2(&self, length_cm: Stated<Length>) -> PyResult<Estimate<f64>> {
            Ok(self.core()?.surface(length_cm.0).into())
        }
    }
}

impl Tress {
    pub fn core(&self) -> PyResult<hair::Tress> {
        let circumference = Estimate(self.circumference_mm.0.map(|mm| mm / 10.0));
        Ok(hair::Tress {
            hairs: interval(self.hairs)?,
            mass_per_length: interval(self.mass_per_length_g_per_cm)?,
            circumference: interval(circumference)?,
        })
    }
}

impl From<hair::Tress> for Tress {
    fn from(tress: hair::Tress) -> Self {
        Self {
            hairs: tress.hairs.into(),
            mass_per_length_g_per_cm: tress.mass_per_length.into(),
            circumference_mm: Estimate::by(tress.circumference, Length::mm),
        }
    }
}

/// Bounds that went out, as the quantity again.
pub fn interval<Q: Quantity>(bounds: Estimate<f64>) -> PyResult<Interval<Q>> {
    let [low, best, high] = bounds.0.map(|value| Q::from_unit(value).map_err(raise));
    Interval::new(low?, best?, high?).map_err(raise)
}

answer! {
    in "foilwork.hair";
    /// All the hair of a head, from what is known of it; made by ``HairFacts.head``.
    HeadOfHair {
        /// Scalp that bears hair, in cm2.
        scalp_cm2: Estimate<f64>,
        /// Hairs on a square centimetre, the mean over the head.
        hairs_per_cm2: Estimate<f64>,
        /// Cross-section of a hair, in um2.
        cross_section_um2: Estimate<f64>,
        /// Mass of all the hair by its length, in g/cm.
        mass_per_length_g_per_cm: Estimate<f64>,
        /// The weakest of what it rests on: ``"published"``, ``"measured"``, ``"assumed"`` and so on.
        basis: String,
    }
}

answer! {
    in "foilwork.hair";
    /// What is known of the hair; everything may be unknown, and then it spans the published spread between people.
    ///
    /// Args:
    ///     group: a group whose means are published: ``"african"``, ``"asian"`` or ``"european"``.
    ///     age_years: age; the density falls with it.
    ///     density: by eye, ``"low"``, ``"medium"`` or ``"high"``.
    ///     hairs_per_cm2: counted, instead of ``density``.
    ///     texture: by eye and touch, ``"fine"``, ``"medium"`` or ``"coarse"``.
    ///     diameter_um: measured, instead of ``texture``.
    ///     diameter_method: ``"caliper"``, or ``"scalp-camera"``, which reads 1.41 times as much.
    ///     scalp_cm2: hair-bearing scalp, measured.
    ///     ponytail_girth_cm: girth of a tight ponytail, which says more than all the rest.
    ///     gathered_percent: how much of the hair is in it.
    ///     by_use_g_per_cm: mass of all the hair by its length as earlier uses say, from ``foilwork.head.hair_by_use``.
    ///
    /// Raises:
    ///     FoilworkError: a word that is none of these, two facts for one, or a figure that no head has.
    ///
    /// Source:
    ///     ``"density-of-people"``, ``"section-of-people"`` and the figures by group; bounds hold 80 of 100 people.
    ///
    /// Examples:
    ///     >>> from foilwork.hair import HairFacts
    ///     >>> shoulder = HairFacts(texture="fine").part(30)
    ///     >>> low, best, high = shoulder.mass_g(25)
    ///     >>> low < best < high, round(best)
    ///     (True, 24)
    ///     >>> HairFacts().head().basis
    ///     'assumed'
    ///     >>> measured = HairFacts(scalp_cm2=500, hairs_per_cm2=200, diameter_um=70)
    ///     >>> measured.on(48).hairs
    ///     Bounds(low=9600.0, best=9600.0, high=9600.0)
    HairFacts {
        /// A group whose means are published.
        group: Option<String>,
        /// Age in years.
        age_years: Option<f64>,
        /// Density by eye.
        density: Option<String>,
        /// Hairs counted on a square centimetre.
        hairs_per_cm2: Option<Estimate<f64>>,
        /// Thickness by eye and touch.
        texture: Option<String>,
        /// Diameter measured, in um.
        diameter_um: Option<Estimate<f64>>,
        /// How it was measured.
        diameter_method: String,
        /// Hair-bearing scalp, in cm2.
        scalp_cm2: Option<Estimate<f64>>,
        /// Girth of a tight ponytail, in cm.
        ponytail_girth_cm: Option<Estimate<f64>>,
        /// How much of the hair is in it, in percent.
        gathered_percent: f64,
        /// Mass of all the hair by its length as earlier uses say, in g/cm.
        by_use_g_per_cm: Option<Estimate<f64>>,
    }
    impl {
        #[new]
        #[pyo3(signature = (*, group = None, age_years = None, density = None, hairs_per_cm2 = None, texture = None, diameter_um = None, diameter_method = "caliper", scalp_cm2 = None, ponytail_girth_cm = None, gathered_percent = 100.0, by_use_g_per_cm = None))]
        #[allow(clippy::too_many_arguments)]
        fn new(
            group: Option<String>,
            age_years: Option<f64>,
            density: Option<String>,
            hairs_per_cm2: Option<Stated<HairDensity>>,
            texture: Option<String>,
            diameter_um: Option<Stated<Diameter>>,
            diameter_method: &str,
            scalp_cm2: Option<Stated<Area>>,
            ponytail_girth_cm: Option<Stated<Length>>,
            gathered_percent: f64,
            by_use_g_per_cm: Option<Stated<MassPerLength>>,
        ) -> PyResult<Self> {
            let made = Self {
                group,
                age_years,
                density,
                hairs_per_cm2: hairs_per_cm2.map(|stated| stated.0.into()),
                texture,
                diameter_um: diameter_um.map(|stated| stated.0.into()),
                diameter_method: diameter_method.to_owned(),
                scalp_cm2: scalp_cm2.map(|stated| stated.0.into()),
                ponytail_girth_cm: ponytail_girth_cm.map(|stated| stated.0.into()),
                gathered_percent,
                by_use_g_per_cm: by_use_g_per_cm.map(|stated| stated.0.into()),
            };
            made.core()?;
            Ok(made)
        }

        /// All of it.
        fn head(&self) -> PyResult<HeadOfHair> {
            let head = self.core()?.head();
            Ok(HeadOfHair {
                scalp_cm2: head.scalp.value.into(),
                hairs_per_cm2: head.density.value.into(),
                cross_section_um2: head.cross_section.value.into(),
                mass_per_length_g_per_cm: head.mass_per_length.value.into(),
                basis: head.basis().code().to_owned(),
            })
        }

        /// How hairs, grams and surface of a part of it come about.
        ///
        /// Args:
        ///     share_percent: the part, in percent of all the hair.
        ///     length_cm: its length.
        ///
        /// Returns:
        ///     A :class:`foilwork.source.TracedResult` for each.
        ///
        /// Examples:
        ///     >>> from foilwork.hair import HairFacts
        ///     >>> [one.unit for one in HairFacts().trail(50, 20)]
        ///     ['hairs', 'g', 'cm2']
        fn trail(&self, share_percent: f64, length_cm: f64) -> PyResult<Vec<TracedResult>> {
            let share = Share::from_percent(share_percent).map_err(raise)?;
            let length = Length::from_cm(length_cm).map_err(raise)?;
            Ok(self.core()?.head().trail(share, length).into_iter().map(Into::into).collect())
        }

        /// A part of it, by its share of all the hair.
        ///
        /// Args:
        ///     share_percent: the share in percent, or its bounds.
        #[pyo3(signature = (share_percent = None), text_signature = "($self, share_percent=100)")]
        fn part(&self, share_percent: Option<Stated<Share>>) -> PyResult<Tress> {
            Ok(self.core()?.head().shared(share_percent.map_or(Share::ALL.into(), |stated| stated.0)).into())
        }

        /// The hair of a measured area of the scalp.
        ///
        /// Args:
        ///     area_cm2: the area in cm2, or its bounds.
        fn on(&self, area_cm2: Stated<Area>) -> PyResult<Tress> {
            Ok(self.core()?.head().on(area_cm2.0).into())
        }
    }
}

impl HairFacts {
    pub fn core(&self) -> PyResult<hair::HairFacts> {
        let two = |one: &str, other: &str| {
            crate::error::FoilworkError::new_err(format!("{one} and {other} are both given: keep one"))
        };
        let density = match (&self.density, self.hairs_per_cm2) {
            (Some(_), Some(_)) => return Err(two("density", "hairs_per_cm2")),
            (Some(eye), None) => Some(DensityFact::ByEye(eye.parse().map_err(raise)?)),
            (None, Some(counted)) => Some(DensityFact::Counted(interval(counted)?)),
            (None, None) => None,
        };
        let method: DiameterMethod = self.diameter_method.parse().map_err(raise)?;
        let thread = match (&self.texture, self.diameter_um) {
            (Some(_), Some(_)) => return Err(two("texture", "diameter_um")),
            (Some(texture), None) => Some(ThreadFact::ByEye(texture.parse().map_err(raise)?)),
            (None, Some(read)) => Some(ThreadFact::Measured(interval(read)?, method)),
            (None, None) => None,
        };
        let gathered = Share::from_percent(self.gathered_percent).map_err(raise)?;
        let tail = |girth| Ok::<_, PyErr>(Ponytail { girth: interval(girth)?, gathered });
        let facts = hair::HairFacts {
            group: self.group.as_deref().map(str::parse).transpose().map_err(raise)?,
            age: self.age_years.map(Age::from_years).transpose().map_err(raise)?,
            density,
            thread,
            scalp: self.scalp_cm2.map(interval).transpose()?,
            ponytail: self.ponytail_girth_cm.map(tail).transpose()?,
            by_use: self.by_use_g_per_cm.map(interval).transpose()?,
        };
        facts.plausible().map_err(raise)
    }
}

/// The diameter that a caliper would read.
///
/// Args:
///     read_um: what was read, in um, a number or an array.
///     method: ``"caliper"`` or ``"scalp-camera"``.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: an array of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     um by caliper: a float for a number, else a float64 array.
///
/// Raises:
///     FoilworkError: a diameter out of range, or another method.
///
/// Source:
///     ``"caliper-and-camera"``: 108.78 um by camera is 76.9 um by caliper.
///
/// Examples:
///     >>> from foilwork.hair import by_caliper
///     >>> round(by_caliper(108.78, "scalp-camera"), 1)
///     77.1
#[pyfunction]
#[pyo3(
    signature = (read_um, method, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(read_um, method, *, errors='raise', out=None, where=None)"
)]
pub fn by_caliper<'py>(
    py: Python<'py>,
    read_um: Column<'py>,
    method: &str,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<Bound<'py, PyAny>> {
    let method: DiameterMethod = method.parse().map_err(raise)?;
    let rule = |[read]: [f64; 1]| Ok::<_, InvalidQuantity>([method.by_caliper(Diameter::from_um(read)?).um()]);
    let kernel = |[read]: [Cells<'_>; 1], [out]: [&mut [f64]; 1]| column::diameters_by_caliper(read, method, out);
    let [found] = apply_kernel(py, [&read_um], How::new(errors, out, r#where)?, rule, kernel)?;
    Ok(found)
}

/// A cut through a hair, an ellipse by its two axes: its area in um2 and its circumference in mm.
///
/// Args:
///     minor_um: the short axis, a number or an array.
///     major_um: the long axis, a number or an array that broadcasts with it.
///     errors: ``"raise"``, or ``"nan"`` to put NaN where a row is out of range; an ``OutOfRangeWarning`` counts them.
///     out: a tuple of two arrays of float64 to put the results into, of their shape; without it new ones are made.
///     where: an array of booleans that broadcasts with the rest: rows that are False are not worked on, and stay as they
///         are in ``out``, or NaN.
///
/// Returns:
///     Area in um2 and circumference in mm: floats for numbers, else float64 arrays.
///
/// Raises:
///     FoilworkError: an axis out of range.
///
/// Source:
///     Plane geometry; the circumference is Ramanujan's second approximation.
///
/// Examples:
///     >>> from foilwork.hair import hair_cut
///     >>> area_um2, circumference_mm = hair_cut(60.7, 85.6)
///     >>> round(area_um2), round(circumference_mm, 4)
///     (4081, 0.2315)
#[pyfunction]
#[pyo3(
    signature = (minor_um, major_um, *, errors = OnRefusal::Raise, out = None, r#where = None),
    text_signature = "(minor_um, major_um, *, errors='raise', out=None, where=None)"
)]
pub fn hair_cut<'py>(
    py: Python<'py>,
    minor_um: Column<'py>,
    major_um: Column<'py>,
    errors: OnRefusal,
    out: Option<Bound<'py, PyAny>>,
    r#where: Option<Bound<'py, PyAny>>,
) -> PyResult<(Bound<'py, PyAny>, Bound<'py, PyAny>)> {
    let rule = |[minor, major]: [f64; 2]| {
        let cut = Cut::new(Diameter::from_um(minor)?, Diameter::from_um(major)?);
        Ok::<_, InvalidQuantity>([cut.area().um2(), cut.circumference().mm()])
    };
    let how = How::new(errors, out, r#where)?;
    let [area, circumference] = apply_kernel(py, [&minor_um, &major_um], how, rule, column::hair_cuts)?;
    Ok((area, circumference))
}

/// Density of air-dry keratin, in g/mL.
///
/// Returns:
///     ``Bounds``, from memory of textbooks.
///
/// Examples:
///     >>> from foilwork.hair import fibre_density
///     >>> fibre_density().best
///     1.32
#[pyfunction]
pub fn fibre_density() -> Estimate<f64> {
    hair::fibre_density().value.into()
}

/// An amount as predicted, and as it was really used on this guest: both together, the narrower weighing more.
///
/// Args:
///     predicted_g: what was predicted, with its bounds.
///     used_g: what was put on the hair, not what was mixed.
///
/// Returns:
///     ``Bounds`` in g.
///
/// Raises:
///     FoilworkError: a mass out of range.
///
/// Examples:
///     >>> from foilwork.hair import calibrated
///     >>> low, best, high = calibrated((60, 100, 170), 70)
///     >>> 70 < best < 76, high / low < 1.5
///     (True, True)
#[pyfunction]
pub fn calibrated(predicted_g: Stated<Mass>, used_g: f64) -> PyResult<Estimate<f64>> {
    Ok(hair::calibrated(predicted_g.0, Mass::from_g(used_g).map_err(raise)?).into())
}
