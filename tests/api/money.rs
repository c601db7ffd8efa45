//! The public interface of money: every error with its exact text, what is refused, what is written.

use foilwork::money::table::{BusinessTerms, Place, parse_csv, parse_json, price_services};
use foilwork::money::{
    CardFee, CardRate, ChairService, ColumnError, CommissionRate, CommissionRule, CommissionTier, CostColumns,
    CostTable, Currency, Denominator, Deposit, Discount, Labour, Margin, Markup, Measure, Money, MoneyError, OnCosts,
    Overhead, Part, PriceEnding, PriceRule, PriceTarget, ProfitTax, QuotePart, RentOrWage, Rounding, ServiceColumns,
    ServiceCost, SetPrice, Stock, SupplyUse, TaxRate, Toward, allocate, apply_discount, average_bill, break_even,
    commission_pay, compare, contribution_per_chair_hour, cost_columns, discount_break_even, labour_per_minute,
    median_count, mix_target, packs_needed, parse_decimal, price_from_margin, price_list, product_cost, productivity,
    quote_range, rank_by_chair_hour, retail_share, share_tips, supply_cost, tax_rate, unit_price,
};
use foilwork::quantity::{Duration, Mass, Volume};
use foilwork::source::{Basis, Interval};
use rust_decimal::Decimal;

const HALF_UP: Rounding = Rounding::MidpointAwayFromZero;

fn currency(code: &str) -> Currency {
    Currency::from_code(code).unwrap()
}

fn euros(text: &str) -> Money {
    Money::parse(text, currency("EUR")).unwrap()
}

fn number(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn grams(g: f64) -> Mass {
    Mass::from_g(g).unwrap()
}

fn minutes(min: f64) -> Duration {
    Duration::from_min(min).unwrap()
}

fn said<T: std::fmt::Debug>(result: Result<T, impl std::fmt::Display>) -> String {
    match result {
        Ok(value) => panic!("expected an error, got {value:?}"),
        Err(error) => error.to_string(),
    }
}

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
            "unknown rounding \"half_up\": give midpoint_away_from_zero (half up), midpoint_nearest_even, \
             midpoint_toward_zero, to_zero, away_from_zero, to_negative_infinity or to_positive_infinity",
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
                euros("1.00"),
                Measure::Volume(Volume::from_ml(60.0).unwrap()),
                Measure::Mass(grams(30.0)),
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
        (
            said(average_bill(euros("1.00"), 0, HALF_UP)),
            "invalid number of clients (got 0 clients): must be at least 1",
        ),
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
    ];
    for (got, want) in rows {
        assert_eq!(got, want);
    }
}

fn rule(target: PriceTarget) -> PriceRule {
    PriceRule {
        target,
        tax: TaxRate::from_percent(19.into()).unwrap(),
        card: Some(CardFee::new(CardRate::from_percent(2.into()).unwrap(), euros("0.10")).unwrap()),
        ending: None,
        rounding: HALF_UP,
    }
}

fn parts() -> Vec<QuotePart> {
    let cost = |low: &str, best: &str, high: &str| Interval::new(euros(low), euros(best), euros(high)).unwrap();
    vec![
        QuotePart { what: "lightener".into(), cost: cost("4.00", "6.00", "10.00"), basis: Basis::Assumed },
        QuotePart { what: "foils".into(), cost: cost("2.00", "2.00", "2.00"), basis: Basis::Stated },
    ]
}

fn rent(variable_percent: i64) -> RentOrWage {
    RentOrWage {
        rent: euros("200.00"),
        own_costs: euros("50.00"),
        variable_percent: variable_percent.into(),
        wage: euros("480.00"),
        commission: CommissionRate::from_percent(15.into()).unwrap(),
    }
}

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
    let each = unit_price(euros("26.40"), Measure::Mass(grams(500.0))).unwrap();
    assert_eq!((each.to_string(), format!("{each:.2}")), ("0.0528 EUR/g".into(), "0.05 EUR/g".into()));
}

