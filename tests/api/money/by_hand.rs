//! Ends of prices, costs of time and of packs, by hand.

use super::helpers::{HALF_UP, euros, grams, minutes, number, said};
use foilwork::money::{
    CardFee, CardRate, Discount, Labour, Measure, MoneyError, OnCosts, Overhead, PackPrice, PriceEnding,
    ProductiveShare, TaxRate, Toward, add_tax, allocate, apply_discount, labour_per_minute, overhead_per_chair_hour,
    packs_needed, pay_per_hour, price_before_discount, supply_cost, take_tax_out, tax_fraction, tax_rate, unit_price,
};
use rstest::rstest;

/// Prices of the list end in 0.90 on whole euros: 0.90, 1.90 and so on.
#[rstest]
#[case("12.90", Toward::Up, Some("12.90"))]
#[case("12.90", Toward::Down, Some("12.90"))]
#[case("12.90", Toward::Nearest, Some("12.90"))]
#[case("12.91", Toward::Up, Some("13.90"))]
#[case("12.91", Toward::Down, Some("12.90"))]
#[case("12.91", Toward::Nearest, Some("12.90"))]
#[case("13.39", Toward::Nearest, Some("12.90"))]
#[case("13.40", Toward::Nearest, Some("13.90"))]
#[case("13.41", Toward::Nearest, Some("13.90"))]
#[case("0.10", Toward::Nearest, Some("0.90"))]
#[case("0.10", Toward::Up, Some("0.90"))]
#[case("0.10", Toward::Down, None)]
#[case("0.90", Toward::Down, Some("0.90"))]
fn a_price_ends_as_the_list_does(#[case] price: &str, #[case] toward: Toward, #[case] want: Option<&str>) {
    let ending = PriceEnding::new(euros("1.00"), euros("0.90")).unwrap();
    assert_eq!(ending.apply(euros(price), toward).ok(), want.map(euros));
}

#[test]
fn an_ending_is_below_its_step() {
    let fits = |step: &str, ending: &str| PriceEnding::new(euros(step), euros(ending)).is_ok();
    assert!(fits("1.00", "0.00") && fits("1.00", "0.99") && fits("0.01", "0.00"));
    assert!(!fits("1.00", "1.00") && !fits("1.00", "-0.01") && !fits("0.00", "0.00"));
}

/// 20 an hour and a fifth on top are 24; of 40 paid hours 30 are productive, so that one costs 32: 45 minutes 24, a minute 0.5333.
#[test]
fn an_hour_of_work_pays_for_the_idle_one() {
    let on_costs = OnCosts::from_percent(number("20")).unwrap();
    let labour = Labour::new(euros("20"), on_costs, minutes(2400.0), minutes(1800.0)).unwrap();
    assert_eq!(labour.cost(minutes(45.0), HALF_UP).unwrap(), euros("24"));
    assert_eq!(labour_per_minute(&labour).unwrap().per_unit.round_dp(6), number("0.533333"));
    assert_eq!(labour.productive_share().unwrap().percent(), number("75"));
    let by_share = ProductiveShare::from_percent(number("75")).unwrap();
    let same = Labour::with_productive_share(euros("20"), on_costs, by_share).unwrap();
    assert_eq!(same.cost(minutes(45.0), HALF_UP).unwrap(), euros("24"));
    let hours = |paid, productive| Labour::new(euros("20"), on_costs, minutes(paid), minutes(productive)).is_ok();
    assert!(hours(60.0, 60.0) && !hours(60.0, 61.0) && !hours(60.0, 0.0));
    assert!(Labour::new(euros("-1"), on_costs, minutes(60.0), minutes(60.0)).is_err());
    assert_eq!(pay_per_hour(euros("90"), minutes(270.0)).unwrap().per_unit, number("20"));
    assert!(pay_per_hour(euros("90"), minutes(0.0)).is_err());
}

/// 6000 a month over 4 chairs of 150 hours are 10 an hour: 45 minutes 7.50.
#[test]
fn a_chair_carries_its_part_of_the_rent() {
    let overhead = Overhead::new(euros("6000"), 4, minutes(9000.0)).unwrap();
    assert_eq!(overhead.cost(minutes(45.0), HALF_UP).unwrap(), euros("7.50"));
    assert_eq!(overhead_per_chair_hour(&overhead).unwrap().per_unit, number("10"));
    let stated = Overhead::per_hour(euros("10")).unwrap();
    assert_eq!(stated.cost(minutes(45.0), HALF_UP).unwrap(), euros("7.50"));
    assert!(Overhead::new(euros("6000"), 0, minutes(9000.0)).is_err());
    assert!(Overhead::new(euros("6000"), 4, minutes(0.0)).is_err());
    assert!(Overhead::per_hour(euros("-1")).is_err());
}

