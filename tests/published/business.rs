//! Discounts, commission, break-even, rates by the hour, productivity.

use crate::published::money::rows::{HALF_UP, check, money, number, stated, to_decimals};
use foilwork::quantity::Duration;
use foilwork::{
    business::{
        CommissionRule, CommissionTier, Denominator, MixedCost, SalesMixItem, best_number_to_hire, break_even,
        commission_pay, commission_rate, contribution, margin_of_safety, median_count, productivity, profit_at,
        profit_before_tax, sales_mix_profit, split_costs, target_profit, tip_percent,
    },
    money::{
        CommissionRate, Discount, Labour, Money, OnCosts, Overhead, ProfitTax, apply_discount, labour_per_minute,
        overhead_per_chair_hour, pay_per_hour, price_before_discount,
    },
};
use rust_decimal::Decimal;

fn hours(hours: f64) -> Duration {
    Duration::from_h(hours).unwrap()
}

fn off(percent: &str) -> Discount {
    Discount::from_percent(number(percent)).unwrap()
}

fn rate(percent: &str) -> CommissionRate {
    CommissionRate::from_percent(number(percent)).unwrap()
}

fn flat(percent: &str, takings: &str) -> Decimal {
    commission_pay(money("0"), &CommissionRule::Flat(rate(percent)), money(takings), HALF_UP)
        .unwrap()
        .commission
        .decimal()
}

#[test]
fn a_discount_comes_off_and_is_found_again() {
    let offer = apply_discount(money("80.00"), off("30"), HALF_UP).unwrap();
    check("W063", &[offer.off.decimal(), offer.after.decimal()]);
    check("W064", &[price_before_discount(money("450.00"), off("10"), HALF_UP).unwrap().before.decimal()]);
    check("W065", &[apply_discount(money("62.50"), off("10"), HALF_UP).unwrap().after.decimal()]);
}

#[test]
fn commission_is_flat_over_a_threshold_or_tiered() {
    check("W076", &[flat("12", "265.00")]);
    check("W079", &[flat("7", "3900.00")]);
    check("W080", &[commission_rate(money("451.00"), money("8200.00")).unwrap().percent()]);

    let over = CommissionRule::OverThreshold { threshold: money("500.00"), rate: rate("5") };
    let weeks = ["1540.00", "1235.00", "1040.00"];
    let pay = weeks.map(|week| commission_pay(money("120.00"), &over, money(week), HALF_UP).unwrap().total);
    check("W077", &[Money::total(pay, crate::published::money::rows::usd()).unwrap().decimal()]);

    let tiered = CommissionRule::Tiered(vec![
        CommissionTier { up_to: Some(money("800.00")), rate: rate("8") },
        CommissionTier { up_to: None, rate: rate("14") },
    ]);
    let pay = commission_pay(money("0"), &tiered, money("1300.00"), HALF_UP).unwrap();
    check("W078", &[pay.commission.decimal()]);
}

#[test]
fn the_salon_keeps_what_commission_leaves() {
    let takings = money("10.75").times(78).unwrap();
    let kept = takings.minus(money("0").plus(takings.percent(number("40"), HALF_UP).unwrap()).unwrap()).unwrap();
    check("W081", &[kept.decimal()]);
}

/// W082 prints its commission line as 606; the total it states, 1300, is right.
#[test]
fn a_retainer_stands_beside_the_commission() {
    let pay = commission_pay(money("700.00"), &CommissionRule::Flat(rate("3")), money("20000.00"), HALF_UP).unwrap();
    check("W082", &[pay.total.decimal()]);
    assert_ne!(pay.commission, money("606.00"), "the misprint");
}

#[test]
fn a_tip_is_a_part_of_the_bill() {
    check("W083", &[to_decimals(tip_percent(money("10.00"), money("55.00")).unwrap(), 0)]);
}

#[test]
fn break_even_covers_the_fixed_costs() {
    let even = |fixed: &str, price: &str, variable: &str| {
        break_even(money(fixed), money(price), money(variable), HALF_UP).unwrap()
    };
    let each = |price: &str, variable: &str| contribution(money(price), money(variable)).unwrap();
    let cuts = even("3000.00", "35.00", "20.00");
    check("W084", &[each("35.00", "20.00").each.decimal(), cuts.count.into()]);
    let units = even("18000.00", "100.00", "20.00");
    check("W085", &[units.count.into(), units.sales.decimal()]);

    // W088 gives the contribution of 250 and its ratio of 0.625: the price is 250 / 0.625 = 400.
    let jobs = even("14000.00", "400.00", "150.00");
    assert_eq!(each("400.00", "150.00").ratio_percent, number("62.5"));
    check("W088", &[jobs.count.into(), jobs.sales.decimal()]);
    check("W110", &[each("150.00", "60.00").ratio_percent]);
}