#[test]
fn packs_are_whole_and_counted_up() {
    let packs = |need: f64| packs_needed(Measure::Mass(grams(need)), Measure::Mass(grams(500.0))).unwrap();
    assert_eq!([0.0, 0.1, 500.0, 500.001].map(packs), [0, 1, 1, 2]);
}

#[test]
fn a_service_reports_every_line_that_cannot_be_costed() {
    let mut service = ServiceCost::new(currency("EUR"), HALF_UP);
    let supply = |what: &str, pack: Measure, used: Measure| SupplyUse {
        part: Part::Product,
        what: what.into(),
        section: None,
        bowl: None,
        pack_price: euros("10.00"),
        pack,
        used,
        wasted: None,
        basis: Basis::Measured,
    };
    service.supplies.push(supply("lightener", Measure::Mass(grams(0.0)), Measure::Mass(grams(1.0))));
    service.supplies.push(supply("developer", Measure::Mass(grams(1000.0)), Measure::Count(1)));
    service.supplies.push(supply("toner", Measure::Mass(grams(60.0)), Measure::Mass(grams(30.0))));
    let errors: Vec<_> = service.table().unwrap_err().iter().map(ToString::to_string).collect();
    assert_eq!(
        errors,
        [
            "lightener: invalid pack contents (got 0.000 g, mL or pieces): must be more than nothing",
            "developer: cannot take 1 piece from a pack of 1000 g: give both by mass, both by volume or both as a count",
        ]
    );
}

#[test]
fn planned_and_actual_cost_are_compared_by_kind() {
    let table = |lines: &[(Part, &str)]| {
        let mut table = CostTable::new(currency("EUR"));
        for (part, amount) in lines {
            table.push(*part, "line", Basis::Derived, euros(amount)).unwrap();
        }
        table
    };
    let planned = table(&[(Part::Product, "6.00"), (Part::Labour, "30.00")]);
    let actual = table(&[(Part::Labour, "34.50"), (Part::Product, "5.10"), (Part::Laundry, "0.90")]);
    let seen: Vec<_> =
        compare(&planned, &actual).unwrap().iter().map(|row| (row.part, row.difference.to_string())).collect();
    assert_eq!(
        seen,
        [
            (Part::Product, "-0.90 EUR".to_string()),
            (Part::Laundry, "0.90 EUR".to_string()),
            (Part::Labour, "4.50 EUR".to_string()),
        ]
    );
    assert_eq!(planned.rounding_bound(), number("0.01"), "two lines, half a cent each");
    assert_eq!(planned.basis(), Some(Basis::Derived));
    assert_eq!(actual.lines()[0].share_percent, Some(number("85.2")), "34.50 of 40.50");
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
        |on_hand| Stock { on_hand: count(on_hand), on_order: count(0), daily_use: count(60), reserve: count(120) };
    assert_eq!(foils(900).days().unwrap(), Some(15.into()));
    let quiet = foils(421).reorder(5, 20, count(500)).unwrap();
    assert_eq!((quiet.reorder_point, quiet.due, quiet.packs), (420.into(), false, 0));
    let due = foils(420).reorder(5, 20, count(500)).unwrap();
    // Up to 25 days at 60 and 120 = 1620: 1200 short, three packs of 500.
    assert_eq!((due.due, due.packs, due.unit), (true, 3, "piece"));
    let idle = Stock { daily_use: count(0), ..foils(10) };
    assert_eq!(idle.days().unwrap(), None);
}

