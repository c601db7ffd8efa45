//! Wrappers of `foilwork::head`: how the head reads.

use super::template::Template;
use crate::{answer::answer, bounds::Estimate, colour::Swatch, error::raise, sequence::Sequence};
use foilwork::{
    chart::{HeadChart, head_chart},
    colour::Lightness,
    head,
    quantity::Share,
    source::Interval,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.head";
    /// Hair of one section in one region.
    ///
    /// Args:
    ///     section: the section.
    ///     region: the region by its name.
    ///     lightened_percent: of the hair there, how much is lightened, the mean along the strand.
    ///     rest: what is left as it was.
    ///     light: what is lightened and toned.
    ///     of_region_percent: how much of the region's area the section is.
    ///
    /// Raises:
    ///     FoilworkError: a share outside 0 to 100 %.
    ///
    /// Examples:
    ///     >>> from foilwork.colour import swatch
    ///     >>> from foilwork.head import Placed
    ///     >>> Placed("halo", "crown", 30, rest=swatch(5), light=swatch(9, lightened_from=5)).of_region_percent
    ///     100.0
    Placed {
        /// The section.
        section: String,
        /// The region by its name.
        region: String,
        /// Of the hair there, how much is lightened, in percent.
        lightened_percent: f64,
        /// What is left as it was.
        rest: Swatch,
        /// What is lightened and toned.
        light: Swatch,
        /// How much of the region's area the section is, in percent.
        of_region_percent: f64,
    }
    impl {
        #[new]
        #[pyo3(signature = (section, region, lightened_percent, *, rest, light, of_region_percent = 100.0))]
        fn new(
            section: String,
            region: String,
            lightened_percent: f64,
            rest: Swatch,
            light: Swatch,
            of_region_percent: f64,
        ) -> PyResult<Self> {
            for share in [lightened_percent, of_region_percent] {
                Share::from_percent(share).map_err(raise)?;
            }
            Ok(Self { section, region, lightened_percent, rest, light, of_region_percent })
        }
    }
}

answer! {
    in "foilwork.head";
    /// How one region reads.
    RegionLook {
        /// Its name.
        region: String,
        /// Its share of all the hair, in percent.
        hair_percent: Estimate<f64>,
        /// How light it reads from where strands merge.
        lab_l: Estimate<f64>,
        /// The colour itself.
        colour: Swatch,
    }
}

answer! {
    in "foilwork.head";
    /// The section to change so that the head reads as wanted.
    Change {
        /// The section.
        section: String,
        /// How much of its hair is lightened now, in percent.
        lightened_percent: f64,
        /// How much it would have to be, in percent.
        wanted_percent: f64,
        /// Whether that is enough; if not, its light hair has to be another level too.
        enough: bool,
        /// The same in words.
        advice: String,
    }
}

answer! {
    in "foilwork.head";
    /// How the head reads; made by ``read_head``. In a notebook it shows as a map.
    HeadLook {
        /// Region by region.
        regions: Vec<RegionLook>,
        /// L* that the outline is lighter than the interior; negative when it is darker.
        outline_over_interior_lab_l: Option<Estimate<f64>>,
        /// The same of what is seen from the front over the rest.
        front_over_behind_lab_l: Option<Estimate<f64>>,
        /// Whether it reads as wanted, by the best estimates; ``None`` where nothing is asked for.
        as_wanted: Option<bool>,
        /// What to change when it does not; the largest step first.
        change: Option<Change>,
        /// The hair of sections that it was read of.
        placed: Vec<Placed>,
        /// The regions that it was read in.
        template: Template,
    }
    impl {
        /// The map of the head as SVG: each region in the colour of the model, with its name, its lightness and its
        /// sections as text.
        ///
        /// Args:
        ///     title: what stands above it.
        ///
        /// Returns:
        ///     The text of the picture.
        #[pyo3(signature = (title = "How the head reads"))]
        fn svg(&self, title: &str) -> PyResult<String> {
            let looks = self.regions.iter().map(RegionLook::core).collect::<PyResult<Vec<_>>>()?;
            let lies_in = |look: &RegionLook| {
                let here = self.placed.iter().filter(|part| part.region == look.region);
                here.map(|part| format!("{}, {:.0} % light", part.section, part.lightened_percent)).collect()
            };
            let written: Vec<Vec<String>> = self.regions.iter().map(lies_in).collect();
            Ok(head_chart(&HeadChart { title, template: &self.template.core()?, looks: &looks, written: &written }))
        }

        fn _repr_svg_(&self) -> PyResult<String> {
            self.svg("How the head reads")
        }
    }
}

