//! The readers behind `x-parse` that only a service file has.

use crate::{
    colour::{Lab, SeenPigment},
    limits::Jurisdiction,
    shop,
};
use jiff::civil::{Date, DateTime};
use serde_json::Value;
use std::str::FromStr;

/// Reads a text field as its schema names it; the error says what was wrong and what to write.
pub(super) fn check(reader: &str, text: &str) -> Result<(), String> {
    match reader {
        "moment" => text.parse::<Moment>().map(drop),
        "jurisdiction" => text.parse::<Jurisdiction>().map(drop).map_err(|error| error.to_string()),
        "lab" => text.parse::<Lab>().map(drop).map_err(|error| error.to_string()),
        "pigment" => text.parse::<SeenPigment>().map(drop).map_err(|error| error.to_string()),
        of_the_shop => shop::text_field(of_the_shop, text),
    }
}

/// What an editor can know of a text field by its reader.
pub(super) fn form(reader: &str) -> Option<(&'static str, Value)> {
    match reader {
        "moment" => {
            let pattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}([T ][0-9]{2}:[0-9]{2}(:[0-9]{2}([.][0-9]+)?)?)?$";
            Some(("pattern", Value::from(pattern)))
        }
        "jurisdiction" => {
            let codes = Jurisdiction::ALL.iter().map(|one| one.code()).chain(["UK", "USA"]);
            Some(("enum", codes.map(Value::from).collect()))
        }
        of_the_shop => shop::text_form(of_the_shop),
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
