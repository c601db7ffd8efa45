//! Costs from-to: what is read, what is refused, and the price list that is made of them.

use crate::api::money::helpers::{HALF_UP, currency, euros, minutes, number};
use foilwork::{
    business::{price_list, read_cost_ranges},
    money::{Margin, PriceRule, PriceTarget, TaxRate},
    source::{Basis, Interval},
};
use rstest::rstest;

const NAMES: &str = "service,class,part,low,best,high,basis,chair_low_min,chair_best_min,chair_high_min";

fn refused(rows: &str) -> String {
    read_cost_ranges(&format!("{NAMES}\n{rows}"), currency("EUR")).unwrap_err().to_string()
}

/// Rows of one service and class belong together wherever they stand; the time may stand in any one of them.
#[test]
fn rows_of_one_service_belong_together() {
    let text = format!(
        "{NAMES}\n\
         foils,long,lightener,4.00,6.00,10.00,assumed,,,\n\
         foils,short,lightener,3.00,4.00,5.00,measured,60,70,90\n\
         foils,long,hands-on time,30.00,34.00,44.00,,120,150,210\n\
         foils,,lightener,3.50,3.50,3.50,stated,,,\n"
    );
    let classes = read_cost_ranges(&text, currency("EUR")).unwrap();
    let names: Vec<_> = classes.iter().map(|one| (one.service.as_str(), one.class.as_str(), one.parts.len())).collect();
    assert_eq!(names, [("foils", "long", 2), ("foils", "short", 1), ("foils", "", 1)]);
    let time = |low, best, high| Interval::new(minutes(low), minutes(best), minutes(high)).ok();
    assert_eq!(classes[0].in_chair, time(120.0, 150.0, 210.0));
    assert_eq!((classes[1].in_chair, classes[2].in_chair), (time(60.0, 70.0, 90.0), None));
    let bases: Vec<_> = classes.iter().flat_map(|one| &one.parts).map(|part| part.basis).collect();
    assert_eq!(bases, [Basis::Assumed, Basis::Stated, Basis::Measured, Basis::Stated]);
    let parts: Vec<_> = classes[0].parts.iter().map(|part| (part.what.as_str(), part.cost.to_array())).collect();
    assert_eq!(
        parts,
        [
            ("lightener", ["4.00", "6.00", "10.00"].map(euros)),
            ("hands-on time", ["30.00", "34.00", "44.00"].map(euros)),
        ]
    );
    // The first time that is given stays.
    let twice = format!("{text}foils,long,foils,1,1,1,,10,10,10\n");
    assert_eq!(read_cost_ranges(&twice, currency("EUR")).unwrap()[0].in_chair, time(120.0, 150.0, 210.0));
}

#[rstest]
#[case::falling("foils,,lightener,6.00,4.00,10.00,,,,", "line 2: best: the three costs must rise: low, best, high")]
#[case::above_the_high(
    "foils,,lightener,4.00,6.00,5.99,,,,",
    "line 2: best: the three costs must rise: low, best, high"
)]
#[case::times(
    "foils,,lightener,4.00,6.00,10.00,,60,50,90",
    "line 2: chair_best_min: the three times must rise: low, best, high"
)]
#[case::one_time("foils,,lightener,4,6,10,,60,,", "line 2: chair_best_min: give all three times in the chair, or none")]
#[case::two_times(
    "foils,,lightener,4,6,10,,60,70,",
    "line 2: chair_best_min: give all three times in the chair, or none"
)]
#[case::missing(
    ",,,4,,10,,,,",
    "line 2: service: is missing: give a value\nline 2: part: is missing: give a value\n\
     line 2: best: is missing: give a value"
)]
#[case::negative(
    "foils,,lightener,-0.01,6,10,,,,",
    "line 2: low: invalid amount (got -0.01 EUR): must be nothing or more"
)]
#[case::basis(
    "foils,,lightener,4,6,10,guessed,,,",
    "line 2: basis: unknown basis \"guessed\": give one of published, derived, measured, stated, common-practice, assumed"
)]
#[case::none("", "the list has no parts: give at least one line")]
fn a_row_that_says_nothing_is_refused(#[case] row: &str, #[case] want: &str) {
    let said = refused(&format!("{row}\n"));
    assert!(said.starts_with(want), "{said}");
    assert_eq!(said.lines().count(), want.lines().count(), "{said}");
}

/// By hand, half of the price to be left: 4 + 30 to 10 + 44 cost 34, 40 and 54, so 68, 80 and 108, and with 20 % tax 81.60, 96.00 and
/// 129.60. Alone, the time moves the net price from 72 to 100 (28), the lightener from 76 to 88 (12): 70 and 30 %.
#[test]
fn a_price_list_names_what_moves_a_price_most() {
    let text = format!(
        "{NAMES}\nfoils,long,lightener,4,6,10,assumed,,,\nfoils,long,hands-on time,30,34,44,stated,,,\n\
         gloss,,toner,5,5,5,stated,,,\n"
    );
    let rule = PriceRule {
        target: PriceTarget::Margin(Margin::from_percent(50.into()).unwrap()),
        tax: TaxRate::from_percent(20.into()).unwrap(),
        card: None,
        ending: None,
        rounding: HALF_UP,
    };
    let list = price_list(&read_cost_ranges(&text, currency("EUR")).unwrap(), &rule).unwrap();
    assert_eq!([list[0].low, list[0].usual, list[0].high], ["81.60", "96.00", "129.60"].map(euros));
    let driver = list[0].driver.as_ref().unwrap();
    assert_eq!((driver.what.as_str(), driver.basis), ("hands-on time", Basis::Stated));
    assert_eq!([driver.low, driver.high, driver.swing], ["72.00", "100.00", "28.00"].map(euros));
    assert_eq!(driver.share_percent, Some(number("70.0")));
    // What never moves has no driver.
    assert_eq!((list[1].low, list[1].high, list[1].driver.is_none()), (euros("12.00"), euros("12.00"), true));
    assert_eq!((list[1].service.as_str(), list[1].class.as_str()), ("gloss", ""));
}
