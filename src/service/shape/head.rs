use super::{
    Analysis, ConsultationEntry, Finish, GradientEntry, HouseRule, RegionEntry, RootShadow, Section, Strand, Toner,
};
use crate::head::{PartLine, Rest, Solidity, Wish};
use crate::reader::one_of;
use crate::shop::shape::ShopFile;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A service file: what the guest has, what the salon has, and what is to be done.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(extend("allOf" = [one_of(&["shop", "shop_file"])]))]
pub struct ServiceFile {
    /// Version of this file format; this release reads 1.
    #[schemars(range(min = 1, max = 1))]
    pub format: u32,
    /// What the service is, and when.
    pub service: Head,
    /// What the hair is, read before anything is mixed.
    pub analysis: Analysis,
    /// What was asked and said: earlier services, the wish zone by zone, who has agreed.
    pub consultation: Option<ConsultationEntry>,
    /// What the salon has and what it charges. Give this or `shop_file`.
    pub shop: Option<ShopFile>,
    /// The path of a shop file, from the folder of this one; the command line and Python read it.
    #[schemars(length(min = 1, max = 1000))]
    pub shop_file: Option<String>,
    /// How the salon weighs and mixes; every field has a default.
    #[serde(default)]
    pub salon: Salon,
    /// Strands of this guest that were tested: what they show goes into the forecast.
    #[serde(default)]
    pub strand: Vec<Strand>,
    /// The path of the salon's strand book, from the folder of this file; the command line and Python read it.
    #[schemars(length(min = 1, max = 1000))]
    pub strand_book: Option<String>,
    /// The path of a file of the salon's kept records, from the folder of this file: minutes for each foil of this colourist come
    /// from it. The command line and Python read it.
    #[schemars(length(min = 1, max = 1000))]
    pub records: Option<String>,
    /// How sections finish together whose developer is left to the plan.
    #[serde(default)]
    pub finish: Finish,
    /// The sections of the head, each worked as one unit.
    #[schemars(length(min = 1, max = 500))]
    pub section: Vec<Section>,
    /// A template of your own, which replaces foilwork's: the regions that `section[].regions` names.
    #[serde(default)]
    #[schemars(length(max = 100))]
    pub region: Vec<RegionEntry>,
    /// How the light falls off from the outline inward, where the sections do not say it one by one.
    pub gradient: Option<GradientEntry>,
    /// Toners applied after rinsing the lightener.
    #[serde(default)]
    #[schemars(length(max = 50))]
    pub toner: Vec<Toner>,
    /// A darker toner on the first centimetres.
    pub root_shadow: Option<RootShadow>,
}

/// What the service is, and when.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Head {
    /// What to call it on the sheet.
    #[schemars(length(min = 1, max = 100))]
    pub title: String,
    /// When it starts, local time, for example `2026-11-25T10:00`; tests are judged against it.
    #[schemars(extend("x-parse" = "moment"))]
    pub start: String,
    /// A code for the guest, not a name.
    #[schemars(length(max = 100))]
    pub guest: Option<String>,
    /// Who works.
    #[schemars(length(max = 100))]
    pub colourist: Option<String>,
    /// Whose law applies, for example `EU`; without it no legal limit is checked.
    #[schemars(extend("x-parse" = "jurisdiction"))]
    pub jurisdiction: Option<String>,
    /// How the head is to read: it is checked where sections name their `regions`.
    pub reads_as: Option<Wish>,
    /// Whether its outline, hairline and nape line, is to be one block of light or light strands among darker ones: it is checked
    /// where sections name their `regions`.
    pub outline: Option<Solidity>,
    /// Where the hair is parted when it is worn: regrowth shows there first.
    pub part: Option<PartLine>,
    /// What hair is that no section names in its `regions`; natural where it is not said.
    pub rest: Option<Rest>,
    /// Minutes of work besides the sections: consultation, washing, drying. Bowls, looks, walks to the basin and rinses are counted
    /// in the day, so leave them out.
    #[schemars(range(min = 0.0, max = 600.0), extend("x-unit" = "min"))]
    pub other_work_min: Option<f64>,
    /// Anything to keep in mind.
    #[schemars(length(max = 1000), extend("x-lines" = true))]
    pub notes: Option<String>,
}

