//! The workbooks that the tests open.

pub(super) use crate::api::common::{all_near, example};
use foilwork::{
    business::list::{PricedTable, parse_csv, price_services},
    money::Currency,
    peroxide::{DilutionTable, dilution_table},
    quantity::{Mass, MassFraction},
    reader::Format,
    service::{Plan, parse, parse_with_shop, plan},
    shop::{Shop, parse_shop},
    source::Interval,
    teach::{SheetHalf, WorksheetRequest, worksheet},
    workbook::{
        DilutionNames, dilution_workbook, plan_workbook, recipe_workbook, services_workbook, worksheet_workbook,
    },
};

pub(super) fn ww(percent: f64) -> MassFraction {
    MassFraction::from_ww_percent(percent).unwrap()
}

pub(super) fn exact(percents: &[f64]) -> Vec<Interval<MassFraction>> {
    percents.iter().map(|percent| Interval::exact(ww(*percent))).collect()
}

/// A strength that a label leaves open.
pub(super) fn open(low: f64, best: f64, high: f64) -> Interval<MassFraction> {
    Interval::new(ww(low), ww(best), ww(high)).unwrap()
}

pub(super) fn grams(g: f64) -> Mass {
    Mass::from_g(g).unwrap()
}

pub(super) fn table(
    stocks: &[Interval<MassFraction>],
    targets: &[f64],
    weaker: Interval<MassFraction>,
    (total, division): (f64, f64),
) -> DilutionTable {
    dilution_table(stocks, &exact(targets), weaker, grams(total), grams(division)).unwrap()
}

pub(super) fn chart(table: &DilutionTable) -> Vec<u8> {
    let bottles = (0..table.rows.len()).map(|place| format!("bottle {place}")).collect();
    dilution_workbook(table, &DilutionNames { bottles, weaker: "diluent".to_owned() }).unwrap()
}

pub(super) fn recipe(text: &str, total: i64, division: f64) -> Vec<u8> {
    recipe_workbook(&text.parse().unwrap(), total.into(), grams(division)).unwrap()
}

/// The plan of an example, with something changed in its text.
pub(super) fn planned(name: &str, changes: &[(&str, &str)]) -> Plan {
    let mut text = example(name);
    for (old, new) in changes {
        assert!(text.contains(old), "{name} has no {old}");
        text = text.replace(old, new);
    }
    let format = if name.ends_with(".json") { Format::Json } else { Format::Toml };
    let shop = || parse_shop(&example("juniper_and_tide.toml"), Format::Toml).unwrap();
    let file = if text.contains("shop_file") { parse_with_shop(&text, format, &shop()) } else { parse(&text, format) };
    plan(&file.unwrap()).unwrap()
}

pub(super) fn bench(name: &str, changes: &[(&str, &str)]) -> Vec<u8> {
    plan_workbook(&planned(name, changes)).unwrap()
}

/// The services of the example by a shop that states this.
pub(super) fn priced(list: &str, currency: &str, terms: &str) -> PricedTable {
    let text = format!("currency = \"{currency}\"\n[terms]\n{terms}");
    let business = Shop::new(&parse_shop(&text, Format::Toml).unwrap()).unwrap().business().unwrap();
    price_services(&parse_csv(list, business.currency).unwrap(), &business).unwrap()
}

pub(super) const TERMS: &str = "wage_per_h = \"18\"\nproductive_percent = 50\noverhead_per_h = \"10\"\nmargin_percent = 25\n\
                                card_percent = 2\ntax_percent = 21\n";

pub(super) fn services() -> Vec<u8> {
    services_workbook(&priced(&example("juniper_and_tide_services.csv"), "EUR", TERMS)).unwrap()
}

pub(super) fn problems(seed: u64, count: usize, half: SheetHalf) -> Vec<u8> {
    let currency = Currency::from_code("EUR").unwrap();
    let request = WorksheetRequest { count, currency, ..WorksheetRequest::new(seed) };
    worksheet_workbook(&worksheet(&request).unwrap(), half).unwrap()
}
