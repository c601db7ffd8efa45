use super::{
    Age, CrossSection, Cut, DensityByEye, Diameter, DiameterMethod, Group, HairDensity, MassPerLength, Ponytail,
    Texture, group, product,
};
use crate::{
    quantity::{Area, Quantity},
    source::{Basis, Interval, Sourced, citations::hair},
};

/// How many hairs there are on a square centimetre, as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DensityFact {
    /// Counted on a patch.
    Counted(Interval<HairDensity>),
    /// By eye.
    ByEye(DensityByEye),
}

/// How thick a hair is, as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ThreadFact {
    /// Its diameter, with the way it was measured.
    Measured(Interval<Diameter>, DiameterMethod),
    /// Its two axes, as a microscope on a cut shows them.
    Cut(Cut),
    /// By eye and touch.
    ByEye(Texture),
}

/// What is known of the hair; everything may be unknown.
///
/// # Example
///
/// ```
/// use foilwork::{hair::{DensityByEye, DensityFact, HairFacts, Texture, ThreadFact}, quantity::{Length, Share}};
///
/// let unknown = HairFacts::default().head();
/// let facts = HairFacts {
///     density: Some(DensityFact::ByEye(DensityByEye::High)),
///     thread: Some(ThreadFact::ByEye(Texture::Fine)),
///     ..HairFacts::default()
/// };
/// let length = Length::from_cm(25.0)?;
/// assert!(facts.head().part(Share::ALL).mass(length.into()).best() < unknown.part(Share::ALL).mass(length.into()).best());
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HairFacts {
    /// A group whose means are published.
    pub group: Option<Group>,
    /// Age in years; density falls with it.
    pub age: Option<Age>,
    /// Hairs on a square centimetre.
    pub density: Option<DensityFact>,
    /// How thick a hair is.
    pub thread: Option<ThreadFact>,
    /// Scalp that bears hair, where it was measured.
    pub scalp: Option<Interval<Area>>,
    /// A tight ponytail, which says more than all the rest.
    pub ponytail: Option<Ponytail>,
    /// What all the hair weighs by its length, as earlier uses on it say: see [`hair_by_use`](crate::head::hair_by_use).
    pub by_use: Option<Interval<MassPerLength>>,
}

/// Hair-bearing scalp in cm2: the published figures are 500, 516 and 775; the middle is assumed.
const SCALP: (f64, f64, f64) = (500.0, 580.0, 775.0);

/// Follicles lost per year from 25 on, as a share of those at 25: 615 to 435 per cm2 in fifty years.
const LOSS_PER_YEAR: f64 = (1.0 - 435.0 / 615.0) / 50.0;

/// Mean age of the people whose densities are published, in years; assumed from the ages of one study, 24 to 59.
const AGE_OF_STUDIES: f64 = 36.0;

impl HairFacts {
    pub(super) fn scalp(&self) -> Sourced<Interval<Area>> {
        if let Some(measured) = self.scalp {
            return Sourced::measured(measured);
        }
        let (low, best, high) = SCALP;
        let value = Interval::ordered(low, best, high).map(Area::nearest);
        Sourced { value, basis: Basis::Assumed, citation: Some(&hair::SCALP_AREA) }
    }

    pub(super) fn density(&self) -> Sourced<Interval<HairDensity>> {
        let mean = group::mean_density(self.group);
        let by_eye = match self.density {
            Some(DensityFact::Counted(counted)) => return Sourced::measured(counted),
            Some(DensityFact::ByEye(by_eye)) => Some(by_eye.of(mean.value, group::DENSITY_VARIATION)),
            None => None,
        };
        let varying = || super::spread::varying(mean.value, group::DENSITY_VARIATION);
        let value = by_eye.unwrap_or_else(varying);
        // An eye sees what age has left of it.
        let aged = if by_eye.is_some() { Interval::exact(1.0) } else { self.left_by_age() };
        let value = product(&[value.map(HairDensity::hairs_per_cm2), aged]).map(HairDensity::nearest);
        let basis = if by_eye.is_some() { Basis::Stated } else { mean.basis };
        let aged = by_eye.is_none() && self.age.is_some();
        let citation = if aged { Some(&hair::FOLLICLES_BY_AGE) } else { mean.citation };
        Sourced { value, basis, citation }
    }

    /// What age leaves of the density, against the age of the studies; the loss is uncertain by half either way (assumed).
    fn left_by_age(&self) -> Interval<f64> {
        let Some(age) = self.age else { return Interval::exact(1.0) };
        let left = |years: f64, rate: f64| 1.0 - rate * LOSS_PER_YEAR * (years.max(25.0) - 25.0);
        let against = |rate: f64| left(age.years(), rate) / left(AGE_OF_STUDIES, rate);
        Interval::ordered(against(0.5), against(1.0), against(1.5))
    }

    pub(super) fn cross_section(&self) -> Sourced<Interval<CrossSection>> {
        match self.thread {
            Some(ThreadFact::Measured(read, method)) => {
                Sourced::measured(read.map(|read| Cut::round(method.by_caliper(read)).area()))
            }
            Some(ThreadFact::Cut(cut)) => Sourced::measured(cut.area().into()),
            Some(ThreadFact::ByEye(texture)) => Sourced { basis: Basis::Stated, ..texture.cross_section() },
            None => group::cross_section(self.group),
        }
    }
}
