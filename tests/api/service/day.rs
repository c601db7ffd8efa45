//! The order of the day by the rules of the service and of the house, on a file that states its own times.

use foilwork::{
    day::{OrderRule, PieceKind, Timeline, Until},
    reader::Format,
    service::{
        DayPlan, Plan, ServiceFile, parse, plan,
        shape::{After, HouseRule, WaitFor, Zone},
    },
    sheet::{bench_page, bench_sheet, day_sheet},
};
use rstest::rstest;

/// Nape 18 + 30 min to level 9, crown 16 + 30 to 8, hairline 12 + 35 to 9; none waits, no rule of the house.
fn free() -> ServiceFile {
    let mut file = parse(&std::fs::read_to_string("examples/soft-gradient.toml").unwrap(), Format::Toml).unwrap();
    file.section.iter_mut().for_each(|section| section.after.clear());
    file.salon.order_rules = Some(Vec::new());
    file
}

fn planned(file: &ServiceFile) -> Plan {
    plan(file).unwrap()
}

fn with(rules: &[HouseRule], change: impl Fn(&mut ServiceFile)) -> DayPlan {
    let mut file = free();
    file.salon.order_rules = Some(rules.to_vec());
    change(&mut file);
    planned(&file).day.unwrap()
}

fn kept(day: &DayPlan) -> Vec<String> {
    day.rules
        .iter()
        .map(|one| format!("{} after {}{}", one.then, one.first, if one.rinsed { " is rinsed" } else { "" }))
        .collect()
}

fn order(day: &Timeline) -> Vec<&str> {
    day.sections.iter().map(|one| one.name.as_str()).collect()
}

#[test]
fn the_outline_comes_before_the_rest() {
    let day = with(&[HouseRule::OutlineFirst], |_| ());
    assert_eq!(kept(&day), ["nape after hairline", "crown after hairline"]);
    assert_eq!(order(day.proposed.as_ref().unwrap())[0], "hairline");
    assert!(day.rules.iter().all(|one| one.rule == OrderRule::OutlineFirst));
}

/// Nape 48 min, hairline 47, crown 46.
#[test]
fn the_slowest_comes_first() {
    let day = with(&[HouseRule::SlowestFirst], |_| ());
    assert_eq!(kept(&day), ["crown after nape", "hairline after nape", "crown after hairline"]);
    assert_eq!(order(day.proposed.as_ref().unwrap()), ["nape", "hairline", "crown"]);
}

/// Crown at 8 is darker than the nape at 9: in one foil it is painted first, right before it, and both are rinsed in one go.
#[test]
fn the_darkest_of_one_foil_comes_first() {
    let day = with(&[HouseRule::DarkestFirst], |file| {
        file.section[1].same_foil_as = vec!["nape".to_owned()];
        // Both formulas in one foil: short enough to be painted one after the other.
        (file.section[0].apply_min, file.section[1].apply_min) = (Some(6.0), Some(6.0));
        (file.section[0].develop_min, file.section[1].develop_min) = (25.0, 25.0);
    });
    assert_eq!(kept(&day), ["nape after crown"]);
    let best = day.proposed.as_ref().unwrap();
    let at = |name: &str| best.sections.iter().find(|one| one.name == name).unwrap();
    assert_eq!((at("crown").applied.min() + 3.0, at("crown").visit), (at("nape").start.min(), at("nape").visit));
}

/// Only on hair of which it is said that nothing was done to it.
#[test]
fn mid_lengths_come_before_roots_on_virgin_hair() {
    let roots = |file: &mut ServiceFile| file.section[0].zone = Zone::Roots;
    assert_eq!(kept(&with(&[HouseRule::MidLengthsFirst], roots)), [""; 0], "it is lightened");
    let day = with(&[HouseRule::MidLengthsFirst], |file| {
        roots(file);
        file.analysis.existing.clear();
        file.analysis.history = Some(Vec::new());
    });
    assert_eq!(kept(&day), ["nape after crown", "nape after hairline"]);
    assert_eq!(order(day.proposed.as_ref().unwrap())[2], "nape");
}

#[test]
fn what_waits_for_a_rinse_begins_after_it() {
    let day = with(&[], |file| {
        file.section[1].after = vec![After { section: "nape".to_owned(), wait_for: WaitFor::Rinse }];
    });
    assert_eq!(kept(&day), ["crown after nape is rinsed"]);
    let best = day.proposed.as_ref().unwrap();
    let at = |name: &str| best.sections.iter().find(|one| one.name == name).unwrap();
    assert!(at("crown").start >= at("nape").rinsed);
}