/// How the salon weighs and mixes.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Salon {
    /// The scale's division.
    #[schemars(range(min = 0.01, max = 50.0), extend("x-unit" = "g"))]
    pub scale_division_g: Option<f64>,
    /// The most that is mixed in one bowl.
    #[schemars(range(min = 5.0, max = 2000.0), extend("x-unit" = "g"))]
    pub bowl_capacity_g: Option<f64>,
    /// How long a mixed bowl is worked with, where the product does not say.
    #[schemars(range(min = 5.0, max = 120.0), extend("x-unit" = "min"))]
    pub working_life_min: Option<f64>,
    /// What is mixed beyond what the hair takes, where the plan works out the amount; nothing where it is not said.
    #[schemars(range(min = 0.0, max = 50.0), extend("x-unit" = "%"))]
    pub spare_percent: Option<f64>,
    /// Room temperature.
    #[schemars(range(min = 5.0, max = 45.0), extend("x-unit" = "C"))]
    pub room_c: Option<f64>,
    /// Pairs of hands for this guest; one where it is not said.
    #[schemars(range(min = 1, max = 8), extend("x-unit" = "people"))]
    pub people: Option<u32>,
    /// Basins of the salon; one where it is not said.
    #[schemars(range(min = 1, max = 20), extend("x-unit" = "basins"))]
    pub basins: Option<u32>,
    /// Minutes for each foil of the one who works, from parting to closing, where no `records` say it; 1.3 is assumed where none
    /// do.
    #[schemars(range(min = 0.1, max = 15.0), extend("x-unit" = "min"))]
    pub foil_min: Option<f64>,
    /// How long it takes to weigh and mix a bowl.
    #[schemars(range(min = 0.0, max = 30.0), extend("x-unit" = "min"))]
    pub mix_bowl_min: Option<f64>,
    /// How long a look over all that is on takes.
    #[schemars(range(min = 0.0, max = 4.0), extend("x-unit" = "min"))]
    pub look_min: Option<f64>,
    /// How long it takes to rinse a section.
    #[schemars(range(min = 0.0, max = 30.0), extend("x-unit" = "min"))]
    pub rinse_section_min: Option<f64>,
    /// How long it takes to bring the guest to the basin.
    #[schemars(range(min = 0.0, max = 30.0), extend("x-unit" = "min"))]
    pub basin_walk_min: Option<f64>,
    /// How much longer than planned a section may stay on, so that several go to the basin at once: as far as all products of its mix
    /// state their longest time and allow it.
    #[schemars(range(min = 0.0, max = 60.0), extend("x-unit" = "min"))]
    pub stay_longer_min: Option<f64>,
    /// Rules that the proposed order keeps to; without a list, the darkest first in one foil, and mid-lengths before roots on
    /// virgin hair.
    pub order_rules: Option<Vec<HouseRule>>,
    /// The strongest developer of what touches the scalp, by the rule of the house; a product's own counts beside it.
    #[schemars(range(min = 0.0, max = 15.0), extend("x-unit" = "% w/w"))]
    pub strongest_on_scalp_ww_percent: Option<f64>,
    /// How long before the service the skin test must have been applied, by the rule that binds you.
    #[schemars(range(min = 0.0, max = 168.0), extend("x-unit" = "h"))]
    pub skin_test_wait_h: Option<f64>,
    /// After how many days a skin test no longer counts, by the rule that binds you.
    #[schemars(range(min = 1.0, max = 3650.0), extend("x-unit" = "days"))]
    pub skin_test_valid_days: Option<f64>,
    /// After how many days somebody's agreement no longer counts, by the rule of the house.
    #[schemars(range(min = 1.0, max = 3650.0), extend("x-unit" = "days"))]
    pub agreed_valid_days: Option<f64>,
    /// Where that figure comes from.
    #[schemars(length(max = 300))]
    pub agreed_source: Option<String>,
    /// Where the two figures of the skin test come from.
    #[schemars(length(max = 300))]
    pub skin_test_source: Option<String>,
}
