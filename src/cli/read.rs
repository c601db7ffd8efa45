//! The values of options: text in, quantities out, and the name of the option in front of what is wrong.

use super::{Refusal, args::ConditionsArgs};
use crate::{
    colour::{Hue, Tone},
    peroxide::{Conditions, MolarVolume, SolutionDensity},
    quantity::{Density, Mass, Temperature},
    shop,
};
use std::{fmt::Display, str::FromStr};

/// The value of an option.
pub(super) fn option<T: FromStr<Err: Display>>(name: &str, text: &str) -> Result<T, Refusal> {
    text.parse().map_err(|error| about(name, error))
}

/// What is wrong with an option, after its name.
pub(super) fn about(name: &str, error: impl Display) -> Refusal {
    Refusal(format!("{name}: {error}"))
}

/// A mass in g, as a number or with its unit.
pub(super) fn grams(name: &str, text: &str) -> Result<Mass, Refusal> {
    let number = text.trim();
    let number = number.strip_suffix("g").unwrap_or(number).trim_end();
    if let Ok(value) = number.parse::<f64>() {
        return Mass::from_g(value).map_err(|error| about(name, error));
    }
    let point = number.replacen(',', ".", 1);
    let way_out = if point.parse::<f64>().is_ok() {
        format!("write the number with a point, {point}")
    } else {
        "write a mass in g, for example 60".to_owned()
    };
    Err(Refusal(format!("{name}: cannot read {text:?}: {way_out}")))
}

/// The items of a list with commas; an item without a unit takes that of the last, as in `12, 9, 6 % w/w`.
pub(super) fn with_units(text: &str) -> Vec<String> {
    let items: Vec<&str> = text.split(',').map(str::trim).collect();
    let unit = items.last().map_or("", |last| last.trim_start_matches(is_of_number).trim());
    let item = |item: &&str| {
        let bare = !item.is_empty() && item.chars().all(is_of_number);
        if bare && !unit.is_empty() { format!("{item} {unit}") } else { (*item).to_owned() }
    };
    items.iter().map(item).collect()
}

fn is_of_number(c: char) -> bool {
    c.is_ascii_digit() || matches!(c, '.' | '-' | '+')
}

/// A reading and its tolerance, in mL for example: `12.0+-0.03`, `12.0 ± 0.03` or only `12.0`.
pub(super) fn with_tolerance<'a>(name: &str, text: &'a str) -> Result<(f64, Option<f64>, &'a str), Refusal> {
    let wrong = || {
        let way_out = "write a number, if known with its tolerance, for example 12.0 or 12.0+-0.03";
        Refusal(format!("{name} {text:?}: {way_out}"))
    };
    let number = |text: &str| text.trim().parse::<f64>().map_err(|_| wrong());
    let split = |text: &'a str| {
        let end = text.find(|c: char| c.is_ascii_alphabetic() || c == '%').unwrap_or(text.len());
        text.split_at_checked(end).unwrap_or((text, ""))
    };
    let (numbers, unit) = split(text.trim());
    match ["+-", "+/-", "±"].iter().find_map(|sign| numbers.split_once(sign)) {
        Some((value, tolerance)) => {
            let (value, tolerance) = (number(value)?, number(tolerance)?);
            if !(0.0..=value).contains(&tolerance) {
                return Err(Refusal(format!("{name} {text:?}: the tolerance must be from 0 to the value itself")));
            }
            Ok((value, Some(tolerance), unit))
        }
        None => Ok((number(numbers)?, None, unit)),
    }
}

/// `neutral`, or hues with commas, the main one first.
pub(super) fn tone(name: &str, text: &str) -> Result<Tone, Refusal> {
    if text.trim() == "neutral" {
        return Ok(Tone::neutral());
    }
    let hues: Result<Vec<Hue>, Refusal> =
        text.split(',').map(|word| shop::hue(word.trim()).map_err(|error| about(name, error))).collect();
    Ok(Tone::from_hues(hues?))
}

/// What stands between strengths by mass and by volume.
pub(super) fn conditions(args: &ConditionsArgs) -> Result<Conditions, Refusal> {
    let mut conditions = Conditions::at(Temperature::from_celsius(args.temperature)?);
    if let Some(density) = args.density {
        conditions = conditions.with_density(SolutionDensity::measured(Density::from_g_per_ml(density)?));
    } else if args.cream {
        conditions = conditions.with_density(SolutionDensity::Emulsion);
    }
    if let Some(which) = &args.molar_volume {
        conditions = conditions.with_molar_volume(which.parse::<MolarVolume>()?);
    }
    Ok(conditions)
}
