//! Cost tables, price rules, quotes, stock.

use super::helpers::{HALF_UP, currency, euros, grams, minutes, number, parts, rule};
use foilwork::source::{Basis, Interval};
use foilwork::{
    business::{Deposit, QuotePart, StockLevel, quote_range},
    money::{
        CardFee, CardRate, CostEntry, CostKind, CostLine, CostSource, CostTable, Labour, Margin, Markup, Measure,
        Money, OnCosts, Overhead, PackPrice, PriceEnding, PriceRule, PriceTarget, ServiceCost, TaxRate, Toward,
        compare, cost_line,
    },
    quantity::Volume,
};
use rstest::rstest;
use rust_decimal::Decimal;

#[test]
fn a_service_reports_every_line_that_cannot_be_costed() {
    let mut service = ServiceCost::new(currency("EUR"), HALF_UP);
    let supply = |what: &str, pack: Measure, used: Measure| {
        let source = CostSource::Supply { pack: PackPrice::new(euros("10.00"), pack).unwrap(), used, wasted: None };
        CostEntry::new(CostKind::Product, what, Basis::Measured, source)
    };
    service.entries.push(supply("developer", Measure::Mass(grams(1000.0)), Measure::Count(1)));
    service.entries.push(supply("toner", Measure::Mass(grams(60.0)), Measure::Mass(grams(30.0))));
    let less = CostSource::Stated(euros("-1.00"));
    service.entries.push(CostEntry::new(CostKind::Laundry, "towels", Basis::Stated, less));
    let errors: Vec<_> = service.table().unwrap_err().iter().map(ToString::to_string).collect();
    assert_eq!(
        errors,
        [
            "developer: cannot take 1 piece from a pack of 1000 g: give both by mass, both by volume or both as a count",
            "towels: invalid cost (got -1.00 EUR): must be nothing or more",
        ]
    );
}

#[test]
fn planned_and_actual_cost_are_compared_by_kind() {
    let table = |lines: &[(CostKind, &str)]| {
        let mut table = CostTable::new(currency("EUR"));
        for (part, amount) in lines {
            table.push(CostLine::new(*part, "line", Basis::Derived, euros(amount))).unwrap();
        }
        table
    };
    let planned = table(&[(CostKind::Product, "6.00"), (CostKind::Labour, "30.00")]);
    let actual = table(&[(CostKind::Labour, "34.50"), (CostKind::Product, "5.10"), (CostKind::Laundry, "0.90")]);
    let seen: Vec<_> =
        compare(&planned, &actual).unwrap().iter().map(|row| (row.kind, row.difference.to_string())).collect();
    assert_eq!(
        seen,
        [
            (CostKind::Product, "-0.90 EUR".to_string()),
            (CostKind::Laundry, "0.90 EUR".to_string()),
            (CostKind::Labour, "4.50 EUR".to_string()),
        ]
    );
    assert_eq!(planned.rounding_bound(), number("0.01"), "two lines, half a cent each");
    assert_eq!(planned.basis(), Some(Basis::Derived));
    assert_eq!(actual.shares()[0].share_percent, number("85.2"), "34.50 of 40.50");
}

/// By hand: 45 for an hour over 12.00 in 80 min is 72.00 and the fee; 0.02 of 1.19 N and 0.10 make N = 72.10 / 0.9762.
#[test]
fn an_hourly_target_pays_for_the_chair() {
    let price = rule(PriceTarget::PerChairHour(euros("45.00"))).price(euros("12.00"), Some(minutes(80.0))).unwrap();
    assert_eq!(price.target_net, euros("73.86"));
    assert_eq!((price.taxed.tax, price.taxed.gross), (euros("14.03"), euros("87.89")));
    assert_eq!(price.card_fee, euros("1.86"), "0.02 x 87.89 + 0.10");
    assert_eq!(price.per_chair_hour.map(|hour| hour.to_string()), Some("45 EUR/h".into()), "60.00 in 80 min");
}

/// A tax of 19 % on 112.18 is 21.3142; with it 133.49, which the list makes 133.50. Of these 19/119 or 21.3151 is tax, so that the
/// net price is 112.18 again: the list has moved the price all the same.
#[rstest]
#[case("112.18", true, ["112.18", "21.32", "133.50"])]
#[case("112.19", false, ["112.19", "21.32", "133.51"])]
fn a_price_is_moved_where_its_gross_is(#[case] cost: &str, #[case] moved: bool, #[case] want: [&str; 3]) {
    let step =
        |ending: &str, step: &str| Some((PriceEnding::new(euros(step), euros(ending)).unwrap(), Toward::Nearest));
    let rule = PriceRule {
        tax: TaxRate::from_percent(19.into()).unwrap(),
        card: None,
        ending: if moved { step("0.50", "1.00") } else { step("0.01", "0.50") },
        ..rule(PriceTarget::Markup(Markup::from_percent(0.into()).unwrap()))
    };
    let found = rule.price(euros(cost), None).unwrap();
    assert_eq!([found.taxed.net, found.taxed.tax, found.taxed.gross], want.map(euros));
    assert_eq!((found.moved, found.target_net), (moved, euros(cost)));
}