#[test]
fn a_target_profit_is_reached_before_and_after_tax() {
    let goal =
        |profit: &Money| target_profit(money("18000.00"), money("100.00"), money("20.00"), *profit, HALF_UP).unwrap();
    let units = goal(&money("16000.00"));
    check("W086", &[units.count.into(), units.sales.decimal()]);
    let before = profit_before_tax(money("24000.00"), ProfitTax::from_percent(40.into()).unwrap(), HALF_UP).unwrap();
    check("W087", &[before.decimal(), goal(&before).count.into()]);
    let needed = target_profit(money("960.00"), money("45.00"), money("0.00"), money("1200.00"), HALF_UP).unwrap();
    check("W108", &[needed.count.into()]);
}

#[test]
fn a_margin_of_safety_is_a_part_of_the_sales() {
    let safety = margin_of_safety(money("225000.00"), money("153000.00")).unwrap();
    check("W089", &[safety.amount.decimal(), safety.percent_of_sales]);
}

#[test]
fn mixed_costs_are_split_before_they_break_even() {
    let cost = |what: &str, fixed: &str, each: &str| MixedCost {
        what: what.to_owned(),
        fixed: money(fixed),
        each: money(each),
    };
    let (fixed, each) = split_costs(&[
        cost("four barbers", "5000.00", "4.50"),
        cost("manager", "500.00", "0"),
        cost("advertising", "200.00", "0"),
        cost("rent", "1100.00", "0"),
        cost("utilities", "175.00", "0.20"),
        cost("magazines", "25.00", "0"),
        cost("supplies", "0", "0.30"),
    ])
    .unwrap();
    let even = break_even(fixed, money("10.00"), each, HALF_UP).unwrap();
    let profit = profit_at(fixed, money("10.00"), each, 1600).unwrap();
    // The row names the 1,600 cuts in its question, not in its answer.
    check("W090", &[each.decimal(), fixed.decimal(), even.count.into(), even.sales.decimal(), profit.decimal()]);

    let (fixed, each) = split_costs(&[
        cost("manager and three barbers", "5700.00", "4.00"),
        cost("rent", "800.00", "0.60"),
        cost("depreciation, utilities, advertising", "1000.00", "0"),
        cost("supplies", "0", "0.40"),
    ])
    .unwrap();
    check("W092", &[each.decimal(), fixed.decimal()]);
    check("W093", &[money("4.00").times(40 * 50).unwrap().decimal()]);
}

/// W091 prints break-even sales worked out with the ratio cut to 0.44; the exact figure is 26,621.87.
#[test]
fn break_even_sales_do_not_come_from_a_rounded_ratio() {
    let even = break_even(money("11605.00"), money("11.47"), money("6.47"), HALF_UP).unwrap();
    let profit = profit_at(money("11605.00"), money("11.47"), money("6.47"), 2380).unwrap();
    let printed = stated("W091");
    assert_eq!((Decimal::from(even.count), profit.decimal()), (printed[0], printed[2]));
    assert_eq!((even.sales, even.sales_exact), (money("26621.87"), money("26621.87")));
    assert_ne!(even.sales.decimal(), printed[1]);
}

/// W094 takes the wage of an hour as the cost of a cut, and prints a contribution of 1.70.
#[test]
fn an_hourly_wage_is_no_unit_cost() {
    let printed = stated("W094");
    let confused = contribution(money("12.00"), money("9.90").plus(money("0.40")).unwrap()).unwrap();
    assert_eq!(confused.each.decimal(), printed[0], "how the misprint comes about");
    let right = contribution(money("12.00"), money("0.40")).unwrap();
    assert_eq!(right.each, money("11.60"), "with the wage among the fixed costs, as the comment of the row has it");
    // A wage is turned into a cost of minutes first, and then half an hour costs half of it.
    let labour =
        Labour::new(money("9.90"), OnCosts::from_percent(0.into()).unwrap(), hours(40.0), hours(40.0)).unwrap();
    assert_eq!(labour.cost(hours(0.5), HALF_UP).unwrap(), money("4.95"));
}

