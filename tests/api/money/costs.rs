//! What things cost by the gram, the minute and the piece: worked by hand, on the edges, and as they are written.

use super::helpers::{HALF_UP, currency, euros, grams, minutes, number, said};
use foilwork::{
    money::{
        CostKind, CostLine, CostTable, InvalidCurrency, Labour, Measure, Money, MoneyStyle, OnCosts, Overhead,
        PackPrice, ProductiveShare, Rounding, TaxRate, allocate, labour_per_minute, overhead_per_chair_hour,
        pay_per_hour, supply_cost, tax_fraction, tax_rate, unit_price,
    },
    quantity::Volume,
    source::Basis,
};
use rstest::rstest;
use schemars::JsonSchema;

fn ml(of: f64) -> Volume {
    Volume::from_ml(of).unwrap()
}

/// By hand: 16.00 with 25 % is 20.00; 38 h paid for 28.5 h worked make 26.6667 an hour, and 0.4444 a minute.
#[test]
fn an_hour_of_work_costs_what_is_paid_for_it() {
    let on_costs = OnCosts::from_percent(25.into()).unwrap();
    let labour = Labour::new(euros("16"), on_costs, minutes(2280.0), minutes(1710.0)).unwrap();
    let cost = |labour: &Labour, min| labour.cost(minutes(min), HALF_UP).unwrap();
    assert_eq!([cost(&labour, 60.0), cost(&labour, 75.0), cost(&labour, 0.0)], ["26.67", "33.33", "0"].map(euros));
    assert_eq!(labour_per_minute(&labour).unwrap().per_unit.round_dp(4), number("0.4444"));
    assert_eq!((labour.productive_share().unwrap().percent(), labour.currency()), (number("75"), currency("EUR")));
    let share = ProductiveShare::from_percent(75.into()).unwrap();
    let same = Labour::with_productive_share(euros("16"), on_costs, share).unwrap();
    assert_eq!((cost(&same, 75.0), same.productive_share()), (euros("33.33"), Ok(share)));
    // All of the paid time may be productive, and none of it may not.
    let of = |productive| Labour::new(euros("16"), on_costs, minutes(60.0), minutes(productive));
    assert_eq!(cost(&of(60.0).unwrap(), 60.0), euros("20"));
    let says = "must be more than nothing and at most the paid time of the same period";
    for bad in ["0.000", "60.001"] {
        assert_eq!(said(of(bad.parse().unwrap())), format!("invalid productive time (got {bad} min): {says}"));
    }
    let says = "invalid wage for an hour (got -0.01 EUR): must be nothing or more";
    assert_eq!(said(Labour::new(euros("-0.01"), on_costs, minutes(1.0), minutes(1.0))), says);
    assert_eq!(said(Labour::with_productive_share(euros("-0.01"), on_costs, share)), says);
    assert!(Labour::new(euros("0"), on_costs, minutes(1.0), minutes(1.0)).is_ok());
    assert_eq!(pay_per_hour(euros("1"), minutes(40.0)).unwrap().to_string(), "1.5 EUR/h");
    assert_eq!(
        said(pay_per_hour(euros("1"), minutes(0.0))),
        "invalid worked time (got 0.000 min): must be more than nothing"
    );
}

/// By hand: 4800.00 for four chairs of 100 h each are 12.00 an hour.
#[test]
fn an_hour_of_a_chair_costs_its_part() {
    let rent = Overhead::new(euros("4800"), 4, minutes(6000.0)).unwrap();
    let hour = Overhead::per_hour(euros("12")).unwrap();
    for overhead in [rent, hour] {
        assert_eq!(overhead.cost(minutes(40.0), HALF_UP), Ok(euros("8")));
        assert_eq!(overhead_per_chair_hour(&overhead).unwrap().to_string(), "12 EUR/h");
        assert_eq!(overhead.currency(), currency("EUR"));
    }
    assert_eq!(
        said(Overhead::new(euros("1"), 1, minutes(0.0))),
        "invalid productive time of a chair (got 0.000 min): must be more than nothing"
    );
    let says = "invalid overhead (got -0.01 EUR): must be nothing or more";
    assert_eq!(said(Overhead::new(euros("-0.01"), 1, minutes(1.0))), says);
    assert_eq!(said(Overhead::per_hour(euros("-0.01"))), says);
}

