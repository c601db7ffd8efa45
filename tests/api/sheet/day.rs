//! Hands, looks and basin in full: the best order, the sheet's own, what a helper saves, when all is through, piece by piece.

use super::{base, flat, part, q};
use foilwork::{
    day::{Floor, FoilGroup, OrderRule, Piece, PieceKind, SectionTimes, Timeline},
    quantity::Duration,
    service::{DayPlan, OrderedBy, Plan, Start},
    sheet::{SheetPart, bench_page, day_picture, day_sheet},
};
use jiff::civil::date;
use rstest::rstest;

fn times(section: usize, name: &str, start: f64, looks: &[f64], on_hair: f64) -> SectionTimes {
    SectionTimes {
        section,
        name: name.to_owned(),
        visit: 0,
        person: 0,
        mix_at: vec![q(start - 3.0), q(start + 7.0)],
        start: q(start),
        applied: q(start + 17.0),
        looks: looks.iter().map(|at| q(*at)).collect(),
        rinse: q(start + 47.0),
        rinsed: q(start + 50.0),
        on_hair: q(on_hair),
        spare: q(0.0),
    }
}

fn timeline(sections: Vec<SectionTimes>, finish: f64, proven: bool) -> Timeline {
    Timeline {
        sections,
        pieces: Vec::new(),
        visits: 1,
        finish: q(finish),
        idle: q(5.0),
        hands: vec![q(finish - 5.0)],
        bound: q(55.0),
        proven,
    }
}

fn top_then_nape() -> Timeline {
    timeline(vec![times(0, "top", 3.0, &[15.0, 30.9], 46.6), times(1, "nape", 20.5, &[], 47.0)], 60.0, true)
}

fn nape_then_top() -> Timeline {
    let mut turned = top_then_nape();
    turned.sections.reverse();
    turned.finish = q(65.0);
    turned
}

/// A day from 10:00 of which only the best order is known.
fn only_best() -> Plan {
    let mut plan = base();
    let made = plan.day.take().unwrap();
    plan.day = Some(DayPlan {
        floor: Floor {
            people: 1,
            basins: 1,
            mix: q(3.0),
            look: q(1.5),
            first_look: q(5.0),
            look_every: q(10.0),
            rinse: q(3.5),
            walk: q(2.0),
        },
        rules: Vec::new(),
        left_out: Vec::new(),
        as_planned: None,
        as_planned_why_not: None,
        proposed: Some(top_then_nape()),
        proposed_why_not: None,
        order_saves: None,
        house_rules_cost: None,
        helper_saves: None,
        after_rinse: None,
        after_rinse_why_not: None,
        finish: None,
        ..made
    });
    (plan.chair.first_steps, plan.chair.other_work) = (q(0.0), None);
    (plan.chair.total, plan.chair.hands_on, plan.booking.book) = (q(100.0), q(70.0), Some(q(90.0)));
    plan
}

fn with(change: impl FnOnce(&mut DayPlan)) -> String {
    let mut plan = only_best();
    change(plan.day.as_mut().unwrap());
    part(&plan, SheetPart::Day)
}

const HEADING: &str = "HANDS, LOOKS AND BASIN, IN MINUTES FROM THE FIRST WORK |";
const TIMES: &str = "# what mix start all on look rinse on hair 1 top 0 10 3 20 15 30 50 47 2 nape 17 27 20 37 67 47";
const BEST: &str = "Best order: top then nape. All rinsed after 60 min (the earliest there is), at the basin 1 time, nobody works for 5 min.";
const FLOOR: &str = "Counted with 1 pair of hands, 3 min for a bowl, 1.5 min for a look over all that is on, 2 min to the basin and 3.5 min \
    to rinse a section. Hands begin what they can, unless something has to be rinsed first. Rinse a strand when it is there, not when \
    the clock says so.";

/// Minutes of the table are whole ones that are over: 30.9 is 30, 20.5 is 20 and 37.5 is 37.
#[test]
fn a_day_of_which_only_the_best_order_is_known() {
    let want = format!("{HEADING} {TIMES} {BEST} The order of this sheet: it was not laid out. {FLOOR}");
    assert_eq!(with(|_| ()), want);
    let why = with(|day| day.as_planned_why_not = Some("it breaks a rule".to_owned()));
    assert!(why.contains("The order of this sheet: it breaks a rule. Counted"), "{why}");
}

fn saves(minutes: f64) -> Option<Duration> {
    Some(q(minutes))
}

