//! The trail: each result can be worked from its inputs by its formula, and cites what is in the register.

use foilwork::{
    reader::Format,
    service::{TracedInput, TracedResult, plan_text},
    sheet::trail_sheet,
    source::register,
};

fn trail() -> Vec<TracedResult> {
    plan_text(include_str!("../../examples/soft-gradient.toml"), Format::Toml).unwrap().trail()
}

fn number(text: &str) -> f64 {
    text.parse().unwrap()
}

fn inputs<'r>(result: &'r TracedResult, ends: &str) -> Vec<&'r TracedInput> {
    result.inputs.iter().filter(|input| input.what.ends_with(ends)).collect()
}

/// Conservation of peroxide, worked from the inputs alone.
#[test]
fn strengths_follow_from_their_inputs() {
    let trail = trail();
    let strengths: Vec<_> = trail.iter().filter(|result| result.what.contains("strength on the hair")).collect();
    assert_eq!(strengths.len(), 6);
    for result in strengths {
        let (grams, percents) = (inputs(result, ", weighed"), inputs(result, ", peroxide"));
        let grams: Vec<f64> = grams.iter().map(|input| number(&input.value)).collect();
        let held: f64 = grams.iter().zip(percents).map(|(g, input)| g * number(&input.value)).sum();
        let worked = held / grams.iter().sum::<f64>();
        assert!((worked - number(&result.value)).abs() < 1e-9, "{}: {worked} and {}", result.what, result.value);
    }
}

/// Sums of minutes and of cents.
#[test]
fn sums_follow_from_their_inputs() {
    let trail = trail();
    for what in ["time in the chair", "cost", "gross price"] {
        let result = trail.iter().find(|result| result.what == what).unwrap();
        let sum: f64 = result.inputs.iter().map(|input| number(&input.value)).sum();
        assert!((sum - number(&result.value)).abs() < 1e-6, "{what}: {sum} and {}", result.value);
    }
}

#[test]
fn every_result_says_unit_basis_version_and_known_sources() {
    let ids: Vec<&str> = register().map(|citation| citation.id).collect();
    for result in trail() {
        assert!(!result.unit.is_empty() && !result.formula.is_empty() && !result.inputs.is_empty(), "{}", result.what);
        assert_eq!(result.foilwork, env!("CARGO_PKG_VERSION"));
        assert!(result.sources.iter().all(|id| ids.contains(id)), "{:?}", result.sources);
    }
}

#[test]
fn an_estimate_keeps_its_bounds() {
    let trail = trail();
    let lift = trail.iter().find(|result| result.what.contains("level of the first strand")).unwrap();
    let [low, high] = lift.bounds.as_ref().unwrap();
    assert!(number(low) < number(&lift.value) && number(&lift.value) < number(high));
    let text = trail_sheet(&trail);
    assert!(text.contains(&format!("{} ({low} to {high}) level", lift.value)) || text.contains(low));
    assert!(text.lines().all(|line| line.chars().count() <= 80));
}
