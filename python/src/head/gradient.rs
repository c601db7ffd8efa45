//! Wrappers of `foilwork::head`: light that falls off inward, panels held away, levels along the strand.

use super::{strand::Profile, template::Template};
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    colour::AnyLevel,
    error::{FoilworkError, raise},
};
use foilwork::{
    colour::Level,
    head::{self, Curvature},
    quantity::{Length, Share},
};
use pyo3::prelude::*;

fn cm(value: f64) -> PyResult<Length> {
    Length::from_cm(value).map_err(raise)
}

fn percent(value: f64) -> PyResult<Share> {
    Share::from_percent(value).map_err(raise)
}

answer! {
    in "foilwork.head";
    /// What a gradient asks for in a region; made by ``Gradient.lay``.
    RegionFoils {
        /// The region.
        region: String,
        /// Its place in the work, from one.
        order: u32,
        /// Where the colour begins, in cm from the scalp.
        start_cm: f64,
        /// Of the hair there, what is taken, in percent.
        taken_percent: f64,
        /// Of all the hair, what is taken there, in percent.
        of_head_percent: f64,
        /// Foils; ``None`` where no count was given.
        foils: Option<u32>,
    }
}

answer! {
    in "foilwork.head";
    /// A blend from the outline inward: the colour starts further from the scalp, and less of the hair is lightened.
    ///
    /// Args:
    ///     start_outline_cm: where the colour begins at the outline.
    ///     start_interior_cm: where it begins at the crown.
    ///     share_outline_percent: share of the hair that is taken at the outline.
    ///     share_interior_percent: share of the hair that is taken at the crown.
    ///     length_cm: of the hair.
    ///
    /// Raises:
    ///     FoilworkError: an outline that would be the quieter part, or a start beyond the ends; both fields are named.
    ///
    /// Examples:
    ///     >>> from foilwork.head import Gradient
    ///     >>> laid = Gradient(start_outline_cm=1, start_interior_cm=5, share_outline_percent=70,
    ///     ...     share_interior_percent=20, length_cm=30).lay(60)
    ///     >>> sum(region.foils for region in laid), max(laid, key=lambda region: region.order).region
    ///     (60, 'front hairline')
    Gradient {
        /// Where the colour begins at the outline, in cm.
        start_outline_cm: f64,
        /// Where it begins at the crown, in cm.
        start_interior_cm: f64,
        /// Share of the hair that is taken at the outline, in percent.
        share_outline_percent: f64,
        /// Share of the hair that is taken at the crown, in percent.
        share_interior_percent: f64,
        /// Of the hair, in cm.
        length_cm: f64,
    }
    impl {
        #[new]
        #[pyo3(signature = (*, start_outline_cm, start_interior_cm, share_outline_percent, share_interior_percent, length_cm))]
        fn new(
            start_outline_cm: f64,
            start_interior_cm: f64,
            share_outline_percent: f64,
            share_interior_percent: f64,
            length_cm: f64,
        ) -> PyResult<Self> {
            let made =
                Self { start_outline_cm, start_interior_cm, share_outline_percent, share_interior_percent, length_cm };
            made.core()?;
            Ok(made)
        }

        /// So many foils over the whole head: each region by the hair that is taken there, the counts adding up.
        ///
        /// Args:
        ///     foils: how many in all; what is asked of each region where there is no count.
        ///     template: the regions; foilwork's where none is given.
        ///
        /// Returns:
        ///     A ``RegionFoils`` for each region.
        #[pyo3(signature = (foils = None, template = None))]
        fn lay(&self, foils: Option<u32>, template: Option<&Template>) -> PyResult<Vec<RegionFoils>> {
            let (blend, template) = (self.core()?, Template::or_standard(template)?);
            let laid = foils.map_or_else(|| blend.asks(&template), |foils| blend.lay(&template, foils));
            let region = |region: head::RegionFoils| RegionFoils {
                region: region.region,
                order: region.order,
                start_cm: region.start.cm(),
                taken_percent: region.taken.percent(),
                of_head_percent: region.of_head.percent(),
                foils: region.foils,
            };
            Ok(laid.into_iter().map(region).collect())
        }
    }
}

impl Gradient {
    fn core(&self) -> PyResult<head::Gradient> {
        let start = (cm(self.start_outline_cm)?, cm(self.start_interior_cm)?);
        let share = (percent(self.share_outline_percent)?, percent(self.share_interior_percent)?);
        let names = [
            "`start_outline_cm`",
            "`start_interior_cm`",
            "`share_outline_percent`",
            "`share_interior_percent`",
            "`length_cm`",
        ];
        let made = head::Gradient::new(start, share, cm(self.length_cm)?);
        made.map_err(|error| FoilworkError::new_err(error.told_with(names)))
    }
}

