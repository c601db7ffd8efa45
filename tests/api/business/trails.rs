//! How the answers about the running of a salon come about: each line with its numbers, worked by hand.

use crate::api::{
    common::school,
    money::helpers::{HALF_UP, euros, grams, minutes, number, parts, rent, rule},
};
use foilwork::{
    business::{
        CommissionRule, CommissionTier, Denominator, Deposit, SalesMixItem, StockLevel, quote_range, sales_mix_target,
        trace_commission, trace_discount, trace_productivity, trace_sales_mix, trace_target_profit, trace_tips,
    },
    money::{CommissionRate, Margin, Markup, Measure, PriceTarget, SetPrice, trace_margin, trace_markup},
    source::{Basis, Interval, TracedResult},
};

/// What it is, its line with the numbers (or the formula where it has none), its value.
fn told(one: &TracedResult) -> String {
    let how = one.worked.as_deref().unwrap_or(&one.formula);
    format!("{}: {how} = {} {}", one.what, one.value, one.unit)
}

fn all(trail: &[TracedResult]) -> Vec<String> {
    for one in trail {
        // "up" is a word of the formula, and the arithmetic behind it is that of school.
        let line = one.worked.as_deref().map(|line| line.strip_prefix("up ").unwrap_or(line));
        if let Some(found) = line.and_then(school) {
            let (value, part): (f64, bool) = (one.value.parse().unwrap(), one.unit.starts_with('%'));
            let found = if part && (found - value).abs() > 1e-4 { 100.0 * found } else { found };
            let up = one.worked.as_deref().is_some_and(|line| line.starts_with("up "));
            let within = if up { 0.0..=1.0 } else { -0.005..=0.005 };
            assert!(within.contains(&(value - found)), "{}: {found}", told(one));
        }
    }
    trail.iter().map(told).collect()
}

fn rate(percent: &str) -> CommissionRate {
    CommissionRate::from_percent(number(percent)).unwrap()
}

/// (3000 + 1010) / (35 - 20) is 267.33: 268 sales take 9380.00; 267.33 of them would take 9356.67.
#[test]
fn a_goal_is_worked_from_what_was_stated() {
    let half_up = HALF_UP;
    let trail = trace_target_profit(euros("3000"), euros("35"), euros("20"), euros("1010"), half_up).unwrap();
    assert_eq!(
        all(&trail),
        [
            "sales needed: up ((3000.00 + 1010.00) / (35.00 - 20.00)) = 268 sales",
            "their net takings: 268 x 35.00 = 9380.00 EUR",
            "net takings that meet the goal exactly: (3000.00 + 1010.00) x 35.00 / (35.00 - 20.00) = 9356.67 EUR",
        ]
    );
    assert!(trail[0].inputs.iter().all(|input| input.basis == Some(Basis::Stated)));
}

/// Two sorts leave 100 and 30, sold 1 to 2: 3205 are 20.03 times 160, so 21 and 41.
#[test]
fn a_mix_is_the_sum_of_its_lines() {
    let item = |what: &str, price, variable, weight: i64| SalesMixItem {
        what: what.into(),
        price: euros(price),
        variable: euros(variable),
        weight: weight.into(),
    };
    let mix = [item("foils", "120", "20", 1), item("toner", "35", "5", 2)];
    let plan = sales_mix_target(euros("3200"), euros("5"), &mix).unwrap();
    assert_eq!(
        all(&trace_sales_mix(&plan)),
        [
            "sales needed: 21 + 41 = 62 sales",
            // 21 x 120 and 41 x 35.
            "their net takings: 2520.00 + 1435.00 = 3955.00 EUR",
        ]
    );
    // 21 x 100 + 41 x 30 - 3205.
    assert_eq!(plan.left_over, euros("125.00"));
}

/// 30 left of each before and 25 after: 41 x 30 / 25 is 49.2, and 5 / 25 are 20 %.
#[test]
fn a_discount_is_worked_from_what_each_sale_leaves() {
    let trail = trace_discount(euros("50"), euros("45"), euros("20"), 41).unwrap();
    assert_eq!(
        all(&trail),
        [
            "left by each sale: 50.00 - 20.00 = 30.00 EUR",
            "left by each with the discount: 45.00 - 20.00 = 25.00 EUR",
            "sales needed: up (41 x (50.00 - 20.00) / (45.00 - 20.00)) = 50 sales",
            "more sales: (50.00 - 45.00) / (45.00 - 20.00) x 100 = 20 % of the sales before",
        ]
    );
}

