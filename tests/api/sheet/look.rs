//! How the head reads, in full: regions with their bars, what is lighter than what, the outline, zones, the part, the wish.

use super::{about, exact, part, q};
use foilwork::{
    colour::Lightness,
    head::{Change, OutlineChange, OutlineLook, PartLine, RegionLook, Solidity, Wish},
    reader::Format,
    service::{HeadReading, PartReading, Plan, ZoneLook, plan_text},
    sheet::SheetPart,
    source::{Basis, Interval},
};
use rstest::rstest;

/// The head of the example, of which only regions are read.
fn read(change: impl FnOnce(&mut HeadReading)) -> String {
    let mut plan = example();
    plan.lift.clear();
    change(plan.head.look.as_mut().unwrap());
    told(&plan)
}

fn example() -> Plan {
    let mut plan = plan_text(include_str!("../../../examples/soft-gradient.toml"), Format::Toml).unwrap();
    plan.findings.clear();
    let reading = plan.head.look.as_mut().unwrap();
    (reading.wish, reading.outline, reading.part) = (None, None, None);
    reading.zones.clear();
    let look = &mut reading.look;
    (look.outline_over_interior, look.front_over_behind, look.as_wanted, look.change) = (None, None, None, None);
    let colour = look.regions[0].colour;
    let region =
        |region: &str, hair: f64, lab_l| RegionLook { region: region.to_owned(), hair: exact(hair), lab_l, colour };
    look.regions = vec![
        region("nape", 60.0, exact(40.0)),
        region("crown", 30.0, about([1.0, 3.9, 8.0])),
        region("sides", 6.0, exact(4.0)),
        region("front", 4.0, exact(100.0)),
    ];
    plan
}

fn told(plan: &Plan) -> String {
    let told = part(plan, SheetPart::Head);
    told.split_once("region of the hair reads as L* dark to light ").unwrap().1.to_owned()
}

/// A step of the bar is 8 of L*, from its middle on: 4 are one step, 40 five, and what is lighter than 80 fills it.
const BARS: &str =
    "nape 60 % 40 #####..... crown 30 % 4 (1 to 8) .......... sides 6 % 4 #......... front 4 % 100 ##########";

fn l(value: f64) -> Interval<Lightness> {
    exact(value)
}

#[test]
fn regions_have_bars() {
    assert_eq!(read(|_| ()), BARS);
}

#[test]
fn what_is_lighter_than_what() {
    let over = |best: f64| Some(Interval::new(best - 1.0, best, best + 1.0).unwrap());
    let both = read(|reading| {
        reading.look.outline_over_interior = over(3.0);
        reading.look.front_over_behind = over(-2.5);
    });
    let want = "outline over interior: 3 (2 to 4) L* front over back: -2.5 (-3.5 to -1.5) L*";
    assert_eq!(both, format!("{BARS} {want}"));
    let front = read(|reading| reading.look.front_over_behind = over(1.0));
    assert_eq!(front, format!("{BARS} front over back: 1 (0 to 2) L*"));
}

#[rstest]
#[case(Some(Solidity::Soft), "soft")]
#[case(None, "neither solid nor soft")]
fn how_the_outline_reads(#[case] reads: Option<Solidity>, #[case] want: &str) {
    let change = |light: f64, wanted: f64, blend_start| OutlineChange {
        section: "nape".to_owned(),
        light: q(light),
        wanted: q(wanted),
        blend_start,
    };
    let told = read(|reading| {
        let changes = vec![change(20.0, 30.0, false), change(30.0, 30.0, true)];
        let outline =
            OutlineLook { light: exact(60.0), reads, as_wanted: None, sure: None, changes, basis: Basis::Assumed };
        reading.outline = Some(outline);
    });
    let want = format!(
        "outline: 60 % of its hair light, reads {want} [assumed] - make 30 % of the hair in \"nape\" light instead of 20 % - in \
         \"nape\", blend its start over more than half a centimetre, or begin within one of the scalp"
    );
    assert_eq!(told, format!("{BARS} {want}"));
}

