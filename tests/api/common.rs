//! What tests of several rooms share.

use std::{fs, path::Path};

/// The text of an example.
pub(crate) fn example(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)).unwrap()
}

/// A number against what it is by hand.
pub(crate) fn near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} within {tolerance}");
}

/// Several of them.
pub(crate) fn all_near(got: &[f64], want: &[f64], tolerance: f64) {
    let same = got.len() == want.len() && got.iter().zip(want).all(|(got, want)| (got - want).abs() <= tolerance);
    assert!(same, "got {got:?}, want {want:?} within {tolerance}");
}

/// What a line of arithmetic comes to, as at school: brackets, then `x` and `/`, then `+` and `-`. None where it is more than that.
pub(crate) fn school(line: &str) -> Option<f64> {
    let mut rest = line;
    let sum = terms(&mut rest)?;
    rest.trim().is_empty().then_some(sum)
}

fn terms(rest: &mut &str) -> Option<f64> {
    let mut sum = factors(rest)?;
    while let Some(sign) = next_of(rest, ['+', '-']) {
        let one = factors(rest)?;
        sum += if sign == '+' { one } else { -one };
    }
    Some(sum)
}

fn factors(rest: &mut &str) -> Option<f64> {
    let mut product = number_or_brackets(rest)?;
    while let Some(sign) = next_of(rest, ['x', '/']) {
        let one = number_or_brackets(rest)?;
        product = if sign == 'x' { product * one } else { product / one };
    }
    Some(product)
}

fn number_or_brackets(rest: &mut &str) -> Option<f64> {
    if next_of(rest, ['-', '-']).is_some() {
        return Some(-number_or_brackets(rest)?);
    }
    if next_of(rest, ['(', '(']).is_some() {
        let inside = terms(rest)?;
        return next_of(rest, [')', ')']).map(|_| inside);
    }
    let end = rest.find(|one: char| !one.is_ascii_digit() && one != '.').unwrap_or(rest.len());
    let (number, after) = rest.split_at(end);
    *rest = after;
    number.parse().ok()
}

fn next_of(rest: &mut &str, signs: [char; 2]) -> Option<char> {
    let text = rest.trim_start();
    *rest = text;
    let sign = text.chars().next().filter(|first| signs.contains(first))?;
    *rest = text[1..].trim_start();
    Some(sign)
}

#[test]
fn school_arithmetic_is_that_of_school() {
    let worked = ["2 + 3 x 4", "(2 + 3) x 4 / 8", "10 - 2 - 3", "-(1.5 - 4)", "2 x 3 g", "(1", ""].map(school);
    assert_eq!(worked, [Some(14.0), Some(2.5), Some(5.0), Some(2.5), None, None, None]);
}