/// The service outweighs the house, and what is left out is told with what it clashes with.
#[test]
fn a_rule_of_the_house_gives_way_to_the_service() {
    let day = with(&[HouseRule::OutlineFirst], |file| {
        file.section[2].after = vec![After { section: "nape".to_owned(), wait_for: WaitFor::Application }];
    });
    assert_eq!(kept(&day), ["hairline after nape", "crown after hairline"]);
    assert_eq!(
        day.left_out,
        [
            "nape after hairline (outline before crown), for it clashes: hairline after nape (as the service says); nape \
             after hairline (outline before crown)"
        ]
    );
}

/// By hand, 3 min a bowl, 3 a rinse, 2 to the basin, no looks. By the sheet: nape on from 3 to 8 and developed at 33, hairline on
/// from 11 to 16 and developed at 26: rinsed at 26 and 33, through at 36. The hairline first: developed at 18 and 41, through
/// at 44.
#[test]
fn what_a_rule_of_the_house_costs_is_said() {
    let mut file = free();
    file.salon.order_rules = Some(vec![HouseRule::OutlineFirst]);
    file.salon.look_min = Some(0.0);
    file.section.remove(1);
    file.section.iter_mut().for_each(|section| section.beside.clear());
    file.toner.remove(1);
    for (section, develop) in file.section.iter_mut().zip([25.0, 10.0]) {
        (section.apply_min, section.develop_min) = (Some(5.0), develop);
    }
    let plan = planned(&file);
    let day = plan.day.as_ref().unwrap();
    let finish = |timeline: &Option<Timeline>| timeline.as_ref().unwrap().finish.min();
    assert_eq!((finish(&day.as_planned), finish(&day.proposed)), (36.0, 44.0));
    assert_eq!((day.order_saves.unwrap().min(), day.house_rules_cost.unwrap().min()), (0.0, 8.0));
    let text = day_sheet(&plan).replace('\n', " ");
    assert!(text.contains("rinsed after 36 min, 8 min earlier, for it breaks rules of the house"), "{text}");
    assert!(text.contains("(the earliest that keeps to the rules below)"), "{text}");
    // And they are below, on the page too.
    let rules = "It keeps to: nape after hairline (outline before crown).";
    let page = bench_page(&plan);
    let after = |text: &str| text.split("to the rules below").nth(1).is_some_and(|rest| rest.contains(rules));
    assert!(after(&text) && after(&page), "{page}");
}

/// A toner may be on for 20 min, is put on in 5, and the way to the basin takes 25: it cannot be.
#[test]
fn toners_that_cannot_be_leave_no_finish() {
    let mut file = free();
    file.salon.basin_walk_min = Some(25.0);
    let plan = planned(&file);
    let day = plan.day.as_ref().unwrap();
    assert!(day.proposed.is_some() && day.after_rinse.is_none());
    assert_eq!((day.finish, plan.chair.clock), (None, foilwork::service::ChairClock::Sheet));
    assert!(
        day.after_rinse_why_not.as_ref().unwrap().starts_with("these cannot hold together: lengths: 5 min to apply")
    );
    let text = day_sheet(&plan).replace('\n', " ");
    assert!(text.contains("no finish is known and nothing to book") && !text.contains("With toners"), "{text}");
}

#[test]
fn the_sheet_says_when_no_toner_follows() {
    let mut file = free();
    file.toner.clear();
    file.root_shadow = None;
    let text = day_sheet(&planned(&file));
    assert!(!text.contains("toners after") && text.contains("Through after"), "{text}");
}

/// Every walk ends where a rinse begins, and is somebody's work.
#[test]
fn walks_are_work() {
    let day = with(&[], |_| ());
    let best = day.proposed.as_ref().unwrap();
    let of = |kind: PieceKind| best.pieces.iter().filter(move |piece| piece.kind == kind);
    assert_eq!(of(PieceKind::Walk).count(), best.visits);
    for walk in of(PieceKind::Walk) {
        assert!((walk.to.min() - walk.from.min() - 2.0).abs() < 1e-9);
        assert!(of(PieceKind::Rinse).any(|rinse| rinse.from == walk.to));
    }
    let worked: f64 = best.pieces.iter().map(|piece| piece.to.min() - piece.from.min()).sum();
    assert!((best.hands[0].min() + best.idle.min() - best.finish.min()).abs() < 1e-6);
    assert!((worked - best.hands[0].min()).abs() < 1e-6);
}

