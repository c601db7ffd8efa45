//! The edges of what is taken: on the edge an answer, a step beyond it the text with field, value, range and way out.

use crate::api::money::helpers::{HALF_UP, currency, euros, grams, minutes, number, parts, rent, rule, said};
use foilwork::{
    business::{
        ChairService, CommissionRule, CommissionTier, Denominator, Deposit, MixedCost, RentOrWage, SalesMixItem,
        StockLevel, average_bill, best_number_to_hire, commission_pay, commission_rate, contribution,
        contribution_per_chair_hour, discount_break_even, hiring_steps, margin_of_safety, median_count, productivity,
        profit_before_tax, quote_range, rank_by_chair_hour, retail_share, sales_mix_profit, sales_mix_target,
        share_tips, split_costs, target_profit, tip_percent,
    },
    money::{CommissionRate, Margin, Measure, Money, PriceTarget, ProfitTax},
};

fn rate(percent: &str) -> CommissionRate {
    CommissionRate::from_percent(number(percent)).unwrap()
}

fn dollars(text: &str) -> Money {
    Money::parse(text, currency("USD")).unwrap()
}

const MIXED: &str = "cannot put EUR and USD into one sum: convert one of them first, at a rate you state";

#[test]
fn break_even_ends_where_a_sale_leaves_nothing() {
    let goal = |fixed, price, variable, profit| {
        target_profit(euros(fixed), euros(price), euros(variable), euros(profit), HALF_UP)
    };
    // A cent of each sale pays 10.00 with a thousand.
    assert_eq!(goal("10", "5.00", "4.99", "0").unwrap().count, 1000);
    // Nothing to cover needs no sale.
    let none = goal("0", "5", "4", "0").unwrap();
    assert_eq!((none.count, none.sales, none.sales_exact, none.count_exact), (0, euros("0"), euros("0"), number("0")));
    let one = goal("0", "5", "4", "0.01").unwrap();
    assert_eq!((one.count, one.sales_exact, one.count_exact), (1, euros("0.05"), number("0.01")));
    let rows = [
        (
            said(goal("10", "5", "5", "0")),
            "the target is never reached: each sale leaves 0.00 EUR, so raise the price or lower the cost of each sale",
        ),
        (said(goal("-0.01", "5", "4", "0")), "invalid fixed costs (got -0.01 EUR): must be nothing or more"),
        (said(goal("0", "5", "4", "-0.01")), "invalid target profit (got -0.01 EUR): must be nothing or more"),
        (said(goal("0", "5", "-0.01", "0")), "invalid variable cost (got -0.01 EUR): must be nothing or more"),
        (said(contribution(euros("0"), euros("0"))), "invalid price (got 0.00 EUR): must be more than nothing"),
        (said(margin_of_safety(euros("0"), euros("1"))), "invalid sales (got 0.00 EUR): must be more than nothing"),
        (said(split_costs(&[])), "list of costs is empty: give at least one"),
        (said(split_costs(&[MixedCost { what: "rent".into(), fixed: euros("1"), each: dollars("1") }])), MIXED),
    ];
    for (got, want) in rows {
        assert_eq!(got, want);
    }
    // A loss already: 80 sold where 100 are needed are 25 % too little.
    let short = margin_of_safety(euros("80"), euros("100")).unwrap();
    assert_eq!((short.amount, short.percent_of_sales), (euros("-20"), number("-25")));
    // A tax of nothing takes nothing; 99.99 % leaves a hundredth of a hundredth.
    let before = |percent| profit_before_tax(euros("1"), ProfitTax::from_percent(number(percent)).unwrap(), HALF_UP);
    assert_eq!((before("0"), before("99.99")), (Ok(euros("1")), Ok(euros("10000"))));
}

