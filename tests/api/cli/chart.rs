//! `foilwork chart`: a picture for each kind.

use super::{fine, foilwork};
use rstest::rstest;

#[rstest]
#[case::dilution(&["dilution", "--stocks", "12, 9 % w/w", "--targets", "6, 3 % w/w", "--total", "60"], "30 g + 30 g")]
#[case::label(&["dilution", "--stocks", "40 vol", "--targets", "6 % w/w", "--total", "60"], "Never close")]
#[case::pigment(&["pigment", "--natural", "4", "--names", "us"], "yellow-orange")]
#[case::wheel(&["wheel", "--mark", "orange"], "orange is neutralised by blue")]
#[case::costs(&["costs", "soft-gradient.toml"], "labour")]
#[case::margin(&["margin", "--cost", "60", "--currency", "EUR", "--margin", "40"], "100.00 EUR")]
fn a_picture_says_what_it_shows(#[case] args: &[&str], #[case] said: &str) {
    let svg = fine(&[&["chart"], args].concat());
    assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n") && svg.contains(said), "{svg}");
}

#[rstest]
#[case(&["wheel", "--mark", "ornage"], "error: --mark: ")]
#[case(&["pigment", "--natural", "40"], "error: --natural: ")]
#[case(&["margin", "--cost", "0", "--currency", "EUR"], "error: --cost: invalid cost (got 0.00 EUR)")]
#[case(&["margin", "--cost", "60", "--currency", "EUR", "--margin", "97"], "error: --margin: invalid margin (got 97")]
#[case(&["dilution", "--stocks", "1,2,3,4,5,6,7,8,9,10,11,12,13 % w/w", "--targets", "1 % w/w", "--total", "9"], "error: --stocks: 13")]
fn what_cannot_be_drawn_is_refused(#[case] args: &[&str], #[case] told: &str) {
    let output = foilwork(&[&["chart"], args].concat());
    let complaint = String::from_utf8(output.stderr).unwrap();
    assert!(complaint.starts_with(told), "{complaint}");
    assert_eq!(output.status.code(), Some(2));
}
