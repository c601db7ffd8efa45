//! Plans to hold the laws against: the examples, the same varied in one place or two, and the small service with another value of
//! every field that a file may have.

use crate::api::{
    common::example,
    service::{
        base::fine,
        field_use::{set, without_nulls},
    },
};
use foilwork::{
    reader::Format,
    service::{Plan, parse, parse_with_shop, plan},
};
use serde_json::{Map, Value};
use std::sync::OnceLock;

/// A file, its plan, and the plan as plain data.
#[derive(Clone)]
pub(super) struct Known {
    pub(super) name: String,
    pub(super) file: Value,
    pub(super) plan: Plan,
    pub(super) data: Value,
}

impl Known {
    pub(super) fn of(name: &str, file: &Value) -> Result<Self, String> {
        let text = without_nulls(file.clone()).to_string();
        let plan = parse(&text, Format::Json).and_then(|file| plan(&file)).map_err(|problems| problems.to_string())?;
        let data = serde_json::to_value(&plan).unwrap();
        Ok(Self { name: name.to_owned(), file: without_nulls(file.clone()), plan, data })
    }

    /// The same with another value at some places (`salon.people`), which must be a service that can be planned.
    pub(super) fn with(&self, changes: Value) -> Self {
        let mut file = self.file.clone();
        set(&mut file, changes.as_object().unwrap());
        Self::of(&self.name, &file).unwrap_or_else(|problems| panic!("{}: {changes}: {problems}", self.name))
    }

    /// The same after a change of the file.
    pub(super) fn changed(&self, change: impl FnOnce(&mut Value)) -> Self {
        let mut file = self.file.clone();
        change(&mut file);
        Self::of(&self.name, &file).unwrap_or_else(|problems| panic!("{}: {problems}", self.name))
    }
}

const EXAMPLES: [&str; 6] = [
    "soft-gradient.toml",
    "grey-blend.toml",
    "finish-together.toml",
    "gloss-refresh.toml",
    "staged-lightening.toml",
    "lowlights.json",
];