impl RegionLook {
    fn core(&self) -> PyResult<head::RegionLook> {
        Ok(head::RegionLook {
            region: self.region.clone(),
            hair: crate::hair::interval(self.hair_percent)?,
            lab_l: self.colour.swatch.lightness(),
            colour: self.colour.swatch,
        })
    }
}

/// How the head reads: in each region the light of its sections adds up by their area, and regions by the hair they bear.
///
/// Args:
///     placed: the hair of sections in regions.
///     natural: hair that no section has.
///     wish: ``"bright-outline"``, ``"bright-front"`` or ``"even"``; without one it is only read.
///     template: the regions; foilwork's where none is given.
///
/// Returns:
///     A ``HeadLook``.
///
/// Raises:
///     FoilworkError: another wish, or a region that is not there.
///
/// Source:
///     A model: reflectances add up by area and hair; areas of the template are assumed.
///
/// Examples:
///     >>> from foilwork.colour import swatch
///     >>> from foilwork.head import Placed, Template, read_head
///     >>> rest, light = swatch(5), swatch(9, lightened_from=5)
///     >>> placed = [Placed("hairline", region.name, 60, rest=rest, light=light)
///     ...     for region in Template().regions if region.outline]
///     >>> read_head(placed, rest, "bright-outline").as_wanted
///     True
///     >>> inside = [Placed("crown", "crown", 60, rest=rest, light=light), Placed("rim", "nape line", 5, rest=rest, light=light)]
///     >>> read_head(inside, rest, "bright-outline").change.section
///     'rim'
#[pyfunction]
#[pyo3(signature = (placed, natural, wish = None, template = None))]
pub fn read_head(
    placed: Sequence<Placed>,
    natural: &Swatch,
    wish: Option<&str>,
    template: Option<Template>,
) -> PyResult<HeadLook> {
    let regions = Template::or_standard(template.as_ref())?;
    let part = |part: &'_ Placed| {
        Ok::<_, PyErr>((
            regions.position(&part.region).map_err(raise)?,
            Share::from_percent(part.of_region_percent).map_err(raise)?,
            Share::from_percent(part.lightened_percent).map_err(raise)?,
        ))
    };
    let mut parts = Vec::with_capacity(placed.0.len());
    for one in &placed.0 {
        let (region, of_region, lightened) = part(one)?;
        let (rest, light) = (one.rest.swatch, one.light.swatch);
        parts.push(head::Placed { section: &one.section, region, of_region, lightened, rest, light });
    }
    let wish = wish.map(str::parse).transpose().map_err(raise)?;
    let look = head::read_head(&regions, &parts, &natural.swatch, wish);
    let region = |look: &head::RegionLook| RegionLook {
        region: look.region.clone(),
        hair_percent: look.hair.into(),
        lab_l: Estimate::by(look.lab_l, Lightness::lab_l),
        colour: Swatch { swatch: look.colour, label: look.region.clone() },
    };
    let over = |over: Option<Interval<f64>>| over.map(|over| Estimate(over.to_array()));
    Ok(HeadLook {
        regions: look.regions.iter().map(region).collect(),
        outline_over_interior_lab_l: over(look.outline_over_interior),
        front_over_behind_lab_l: over(look.front_over_behind),
        as_wanted: look.as_wanted,
        change: look.change.as_ref().map(|change| Change {
            section: change.section.clone(),
            lightened_percent: change.lightened.percent(),
            wanted_percent: change.wanted.percent(),
            enough: change.enough,
            advice: change.advice(),
        }),
        placed: placed.0,
        template: Template::of(&regions),
    })
}
