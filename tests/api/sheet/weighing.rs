//! What to weigh and the running order, of three mixes: one bowl, two fresh bowls, one without a ratio.

use super::{about, base, exact, part, q};
use foilwork::{
    quantity::MassFraction,
    service::{Bowl, PartKind, Plan, WeighedPart},
    sheet::{SheetPart, bench_sheet_of},
    source::{Basis, Interval},
};
use rstest::rstest;

fn weighed(product: &str, kind: PartKind, [exact, weigh, shows]: [f64; 3]) -> WeighedPart {
    WeighedPart {
        product: product.to_owned(),
        kind,
        exact: q(exact),
        weigh: q(weigh),
        scale_shows: q(shows),
        peroxide: Interval::exact(MassFraction::ZERO),
    }
}

fn bowl(count: usize, parts: Vec<WeighedPart>, total: f64, within: f64, worst: f64, on_hair: [f64; 3]) -> Bowl {
    Bowl {
        count,
        mixed_after: Vec::new(),
        use_within: q(within),
        parts,
        total: q(total),
        worst_ratio_error_percent: worst,
        on_hair: about(on_hair),
    }
}

/// A lightener on from minute 3, rinsed at 50 and off by 55; a toner of two bowls and a shadow, which count from that rinse.
pub(super) fn three() -> Plan {
    let mut plan = base();
    let [top, veil, shadow] = plan.mixes.as_mut_slice() else { panic!("three mixes") };
    top.ratio = Some("1:2".parse().unwrap());
    (top.needed, top.needed_basis) = (about([40.0, 45.0, 50.0]), Basis::Assumed);
    (top.developer, top.on_hair) = (exact(6.0), about([3.94, 4.0, 4.06]));
    (top.strength_basis, top.leftover) = (Basis::Measured, q(0.5));
    let parts = vec![
        weighed("powder", PartKind::Lightener, [15.0; 3]),
        weighed("developer", PartKind::Developer, [30.04, 30.0, 45.0]),
    ];
    top.bowls = vec![bowl(1, parts, 45.0, 30.0, 0.04, [3.94, 4.0, 4.06])];
    veil.ratio = None;
    (veil.needed, veil.needed_basis) = (exact(20.0), Basis::Stated);
    (veil.developer, veil.on_hair) = (exact(0.0), exact(0.0));
    (veil.strength_basis, veil.leftover) = (Basis::Stated, q(0.51));
    let parts = vec![weighed("J9", PartKind::Colour, [9.7, 10.0, 10.0])];
    veil.bowls = vec![bowl(2, parts, 10.0, 20.0, 0.05, [0.0; 3])];
    (shadow.name, shadow.ratio) = ("root shadow".to_owned(), Some("1:1".parse().unwrap()));
    (shadow.needed, shadow.needed_basis) = (exact(12.0), Basis::Stated);
    (shadow.developer, shadow.on_hair) = (exact(3.0), exact(1.55));
    (shadow.strength_basis, shadow.leftover) = (Basis::Measured, q(0.0));
    let parts = vec![weighed("J6", PartKind::Colour, [12.0; 3])];
    shadow.bowls = vec![bowl(1, parts, 12.0, 20.0, 0.0, [1.55; 3])];
    let [top, veil, shadow] = plan.order.as_mut_slice() else { panic!("three steps") };
    (top.mix_at, top.begin, top.applied) = (vec![q(2.0)], q(3.0), q(20.0));
    (top.look_at, top.look_at_last) = (vec![q(15.0), q(30.9), q(50.0)], Some(q(40.0)));
    (top.rinse_by, top.off_by) = (q(50.0), q(55.0));
    (veil.mix_at, veil.begin, veil.applied) = (vec![q(0.0), q(15.0)], q(0.0), q(5.0));
    (veil.look_at, veil.look_at_last) = (vec![q(15.0)], None);
    (veil.rinse_by, veil.off_by) = (q(15.0), q(15.0));
    shadow.name = "root shadow".to_owned();
    (shadow.mix_at, shadow.begin, shadow.applied) = (vec![q(5.0)], q(5.0), q(8.0));
    (shadow.look_at, shadow.look_at_last) = (vec![q(12.0), q(15.0)], None);
    (shadow.rinse_by, shadow.off_by) = (q(15.0), q(15.0));
    plan
}