/// A region as light at the roots as all along needs no line.
#[rstest]
#[case([30.0, 30.0, 30.0], "")]
#[case([30.0, 40.0, 50.0], " nape: L* 30 at the roots, 40 mid-way, 50 at the ends")]
#[case([30.0, 40.0, 30.0], " nape: L* 30 at the roots, 40 mid-way, 30 at the ends")]
#[case([30.0, 30.0, 50.0], " nape: L* 30 at the roots, 30 mid-way, 50 at the ends")]
fn lightness_along_the_strand(#[case] at: [f64; 3], #[case] want: &str) {
    let [roots_lab_l, mid_lengths_lab_l, ends_lab_l] = at.map(l);
    let zone = ZoneLook { region: "nape".to_owned(), roots_lab_l, mid_lengths_lab_l, ends_lab_l };
    assert_eq!(read(|reading| reading.zones = vec![zone]), format!("{BARS}{want}"));
}

#[rstest]
#[case(PartLine::None, &["top"], Some(8.0), "no part: regrowth shows where the hair falls apart")]
#[case(PartLine::Left, &[], Some(8.0), "parted left: the template does not say which of its regions lie there")]
#[case(PartLine::Left, &["top", "crown"], Some(8.0), "parted left, through top, crown: regrowth shows there after 8 weeks")]
#[case(PartLine::Centre, &["top"], None, "parted centre, through top: no section lies there")]
fn where_the_hair_is_parted(
    #[case] line: PartLine,
    #[case] regions: &[&str],
    #[case] weeks: Option<f64>,
    #[case] want: &str,
) {
    let regions = regions.iter().map(|region| (*region).to_owned()).collect();
    let read = read(|reading| {
        reading.part = Some(PartReading { part: line, regions, line_shows_after: weeks.map(exact) });
    });
    assert_eq!(read, format!("{BARS} {want}"));
}

/// A wish for a bright outline is met from 2 of L* on: surely by 3, and only by the estimate by 1 to 5.
#[rstest]
#[case([3.0; 3], Some(true), false, "Reads as asked: bright outline, quieter crown.")]
#[case([1.0, 3.0, 5.0], Some(true), false,
    "Reads as asked: bright outline, quieter crown (by the estimate, not by all of its bounds).")]
#[case([1.0; 3], Some(false), true,
    "Does not read as asked (bright outline, quieter crown): lighten 30 % of the hair in \"nape\" instead of 20 %.")]
#[case([1.0; 3], Some(false), false, "Does not read as asked (bright outline, quieter crown): no section lies there.")]
fn whether_it_reads_as_asked(
    #[case] over: [f64; 3],
    #[case] as_wanted: Option<bool>,
    #[case] change: bool,
    #[case] want: &str,
) {
    let told = read(|reading| {
        reading.wish = Some(Wish::BrightOutline);
        let [low, best, high] = over;
        reading.look.outline_over_interior = Some(Interval::new(low, best, high).unwrap());
        reading.look.as_wanted = as_wanted;
        let changed = Change { section: "nape".to_owned(), lightened: q(20.0), wanted: q(30.0), enough: true };
        reading.look.change = change.then_some(changed);
    });
    assert!(told.starts_with(BARS) && told.ends_with(&format!(" L* {want}")), "{told}");
}

/// Where something is lifted, all of that holds if the section that is least likely to reaches its target.
#[test]
fn a_look_holds_if_targets_are_reached() {
    let mut plan = example();
    for (section, chance) in plan.lift.iter_mut().zip([[70.0, 80.0, 90.0], [50.0, 60.0, 70.0], [60.0, 70.0, 80.0]]) {
        section.chance = about(chance);
    }
    let reading = plan.head.look.as_mut().unwrap();
    (reading.wish, reading.look.as_wanted) = (Some(Wish::Even), Some(true));
    let when = format!(", if every section reaches its target ({}: 60 (50 to 70) of 100)", plan.lift[1].section);
    let want = format!("{BARS} It reads so{when}. Reads as asked: even{when}.");
    assert_eq!(told(&plan), want);
}
