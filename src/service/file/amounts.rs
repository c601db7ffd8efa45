//! Prices: what they need beside them, and that they fit the currency.

use crate::{
    money::{Currency, Money, MoneyError},
    reader::{Node, Problems},
};

/// A price means nothing without the mass of the pack and a currency, and it has no more decimals than the currency.
pub(super) fn check(root: &Node, found: &mut Problems) {
    let prices = root.get("prices");
    let currency = prices.and_then(|prices| prices.get("currency")).and_then(Node::text);
    let currency = currency.and_then(|code| Currency::from_code(code).ok());
    let mut priced = None;
    for kind in ["developer", "lightener", "shade", "additive", "diluent"] {
        let items = root.get("shelf").and_then(|shelf| shelf.get(kind)).map(Node::items).unwrap_or_default();
        for (i, item) in items.iter().enumerate() {
            let Some(price) = item.get("price") else { continue };
            priced = priced.or(Some(price.at));
            let field = format!("shelf.{kind}[{}]", i + 1);
            fits(Some(price), currency, &format!("{field}.price"), found);
            if item.get("pack_g").is_none() {
                let message = "missing: a price needs the mass of the pack it buys".to_owned();
                found.say(item.at, &format!("{field}.pack_g"), message);
            }
        }
    }
    let Some(prices) = prices else {
        if let Some(at) = priced {
            let message = "missing: products have prices, so say in which currency".to_owned();
            found.say(at, "prices.currency", message);
        }
        return;
    };
    for key in ["wage_per_hour", "overhead_per_hour"] {
        fits(prices.get(key), currency, &format!("prices.{key}"), found);
    }
    for (i, consumable) in prices.get("consumable").map(Node::items).unwrap_or_default().iter().enumerate() {
        fits(consumable.get("price"), currency, &format!("prices.consumable[{}].price", i + 1), found);
    }
    if let (Some(_), Some(second)) = (prices.get("margin_percent"), prices.get("markup_percent")) {
        let message = "both `margin_percent` and `markup_percent` are given: keep one of them".to_owned();
        found.say(second.at, "prices", message);
    }
}

fn fits(amount: Option<&Node>, currency: Option<Currency>, field: &str, found: &mut Problems) {
    let (Some(amount), Some(currency)) = (amount, currency) else { return };
    // What is no amount at all is reported by the reader of amounts.
    let Some(text) = amount.text().filter(|text| super::text_fields::amount(text).is_ok()) else { return };
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
    found.say(amount.at, field, message);
}
