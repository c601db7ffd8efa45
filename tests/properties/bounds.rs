//! What a file states with bounds, and what is estimated, keeps its bounds through the whole plan.

use foilwork::{
    reader::Format,
    service::{ServiceFile, parse_with_shop, plan},
    shop,
};
use proptest::{prelude::*, sample::select};
use serde_json::Value;

const SHOP: &str = r#"
format = 1
currency = "EUR"
[[developer]]
name = "developer 6"
strength = "20 vol label"
strength_basis = "label"
pack_g = 1000
price = "8.90"
[[developer]]
name = "developer 3"
strength = "10 vol label"
strength_basis = "label"
[[lightener]]
name = "powder"
ratio = "1:2"
longest_min = 90
[[shade]]
code = "J9"
level = 9
tones = ["violet"]
class = "demi"
ratio = "1:2"
"#;

const SERVICE: &str = r#"
format = 1
shop_file = "shop.toml"
[service]
title = "Bounds"
start = 2026-11-26T10:00:00
jurisdiction = "EU"
[analysis]
natural_level = 6
white_percent = 0
texture = "medium"
density = "medium"
length_cm = 35
history = []
[salon]
scale_division_g = 0.01
[[section]]
name = "top"
technique = "weave"
share_percent = 10
zone = "lengths"
target_level = 9
product = "powder"
developer = "developer 6"
apply_min = 10
develop_min = 20
regions = [{ name = "crown", percent = 100 }]
panel = { width_cm = 12, height_cm = 6, depth_mm = 3, pick_mm = 4, gap_mm = 4, left_between_mm = 5, foil_width_cm = 12 }
[[toner]]
name = "gloss"
mix = [{ shade = "J9", parts = 1 }]
developer = "developer 3"
mix_g = 60
develop_min = 10
"#;

fn stated() -> ServiceFile {
    let shop = shop::parse_shop(SHOP, Format::Toml).unwrap();
    parse_with_shop(SERVICE, Format::Toml, &shop).unwrap()
}

/// Low and high of the estimate at this place; none where it is absent or a bare number.
fn bounds(plan: &Value, place: &str) -> Option<[f64; 3]> {
    let found = plan.pointer(place)?;
    Some([found.get("low")?.as_f64()?, found.get("best")?.as_f64()?, found.get("high")?.as_f64()?])
}

/// Every object with the three keys of an estimate, with its place.
fn estimates(at: &str, value: &Value, found: &mut Vec<(String, [f64; 3])>) {
    match value {
        Value::Object(fields) => {
            if let Some(three) = bounds(value, "") {
                found.push((at.to_owned(), three));
            }
            fields.iter().for_each(|(key, inner)| estimates(&format!("{at}/{key}"), inner, found));
        }
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(i, inner)| estimates(&format!("{at}/{i}"), inner, found));
        }
        _ => {}
    }
}

/// Estimates whatever the file says: models of hair, heads, colour, lift.
const ALWAYS: [&str; 22] = [
    "/head/head_hairs",
    "/head/mass_per_length_g_per_cm",
    "/head/hair_g",
    "/head/sections/0/hair_g",
    "/head/sections/0/takes_g",
    "/head/sections/0/foils",
    "/head/sections/0/mix_per_foil_g",
    "/head/sections/0/share_of_panel_percent",
    "/head/sections/0/line_shows_after_weeks",
    "/head/look/look/regions/3/lab_l",
    "/mixes/0/needed_g",
    "/colour/0/natural/lab_l",
    "/colour/0/exposed_swatch/lab_l",
    "/colour/0/swatch/lab_l",
    "/lift/0/first_strand_level",
    "/lift/0/last_strand_level",
    "/lift/0/rule_level",
    "/lift/0/looks/0/level",
    // Labels in volumes do not say which strength they mean.
    "/mixes/0/developer_ww_percent",
    "/mixes/0/on_hair_ww_percent",
    "/mixes/1/on_hair_ww_percent",
    "/lift/0/on_hair_ww_percent",
];

/// What derives from the natural level.
const FROM_LEVEL: [&str; 10] = [
    "/hair/natural_level",
    "/colour/0/from_level",
    "/colour/0/change_levels",
    "/lift/0/from_level",
    "/lift/0/first_strand_level",
    "/lift/0/last_strand_level",
    "/lift/0/rule_level",
    "/lift/0/looks/0/level",
    "/lift/0/chance_percent",
    "/lift/0/chance_with_a_fresh_mix_percent",
];

/// What derives from the strength of the developer, as stated or as its label may mean.
const FROM_STRENGTH: [&str; 5] = [
    "/mixes/0/developer_ww_percent",
    "/mixes/0/on_hair_ww_percent",
    "/mixes/0/on_hair_as_labelled_ww_percent",
    "/mixes/0/bowls/0/on_hair_ww_percent",
    "/lift/0/on_hair_ww_percent",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn what_is_estimated_keeps_its_bounds(
        level in (300u32..800).prop_map(|n| f64::from(n) / 100.0),
        margin in (10u32..150).prop_map(|n| f64::from(n) / 100.0),
        volumes in select(vec![10, 20, 30]),
        length in 15u32..60,
        share in 2u32..8,
    ) {
        let mut file = stated();
        file.analysis.natural_level = level;
        file.analysis.length_cm = Some(f64::from(length));
        file.section[0].share_percent = Some(f64::from(share));
        let shop = file.shop.as_mut().unwrap();
        shop.developer[0].strength = format!("{volumes} vol label");
        let json = |file: &ServiceFile| -> Result<Value, TestCaseError> {
            let plan = plan(file).map_err(|problems| TestCaseError::fail(problems.to_string()))?;
            Ok(serde_json::to_value(&plan).unwrap())
        };
        let sure = json(&file)?;
        file.analysis.natural_level_plus_minus = Some(margin);
        let unsure = json(&file)?;

        // An estimate lies between its bounds, wherever it stands.
        let mut all = Vec::new();
        estimates("", &unsure, &mut all);
        prop_assert!(all.len() > 40, "{}", all.len());
        for (place, [low, best, high]) in &all {
            prop_assert!(low <= best && best <= high, "{place}: {low} {best} {high}");
        }
        let width = |plan: &Value, place: &str| {
            bounds(plan, place).map(|[low, _, high]| high - low).ok_or_else(|| TestCaseError::fail(format!("{place} has no bounds")))
        };
        for place in ALWAYS.iter().chain(&FROM_LEVEL).chain(&FROM_STRENGTH) {
            prop_assert!(width(&unsure, place)? > 0.0, "{place} has lost its bounds");
        }
        // A reading that may be off makes nothing surer, and it moves no best estimate.
        for place in FROM_LEVEL {
            let (less, more) = (width(&sure, place)?, width(&unsure, place)?);
            prop_assert!(more >= less - 1e-9, "{place}: {less} without a margin, {more} with {margin}");
            let best = |plan| bounds(plan, place).map(|[_, best, _]| best);
            prop_assert_eq!(best(&sure), best(&unsure), "{}", place);
        }
        // A level that nothing has happened to is as unsure as it was read.
        prop_assert!((width(&unsure, "/lift/0/from_level")? - 2.0 * margin).abs() < 1e-9);
    }
}
