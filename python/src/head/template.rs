//! Wrappers of `foilwork::head`: regions, and sections in them.

use crate::{
    answer::answer,
    bounds::Estimate,
    error::{FoilworkError, Shaped, raise},
    sequence::Sequence,
};
use foilwork::{
    head::{self, Placement},
    quantity::Share,
    source::{Basis, Interval},
};
use pyo3::prelude::*;

answer! {
    in "foilwork.head";
    /// A region of the head.
    ///
    /// Args:
    ///     name: what it is called.
    ///     area_percent: its share of the scalp that bears hair.
    ///     density_percent: hairs on a square centimetre against the mean of the head, in percent of it, or its bounds.
    ///     outline: whether it is part of hairline or nape line.
    ///     inward_percent: how far inside it lies: 0 at the outline, 100 at the crown.
    ///     front: whether it is seen from the front.
    ///     place: where it lies: left, top, width, height on a map of 12 by 16, the face at the top; without it a template is
    ///         drawn as a list.
    ///
    /// Raises:
    ///     FoilworkError: a share out of range.
    ///
    /// Examples:
    ///     >>> from foilwork.head import Region
    ///     >>> Region("edge", 20, outline=True).inward_percent
    ///     0.0
    Region {
        /// What it is called.
        name: String,
        /// Its share of the scalp that bears hair, in percent.
        area_percent: f64,
        /// Density against the mean of the head, in percent of it.
        density_percent: Estimate<f64>,
        /// Whether it is part of the outline.
        outline: bool,
        /// How far inside it lies, in percent.
        inward_percent: f64,
        /// Whether it is seen from the front.
        front: bool,
        /// Where it lies: left, top, width, height; ``None`` where that is not stated.
        place: Option<(f64, f64, f64, f64)>,
    }
    impl {
        #[new]
        #[pyo3(signature = (name, area_percent, *, density_percent = None, outline = false, inward_percent = None, front = false, place = None), text_signature = "(name, area_percent, *, density_percent=100, outline=False, inward_percent=None, front=False, place=None)")]
        #[allow(clippy::too_many_arguments)]
        fn new(
            name: String,
            area_percent: f64,
            density_percent: Option<Percent>,
            outline: bool,
            inward_percent: Option<f64>,
            front: bool,
            place: Option<Shaped<(f64, f64, f64, f64)>>,
        ) -> PyResult<Self> {
            let density_percent = density_percent.map_or(Estimate([100.0; 3]), |density| density.0);
            let inward_percent = inward_percent.unwrap_or(if outline { 0.0 } else { 50.0 });
            let made = Self { name, area_percent, density_percent, outline, inward_percent, front, place: place.map(|place| place.0) };
            made.core()?;
            Ok(made)
        }
    }
}

/// A number in percent that may be above 100, or its bounds.
pub struct Percent(Estimate<f64>);

impl<'py> FromPyObject<'_, 'py> for Percent {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        if let Ok(number) = obj.extract::<f64>() {
            return Ok(Self(Estimate([number; 3])));
        }
        obj.extract::<Estimate<f64>>().map(Self)
    }
}

impl Region {
    fn core(&self) -> PyResult<head::Region> {
        let [low, best, high] = self.density_percent.0;
        let off = [low, best, high].into_iter().find(|bound| !(*bound > 0.0 && *bound < 1000.0));
        if let Some(off) = off {
            let text = format!("density_percent {off} is out of range (give 0 to 1000 % of the mean)");
            return Err(FoilworkError::new_err(text));
        }
        Ok(head::Region {
            name: self.name.clone(),
            area: Share::from_percent(self.area_percent).map_err(raise)?,
            density_percent: Interval::new(low, best, high).map_err(raise)?,
            outline: self.outline,
            inward: Share::from_percent(self.inward_percent).map_err(raise)?,
            front: self.front,
            place: self.place.map(|(left, top, width, height)| [left, top, width, height]),
        })
    }

