//! The readers behind `x-parse`: text fields whose content has a grammar of its own.

use crate::{
    colour::Hue,
    limits::Jurisdiction,
    mix::Ratio,
    money::{Currency, parse_decimal},
    peroxide::StatedStrength,
};
use jiff::civil::{Date, DateTime};
use rust_decimal::Decimal;
use std::str::FromStr;

/// Reads a text field as its schema names it; the error says what was wrong and what to write.
pub(super) fn check(reader: &str, text: &str) -> Result<(), String> {
    match reader {
        "name" => name(text),
        "moment" => read::<Moment>(text),
        "jurisdiction" => read::<Jurisdiction>(text),
        "strength" => read::<StatedStrength>(text),
        "ratio" => two_parts(text),
        "hue" => read::<Hue>(text),
        "currency" => Currency::from_code(text).map(drop).map_err(|error| error.to_string()),
        "amount" => amount(text).map(drop),
        other => Err(format!("the schema asks for an unknown reader `{other}`: this is a fault of foilwork")),
    }
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
pub(in crate::service) fn amount(text: &str) -> Result<Decimal, String> {
    match parse_decimal("amount", text) {
        Ok(amount) if !amount.is_sign_negative() => Ok(amount),
        Ok(_) => Err(format!("\"{text}\" is negative: give 0 or more, for example \"12.50\"")),
        Err(_) => Err(format!("\"{text}\" is not an amount: give digits with a point, for example \"12.50\"")),
    }
}

/// A local date, with or without the time of day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::service) struct Moment {
    /// The earliest it can have been.
    pub(in crate::service) earliest: DateTime,
    /// The latest it can have been: the same when a time of day is given, else the end of the day.
    pub(in crate::service) latest: DateTime,
}

impl FromStr for Moment {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let wrong = || {
            format!(
                "\"{text}\" is not a date: give year-month-day, with the local time if known, for example 2026-11-25T10:00"
            )
        };
        // The salon's clock is meant; a reader of dates would drop an offset without a word.
        if text.get(10..).is_some_and(|time| time.contains(['+', '-', 'Z', 'z', '['])) {
            return Err(format!("\"{text}\" names a time zone: give the time on the salon's clock, without it"));
        }
        if text.len() <= 10 {
            let date: Date = text.parse().map_err(|_| wrong())?;
            return Ok(Self { earliest: date.at(0, 0, 0, 0), latest: date.at(23, 59, 59, 0) });
        }
        let at: DateTime = text.parse().map_err(|_| wrong())?;
        Ok(Self { earliest: at, latest: at })
    }
}
