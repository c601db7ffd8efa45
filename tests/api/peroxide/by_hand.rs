//! Blends from a shelf, rows of a dilution table, hazard classes and bounds of conversions, by hand.

use super::shelf_errors::{g, ml, ww};
use crate::api::common::{all_near, near};
use foilwork::{
    peroxide::{
        Bearing, Conditions, HandlingFact, Objective, Shelf, ShelfBlend, SolutionDensity, StatedStrength, Stock,
        Strength, StrengthBound, StrengthUnit, blend_shelf, blend_shelf_to_scale, convert, density, dilute_volume,
        dilution_table, mix_volumes, read_glass, trace_conversion,
    },
    quantity::{Density, MassFraction, OxygenVolumes, PricePerKg, Quantity, Temperature},
    source::{Basis, COMMON_PRACTICE, Interval},
};
use rstest::rstest;

/// A bottle: strength in % w/w, price of a kg, and grams in hand.
fn stock((percent, price, in_hand): (f64, f64, Option<f64>)) -> Stock {
    let stock = Stock::new(format!("{percent} %"), ww(percent)).with_price(PricePerKg::from_per_kg(price).unwrap());
    match in_hand {
        Some(mass) => stock.with_in_hand(g(mass)),
        None => stock,
    }
}

fn shelf(stocks: &[(f64, f64, Option<f64>)]) -> Shelf {
    Shelf::new(stocks.iter().copied().map(stock).collect()).unwrap()
}

fn taken(blend: &ShelfBlend) -> Vec<(String, f64)> {
    blend.portions.iter().map(|portion| (portion.stock.name.clone(), (portion.mass.g() * 1e6).round() / 1e6)).collect()
}

/// 81 g of 6 %: from 12 % and water 40.5 g each, which a scale of 1 g cannot weigh; from 9 % and water 54 and 27 g, which it can. The
/// cheaper pair goes first whatever the scale does; of two that cost the same the one that the scale moves less; order says nothing.
#[rstest]
#[case::cheaper_first(&[(12.0, 1.0, None), (9.0, 5.0, None), (0.0, 0.0, None)], &[("12 %", 40.5), ("0 %", 40.5)])]
#[case::cheaper_last(&[(9.0, 5.0, None), (12.0, 1.0, None), (0.0, 0.0, None)], &[("12 %", 40.5), ("0 %", 40.5)])]
#[case::equal_weighable_first(&[(9.0, 0.0, None), (12.0, 0.0, None), (0.0, 0.0, None)], &[("9 %", 54.0), ("0 %", 27.0)])]
#[case::equal_weighable_last(&[(12.0, 0.0, None), (9.0, 0.0, None), (0.0, 0.0, None)], &[("9 %", 54.0), ("0 %", 27.0)])]
fn of_as_few_bottles_the_cheapest_and_then_the_weighable(
    #[case] stocks: &[(f64, f64, Option<f64>)],
    #[case] want: &[(&str, f64)],
) {
    let blend = blend_shelf_to_scale(&shelf(stocks), ww(6.0), g(81.0), Objective::FewestBottles, g(1.0)).unwrap();
    assert_eq!(taken(&blend), want.iter().map(|(name, mass)| ((*name).to_owned(), *mass)).collect::<Vec<_>>());
}