#[test]
fn a_discount_may_leave_the_price_but_not_raise_it() {
    let at = |before, after, variable| discount_break_even(euros(before), euros(after), euros(variable), 40);
    let same = at("50", "50", "20").unwrap();
    assert_eq!((same.count_needed, same.extra_percent), (40, number("0")));
    assert_eq!(said(at("50", "50.01", "20")), "invalid reduced price (got 50.01 EUR): must be at most the full price");
    // One cent left of 30.00: three thousand times as many.
    assert_eq!(at("50", "20.01", "20").unwrap().count_needed, 120_000);
    assert!(at("50", "20.00", "20").is_err());
}

#[test]
fn commission_has_its_edges() {
    let pay = |rule: &CommissionRule, takings| commission_pay(euros("0"), rule, euros(takings), HALF_UP);
    let over = |threshold| CommissionRule::OverThreshold { threshold: euros(threshold), rate: rate("50") };
    let paid = |rule: &CommissionRule, takings| pay(rule, takings).unwrap().commission;
    assert_eq!(["99.99", "100", "100.02"].map(|takings| paid(&over("100"), takings)), ["0", "0", "0.01"].map(euros));
    assert_eq!(said(pay(&over("-1"), "1")), "invalid commission threshold (got -1.00 EUR): must be nothing or more");
    assert_eq!(said(pay(&over("0"), "-0.01")), "invalid takings (got -0.01 EUR): must be nothing or more");
    let tiers = |tiers: &[(Option<&str>, &str)]| {
        let tier =
            |(up_to, percent): &(Option<&str>, &str)| CommissionTier { up_to: up_to.map(euros), rate: rate(percent) };
        CommissionRule::Tiered(tiers.iter().map(tier).collect())
    };
    // 10 % to 100 and 50 % beyond: a cent beyond is half a cent more, and that is rounded once.
    let two = tiers(&[(Some("100"), "10"), (None, "50")]);
    assert_eq!(
        ["0", "0.10", "100", "100.01", "100.02"].map(|takings| paid(&two, takings)),
        ["0", "0.01", "10", "10.01", "10.01"].map(euros)
    );
    // Without an open end, nothing is paid beyond the last.
    let closed = tiers(&[(Some("100"), "10"), (Some("200"), "50")]);
    assert_eq!(["200", "900"].map(|takings| paid(&closed, takings)), ["60", "60"].map(euros));
    let says = "above the end of the tier before it; only the last tier has no end";
    for (bad, value) in [
        (tiers(&[(Some("0"), "10")]), "0.00"),
        (tiers(&[(Some("100"), "10"), (Some("100"), "20")]), "100.00"),
        (tiers(&[(None, "10"), (Some("300"), "20")]), "300.00"),
        // The end of an open tier is where the takings are.
        (tiers(&[(None, "10"), (None, "20")]), "150.00"),
    ] {
        assert_eq!(said(pay(&bad, "150")), format!("invalid commission tier (got {value} EUR): must be {says}"));
    }
    assert_eq!(said(pay(&tiers(&[]), "1")), "list of commission tiers is empty: give at least one");
    assert_eq!(
        said(commission_rate(euros("1"), euros("0"))),
        "invalid takings (got 0.00 EUR): must be more than nothing"
    );
    assert_eq!(commission_rate(euros("1"), euros("1")).unwrap(), rate("100"));
    assert_eq!(
        said(commission_rate(euros("1.01"), euros("1"))),
        "invalid commission (got 101 % of the takings): must be from 0 to 100 % of the takings"
    );
    assert_eq!(said(commission_pay(euros("0"), &over("0"), dollars("1"), HALF_UP)), MIXED);
}

