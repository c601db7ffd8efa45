//! The panel of a section as its file states it: its foils, and where its colour begins when it is held away.

use crate::{
    head::{Curvature, InFoils, Layout, OverDirection, Panel, Taking, Technique, by_hand},
    quantity::{Length, Quantity},
    reader::{InField, Problems},
    service::shape::{FoilPanel, OverDirectedEntry},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// Panels that are worked foil by foil.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct CountedPanels {
    /// How many.
    pub count: u32,
    /// Across the partings, from the first to the last.
    #[serde(rename = "height_cm")]
    pub height: Length,
    /// Thickness of a subsection.
    #[serde(rename = "subsection_cm")]
    pub subsection: Interval<Length>,
    /// What is left out between two foils.
    #[serde(rename = "left_between_cm")]
    pub left_between: Interval<Length>,
    /// Foils beside each other in a row.
    pub across: u32,
}

/// Radius of a head under a panel, in cm (assumed).
const HEAD_RADIUS: f64 = 9.0;

/// Where the colour of a panel begins that is held to one line: from its first root to its last.
pub(super) fn over_directed(held: &OverDirectedEntry, field: &str) -> Result<Interval<Length>, Problems> {
    let cm = |value: f64, name: &str| Length::from_cm(value).in_field(&format!("{field}.{name}"));
    let radius = cm(held.scalp_radius_cm.unwrap_or(HEAD_RADIUS), "scalp_radius_cm")?;
    let (ahead, out) = (cm(held.ahead_cm, "ahead_cm")?, cm(held.out_cm, "out_cm")?);
    let depth = cm(held.panel_depth_cm, "panel_depth_cm")?;
    let held = OverDirection { ahead, out, scalp: Curvature::Round(radius) };
    Ok(Interval::ordered(held.start(Length::MIN), held.start(Length::nearest(depth.cm() / 2.0)), held.start(depth)))
}

/// The fields of a panel that a layout is told with.
const FIELDS: [&str; 6] =
    ["`foil_width_cm`", "`width_cm`", "`height_cm`", "`subsection_mm`", "`pick_mm`", "`depth_mm`"];

/// The foils of one panel, and the panel.
pub(super) fn layout(
    panel: &FoilPanel,
    technique: Technique,
    field: &str,
) -> Result<(InFoils, CountedPanels), Problems> {
    if !technique.is_in_foil() {
        return Err(format!("{technique} takes no foils: leave the panel out, or take a technique in foil"))
            .in_field(field);
    }
    let mm =
        |value: Option<f64>, name: &str| value.map(Length::from_mm).transpose().in_field(&format!("{field}.{name}"));
    let cm = |value: f64, name: &str| Length::from_cm(value).in_field(&format!("{field}.{name}"));
    let mut layout = Layout::slice();
    if let Some(thick) = mm(panel.subsection_mm, "subsection_mm")? {
        layout = Layout { left_between: by_hand(thick), ..layout.with_subsection(by_hand(thick)) };
    }
    if technique == Technique::Weave {
        let pick = mm(panel.pick_mm, "pick_mm")?.unwrap_or_else(|| Length::nearest(0.3));
        let gap = mm(panel.gap_mm, "gap_mm")?.unwrap_or(pick);
        let depth = mm(panel.depth_mm, "depth_mm")?.map_or(layout.subsection, by_hand);
        layout.taking = Taking::Weave { pick: by_hand(pick), gap: by_hand(gap), depth };
    }
    if let Some(left) = mm(panel.left_between_mm, "left_between_mm")? {
        layout.left_between = by_hand(left);
    }
    layout.foil_width = panel.foil_width_cm.map(|width| cm(width, "foil_width_cm")).transpose()?;
    let panel = Panel { width: cm(panel.width_cm, "width_cm")?, height: cm(panel.height_cm, "height_cm")? };
    let found = layout.on(panel).map_err(|error| error.told_with(FIELDS)).in_field(field)?;
    let (height, subsection, left_between) = (panel.height, layout.subsection, layout.left_between);
    Ok((found, CountedPanels { count: 1, height, subsection, left_between, across: found.across }))
}
