//! Prices: what they need beside them, that they fit the currency, and terms that need or exclude each other.

use super::text_fields;
use crate::{
    money::{Currency, Money, MoneyError},
    reader::{Node, Problems},
};

const PRODUCTS: [&str; 6] = ["developer", "lightener", "shade", "additive", "diluent", "remover"];
const AMOUNTS: [&str; 7] =
    ["wage_per_h", "overhead_per_h", "overhead", "per_chair_h", "card_fixed", "price_step", "price_ending"];

/// A price means little without the mass of the pack and a currency, and it has no more decimals than the currency.
pub(super) fn check(shop: &Node, prefix: &str, problems: &mut Problems) {
    let code = shop.get("currency");
    let currency = code.and_then(Node::text).and_then(|code| Currency::from_code(code).ok());
    let mut priced: Option<&Node> = None;
    for kind in PRODUCTS {
        for (i, item) in shop.get(kind).map(Node::items).unwrap_or_default().iter().enumerate() {
            let Some(price) = item.get("price") else { continue };
            priced = priced.or(Some(price));
            let field = format!("{prefix}{kind}[{}]", i + 1);
            fits(Some(price), currency, &format!("{field}.price"), problems);
            if item.get("pack_g").is_none() {
                let message = "missing: a price needs the mass of the pack it buys";
                problems.say(item.at, &format!("{field}.pack_g"), message);
            }
        }
    }
    for (i, consumable) in shop.get("consumable").map(Node::items).unwrap_or_default().iter().enumerate() {
        let price = consumable.get("price");
        priced = priced.or(price);
        fits(price, currency, &format!("{prefix}consumable[{}].price", i + 1), problems);
    }
    for (i, class) in shop.get("class_price").map(Node::items).unwrap_or_default().iter().enumerate() {
        let field = format!("{prefix}class_price[{}]", i + 1);
        let (price, more) = (class.get("price"), class.get("per_extra_h"));
        priced = priced.or(price);
        fits(price, currency, &format!("{field}.price"), problems);
        fits(more, currency, &format!("{field}.per_extra_h"), problems);
        if more.is_some() && class.get("included_min").is_none() {
            let message = "missing: say after how many minutes an hour more is paid for";
            problems.say(class.at, &format!("{field}.included_min"), message);
        }
    }
    let terms = shop.get("terms");
    for key in AMOUNTS {
        let amount = terms.and_then(|terms| terms.get(key));
        priced = priced.or(amount);
        fits(amount, currency, &format!("{prefix}terms.{key}"), problems);
    }
    if let (Some(price), None) = (priced, code) {
        let message = "missing: there are prices, so say in which currency";
        problems.say(price.at, &format!("{prefix}currency"), message);
    }
    if let Some(terms) = terms {
        these_terms(terms, &format!("{prefix}terms"), problems);
    }
}

/// One way to state a thing, and all that this way needs.
fn these_terms(terms: &Node, field: &str, problems: &mut Problems) {
    for (one, other) in [
        ("margin_percent", "markup_percent"),
        ("margin_percent", "per_chair_h"),
        ("markup_percent", "per_chair_h"),
        ("productive_percent", "productive_h"),
        ("overhead_per_h", "overhead"),
    ] {
        if let (Some(_), Some(second)) = (terms.get(one), terms.get(other)) {
            let message = format!("both `{one}` and `{other}` are given: keep one of them");
            problems.say(second.at, field, message);
        }
    }
    for (given, needed, why) in [
        ("productive_h", "paid_h", "`productive_h` is a part of them"),
        ("paid_h", "productive_h", "`paid_h` alone does not say how many hours are worked"),
        ("overhead", "chairs", "`overhead` is for all of them"),
        ("overhead", "productive_h_per_chair", "`overhead` is for a period"),
        ("price_ending", "price_step", "`price_ending` needs the step it repeats in"),
    ] {
        if let (Some(given), None) = (terms.get(given), terms.get(needed)) {
            problems.say(given.at, &format!("{field}.{needed}"), format!("missing: {why}"));
        }
    }
}

fn fits(amount: Option<&Node>, currency: Option<Currency>, field: &str, problems: &mut Problems) {
    let (Some(amount), Some(currency)) = (amount, currency) else { return };
    // What is no amount at all is reported by the reader of amounts.
    let Some(text) = amount.text().filter(|text| text_fields::amount(text).is_ok()) else { return };
    let message = match (Money::parse(text, currency), currency.exponent()) {
        (Ok(_), _) => return,
        (Err(MoneyError::BetweenMinorUnits { .. }), 0) => {
            format!("\"{text}\" is between two amounts of {currency}, which has no decimals: round it")
        }
        (Err(MoneyError::BetweenMinorUnits { .. }), decimals) => {
            format!("\"{text}\" is between two amounts of {currency}, which has {decimals} decimals: round it")
        }
        (Err(error), _) => error.to_string(),
    };
    problems.say(amount.at, field, message);
}