#[test]
fn lists_report_every_problem_with_its_place() {
    let text = "service,product_pack_price,product_pack_g,product_g,hands_on_min,chair_min,price,sold,colour\n\
                foils,26.40,500,,70,120,,2,x\n\
                ,26.4x,0,-3,70,0,12.505,2.5,\n\
                toner,9.80,60,30,15,40\n";
    let problems: Vec<_> = parse_csv(text, currency("EUR")).unwrap_err().iter().map(ToString::to_string).collect();
    let known = foilwork::money::table::COLUMNS.join(", ");
    assert_eq!(problems, [
        format!("header, colour: unknown column: the columns are {known}"),
        "line 2, product_g: is missing: give a value".into(),
        "line 3, service: is missing: give a value".into(),
        "line 3, product_pack_price: amount \"26.4x\" is not a decimal number: write digits with a point, for example 12.50"
            .into(),
        "line 3, product_g: invalid mass (got -3 g): must be from 0 to 1e9 g".into(),
        "line 3, product_pack_g: invalid pack contents (got 0 g): must be more than nothing".into(),
        "line 3, price: 12.505 EUR has more than 2 decimals: round it first, and name the rounding".into(),
        "line 3, sold: invalid count (got 2.5 services): must be a whole number from 0 to 4294967295".into(),
        "line 3, chair_min: invalid chair time (got 0 min): must be more than nothing".into(),
        "line 4, line: 6 fields under 9 column names: quote a field that holds the separator".into(),
    ]);
    let json = r#"[{"service": "toner", "hands_on_min": 15, "chair_min": [40]}, {"service": "gloss", "hands_on_min": "x", "chair_min": 30, "price": null}]"#;
    let problems: Vec<_> = parse_json(json, currency("EUR")).unwrap_err().iter().map(ToString::to_string).collect();
    assert_eq!(
        problems,
        [
            "item 1, chair_min: must be a text or a number",
            "item 1, chair_min: is missing: give a value",
            "item 2, hands_on_min: number \"x\" is not a decimal number: write digits with a point, for example 12.50",
        ]
    );
    assert_eq!(parse_csv("service,hands_on_min,chair_min\n", currency("EUR")).unwrap_err()[0].place, Place::Header);
    assert_eq!(parse_json("[]", currency("EUR")).unwrap_err().len(), 1);
    assert!(parse_json("{", currency("EUR")).is_err() && parse_csv("", currency("EUR")).is_err());
}

#[test]
fn lists_may_use_other_separators_and_a_byte_order_mark() {
    for separator in [";", "\t"] {
        let text = "\u{feff}service,hands_on_min,chair_min,price\r\nfoils,70,120,140.00\r\n".replace(',', separator);
        let list = parse_csv(&text, currency("EUR")).unwrap();
        assert_eq!((list[0].service.as_str(), list[0].price), ("foils", Some(euros("140.00"))));
    }
    let quoted = parse_csv("service,hands_on_min,chair_min\n\"foils, half head\",70,120\n", currency("EUR")).unwrap();
    assert_eq!(quoted[0].service, "foils, half head");
}

#[test]
fn terms_report_every_problem_together() {
    let terms = BusinessTerms {
        currency: "EUR".into(),
        wage_per_h: "16.005".into(),
        paid_h: "38".into(),
        overhead: "48600".into(),
        chairs: "0".into(),
        productive_h_per_chair: "1150".into(),
        margin_percent: Some("30".into()),
        markup_percent: Some("50".into()),
        price_ending: Some("0.90".into()),
        ..BusinessTerms::default()
    };
    let problems: Vec<_> = terms.check().unwrap_err().iter().map(ToString::to_string).collect();
    assert_eq!(
        problems,
        [
            "business terms, wage_per_h: 16.005 EUR has more than 2 decimals: round it first, and name the rounding",
            "business terms, productive_h: is missing: give a value",
            "business terms, margin_percent, markup_percent, per_chair_hour: give exactly one of these targets",
            "business terms, overhead: invalid number of chairs (got 0 chairs): must be more than nothing",
            "business terms, price_step: is missing: price_ending needs the step it repeats in",
        ]
    );
}

