use super::{
    EndsBetweenEntry, FoilPanel, InRegion, LowlightsEntry, MixPart, OverDirectedEntry, TechniqueWishEntry, ToneTarget,
    WaitFor, Zone,
};
use crate::colour::Instrument;
use crate::head::{ExtraStep, Technique};
use crate::lift::Cover;
use crate::reader::{at_most_one, one_of};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// An area of the head worked as one unit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("allOf" = [one_of(&["product", "mix", "target"]), at_most_one(&["developer", "strength"]), at_most_one(&["start_cm", "over_directed"])]))]
pub struct Section {
    /// Your name for it; the sheet uses it and `after` refers to it.
    #[schemars(length(min = 1, max = 60))]
    pub name: String,
    /// Where on the head, in your words.
    #[schemars(length(max = 100))]
    pub area: Option<String>,
    /// How the hair is taken.
    pub technique: Technique,
    /// Share of all the hair that this section takes: the strands of a weave, the whole panel where hair is pushed away or
    /// painted on the surface. Where it is not said, the `gradient` and the section's `regions` give it.
    #[schemars(range(min = 0.1, max = 100.0), extend("x-unit" = "%"))]
    pub share_percent: Option<f64>,
    /// Which stretch of the strand.
    pub zone: Zone,
    /// Whether the mix touches the scalp; worked out from the technique where it is not said.
    pub on_scalp: Option<bool>,
    /// What lies over lightener: foil keeps it moist, in the open air it dries and stops. Foil where the technique has it, else
    /// open air.
    pub cover: Option<Cover>,
    /// The level the hair has here now; without it the natural level, or the existing colour of the zone.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub starting_level: Option<f64>,
    /// L*, a*, b* that an instrument reads on the hair here before toning (D65, 10 degrees): `57.0, 4.5, 28.6`. Counts before
    /// `seen`.
    #[schemars(extend("x-parse" = "lab"))]
    pub measured: Option<String>,
    /// What that was read with; a spectrophotometer where it is not said. A photograph must be calibrated.
    pub measured_with: Option<Instrument>,
    /// The exposed pigment here before toning as you see it: `orange`, `pale yellow`, `strong red-orange`. Counts before the
    /// model; without it that of the analysis.
    #[schemars(extend("x-parse" = "pigment"))]
    pub seen: Option<String>,
    /// Share of the hair of its area that is taken, as in a weave; the rest stays between it. Its look from a distance is worked
    /// out from it; that of the `panel` where it is not said.
    #[schemars(range(min = 1.0, max = 100.0), extend("x-unit" = "%"))]
    pub taken_percent: Option<f64>,
    /// The level wanted here.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub target_level: f64,
    /// The tone wanted here, in words.
    #[schemars(length(max = 100))]
    pub target_tone: Option<String>,
    /// One product of the shop: a lightener's name or a shade's code. Give this or `mix`.
    pub product: Option<String>,
    /// Several shades in parts. Give this or `product`.
    #[serde(default)]
    #[schemars(length(max = 12))]
    pub mix: Vec<MixPart>,
    /// The look wanted, for which shades of the shop are found and weighed. Give this instead of `product` or `mix`.
    pub target: Option<ToneTarget>,
    /// A developer of the shop, used as it is. Give this or `strength`, or for a lightener neither: then the plan chooses
    /// a strength with which the sections finish together.
    pub developer: Option<String>,
    /// The strength wanted before mixing, blended from the shop: `4.5 % w/w`. Give this or `developer`.
    #[schemars(extend("x-parse" = "strength"))]
    pub strength: Option<String>,
    /// Parts product to parts developer, where it differs from the product's own ratio.
    #[schemars(extend("x-parse" = "ratio"))]
    pub ratio: Option<String>,
    /// Additives of the shop, by name.
    #[serde(default)]
    #[schemars(length(max = 20))]
    pub additives: Vec<String>,
    /// How much mix to make; without it an estimate from the share of the hair.
    #[schemars(range(min = 1.0, max = 2000.0), extend("x-unit" = "g"))]
    pub mix_g: Option<f64>,
    /// How many foils.
    #[schemars(range(min = 0, max = 400), extend("x-unit" = "foils"))]
    pub foils: Option<u32>,
    /// The panel that its foils lie on, to count them where `foils` is not said.
    pub panel: Option<FoilPanel>,
    /// Where the colour begins, from the scalp; usual for technique and zone where it is not said.
    #[schemars(range(min = 0.0, max = 150.0), extend("x-unit" = "cm"))]
    pub start_cm: Option<f64>,
    /// Of the hair that is taken, how much is covered: the rest is what the comb pushes away or the brush leaves out. Usual for the
    /// technique where it is not said.
    #[schemars(range(min = 1.0, max = 100.0), extend("x-unit" = "%"))]
    pub covered_percent: Option<f64>,
    /// Over what length the colour sets in behind where it begins: nothing is a line. Usual for the technique where it is not said.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "cm"))]
    pub transition_cm: Option<f64>,
    /// The panel held away from where it grows and coloured to one line. Give this or `start_cm`.
    pub over_directed: Option<OverDirectedEntry>,
    /// Extra ends, painted with the same mix on hair that the foils leave. Needs the length of the hair, and `taken_percent` or
    /// `panel`.
    pub ends_between: Option<EndsBetweenEntry>,
    /// Darker strands wanted between its light ones: how many and where is worked out.
    pub lowlights: Option<LowlightsEntry>,
    /// How it is to start and to grow out: the technique is held against it, and others are named.
    pub wants: Option<TechniqueWishEntry>,
    /// What was really put on this hair here an earlier time: it narrows what the hair takes, and with the length of the hair
    /// stated also how much hair there is on the whole head.
    #[schemars(range(min = 1.0, max = 2000.0), extend("x-unit" = "g"))]
    pub used_g: Option<f64>,
    /// Where on the head it lies, region by region, to see how the head will read.
    #[serde(default)]
    #[schemars(length(max = 50))]
    pub regions: Vec<InRegion>,
    /// How long the application takes; worked out from the foils and the minutes for one where it is not said.
    #[schemars(range(min = 1.0, max = 240.0), extend("x-unit" = "min"))]
    pub apply_min: Option<f64>,
    /// Minutes for each foil here, from parting to closing; those of the salon where it is not said.
    #[schemars(range(min = 0.1, max = 15.0), extend("x-unit" = "min"))]
    pub foil_min: Option<f64>,
    /// How long it is planned to develop after the application.
    #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
    pub develop_min: f64,
    /// Steps that come before the colour here. All of them come first in the running order, with their minutes, grams and
    /// cost; without them the plan says which are asked for.
    #[serde(default)]
    #[schemars(length(max = 4))]
    pub first: Vec<ExtraStep>,
    /// With what hair is cleaned first: a remover or a lightener of the shop. A lightener with weak developer where it is not said, and a
    /// remover only where the shop has no such lightener.
    #[schemars(length(min = 1, max = 60))]
    pub clean_with: Option<String>,
    /// What this section waits for before it is applied.
    #[serde(default)]
    #[schemars(length(max = 50))]
    pub after: Vec<After>,
    /// Whether this is the hairline, which should be at least as light as what lies beside it.
    #[serde(default)]
    pub hairline: bool,
    /// Sections that lie beside this one; their contrast is worked out.
    #[serde(default)]
    #[schemars(length(max = 50))]
    pub beside: Vec<String>,
    /// Sections that share a foil with this one; where their formulas meet, a tone between them may be needed.
    #[serde(default)]
    #[schemars(length(max = 50))]
    pub same_foil_as: Vec<String>,
}

/// A section that comes first, and what of it must be over.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct After {
    /// The section that comes first.
    pub section: String,
    /// What of it must be over; its application where that is not said.
    #[serde(default)]
    pub wait_for: WaitFor,
}