#[test]
fn a_listed_price_is_judged_by_the_same_rule() {
    let rule = rule(PriceTarget::Margin(Margin::from_percent(30.into()).unwrap()));
    let listed = rule.check(euros("40.00"), euros("59.50"), None).unwrap();
    assert_eq!((listed.taxed.net, listed.card_fee), (euros("50.00"), euros("1.29")));
    assert_eq!(listed.set.profit, euros("8.71"));
    assert!(listed.taxed.net < listed.target_net, "the list price misses the target");
}

#[test]
fn a_deposit_never_exceeds_the_low_end() {
    let hourly = rule(PriceTarget::PerChairHour(euros("45.00")));
    let time = Interval::new(minutes(60.0), minutes(90.0), minutes(150.0)).unwrap();
    let quote = quote_range(&parts(), &hourly, Some(time), Deposit::Fixed(euros("500.00"))).unwrap();
    assert_eq!(quote.deposit, quote.low.taxed.gross);
    assert_eq!(quote.drivers[0].what, "time in the chair");
    let shares: Option<Decimal> = quote.drivers.iter().map(|driver| driver.share_percent).sum();
    assert_eq!(shares, Some(Decimal::ONE_HUNDRED));
    assert!(quote.low.taxed.gross < quote.best.taxed.gross && quote.best.taxed.gross < quote.high.taxed.gross);
    let fixed = quote_range(
        &parts()[1..],
        &rule(PriceTarget::Margin(Margin::from_percent(30.into()).unwrap())),
        None,
        Deposit::Percent(0.into()),
    )
    .unwrap();
    assert_eq!((fixed.low.taxed.gross, fixed.drivers[0].share_percent), (fixed.high.taxed.gross, None));
}

#[test]
fn stock_is_ordered_when_it_is_due() {
    let count = Measure::Count;
    let foils =
        |on_hand| StockLevel { on_hand: count(on_hand), on_order: count(0), daily_use: count(60), reserve: count(120) };
    assert_eq!(foils(900).days().unwrap(), Some(15.into()));
    let quiet = foils(421).reorder(5, 20, count(500)).unwrap();
    assert_eq!((quiet.reorder_point, quiet.due, quiet.packs), (420.into(), false, 0));
    let due = foils(420).reorder(5, 20, count(500)).unwrap();
    // Up to 25 days at 60 and 120 = 1620: 1200 short, three packs of 500.
    assert_eq!((due.due, due.packs, due.unit), (true, 3, "piece"));
    let idle = StockLevel { daily_use: count(0), ..foils(10) };
    assert_eq!(idle.days().unwrap(), None);
}

/// By hand: twice a cost of 30 to 44, expected 34, is 60 to 88, expected 68; the next prices of the list are 64.90, 69.90 and 89.90.
/// Only what is asked for has bounds: the prices of the list, the tax and the direction have none. All of it is assumed, as the cost is.
#[test]
fn bounds_and_basis_of_a_quote_stand_where_they_belong() {
    let cost = Interval::new(euros("30.00"), euros("34.00"), euros("44.00")).unwrap();
    let parts = [QuotePart { what: "hands-on time".into(), cost, basis: Basis::Assumed }];
    let ending = PriceEnding::new(euros("5.00"), euros("4.90")).unwrap();
    let ends = |low: &str, high: &str| Some([low.to_owned(), high.to_owned()]);
    // With 19 % tax: 11.40 on 60 and 16.72 on 88.
    let cases = [
        (Some((ending, Toward::Up)), 0, None, ends("64.90", "89.90")),
        (None, 0, None, ends("60.00", "88.00")),
        (None, 19, ends("11.40", "16.72"), ends("71.40", "104.72")),
    ];
    for (ending, tax, tax_ends, gross_ends) in cases {
        let rule = PriceRule {
            target: PriceTarget::Markup(Markup::from_percent(100.into()).unwrap()),
            tax: TaxRate::from_percent(tax.into()).unwrap(),
            card: None,
            ending,
            rounding: HALF_UP,
        };
        let quote = quote_range(&parts, &rule, None, Deposit::Percent(0.into())).unwrap();
        let trail = quote.trail(&parts, &rule, None);
        assert!(trail.iter().all(|one| one.basis == Basis::Assumed), "{trail:?}");
        let gross = trail.iter().find(|one| one.what == "gross price").unwrap();
        assert_eq!(gross.bounds, gross_ends);
        for input in &gross.inputs {
            let want = match input.what.as_str() {
                "net" | "net price that is asked for" => ends("60.00", "88.00"),
                "tax" => tax_ends.clone(),
                _ => None,
            };
            assert_eq!(input.bounds, want, "{}", input.what);
        }
    }
}