/// The invented price list of Juniper & Tide, read both ways: the same table, the same text.
#[test]
fn the_example_list_reads_alike_from_csv_and_json() {
    let terms: BusinessTerms =
        serde_json::from_str(include_str!("../../examples/juniper_and_tide_terms.json")).unwrap();
    let business = terms.check().unwrap();
    let csv = parse_csv(include_str!("../../examples/juniper_and_tide_services.csv"), business.currency).unwrap();
    let json = parse_json(include_str!("../../examples/juniper_and_tide_services.json"), business.currency).unwrap();
    assert_eq!(csv, json);
    let table = price_services(&csv, &business).unwrap();
    assert!(table.totals.reconcile());
    let text = table.to_csv();
    assert_eq!(text.lines().count(), csv.len() + 2);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let (total, lines) = rows.split_last().unwrap();
    assert_eq!(&total[0], "total");
    for column in 3..15 {
        let down: Decimal = lines.iter().map(|line| number(&line[column]) * number(&line[2])).sum();
        assert_eq!(down, number(&total[column]), "column {column} of the written text");
    }
}

#[test]
fn a_text_that_a_spreadsheet_would_run_is_written_as_text() {
    let text = "service,hands_on_min,chair_min,consumables\n\"=1+1\",70,120,1.00\n";
    let terms: BusinessTerms =
        serde_json::from_str(include_str!("../../examples/juniper_and_tide_terms.json")).unwrap();
    let business = terms.check().unwrap();
    let table = price_services(&parse_csv(text, business.currency).unwrap(), &business).unwrap();
    assert!(table.to_csv().lines().nth(1).unwrap().starts_with("'=1+1,"));
}

#[test]
fn a_column_is_the_scalar_functions_row_by_row() {
    let labour =
        Labour::new(euros("17.35"), OnCosts::from_percent(number("21.4")).unwrap(), minutes(2280.0), minutes(1422.0))
            .unwrap();
    let overhead = Overhead::new(euros("48123.45"), 4, minutes(70_200.0)).unwrap();
    let pack_price_minor = [2640, 980, 1, 4999, 0, 2640];
    let pack_g = [500.0, 60.0, 1000.0, 333.333_3, 60.0, 500.0];
    let used_g = [40.0, 0.1 + 0.2, 0.0, 12.345_678, 5.0, 1e-9];
    let wasted_g = [5.0, 0.0, 0.0, 1.1, 0.5, 0.0];
    let consumables_minor = [210, 0, 7, 35, 1, 0];
    let hands_on_min = [70.0, 0.3, 0.0, 33.333_333_3, 15.5, 1e6];
    let chair_min = [120.0, 1.0, 0.1, 47.25, 40.0, 1e-3];
    let services = ServiceColumns {
        pack_price_minor: &pack_price_minor,
        pack_g: &pack_g,
        used_g: &used_g,
        wasted_g: &wasted_g,
        consumables_minor: &consumables_minor,
        hands_on_min: &hands_on_min,
        chair_min: &chair_min,
    };
    for rounding in Rounding::ALL {
        let mut columns = [[0_i64; 6]; 4];
        let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
        let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
        let totals = cost_columns(&services, &labour, &overhead, rounding, out).unwrap();
        for row in 0..6 {
            let used = grams(used_g[row] + wasted_g[row]);
            let product = product_cost(
                Money::from_minor(pack_price_minor[row], currency("EUR")),
                grams(pack_g[row]),
                used,
                rounding,
            );
            assert_eq!(columns[0][row], product.unwrap().minor(), "product of row {row}, {rounding}");
            assert_eq!(columns[1][row], labour.cost(minutes(hands_on_min[row]), rounding).unwrap().minor());
            assert_eq!(columns[2][row], overhead.cost(minutes(chair_min[row]), rounding).unwrap().minor());
        }
        assert_eq!(totals.cost.minor(), columns[3].iter().sum::<i64>());
        assert_eq!(
            Money::total([totals.product, totals.consumables, totals.labour, totals.overhead], currency("EUR")),
            Ok(totals.cost)
        );
    }
}

