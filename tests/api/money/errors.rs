//! Every error with its exact text.

use super::helpers::{HALF_UP, currency, euros, grams, minutes, number, parts, product_cost, rent, rule, said};
use foilwork::quantity::Volume;
use foilwork::source::Interval;
use foilwork::{
    business::{
        CommissionRule, CommissionTier, Denominator, Deposit, average_bill, break_even, commission_pay,
        discount_break_even, median_count, productivity, quote_range, retail_share,
    },
    money::{
        CommissionRate, Currency, Labour, Margin, Markup, Money, OnCosts, Overhead, PackPrice, PriceEnding,
        PriceTarget, Rounding, SetPrice, TaxRate, Toward, allocate, parse_decimal, supply_cost, tax_rate,
    },
};

#[test]
fn every_error_says_what_was_given_and_the_way_out() {
    let rows: Vec<(String, &str)> = vec![
        (
            said(Currency::from_code("EURO")),
            "unknown currency \"EURO\": give the three-letter code of ISO 4217 in capitals, for example EUR",
        ),
        (
            said(Currency::from_code("XAU")),
            "XAU has no minor unit to round to: give a currency that prices are written in",
        ),
        (
            said("half_up".parse::<Rounding>()),
            "unknown rounding \"half_up\": give one of midpoint-away-from-zero, midpoint-nearest-even, \
             midpoint-toward-zero, to-zero, away-from-zero, to-negative-infinity, to-positive-infinity",
        ),
        (
            said(euros("1.00").plus(Money::parse("1.00", currency("USD")).unwrap())),
            "cannot put EUR and USD into one sum: convert one of them first, at a rate you state",
        ),
        (
            said(Money::parse("12.505", currency("EUR"))),
            "12.505 EUR has more than 2 decimals: round it first, and name the rounding",
        ),
        (
            said(Money::parse("60.000", currency("EUR"))),
            "amount \"60.000\" has more decimals than EUR: write 60000 if the point groups thousands, else 60.00",
        ),
        (
            said(Money::parse("-1.200", currency("JPY"))),
            "-1.200 JPY has more than 0 decimals: round it first, and name the rounding",
        ),
        (said(Money::parse("7.0", currency("JPY"))), "amount \"7.0\" has more decimals than JPY: write 7"),
        (
            said(PriceEnding::new(euros("1.00"), euros("0.90")).unwrap().apply(euros("0.50"), Toward::Down)),
            "invalid price to move down (got 0.50 EUR): must be at least the price ending, the lowest price on the list: \
             go up instead",
        ),
        (
            said(PriceEnding::new(euros("1.00"), euros("0.90")).unwrap().apply(euros("-3.00"), Toward::Up)),
            "invalid price (got -3.00 EUR): must be nothing or more",
        ),
        (
            said(Money::parse("12.5", currency("JPY"))),
            "12.5 JPY has more than 0 decimals: round it first, and name the rounding",
        ),
        (
            said(Money::from_minor(i64::MAX, currency("EUR")).times(2)),
            "product is too large: amounts reach about 9.2e18 minor units of the currency",
        ),
        (
            said(Margin::from_percent(100.into())),
            "invalid margin (got 100 % of the price): must be below 100 % of the price",
        ),
        (
            said(Markup::from_percent(number("-100"))),
            "invalid mark-up (got -100 % of the cost): must be above -100 and up to 1e12 % of the cost",
        ),
        (
            said(TaxRate::from_percent(number("-1"))),
            "invalid tax rate (got -1 % of the net price): must be from 0 to 1000 % of the net price",
        ),
        (
            said(product_cost(euros("1.00"), grams(0.0), grams(1.0), HALF_UP)),
            "invalid pack contents (got 0.000 g, mL or pieces): must be more than nothing",
        ),
        (
            said(product_cost(euros("-1.00"), grams(1.0), grams(1.0), HALF_UP)),
            "invalid pack price (got -1.00 EUR): must be nothing or more",
        ),
        (
            said(supply_cost(
                PackPrice::new(euros("1.00"), Volume::from_ml(60.0).unwrap()).unwrap(),
                grams(30.0),
                HALF_UP,
            )),
            "cannot take 30 g from a pack of 60 mL: give both by mass, both by volume or both as a count",
        ),
        (
            said(break_even(euros("1000.00"), euros("20.00"), euros("25.00"), HALF_UP)),
            "the target is never reached: each sale leaves -5.00 EUR, so raise the price or lower the cost of each sale",
        ),
        (
            said(discount_break_even(euros("50.00"), euros("30.00"), euros("30.00"), 10)),
            "the contribution before the offer is never reached: each sale leaves 0.00 EUR, so raise the price or lower \
             the cost of each sale",
        ),
        (
            said(rule(PriceTarget::Margin(Margin::from_percent(number("99.9")).unwrap())).price(euros("10.00"), None)),
            "no price reaches this: 102.28 % of every price is already promised (margin and card fee), which must stay \
             below 100 %",
        ),
        (said(allocate(euros("1.00"), &[])), "list of weights is empty: give at least one"),
        (
            said(allocate(euros("1.00"), &[number("-1"), number("2")])),
            "invalid weight (got -1 parts): must be nothing or more, and more than nothing for at least one share",
        ),
        (
            said(Labour::new(euros("15.00"), OnCosts::from_percent(20.into()).unwrap(), minutes(60.0), minutes(90.0))),
            "invalid productive time (got 90.000 min): must be more than nothing and at most the paid time of the same period",
        ),
        (
            said(Overhead::new(euros("1.00"), 0, minutes(60.0))),
            "invalid number of chairs (got 0 chairs): must be more than nothing",
        ),
        (
            said(PriceEnding::new(euros("1.00"), euros("1.00"))),
            "invalid price ending (got 1.00 EUR): must be from nothing to below the price step",
        ),
        (
            said(SetPrice::of(euros("0.00"), euros("10.00"))),
            "invalid cost (got 0.00 EUR): must be more than nothing: without a cost there is no margin to speak of",
        ),
        (
            said(rule(PriceTarget::PerChairHour(euros("45.00"))).price(euros("10.00"), None)),
            "invalid chair time (got 0.000 min): must be more than nothing, since the target is set for an hour of the chair",
        ),
        (
            said(quote_range(
                &parts(),
                &rule(PriceTarget::PerChairHour(euros("45.00"))),
                Some(Interval::exact(minutes(60.0))),
                Deposit::Percent(101.into()),
            )),
            "invalid deposit (got 101 % of the expected price): must be from 0 to 100 % of the expected price",
        ),
        (
            said(productivity(minutes(1.0), minutes(0.0), Denominator::PaidTime)),
            "invalid paid time (got 0.000 min): must be more than nothing",
        ),
        (said(average_bill(euros("1.00"), 0, HALF_UP)), "invalid number of guests (got 0 guests): must be at least 1"),
        (
            said(retail_share(euros("2.00"), euros("1.00"))),
            "invalid retail sales (got 2.00 EUR): must be at most all takings, services and retail together",
        ),
        (said(median_count(&[])), "list of counts is empty: give at least one"),
        (
            said(rent(90).break_even_takings(HALF_UP)),
            "no price reaches this: 105 % of every price is already promised (variable cost and commission), which must \
             stay below 100 %",
        ),
        (
            said(rent(100).break_even_takings(HALF_UP)),
            "invalid variable cost (got 100 % of the takings): must be from 0 to below 100 % of the takings",
        ),
        (
            said(commission_pay(
                euros("0.00"),
                &CommissionRule::Tiered(vec![
                    CommissionTier {
                        up_to: Some(euros("800.00")),
                        rate: CommissionRate::from_percent(8.into()).unwrap(),
                    },
                    CommissionTier {
                        up_to: Some(euros("700.00")),
                        rate: CommissionRate::from_percent(9.into()).unwrap(),
                    },
                ]),
                euros("900.00"),
                HALF_UP,
            )),
            "invalid commission tier (got 700.00 EUR): must be above the end of the tier before it; only the last tier has no end",
        ),
        (said(tax_rate(euros("0.00"), euros("1.00"))), "invalid net price (got 0.00 EUR): must be more than nothing"),
        (
            said(euros("1.00").percent_of(euros("0.00"))),
            "invalid whole (got 0.00 EUR): must be an amount other than nothing, to take a percentage of",
        ),
        (
            said(parse_decimal("price", "1e3")),
            "price \"1e3\" is not a decimal number: write digits with a point, for example 12.50",
        ),
        (
            said(parse_decimal("price", "1.2.3")),
            "price \"1.2.3\" is not a decimal number: write digits with a point, for example 12.50",
        ),
        // 28 digits, which 96 bits hold (2^96 is about 7.9e28), and one more.
        (
            said(parse_decimal("price", "0.00000000000000000000000000001")),
            "price \"0.00000000000000000000000000001\" has more digits than can be held: write at most 28",
        ),
        (
            said(parse_decimal("mass", &"9".repeat(60))),
            "mass \"9999999999999999999999999999999999999999\" has more digits than can be held: write at most 28",
        ),
    ];
    for (got, want) in rows {
        assert_eq!(got, want);
    }
    assert_eq!(parse_decimal("mass", &"9".repeat(28)).unwrap().to_string(), "9".repeat(28));
}
