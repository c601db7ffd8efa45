//! Foils of a panel by the command line.

use super::{data, foilwork, near, number};
use rstest::rstest;

const PANEL: [&str; 7] = ["foils", "--width", "8", "--height", "6", "--length", "40"];

/// By hand, as `weave_by_hand` has it: 13 strands, 48.75 and 24.375 %, 5 foils; 200 hairs/cm2 on 2.34 cm2 are 468.
#[test]
fn a_weave_by_hand() {
    let sizes = ["--pick", "3", "--gap", "3", "--subsection", "6", "--left", "6", "--counted", "200"];
    let found = data(&[PANEL.as_slice(), &sizes].concat());
    let foils = &found["foils"];
    assert_eq!((number(&foils["picks"]["best"]), number(&foils["foils"]["best"])), (13.0, 5.0));
    near(number(&foils["share_of_subsection_percent"]["best"]), 48.75, 1e-9);
    near(number(&foils["share_of_panel_percent"]["best"]), 24.375, 1e-9);
    near(number(&found["hairs_in_a_foil"]["best"]), 468.0, 1e-6);
    let (all, each) = (number(&found["demand"]["mix_g"]["best"]), number(&found["demand"]["mix_per_foil_g"]["best"]));
    near(all, 5.0 * each, 1e-9);
    // By hand: all the hair is 200 x 48 cm2 x 0.24375; it is painted from 0.3 cm on and half of 0.2 cm.
    let hairs = 200.0 * 48.0 * 0.24375;
    near(number(&found["demand"]["hair_g"]["best"]), hairs * 4216.0 * 1.32e-8 * 39.6, 0.001);
    near(all, 2.5 * number(&found["demand"]["hair_g"]["best"]), 1e-9);
}

#[rstest]
#[case::foil(&["--foil-width", "12"], "error: --foil-width 12 cm is wider than --width 8 cm: it would lie on its neighbour (fold the foil to 8 cm)")]
#[case::depth(&["--depth", "6"], "error: --depth 6 mm is more than --subsection 3.175 mm: the comb would lift the hair behind it (at most 3.175 mm)")]
#[case::nothing(&["--subsection", "0"], "error: --subsection is 0: a foil needs some (leave it out for the usual one)")]
#[case::start(&["--start", "45"], "error: --start 45 cm is not within --length 40 cm (start nearer to the scalp)")]
#[case::no_foil(&["--technique", "freehand"], "error: --technique: freehand takes no foils (give weave, slice, back-comb or freehand-in-foil)")]
fn bad_options_are_named(#[case] more: &[&str], #[case] want: &str) {
    let output = foilwork(&[PANEL.as_slice(), more].concat());
    let text = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{text}");
    assert!(text.contains(want), "{text}");
}