#[test]
fn bad_rows_are_flagged_and_the_first_is_named() {
    let labour =
        Labour::new(euros("15.00"), OnCosts::from_percent(0.into()).unwrap(), minutes(60.0), minutes(60.0)).unwrap();
    let overhead = Overhead::new(euros("10.00"), 1, minutes(60.0)).unwrap();
    let run = |services: &ServiceColumns<'_>| {
        let mut columns = [[7_i64; 4]; 4];
        let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
        let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
        let result = cost_columns(services, &labour, &overhead, HALF_UP, out);
        (result, columns)
    };
    let good = ServiceColumns {
        pack_price_minor: &[100; 4],
        pack_g: &[100.0; 4],
        used_g: &[10.0, 10.0, 10.0, 10.0],
        wasted_g: &[0.0; 4],
        consumables_minor: &[0; 4],
        hands_on_min: &[60.0; 4],
        chair_min: &[60.0; 4],
    };
    let bad = ServiceColumns { used_g: &[10.0, f64::NAN, -1.0, 10.0], consumables_minor: &[0, 0, 0, -1], ..good };
    let (result, columns) = run(&bad);
    assert_eq!(
        said(result),
        "row 1: invalid mass (got NaN g): must be from 0 to 1e9 g (3 of 4 rows cannot be costed; rows count from 0)",
    );
    assert_eq!(columns[3], [2510, 0, 0, 0], "good rows are costed, bad rows hold 0");
    for bad in [f64::INFINITY, f64::NEG_INFINITY, -0.001, 2e9] {
        assert!(matches!(
            run(&ServiceColumns { chair_min: &[bad; 4], ..good }).0,
            Err(ColumnError::Row { bad_rows: 4, .. })
        ));
    }
    assert!(matches!(run(&ServiceColumns { pack_g: &[0.0; 4], ..good }).0, Err(ColumnError::Row { bad_rows: 4, .. })));
    assert_eq!(
        said(run(&ServiceColumns { wasted_g: &[0.0; 3], ..good }).0),
        "column wasted_g has 3 rows and pack_price_minor has 4: give every column the same length",
    );
    assert!(run(&good).0.is_ok());
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
    assert!(mixed(mix_target(dollars, dollars, &[mix_item()]).map(drop)));
    assert!(mixed(CostTable::new(currency("EUR")).push(Part::Other, "x", Basis::Stated, dollars)));
    assert!(mixed(Money::total([euros("1.00"), dollars], currency("EUR")).map(drop)));
    assert!(mixed(price_list(&[], &rule(PriceTarget::PerChairHour(dollars))).map(drop).and_then(|()| {
        rule(PriceTarget::PerChairHour(dollars)).price(euros("1.00"), Some(minutes(60.0))).map(drop)
    })));
}

fn mix_item() -> foilwork::money::MixItem {
    foilwork::money::MixItem { what: "cut".into(), price: euros("2.00"), variable: euros("1.00"), weight: 1.into() }
}

#[test]
fn small_things_hold() {
    let ending = PriceEnding::new(euros("5.00"), euros("0.00")).unwrap();
    assert_eq!(ending.apply(euros("52.50"), Toward::Nearest).unwrap(), euros("55.00"), "up when both are as near");
    assert_eq!(ending.apply(euros("-1.00"), Toward::Up).unwrap(), euros("0.00"));
    let offer =
        apply_discount(euros("0.05"), Discount::from_percent(50.into()).unwrap(), Rounding::MidpointNearestEven)
            .unwrap();
    assert_eq!((offer.off, offer.after), (euros("0.02"), euros("0.03")));
    assert!(ProfitTax::from_percent(100.into()).is_err());
    assert_eq!(share_tips(euros("0.01"), &[minutes(1.0), minutes(1.0)]).unwrap(), [euros("0.01"), euros("0.00")]);
    assert_eq!(median_count(&[7, 12]).unwrap(), number("9.5"));
    let at = rent(12).at(euros("1500.00"), HALF_UP).unwrap();
    // 1500 - 180 - 250 = 1070 renting; 480 + 225 = 705 employed.
    assert_eq!((at.renting, at.employed, at.difference), (euros("1070.00"), euros("705.00"), euros("365.00")));
}
