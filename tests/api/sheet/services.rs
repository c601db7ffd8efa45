//! The price list as text: one line a service, then the totals and what is odd.

use super::{eur, flat};
use foilwork::{
    business::list::{Mark, PricedTable, parse_csv, price_services},
    money::{Margin, Markup, Rounding},
    reader::Format,
    sheet::service_table,
    shop,
};
use rust_decimal::Decimal;

/// Two services of the example's list, with figures of their own.
fn two() -> PricedTable {
    let shop = shop::parse_shop(include_str!("../../../examples/juniper_and_tide.toml"), Format::Toml).unwrap();
    let business = shop::Shop::new(&shop).unwrap().business().unwrap();
    let list = include_str!("../../../examples/juniper_and_tide_services.csv");
    let list = parse_csv(list, business.currency).unwrap();
    let mut table = price_services(&list, &business).unwrap();
    table.lines.truncate(2);
    let [cut, gloss] = table.lines.as_mut_slice() else { panic!("two services") };
    let percent = |text: &str| text.parse::<Decimal>().unwrap();
    (cut.service, cut.class, cut.sold) = ("cut".to_owned(), None, 3);
    (cut.cost, cut.net, cut.gross) = (eur("10.00"), eur("20.00"), eur("23.80"));
    cut.margin_percent = Margin::from_percent(percent("50")).unwrap();
    cut.markup_percent = Markup::from_percent(percent("100")).unwrap();
    cut.contribution_per_chair_hour.per_unit = percent("12.345");
    cut.marks.clear();
    (gloss.service, gloss.class, gloss.sold) = ("gloss".to_owned(), Some("short".to_owned()), 0);
    (gloss.cost, gloss.net, gloss.gross) = (eur("30.00"), eur("20.00"), eur("23.80"));
    gloss.margin_percent = Margin::from_percent(percent("-50")).unwrap();
    gloss.markup_percent = Markup::from_percent(percent("-33.333")).unwrap();
    gloss.contribution_per_chair_hour.per_unit = percent("-1.005");
    gloss.marks = vec![Mark::LosesMoney, Mark::BelowTarget];
    let totals = &mut table.totals;
    (totals.sold, totals.cost, totals.net) = (3, eur("30.00"), eur("60.00"));
    (totals.gross, totals.profit) = (eur("71.40"), eur("30.00"));
    table.rounding = Rounding::MidpointAwayFromZero;
    table
}

const NAMES: &str = "service sold cost net gross margin % mark-up % chair h";
const REST: &str = "Amounts in EUR; profit over all 30.00 EUR; rounding to the nearest, a half away from zero. Margin is profit over net price, \
    mark-up is profit over cost: not the same number. Chair h: the net price less all costs but the overhead, for an hour of the chair.";

/// Of 60 sold 30 are profit: half of the price, and as much as the cost. Halves go up, away from zero.
#[test]
fn a_line_a_service_and_what_is_odd() {
    let mut table = two();
    let cut = "3 10.00 20.00 23.80 50.0 100.0 12.35";
    let gloss = "gloss, short ! 0 30.00 20.00 23.80 -50.0 -33.3 -1.01";
    let all = "all that were sold 3 30.00 60.00 71.40 50.0 100.0";
    let want = format!(
        "{NAMES} cut {cut} {gloss} {all} ! the price is below the cost: gloss, short ! the price misses the target: gloss, short {REST}"
    );
    assert_eq!(flat(&service_table(&table)), want);
    table.lines[0].marks = vec![Mark::BelowTarget];
    let want = format!(
        "{NAMES} cut ! {cut} {gloss} {all} ! the price is below the cost: gloss, short ! the price misses the target: cut; gloss, short {REST}"
    );
    assert_eq!(flat(&service_table(&table)), want);
}