/// By hand: 12.5 % of 1234.56 is 154.32; 5 % over 500 of 1540 is 52; 8 % to 800, 10 % to 2000, 14 % beyond.
#[test]
fn commission_is_worked_slice_by_slice() {
    let pay = |rule: &CommissionRule, takings| {
        let trail = trace_commission(euros("480"), rule, euros(takings), HALF_UP).unwrap();
        assert_eq!(trail[0].sources.len(), 1);
        all(&trail)
    };
    assert_eq!(
        pay(&CommissionRule::Flat(rate("12.5")), "1234.56"),
        ["commission: 1234.56 x (12.5 / 100) = 154.32 EUR", "pay: 480.00 + 154.32 = 634.32 EUR",]
    );
    let over = CommissionRule::OverThreshold { threshold: euros("500"), rate: rate("5") };
    assert_eq!(pay(&over, "1540")[0], "commission: largest (0, 1540.00 - 500.00) x (5 / 100) = 52.00 EUR");
    assert_eq!(pay(&over, "499.99")[0], "commission: largest (0, 499.99 - 500.00) x (5 / 100) = 0.00 EUR");
    let tier = |up_to: Option<&str>, percent| CommissionTier { up_to: up_to.map(euros), rate: rate(percent) };
    let tiers = CommissionRule::Tiered(vec![tier(Some("800"), "8"), tier(Some("2000"), "10"), tier(None, "14.0")]);
    let slices = [
        ("0", "0 = 0.00"),
        ("799", "(799.00 - 0) x 8 / 100 = 63.92"),
        ("800", "(800.00 - 0) x 8 / 100 = 64.00"),
        ("1300", "(800.00 - 0) x 8 / 100 + (1300.00 - 800.00) x 10 / 100 = 114.00"),
        ("2500", "(800.00 - 0) x 8 / 100 + (2000.00 - 800.00) x 10 / 100 + (2500.00 - 2000.00) x 14 / 100 = 254.00"),
    ];
    for (takings, want) in slices {
        assert_eq!(pay(&tiers, takings)[0], format!("commission: {want} EUR"));
    }
    let trail = trace_commission(euros("480"), &tiers, euros("1300"), HALF_UP).unwrap();
    let given: Vec<_> =
        trail[0].inputs.iter().map(|input| format!("{} {} {}", input.what, input.value, input.unit)).collect();
    assert_eq!(
        given,
        [
            "takings 1300.00 EUR",
            "slice 1 ends 800.00 EUR",
            "rate of slice 1 8 % of the takings",
            "slice 2 ends 2000.00 EUR",
            "rate of slice 2 10 % of the takings",
            "rate of slice 3 14 % of the takings",
        ]
    );
}

/// 8, 8 and 5 h of 21: 50.00 are 19.05, 19.05 and 11.90.
#[test]
fn tips_are_worked_by_the_hour() {
    let trail = trace_tips(euros("50"), &[minutes(480.0), minutes(480.0), minutes(300.0)]).unwrap();
    assert_eq!(
        all(&trail),
        [
            "share of person 1: 50.00 x 8 / (8 + 8 + 5) = 19.05 EUR",
            "share of person 2: 50.00 x 8 / (8 + 8 + 5) = 19.05 EUR",
            "share of person 3: 50.00 x 5 / (8 + 8 + 5) = 11.90 EUR",
        ]
    );
    let given: Vec<_> =
        trail[2].inputs.iter().map(|input| format!("{} {} {}", input.what, input.value, input.unit)).collect();
    assert_eq!(given, ["tips 50.00 EUR", "hours 5 h", "all hours 21 h"]);
}

/// By hand: 1500 less 12 % (180), 200 and 50 are 1070; 480 and 15 % (225) are 705; 730 / (1 - 0.27) is 1000.
#[test]
fn rent_and_wage_are_worked_from_the_takings() {
    let trail = rent(12).trail(euros("1500"), HALF_UP).unwrap();
    assert_eq!(
        all(&trail),
        [
            "left when renting: 1500.00 - 1500.00 x (12 / 100) - 200.00 - 50.00 = 1070.00 EUR",
            "earned when employed: 480.00 + 1500.00 x (15 / 100) = 705.00 EUR",
            "takings at which both leave the same: (200.00 + 50.00 + 480.00) / (1 - (12 / 100) - (15 / 100)) = 1000.00 EUR",
        ]
    );
    // At those takings, both leave 630.
    let at = rent(12).at(euros("1000"), HALF_UP).unwrap();
    assert_eq!((at.renting, at.employed, at.difference), (euros("630"), euros("630"), euros("0")));
}

#[test]
fn productivity_is_worked_in_minutes() {
    let one = trace_productivity(minutes(1470.0), minutes(2400.0), Denominator::RosteredTime).unwrap();
    assert_eq!(all(&[one]), ["productivity: 1470 / 2400 x 100 = 61.25 % of rostered time"]);
}

/// 25 % of the price is a third of the cost, and back.
#[test]
fn margin_and_markup_are_worked_from_each_other() {
    let margin = trace_markup(Margin::from_percent(number("25")).unwrap()).unwrap();
    let markup = trace_margin(Markup::from_percent(number("60")).unwrap()).unwrap();
    assert_eq!(
        all(&[margin, markup]),
        [
            "mark-up: (25 / 100) / (1 - (25 / 100)) x 100 = 33.333333 % of the cost",
            "margin: (60 / 100) / (1 + (60 / 100)) x 100 = 37.5 % of the price",
        ]
    );
    let set = SetPrice::of(euros("75"), euros("100")).unwrap();
    let asked = PriceTarget::Margin(Margin::from_percent(number("25")).unwrap());
    assert_eq!(
        all(&set.trail(Some(asked))),
        [
            "net price: 75.00 / (1 - (25 / 100)) = 100.00 EUR",
            "profit: 100.00 - 75.00 = 25.00 EUR",
            "margin: 25.00 / 100.00 x 100 = 25 % of the price",
            "mark-up: 25.00 / 75.00 x 100 = 33.333333 % of the cost",
        ]
    );
    let asked = PriceTarget::Markup(Markup::from_percent(number("60")).unwrap());
    let set = SetPrice::of(euros("75"), euros("120")).unwrap();
    assert_eq!(all(&set.trail(Some(asked)))[0], "net price: 75.00 x (1 + (60 / 100)) = 120.00 EUR");
    assert_eq!(all(&set.trail(None)).len(), 3);
}