/// What stays in the bottles that are opened counts, not what stays on the shelf. For 40 g of 6 %: with 100 g of 12 % and water 20 g are
/// taken and 80 stay; with the 30 g of 6 % as well 5 g of 12 % are taken and 95 stay. For 30 g the bottle of 6 % alone leaves nothing.
/// Where nothing stays in any case, the fewest bottles, and of those the cheapest.
#[rstest]
#[case(&[(12.0, 0.0, Some(100.0)), (6.0, 0.0, Some(30.0)), (0.0, 0.0, None)], 40.0, &[("12 %", 20.0), ("0 %", 20.0)], 80.0)]
#[case(&[(12.0, 0.0, Some(100.0)), (6.0, 0.0, Some(30.0)), (0.0, 0.0, None)], 30.0, &[("6 %", 30.0)], 0.0)]
#[case(&[(12.0, 9.0, None), (9.0, 2.0, None), (0.0, 0.0, None)], 81.0, &[("9 %", 54.0), ("0 %", 27.0)], 0.0)]
#[case(&[(9.0, 9.0, None), (12.0, 2.0, None), (0.0, 0.0, None)], 81.0, &[("12 %", 40.5), ("0 %", 40.5)], 0.0)]
#[case(&[(12.0, 0.0, None), (0.0, 0.0, None), (6.0, 9.0, None)], 80.0, &[("6 %", 80.0)], 0.0)]
fn the_least_leftover_counts_opened_bottles(
    #[case] stocks: &[(f64, f64, Option<f64>)],
    #[case] total: f64,
    #[case] want: &[(&str, f64)],
    #[case] leftover: f64,
) {
    let blend = blend_shelf(&shelf(stocks), ww(6.0), g(total), Objective::LeastLeftover).unwrap();
    assert_eq!(taken(&blend), want.iter().map(|(name, mass)| ((*name).to_owned(), *mass)).collect::<Vec<_>>());
    near(blend.leftover().g(), leftover, 1e-6);
}

/// 30 g at 8 a kg and 50 g at 2 a kg cost 0.34; of 100 g in hand 70 stay, of a bottle without an amount nothing is known. The cheapest
/// way to 80 g of 6 % takes no dear 6 %: 40 g of 12 % at 3 a kg and water cost 0.12.
#[test]
fn a_shelf_counts_money_and_rest() {
    let cheap = shelf(&[(16.0, 8.0, Some(100.0)), (0.0, 2.0, None)]);
    let blend = blend_shelf(&cheap, ww(6.0), g(80.0), Objective::LeastCost).unwrap();
    assert_eq!(taken(&blend), [("16 %".to_owned(), 30.0), ("0 %".to_owned(), 50.0)]);
    near(blend.cost(), 0.34, 1e-9);
    near(blend.leftover().g(), 70.0, 1e-9);
    near(blend.total().g(), 80.0, 1e-9);
    near(blend.strength().unwrap().best().ww_percent(), 6.0, 1e-9);
    let dear = shelf(&[(6.0, 20.0, None), (12.0, 3.0, None), (0.0, 0.0, None)]);
    near(blend_shelf(&dear, ww(6.0), g(80.0), Objective::LeastCost).unwrap().cost(), 0.12, 1e-9);
    // With 15 g of 12 % in hand, 30 g of 6 % can be made of it; 50 g of the dear one fill up: 0.045 + 1.
    let short = shelf(&[(6.0, 20.0, None), (12.0, 3.0, Some(15.0)), (0.0, 0.0, None)]);
    near(blend_shelf(&short, ww(6.0), g(80.0), Objective::LeastCost).unwrap().cost(), 1.045, 1e-9);
}