#[test]
fn a_day_that_must_not_begin_says_so_first() {
    let mut file = free();
    file.analysis.skin_test = None;
    let plan = planned(&file);
    assert!(plan.blocked);
    let text = day_sheet(&plan);
    let (stop, best) = (text.find("DO NOT BEGIN").unwrap(), text.find("Best order").unwrap());
    assert!(stop < best);
}

/// Booking, cost and price stand on one clock, and the sheet says which.
#[test]
fn the_sheet_says_what_the_time_in_the_chair_counts() {
    let plan = planned(&free());
    let book = plan.booking.book.unwrap().min();
    let text = bench_sheet(&plan).replace('\n', " ");
    // The clock at its head is that of what is booked, as on the guest's page, and not an earlier one.
    assert!(text.contains(&format!("book {book} min, with bowls, looks, walks, rinses")), "{text}");
    let mut without = plan.clone();
    without.day = None;
    without.chair.clock = foilwork::service::ChairClock::Sheet;
    let text = bench_sheet(&without).replace('\n', " ");
    assert!(text.contains("bowls, looks, walks and rinses are not in it") && !text.contains("`day`"), "{text}");
}

/// The rules about lightening are of lightened sections: of a nape in permanent colour, as slow as it is, they say nothing.
#[rstest]
fn rules_about_lightening_leave_colour_alone(#[values(0, 1, 2)] coloured: usize) {
    let rules = [HouseRule::SlowestFirst, HouseRule::MidLengthsFirst];
    let of = |coloured: Option<usize>| {
        let mut file = super::base::only_lightener();
        let section = |name: &str, zone, develop| {
            let one = &file.section[0];
            foilwork::service::shape::Section { name: name.to_owned(), zone, develop_min: develop, ..one.clone() }
        };
        let all = [
            section("roots", Zone::Roots, 10.0),
            section("mid", Zone::MidLengths, 20.0),
            section("ends", Zone::Ends, 30.0),
        ];
        file.section = Vec::from(all);
        file.section.iter_mut().for_each(|one| one.share_percent = Some(5.0));
        if let Some(place) = coloured {
            (file.section[place].product, file.section[place].target_level) = (Some("J6".to_owned()), 6.0);
        }
        file.salon.order_rules = Some(rules.to_vec());
        planned(&file).day.unwrap()
    };
    // By hand: 50, 40 and 30 min, so ends before mid before roots, which the mid-lengths rule says as well.
    assert_eq!(of(None).rules.len(), 3, "{:?}", of(None).rules);
    let name = ["roots", "mid", "ends"][coloured];
    let kept = kept(&of(Some(coloured)));
    assert!(kept.len() == 1 && !kept[0].contains(name), "{kept:?}");
}

/// The order of the sheet is told to be later by what it loses, and as early where that is less than half a minute.
#[test]
fn how_much_later_the_order_of_the_sheet_is_done() {
    let mut file = free();
    file.salon.order_rules = Some(vec![HouseRule::OutlineFirst]);
    let mut plan = planned(&file);
    let mut told = |saves: f64| {
        let day = plan.day.as_mut().unwrap();
        day.house_rules_cost = None;
        day.order_saves = Some(foilwork::quantity::Duration::from_min(saves).unwrap());
        day_sheet(&plan).split_whitespace().collect::<Vec<_>>().join(" ")
    };
    assert!(told(7.0).contains(" min, 7 min later."), "{}", told(7.0));
    assert!(told(0.4).contains(" min, no later."), "{}", told(0.4));
    for (saves, want) in [(7.0, "at least 7 min earlier."), (0.4, "no earlier finish was found.")] {
        plan.day.as_mut().unwrap().helper_saves = foilwork::quantity::Duration::from_min(saves).ok();
        let told = day_sheet(&plan).split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(told.contains(&format!("With 2 pairs of hands: {want}")), "{told}");
    }
}

/// The rules of a day by the places of its work are those by its names, one for one.
#[test]
fn rules_by_place_are_those_by_name() {
    let day = planned(&parse(&std::fs::read_to_string("examples/soft-gradient.toml").unwrap(), Format::Toml).unwrap())
        .day
        .unwrap();
    let named: Vec<(&str, &str, bool)> =
        day.rules.iter().map(|rule| (rule.first.as_str(), rule.then.as_str(), rule.rinsed)).collect();
    let name = |place: usize| day.work[place].name.as_str();
    let placed: Vec<(&str, &str, bool)> =
        day.before().iter().map(|rule| (name(rule.first), name(rule.then), rule.until == Until::Rinsed)).collect();
    assert!(!named.is_empty());
    assert_eq!(placed, named);
}