#[test]
fn a_chair_has_its_edges() {
    let at = |of: RentOrWage| of.at(euros("100"), HALF_UP);
    let percent = |percent: &str| RentOrWage { variable_percent: number(percent), ..rent(0) };
    let says = "must be from 0 to below 100 % of the takings";
    assert!(at(percent("0")).is_ok() && at(percent("99.99")).is_ok());
    for bad in ["-0.01", "100"] {
        assert_eq!(said(at(percent(bad))), format!("invalid variable cost (got {bad} % of the takings): {says}"));
    }
    for (of, field) in [
        (RentOrWage { rent: euros("-0.01"), ..rent(0) }, "chair rent"),
        (RentOrWage { own_costs: euros("-0.01"), ..rent(0) }, "own costs"),
        (RentOrWage { wage: euros("-0.01"), ..rent(0) }, "wage"),
    ] {
        assert_eq!(said(at(of)), format!("invalid {field} (got -0.01 EUR): must be nothing or more"));
    }
    assert!(at(RentOrWage { wage: dollars("1"), ..rent(0) }).is_err());
    assert_eq!(said(rent(0).at(euros("-0.01"), HALF_UP)), "invalid takings (got -0.01 EUR): must be nothing or more");
    // 15 % of commission and 84.99 % of costs leave a hundredth of a percent: 730 over it.
    let last = percent("84.99").break_even_takings(HALF_UP).unwrap();
    assert_eq!(last, euros("7300000"));
    assert!(said(percent("85").break_even_takings(HALF_UP)).contains("100 % of every price is already promised"));
    let service =
        |min| ChairService { what: "cut".into(), price: euros("2"), variable: euros("5"), in_chair: minutes(min) };
    assert_eq!(
        said(contribution_per_chair_hour(&service(0.0))),
        "invalid chair time (got 0.000 min): must be more than nothing"
    );
    // A loss of 3.00 in ten minutes is one of 18.00 in an hour; it ranks behind nothing at all.
    assert_eq!(contribution_per_chair_hour(&service(10.0)).unwrap().per_chair_hour.to_string(), "-18 EUR/h");
    let named = |what: &str, min| ChairService { what: what.into(), ..service(min) };
    let ranked = rank_by_chair_hour(&[named("a", 10.0), named("b", 20.0), named("c", 10.0)]).unwrap();
    assert_eq!(ranked.iter().map(|one| one.what.as_str()).collect::<String>(), "bac", "equals keep their order");
    assert!(rank_by_chair_hour(&[]).unwrap().is_empty());
}

/// By hand: 8, 8 and 7 more at 10.00, for a wage of 75.00: 5, 5 and -5. Of two that leave the same, the more are hired.
#[test]
fn hiring_counts_step_by_step() {
    let steps = hiring_steps(&[8, 16, 23, 23, 20], euros("10"), euros("75")).unwrap();
    let told: Vec<_> = steps.iter().map(|step| (step.stylists, step.more_services, step.left.minor() / 100)).collect();
    assert_eq!(told, [(1, 8, 5), (2, 8, 5), (3, 7, -5), (4, 0, -75), (5, -3, -105)]);
    assert_eq!(steps[4].more_contribution, euros("-30"));
    let best = |services: &[u32], wage| best_number_to_hire(services, euros("10"), euros(wage)).unwrap();
    assert_eq!([best(&[8, 16, 23], "75"), best(&[8, 16, 23], "70"), best(&[8, 16, 23], "80.01")], [2, 3, 0]);
    // The second alone would not pay, the third makes up for both.
    assert_eq!(best(&[8, 10, 30], "75"), 3);
    assert_eq!(best(&[8], "80"), 1, "what pays its wage exactly is hired");
    assert_eq!(said(hiring_steps(&[], euros("1"), euros("1"))), "list of services is empty: give at least one");
    assert!(hiring_steps(&[1], euros("1"), dollars("1")).is_err());
}

