//! The readers behind `x-parse`: text fields whose content has a grammar of its own.

use crate::{
    colour::Hue,
    mix::{Cas, Form, Ratio},
    money::{Currency, parse_decimal},
    peroxide::StatedStrength,
};
use rust_decimal::Decimal;
use serde_json::Value;
use std::str::FromStr;

/// Reads a text field as its schema names it; the error says what was wrong and what to write.
pub(crate) fn check(reader: &str, text: &str) -> Result<(), String> {
    match reader {
        "name" => name(text),
        "strength" => read::<StatedStrength>(text),
        "ratio" => two_parts(text),
        "hue" => hue(text).map(drop),
        "currency" => Currency::from_code(text).map(drop).map_err(|error| error.to_string()),
        "amount" => amount(text).map(drop),
        "cas" => read::<Cas>(text),
        "form" => read::<Form>(text),
        other => Err(format!("the schema asks for an unknown reader `{other}`: this is a fault of foilwork")),
    }
}

/// What an editor can know of a text field by its reader: a keyword of JSON Schema. The reader itself knows more.
pub(crate) fn form(reader: &str) -> Option<(&'static str, Value)> {
    let pattern = match reader {
        "hue" => return Some(("enum", Hue::ALL.iter().map(|hue| Value::from(hue.code())).collect())),
        "name" => "^[^+\\s]([^+\\n\\r]*[^+\\s])?$",
        // A number and its unit; a bare percent sign hides which percentage is meant.
        "strength" => "^\\s*[0-9]+([.][0-9]+)?\\s*(%\\s*)?[A-Za-z].*$",
        "ratio" => "^\\s*[0-9]+([.][0-9]+)?\\s*[:+]\\s*[0-9]+([.][0-9]+)?\\s*$",
        "currency" => "^[A-Z]{3}$",
        "amount" => "^[0-9]+([.][0-9]+)?$",
        "cas" => "^[1-9][0-9]{1,6}-[0-9]{2}-[0-9]$",
        _ => return None,
    };
    Some(("pattern", Value::from(pattern)))
}

/// A hue of the colour wheel; words of shade charts are answered with the hues that they mostly stand for.
///
/// Which hue a chart means by such a word differs from chart to chart (common practice), so none is taken for granted.
pub(crate) fn hue(text: &str) -> Result<Hue, String> {
    text.parse::<Hue>().map_err(|error| {
        let meant = match text.trim().to_lowercase().as_str() {
            "natural" | "neutral" => return format!("\"{text}\" is no hue: leave `tones` out, or write an empty list"),
            "ash" | "ashy" | "cool" => "blue, green or violet",
            "gold" | "golden" | "warm" => "yellow or yellow-orange",
            "copper" => "orange or red-orange",
            "mahogany" => "red-violet",
            "pearl" | "iridescent" => "violet or blue-violet",
            "beige" => "yellow with violet",
            "matt" | "matte" => "green",
            _ => return error.to_string(),
        };
        format!(
            "\"{text}\" is a word of shade charts, mostly for {meant}: write the hues that your own chart means by it"
        )
    })
}

/// A product's name stands in recipes, between plus signs.
fn name(text: &str) -> Result<(), String> {
    if text.contains(['+', '\n', '\r']) {
        return Err(format!("{text:?} holds a plus sign or a line break: recipes use them, so leave them out"));
    }
    if text != text.trim() {
        return Err(format!("{text:?} begins or ends with a blank: leave it out"));
    }
    Ok(())
}

fn read<T: FromStr<Err: std::fmt::Display>>(text: &str) -> Result<(), String> {
    text.parse::<T>().map(drop).map_err(|error| error.to_string())
}

/// Product to developer has exactly two parts; recipes with more belong to `mix`.
fn two_parts(text: &str) -> Result<(), String> {
    let ratio: Ratio = text.parse().map_err(|error: crate::mix::ParseError| error.to_string())?;
    match ratio.parts() {
        [_, _] => Ok(()),
        parts => Err(format!("\"{text}\" has {} parts: give product to developer, for example 1:2", parts.len())),
    }
}

/// An exact amount of money that is not negative.
pub(super) fn amount(text: &str) -> Result<Decimal, String> {
    match parse_decimal("amount", text) {
        Ok(amount) if !amount.is_sign_negative() => Ok(amount),
        Ok(_) => Err(format!("\"{text}\" is negative: give 0 or more, for example \"12.50\"")),
        Err(_) => Err(format!("\"{text}\" is not an amount: give digits with a point, for example \"12.50\"")),
    }
}
