use super::{
    WorkbookError,
    binding::bound,
    cells::{at, down, rounded},
    costs::float,
    page::{Allowed, Page},
    sources::{Rests, sources},
};
use crate::{
    business::list::{PricedLine, PricedTable},
    money::Rounding,
    source::Basis,
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

/// Columns of the costs page, from the left.
const SOLD: u16 = 2;
const FIRST_COST: u16 = 3;
const LAST_COST: u16 = 9;
const COST: u16 = 10;
const GROSS: u16 = 11;
const NET: u16 = 12;
const TAX: u16 = 13;
const PROFIT: u16 = 14;

/// A priced list of services as a workbook: the list for the wall, and what each costs and leaves. Costs, prices, tax and
/// how many were sold may be changed; sums, margins and the list follow.
///
/// # Errors
///
/// [`WorkbookError`] when there are more rows than a sheet holds.
///
/// # Example
///
/// ```
/// use foilwork::{business::list::{parse_csv, price_services}, reader::Format, shop, workbook::services_workbook};
///
/// let shop = shop::parse_shop(&std::fs::read_to_string("examples/juniper_and_tide.toml")?, Format::Toml)?;
/// let business = shop::Shop::new(&shop)?.business()?;
/// let list = parse_csv(&std::fs::read_to_string("examples/juniper_and_tide_services.csv")?, business.currency)?;
/// assert!(services_workbook(&price_services(&list, &business)?)?.starts_with(b"PK"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn services_workbook(table: &PricedTable) -> Result<Vec<u8>, WorkbookError> {
    let (costs, first) = costs(table)?;
    let prices = prices(table, first)?;
    let amounts = "what you pay and charge, by the shop and the list";
    let rests = [
        Rests::new("costs of a service", Basis::Derived, format!("{amounts}; each rounded once ({})", table.rounding)),
        Rests::new("prices", Basis::Stated, "the list, or the rule of the shop where the list names none"),
        Rests::new("tax within a price", Basis::Derived, "price times the rate, over 100 and the rate; rounded once"),
        Rests::new("margin and mark-up", Basis::Derived, "profit over net price; profit over cost"),
    ];
    bound(vec![prices, costs, sources(&rests)?])
}

/// The list that guests see.
fn prices(table: &PricedTable, first: u32) -> Result<Page, WorkbookError> {
    let currency = table.totals.gross.currency();
    let mut page = Page::new("Prices", "Price list", &[48.0, 24.0, 16.0])?;
    let price = format!("price, {}", currency.code());
    page.heading(&["service", "for", &price])?;
    page.repeat_heading()?;
    for (row, line) in (first..).zip(&table.lines) {
        page.text(0, &line.service)?;
        page.text(1, line.class.as_deref().unwrap_or_default())?;
        let there = format!("Costs!{}", at(row, GROSS));
        page.formula(2, &there, float(line.gross), currency.exponent() as usize)?;
        page.row += 1;
    }
    page.row += 1;
    page.paragraph(
        "Prices follow the page Costs. A skin test before, and what the hair allows, may change what is done.",
    )?;
    Ok(page)
}

/// What each service costs and leaves; and the row of the first.
fn costs(table: &PricedTable) -> Result<(Page, u32), WorkbookError> {
    let currency = table.totals.gross.currency();
    let decimals = currency.exponent() as usize;
    let mut widths = vec![34.0, 18.0, 8.0];
    widths.extend([11.0; 12]);
    widths.extend([10.0, 10.0]);
    let mut page = Page::new("Costs", &format!("Costs and prices, {}", currency.code()), &widths)?;
    page.how()?;
    let rate = table.tax_percent.percent().normalize();
    page.named_input(
        "tax_percent",
        "tax, %",
        rate.to_f64().unwrap_or(0.0),
        rate.scale().max(2) as usize,
        Allowed::PERCENT,
    )?;
    page.row += 1;
    page.heading(&[
        "service",
        "for",
        "sold",
        "product",
        "developer",
        "consumables",
        "laundry",
        "labour",
        "overhead",
        "card fee",
        "cost",
        "PRICE",
        "net",
        "tax",
        "profit",
        "margin, %",
        "mark-up, %",
    ])?;
    page.repeat_heading()?;
    let first = page.row;
    for line in &table.lines {
        page.text(0, &line.service)?;
        page.text(1, line.class.as_deref().unwrap_or_default())?;
        one(&mut page, line, table.rounding, decimals)?;
        page.row += 1;
    }
    totals(&mut page, table, first, decimals)?;
    page.row += 2;
    page.paragraph("Card fee: as it is at the price of the list; change it with the price.")?;
    page.paragraph("Margin is profit over net price, mark-up is profit over cost: not the same number.")?;
    Ok((page, first))
}

fn one(page: &mut Page, line: &PricedLine, rounding: Rounding, decimals: usize) -> Result<(), WorkbookError> {
    let amounts = Allowed { low: 0.0, high: 1_000_000_000.0, unit: line.gross.currency().code() };
    let cell = |row: u32, column: u16| at(row, column);
    let row = page.row;
    page.input(SOLD, f64::from(line.sold), 0, Allowed::COUNT)?;
    let parts =
        [line.product, line.developer, line.consumables, line.laundry, line.labour, line.overhead, line.card_fee];
    for (column, part) in (FIRST_COST..).zip(parts) {
        page.input(column, float(part), decimals, amounts)?;
    }
    let sum = format!("SUM({}:{})", cell(row, FIRST_COST), cell(row, LAST_COST));
    page.formula(COST, &sum, float(line.cost), decimals)?;
    page.input(GROSS, float(line.gross), decimals, amounts)?;
    let [gross, net, cost, profit] = [GROSS, NET, COST, PROFIT].map(|column| cell(row, column));
    // As in foilwork, the tax is what is rounded, and the net price is what it leaves.
    let within = rounded(&format!("{gross}*tax_percent/(100+tax_percent)"), decimals, rounding);
    page.formula(NET, &format!("{gross}-{}", cell(row, TAX)), float(line.net), decimals)?;
    page.formula(TAX, &within, float(line.tax), decimals)?;
    page.formula(PROFIT, &format!("{net}-{cost}"), float(line.profit), decimals)?;
    let percent = |decimal: Decimal| decimal.to_f64().unwrap_or(0.0);
    let margin = format!("IF({net}=0,0,100*{profit}/{net})");
    page.formula(PROFIT + 1, &margin, percent(line.margin_percent.percent()), 1)?;
    let markup = format!("IF({cost}=0,0,100*{profit}/{cost})");
    page.formula(PROFIT + 2, &markup, percent(line.markup_percent.percent()), 1)
}

fn totals(page: &mut Page, table: &PricedTable, first: u32, decimals: usize) -> Result<(), WorkbookError> {
    let last = page.row.saturating_sub(1).max(first);
    let totals = &table.totals;
    page.text(0, "all that were sold")?;
    page.formula(SOLD, &format!("SUM({})", down(SOLD, first, last)), totals.sold as f64, 0)?;
    let sums = [
        totals.product,
        totals.developer,
        totals.consumables,
        totals.laundry,
        totals.labour,
        totals.overhead,
        totals.card_fee,
        totals.cost,
        totals.gross,
        totals.net,
        totals.tax,
        totals.profit,
    ];
    for (column, sum) in (FIRST_COST..).zip(sums) {
        let all = format!("SUMPRODUCT({},{})", down(SOLD, first, last), down(column, first, last));
        page.formula(column, &all, float(sum), decimals)?;
    }
    Ok(())
}