/// 60 g at 8.40 are 0.14 a gram, 25 g 3.50; 130 g need three packs, 120 two; 12 foils of 100 at 5.00 are 0.60.
#[test]
fn a_pack_is_used_by_its_parts() {
    let pack = PackPrice::new(euros("8.40"), grams(60.0)).unwrap();
    assert_eq!(supply_cost(pack, grams(25.0), HALF_UP).unwrap(), euros("3.50"));
    let each = unit_price(pack).unwrap();
    assert_eq!((each.per_unit, each.unit), (number("0.14"), "g"));
    let packs = |need| packs_needed(grams(need), grams(60.0)).unwrap();
    assert_eq!([packs(0.0), packs(0.1), packs(120.0), packs(120.1), packs(130.0)], [0, 1, 2, 3, 3]);
    assert!(packs_needed(grams(1.0), grams(0.0)).is_err());
    let foils = PackPrice::new(euros("5.00"), Measure::Count(100)).unwrap();
    assert_eq!(supply_cost(foils, Measure::Count(12), HALF_UP).unwrap(), euros("0.60"));
    assert!(supply_cost(foils, grams(12.0), HALF_UP).is_err());
    assert_eq!((Measure::Count(1).to_string(), Measure::Count(2).to_string()), ("1 piece".into(), "2 pieces".into()));
    assert_eq!(Measure::Count(9).none(), Measure::Count(0));
    assert_eq!(Measure::from(grams(9.0)).none(), Measure::from(grams(0.0)));
    assert_eq!([Measure::Count(1).unit(), Measure::from(grams(1.0)).unit()], ["piece", "g"]);
}

/// 20 % on 50 are 60; of 60 with 20 % in it 10 are tax, a sixth. 8.1 % is 81 of 1081.
#[rstest]
#[case("20", (1, 6))]
#[case("25", (1, 5))]
#[case("8.1", (81, 1081))]
#[case("0", (0, 1))]
#[case("19", (19, 119))]
fn a_tax_is_a_fraction_of_the_price_with_it(#[case] percent: &str, #[case] fraction: (i128, i128)) {
    assert_eq!(tax_fraction(TaxRate::from_percent(number(percent)).unwrap()).unwrap(), fraction);
}

#[test]
fn tax_fees_and_discounts_by_hand() {
    let twenty = TaxRate::from_percent(number("20")).unwrap();
    let with = add_tax(euros("50"), twenty, HALF_UP).unwrap();
    assert_eq!((with.net, with.tax, with.gross), (euros("50"), euros("10"), euros("60")));
    let out = take_tax_out(euros("60"), twenty, HALF_UP).unwrap();
    assert_eq!((out.net, out.tax, out.gross), (euros("50"), euros("10"), euros("60")));
    assert_eq!(tax_rate(euros("50"), euros("60")).unwrap(), twenty);
    let fee = CardFee::new(CardRate::from_percent(number("1.5")).unwrap(), euros("0.10")).unwrap();
    assert_eq!(fee.of(euros("80"), HALF_UP).unwrap(), euros("1.30"));
    assert!(CardFee::new(fee.rate(), euros("-0.01")).is_err() && fee.fixed() == euros("0.10"));
    let quarter = Discount::from_percent(number("25")).unwrap();
    let off = apply_discount(euros("80"), quarter, HALF_UP).unwrap();
    assert_eq!((off.before, off.off, off.after, off.full_price_found), (euros("80"), euros("20"), euros("60"), false));
    let back = price_before_discount(euros("60"), quarter, HALF_UP).unwrap();
    assert_eq!(
        (back.before, back.off, back.after, back.full_price_found),
        (euros("80"), euros("20"), euros("60"), true)
    );
}

/// A cent more goes to the largest remainder, of equal ones to the first: 1.00 by 1, 1, 1 is 0.34, 0.33, 0.33; by 1 and 2 it is 0.33 and
/// 0.67. What is owed is shared the same way.
#[rstest]
#[case("1.00", &["1", "1", "1"], &["0.34", "0.33", "0.33"])]
#[case("1.00", &["1", "2"], &["0.33", "0.67"])]
#[case("0.05", &["0.5", "0.5", "0"], &["0.03", "0.02", "0.00"])]
#[case("-1.00", &["1", "1", "1"], &["-0.34", "-0.33", "-0.33"])]
#[case("1.00", &["0", "3"], &["0.00", "1.00"])]
#[case("0.02", &["1", "1.5", "2.5"], &["0.00", "0.01", "0.01"])]
fn no_cent_is_lost(#[case] amount: &str, #[case] weights: &[&str], #[case] want: &[&str]) {
    let weights: Vec<_> = weights.iter().map(|weight| number(weight)).collect();
    assert_eq!(allocate(euros(amount), &weights).unwrap(), want.iter().map(|one| euros(one)).collect::<Vec<_>>());
}

#[test]
fn weights_are_nothing_or_more() {
    let share = |weights: &[&str]| allocate(euros("1"), &weights.iter().map(|one| number(one)).collect::<Vec<_>>());
    assert!(matches!(share(&[]), Err(MoneyError::Empty { .. })));
    assert!(said(share(&["0", "0"])).contains("more than nothing for at least one share"));
    assert!(share(&["1", "-1"]).is_err() && share(&["1", "-0"]).is_ok());
}