/// 5 days at 120 g and 300 are 900; 14 more are 2580, and 1680 are missing with 900 there: four packs of 500.
#[test]
fn an_order_is_worked_from_the_shelf() {
    let g = |of: f64| Measure::Mass(grams(of));
    let shelf = |on_hand: f64, daily: f64| StockLevel {
        on_hand: g(on_hand),
        on_order: g(60.0),
        daily_use: g(daily),
        reserve: g(300.0),
    };
    assert_eq!(
        all(&shelf(840.0, 120.0).trail(5, 14, g(500.0)).unwrap()),
        [
            "point at which to order: 120 x 5 + 300 = 900 g",
            "packs to order: up ((120 x (5 + 14) + 300 - 840 - 60) / 500) = 4 packs",
            "the stock on hand lasts: 840 / 120 = 7 days",
        ]
    );
    assert_eq!(
        all(&shelf(841.0, 120.0).trail(5, 14, g(500.0)).unwrap())[1..],
        [
            "packs to order: none while on hand + on order exceed the point at which to order = 0 packs",
            "the stock on hand lasts: 841 / 120 = 7.0083333333333333333333333333 days",
        ]
    );
    // Without any use there are no days; what is below the reserve is filled up all the same.
    assert_eq!(
        all(&shelf(100.0, 0.0).trail(5, 14, g(500.0)).unwrap()),
        [
            "point at which to order: 0 x 5 + 300 = 300 g",
            "packs to order: up ((0 x (5 + 14) + 300 - 100 - 60) / 500) = 1 packs",
        ]
    );
}

/// By hand: 2 % of 1.19 N and 0.10 of a card, and 30 % for the salon: N = (8.00 + 0.10) / (1 - 0.30 - 0.0238) = 11.98.
/// Half of 14.26 in advance would be 7.13: it is less than the low end (6.10 / 0.6762 is 9.02, with tax 10.73).
#[test]
fn a_quotation_is_worked_from_its_parts() {
    let rule = rule(PriceTarget::Margin(Margin::from_percent(number("30")).unwrap()));
    let quote = quote_range(&parts(), &rule, None, Deposit::Percent(number("50"))).unwrap();
    let trail = quote.trail(&parts(), &rule, None);
    assert_eq!(
        all(&trail),
        [
            "cost: 6.00 + 2.00 = 8.00 EUR",
            "net price: (8.00 + 0.10) / (1 - (30 / 100) - (2 / 100) x (1 + (19 / 100))) = 11.98 EUR",
            "gross price: 11.98 + 2.28 = 14.26 EUR",
            "then to pay: 14.26 - 7.13 = 7.13 EUR",
        ]
    );
    let ends = |low: &str, high: &str| Some([low.to_owned(), high.to_owned()]);
    // (12.00 + 0.10) / 0.6762 is 17.89, with tax 21.29.
    let bounds: Vec<_> = trail.iter().map(|one| one.bounds.clone()).collect();
    assert_eq!(bounds, [ends("6.00", "12.00"), ends("9.02", "17.89"), ends("10.73", "21.29"), ends("3.60", "14.16")]);
    let given: Vec<_> = trail[0].inputs.iter().map(|input| input.bounds.clone()).collect();
    assert_eq!(given, [ends("4.00", "10.00"), None]);
    assert_eq!(trail[3].inputs[0].bounds, ends("10.73", "21.29"));
    let none = quote_range(&parts(), &rule, None, Deposit::Percent(number("0"))).unwrap();
    assert_eq!(none.trail(&parts(), &rule, None).len(), 3, "nothing in advance, no line for the rest");
    // By the hour: 45.00 for 90 min are 67.50, and (8.00 + 0.10 + 67.50) / (1 - 0.0238) are 77.44.
    let hourly = foilwork::money::PriceRule { target: PriceTarget::PerChairHour(euros("45")), ..rule };
    let time = Some(Interval::new(minutes(60.0), minutes(90.0), minutes(150.0)).unwrap());
    let quote = quote_range(&parts(), &hourly, time, Deposit::Percent(number("0"))).unwrap();
    assert_eq!(
        all(&quote.trail(&parts(), &hourly, time))[1],
        "net price: (8.00 + 0.10 + 45.00 x 90 / 60) / (1 - (2 / 100) x (1 + (19 / 100))) = 77.44 EUR"
    );
}