/// 10 g of 12 % and water make 20 g of 6 %; 80 g with all of it are 1.5 %. With 5 g of 6 % as well it is 25 g, and 1.88 %. Of 60 g
/// wanted 30 g are there at all.
#[rstest]
#[case(
    &[(12.0, 0.0, Some(10.0)), (0.0, 0.0, None)],
    80.0,
    "cannot make 80 g of 6 % w/w from the amounts in hand: 80 g can be anything from 0.00 % w/w to 1.50 % w/w, and at most 20.0 g of 6 % w/w can be made"
)]
#[case(
    &[(12.0, 0.0, Some(10.0)), (6.0, 0.0, Some(5.0)), (0.0, 0.0, None)],
    80.0,
    "cannot make 80 g of 6 % w/w from the amounts in hand: 80 g can be anything from 0.00 % w/w to 1.88 % w/w, and at most 25.0 g of 6 % w/w can be made"
)]
#[case(
    &[(12.0, 0.0, None), (3.0, 0.0, Some(10.0)), (0.0, 0.0, Some(5.0))],
    80.0,
    "cannot make 80 g of 6 % w/w from the amounts in hand: 80 g can be anything from 10.12 % w/w to 12.00 % w/w, and at most 25.0 g of 6 % w/w can be made"
)]
#[case(
    &[(12.0, 0.0, Some(10.0)), (3.0, 0.0, Some(20.0))],
    60.0,
    "60 g are wanted and only 30 g are in hand: ask for less, or add a stock"
)]
fn what_the_amounts_cannot_make_says_what_they_can(
    #[case] stocks: &[(f64, f64, Option<f64>)],
    #[case] total: f64,
    #[case] want: &str,
) {
    for objective in Objective::ALL {
        let error = blend_shelf(&shelf(stocks), ww(6.0), g(total), *objective).unwrap_err();
        assert_eq!(error.to_string(), want);
    }
}

/// Parts of at most 20 together, within half a percent: 12 to 6 is 1 and 1, 9 to 7 is 7 and 2, 12 to 0.6 is 1 and 19; 10.5 to 0.5 would
/// be 1 and 20. 12 to 5.99 is 1 and 1.0033, 12 to 5.98 is 1 and 1.0067.
#[rstest]
#[case(12.0, 6.0, Some([1, 1]), Some(1.0))]
#[case(12.0, 4.0, Some([1, 2]), Some(2.0))]
#[case(9.0, 7.0, Some([7, 2]), Some(2.0 / 7.0))]
#[case(12.0, 0.6, Some([1, 19]), Some(19.0))]
#[case(10.5, 0.5, None, Some(20.0))]
#[case(12.0, 5.99, Some([1, 1]), Some(6.01 / 5.99))]
#[case(12.0, 5.98, None, Some(6.02 / 5.98))]
#[case(12.0, 12.0, Some([1, 0]), Some(0.0))]
#[case(12.0, 0.0, None, None)]
#[case(0.0, 0.0, Some([1, 0]), Some(0.0))]
fn parts_are_small_whole_numbers_or_none(
    #[case] from: f64,
    #[case] to: f64,
    #[case] parts: Option<[u32; 2]>,
    #[case] diluent_parts: Option<f64>,
) {
    let table = dilution_table(&[ww(from)], &[ww(to)], ww(0.0), g(1000.0), g(0.01)).unwrap();
    let row = table.rows[0].weigh.as_ref().unwrap();
    assert_eq!(row.parts, parts);
    assert_eq!(row.diluent_parts.is_some(), diluent_parts.is_some());
    near(row.diluent_parts.unwrap_or(0.0), diluent_parts.unwrap_or(0.0), 1e-9);
    near(row.stock.g() + row.diluent.g(), 1000.0, 1e-9);
}

/// A third of a gram, of the stock or of the diluent, is nothing on a scale of 1 g.
#[rstest]
#[case(12.0, 0.4)]
#[case(12.0, 11.6)]
fn a_part_that_the_scale_cannot_see_is_refused(#[case] from: f64, #[case] to: f64) {
    let table = dilution_table(&[ww(from)], &[ww(to)], ww(0.0), g(10.0), g(1.0)).unwrap();
    assert_eq!(table.rows[0].weigh, None);
    let want = "a part rounds to nothing on a scale of 1 g: use a finer scale or make more";
    assert_eq!(table.rows[0].refused.as_deref(), Some(want));
}

pub(super) fn fact(lower: Option<(f64, bool)>, upper: Option<(f64, bool)>) -> HandlingFact {
    let bound = |(percent, included)| StrengthBound { strength: ww(percent), included };
    HandlingFact {
        jurisdiction: "nowhere",
        scheme: "none",
        class: "class",
        code: "code",
        lower: lower.map(bound),
        upper: upper.map(bound),
        note: "",
        citation: &COMMON_PRACTICE,
    }
}

