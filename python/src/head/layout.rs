//! Wrappers of `foilwork::head`: foils of a panel.

use crate::{
    answer::answer,
    bounds::Estimate,
    error::{FoilworkError, raise},
    source::TracedResult,
};
use foilwork::{
    head::{self, Panel, Taking},
    quantity::Length,
    source::Interval,
};
use pyo3::prelude::*;

/// A length in mm as an argument: a number, or its bounds.
pub struct Millimetres(pub Interval<Length>);

impl<'py> FromPyObject<'_, 'py> for Millimetres {
    type Error = PyErr;

    fn extract(obj: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        let Estimate(mm) = match obj.extract::<f64>() {
            Ok(number) => Estimate([number; 3]),
            Err(_) => obj.extract::<Estimate<f64>>()?,
        };
        let [low, best, high] = mm.map(|mm| Length::from_mm(mm).map_err(raise));
        Interval::new(low?, best?, high?).map(Self).map_err(raise)
    }
}

fn in_mm(length: Interval<Length>) -> Estimate<f64> {
    Estimate::by(length, Length::mm)
}

fn of_mm(mm: Estimate<f64>) -> PyResult<Interval<Length>> {
    let [low, best, high] = mm.0.map(|mm| Length::from_mm(mm).map_err(raise));
    Interval::new(low?, best?, high?).map_err(raise)
}

/// A size that is taken by hand and by eye: a quarter off either way, assumed.
///
/// Args:
///     size_mm: the size meant.
///
/// Returns:
///     ``Bounds`` in mm, for the sizes of a ``Layout``.
///
/// Raises:
///     FoilworkError: a size out of range.
///
/// Examples:
///     >>> from foilwork.head import by_hand
///     >>> [round(mm, 6) for mm in by_hand(4)]
///     [3.0, 4.0, 5.0]
#[pyfunction]
pub fn by_hand(size_mm: f64) -> PyResult<Estimate<f64>> {
    Ok(in_mm(head::by_hand(Length::from_mm(size_mm).map_err(raise)?)))
}

answer! {
    in "foilwork.head";
    /// What a layout gives on a panel; made by ``Layout.on``.
    InFoils {
        /// Strands in a subsection across the whole panel.
        picks: Estimate<u32>,
        /// Scalp whose hair is lifted in one subsection, in cm2.
        lifted_cm2: Estimate<f64>,
        /// Of the hair of a subsection, in percent.
        share_of_subsection_percent: Estimate<f64>,
        /// Of all the hair of the panel, in percent.
        share_of_panel_percent: Estimate<f64>,
        /// Foils, of which ``across`` lie beside each other in a row.
        foils: Estimate<u32>,
        /// Foils beside each other.
        across: u32,
        /// Minutes for them.
        apply_min: Estimate<f64>,
    }
}

