//! Amounts: what is read, how ties fall, what is written.

use super::helpers::{
    HALF_UP, currency, euros, grams, minutes, number, product_cost, rent, rule, said, sales_mix_item,
};
use foilwork::source::Basis;
use foilwork::{
    business::{
        ChairService, break_even, contribution_per_chair_hour, median_count, price_list, rank_by_chair_hour,
        sales_mix_target, share_tips, trace_tips,
    },
    money::{
        CostKind, CostLine, CostTable, Discount, DiscountedPrice, Labour, Margin, Measure, Money, MoneyError, OnCosts,
        PackPrice, PriceEnding, PriceTarget, ProfitTax, Rounding, Toward, apply_discount, labour_per_minute,
        packs_needed, price_before_discount, price_from_margin, unit_price,
    },
};

/// A value of the wrong kind is refused, whatever it is: text, thousands, signs, exponents, other digits.
#[test]
fn only_plain_digits_are_an_amount() {
    for text in
        ["", "-", ".5", "5.", "1,000.00", "12,50", " 1", "1 ", "+1", "1e3", "1.2.3", "NaN", "\u{661}", "EUR 5", "--1"]
    {
        assert!(Money::parse(text, currency("EUR")).is_err(), "{text:?}");
    }
    assert!(Money::parse("99999999999999999999999999999999", currency("EUR")).is_err());
    assert_eq!(Money::parse("-0.05", currency("EUR")).unwrap().minor(), -5);
    assert_eq!(Money::parse("7", currency("KWD")).unwrap().to_string(), "7.000 KWD");
}

/// 11.00 an hour for 300.3 min is 55.055 exactly; a rate per minute cut at 28 digits falls just below.
#[test]
fn a_tie_is_decided_on_the_true_value() {
    let hour = minutes(60.0);
    let labour = Labour::new(euros("11.00"), OnCosts::from_percent(0.into()).unwrap(), hour, hour).unwrap();
    assert_eq!(labour.cost(minutes(300.3), HALF_UP).unwrap(), euros("55.06"));
    let by_rate = labour_per_minute(&labour).unwrap().per_unit * number("300.3");
    assert_eq!(
        Money::from_decimal(by_rate, currency("EUR"), HALF_UP).unwrap(),
        euros("55.05"),
        "why rates are not multiplied"
    );
}

/// The dust of a float sum decides nothing: 0.1 + 0.2 is three tenths.
#[test]
fn a_mass_is_the_decimal_it_was_written_as() {
    let cost = |used: f64| product_cost(euros("1.00"), grams(1.0), grams(used), Rounding::AwayFromZero).unwrap();
    assert_eq!(cost(0.1 + 0.2), euros("0.30"));
    assert_eq!(cost(0.300_1), euros("0.31"));
    assert_eq!(cost(1e-30), euros("0.00"), "below 28 decimals a mass is nothing");
}

/// Factors that need more than 128 bits: 15 digits each in price, mass and pack. Checked with Python's fractions.
#[test]
fn many_digits_do_not_overflow_on_the_way() {
    let price = Money::parse("9999999999999999.99", currency("EUR")).unwrap();
    let cost = product_cost(price, grams(123_456_789.012_345), grams(123_456.789_012_345_6), HALF_UP).unwrap();
    // Fraction(999999999999999999) * Fraction('123456.789012346') / Fraction('123456789.012345') = 1000000000000008.1
    assert_eq!(cost.minor(), 1_000_000_000_000_008);
    let tenfold = product_cost(price, grams(1.0), grams(1e9), HALF_UP);
    assert_eq!(said(tenfold), "product cost is too large: amounts reach about 9.2e18 minor units of the currency");
}