/// By hand from the figures above. What is left over is told where it is more than half a gram: less is 0 g.
#[test]
fn what_to_weigh_is_told_bowl_by_bowl() {
    let plan = three();
    let columns = "into the tared bowl weigh scale shows exact";
    let want = format!(
        "WHAT TO WEIGH | 1. top: 1:2 parts, 45 (40 to 50) g needed [assumed] {columns} powder 15 g 15 g 15 g developer 30 g \
         45 g 30.04 g one bowl of 45 g, mixed at minute 2, used within 30 min developer 6 % w/w before mixing; ON THE HAIR \
         4 (3.94 to 4.06) % w/w [measured by you] \
         2. veil, after rinsing: no developer, 20 g needed [stated by you] {columns} J9 10 g 10 g 9.7 g 2 fresh bowls of 10 g \
         each, mixed at minute 0, 15, used within 20 min; rounding to the scale moves a part by up to 0.1 % developer 0 % \
         w/w before mixing; ON THE HAIR 0 % w/w [stated by you] left over: about 1 g \
         3. root shadow, after rinsing: 1:1 parts, 12 g needed [stated by you] {columns} J6 12 g 12 g 12 g one bowl of 12 g, \
         mixed at minute 5, used within 20 min developer 3 % w/w before mixing; ON THE HAIR 1.55 % w/w [measured by you]"
    );
    assert_eq!(part(&plan, SheetPart::Bowls), want);
    let sheet = bench_sheet_of(&plan, &[SheetPart::Bowls]);
    let rule = "-".repeat(80);
    assert!(sheet.contains(&format!("{rule}\n1. top")), "the first follows its heading: {sheet}");
    assert!(
        sheet.contains("\n\n2. veil") && sheet.contains("\n\n3. root shadow"),
        "a blank line parts the rest: {sheet}"
    );
}

/// An ounce is 28.349 523 g: 15 g are 0.529, 30 g 1.058, 10 g 0.353, 12 g 0.423 oz. The trade's label is a third of a volume for a
/// tenth of a percent: 6 % are 20, 3 % are 10; what holds no peroxide has none.
#[test]
fn a_shop_may_want_ounces_and_labels() {
    let mut plan = three();
    plan.habits.ounces = true;
    plan.habits.volume_labels = true;
    let told = part(&plan, SheetPart::Bowls);
    for said in [
        "powder 15 g = 0.53 oz 15 g 15 g",
        "developer 30 g = 1.06 oz 45 g 30.04 g",
        "J9 10 g = 0.35 oz 10 g 9.7 g",
        "J6 12 g = 0.42 oz",
        "developer 6 % w/w (20 vol by the label) before mixing",
        "developer 0 % w/w before mixing",
        "developer 3 % w/w (10 vol by the label) before mixing",
    ] {
        assert!(told.contains(said), "{said}: {told}");
    }
    plan.habits.volume_labels = false;
    assert!(!part(&plan, SheetPart::Bowls).contains("by the label"));
}

const NO_NOTE: &str = "not by the clock; at LATEST whatever it shows. Mind:";

/// What stands beside grams and percent is explained where it stands there, and only then.
#[rstest]
#[case(false, false, NO_NOTE)]
#[case(true, false, "shows. Weigh the grams: oz are ounces of mass (28.35 g), not of volume. Mind:")]
#[case(
    false,
    true,
    "shows. Strengths count in percent: vol by the label is the trade's number (10 for 3 %), not measured oxygen. Mind:"
)]
#[case(
    true,
    true,
    "shows. Weigh the grams: oz are ounces of mass (28.35 g), not of volume; vol by the label is the trade's number (10 for \
     3 %), not measured oxygen. Mind:"
)]
fn what_stands_beside_grams_is_explained(#[case] ounces: bool, #[case] labels: bool, #[case] want: &str) {
    let mut plan = three();
    (plan.habits.ounces, plan.habits.volume_labels) = (ounces, labels);
    let told = part(&plan, SheetPart::Chair);
    assert!(told.contains(want), "{told}");
}

const ORDER: &str = "# what apply look at last strand rinse latest";
const AFTER: &str = "After rinsing, counted anew:";
const RULES: &str = "The order is the file's. Times on the hair count from the first strand; from \"last strand\" on look at that \
    one too. Rinse a strand when it is there, not when the clock says so: \"rinse\" is planned, \"latest\" is the longest of its \
    products where all of them state theirs, and else as planned. One pair of hands is assumed.";

/// Minutes are whole ones that are over: 30.9 is 30. What comes after the rinse has a table of its own, where there is any.
#[test]
fn the_running_order_is_told_in_two_tables() {
    let mut plan = three();
    let top = "1 top 3 to 20 15 30 50 40 50 55";
    let after = "2 veil 0 to 5 15 - 15 15 3 root shadow 5 to 8 12 15 - 15 15";
    let heading = "ORDER, IN MINUTES FROM THE FIRST BRUSH |";
    let want = format!("{heading} {ORDER} {top} {AFTER} {ORDER} {after} {RULES}");
    assert_eq!(part(&plan, SheetPart::Order), want);
    let all = plan.order.clone();
    plan.order.truncate(1);
    assert_eq!(part(&plan, SheetPart::Order), format!("{heading} {ORDER} {top} {RULES}"));
    plan.order = all[1..].to_vec();
    assert_eq!(part(&plan, SheetPart::Order), format!("{heading} {AFTER} {ORDER} {after} {RULES}"));
}
