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

#[cfg(test)]
mod tests {
    use super::*;

    /// What, value and unit.
    type Given = (&'static str, &'static str, &'static str);

    fn told(formula: &str, inputs: &[Given]) -> Option<String> {
        let inputs: Vec<_> = inputs.iter().map(|(what, value, unit)| TracedInput::exact(*what, value, unit)).collect();
        worked(formula, &inputs)
    }

    /// Formula, inputs as what, value and unit, and the line with the numbers put in by hand.
    #[test]
    fn numbers_stand_where_their_names_stood() {
        let molar = ("M, molar mass of hydrogen peroxide", "34.014", "g/mol");
        let cases: [(&str, &[Given], Option<&str>); 24] = [
            ("sum of the lines, each rounded once", &[("a", "1.20", "EUR"), ("b", "-3", "EUR")], Some("1.20 + (-3)")),
            ("sum of the lines, each rounded once", &[], None),
            ("sum, by the hour", &[("a", "2", "h"), ("b", "3", "h")], Some("2 + 3")),
            ("sum, by the hour", &[], None),
            (
                "sum of grams times % w/w, over the sum of grams, as weighed",
                &[("a", "30", "g"), ("b", "12", "% w/w"), ("c", "60", "g"), ("d", "3", "% w/w")],
                Some("(30 x 12 + 60 x 3) / (30 + 60)"),
            ),
            ("sum of grams times % w/w, over the sum of grams", &[], None),
            (
                "cost / (1 - margin)",
                &[("cost", "75.00", "EUR"), ("margin, as asked for", "25", "% of the price")],
                Some("75.00 / (1 - (25 / 100))"),
            ),
            ("a x b", &[("a", "25", "%"), ("b", "30", "% w/w")], Some("(25 / 100) x 30")),
            ("a - b", &[("a", "1", "g"), ("b", "-2", "g")], Some("1 - (-2)")),
            // The unit of the first names it where the formula is an equation; no other unit names anything.
            (
                "% w/w = 100 x mol/kg x M / (1000 + mol/kg x M)",
                &[("strength as stated", "1.8", "mol/kg"), molar],
                Some("100 x 1.8 x 34.014 / (1000 + 1.8 x 34.014)"),
            ),
            ("y = m x kg", &[("a", "2", "m"), ("b", "5", "kg")], None),
            ("m x b", &[("a", "2", "m"), ("b", "5", "kg")], None),
            // What one step finds is put into the next.
            ("g/L = 10 x % w/v; mol/L = g/L / M", &[("stated", "3", "% w/v"), molar], Some("(10 x 3) / 34.014")),
            ("a = 2 x a; b = a / c", &[("a", "3", "a"), ("c", "5", "g")], Some("(2 x 3) / 5")),
            // The longer name first, and a name only where a word begins and ends.
            ("net price - net", &[("net", "4", "EUR"), ("net price", "10", "EUR")], Some("10 - 4")),
            ("net price - net", &[("net price", "10", "EUR"), ("net", "4", "EUR")], Some("10 - 4")),
            ("costs x 2", &[("cost", "4", "EUR")], None),
            ("2cost", &[("cost", "4", "EUR")], None),
            ("cost2", &[("cost", "4", "EUR")], None),
            // Of a name with a comma its first words are enough.
            ("total x this", &[("total", "80", "g"), ("this, stock", "12", "% w/w")], Some("80 x 12")),
            // Words of arithmetic stay; any other word is no arithmetic.
            ("largest whole a up", &[("a", "5", "g")], Some("largest whole 5 up")),
            ("a by b", &[("a", "5", "g"), ("b", "6", "g")], None),
            ("a x b", &[("a", "5", "g"), ("b", "to the list", "direction")], None),
            ("as stated", &[("a", "5", "g")], None),
        ];
        for (formula, inputs, want) in cases {
            assert_eq!(told(formula, inputs).as_deref(), want, "{formula}: {inputs:?}");
        }
    }
}
