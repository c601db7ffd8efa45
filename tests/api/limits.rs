//! Findings and the words they come in.

use foilwork::limits::{Jurisdiction, Purpose, Table, Use, Verdict, Why, check_peroxide};
use foilwork::quantity::MassFraction;
use foilwork::source::Interval;
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

#[rstest]
#[case("EU", Jurisdiction::EuropeanUnion)]
#[case("uk", Jurisdiction::GreatBritain)]
#[case("Great Britain", Jurisdiction::GreatBritain)]
#[case("USA", Jurisdiction::UnitedStates)]
#[case("asean", Jurisdiction::Asean)]
fn a_jurisdiction_is_read_by_code_or_name(#[case] text: &str, #[case] want: Jurisdiction) -> Outcome {
    assert_eq!(text.parse::<Jurisdiction>()?, want);
    assert_eq!(want.to_string().parse::<Jurisdiction>()?, want);
    assert_eq!(want.code().parse::<Jurisdiction>()?, want);
    Ok(())
}

fn verdict(code: &str, low: f64, best: f64, high: f64) -> Result<Verdict, Box<dyn std::error::Error>> {
    let percent = MassFraction::from_percent_ww;
    let level = Interval::new(percent(low)?, percent(best)?, percent(high)?)?;
    let report = check_peroxide(code.parse()?, level, Use::professional(Purpose::Lightening));
    Ok(report.findings.first().ok_or("no finding")?.verdict)
}

#[rstest]
#[case::at_the_limit("EU", 12.0, 12.0, 12.0, Verdict::Within)]
#[case::above("EU", 12.1, 12.1, 12.1, Verdict::Exceeded { certain: true })]
#[case::best_above("EU", 11.5, 12.2, 12.9, Verdict::Exceeded { certain: false })]
#[case::straddles("EU", 11.0, 11.8, 12.5, Verdict::CannotBeJudged(Why::Straddles))]
#[case::british("GB", 12.0, 12.0, 12.0, Verdict::Within)]
#[case::chinese("CN", 12.5, 12.5, 12.5, Verdict::Exceeded { certain: true })]
#[case::from_memory_is_never_green("JP", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::Unverified))]
#[case::asean("ASEAN", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::Unverified))]
#[case::asean_above("ASEAN", 13.0, 13.0, 13.0, Verdict::Exceeded { certain: true })]
#[case::canada_has_no_figure("CA", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::NoFigure))]
#[case::no_federal_figure("US", 3.0, 3.0, 3.0, Verdict::CannotBeJudged(Why::NoCeilingForThisUse))]
fn peroxide_against_the_law(
    #[case] code: &str,
    #[case] low: f64,
    #[case] best: f64,
    #[case] high: f64,
    #[case] want: Verdict,
) -> Outcome {
    assert_eq!(verdict(code, low, best, high)?, want);
    Ok(())
}

#[test]
fn every_built_in_row_is_read() {
    let rows: usize = Jurisdiction::ALL.iter().map(|j| Table::of(*j).rows().len()).sum();
    assert_eq!(rows, 209);
}