#[test]
fn a_mix_of_services_leaves_a_profit() {
    let sold = |what: &str, count: u32, price: &str| SalesMixItem {
        what: what.to_owned(),
        price: money(price),
        variable: money("0"),
        weight: count.into(),
    };
    let services = [sold("cut", 68, "40.00"), sold("colour", 34, "65.00"), sold("styling", 22, "30.00")];
    check("W095", &[sales_mix_profit(money("2843.00"), &services).unwrap().decimal()]);
}

#[test]
fn hiring_stops_where_the_last_one_no_longer_pays() {
    let cuts = [8, 16, 23, 29, 34, 38];
    check("W096", &[best_number_to_hire(&cuts, money("8.00"), money("60.00")).unwrap().into()]);
    check("W097", &[best_number_to_hire(&cuts, money("10.00"), money("40.00")).unwrap().into()]);
}

#[test]
fn overhead_is_spread_over_hours() {
    let rate = |cost: &str, h: f64| {
        let overhead = Overhead::new(money(cost), 1, hours(h)).unwrap();
        (overhead, overhead_per_chair_hour(&overhead).unwrap().per_unit)
    };
    check("W103", &[rate("2500000.00", 1_250_000.0).1]);
    let (overhead, _) = rate("560000.00", 160_000.0);
    check("W104", &[overhead.cost(hours(45_000.0), HALF_UP).unwrap().decimal()]);
}

/// W105 charges a part of 70 and 3 h at 80; its comment splits the 80 into wage, overhead and profit.
#[test]
fn a_job_is_charged_for_parts_and_hours() {
    let labour = Labour::new(money("80.00"), OnCosts::from_percent(0.into()).unwrap(), hours(1.0), hours(1.0)).unwrap();
    check("W105", &[money("70.00").plus(labour.cost(hours(3.0), HALF_UP).unwrap()).unwrap().decimal()]);
    let wage = Labour::new(money("25.00"), OnCosts::from_percent(0.into()).unwrap(), hours(1.0), hours(1.0)).unwrap();
    assert_eq!(wage.cost(hours(3.0), HALF_UP).unwrap(), money("75.00"), "the comment of the row");
    assert_eq!(to_decimals(labour_per_minute(&wage).unwrap().per_unit, 4), number("0.4167"));
}

#[test]
fn productivity_says_of_what() {
    let recorded = productivity(hours(30.0), hours(40.0), Denominator::RecordedTime).unwrap();
    check("W106", &[recorded.percent]);
    let standard = productivity(hours(50.0), hours(40.0), Denominator::StandardTime).unwrap();
    check("W107", &[standard.percent]);
    assert_eq!(standard.to_string(), "125 % of standard time");
}

#[test]
fn the_middle_day_and_the_pay_of_an_hour() {
    check("W109", &[median_count(&[18, 7, 12, 16, 20]).unwrap()]);
    for (paid, worked) in [("87.50", 7.0), ("50.00", 4.0), ("37.50", 3.0), ("100.00", 8.0)] {
        check("W111", &[pay_per_hour(money(paid), hours(worked)).unwrap().per_unit]);
    }
}

/// Source: CCH, Hairdressing trade sector guide: 40 to 55 % typical, up to about 70, down to about 30.
#[test]
fn a_productive_share_is_held_against_the_trade() {
    use foilwork::business::{BesideTrade, beside_trade};
    use foilwork::money::ProductiveShare;
    let share = |percent: &str| ProductiveShare::from_percent(number(percent)).unwrap();
    let places =
        ["29.9", "30", "39.9", "40", "55", "55.1", "70", "70.1"].map(|percent| beside_trade(share(percent)).value);
    use BesideTrade::{AboveAll, BelowAll, High, Low, Typical};
    assert_eq!(places, [BelowAll, Low, Low, Typical, Typical, High, High, AboveAll]);
    assert_eq!(beside_trade(share("50")).citation.map(|citation| citation.id), Some("cch-productive-hours"));
    let labour =
        Labour::new(money("15.00"), OnCosts::from_percent(0.into()).unwrap(), hours(40.0), hours(20.0)).unwrap();
    assert_eq!(beside_trade(labour.productive_share().unwrap()).value, Typical);
}