/// The order of the sheet beside it: the same, later, as good as no later, earlier against the rules of the house.
#[rstest]
#[case(top_then_nape(), None, "That is the order of this sheet.")]
#[case(nape_then_top(), None, "The order of this sheet, nape then top: rinsed after 65 min, 5 min later.")]
#[case(
    nape_then_top(),
    Some(8.0),
    "The order of this sheet, nape then top: rinsed after 65 min, 8 min earlier, for it breaks rules of the house."
)]
fn the_order_of_the_sheet(#[case] planned: Timeline, #[case] costs: Option<f64>, #[case] want: &str) {
    let told = with(|day| {
        (day.as_planned, day.order_saves, day.house_rules_cost) = (Some(planned), saves(5.0), costs.map(q));
    });
    assert_eq!(told, format!("{HEADING} {TIMES} {BEST} {want} {FLOOR}"));
}

/// Half a minute is none: it would be told as 0 min.
#[rstest]
#[case(0.5, "no later", "no earlier finish was found")]
#[case(0.51, "1 min later", "at least 1 min earlier")]
fn what_is_saved_is_told_in_whole_minutes(#[case] minutes: f64, #[case] later: &str, #[case] helped: &str) {
    let told = with(|day| {
        (day.as_planned, day.order_saves, day.helper_saves) = (Some(nape_then_top()), saves(minutes), saves(minutes));
        day.floor.people = 2;
    });
    let want = format!(
        "nape then top: rinsed after 65 min, {later}. With 3 pairs of hands: {helped}. Counted with 2 pairs of hands,"
    );
    assert!(told.contains(&want), "{told}");
}

fn kept() -> Vec<OrderedBy> {
    let rule = |first: &str, then: &str, rinsed, rule| OrderedBy {
        first: first.to_owned(),
        then: then.to_owned(),
        rinsed,
        rule,
    };
    vec![rule("top", "nape", true, OrderRule::Stated), rule("nape", "sides", false, OrderRule::OutlineFirst)]
}

/// How good the best order is, and by which rules.
#[rstest]
#[case(true, true, "the earliest that keeps to the rules below")]
#[case(false, true, "the best found; nothing beats 55 min")]
#[case(false, false, "the best found; nothing beats 55 min")]
fn how_good_the_best_order_is(#[case] proven: bool, #[case] rules: bool, #[case] want: &str) {
    let told = with(|day| {
        let best = day.proposed.as_mut().unwrap();
        (best.proven, best.visits) = (proven, 2);
        day.rules = if rules { kept() } else { Vec::new() };
    });
    let keeps =
        "It keeps to: nape after top is rinsed (as the service says); sides after nape (outline before crown). ";
    let keeps = if rules { keeps } else { "" };
    let want = format!("({want}), at the basin 2 times, nobody works for 5 min. {keeps}The order of this sheet:");
    assert!(told.contains(&want), "{want}: {told}");
}

/// From 10:00 the steps before take 5 min and the day 80: through at 11:25, with what that counts.
#[test]
fn when_all_is_through() {
    let mut plan = only_best();
    let day = plan.day.as_mut().unwrap();
    day.finish = Some(q(80.0));
    day.left_out = vec!["sides after nape".to_owned(), "top after nape".to_owned()];
    let counts = "That counts bowls, looks, walks and rinses, so none of them belongs to the other work. Cost and price count it so too: \
        100 min in the chair, 70 min of hands.";
    let left_out = "Left out: sides after nape. Left out: top after nape.";
    let own = "The order of this sheet: it was not laid out.";
    let other = "other work, for which the file states no `other_work_min`, whole quarters of an hour";
    let want = format!(
        "{HEADING} {TIMES} {BEST} {own} Through after 80 min, at 11:20; book 90 min ({other}). {counts} {left_out} {FLOOR}"
    );
    assert_eq!(part(&plan, SheetPart::Day), want);
    plan.chair.first_steps = q(5.0);
    plan.chair.other_work = Some(q(10.0));
    plan.day.as_mut().unwrap().after_rinse = Some(timeline(vec![times(0, "veil", 4.0, &[9.0], 20.0)], 30.0, true));
    let steps = "Counted from the end of the steps before the colour, 5 min.";
    let other = "10 min of other work, whole quarters of an hour";
    let after = "After the last of these rinses, counted anew: # what mix start all on look rinse on hair 1 veil 1 11 4 21 9 51 20";
    let want = format!(
        "{HEADING} {steps} {TIMES} {BEST} {own} With toners after 80 min, at 11:25; book 90 min ({other}). {counts} {after} {left_out} \
         {FLOOR}"
    );
    assert_eq!(part(&plan, SheetPart::Day), want);
    plan.start = Start::Day(date(2026, 11, 25));
    assert!(part(&plan, SheetPart::Day).contains("With toners after 80 min; book 90 min"), "no time of day is made up");
    plan.booking.book = None;
    assert!(!part(&plan, SheetPart::Day).contains("With toners after"), "what is not booked is not told");
}

