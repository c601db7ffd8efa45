//! The sections seen together: depth at the root, the hairline, warm pigment first, two formulas in one foil.

use super::base::{changed, fine, only_colour, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, Passed, Warning},
    service::{
        ServiceFile,
        shape::{HistoryFlag, Zone},
    },
    shop::shape::ShadeEntry,
};
use rstest::rstest;

/// A second section beside the first, at a level of its own.
fn second(file: &mut ServiceFile, target: f64) {
    let mut nape = file.section[0].clone();
    (nape.name, nape.target_level) = ("nape".to_owned(), target);
    file.section.push(nape);
}

// Common practice: two levels darker or more on lightened hair needs warm pigment first; a warm shade is that pigment.
#[rstest]
#[case::less(true, 7.1, &[], None)]
#[case::two_levels(true, 7.0, &[], Some(Warning))]
#[case::never_lightened(false, 7.0, &[], None)]
#[case::warm_shade(true, 7.0, &["orange"], None)]
#[case::cool_shade(true, 7.0, &["blue"], Some(Warning))]
fn darker_on_lightened_hair(
    #[case] lightened: bool,
    #[case] target: f64,
    #[case] tones: &[&str],
    #[case] want: Option<Verdict>,
) {
    let plan = changed(only_colour(), |file| {
        file.analysis.history = Some(if lightened { vec![HistoryFlag::Lightened] } else { Vec::new() });
        shop(file).shade[1].tones = tones.iter().map(|tone| (*tone).to_owned()).collect();
        // Hair that grows at level 9 keeps its pigment.
        file.analysis.natural_level = if lightened { 6.0 } else { 9.0 };
        file.section[0].starting_level = Some(9.0);
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "pre-pigmentation"), Vec::from_iter(want));
}

// Common practice: depth at the root is not darker than the natural base, which is level 6 here.
#[rstest]
#[case::as_natural(Zone::Roots, 6.0, Some(Passed))]
#[case::darker_root(Zone::Roots, 5.9, Some(Warning))]
#[case::darker_lengths(Zone::Lengths, 5.9, None)]
fn root_darker_than_the_natural_base(#[case] zone: Zone, #[case] target: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_colour(), |file| {
        file.section[0].zone = zone;
        file.section[0].target_level = target;
    });
    assert_eq!(verdicts(&plan, "depth at the root"), Vec::from_iter(want));
}

/// The shade of the root shadow has level 6.
#[rstest]
#[case::natural(6.0, Passed)]
#[case::darker_than_natural(6.1, Warning)]
fn root_shadow_level(#[case] natural: f64, #[case] want: Verdict) {
    let plan = changed(fine(), |file| file.analysis.natural_level = natural);
    assert_eq!(verdicts(&plan, "depth at the root"), [want]);
}

// Common practice: the hairline is at least as light as what lies beside it. It goes to level 9 here.
#[rstest]
#[case::as_light(true, 9.0, &[], Some(Passed))]
#[case::darker(true, 9.1, &[], Some(Warning))]
#[case::darker_than_a_named_neighbour(true, 9.1, &["nape"], Some(Warning))]
#[case::no_hairline(false, 9.1, &[], None)]
fn hairline_beside_the_rest(
    #[case] hairline: bool,
    #[case] other: f64,
    #[case] beside: &[&str],
    #[case] want: Option<Verdict>,
) {
    let plan = changed(only_lightener(), |file| {
        second(file, other);
        file.section[0].hairline = hairline;
        file.section[0].beside = beside.iter().map(|name| (*name).to_owned()).collect();
    });
    assert_eq!(verdicts(&plan, "hairline"), Vec::from_iter(want), "{}", texts(&plan, "hairline"));
}

// Assumed: formulas that meet in one foil show a line when their levels differ by more than two.
#[rstest]
#[case::two_levels(7.0, None)]
#[case::more(6.9, Some(Warning))]
fn two_formulas_in_one_foil(#[case] other: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| {
        second(file, other);
        file.section[0].same_foil_as = vec!["nape".to_owned()];
    });
    assert_eq!(verdicts(&plan, "transition"), Vec::from_iter(want), "{}", texts(&plan, "transition"));
}

/// The darker goes first, whichever names the other; half way between level 9 and 5 lies level 7, where the
/// shop has a shade.
#[test]
fn the_shade_where_two_formulas_meet() {
    let plan = changed(only_lightener(), |file| {
        second(file, 5.0);
        file.section[0].same_foil_as = vec!["nape".to_owned()];
        file.section[1].same_foil_as = vec!["top".to_owned()];
        let natural = shop(file).shade[1].clone();
        shop(file).shade.push(ShadeEntry { code: "J7".to_owned(), level: 7.0, ..natural });
    });
    let [meeting] = plan.head.meetings.as_slice() else { panic!("{:?}", plan.head.meetings) };
    assert_eq!((meeting.first.as_str(), meeting.then.as_str(), meeting.level.number()), ("nape", "top", 7.0));
    let shade = meeting.shade.as_ref().unwrap();
    // The same level and tone is the same colour.
    assert_eq!((shade.code.as_str(), shade.apart_ciede2000.best()), ("J7", 0.0));
    let flat: String = plan.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains("nape goes into the foil before top; where they meet level 7, neutral shows: J7 is nearest"),
        "{flat}"
    );
    let alone = changed(only_lightener(), |file| second(file, 5.0));
    assert!(alone.head.meetings.is_empty());
}