/// A line of time or of a payment is named by its kind, since its words are those of every such line.
#[test]
fn a_line_that_is_no_product_is_named_by_its_kind() {
    let most = Money::from_minor(i64::MAX, currency("EUR"));
    let none = OnCosts::from_percent(0.into()).unwrap();
    let labour = Labour::new(most, none, minutes(60.0), minutes(60.0)).unwrap();
    let fee = CardFee::new(CardRate::from_percent(1.into()).unwrap(), most).unwrap();
    let mut service = ServiceCost::new(currency("EUR"), HALF_UP);
    service.entries = vec![
        CostEntry::labour(labour, minutes(120.0), Basis::Stated),
        CostEntry::overhead(Overhead::per_hour(most).unwrap(), minutes(61.0), Basis::Stated),
        CostEntry::card_fee(fee, euros("100")),
        CostEntry::new(CostKind::Other, "parking", Basis::Stated, CostSource::Stated(euros("-1"))),
    ];
    let named: Vec<_> = service.table().unwrap_err().into_iter().map(|error| error.line).collect();
    assert_eq!(named, ["labour", "overhead", "card fee", "parking"]);
    // What fits is a line with its section and its bowl.
    let crown = CostEntry {
        section: Some("crown".into()),
        bowl: Some("A".into()),
        ..CostEntry::labour(labour, minutes(0.0), Basis::Measured)
    };
    service.entries = vec![crown];
    let table = service.table().unwrap();
    let line = &table.lines()[0];
    assert_eq!((line.kind, line.what.as_str(), line.basis), (CostKind::Labour, "hands-on time", Basis::Measured));
    assert_eq!((line.section.as_deref(), line.bowl.as_deref()), (Some("crown"), Some("A")));
}

/// 60 mL at 6.00, of which 20 are used and 10 wasted, are 3.00; 7 and 5 of 100 foils at 5.00 are 0.60; 40 g and 5 of 500 at 26.40 are
/// 2.376.
#[test]
fn what_is_wasted_is_paid_too_in_any_measure() {
    let ml = |ml| Measure::from(Volume::from_ml(ml).unwrap());
    let cost = |price: &str, pack: Measure, used: Measure, wasted: Option<Measure>| {
        let pack = PackPrice::new(euros(price), pack).unwrap();
        cost_line(&CostSource::Supply { pack, used, wasted }, HALF_UP)
    };
    assert_eq!(cost("6.00", ml(60.0), ml(20.0), Some(ml(10.0))), Ok(euros("3.00")));
    assert_eq!(cost("5.00", Measure::Count(100), Measure::Count(7), Some(Measure::Count(5))), Ok(euros("0.60")));
    let g = |g| Measure::from(grams(g));
    assert_eq!(cost("26.40", g(500.0), g(40.0), Some(g(5.0))), Ok(euros("2.38")));
    assert_eq!(cost("26.40", g(500.0), g(40.0), None), Ok(euros("2.11")));
    assert!(cost("26.40", g(500.0), g(40.0), Some(ml(5.0))).is_err());
}

/// Without time in the chair there is no amount for an hour of it; 30.00 in 45 minutes are 40.00.
#[test]
fn an_hour_of_the_chair_needs_time_in_it() {
    let rule = PriceRule {
        card: None,
        tax: TaxRate::from_percent(0.into()).unwrap(),
        ..rule(PriceTarget::Markup(Markup::from_percent(100.into()).unwrap()))
    };
    let hour = |min: Option<f64>| {
        let price = rule.price(euros("30.00"), min.map(minutes)).unwrap();
        price.per_chair_hour.map(|hour| hour.per_unit)
    };
    assert_eq!([None, Some(0.0), Some(45.0)].map(hour), [None, None, Some(number("40"))]);
}

/// Half of every price is kept: 30 % of it by the margin and, at no tax, 20 % by the fee. With 70 and 30 nothing is left, with 100 % of
/// the cost on top half of the price is the mark-up's, and half again the fee's.
#[test]
fn a_price_that_is_promised_away_is_refused_at_the_edge() {
    let target = |target, fee: i64| {
        let card = CardFee::new(CardRate::from_percent(fee.into()).unwrap(), euros("0")).unwrap();
        let rule = PriceRule { card: Some(card), tax: TaxRate::from_percent(0.into()).unwrap(), ..rule(target) };
        rule.price(euros("10.00"), Some(minutes(60.0))).map(|price| price.target_net).map_err(|error| error.to_string())
    };
    let margin = |percent: i64| PriceTarget::Margin(Margin::from_percent(percent.into()).unwrap());
    let said = "no price reaches this: 100 % of every price is already promised (margin and card fee), which must stay below \
                100 %";
    assert_eq!(target(margin(30), 20), Ok(euros("20.00")));
    assert_eq!(target(margin(70), 29), Ok(euros("1000.00")));
    assert_eq!(target(margin(70), 30), Err(said.to_owned()));
    let markup = PriceTarget::Markup(Markup::from_percent(100.into()).unwrap());
    assert_eq!(target(markup, 25), Ok(euros("40.00")));
    assert_eq!(target(markup, 50), Err(said.to_owned()));
    // 10.00 and 20.00 for the hour leave 75 of a hundred.
    assert_eq!(target(PriceTarget::PerChairHour(euros("20.00")), 25), Ok(euros("40.00")));
}