const FROM_8: Option<(f64, bool)> = Some((8.0, true));
const ABOVE_8: Option<(f64, bool)> = Some((8.0, false));
const TO_50: Option<(f64, bool)> = Some((50.0, true));
const BELOW_50: Option<(f64, bool)> = Some((50.0, false));

/// From 8 % on, above 8 %, up to 50 %, below 50 %: whether a span of strengths is inside, partly inside, or outside.
#[rstest]
#[case(FROM_8, BELOW_50, 8.0, 8.0, Some(Bearing::Applies))]
#[case(FROM_8, BELOW_50, 8.0, 49.9, Some(Bearing::Applies))]
#[case(FROM_8, BELOW_50, 7.0, 8.0, Some(Bearing::MayApply))]
#[case(FROM_8, BELOW_50, 7.0, 7.9, None)]
#[case(FROM_8, BELOW_50, 50.0, 50.0, None)]
#[case(FROM_8, BELOW_50, 50.0, 60.0, None)]
#[case(FROM_8, BELOW_50, 49.0, 50.0, Some(Bearing::MayApply))]
#[case(FROM_8, BELOW_50, 5.0, 60.0, Some(Bearing::MayApply))]
#[case(ABOVE_8, TO_50, 8.0, 8.0, None)]
#[case(ABOVE_8, TO_50, 7.0, 8.0, None)]
#[case(ABOVE_8, TO_50, 8.0, 9.0, Some(Bearing::MayApply))]
#[case(ABOVE_8, TO_50, 8.1, 50.0, Some(Bearing::Applies))]
#[case(ABOVE_8, TO_50, 50.0, 60.0, Some(Bearing::MayApply))]
#[case(ABOVE_8, TO_50, 50.1, 60.0, None)]
#[case(FROM_8, None, 9.0, 70.0, Some(Bearing::Applies))]
#[case(FROM_8, None, 1.0, 2.0, None)]
#[case(None, TO_50, 0.0, 50.0, Some(Bearing::Applies))]
#[case(None, TO_50, 60.0, 70.0, None)]
#[case(None, None, 60.0, 70.0, Some(Bearing::Substance))]
fn a_class_bears_on_what_lies_within_it(
    #[case] lower: Option<(f64, bool)>,
    #[case] upper: Option<(f64, bool)>,
    #[case] low: f64,
    #[case] high: f64,
    #[case] want: Option<Bearing>,
) {
    let span = Interval::ordered(ww(low), ww(low), ww(high));
    assert_eq!(fact(lower, upper).bears_on(span), want);
}

/// The documented bounds: 0.0005 g/mL up to 50 %, widening evenly to 0.0012 at 70 %.
#[rstest]
#[case(0.0, 0.0005)]
#[case(12.0, 0.0005)]
#[case(50.0, 0.0005)]
#[case(60.0, 0.00085)]
#[case(70.0, 0.0012)]
fn a_density_has_the_width_it_says(#[case] percent: f64, #[case] half: f64) {
    let found = density(ww(percent), Temperature::REFERENCE).unwrap();
    near(found.high().g_per_ml() - found.best().g_per_ml(), half, 1e-12);
    near(found.best().g_per_ml() - found.low().g_per_ml(), half, 1e-12);
}

fn density_in_trail(strength: Strength, to: StrengthUnit, conditions: &Conditions) -> ([f64; 3], [f64; 3]) {
    let found = trace_conversion(strength, to, conditions).unwrap();
    let number = |text: &str| text.parse::<f64>().unwrap();
    let all = |best: &str, bounds: &Option<[String; 2]>| {
        let [low, high] = bounds.as_ref().unwrap();
        [number(low), number(best), number(high)]
    };
    let density = found.inputs.iter().find(|input| input.what == "density").unwrap();
    (all(&density.value, &density.bounds), all(&found.value, &found.bounds))
}

