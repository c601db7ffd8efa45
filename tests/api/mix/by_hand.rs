//! Bowls over time, doses, ratios, shares and numbers of substances, by hand.

use crate::api::common::{all_near, near};
use foilwork::{
    finding::Verdict,
    mix::{
        Addition, BowlRequest, Cas, Composition, Dose, Hazard, Ingredient, Pace, Product, Ratio, Recipe, as_applied,
        bowls, check_lightener, minimum_bowl, minimum_mass, natural_share,
    },
    quantity::{Duration, Mass, MassFraction, Quantity, Share},
    scale::weigh,
    source::Interval,
};
use rstest::rstest;
use rust_decimal::Decimal;

fn g(value: f64) -> Mass {
    Mass::from_g(value).unwrap()
}

fn minutes(value: f64) -> Duration {
    Duration::from_min(value).unwrap()
}

fn percent(value: f64) -> Share {
    Share::from_percent(value).unwrap()
}

fn exact(percent: f64) -> Interval<MassFraction> {
    Interval::exact(MassFraction::from_ww_percent(percent).unwrap())
}

/// 120 g from bowls of 60 g of which 5 stay behind: 55 g each, so three bowls of 40 g. Each takes 3 min to mix and 10 to put on, and
/// works for 30 from when it is ready.
#[test]
fn each_bowl_has_its_minutes() {
    let request = BowlRequest::new(g(120.0), g(60.0), minutes(30.0), Pace::from_g_per_min(4.0).unwrap());
    let plan = bowls(&request.mixing(minutes(3.0)).residue(g(5.0))).unwrap();
    assert_eq!(plan.bowls().len(), 3);
    for (bowl, start) in plan.bowls().iter().zip([0.0, 13.0, 26.0]) {
        near(bowl.mixed.g(), 45.0, 1e-9);
        near(bowl.applied.g(), 40.0, 1e-9);
        let times = [bowl.mix_at, bowl.ready_at, bowl.empty_at, bowl.use_by].map(Duration::min);
        all_near(&times, &[start, start + 3.0, start + 13.0, start + 33.0], 1e-9);
    }
    all_near(&[plan.mixed().g(), plan.applied().g(), plan.leftover().g()], &[135.0, 120.0, 15.0], 1e-9);
}

/// Where the working life ends a bowl before its size does: at 2 g a minute 10 minutes are 20 g. What fits exactly takes no bowl more.
#[rstest]
#[case(100.0, 60.0, 10.0, 2.0, 5)]
#[case(100.0, 60.0, 10.0, 20.0, 2)]
#[case(120.0, 60.0, 30.0, 4.0, 2)]
#[case(121.0, 60.0, 30.0, 4.0, 3)]
#[case(10.0, 60.0, 30.0, 4.0, 1)]
#[case(500.0, 1.0, 30.0, 4.0, 500)]
fn bowls_are_as_many_as_life_and_size_ask(
    #[case] total: f64,
    #[case] capacity: f64,
    #[case] life: f64,
    #[case] pace: f64,
    #[case] count: usize,
) {
    let pace = Pace::from_g_per_min(pace).unwrap();
    let plan = bowls(&BowlRequest::new(g(total), g(capacity), minutes(life), pace)).unwrap();
    assert_eq!(plan.bowls().len(), count);
    near(plan.applied().g(), total, 1e-9);
    assert_eq!(plan.leftover(), g(0.0));
}

#[test]
fn one_bowl_more_than_five_hundred_is_refused() {
    let pace = Pace::of(g(60.0), minutes(20.0)).unwrap();
    assert_eq!(pace.g_per_min(), 3.0);
    assert!(bowls(&BowlRequest::new(g(501.0), g(1.0), minutes(30.0), pace)).is_err());
}

/// 5 % of an 80 g bowl are 4 g; 10 % of its 30 g of powder 3 g; a product that the recipe has not is none to dose by.
#[test]
fn doses_are_of_what_they_name() {
    let base: Recipe = "30 g powder + 50 g 9%".parse().unwrap();
    let dose = |dose| Addition { product: "oil".into(), dose };
    let with = |doses: &[Addition]| base.with_additives(doses).map(|recipe| recipe.to_string());
    let whole = dose(Dose::OfBowl(percent(5.0)));
    let part = Addition { product: "thickener".into(), dose: Dose::OfProduct("powder".into(), percent(10.0)) };
    // The second share is of the bowl as it was, not with the first additive in it.
    let want = "30 g powder + 50 g 9% + 4 g oil + 3 g thickener + 8 g bond";
    let bond = Addition { product: "bond".into(), dose: Dose::OfBowl(percent(10.0)) };
    assert_eq!(with(&[whole.clone(), part, bond]).unwrap(), want);
    assert!(with(&[dose(Dose::OfProduct("cream".into(), percent(5.0)))]).is_err());
    let poured: Recipe = "30 mL powder + 50 mL 9%".parse().unwrap();
    let error = poured.with_additives(&[whole]).unwrap_err().to_string();
    assert_eq!(error, "the recipe mixes mL and g: convert all parts to one unit first (a density is needed)");
}

