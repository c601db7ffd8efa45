use super::rows;
use foilwork::{
    peroxide::{Bearing, HANDLING_FACTS, StrengthBound, handling_facts},
    quantity::MassFraction,
    source::{Interval, register},
};
use rstest::rstest;

fn ww(percent: f64) -> MassFraction {
    MassFraction::from_ww_percent(percent).unwrap()
}

/// Source: the texts named in each row of the file; see `classification_sources.csv` beside it.
#[test]
fn every_fact_is_a_row_of_the_file() {
    let file = rows(include_str!("../../data/peroxide/oxidising_classification.csv"));
    assert_eq!(file.len(), HANDLING_FACTS.len());
    for (row, fact) in file.iter().zip(HANDLING_FACTS) {
        let bound = |end: &str| -> Option<StrengthBound> {
            let strength = ww(row[end].parse().ok()?);
            Some(StrengthBound { strength, included: row[&format!("{end}_included")] == "yes" })
        };
        assert_eq!((fact.lower, fact.upper), (bound("lower"), bound("upper")), "{}", fact.class);
        assert_eq!(fact.class, row["class_or_status"]);
        assert!(fact.code == row["code"] || (fact.code.is_empty() && row["code"] == row["class_or_status"]));
        assert!(row["scheme"].starts_with(fact.jurisdiction), "{} {}", fact.jurisdiction, row["scheme"]);
        assert!(register().any(|citation| citation == fact.citation), "{}", fact.citation.id);
    }
}

/// Source: the same rows, read at the edges that matter to a salon.
#[rstest]
#[case(4.9, &["H302; H332"])]
#[case(5.0, &["H319", "H302; H332"])]
#[case(7.99, &["H319", "H302; H332"])]
#[case(8.0, &["H318", "H302; H332", "UN 2984"])]
#[case(12.0, &["H318", "H302; H332", "UN 2984"])]
#[case(20.0, &["H318", "H302; H332", "UN 2014"])]
#[case(35.0, &["H315", "H318", "H335", "H302; H332", "UN 2014"])]
#[case(50.0, &["H272", "H314", "H335", "H302; H332", "UN 2014"])]
#[case(60.0, &["H272", "H314", "H335", "H302; H332", "UN 2014"])]
#[case(70.0, &["H271", "H314", "H335", "H302; H332", "UN 2015"])]
fn codes_at_a_strength(#[case] percent: f64, #[case] want: &[&str]) {
    let found: Vec<_> =
        handling_facts(Interval::exact(ww(percent))).map(|(fact, _)| fact.code).filter(|c| !c.is_empty()).collect();
    assert_eq!(found, want, "{percent} %");
}

/// Source: Regulation (EU) 2019/1148 and the Poisons Act 1972: above 12 %, 12 % itself not.
#[rstest]
#[case(12.0, 0)]
#[case(12.01, 3)]
#[case(35.0, 3)]
#[case(35.01, 2)]
fn explosives_precursors(#[case] percent: f64, #[case] count: usize) {
    let found =
        handling_facts(Interval::exact(ww(percent))).filter(|(fact, _)| fact.scheme.contains("precursors")).count();
    assert_eq!(found, count, "{percent} %");
}

/// A label that may be on either side of a limit is told so.
#[test]
fn a_span_across_a_limit_may_be_above_it() {
    let span = Interval::new(ww(7.5), ww(7.9), ww(8.1)).unwrap();
    let of = |code: &str| handling_facts(span).find(|(fact, _)| fact.code == code).map(|(_, how)| how);
    assert_eq!(of("H319"), Some(Bearing::MayApply));
    assert_eq!(of("H318"), Some(Bearing::MayApply));
    assert_eq!(of("H302; H332"), Some(Bearing::Substance));
    assert_eq!(of("H271"), None);
}