/// The density that a trail names has its bounds: those it was measured with, an emulsion 8 % lighter to 2 % heavier than water with as
/// much peroxide, water with peroxide its 0.0005 g/mL. 6 % w/w of 1 g/mL are 60 g/L, and back.
#[test]
fn a_trail_has_the_bounds_of_the_density() {
    let measured = Interval::ordered(0.98, 1.0, 1.03).map(Density::nearest);
    let product = Conditions::default().with_density(SolutionDensity::Measured(measured));
    let strength = |number, unit| Strength::of(number, unit).unwrap();
    let (ww_six, g_sixty) = (strength(6.0, StrengthUnit::WwPercent), strength(60.0, StrengthUnit::GPerL));
    let (density, value) = density_in_trail(ww_six, StrengthUnit::GPerL, &product);
    all_near(&density, &[0.98, 1.0, 1.03], 1e-9);
    all_near(&value, &[58.8, 60.0, 61.8], 1e-9);
    let (density, value) = density_in_trail(g_sixty, StrengthUnit::WwPercent, &product);
    all_near(&density, &[0.98, 1.0, 1.03], 1e-9);
    all_near(&value, &[6.0 / 1.03, 6.0, 6.0 / 0.98], 1e-9);
    let water = foilwork::peroxide::density(ww(6.0), Temperature::REFERENCE).unwrap().best().g_per_ml();
    let (density, _) = density_in_trail(ww_six, StrengthUnit::Volumes, &Conditions::default());
    all_near(&density, &[water - 0.0005, water, water + 0.0005], 1e-9);
    let cream = Conditions::default().with_density(SolutionDensity::Emulsion);
    let (density, _) = density_in_trail(ww_six, StrengthUnit::MolPerL, &cream);
    all_near(&density, &[0.92 * water, water, 1.02 * water], 1e-9);
    let basis = |conditions: &Conditions| trace_conversion(ww_six, StrengthUnit::GPerL, conditions).unwrap().basis;
    assert_eq!(
        [&cream, &product, &Conditions::default()].map(basis),
        [Basis::Assumed, Basis::Measured, Basis::Derived]
    );
}

/// 70 % w/w is the strongest with a known density: it goes to g/L and back, a little more does not, not even a millionth of it.
#[test]
fn the_strongest_known_goes_there_and_back() {
    for celsius in [0.0, 7.3, 20.0, 33.3, 50.0] {
        let at = Conditions::at(Temperature::from_celsius(celsius).unwrap());
        let strength = |number, unit| Strength::of(number, unit).unwrap();
        let top = convert(strength(70.0, StrengthUnit::WwPercent), StrengthUnit::GPerL, &at).unwrap();
        near(convert(top, StrengthUnit::WwPercent, &at).unwrap().number(), 70.0, 1e-9);
        for more in [1e-6, 1e-9] {
            let beyond = strength(top.number() * (1.0 + more), StrengthUnit::GPerL);
            assert!(convert(beyond, StrengthUnit::WwPercent, &at).is_err(), "{celsius} {more}");
        }
        assert!(convert(strength(70.1, StrengthUnit::WwPercent), StrengthUnit::GPerL, &at).is_err());
    }
    // Whose density was measured may be as strong as it likes.
    let known = SolutionDensity::measured(Density::from_g_per_ml(1.4).unwrap());
    let pure = Strength::of(95.0, StrengthUnit::WwPercent).unwrap();
    near(
        convert(pure, StrengthUnit::GPerL, &Conditions::default().with_density(known)).unwrap().number(),
        1330.0,
        1e-9,
    );
}

