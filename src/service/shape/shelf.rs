use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The products at hand. Names are yours; a section refers to them.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Shelf {
    /// Peroxide preparations.
    #[serde(default)]
    pub developer: Vec<Developer>,
    /// Lighteners.
    #[serde(default)]
    pub lightener: Vec<Lightener>,
    /// Colour shades, toners included.
    #[serde(default)]
    pub shade: Vec<Shade>,
    /// Bond builders, thickeners and the like.
    #[serde(default)]
    pub additive: Vec<Additive>,
    /// What a developer may be weakened with.
    #[serde(default)]
    pub diluent: Vec<Diluent>,
}

/// A peroxide preparation.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Developer {
    /// Your name for it.
    #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
    pub name: String,
    /// Its strength with the unit: `6 % w/w`, `6 % w/v`, `20 vol label` or `19.8 volumes`.
    #[schemars(extend("x-parse" = "strength"))]
    pub strength: String,
    /// How the strength is known.
    pub strength_basis: StrengthBasis,
    /// Its density, measured; needed only to read a w/v figure, volumes or a label exactly.
    #[schemars(range(min = 0.5, max = 1.5), extend("x-unit" = "g/mL"))]
    pub density_g_per_ml: Option<f64>,
    /// Whether it is a cream or emulsion rather than a clear solution; taken for a cream where it is not said.
    pub cream: Option<bool>,
    /// Mass of a full pack.
    #[schemars(range(min = 1.0, max = 100_000.0), extend("x-unit" = "g"))]
    pub pack_g: Option<f64>,
    /// Price of a full pack, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: Option<String>,
}

/// How a strength is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum StrengthBasis {
    /// Titrated or otherwise measured.
    Measured,
    /// The supplier's data sheet.
    SupplierSheet,
    /// What the bottle says.
    Label,
}

/// A lightener.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Lightener {
    /// Your name for it.
    #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
    pub name: String,
    /// Parts lightener to parts developer, by mass, for example `1:2`.
    #[schemars(extend("x-parse" = "ratio"))]
    pub ratio: String,
    /// Whether its own instructions allow it on the scalp.
    #[serde(default)]
    pub on_scalp: bool,
    /// The strongest developer its own instructions allow.
    #[schemars(range(min = 0.0, max = 15.0), extend("x-unit" = "% w/w"))]
    pub strongest_developer_ww: Option<f64>,
    /// The longest development its own instructions allow.
    #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
    pub longest_min: Option<f64>,
    /// How long a mixed bowl is worked with.
    #[schemars(range(min = 5.0, max = 120.0), extend("x-unit" = "min"))]
    pub working_life_min: Option<f64>,
    /// Mass of a full pack.
    #[schemars(range(min = 1.0, max = 100_000.0), extend("x-unit" = "g"))]
    pub pack_g: Option<f64>,
    /// Price of a full pack, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: Option<String>,
}

/// A colour shade.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Shade {
    /// Your code for it.
    #[schemars(length(min = 1, max = 20), extend("x-parse" = "name"))]
    pub code: String,
    /// Its level.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub level: f64,
    /// Its tones in words of the colour wheel, main tone first; none means natural.
    #[serde(default)]
    #[schemars(extend("items" = { "type": "string", "x-parse": "hue" }))]
    pub tones: Vec<String>,
    /// What kind of colour it is.
    pub class: ShadeClass,
    /// Parts colour to parts developer, by mass, for example `1:1.5`; a semi-permanent colour has none.
    #[schemars(extend("x-parse" = "ratio"))]
    pub ratio: Option<String>,
    /// The strongest developer its own instructions allow.
    #[schemars(range(min = 0.0, max = 15.0), extend("x-unit" = "% w/w"))]
    pub strongest_developer_ww: Option<f64>,
    /// The longest development its own instructions allow.
    #[schemars(range(min = 1.0, max = 120.0), extend("x-unit" = "min"))]
    pub longest_min: Option<f64>,
    /// Mass of a full pack.
    #[schemars(range(min = 1.0, max = 100_000.0), extend("x-unit" = "g"))]
    pub pack_g: Option<f64>,
    /// Price of a full pack, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: Option<String>,
}

/// What kind of colour a shade is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ShadeClass {
    /// Lifts and deposits, grows out.
    Permanent,
    /// Made to lift natural hair with strong developer.
    HighLift,
    /// Deposits and fades slowly.
    Demi,
    /// No developer, washes out.
    Semi,
}

/// Something added to a mix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Additive {
    /// Your name for it.
    #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
    pub name: String,
    /// Dose as a share of the mixed bowl before it is added, from its own leaflet.
    #[schemars(range(min = 0.01, max = 50.0), extend("x-unit" = "%"))]
    pub dose_percent: f64,
    /// Mass of a full pack.
    #[schemars(range(min = 1.0, max = 100_000.0), extend("x-unit" = "g"))]
    pub pack_g: Option<f64>,
    /// Price of a full pack, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: Option<String>,
}

/// What a developer may be weakened with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Diluent {
    /// Your name for it.
    #[schemars(length(min = 1, max = 60), extend("x-parse" = "name"))]
    pub name: String,
    /// Mass of a full pack.
    #[schemars(range(min = 1.0, max = 100_000.0), extend("x-unit" = "g"))]
    pub pack_g: Option<f64>,
    /// Price of a full pack, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: Option<String>,
}