/// How light a section reads at every whole centimetre from the scalp to the ends; the light of its strands adds up.
///
/// Args:
///     profile: how its strands are covered.
///     from_level: the level of what stays as it is.
///     to_level: the level that is reached where it is covered.
///     length_cm: of the hair.
///     taken_percent: of the hair, what is taken, or its bounds.
///
/// Returns:
///     Centimetre and level with its bounds.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.head import level_along, profile
///     >>> levels = level_along(profile("back-comb", 30), 5, 9, 30)
///     >>> len(levels), levels[0][1].best, levels[30][1].best > 7
///     (31, 5.0, True)
#[pyfunction]
#[pyo3(signature = (profile, from_level, to_level, length_cm, taken_percent = None), text_signature = "(profile, from_level, to_level, length_cm, taken_percent=100)")]
pub fn level_along(
    profile: &Profile,
    from_level: AnyLevel,
    to_level: AnyLevel,
    length_cm: f64,
    taken_percent: Option<Stated<Share>>,
) -> PyResult<Vec<(f64, Estimate<f64>)>> {
    let taken = taken_percent.map_or(Share::ALL.into(), |stated| stated.0);
    let levels = head::level_along(&profile.core()?, taken, (from_level.0, to_level.0), cm(length_cm)?);
    Ok(levels.into_iter().map(|(at, level)| (at.cm(), Estimate::by(level, Level::number))).collect())
}

answer! {
    in "foilwork.head";
    /// Sections held to one place and coloured to one line: released, the start drops further the further back the root.
    ///
    /// Args:
    ///     ahead_cm: the line in front of the first root, along the scalp.
    ///     out_cm: the line out from the scalp at the first root.
    ///     scalp_radius_cm: radius of the scalp, about 9 cm; flat where it is not said.
    ///
    /// Raises:
    ///     FoilworkError: a length out of range.
    ///
    /// Source:
    ///     Plane geometry.
    ///
    /// Examples:
    ///     >>> from foilwork.head import OverDirection
    ///     >>> [round(OverDirection(3, 6).start_cm(behind), 2) for behind in (0, 1, 2, 3)]
    ///     [6.71, 7.21, 7.81, 8.49]
    OverDirection {
        /// In front of the first root, in cm.
        ahead_cm: f64,
        /// Out from the scalp, in cm.
        out_cm: f64,
        /// Radius of the scalp, in cm; ``None`` for flat.
        scalp_radius_cm: Option<f64>,
    }
    impl {
        #[new]
        #[pyo3(signature = (ahead_cm, out_cm, scalp_radius_cm = None))]
        fn new(ahead_cm: f64, out_cm: f64, scalp_radius_cm: Option<f64>) -> PyResult<Self> {
            let made = Self { ahead_cm, out_cm, scalp_radius_cm };
            made.core()?;
            Ok(made)
        }

        /// From the root to the line of colour along a strand, in cm.
        ///
        /// Args:
        ///     behind_cm: how far behind the first section it is rooted, measured on the scalp.
        fn start_cm(&self, behind_cm: f64) -> PyResult<f64> {
            Ok(self.core()?.start(cm(behind_cm)?).cm())
        }
    }
}

impl OverDirection {
    fn core(&self) -> PyResult<head::OverDirection> {
        let scalp = match self.scalp_radius_cm {
            Some(radius) => Curvature::Round(cm(radius)?),
            None => Curvature::Flat,
        };
        Ok(head::OverDirection { ahead: cm(self.ahead_cm)?, out: cm(self.out_cm)?, scalp })
    }
}

/// How long a root shadow is in a region, in cm: shortest at the hairline, longer inside; assumed.
///
/// Args:
///     region: the region by its name.
///     template: the regions; foilwork's where none is given.
///
/// Returns:
///     ``Bounds`` in cm.
///
/// Raises:
///     FoilworkError: a region that is not there.
///
/// Examples:
///     >>> from foilwork.head import root_shadow_length
///     >>> root_shadow_length("front hairline").best, root_shadow_length("crown").best
///     (1.0, 3.0)
#[pyfunction]
#[pyo3(signature = (region, template = None))]
pub fn root_shadow_length(region: &str, template: Option<&Template>) -> PyResult<Estimate<f64>> {
    let template = Template::or_standard(template)?;
    let place = template.position(region).map_err(raise)?;
    let region = template.regions().get(place);
    Ok(region.map_or(Estimate([0.0; 3]), |region| head::root_shadow_length(region).value.into()))
}

answer! {
    in "foilwork.head";
    /// A stretch of a root shadow; made by ``shadow_steps``.
    ShadowStep {
        /// Where it begins, from the scalp, in cm.
        from_cm: f64,
        /// Where it ends.
        to_cm: f64,
        /// How deep it is there.
        level: f64,
    }
}

/// How a root shadow is blended into lighter hair: deep for two thirds of its length, then in even steps of at most two levels.
///
/// Args:
///     shadow_level: how deep it is at the scalp.
///     light_level: the hair that it runs into.
///     length_cm: how long it is.
///
/// Returns:
///     A ``ShadowStep`` for each stretch; one where the hair is no lighter. The two thirds are assumed.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.head import shadow_steps
///     >>> [(step.level, step.to_cm) for step in shadow_steps(5, 9, 3)]
///     [(5.0, 2.0), (7.0, 3.0)]
#[pyfunction]
pub fn shadow_steps(shadow_level: AnyLevel, light_level: AnyLevel, length_cm: f64) -> PyResult<Vec<ShadowStep>> {
    let steps = head::shadow_steps(shadow_level.0, light_level.0, cm(length_cm)?);
    let step = |step: head::ShadowStep| ShadowStep {
        from_cm: step.from.cm(),
        to_cm: step.to.cm(),
        level: step.level.number(),
    };
    Ok(steps.into_iter().map(step).collect())
}
