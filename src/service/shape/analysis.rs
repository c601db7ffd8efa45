use super::{Curl, Elasticity, HistoryFlag, Porosity, Scalp, TestResult, Zone};
use crate::colour::Instrument;
use crate::hair::{DensityByEye, DiameterMethod, Group, Texture};
use crate::reader::one_of;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the hair is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("allOf" = [one_of(&["white_percent", "white_counts"])]))]
pub struct Analysis {
    /// Natural level, decimals allowed, read at the roots.
    #[schemars(range(min = 1.0, max = 10.0), extend("x-unit" = "levels"))]
    pub natural_level: f64,
    /// How far the reading may be off either way.
    #[schemars(range(min = 0.0, max = 3.0), extend("x-unit" = "levels"))]
    pub natural_level_plus_minus: Option<f64>,
    /// Share of white hair, by area. Give this or `white_counts`.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "%"))]
    pub white_percent: Option<f64>,
    /// White hairs counted region by region; each region counts by the hair it bears. Give this or `white_percent`.
    #[serde(default)]
    #[schemars(length(max = 100))]
    pub white_counts: Vec<WhiteCountEntry>,
    /// L*, a*, b* that an instrument reads on the lightened hair before toning (D65, 10 degrees), for every section that says
    /// nothing of its own: `57.0, 4.5, 28.6`. Counts before `seen`.
    #[schemars(extend("x-parse" = "lab"))]
    pub measured: Option<String>,
    /// What that was read with; a spectrophotometer where it is not said. A photograph must be calibrated.
    pub measured_with: Option<Instrument>,
    /// The exposed pigment before toning as you see it, for every section that says nothing of its own: `pale yellow`.
    #[schemars(extend("x-parse" = "pigment"))]
    pub seen: Option<String>,
    /// Diameter of a strand.
    pub texture: Option<Texture>,
    /// How it falls by itself. Nothing is worked out from it: the plan says what is not known.
    pub curl: Option<Curl>,
    /// Hairs per area.
    pub density: Option<DensityByEye>,
    /// How readily the hair takes up liquid.
    pub porosity: Option<Porosity>,
    /// Stretch and return of a damp strand.
    pub elasticity: Option<Elasticity>,
    /// Length of the lengths to be worked.
    #[schemars(range(min = 0.5, max = 200.0), extend("x-unit" = "cm"))]
    pub length_cm: Option<f64>,
    /// Weeks since colour last reached the roots: how much has grown in since.
    #[schemars(range(min = 0.0, max = 520.0), extend("x-unit" = "weeks"))]
    pub weeks_since_colour: Option<f64>,
    /// A group of people whose mean hair is published; it moves the amounts a little.
    pub hair_group: Option<Group>,
    /// Age of the guest; the density falls with it.
    #[schemars(range(min = 16.0, max = 110.0), extend("x-unit" = "years"))]
    pub age_years: Option<f64>,
    /// Hairs counted on a square centimetre; instead of `density`.
    #[schemars(range(min = 10.0, max = 500.0), extend("x-unit" = "hairs/cm2"))]
    pub hairs_per_cm2: Option<f64>,
    /// Diameter measured; instead of `texture` where amounts are worked out.
    #[schemars(range(min = 15.0, max = 200.0), extend("x-unit" = "um"))]
    pub diameter_um: Option<f64>,
    /// How it was measured; with a caliper where it is not said.
    pub diameter_method: Option<DiameterMethod>,
    /// Hair-bearing scalp measured.
    #[schemars(range(min = 100.0, max = 1200.0), extend("x-unit" = "cm2"))]
    pub scalp_cm2: Option<f64>,
    /// Girth of a tight ponytail, which says more of the mass than all the rest.
    #[schemars(range(min = 1.0, max = 40.0), extend("x-unit" = "cm"))]
    pub ponytail_girth_cm: Option<f64>,
    /// How much of the hair is in it; all of it where it is not said.
    #[schemars(range(min = 10.0, max = 100.0), extend("x-unit" = "%"))]
    pub ponytail_gathered_percent: Option<f64>,
    /// State of the scalp.
    pub scalp: Option<Scalp>,
    /// What has been on this hair or has happened to this guest; an empty list says that nothing has.
    pub history: Option<Vec<HistoryFlag>>,
    /// Colour already there, by zone or in cm along the strand.
    #[serde(default)]
    #[schemars(length(max = 50))]
    pub existing: Vec<ExistingColour>,
    /// Skin test with the products of this service.
    pub skin_test: Option<Test>,
    /// Strand test with the mixes of this service.
    pub strand_test: Option<Test>,
    /// Incompatibility test for metallic salts.
    pub incompatibility_test: Option<Test>,
}

impl Analysis {
    /// Whether the history says so; a history that is not stated says nothing.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::{parse, shape::HistoryFlag}};
    ///
    /// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// assert!(!file.analysis.has(HistoryFlag::MetallicSalts));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn has(&self, flag: HistoryFlag) -> bool {
        self.history.as_ref().is_some_and(|flags| flags.contains(&flag))
    }
}

/// A test: when, and what came of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Test {
    /// When it was applied, local date or date and time.
    #[schemars(extend("x-parse" = "moment"))]
    pub applied: String,
    /// What came of it.
    pub result: TestResult,
}

/// Colour that is already in the hair.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("allOf" = [one_of(&["zone", "from_cm"])]))]
pub struct ExistingColour {
    /// Where along the strand. Give this or `from_cm` with `to_cm`.
    pub zone: Option<Zone>,
    /// Where it begins, from the scalp; what no band covers is natural. Needs `analysis.length_cm`.
    #[schemars(range(min = 0.0, max = 200.0), extend("x-unit" = "cm"))]
    pub from_cm: Option<f64>,
    /// Where it ends, from the scalp; at the ends of the hair where it is not said.
    #[schemars(range(min = 0.0, max = 200.0), extend("x-unit" = "cm"))]
    pub to_cm: Option<f64>,
    /// Its level now.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub level: f64,
    /// Its tone in words.
    #[schemars(length(max = 100))]
    pub tone: Option<String>,
    /// Whether it is artificial colour (permanent colour does not lift it).
    pub artificial: bool,
}

/// White hairs counted in a region.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WhiteCountEntry {
    /// The region, by its name in the template.
    #[schemars(length(min = 1, max = 60))]
    pub region: String,
    /// Hairs that are white.
    #[schemars(range(min = 0, max = 100_000), extend("x-unit" = "hairs"))]
    pub white: u32,
    /// Hairs that were looked at.
    #[schemars(range(min = 1, max = 100_000), extend("x-unit" = "hairs"))]
    pub counted: u32,
}
