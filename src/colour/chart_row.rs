use crate::quantity::{Mass, MassFraction};
use rust_decimal::Decimal;
use serde::Deserialize;
use std::collections::BTreeMap;
use toml::Spanned;

/// What the label and the price list say about a shade beside its colour. Nothing is filled in.
#[derive(Debug, Clone, PartialEq, Default)]
#[non_exhaustive]
pub struct ShelfFacts {
    /// Mass of product in one pack.
    pub pack: Option<Mass>,
    /// Price of one pack in the currency of the chart.
    pub price: Option<Decimal>,
    /// Parts of developer to one part of shade, by mass.
    pub developer_parts: Option<Decimal>,
    /// Developer strengths that the label allows; empty when the chart does not say.
    pub developers: Vec<MassFraction>,
}

/// The file as written, before anything is checked.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ChartFile {
    pub name: String,
    pub currency: Option<String>,
    #[serde(default)]
    pub digits: BTreeMap<String, Spanned<Vec<String>>>,
    pub shade: Vec<ShadeRow>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ShadeRow {
    pub code: Spanned<String>,
    pub level: Spanned<f64>,
    pub tones: Option<Spanned<Vec<String>>>,
    pub tone_digits: Option<Spanned<String>>,
    pub strength_percent: Option<Spanned<f64>>,
    pub pack_g: Option<Spanned<f64>>,
    pub price: Option<Spanned<String>>,
    pub ratio: Option<Spanned<String>>,
    pub developer_ww_percent: Option<Spanned<Vec<f64>>>,
}
