use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// An area of the head worked as one unit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Section {
    /// Your name for it; the sheet uses it and `after` refers to it.
    #[schemars(length(min = 1, max = 60))]
    pub name: String,
    /// Where on the head, in your words.
    #[schemars(length(max = 100))]
    pub area: Option<String>,
    /// How the hair is taken.
    pub technique: Technique,
    /// Share of all the hair that this section treats.
    #[schemars(range(min = 0.1, max = 100.0), extend("x-unit" = "%"))]
    pub share_percent: f64,
    /// Which stretch of the strand.
    pub zone: Zone,
    /// Whether the mix touches the scalp; worked out from the technique where it is not said.
    pub on_scalp: Option<bool>,
    /// The level the hair has here now; without it the natural level, or the existing colour of the zone.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub starting_level: Option<f64>,
    /// The level wanted here.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub target_level: f64,
    /// The tone wanted here, in words.
    #[schemars(length(max = 100))]
    pub target_tone: Option<String>,
    /// One product of the shelf: a lightener's name or a shade's code. Give this or `mix`.
    pub product: Option<String>,
    /// Several shades in parts. Give this or `product`.
    #[serde(default)]
    pub mix: Vec<MixPart>,
    /// A developer of the shelf, used as it is. Give this or `strength`.
    pub developer: Option<String>,
    /// The strength wanted before mixing, blended from the shelf: `4.5 % w/w`. Give this or `developer`.
    #[schemars(extend("x-parse" = "strength"))]
    pub strength: Option<String>,
    /// Parts product to parts developer, where it differs from the product's own ratio.
    #[schemars(extend("x-parse" = "ratio"))]
    pub ratio: Option<String>,
    /// Additives of the shelf, by name.
    #[serde(default)]
    pub additives: Vec<String>,
    /// How much mix to make; without it an estimate from the share of the hair.
    #[schemars(range(min = 1.0, max = 2000.0), extend("x-unit" = "g"))]
    pub mix_g: Option<f64>,
    /// How many foils.
    #[schemars(range(min = 0, max = 400), extend("x-unit" = "foils"))]
    pub foils: Option<u32>,
    /// How long the application takes.
    #[schemars(range(min = 1.0, max = 240.0), extend("x-unit" = "min"))]
    pub apply_min: f64,
    /// How long it is planned to develop after the application.
    #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
    pub develop_min: f64,
    /// Sections that must be applied before this one.
    #[serde(default)]
    pub after: Vec<String>,
    /// Whether this is the hairline, which should be at least as light as what lies beside it.
    #[serde(default)]
    pub hairline: bool,
    /// Sections that lie beside this one; their contrast is worked out.
    #[serde(default)]
    pub beside: Vec<String>,
    /// Sections that share a foil with this one; where their formulas meet, a tone between them may be needed.
    #[serde(default)]
    pub same_foil_as: Vec<String>,
}

/// A shade and its parts in a mix of shades.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MixPart {
    /// A shade's code.
    pub shade: String,
    /// Its parts.
    #[schemars(range(min = 0.01, max = 1000.0), extend("x-unit" = "parts"))]
    pub parts: f64,
}

/// A toner applied after rinsing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Toner {
    /// Your name for it.
    #[schemars(length(min = 1, max = 60))]
    pub name: String,
    /// The sections it goes on; none named means all lightened ones.
    #[serde(default)]
    pub sections: Vec<String>,
    /// The shades and their parts.
    #[schemars(length(min = 1))]
    pub mix: Vec<MixPart>,
    /// A developer of the shelf. Give this or `strength`.
    pub developer: Option<String>,
    /// The strength wanted before mixing, blended from the shelf.
    #[schemars(extend("x-parse" = "strength"))]
    pub strength: Option<String>,
    /// Parts colour to parts developer, where it differs from the shades' own ratio.
    #[schemars(extend("x-parse" = "ratio"))]
    pub ratio: Option<String>,
    /// How much mix to make.
    #[schemars(range(min = 1.0, max = 2000.0), extend("x-unit" = "g"))]
    pub mix_g: f64,
    /// How long the application takes.
    #[schemars(range(min = 1.0, max = 240.0), extend("x-unit" = "min"))]
    pub apply_min: Option<f64>,
    /// How long it develops.
    #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
    pub develop_min: f64,
}

/// A darker toner on the first centimetres, to soften where the light starts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RootShadow {
    /// The shades and their parts.
    #[schemars(length(min = 1))]
    pub mix: Vec<MixPart>,
    /// A developer of the shelf. Give this or `strength`.
    pub developer: Option<String>,
    /// The strength wanted before mixing, blended from the shelf.
    #[schemars(extend("x-parse" = "strength"))]
    pub strength: Option<String>,
    /// Parts colour to parts developer, where it differs from the shades' own ratio.
    #[schemars(extend("x-parse" = "ratio"))]
    pub ratio: Option<String>,
    /// How much mix to make.
    #[schemars(range(min = 1.0, max = 2000.0), extend("x-unit" = "g"))]
    pub mix_g: f64,
    /// How far down it is taken.
    #[schemars(range(min = 0.5, max = 30.0), extend("x-unit" = "cm"))]
    pub length_cm: f64,
    /// How long the application takes.
    #[schemars(range(min = 1.0, max = 240.0), extend("x-unit" = "min"))]
    pub apply_min: Option<f64>,
    /// How long it develops.
    #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
    pub develop_min: f64,
}

/// How the hair of a section is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Technique {
    /// Fine strands picked out, in foil.
    Weave,
    /// A thin whole section, in foil.
    Slice,
    /// Shorter hair pushed to the root first, in foil.
    BackComb,
    /// A whole panel in one shade.
    Block,
    /// Painted on the surface, open air.
    Freehand,
    /// Painted, then wrapped.
    FreehandInFoil,
    /// On the new growth, at the scalp.
    Regrowth,
}

impl Technique {
    /// Whether the hair lies in foil.
    #[must_use]
    pub const fn is_in_foil(self) -> bool {
        matches!(self, Self::Weave | Self::Slice | Self::BackComb | Self::FreehandInFoil)
    }
}

/// A stretch of the strand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Zone {
    /// At the scalp.
    Roots,
    /// Between roots and ends.
    MidLengths,
    /// The ends.
    Ends,
    /// Mid-lengths and ends together.
    Lengths,
    /// Roots to ends.
    Whole,
}