/// Masses add up: what is measured out weighs what the target weighs, and holds as much peroxide. Water takes the rest.
#[test]
fn a_volume_dilution_keeps_mass_and_peroxide() {
    let at = Temperature::REFERENCE;
    let rho = |percent| density(ww(percent), at).unwrap().best().g_per_ml();
    let made = dilute_volume(ww(30.0), ww(6.0), ml(500.0), at).unwrap();
    let (stock, water) = (made.stock.best().ml() * rho(30.0), made.water.best().ml() * rho(0.0));
    near(stock + water, 500.0 * rho(6.0), 1e-9);
    near(stock * 0.30, 500.0 * rho(6.0) * 0.06, 1e-9);
    near(made.contraction().best().ml(), made.stock.best().ml() + made.water.best().ml() - 500.0, 1e-9);
    assert!(made.contraction().best().ml() > 0.0);
    // Nothing but water is made of water alone; as it is, a stock takes no water.
    let water = dilute_volume(ww(0.0), ww(0.0), ml(500.0), at).unwrap();
    assert_eq!((water.stock.best().ml(), water.total), (0.0, ml(500.0)));
    near(water.water.best().ml(), 500.0, 1e-9);
    let same = dilute_volume(ww(6.0), ww(6.0), ml(500.0), at).unwrap();
    near(same.stock.best().ml(), 500.0, 1e-9);
    assert_eq!(same.water.best().ml(), 0.0);
}

/// 100 mL of 12 % and 50 mL of 3 %, each as heavy as its density says.
#[test]
fn poured_parts_weigh_by_their_densities() {
    let rho = |percent| density(ww(percent), Temperature::REFERENCE).unwrap().best().g_per_ml();
    let mixed = mix_volumes(&[(ww(12.0), ml(100.0)), (ww(3.0), ml(50.0))], Temperature::REFERENCE).unwrap();
    let (strong, weak) = (100.0 * rho(12.0), 50.0 * rho(3.0));
    near(mixed.total.best().g(), strong + weak, 1e-9);
    near(mixed.strength.best().ww_percent(), (12.0 * strong + 3.0 * weak) / (strong + weak), 1e-9);
    near(mixed.volume.best().ml(), (strong + weak) / rho(mixed.strength.best().ww_percent()), 1e-9);
    assert_eq!(mixed.poured, ml(150.0));
    near(mixed.total.low().g(), strong + weak - 0.075, 1e-9);
    near(mixed.total.high().g(), strong + weak + 0.075, 1e-9);
}

#[rstest]
#[case("6 % w/w", None, "6 % w/w")]
#[case("6 % w/w", Some(1), "6.0 % w/w")]
#[case("60 g/L", None, "6 % w/v")]
#[case("6.25 % w/v", Some(1), "6.2 % w/v")]
#[case("19.8 volumes", Some(2), "19.80 volumes")]
#[case("20 vol label", None, "20 vol label")]
#[case("20 vol.", Some(1), "20.0 vol label")]
fn a_stated_strength_is_shown_as_it_was_stated(#[case] text: &str, #[case] digits: Option<usize>, #[case] want: &str) {
    let stated: StatedStrength = text.parse().unwrap();
    let shown = digits.map_or_else(|| stated.to_string(), |digits| format!("{stated:.digits$}"));
    assert_eq!(shown, want);
}

/// Strengths of two units have no order, and are of no other type.
#[test]
fn strengths_compare_in_one_unit() {
    let of = |number, unit| Strength::of(number, unit).unwrap();
    let (six, nine) = (of(6.0, StrengthUnit::WwPercent), of(9.0, StrengthUnit::WwPercent));
    assert_eq!(six.partial_cmp(&nine), Some(std::cmp::Ordering::Less));
    assert_eq!(six.partial_cmp(&of(20.0, StrengthUnit::Volumes)), None);
    assert_eq!(six.typed::<MassFraction>(), Some(ww(6.0)));
    assert_eq!(six.typed::<OxygenVolumes>(), None);
    assert_eq!(format!("{six:.1}"), "6.0 % w/w");
    let read = read_glass(ml(10.0), ml(0.02)).unwrap();
    assert_eq!(read.to_array().map(Quantity::in_unit), [9.98, 10.0, 10.02]);
}