#[test]
fn shares_and_averages_have_their_edges() {
    let half = productivity(minutes(0.001), minutes(0.002), Denominator::PaidTime).unwrap();
    assert_eq!(half.to_string(), "50 % of paid time");
    let shown = productivity(minutes(1.0), minutes(1600.0), Denominator::OpeningTime).unwrap();
    assert_eq!(shown.to_string(), "0.1 % of opening time", "0.0625, to one decimal half up");
    assert_eq!(average_bill(euros("0.05"), 2, HALF_UP).unwrap(), euros("0.03"));
    assert_eq!(average_bill(euros("7"), 1, HALF_UP).unwrap(), euros("7"));
    assert_eq!(retail_share(euros("2"), euros("2")).unwrap(), number("100"));
    assert_eq!(retail_share(euros("0"), euros("2")).unwrap(), number("0"));
    assert_eq!(
        said(retail_share(euros("-0.01"), euros("2"))),
        "invalid retail sales (got -0.01 EUR): must be nothing or more"
    );
    assert_eq!(said(retail_share(euros("0"), euros("0"))), "invalid takings (got 0.00 EUR): must be more than nothing");
    let middles: [&[u32]; 5] = [&[9], &[1, 2], &[5, 1, 3], &[4, 1, 3, 2], &[u32::MAX, u32::MAX]];
    let want = ["9", "1.5", "3", "2.5", "4294967295"].map(number);
    assert_eq!(middles.map(|counts| median_count(counts).unwrap()), want);
    assert_eq!(said(tip_percent(euros("-1"), euros("2"))), "invalid tip (got -1.00 EUR): must be nothing or more");
    assert_eq!(said(tip_percent(euros("1"), euros("0"))), "invalid bill (got 0.00 EUR): must be more than nothing");
    assert_eq!(said(share_tips(euros("-1"), &[minutes(1.0)])), "invalid tips (got -1.00 EUR): must be nothing or more");
    assert_eq!(said(share_tips(euros("1"), &[])), "list of weights is empty: give at least one");
    assert_eq!(
        said(share_tips(euros("1"), &[minutes(0.0)])),
        "invalid weight (got 0 parts): must be nothing or more, and more than nothing for at least one share"
    );
}

#[test]
fn a_deposit_has_its_edges() {
    let rule = rule(PriceTarget::Margin(Margin::from_percent(number("30")).unwrap()));
    let quote = |deposit| quote_range(&parts(), &rule, None, deposit);
    let taken = |deposit| quote(deposit).map(|quote| (quote.deposit, quote.balance));
    // 14.26 is expected, 10.73 the low end, worked by hand in `trails`.
    assert_eq!(taken(Deposit::Percent(number("0"))), Ok((euros("0"), euros("14.26"))));
    assert_eq!(taken(Deposit::Percent(number("75"))), Ok((euros("10.70"), euros("3.56"))));
    assert_eq!(taken(Deposit::Percent(number("100"))), Ok((euros("10.73"), euros("3.53"))));
    assert_eq!(taken(Deposit::Fixed(euros("10.72"))), Ok((euros("10.72"), euros("3.54"))));
    assert_eq!(taken(Deposit::Fixed(euros("10.74"))), Ok((euros("10.73"), euros("3.53"))));
    let says = "must be from 0 to 100 % of the expected price";
    for bad in ["-0.01", "100.01"] {
        let said = said(quote(Deposit::Percent(number(bad))));
        assert_eq!(said, format!("invalid deposit (got {bad} % of the expected price): {says}"));
    }
    assert_eq!(said(quote(Deposit::Fixed(euros("-0.01")))), "invalid deposit (got -0.01 EUR): must be nothing or more");
    assert!(quote(Deposit::Fixed(dollars("1"))).is_err());
    assert_eq!(
        said(quote_range(&[], &rule, None, Deposit::Fixed(euros("0")))),
        "list of parts is empty: give at least one"
    );
}