#[test]
fn amounts_are_written_as_text() {
    let json = serde_json::to_string(&euros("12.50")).unwrap();
    assert_eq!(json, r#"{"amount":"12.50","currency":"EUR"}"#);
    assert_eq!(format!("{:>12}|{:<12}|", euros("12.50"), euros("-3.00")), "   12.50 EUR|-3.00 EUR   |");
    let set = price_from_margin(euros("75.00"), Margin::from_percent(25.into()).unwrap(), HALF_UP).unwrap();
    let json = serde_json::to_value(set).unwrap();
    assert_eq!((&json["margin"], &json["markup"]), (&"25".into(), &"33.333333333333333333333333333".into()));
    let each = unit_price(PackPrice::new(euros("26.40"), grams(500.0)).unwrap()).unwrap();
    assert_eq!((each.to_string(), format!("{each:.2}")), ("0.0528 EUR/g".into(), "0.05 EUR/g".into()));
}

#[test]
fn packs_are_whole_and_counted_up() {
    let packs = |need: f64| packs_needed(Measure::Mass(grams(need)), Measure::Mass(grams(500.0))).unwrap();
    assert_eq!([0.0, 0.1, 500.0, 500.001].map(packs), [0, 1, 1, 2]);
}

#[test]
fn currencies_never_mix() {
    let dollars = Money::parse("1.00", currency("USD")).unwrap();
    let mixed = |result: Result<(), MoneyError>| matches!(result, Err(MoneyError::MixedCurrencies { .. }));
    assert!(euros("1.00").partial_cmp(&dollars).is_none());
    let service = |price, variable| ChairService { what: "cut".into(), price, variable, in_chair: minutes(30.0) };
    assert!(mixed(contribution_per_chair_hour(&service(euros("2.00"), dollars)).map(drop)));
    assert!(mixed(rank_by_chair_hour(&[service(euros("2.00"), euros("1.00")), service(dollars, dollars)]).map(drop)));
    assert!(mixed(break_even(dollars, euros("2.00"), euros("1.00"), HALF_UP).map(drop)));
    assert!(mixed(sales_mix_target(dollars, dollars, &[sales_mix_item()]).map(drop)));
    assert!(mixed(CostTable::new(currency("EUR")).push(CostLine::new(CostKind::Other, "x", Basis::Stated, dollars))));
    assert!(mixed(Money::total([euros("1.00"), dollars], currency("EUR")).map(drop)));
    assert!(mixed(price_list(&[], &rule(PriceTarget::PerChairHour(dollars))).map(drop).and_then(|()| {
        rule(PriceTarget::PerChairHour(dollars)).price(euros("1.00"), Some(minutes(60.0))).map(drop)
    })));
}

#[test]
fn small_things_hold() {
    let ending = PriceEnding::new(euros("5.00"), euros("0.00")).unwrap();
    assert_eq!(ending.apply(euros("52.50"), Toward::Nearest).unwrap(), euros("55.00"), "up when both are as near");
    let ninety = PriceEnding::new(euros("1.00"), euros("0.90")).unwrap();
    assert_eq!(ninety.apply(euros("0.20"), Toward::Nearest).unwrap(), euros("0.90"), "no price is below zero");
    let offer =
        apply_discount(euros("0.05"), Discount::from_percent(50.into()).unwrap(), Rounding::MidpointNearestEven)
            .unwrap();
    assert_eq!((offer.off, offer.after), (euros("0.02"), euros("0.03")));
    // 72.25 / 0.85 = 85; what was given goes in, and what was found comes out.
    let fifteen = Discount::from_percent(15.into()).unwrap();
    let lines = |offer: DiscountedPrice| {
        offer.trail().map(|one| format!("{}: {} = {}", one.what, one.worked.unwrap(), one.value))
    };
    assert_eq!(
        lines(price_before_discount(euros("72.25"), fifteen, HALF_UP).unwrap()),
        ["full price: 72.25 / (1 - (15 / 100)) = 85.00", "taken off: 85.00 - 72.25 = 12.75"]
    );
    assert_eq!(
        lines(apply_discount(euros("33.33"), fifteen, HALF_UP).unwrap()),
        ["taken off: 33.33 x (15 / 100) = 5.00", "discounted price: 33.33 - 5.00 = 28.33"]
    );
    assert!(ProfitTax::from_percent(100.into()).is_err());
    // Of eight hours and two.
    let trail = trace_tips(euros("50.00"), &[minutes(480.0), minutes(120.0)]).unwrap();
    assert!(trail.iter().all(|one| one.inputs[2].value == "10"), "{trail:?}");
    assert_eq!(share_tips(euros("0.01"), &[minutes(1.0), minutes(1.0)]).unwrap(), [euros("0.01"), euros("0.00")]);
    assert_eq!(median_count(&[7, 12]).unwrap(), number("9.5"));
    let at = rent(12).at(euros("1500.00"), HALF_UP).unwrap();
    // 1500 - 180 - 250 = 1070 renting; 480 + 225 = 705 employed.
    assert_eq!((at.renting, at.employed, at.difference), (euros("1070.00"), euros("705.00"), euros("365.00")));
}