/// By hand: of a pack for 9.00, a third costs 3.00, be it 60 g, 60 mL or 6 pieces.
#[test]
fn a_part_of_a_pack_is_measured_as_the_pack_is() {
    let packs: [(Measure, Measure, &str, &str); 3] = [
        (grams(60.0).into(), grams(20.0).into(), "9.00 EUR for 60 g", "0.15 EUR/g"),
        (ml(60.0).into(), ml(20.0).into(), "9.00 EUR for 60 mL", "0.15 EUR/mL"),
        (Measure::Count(6), Measure::Count(2), "9.00 EUR for 6 pieces", "1.5 EUR/piece"),
    ];
    for (place, (contents, used, text, each)) in packs.into_iter().enumerate() {
        let pack = PackPrice::new(euros("9"), contents).unwrap();
        assert_eq!(supply_cost(pack, used, HALF_UP), Ok(euros("3")));
        assert_eq!((pack.price(), pack.contents()), (euros("9"), contents));
        assert_eq!((pack.to_string(), unit_price(pack).unwrap().to_string()), (text.to_owned(), each.to_owned()));
        assert_eq!(supply_cost(pack, contents.none(), HALF_UP), Ok(euros("0")));
        assert_eq!(supply_cost(pack, used.plus(used).unwrap(), HALF_UP), Ok(euros("6")));
        for (other, (measure, ..)) in packs.into_iter().enumerate() {
            assert_eq!(used.plus(measure).is_ok(), place == other);
            assert_eq!(supply_cost(pack, measure, HALF_UP).is_ok(), place == other);
        }
    }
    assert_eq!(Measure::Count(1).to_string(), "1 piece");
    assert_eq!(
        said(Measure::Count(u32::MAX).plus(Measure::Count(1))),
        "count is too large: amounts reach about 9.2e18 minor units of the currency"
    );
    assert_eq!(Measure::Count(u32::MAX - 1).plus(Measure::Count(1)).unwrap(), Measure::Count(u32::MAX));
}

#[rstest]
#[case("900 g", Some("900 g"))]
#[case(" 500 mL ", Some("500 mL"))]
#[case("42 pieces", Some("42 pieces"))]
#[case("1 piece", Some("1 piece"))]
#[case("7pieces", Some("7 pieces"))]
#[case("0.5 pieces", None)]
#[case("-1 pieces", None)]
#[case("12", None)]
#[case("pieces", None)]
#[case("12 h", None)]
fn a_measure_is_read_with_its_unit(#[case] text: &str, #[case] want: Option<&str>) {
    let read = text.parse::<Measure>();
    match want {
        Some(want) => assert_eq!(read.unwrap().to_string(), want),
        None => assert_eq!(
            said(read),
            format!("cannot read {text:?}: write a mass, a volume or a count, for example 900 g, 500 mL or 42 pieces")
        ),
    }
}

/// Half a minor unit for each line, in currencies of no, two and three decimals.
#[rstest]
#[case("JPY", "1", "1.5", "7 JPY")]
#[case("EUR", "0.01", "0.015", "7.00 EUR")]
#[case("KWD", "0.001", "0.0015", "7.000 KWD")]
fn a_table_says_how_far_its_rounding_may_be_off(
    #[case] code: &str,
    #[case] least: &str,
    #[case] bound: &str,
    #[case] total: &str,
) {
    let of = currency(code);
    let least = Money::parse(least, of).unwrap();
    assert_eq!((least.minor(), least.decimal().to_string()), (1, least.to_string().replace(&format!(" {code}"), "")));
    let mut table = CostTable::new(of);
    assert_eq!((table.rounding_bound(), table.basis(), table.shares().len()), (number("0"), None, 0));
    for (amount, basis) in [("2", Basis::Measured), ("2", Basis::Assumed), ("3", Basis::Published)] {
        table.push(CostLine::new(CostKind::Product, "toner", basis, Money::parse(amount, of).unwrap())).unwrap();
    }
    assert_eq!((table.rounding_bound(), table.total().to_string()), (number(bound), total.to_owned()));
    assert_eq!(table.basis(), Some(Basis::Assumed), "no better founded than the weakest of its lines");
    // Tenths of a percent: 285 5/7 twice and 428 4/7; the two that are left go to the largest rests.
    let shares: Vec<String> = table.shares().iter().map(|line| line.share_percent.to_string()).collect();
    assert_eq!(shares, ["28.6", "28.6", "42.8"]);
    assert_eq!(table.lines().len(), 3);
    assert!(table.by_section().is_empty() && table.by_bowl().is_empty());
}

/// By hand, by Hamilton's method of largest remainders.
#[test]
fn what_is_left_goes_to_the_largest_rest() {
    let shares = |minor, weights: &[&str]| -> Vec<i64> {
        let weights: Vec<_> = weights.iter().map(|weight| number(weight)).collect();
        allocate(Money::from_minor(minor, currency("EUR")), &weights)
            .unwrap()
            .iter()
            .map(|share| share.minor())
            .collect()
    };
    // 14 2/7, 28 4/7 and 57 1/7: one is left, and 4/7 is the largest rest.
    assert_eq!(shares(100, &["1", "2", "4"]), [14, 29, 57]);
    assert_eq!(shares(-100, &["1", "2", "4"]), [-14, -29, -57]);
    assert_eq!(shares(100, &["0.25", "0.5", "1.00"]), [14, 29, 57], "the same proportions");
    assert_eq!(shares(2, &["1", "1", "1"]), [1, 1, 0], "equals in their order");
    assert_eq!(shares(5, &["0", "-0", "3"]), [0, 0, 5]);
    assert_eq!(shares(0, &["1", "2"]), [0, 0]);
    assert_eq!(shares(i64::MAX, &["1"]), [i64::MAX]);
    assert_eq!(shares(i64::MIN, &["1"]), [i64::MIN]);
    assert_eq!(
        said(allocate(euros("1"), &[number("0"), number("0")])),
        "invalid weight (got 0 parts): must be nothing or more, and more than nothing for at least one share"
    );
    assert_eq!(
        said(allocate(euros("1"), &[number("79228162514264337593543950335"), number("0.0000000001")])),
        "amount times weight is too large: amounts reach about 9.2e18 minor units of the currency"
    );
}

