//! A formula in words with the numbers put in, so that anybody can work it out again.

use super::TracedInput;
use std::borrow::Cow;

/// The formula with the values of the inputs in the places of their names; none where a word is left over, as in the law of a
/// model, which is no arithmetic.
///
/// A name is the whole one of the input, or what stands before its first comma; a percentage goes in as a part of one. A formula
/// of several steps, `a = ...; b = ...`, comes to one line, and takes the first input by its unit.
pub(super) fn worked(formula: &str, inputs: &[TracedInput]) -> Option<String> {
    if formula.starts_with("sum of the lines") || formula.starts_with("sum,") {
        let parts: Vec<Cow<'_, str>> = inputs.iter().map(|input| bracketed(&input.value)).collect();
        return (!parts.is_empty()).then(|| parts.join(" + "));
    }
    if formula.starts_with("sum of grams times") {
        let pairs = inputs.chunks_exact(2).filter_map(|pair| pair.first().zip(pair.get(1)));
        let (held, all): (Vec<String>, Vec<&str>) =
            pairs.map(|(mass, part)| (format!("{} x {}", mass.value, part.value), mass.value.as_str())).unzip();
        return (!all.is_empty()).then(|| format!("({}) / ({})", held.join(" + "), all.join(" + ")));
    }
    let mut known: Vec<(Cow<'_, str>, String)> = Vec::new();
    for (place, input) in inputs.iter().enumerate() {
        if input.value.parse::<f64>().is_err() {
            continue;
        }
        let part = input.unit == "%" || input.unit.starts_with("% of");
        let value = if part { format!("({} / 100)", input.value) } else { bracketed(&input.value).into_owned() };
        if place == 0 && formula.contains(" = ") {
            known.push((input.unit.as_str().into(), value.clone()));
        }
        let short = input.what.split(", ").next().unwrap_or(&input.what);
        known.extend([(input.what.as_str().into(), value.clone()), (short.into(), value)]);
    }
    let mut told = None;
    for step in formula.split("; ") {
        let (name, right) = step.split_once(" = ").map_or((None, step), |(name, right)| (Some(name), right));
        known.sort_by_key(|(name, _)| std::cmp::Reverse(name.len()));
        let right = put_in(right, &known)?;
        if let Some(name) = name {
            known.retain(|(old, _)| old.as_ref() != name);
            known.push((name.into(), format!("({right})")));
        }
        told = Some(right);
    }
    told
}

/// A number below zero stays one after a minus.
fn bracketed(value: &str) -> Cow<'_, str> {
    if value.starts_with('-') { format!("({value})").into() } else { value.into() }
}

/// Longest names first. None where a word has no number, but for `x`, `whole`, `up` and `largest`.
fn put_in(formula: &str, known: &[(Cow<'_, str>, String)]) -> Option<String> {
    let (mut rest, mut told, mut inside) = (formula, String::new(), false);
    while let Some(first) = rest.chars().next() {
        let ends = |name: &str| !rest.get(name.len()..).unwrap_or_default().starts_with(char::is_alphanumeric);
        let named = known.iter().find(|(name, _)| rest.starts_with(name.as_ref()) && ends(name));
        if let (false, Some((name, value))) = (inside, named) {
            told += value;
            rest = rest.get(name.len()..)?;
            continue;
        }
        if first.is_alphabetic() {
            let end = rest.find(|one: char| !one.is_alphabetic()).unwrap_or(rest.len());
            let (word, after) = rest.split_at_checked(end)?;
            if !["x", "whole", "up", "largest"].contains(&word) {
                return None;
            }
            told += word;
            rest = after;
        } else {
            told.push(first);
            rest = rest.get(first.len_utf8()..)?;
        }
        inside = told.ends_with(char::is_alphanumeric);
    }
    Some(told)
}