/// What was not put in is not in the bowl: its name, its hazards and its open share neither.
#[test]
fn a_part_of_nothing_is_not_in_the_bowl() {
    let peroxide = || Ingredient::named("hydrogen peroxide", exact(6.0)).with_cas(Cas::HYDROGEN_PEROXIDE);
    let bowl = Composition::mix(vec![
        (g(60.0), Product::declared("6%", vec![peroxide()])),
        (g(0.0), Product::unknown("bond builder")),
        (g(40.0), Product::declared("water", vec![])),
    ])
    .unwrap();
    assert_eq!(bowl.portions().iter().map(|one| one.product.name.as_str()).collect::<Vec<_>>(), ["6%", "water"]);
    assert_eq!((bowl.total(), bowl.undeclared().count()), (g(100.0), 0));
    assert!(bowl.constituents()[0].is_fully_declared());
    near(bowl.constituents()[0].level.best().ww_percent(), 3.6, 1e-9);
    assert_eq!(bowl.hazards(), [Hazard::Peroxide]);
    assert!(Composition::mix(vec![(g(0.0), Product::declared("6%", vec![peroxide()]))]).is_err());
}

/// Half of the bowl is declared to 60 %, so 20 % of the bowl is open. A substance named twice in one product counts twice; one of
/// another form is another.
#[test]
fn what_is_open_and_what_is_named_twice() {
    let named = |name: &str, percent| Ingredient::named(name, exact(percent));
    let bowl = Composition::mix(vec![
        (
            g(50.0),
            Product::declared_in_part("shade", vec![named("resin", 10.0), named("Resin", 5.0), named("oil", 45.0)]),
        ),
        (g(50.0), Product::declared("water", vec![])),
    ])
    .unwrap();
    let levels: Vec<_> =
        bowl.constituents().iter().map(|one| (one.name.as_str(), one.level.best().ww_percent())).collect();
    assert_eq!(levels.iter().map(|one| one.0).collect::<Vec<_>>(), ["resin", "oil"]);
    all_near(&levels.iter().map(|one| one.1).collect::<Vec<_>>(), &[7.5, 22.5], 1e-9);
    near(bowl.undeclared_at_most().ww_percent(), 20.0, 1e-9);
    assert_eq!(bowl.undeclared().map(|one| one.mass).collect::<Vec<_>>(), [g(50.0)]);
}

/// The points of the trade: no white, none; a quarter, a quarter; 30, a third; half, half; three quarters, two thirds; all, all. In
/// between on a straight line: at 27 two fifths of the way from 25 to 33.
#[rstest]
#[case(0.0, [0.0, 0.0, 25.0])]
#[case(10.0, [0.0, 10.0, 25.0])]
#[case(24.9, [0.0, 24.9, 25.0])]
#[case(25.0, [0.0, 25.0, 50.0])]
#[case(27.0, [0.0, 28.2, 50.0])]
#[case(30.0, [33.0, 33.0, 50.0])]
#[case(40.0, [33.0, 41.5, 50.0])]
#[case(50.0, [33.0, 50.0, 67.0])]
#[case(60.0, [50.0, 56.8, 67.0])]
#[case(75.0, [50.0, 67.0, 100.0])]
#[case(90.0, [67.0, 86.8, 100.0])]
#[case(100.0, [67.0, 100.0, 100.0])]
fn the_natural_shade_follows_the_points_of_the_trade(#[case] white: f64, #[case] want: [f64; 3]) {
    all_near(&natural_share(percent(white)).share.to_array().map(Quantity::in_unit), &want, 1e-9);
}

/// Half a division of the smallest part is at most the tolerance of it: 1 g on a scale of 0.1 g at 5 %. For 1 to 1 on a scale of 1 g at
/// 1 %: from 200 g on always, and 2 g weigh it exactly; for 1 to 2 it is 300 g and 3 g.
#[test]
fn the_least_that_can_be_weighed() {
    near(minimum_mass(g(0.1), percent(5.0)).unwrap().g(), 1.0, 1e-9);
    near(minimum_mass(g(1.0), percent(0.01)).unwrap().g(), 5000.0, 1e-6);
    assert!(minimum_mass(g(1.0), percent(0.0099)).is_err());
    let least = |ratio: &str, share| minimum_bowl(&ratio.parse().unwrap(), g(1.0), percent(share));
    for (ratio, first, always) in [("1:1", 2.0, 200.0), ("1:2", 3.0, 300.0), ("1:1.5", 5.0, 250.0)] {
        let found = least(ratio, 1.0).unwrap();
        assert_eq!((found.first.g(), found.always_from.g()), (first, always), "{ratio}");
    }
    assert!(least("1:1", 0.01).is_ok() && least("1:1", 0.0099).is_err());
    let error = least("1:20000", 1.0).unwrap_err().to_string();
    assert_eq!(
        error,
        "the smallest part is 1 in 20001: pre-dilute it, no bowl of ordinary size can be weighed to that"
    );
}

