//! Steps before the colour: in the running order, at the chair, and under what to weigh.

use super::{about, exact, fine, part, q, weighing::three};
use foilwork::{
    head::{ExtraStep, StepEnd},
    service::{FirstPart, FirstStep, PartKind, Plan, plan},
    sheet::SheetPart,
    source::Basis,
};

fn of(product: &str, kind: PartKind, mass: [f64; 3], weigh: f64) -> FirstPart {
    FirstPart { product: product.to_owned(), kind, mass: about(mass), weigh: q(weigh) }
}

/// A cleaning that is planned: 27.2 g, on by minute 10, over by 25.
pub(super) fn cleaning() -> FirstStep {
    let mut file = fine();
    file.section[0].first = vec![ExtraStep::CleanFirst];
    let mut step = plan(&file).unwrap().first_steps.remove(0);
    (step.section, step.step, step.planned) = ("top".to_owned(), ExtraStep::CleanFirst, true);
    (step.what, step.mix, step.basis) = ("powder and developer".to_owned(), about([24.0, 27.0, 30.0]), Basis::Assumed);
    step.parts = vec![
        of("powder", PartKind::Lightener, [8.0, 9.0, 10.0], 9.0),
        of("developer", PartKind::Developer, [18.0; 3], 18.2),
    ];
    (step.on_hair, step.why_not, step.develop) = (Some(exact(4.0)), None, about([5.0, 10.0, 15.0]));
    (step.begin, step.applied) = (Some(exact(0.0)), Some(about([5.0, 10.0, 20.0])));
    (step.due, step.over) = (Some(about([10.0, 20.0, 35.0])), Some(about([15.0, 25.0, 45.0])));
    (step.then, step.mind) = (StepEnd::Rinse, vec!["gloves", "look often"]);
    step
}

/// The same, for which the shop has nothing.
fn impossible() -> FirstStep {
    let mut step = cleaning();
    step.parts.clear();
    (step.on_hair, step.why_not) = (None, Some("no developer is weak enough".to_owned()));
    (step.begin, step.applied, step.over) = (None, None, None);
    step
}

fn asked_for() -> FirstStep {
    let mut step = cleaning();
    (step.step, step.planned, step.then) = (ExtraStep::PrePigment, false, StepEnd::Blot);
    (step.begin, step.over) = (None, None);
    step
}

fn with(steps: Vec<FirstStep>) -> Plan {
    Plan { first_steps: steps, ..three() }
}

/// What is planned stands before what is only asked for, whatever comes first in the plan.
#[test]
fn the_order_begins_with_what_is_planned() {
    let told = part(&with(vec![asked_for(), cleaning()]), SheetPart::Order);
    let want = "ORDER, IN MINUTES FROM THE FIRST BRUSH | \
        First on top, clean out the artificial pigment first: 0 to 25 (15 to 45); 10 (5 to 15) min on the hair, then rinse, dry, \
        and judge the hair anew. \
        Not planned, top, pre-pigment: 10 (5 to 15) min on the hair, then blot it dry, do not rinse. # what";
    assert!(told.starts_with(want), "{told}");
}

/// From 10:00 on; what is only asked for has no place at the chair.
#[test]
fn the_chair_begins_with_what_is_planned() {
    let told = part(&with(vec![cleaning(), asked_for()]), SheetPart::Chair);
    let want = "AT THE CHAIR | \
        10:00 top, clean out the artificial pigment first: powder and developer weigh 9 g powder, 18.2 g developer (27.2 g); 4 % \
        w/w on the hair all on by 10:10 (10:05 to 10:20); 10 (5 to 15) min on the hair, looked at all the while, then rinse, dry, \
        and judge the hair anew; over by 10:25 (10:15 to 10:45) mind: gloves; look often 10:03 1. top: ";
    assert!(told.starts_with(want), "{told}");
    let told = part(&with(vec![impossible()]), SheetPart::Chair);
    let want = "AT THE CHAIR | \
        top, clean out the artificial pigment first: powder and developer 27 (24 to 30) g are needed, and no developer is weak \
        enough 10 (5 to 15) min on the hair, looked at all the while, then rinse, dry, and judge the hair anew mind: gloves; look \
        often 10:03 1. top: ";
    assert!(told.starts_with(want), "{told}");
}

#[test]
fn what_to_weigh_begins_with_what_is_planned() {
    let told = part(&with(vec![cleaning(), asked_for(), impossible()]), SheetPart::Bowls);
    let want = "WHAT TO WEIGH | \
        First. top, clean out the artificial pigment first: 27 (24 to 30) g needed [assumed] into the tared bowl weigh scale shows \
        takes powder 9 g 9 g 9 (8 to 10) g developer 18.2 g 27.2 g 18 g mix just before the first brush; 4 % w/w on the hair \
        First. top, clean out the artificial pigment first: 27 (24 to 30) g needed [assumed] no developer is weak enough \
        1. top: ";
    assert!(told.starts_with(want), "{told}");
}