    fn of(region: &head::Region) -> Self {
        Self {
            name: region.name.clone(),
            area_percent: region.area.percent(),
            density_percent: Estimate(region.density_percent.to_array()),
            outline: region.outline,
            inward_percent: region.inward.percent(),
            front: region.front,
            place: region.place.map(|[left, top, width, height]| (left, top, width, height)),
        }
    }
}

answer! {
    in "foilwork.head";
    /// The regions of a head, which together are all of it.
    ///
    /// Args:
    ///     regions: your own; foilwork's, whose areas are assumed, where none are given.
    ///
    /// Raises:
    ///     FoilworkError: a name that is there twice, or areas that are not the whole head.
    ///
    /// Examples:
    ///     >>> from foilwork.head import Template
    ///     >>> [region.name for region in Template().regions if region.outline]
    ///     ['front hairline', 'left temple', 'right temple', 'nape line']
    ///     >>> round(sum(share.best for share in Template().hair_percent()), 6)
    ///     100.0
    Template {
        /// Its regions.
        regions: Vec<Region>,
        /// What the shares rest on: ``"assumed"`` for foilwork's own, ``"stated"`` for yours.
        basis: String,
    }
    impl {
        #[new]
        #[pyo3(signature = (regions = None))]
        fn new(regions: Option<Sequence<Region>>) -> PyResult<Self> {
            let own = match regions {
                None => head::Template::standard(),
                Some(regions) => {
                    let regions = regions.0.iter().map(Region::core).collect::<PyResult<_>>()?;
                    head::Template::new(regions, Basis::Stated).map_err(raise)?
                }
            };
            Ok(Self::of(&own))
        }

        /// The share of all the hair that each region bears, in their order: area times density, in percent.
        fn hair_percent(&self) -> PyResult<Vec<Estimate<f64>>> {
            Ok(self.core()?.hair().into_iter().map(Into::into).collect())
        }
    }
}

impl Template {
    pub fn of(template: &head::Template) -> Self {
        Self { regions: template.regions().iter().map(Region::of).collect(), basis: template.basis.code().to_owned() }
    }

    pub fn core(&self) -> PyResult<head::Template> {
        let basis = self.basis.parse().map_err(raise)?;
        head::Template::new(self.regions.iter().map(Region::core).collect::<PyResult<_>>()?, basis).map_err(raise)
    }

    pub fn or_standard(template: Option<&Self>) -> PyResult<head::Template> {
        template.map_or_else(|| Ok(head::Template::standard()), Self::core)
    }
}

/// The share of all the hair that each section has, checked: no place of the head belongs to two sections.
///
/// Args:
///     placements: section, region, and how much of the region the section is, in percent.
///     template: the regions; foilwork's where none is given.
///     rest: ``"natural"``, or ``"refused"`` when the sections have to be all of the head.
///
/// Returns:
///     Section and its share in percent, in the order of their first placement.
///
/// Raises:
///     FoilworkError: sections that overlap, a gap that is refused, or an unknown region; both sections are named.
///
/// Examples:
///     >>> from foilwork.head import partition
///     >>> [(name, round(share.best, 1)) for name, share in partition([("halo", "crown", 60), ("veil", "crown", 40)])]
///     [('halo', 8.1), ('veil', 5.4)]
#[pyfunction]
#[pyo3(signature = (placements, template = None, *, rest = "natural"))]
pub fn partition(
    placements: Sequence<(String, String, f64)>,
    template: Option<&Template>,
    rest: &str,
) -> PyResult<Vec<(String, Estimate<f64>)>> {
    let placement = |(section, region, percent): (String, String, f64)| {
        Ok(Placement { section, region, share: Share::from_percent(percent).map_err(raise)? })
    };
    let placements = placements.0.into_iter().map(placement).collect::<PyResult<Vec<_>>>()?;
    let rest = rest.parse().map_err(raise)?;
    let shares = head::partition(&Template::or_standard(template)?, &placements, rest).map_err(raise)?;
    Ok(shares.into_iter().map(|(section, share)| (section, share.into())).collect())
}
