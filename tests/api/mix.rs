//! The words of the errors and the shape of the answers.

use foilwork::mix::{BowlRequest, Pace, Ratio, as_applied, bowls, weigh};
use foilwork::quantity::{Duration, Mass, MassFraction};
use foilwork::source::Interval;
use rstest::rstest;

type Outcome = Result<(), Box<dyn std::error::Error>>;

#[rstest]
#[case("1:1")]
#[case("1:1.5")]
#[case("1+2")]
#[case("3:1:6")]
#[case("1:2:0.05:4")]
#[case("1.50:2")]
fn a_ratio_prints_back_as_it_was_written(#[case] text: &str) -> Outcome {
    assert_eq!(text.parse::<Ratio>()?.to_string(), text);
    Ok(())
}

#[rstest]
#[case("", 1, "a number above 0 such as 1 or 1.5")]
#[case("1", 2, "a second part, as in 1:1.5")]
#[case("1:", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:x", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:1,5", 4, "a decimal point, not a comma")]
#[case("1:2+3", 4, "the same sign between all parts")]
#[case("1:0", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:-2", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:1.5.2", 3, "a number above 0 such as 1 or 1.5")]
#[case("1:2 3", 5, "\":\" or \"+\" between the parts")]
#[case("1:1234567890123", 3, "at most 12 digits")]
fn a_bad_ratio_points_at_the_character(#[case] text: &str, #[case] position: usize, #[case] expected: &str) {
    let error = text.parse::<Ratio>().unwrap_err();
    assert_eq!((error.position(), error.expected()), (position, expected), "{error}");
    assert_eq!(error.pointer().lines().last().unwrap_or_default().len(), position);
}

#[test]
fn weighing_reports_what_it_cost_the_ratio() -> Outcome {
    // 30 : 45 on a 5 g scale for 74 g wanted: 75 g, and the parts are exact.
    let parts = "1:1.5".parse::<Ratio>()?.split_total(Mass::from_g(74.0)?)?;
    let bowl = weigh(&parts, Mass::from_g(5.0)?)?;
    let grams: Vec<f64> = bowl.parts().iter().map(|p| p.weighed.g()).collect();
    assert_eq!((grams, bowl.total().g()), (vec![30.0, 45.0], 75.0));
    assert!(bowl.worst_ratio_error_percent() < 1e-9);
    Ok(())
}

#[test]
fn thickener_dilutes_the_strength() -> Outcome {
    let exact = |p| MassFraction::from_percent_ww(p).map(Interval::exact);
    let bowl = as_applied(&[
        (Mass::from_g(60.0)?, exact(9.0)?),
        (Mass::from_g(30.0)?, exact(0.0)?),
        (Mass::from_g(10.0)?, exact(0.0)?),
    ])?;
    assert!((bowl.best().percent_ww() - 5.4).abs() < 1e-12);
    Ok(())
}

#[test]
fn bowls_are_bounded_by_working_life_and_capacity() -> Outcome {
    let (total, capacity) = (Mass::from_g(200.0)?, Mass::from_g(90.0)?);
    let request = BowlRequest::new(total, capacity, Duration::from_min(40.0)?, Pace::from_g_per_min(5.0)?)
        .mixing(Duration::from_min(3.0)?)
        .residue(Mass::from_g(10.0)?);
    let plan = bowls(&request)?;
    // 80 g of each 90 g bowl reach the hair: three bowls of 66.67 g + 10 g.
    assert_eq!(plan.bowls().len(), 3);
    assert!((plan.leftover().g() - 30.0).abs() < 1e-9);
    let times: Vec<f64> = plan.bowls().iter().map(|b| b.mix_at.min().round()).collect();
    assert_eq!(times, [0.0, 16.0, 33.0]);
    Ok(())
}