/// What is varied, and how.
const VARIED: [(&str, &str); 32] = [
    ("soft-gradient.toml", r#"{"salon.scale_division_g": 1, "salon.bowl_capacity_g": 30}"#),
    ("soft-gradient.toml", r#"{"salon.scale_division_g": 0.01, "salon.working_life_min": 7}"#),
    ("soft-gradient.toml", r#"{"salon.people": 2, "salon.basins": 2}"#),
    ("soft-gradient.toml", r#"{"section.0.mix_g": null, "section.1.mix_g": null, "section.2.mix_g": null}"#),
    ("soft-gradient.toml", r#"{"section.0.first": ["clean-first"], "analysis.existing.0.artificial": true}"#),
    ("soft-gradient.toml", r#"{"section.1.first": ["pre-lighten"], "section.1.on_scalp": false}"#),
    (
        "soft-gradient.toml",
        r#"{"shop.terms.margin_percent": null, "shop.terms.per_chair_h": "60.00", "shop.terms.card_percent": 1.5}"#,
    ),
    (
        "soft-gradient.toml",
        r#"{"shop.developer.0.in_hand_g": 10, "shop.lightener.0.in_hand_g": 31, "shop.shade.0.in_hand_g": 1}"#,
    ),
    (
        "soft-gradient.toml",
        r#"{"shop.lightener.0.declared_in_full": false, "shop.developer.1.strength_basis": "measured"}"#,
    ),
    ("soft-gradient.toml", r#"{"service.start": "2026-11-25", "service.other_work_min": null}"#),
    ("soft-gradient.toml", r#"{"service.jurisdiction": "JP", "analysis.length_cm": null}"#),
    ("soft-gradient.toml", r#"{"section.2.strength": "7.5 % w/w", "shop.developer.1.strength": "12 % w/w"}"#),
    (
        "soft-gradient.toml",
        r#"{"section.0.foils": null, "section.0.panel": {"width_cm": 12, "height_cm": 18, "pick_mm": 4, "gap_mm": 6}}"#,
    ),
    ("soft-gradient.toml", r#"{"section.1.develop_min": 45, "section.1.after.0.wait_for": "rinse"}"#),
    ("soft-gradient.toml", r#"{"section.0.used_g": 60, "section.2.used_g": 20, "section.0.mix_g": null}"#),
    (
        "grey-blend.toml",
        r#"{"section.0.mix_g": null, "shop.terms.card_percent": 1.75, "shop.terms.card_fixed": "0.20"}"#,
    ),
    ("grey-blend.toml", r#"{"shop.class_price.0.included_min": 60, "shop.terms.tax_percent": null}"#),
    ("grey-blend.toml", r#"{"shop.shade.1.price": null, "shop.shade.1.pack_g": null, "shop.terms.wage_per_h": null}"#),
    ("grey-blend.toml", r#"{"section.0.first": ["pre-soften"], "analysis.white_percent": 80}"#),
    ("grey-blend.toml", r#"{"section.0.target_level": 7, "shop.developer.0.strength": "30 vol label"}"#),
    ("finish-together.toml", r#"{"finish.within_min": 3, "section.2.develop_min": 20}"#),
    ("finish-together.toml", r#"{"section.0.target_level": 10, "section.1.mix_g": null}"#),
    ("finish-together.toml", r#"{"section.1.after.0.wait_for": "development", "analysis.length_cm": 30}"#),
    ("gloss-refresh.toml", r#"{"section.0.target": {"level": 9, "tones": ["violet"]}, "section.0.mix": []}"#),
    (
        "gloss-refresh.toml",
        r#"{"shop.shade.2.in_hand_g": 5, "section.0.first": ["pre-pigment"], "section.0.target_level": 6}"#,
    ),
    ("staged-lightening.toml", r#"{"section.0.first": ["clean-first"], "section.1.first": ["clean-first"]}"#),
    (
        "staged-lightening.toml",
        r#"{"analysis.natural_level": 3, "section.0.mix_g": null, "salon.bowl_capacity_g": 50}"#,
    ),
    ("staged-lightening.toml", r#"{"section.1.apply_min": null, "section.0.apply_min": null, "salon.foil_min": 1.5}"#),
    ("lowlights.json", r#"{"section.0.strength": "4 % w/w", "section.1.foils": null}"#),
    ("lowlights.json", r#"{"section.1.after": [], "salon.people": 3}"#),
    (
        "lowlights.json",
        r#"{"salon.scale_division_g": 0.5, "section.0.mix_g": 200, "shop.consumable.0.in_hand_pieces": 20}"#,
    ),
    (
        "lowlights.json",
        r#"{"shop.terms.price_step": "5.00", "shop.terms.price_ending": "0.90", "service.other_work_min": 60}"#,
    ),
];

/// The files of the examples, each with its shop in it.
pub(super) fn examples() -> &'static [Known] {
    static FOUND: OnceLock<Vec<Known>> = OnceLock::new();
    FOUND.get_or_init(|| EXAMPLES.iter().map(|name| Known::of(name, &with_shop(name)).unwrap()).collect())
}

pub(super) fn one(name: &str) -> &'static Known {
    examples().iter().find(|one| one.name.starts_with(name)).unwrap()
}

fn with_shop(name: &str) -> Value {
    let (text, format) = (example(name), Format::of_name(name));
    let shop = foilwork::shop::parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    let file = if text.contains("shop_file") { parse_with_shop(&text, format, &shop) } else { parse(&text, format) };
    let mut file = without_nulls(serde_json::to_value(file.unwrap()).unwrap());
    for named in ["shop_file", "strand_book"] {
        file.as_object_mut().unwrap().remove(named);
    }
    file
}

/// The examples, and the same varied.
pub(super) fn varied() -> &'static [Known] {
    static FOUND: OnceLock<Vec<Known>> = OnceLock::new();
    FOUND.get_or_init(|| {
        let found = VARIED.iter().map(|(name, changes)| {
            let mut varied = one(name).with(serde_json::from_str(changes).unwrap());
            varied.name = format!("{name} with {changes}");
            varied
        });
        found.chain(examples().iter().cloned()).collect()
    })
}

/// Some of each, for what plans each of them anew.
pub(super) fn some() -> impl Iterator<Item = &'static Known> {
    varied().iter().step_by(5)
}

/// Those, and the small service with another value of each field that makes a plan with it.
pub(super) fn all() -> &'static [Known] {
    static FOUND: OnceLock<Vec<Known>> = OnceLock::new();
    FOUND.get_or_init(|| {
        let mut found = varied().to_vec();
        let object = |text: &str| if text.is_empty() { Map::new() } else { serde_json::from_str(text).unwrap() };
        for row in csv::Reader::from_path("tests/data/service/field_changes.csv").unwrap().deserialize() {
            let (field, given, change): (String, String, String) = row.unwrap();
            let mut file = serde_json::to_value(fine()).unwrap();
            set(&mut file, &object(&given));
            set(&mut file, &object(&change));
            found.extend(Known::of(&format!("another {field}"), &file));
        }
        assert!(found.len() > 200, "{}", found.len());
        found
    })
}

/// What is in every bowl, by its mix.
pub(super) fn in_bowls(data: &Value) -> Vec<Value> {
    list(data, "mixes").iter().map(|mix| serde_json::json!([mix["name"], mix["needed_g"], mix["bowls"]])).collect()
}

/// What stands at a place of plain data, `bowls.0.count`; nothing where there is nothing.
pub(super) fn at<'v>(value: &'v Value, path: &str) -> &'v Value {
    value.pointer(&format!("/{}", path.replace('.', "/"))).unwrap_or(&Value::Null)
}

pub(super) fn number(value: &Value, path: &str) -> f64 {
    at(value, path).as_f64().unwrap_or_else(|| panic!("no number at {path} of {value}"))
}

/// The same, or what stands for it where the file is silent.
pub(super) fn number_or(value: &Value, path: &str, usual: f64) -> f64 {
    at(value, path).as_f64().unwrap_or(usual)
}

pub(super) fn word<'v>(value: &'v Value, path: &str) -> &'v str {
    at(value, path).as_str().unwrap_or_else(|| panic!("no word at {path} of {value}"))
}

pub(super) fn list<'v>(value: &'v Value, path: &str) -> &'v [Value] {
    at(value, path).as_array().map_or(&[], Vec::as_slice)
}

/// Low, best, high.
pub(super) fn bounds(value: &Value, path: &str) -> [f64; 3] {
    let found = at(value, path);
    ["low", "best", "high"].map(|bound| number(found, bound))
}

/// The entry of a list that bears a name.
pub(super) fn named<'v>(entries: &'v [Value], key: &str, name: &str) -> &'v Value {
    entries.iter().find(|one| one[key] == name).unwrap_or(&Value::Null)
}

/// What the shop of a file says of a product, whatever it is.
pub(super) fn product<'v>(file: &'v Value, name: &str) -> &'v Value {
    let kinds = [("developer", "name"), ("lightener", "name"), ("shade", "code"), ("additive", "name")];
    let more = [("diluent", "name"), ("remover", "name")];
    let mut found = kinds.iter().chain(&more).map(|(kind, key)| named(list(file, &format!("shop.{kind}")), key, name));
    found.find(|one| !one.is_null()).unwrap_or(&Value::Null)
}

/// Whether every lightener and shade of its mix states its longest time.
pub(super) fn all_state_it(one: &Known, step: &Value) -> bool {
    let mix = named(list(&one.data, "mixes"), "name", word(step, "name"));
    let limited = |name: &str| {
        let of = |kind: &str, key: &str| named(list(&one.file, kind), key, name).clone();
        [of("shop.lightener", "name"), of("shop.shade", "code")].into_iter().find(|facts| !facts.is_null())
    };
    let mut facts = list(mix, "bowls.0.parts").iter().filter_map(|part| limited(word(part, "product")));
    facts.all(|facts| facts["longest_min"].is_number())
}

/// An amount of money in cents.
pub(super) fn cents(value: &Value) -> f64 {
    let amount = value["amount"].as_str().unwrap_or_else(|| panic!("no amount: {value}"));
    (amount.parse::<f64>().unwrap() * 100.0).round()
}

/// What a file says in text: `9.50` in cents.
pub(super) fn price(value: &Value) -> f64 {
    value.as_str().unwrap_or_else(|| panic!("no price: {value}")).parse::<f64>().unwrap() * 100.0
}

pub(super) fn same(got: f64, want: f64, what: &str) {
    assert!((got - want).abs() <= 1e-6 * want.abs().max(1.0), "{what}: {got}, not {want}");
}
