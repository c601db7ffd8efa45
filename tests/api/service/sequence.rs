//! What waits for what, and in which order hair is worked. The rules are common practice; the times are sums.

use super::base::{changed, fine, only_colour, only_lightener, texts, verdicts};
use foilwork::{
    finding::Verdict::{self, Warning},
    head::Technique,
    service::{
        OrderBasis, ServiceFile, plan,
        shape::{After, WaitFor},
    },
    sheet::bench_sheet,
};
use rstest::rstest;

/// A second section after the first, with a change of its own.
fn second(file: &mut ServiceFile, change: impl FnOnce(&mut foilwork::service::shape::Section)) {
    let mut nape = file.section[0].clone();
    nape.name = "nape".to_owned();
    change(&mut nape);
    file.section.push(nape);
}

fn after(section: &str, wait_for: WaitFor) -> Vec<After> {
    vec![After { section: section.to_owned(), wait_for }]
}

/// The first is put on for 20 min and then develops for 30.
#[rstest]
#[case(WaitFor::Application, 20.0)]
#[case(WaitFor::FoilClosing, 20.0)]
#[case(WaitFor::Development, 50.0)]
#[case(WaitFor::Rinse, 50.0)]
fn a_section_waits(#[case] wait_for: WaitFor, #[case] begin: f64) {
    let plan = changed(only_colour(), |file| second(file, |nape| nape.after = after("top", wait_for)));
    assert_eq!(plan.order[1].begin.min(), begin);
    assert_eq!(plan.order[1].rinse_by.min(), begin + 50.0);
}

#[test]
fn only_foils_are_closed() {
    let mut file = only_colour();
    file.section[0].technique = Technique::Freehand;
    second(&mut file, |nape| nape.after = after("top", WaitFor::FoilClosing));
    let problems = plan(&file).unwrap_err().to_string();
    let want = "section[2].after[1].wait_for: \"top\" has no foil to close: wait for its application";
    assert!(problems.contains(want), "{problems}");
}

#[test]
fn the_sheet_says_whose_order_it_is() {
    let of_the_file = changed(only_colour(), |file| second(file, |_| {}));
    assert_eq!(of_the_file.order_basis, OrderBasis::File);
    assert!(bench_sheet(&of_the_file).contains("The order is the file's."));
    let moved = changed(only_colour(), |file| {
        second(file, |_| {});
        file.section[0].after = after("nape", WaitFor::Application);
    });
    assert_eq!(moved.order_basis, OrderBasis::Plan);
    let names: Vec<&str> = moved.order.iter().map(|step| step.name.as_str()).collect();
    assert_eq!(names, ["nape", "top"]);
    assert!(bench_sheet(&moved).contains("The order is the plan's"));
}

// Common practice: the hairline is finest and lightens fastest, so that it is put on last.
#[rstest]
#[case::first(true, false, Some(Warning))]
#[case::last(false, true, None)]
#[case::none(false, false, None)]
fn hairline_first(#[case] first: bool, #[case] last: bool, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| {
        file.section[0].hairline = first;
        second(file, |nape| nape.hairline = last);
    });
    assert_eq!(verdicts(&plan, "sequence"), Vec::from_iter(want), "{}", texts(&plan, "sequence"));
}

// Common practice: of two formulas in one foil the darkest is painted first.
#[rstest]
#[case::dark_after_light(9.0, 6.0, true, Some(Warning))]
#[case::dark_first(6.0, 9.0, true, None)]
#[case::foils_of_their_own(9.0, 6.0, false, None)]
fn two_in_one_foil(#[case] one: f64, #[case] two: f64, #[case] together: bool, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| {
        second(file, |nape| nape.target_level = two);
        let (place, level) = (if one < two { 0 } else { 1 }, 6.0);
        let section = &mut file.section[place];
        (section.product, section.target_level) = (Some("J6".to_owned()), level);
        file.section[0].target_level = one;
        if together {
            file.section[0].same_foil_as = vec!["nape".to_owned()];
        }
    });
    assert_eq!(verdicts(&plan, "sequence"), Vec::from_iter(want), "{}", texts(&plan, "sequence"));
}

// Common practice: lightener leaves the underlying pigment, and the tone comes from a toner.
#[rstest]
#[case::toned(fine(), Some("beige"), None)]
#[case::not_toned(only_lightener(), Some("beige"), Some(Warning))]
#[case::no_tone_wanted(only_lightener(), None, None)]
#[case::colour(only_colour(), Some("beige"), None)]
fn a_tone_without_a_toner(#[case] file: ServiceFile, #[case] tone: Option<&str>, #[case] want: Option<Verdict>) {
    let plan = changed(file, |file| file.section[0].target_tone = tone.map(str::to_owned));
    assert_eq!(verdicts(&plan, "untoned"), Vec::from_iter(want));
}

/// The toner ends at 5 + 15 = 20, the root shadow at 5 + 5 + 10 = 20; with 14 min the toner ends at 19.
#[rstest]
#[case::together(15.0, None)]
#[case::toner_first(14.0, Some(Warning))]
fn a_toner_under_a_root_shadow(#[case] develop_min: f64, #[case] want: Option<Verdict>) {
    let plan = changed(fine(), |file| file.toner[0].develop_min = develop_min);
    assert_eq!(verdicts(&plan, "rinse"), Vec::from_iter(want));
    if want.is_some() {
        let text = texts(&plan, "rinse");
        assert!(
            text.contains("veil: due at the basin at minute 19 while on the hair stay root shadow, 3 cm (to 20)"),
            "{text}"
        );
    }
}

/// The first is due at 50; the second is on from 20, and until 70 or, with 10 min of development, until 50.
#[rstest]
#[case::longer(30.0, Some(Warning))]
#[case::together(10.0, None)]
fn basin_work_while_foils_are_on(#[case] develop_min: f64, #[case] want: Option<Verdict>) {
    let plan = changed(only_lightener(), |file| second(file, |nape| nape.develop_min = develop_min));
    assert_eq!(verdicts(&plan, "rinse"), Vec::from_iter(want), "{}", texts(&plan, "rinse"));
}

/// Two that wait for each other are the least that clash; the third only follows them.
#[test]
fn the_smallest_circle_is_named() {
    let text = super::base::example("soft-gradient.toml");
    let text = text.replacen("name = \"nape\"\n", "name = \"nape\"\nafter = [{ section = \"crown\" }]\n", 1);
    let said = foilwork::service::plan_text(&text, foilwork::reader::Format::Toml).unwrap_err().to_string();
    assert!(said.contains("these sections wait for each other: nape, crown: remove one `after`"), "{said}");
}
