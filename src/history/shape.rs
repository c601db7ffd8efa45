use crate::{
    hair::Texture,
    head::{ServiceClass, Technique},
    lift::{Booster, Cover, Uptake},
    service::shape::Elasticity,
};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is kept of a service: no name, a code for the guest; planned and actual; all that repeats the result.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeptRecord {
    /// Version of this form; this release writes and reads 1.
    #[schemars(range(min = 1, max = 1))]
    pub format: u32,
    /// The day of the service.
    #[schemars(extend("x-parse" = "day"))]
    pub on: String,
    /// What the service is called.
    #[schemars(length(min = 1, max = 100))]
    pub title: String,
    /// A code for the guest, not a name.
    #[schemars(length(max = 100))]
    pub guest: Option<String>,
    /// Who worked.
    #[schemars(length(max = 100))]
    pub colourist: Option<String>,
    /// What to call it when booking and pricing it.
    pub service_class: Option<ServiceClass>,
    /// How long the chair was planned to be taken.
    #[schemars(range(min = 0.0, max = 2880.0), extend("x-unit" = "min"))]
    pub chair_min: Option<f64>,
    /// The currency of the amounts, as ISO 4217 has it.
    #[schemars(length(min = 3, max = 3))]
    pub currency: Option<String>,
    /// What the service cost, products as weighed where that was noted, and the card fee of the price with it.
    #[schemars(length(max = 30))]
    pub cost: Option<String>,
    /// Of that, what the products cost that were left over, where somebody weighed them.
    #[schemars(length(max = 30))]
    pub left_over_cost: Option<String>,
    /// The net price: that of the price list, or by the costs where the list does not have the class.
    #[schemars(length(max = 30))]
    pub price: Option<String>,
    /// What was weighed, section by section.
    #[serde(default)]
    #[schemars(length(max = 600))]
    pub section: Vec<KeptSection>,
    /// Reactions, accidents and all else that the log said stop to, in words.
    #[serde(default)]
    #[schemars(length(max = 100))]
    pub incident: Vec<String>,
}

/// What is kept of a section, toner or root shadow.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeptSection {
    /// Its name.
    #[schemars(length(min = 1, max = 100))]
    pub name: String,
    /// How its hair was taken; absent for what follows the rinse.
    pub technique: Option<Technique>,
    /// How many foils.
    #[schemars(range(min = 0, max = 400), extend("x-unit" = "foils"))]
    pub foils: Option<u32>,
    /// What the plan expected its hair to take.
    #[schemars(range(min = 0.0, max = 5000.0), extend("x-unit" = "g"))]
    pub expected_g: Option<f64>,
    /// What the plan made of it.
    #[schemars(range(min = 0.0, max = 5000.0), extend("x-unit" = "g"))]
    pub planned_g: Option<f64>,
    /// What was really weighed.
    #[schemars(range(min = 0.0, max = 5000.0), extend("x-unit" = "g"))]
    pub weighed_g: Option<f64>,
    /// What of it was left over.
    #[schemars(range(min = 0.0, max = 5000.0), extend("x-unit" = "g"))]
    pub left_over_g: Option<f64>,
    /// How long putting it on was planned to take.
    #[schemars(range(min = 0.0, max = 1440.0), extend("x-unit" = "min"))]
    pub planned_apply_min: Option<f64>,
    /// How long it took.
    #[schemars(range(min = 0.0, max = 1440.0), extend("x-unit" = "min"))]
    pub apply_min: Option<f64>,
    /// How often it was put on, begun again without a noted rinse counted too; absent where nobody noted it.
    #[schemars(range(min = 1, max = 100))]
    pub applications: Option<u32>,
    /// How long its first strand carried the mix, all applications together.
    #[schemars(range(min = 0.0, max = 1440.0), extend("x-unit" = "min"))]
    pub on_hair_min: Option<f64>,
    /// The level it started from.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub from_level: Option<f64>,
    /// The level wanted.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub target_level: Option<f64>,
    /// The level it came to, before any toner.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub result_level: Option<f64>,
    /// The level it was read at with a toner on it, or after the rinse while nobody noted since when one is on: toner darkens, so nothing of lifting is learned from it.
    #[schemars(range(min = 1.0, max = 12.0), extend("x-unit" = "levels"))]
    pub toned_level: Option<f64>,
    /// The tone it came to, in words.
    #[schemars(length(max = 200))]
    pub tone: Option<String>,
    /// Stretch and return of a damp strand afterwards.
    pub elasticity: Option<Elasticity>,
    /// Products in it, as weighed; as planned where nobody noted what was weighed.
    #[serde(default)]
    #[schemars(length(max = 50))]
    pub part: Vec<KeptPart>,
    /// The mix on the hair, where it lightened: what a strand book needs.
    pub mixture: Option<KeptMixture>,
}

impl KeptSection {
    /// Whether it was put on more than once: grams, minutes and level are then those of no single application.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::history::KeptSection;
    ///
    /// let twice = KeptSection { applications: Some(2), ..KeptSection::default() };
    /// assert!(twice.put_on_again() && !KeptSection::default().put_on_again());
    /// ```
    #[must_use]
    pub fn put_on_again(&self) -> bool {
        self.applications.is_some_and(|times| times > 1)
    }
}

/// A product and its grams.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeptPart {
    /// The product, by its name in the shop.
    #[schemars(length(min = 1, max = 200))]
    pub product: String,
    /// How much of it.
    #[schemars(range(min = 0.0, max = 5000.0), extend("x-unit" = "g"))]
    pub mass_g: f64,
}

/// A mixture that lightened, and the hair under it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KeptMixture {
    /// Strength on the hair, at least.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "% w/w"))]
    pub on_hair_low_ww_percent: f64,
    /// Strength on the hair, at best.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "% w/w"))]
    pub on_hair_ww_percent: f64,
    /// Strength on the hair, at most.
    #[schemars(range(min = 0.0, max = 100.0), extend("x-unit" = "% w/w"))]
    pub on_hair_high_ww_percent: f64,
    /// Its temperature.
    #[schemars(range(min = 0.0, max = 60.0), extend("x-unit" = "C"))]
    pub temperature_c: f64,
    /// What oxidises beside the peroxide.
    pub booster: Booster,
    /// pH of the mixed bowl, where its maker states it.
    #[schemars(range(min = 0.0, max = 14.0))]
    pub ph: Option<f64>,
    /// How readily the hair takes up liquid.
    pub uptake: Uptake,
    /// How thick the fibre is.
    pub texture: Texture,
    /// What lay over it.
    pub cover: Cover,
}