answer! {
    in "foilwork.head";
    /// Subsections, and what is left between them. A number is exact; what is done by hand has the bounds of ``by_hand``.
    ///
    /// Args:
    ///     subsection_mm: thickness of a subsection; 1/8 inch by hand where it is not said.
    ///     left_between_mm: hair left between two foils; as much as a subsection where it is not said, 0 for back to back.
    ///     pick_mm: width of a strand of a weave; a slice where it is not said.
    ///     gap_mm: between two strands; as wide as a strand where it is not said.
    ///     depth_mm: how deep the comb goes; through all of the subsection where it is not said.
    ///     foil_width_cm: width of a foil; as wide as the panel where it is not said.
    ///
    /// Raises:
    ///     FoilworkError: a size out of range.
    ///
    /// Source:
    ///     Plane geometry; ``"subsection-thickness"`` for 1/8 inch.
    ///
    /// Examples:
    ///     >>> from foilwork.head import Layout
    ///     >>> foils = Layout(subsection_mm=6, pick_mm=3, gap_mm=3).on(8, 6)
    ///     >>> foils.picks.best, foils.foils.best, round(foils.share_of_panel_percent.best, 3)
    ///     (13, 5, 24.375)
    Layout {
        /// Thickness of a subsection, in mm.
        subsection_mm: Estimate<f64>,
        /// Hair left between two foils, in mm.
        left_between_mm: Estimate<f64>,
        /// Width of a strand, in mm; ``None`` for slices.
        pick_mm: Option<Estimate<f64>>,
        /// Between two strands, in mm.
        gap_mm: Option<Estimate<f64>>,
        /// How deep the comb goes, in mm.
        depth_mm: Option<Estimate<f64>>,
        /// Width of a foil, in cm; ``None`` for as wide as the panel.
        foil_width_cm: Option<f64>,
    }
    impl {
        #[new]
        #[pyo3(signature = (*, subsection_mm = None, left_between_mm = None, pick_mm = None, gap_mm = None, depth_mm = None, foil_width_cm = None))]
        fn new(
            subsection_mm: Option<Millimetres>,
            left_between_mm: Option<Millimetres>,
            pick_mm: Option<Millimetres>,
            gap_mm: Option<Millimetres>,
            depth_mm: Option<Millimetres>,
            foil_width_cm: Option<f64>,
        ) -> PyResult<Self> {
            let subsection = subsection_mm.map_or_else(|| head::Layout::usual_subsection().value, |mm| mm.0);
            if let (None, Some(name)) =
                (&pick_mm, gap_mm.as_ref().map(|_| "gap_mm").or(depth_mm.as_ref().map(|_| "depth_mm")))
            {
                return Err(FoilworkError::new_err(format!("{name} stands without pick_mm: a slice has none (leave it out)")));
            }
            let pick = pick_mm.map(|mm| mm.0);
            let made = Self {
                subsection_mm: in_mm(subsection),
                left_between_mm: in_mm(left_between_mm.map_or(subsection, |mm| mm.0)),
                pick_mm: pick.map(in_mm),
                gap_mm: gap_mm.map(|mm| mm.0).or(pick).map(in_mm),
                depth_mm: pick.map(|_| in_mm(depth_mm.map_or(subsection, |mm| mm.0))),
                foil_width_cm,
            };
            made.core()?;
            Ok(made)
        }

        /// What it gives on a panel.
        ///
        /// Args:
        ///     width_cm: of the panel, along the parting.
        ///     height_cm: across the partings, from the first to the last.
        ///
        /// Returns:
        ///     An ``InFoils``.
        ///
        /// Raises:
        ///     FoilworkError: sizes that do not fit on each other; both are named.
        fn on(&self, width_cm: f64, height_cm: f64) -> PyResult<InFoils> {
            let panel = Panel {
                width: Length::from_cm(width_cm).map_err(raise)?,
                height: Length::from_cm(height_cm).map_err(raise)?,
            };
            let names = ["foil_width_cm", "width_cm", "height_cm", "subsection_mm", "pick_mm", "depth_mm"];
            let found = self.core()?.on(panel).map_err(|error| FoilworkError::new_err(error.told_with(names)))?;
            Ok(InFoils {
                picks: Estimate(found.picks.to_array()),
                lifted_cm2: found.lifted.into(),
                share_of_subsection_percent: found.share_of_subsection.into(),
                share_of_panel_percent: found.share_of_panel.into(),
                foils: Estimate(found.foils.to_array()),
                across: found.across,
                apply_min: found.apply().into(),
            })
        }

        /// How the foils of a panel, and the strands picked in a row, come about.
        ///
        /// Args:
        ///     width_cm: of the panel, along the parting.
        ///     height_cm: across the partings, from the first to the last.
        ///
        /// Returns:
        ///     A :class:`foilwork.source.TracedResult` for each.
        ///
        /// Raises:
        ///     FoilworkError: sizes that do not fit on each other; both are named.
        ///
        /// Examples:
        ///     >>> from foilwork.head import Layout
        ///     >>> Layout(subsection_mm=6, pick_mm=3, gap_mm=3).trail_on(8, 6)[0].what
        ///     'foils'
        fn trail_on(&self, width_cm: f64, height_cm: f64) -> PyResult<Vec<TracedResult>> {
            let panel = Panel {
                width: Length::from_cm(width_cm).map_err(raise)?,
                height: Length::from_cm(height_cm).map_err(raise)?,
            };
            Ok(self.core()?.trail_on(panel).map_err(raise)?.into_iter().map(Into::into).collect())
        }
    }
}

impl Layout {
    fn core(&self) -> PyResult<head::Layout> {
        let taking = match (self.pick_mm, self.gap_mm, self.depth_mm) {
            (Some(pick), Some(gap), Some(depth)) => {
                Taking::Weave { pick: of_mm(pick)?, gap: of_mm(gap)?, depth: of_mm(depth)? }
            }
            _ => Taking::Slice,
        };
        Ok(head::Layout {
            subsection: of_mm(self.subsection_mm)?,
            left_between: of_mm(self.left_between_mm)?,
            taking,
            foil_width: self.foil_width_cm.map(Length::from_cm).transpose().map_err(raise)?,
        })
    }
}