#[rstest]
#[case(-5, "-0,05 \u{20ac}", "-\u{20ac}0.05", "-5 JPY")]
#[case(99_999, "999,99 \u{20ac}", "\u{20ac}999.99", "99999 JPY")]
#[case(100_000, "1.000,00 \u{20ac}", "\u{20ac}1'000.00", "100000 JPY")]
#[case(123_456_789, "1.234.567,89 \u{20ac}", "\u{20ac}1'234'567.89", "123456789 JPY")]
fn amounts_are_written_as_a_country_does(
    #[case] minor: i64,
    #[case] after: &str,
    #[case] before: &str,
    #[case] other: &str,
) {
    let style = MoneyStyle { currency: "EUR", symbol: "\u{20ac}", before: false, gap: " ", group: ".", point: ',' };
    let front = MoneyStyle { before: true, gap: "", group: "'", point: '.', ..style };
    let euro = Money::from_minor(minor, currency("EUR"));
    assert_eq!((style.write(euro).as_str(), front.write(euro).as_str()), (after, before));
    assert_eq!(style.write(Money::from_minor(minor, currency("JPY"))), other);
    // Without minor units there is no point.
    let yen = MoneyStyle { currency: "JPY", symbol: "\u{a5}", gap: " ", ..front };
    let written = yen.write(Money::from_minor(minor.abs() * 1000, currency("JPY")));
    assert!(written.starts_with("\u{a5} ") && written.ends_with("'000") && !written.contains('.'), "{written}");
}

/// 7.7 of 107.7 is 77 of 1077; 0 of 100 is nothing of one; 1000 of 1100 are ten of eleven.
#[rstest]
#[case("7.7", (77, 1077))]
#[case("0", (0, 1))]
#[case("1000", (10, 11))]
#[case("0.005", (1, 20001))]
#[case("19.0", (19, 119))]
fn the_part_that_is_tax_is_in_lowest_terms(#[case] percent: &str, #[case] want: (i128, i128)) {
    assert_eq!(tax_fraction(TaxRate::from_percent(number(percent)).unwrap()), Ok(want));
}

#[test]
fn a_rate_of_tax_is_found_or_refused() {
    assert_eq!(tax_rate(euros("80"), euros("80")).unwrap().percent(), number("0"));
    assert_eq!(
        said(tax_rate(euros("100"), euros("99"))),
        "invalid tax rate (got -1 % of the net price): must be from 0 to 1000 % of the net price"
    );
    assert!(tax_rate(euros("1"), Money::parse("2", currency("USD")).unwrap()).is_err());
}

#[test]
fn currencies_and_amounts_are_plain_data() {
    let schema = |of: schemars::Schema| of.to_value();
    let euro = schema(schemars::schema_for!(foilwork::money::Currency));
    assert_eq!((&euro["type"], &euro["pattern"]), (&"string".into(), &"^[A-Z]{3}$".into()));
    let amount = schema(schemars::schema_for!(Money));
    assert_eq!(amount["required"], serde_json::json!(["amount", "currency"]));
    assert_eq!(amount["properties"]["amount"]["type"], "string");
    let table = schema(schemars::schema_for!(CostTable));
    assert_eq!(table["required"], serde_json::json!(["lines", "total"]));
    // By these names plain data that holds them refers to their schemas.
    let names = [Money::schema_name(), foilwork::money::Currency::schema_name(), CostTable::schema_name()];
    assert_eq!(names, ["Money", "Currency", "CostTable"]);
    let read = |text: &str| serde_json::from_str::<foilwork::money::Currency>(text);
    assert_eq!(read("\"KWD\"").unwrap(), currency("KWD"));
    assert!(read("\"kwd\"").unwrap_err().to_string().starts_with("unknown currency \"kwd\""));
    let long = "x".repeat(13);
    assert_eq!(currency_error(&long), InvalidCurrency::Unknown { code: "x".repeat(12) }, "no more than can be read");
    let swiss = currency("CHF");
    assert_eq!((swiss.name(), swiss.numeric(), swiss.exponent(), swiss.code()), ("Swiss franc", 756, 2, "CHF"));
    assert_eq!((format!("{swiss:>5}|{swiss:?}"), Rounding::ALL.len()), ("  CHF|CHF".to_owned(), 7));
}

fn currency_error(code: &str) -> InvalidCurrency {
    foilwork::money::Currency::from_code(code).unwrap_err()
}