/// Twelve digits, before or behind the point, and no more.
#[rstest]
#[case("999999999999", true)]
#[case("1000000000000", false)]
#[case("0.000000000001", true)]
#[case("0.0000000000001", false)]
#[case("0", false)]
#[case("-1", false)]
fn a_part_of_a_ratio_has_at_most_twelve_digits(#[case] part: &str, #[case] fits: bool) {
    assert_eq!(Ratio::new(vec![Decimal::ONE, part.parse().unwrap()]).is_ok(), fits);
}

#[rstest]
#[case("1:2", "2:4", true)]
#[case("1:1.5", "2+3", true)]
#[case("1:2", "1:3", false)]
#[case("1:2", "2:1", false)]
#[case("1:2", "1:2:1", false)]
#[case("1:2:3", "2:4:6", true)]
#[case("1:2:3", "2:4:5", false)]
fn ratios_are_the_same_mix_where_they_scale(#[case] one: &str, #[case] other: &str, #[case] same: bool) {
    let [one, other]: [Ratio; 2] = [one, other].map(|text| text.parse().unwrap());
    assert_eq!((one.same_mix(&other), other.same_mix(&one)), (same, same));
}

/// The check digit is each digit times its place from the end, summed, modulo ten: of 108-46-3 it is 6 + 2 x 4 + 3 x 8 + 0 + 5 = 43.
#[rstest]
#[case("7722-84-1", None)]
#[case("108-46-3", None)]
#[case("7664-41-7", None)]
#[case("50-00-0", None)]
#[case("108-46-4", Some("its check digit should be 3"))]
#[case("108-46-33", Some("must look like"))]
#[case("108-463-3", Some("must look like"))]
#[case("8-46-3", Some("must look like"))]
#[case("12345678-46-3", Some("must look like"))]
#[case("008-46-3", Some("must look like"))]
#[case("1o8-46-3", Some("must look like"))]
#[case("108-46-3-1", Some("must look like"))]
fn numbers_of_substances_are_checked(#[case] text: &str, #[case] refused: Option<&str>) {
    match (text.parse::<Cas>(), refused) {
        (Ok(read), None) => assert_eq!(read.to_string(), text),
        (Err(error), Some(want)) => assert!(error.to_string().contains(want), "{error}"),
        (got, _) => panic!("{text}: {got:?}"),
    }
}

/// As much powder as developer is no slip, a gram more is.
#[test]
fn more_powder_than_developer_is_a_warning() {
    assert!(check_lightener(g(30.0), g(30.0)).is_none() && check_lightener(g(30.0), g(60.0)).is_none());
    let finding = check_lightener(g(31.0), g(30.0)).unwrap();
    assert_eq!(finding.verdict, Verdict::Warning);
    assert!(finding.text.starts_with("more powder than developer: 31 g powder to 30 g developer"), "{}", finding.text);
}

/// 10.04 g and 20 g on a scale of 0.1 g: the readings add up in whole divisions, the smaller first unless it is to be last.
#[test]
fn readings_add_up_from_part_to_part() {
    let bowl = weigh(&[g(20.0), g(10.04), g(15.0)], g(0.1)).unwrap();
    let steps = |last| bowl.tare_order(last).iter().map(|s| (s.part, s.add.g(), s.reading.g())).collect::<Vec<_>>();
    assert_eq!(steps(None), [(1, 10.0, 10.0), (2, 15.0, 25.0), (0, 20.0, 45.0)]);
    assert_eq!(steps(Some(1)), [(2, 15.0, 15.0), (0, 20.0, 35.0), (1, 10.0, 45.0)]);
    // Strengths that are not stated count as none.
    let shift = bowl.strength_shift(&[exact(6.0)]).unwrap();
    near(shift.wanted.best().ww_percent(), 120.0 / 45.04, 1e-9);
    near(shift.weighed.best().ww_percent(), 120.0 / 45.0, 1e-9);
    near(shift.percentage_points(), 120.0 / 45.0 - 120.0 / 45.04, 1e-9);
    let spread = Interval::ordered(exact(5.0).best(), exact(6.0).best(), exact(8.0).best());
    let applied = as_applied(&[(g(50.0), spread), (g(50.0), exact(0.0))]).unwrap();
    all_near(&applied.to_array().map(Quantity::in_unit), &[2.5, 3.0, 4.0], 1e-9);
}