#[test]
fn a_mix_has_its_edges() {
    let item = |price, variable, weight: &str| SalesMixItem {
        what: "cut".into(),
        price: euros(price),
        variable: euros(variable),
        weight: number(weight),
    };
    let plan = |items: &[SalesMixItem]| sales_mix_target(euros("10"), euros("0"), items);
    // 2 x 3.00 and a loss of 1 x 5.99 leave a cent for three.
    assert_eq!(plan(&[item("4", "1", "2"), item("0.01", "6", "1")]).unwrap().count, 3000);
    let rows = [
        (said(plan(&[])), "service mix is empty: give at least one"),
        (
            said(plan(&[item("4", "1", "2"), item("0", "6", "1")])),
            "the target is never reached: each sale leaves 0.00 EUR, so raise the price or lower the cost of each sale",
        ),
        (
            said(plan(&[item("4", "1", "-1")])),
            "invalid weight (got -1 parts): must be nothing or more, and more than nothing for at least one share",
        ),
        (
            said(plan(&[item("4", "1", "0")])),
            "invalid weight (got 0 parts): must be nothing or more, and more than nothing for at least one share",
        ),
        (
            said(sales_mix_target(euros("-1"), euros("0"), &[item("4", "1", "1")])),
            "invalid fixed costs (got -1.00 EUR): must be nothing or more",
        ),
        (
            said(sales_mix_target(euros("0"), euros("-1"), &[item("4", "1", "1")])),
            "invalid target profit (got -1.00 EUR): must be nothing or more",
        ),
        (
            said(sales_mix_profit(euros("0"), &[item("0.01", "0", "0.5")])),
            "0.005 EUR has more than 2 decimals: round it first, and name the rounding",
        ),
    ];
    for (got, want) in rows {
        assert_eq!(got, want);
    }
    let two = plan(&[item("4", "1", "1"), item("10", "1", "0.5")]).unwrap();
    // 3.00 and half of 9.00 are 7.50 for one and a half: 5.00 each, two of them in all, and one and a third of each.
    assert_eq!((two.average_contribution.to_string(), two.count_exact), ("5 EUR/service".into(), number("2")));
    assert_eq!(two.services.iter().map(|line| line.count).collect::<Vec<_>>(), [2, 1]);
    assert_eq!((two.sales, two.left_over), (euros("18"), euros("5")));
}

#[test]
fn a_shelf_has_its_edges() {
    let count = Measure::Count;
    let shelf = |on_hand, on_order| StockLevel {
        on_hand: count(on_hand),
        on_order: count(on_order),
        daily_use: count(10),
        reserve: count(5),
    };
    let order = |shelf: StockLevel| {
        let order = shelf.reorder(2, 3, count(50)).unwrap();
        (order.due, order.packs)
    };
    // At 25 it is due, and 55 are wanted: 30 to 55 short.
    assert_eq!(
        [order(shelf(26, 0)), order(shelf(25, 0)), order(shelf(20, 5)), order(shelf(20, 6))],
        [(false, 0), (true, 1), (true, 1), (false, 0),]
    );
    assert_eq!([order(shelf(5, 0)), order(shelf(4, 0))], [(true, 1), (true, 2)], "50 and 51 short");
    // Nothing to cover beyond the point: at the point itself, nothing is short.
    assert_eq!(shelf(25, 0).reorder(2, 0, count(50)).unwrap().packs, 0);
    let other = "cannot take 4 pieces from a pack of 50 g: give both by mass, both by volume or both as a count";
    assert_eq!(said(shelf(4, 0).reorder(2, 3, Measure::Mass(grams(50.0)))), other);
    assert_eq!(
        said(shelf(4, 0).reorder(2, 3, count(0))),
        "invalid pack contents (got 0 g, mL or pieces): must be more than nothing"
    );
    let grams = Measure::Mass(grams(1.0));
    for mixed in [
        StockLevel { on_order: grams, ..shelf(4, 0) },
        StockLevel { reserve: grams, ..shelf(4, 0) },
        StockLevel { daily_use: grams, reserve: grams, ..shelf(4, 0) },
    ] {
        assert!(mixed.reorder(2, 3, count(50)).is_err(), "{mixed:?}");
    }
    assert!(StockLevel { daily_use: grams, ..shelf(4, 0) }.days().is_err());
}
