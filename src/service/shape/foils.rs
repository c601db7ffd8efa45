use crate::head::Softness;
use crate::reader::one_of;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The panel that the foils of a section lie on, and how the hair is taken; what is taken by hand is a quarter off.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FoilPanel {
    /// Along the parting.
    #[schemars(range(min = 0.5, max = 60.0), extend("x-unit" = "cm"))]
    pub width_cm: f64,
    /// Across the partings, from the first to the last.
    #[schemars(range(min = 0.2, max = 60.0), extend("x-unit" = "cm"))]
    pub height_cm: f64,
    /// How many such panels the section has; one where it is not said.
    #[schemars(range(min = 1, max = 40), extend("x-unit" = "panels"))]
    pub count: Option<u32>,
    /// Thickness of a subsection; 1/8 inch where it is not said.
    #[schemars(range(min = 0.5, max = 50.0), extend("x-unit" = "mm"))]
    pub subsection_mm: Option<f64>,
    /// Hair left between two foils; as much as a subsection where it is not said, 0 for back to back.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "mm"))]
    pub left_between_mm: Option<f64>,
    /// Width of a strand of a weave; 3 mm where it is not said.
    #[schemars(range(min = 0.2, max = 100.0), extend("x-unit" = "mm"))]
    pub pick_mm: Option<f64>,
    /// Between two strands of a weave; as wide as a strand where it is not said.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "mm"))]
    pub gap_mm: Option<f64>,
    /// How deep the comb goes into the subsection; through all of it where it is not said.
    #[schemars(range(min = 0.2, max = 50.0), extend("x-unit" = "mm"))]
    pub depth_mm: Option<f64>,
    /// Width of a foil; as wide as the panel where it is not said.
    #[schemars(range(min = 0.5, max = 60.0), extend("x-unit" = "cm"))]
    pub foil_width_cm: Option<f64>,
}

/// Extra ends that are painted between the foils.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EndsBetweenEntry {
    /// Of the hair that is left between the foils, how much is painted.
    #[schemars(range(min = 1.0, max = 100.0), extend("x-unit" = "%"))]
    pub percent: f64,
    /// From where to the ends, from the scalp.
    #[schemars(range(min = 0.0, max = 150.0), extend("x-unit" = "cm"))]
    pub from_cm: f64,
}

/// A region that a section lies in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct InRegion {
    /// The region, by its name in the template.
    #[schemars(length(min = 1, max = 60))]
    pub name: String,
    /// How much of the region the section is; all of it where it is not said.
    #[schemars(range(min = 0.1, max = 100.0), extend("x-unit" = "%"))]
    pub percent: Option<f64>,
}

/// A region of a template of your own; all of them together are the whole head.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RegionEntry {
    /// Your name for it.
    #[schemars(length(min = 1, max = 60))]
    pub name: String,
    /// Its share of the scalp that bears hair.
    #[schemars(range(min = 0.1, max = 100.0), extend("x-unit" = "%"))]
    pub area_percent: f64,
    /// Its density against the mean of the head; 100 where it is not said.
    #[schemars(range(min = 5.0, max = 300.0), extend("x-unit" = "%"))]
    pub density_percent: Option<f64>,
    /// Whether it is part of the outline: hairline or nape line.
    #[serde(default)]
    pub outline: bool,
    /// How far inside it lies: 0 at the outline, 100 at the crown; 50 where it is not said, 0 on the outline.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
    pub inward_percent: Option<f64>,
    /// Whether it is seen from the front.
    #[serde(default)]
    pub front: bool,
    /// Where it lies on the map of the head, so that the map is drawn and the part found: for all regions or for none.
    pub place: Option<RegionPlace>,
}

/// Where a region lies on the map of the head: face at the top, each side on its own side.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RegionPlace {
    /// From the left edge of the map to its left edge.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
    pub left_percent: f64,
    /// From the face to its upper edge.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
    pub top_percent: f64,
    /// How wide it is, of the width of the map.
    #[schemars(range(min = 1.0, max = 100.0), extend("x-unit" = "%"))]
    pub width_percent: f64,
    /// How long it is, of the way from the face to the nape.
    #[schemars(range(min = 1.0, max = 100.0), extend("x-unit" = "%"))]
    pub height_percent: f64,
}

/// Light that falls off from the outline inward: it gives the sections that name their `regions` their share, start and foils.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GradientEntry {
    /// Where the colour begins at the outline, from the scalp.
    #[schemars(range(min = 0.0, max = 150.0), extend("x-unit" = "cm"))]
    pub start_outline_cm: f64,
    /// Where it begins at the crown.
    #[schemars(range(min = 0.0, max = 150.0), extend("x-unit" = "cm"))]
    pub start_interior_cm: f64,
    /// Share of the hair that is taken at the outline.
    #[schemars(range(min = 0.1, max = 100.0), extend("x-unit" = "%"))]
    pub share_outline_percent: f64,
    /// Share of the hair that is taken at the crown.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
    pub share_interior_percent: f64,
    /// Foils for all of it; they go where most hair is taken.
    #[schemars(range(min = 1, max = 400), extend("x-unit" = "foils"))]
    pub foils: Option<u32>,
}

/// A panel held away from where it grows and coloured to one line: released, its start drops towards the back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OverDirectedEntry {
    /// The line of colour in front of the first root, along the scalp.
    #[schemars(range(min = 0.0, max = 60.0), extend("x-unit" = "cm"))]
    pub ahead_cm: f64,
    /// The line of colour out from the scalp at the first root.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "cm"))]
    pub out_cm: f64,
    /// From the first to the last root of the panel, along the scalp.
    #[schemars(range(min = 0.1, max = 30.0), extend("x-unit" = "cm"))]
    pub panel_depth_cm: f64,
    /// Radius of the scalp under it; 9 cm where it is not said.
    #[schemars(range(min = 3.0, max = 1000.0), extend("x-unit" = "cm"))]
    pub scalp_radius_cm: Option<f64>,
}

/// Darker strands in a section, so that it reads deeper.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("allOf" = [one_of(&["level", "contrast_levels"])]))]
pub struct LowlightsEntry {
    /// Their level. Give this or `contrast_levels`.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub level: Option<f64>,
    /// How much darker than the light strands beside them they are to be. Give this or `level`.
    #[schemars(range(min = 0.1, max = 11.0), extend("x-unit" = "levels"))]
    pub contrast_levels: Option<f64>,
    /// The level that the section is to read as with them.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub reads_as_level: f64,
}

/// How a section is to start and to grow out: its technique is held against it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TechniqueWishEntry {
    /// How its start may look; nothing sharper is taken.
    pub start: Softness,
    /// Weeks in which no regrowth is to show.
    #[schemars(range(min = 0.0, max = 52.0), extend("x-unit" = "weeks"))]
    pub upkeep_weeks: f64,
}