#[test]
fn what_cannot_be_arranged_says_why() {
    let why = Some("it clashes".to_owned());
    let after = with(|day| day.after_rinse_why_not.clone_from(&why));
    let want = "After the rinse no order, so that no finish is known and nothing to book: it clashes. Counted with";
    assert!(after.contains(want), "{after}");
    let none = with(|day| (day.proposed, day.proposed_why_not) = (None, why.clone()));
    assert_eq!(none, format!("{HEADING} No order: it clashes. {FLOOR}"));
    let unknown = with(|day| day.proposed = None);
    assert_eq!(unknown, format!("{HEADING} No order: unknown. {FLOOR}"));
    let mut plan = only_best();
    let page = |plan: &Plan| bench_page(plan).contains(">The day</h2>");
    assert!(page(&plan));
    plan.day = None;
    assert_eq!(part(&plan, SheetPart::Day), format!("{HEADING} Not arranged: more than 40 sections."));
    assert!(!page(&plan) && day_picture(&plan).is_none());
}

/// The picture is of the order of the sheet where hands allow it, else of the best one, else there is none.
#[test]
fn the_picture_is_of_the_order_of_the_sheet() {
    let mut plan = only_best();
    let title = |plan: &Plan| {
        let picture = day_picture(plan)?;
        let title = ["The order of this sheet", "The best order"].into_iter().find(|title| picture.contains(title));
        Some(title.unwrap().to_owned())
    };
    assert_eq!(title(&plan).as_deref(), Some("The best order"));
    plan.day.as_mut().unwrap().as_planned = Some(nape_then_top());
    assert_eq!(title(&plan).as_deref(), Some("The order of this sheet"));
    let day = plan.day.as_mut().unwrap();
    (day.as_planned, day.proposed, day.proposed_why_not) = (None, None, Some("it clashes".to_owned()));
    assert_eq!(title(&plan), None);
}

/// On the page a day that has only the order of the sheet says why there is no better one.
#[test]
fn the_page_says_why_there_is_no_best_order() {
    let mut plan = only_best();
    let day = plan.day.as_mut().unwrap();
    (day.as_planned, day.proposed, day.proposed_why_not) = (Some(nape_then_top()), None, Some("it clashes".to_owned()));
    let page = bench_page(&plan);
    assert!(page.contains(">No best order: it clashes.</li>") && !page.contains("Best order:"), "{page}");
}

/// Each kind of piece with its place: of a look and a walk no section is named, of a foil its number.
#[test]
fn the_work_piece_by_piece() {
    let mut plan = only_best();
    let piece = |kind, section, person, from: f64, to: f64, foils: Option<[u32; 2]>| Piece {
        kind,
        section,
        person,
        from: q(from),
        to: q(to),
        foils: foils.map(|[first, last]| FoilGroup { first, last }),
    };
    let pieces = vec![
        piece(PieceKind::Mix, Some(0), 0, 0.0, 3.0, None),
        piece(PieceKind::Apply, Some(0), 0, 3.0, 19.25, Some([1, 6])),
        piece(PieceKind::Apply, Some(1), 1, 3.0, 5.5, Some([7, 7])),
        piece(PieceKind::Look, Some(0), 0, 20.0, 21.0, None),
        piece(PieceKind::Walk, Some(0), 0, 48.0, 50.0, None),
        piece(PieceKind::Rinse, Some(1), 0, 50.0, 53.0, None),
        piece(PieceKind::Mix, Some(9), 0, 53.0, 54.0, None),
    ];
    let mut after = timeline(vec![times(0, "veil", 4.0, &[9.0], 20.0)], 30.0, true);
    after.pieces = vec![piece(PieceKind::Rinse, Some(0), 0, 51.0, 54.5, None)];
    let day = plan.day.as_mut().unwrap();
    day.proposed.as_mut().unwrap().pieces = pieces;
    let rule = "-".repeat(80);
    let told = flat(&day_sheet(&plan)).replace(&rule, "|");
    let head = format!("THE DAY Fine {} HANDS, LOOKS", "=".repeat(80));
    let want = "PIECE BY PIECE | min who does what 0 to 3 hands 1 mix top 3 to 19.2 hands 1 apply top foils 1-6 3 to 5.5 hands 2 apply nape \
        foil 7 20 to 21 hands 1 look all that is on 48 to 50 hands 1 walk to the basin 50 to 53 hands 1 rinse nape 53 to 54 hands 1 mix \
        all that is on";
    assert!(told.starts_with(&head) && told.ends_with(&format!("{FLOOR} {want}")), "{told}");
    plan.day.as_mut().unwrap().after_rinse = Some(after);
    let told = flat(&day_sheet(&plan)).replace(&rule, "|");
    let later = "AFTER THE RINSE, PIECE BY PIECE, COUNTED ANEW | min who does what 51 to 54.5 hands 1 rinse veil";
    assert!(told.ends_with(&format!("{want} {later}")), "{told}");
}
