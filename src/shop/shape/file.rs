use super::{
    AdditiveEntry, ClassPriceEntry, DeveloperEntry, DiluentEntry, LightenerEntry, RemoverEntry, ShadeEntry, TermsEntry,
};
use crate::shop::{Habits, Per};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What the salon has and what it charges. Names are yours; services refer to them.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ShopFile {
    /// Version of this file format; this release reads 1, and takes it where it is not said.
    #[schemars(range(min = 1, max = 1))]
    pub format: Option<u32>,
    /// What the shop is called.
    #[schemars(length(min = 1, max = 100))]
    pub name: Option<String>,
    /// ISO 4217 code of the currency of every price.
    #[schemars(extend("x-parse" = "currency"))]
    pub currency: Option<String>,
    /// What stands beside grams and percent on sheets and cards, and how dates and amounts are written.
    pub habits: Option<Habits>,
    /// What the tone digits of your shade codes mean, as hues of the colour wheel; an empty list is neutral.
    #[serde(default)]
    #[schemars(extend("additionalProperties" = {
        "type": "array", "items": { "type": "string", "x-parse": "hue" }
    }))]
    pub digits: BTreeMap<String, Vec<String>>,
    /// Peroxide preparations.
    #[serde(default)]
    pub developer: Vec<DeveloperEntry>,
    /// Lighteners.
    #[serde(default)]
    pub lightener: Vec<LightenerEntry>,
    /// Colour shades, toners included.
    #[serde(default)]
    pub shade: Vec<ShadeEntry>,
    /// Bond builders, thickeners and the like.
    #[serde(default)]
    pub additive: Vec<AdditiveEntry>,
    /// What a developer may be weakened with.
    #[serde(default)]
    pub diluent: Vec<DiluentEntry>,
    /// Colour removers, for hair that is cleaned before the colour.
    #[serde(default)]
    pub remover: Vec<RemoverEntry>,
    /// Foils, gloves, film and the like.
    #[serde(default)]
    pub consumable: Vec<ConsumableEntry>,
    /// What an hour costs and how prices are set.
    pub terms: Option<TermsEntry>,
    /// What your price list says for each class of service; a plan names its class.
    #[serde(default)]
    #[schemars(length(max = 4))]
    pub class_price: Vec<ClassPriceEntry>,
}

/// Something used up on a service.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ConsumableEntry {
    /// What it is.
    #[schemars(length(min = 1, max = 60))]
    pub name: String,
    /// Price of a full pack, in quotes so that it stays exact.
    #[schemars(extend("x-parse" = "amount"))]
    pub price: String,
    /// Pieces in a full pack.
    #[schemars(range(min = 1, max = 1_000_000), extend("x-unit" = "pieces"))]
    pub pack_pieces: u32,
    /// How many for the whole service, or for each foil; one where it is not said.
    #[schemars(range(min = 0, max = 10_000), extend("x-unit" = "pieces"))]
    pub pieces: Option<u32>,
    /// What the number of pieces is for.
    #[serde(default)]
    pub per: Per,
    /// How many are in hand; without it nobody counts them.
    #[schemars(range(min = 0, max = 1_000_000), extend("x-unit" = "pieces"))]
    pub in_hand_pieces: Option<u32>,
}
