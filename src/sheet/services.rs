use crate::{
    business::list::{Mark, PricedLine, PricedTable},
    money::{Money, Rounding},
    text::Sheet,
};
use rust_decimal::Decimal;

/// A priced list of services as plain text: one line a service, then the totals and what is odd.
///
/// # Example
///
/// ```
/// use foilwork::{business::list::{parse_csv, price_services}, reader::Format, sheet::service_table, shop};
///
/// let shop = shop::parse_shop(&std::fs::read_to_string("examples/juniper_and_tide.toml")?, Format::Toml)?;
/// let business = shop::Shop::new(&shop)?.business()?;
/// let list = parse_csv(&std::fs::read_to_string("examples/juniper_and_tide_services.csv")?, business.currency)?;
/// let text = service_table(&price_services(&list, &business)?);
/// assert!(text.lines().all(|line| line.chars().count() <= 80));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn service_table(table: &PricedTable) -> String {
    let mut sheet = Sheet::default();
    let totals = &table.totals;
    let mut rows: Vec<Vec<String>> = table.lines.iter().map(row).collect();
    let share = |whole: Money| totals.profit.percent_of(whole).map(|share| shown(share, 1)).unwrap_or_default();
    rows.push(vec![
        "all that were sold".to_owned(),
        totals.sold.to_string(),
        amount(totals.cost),
        amount(totals.net),
        amount(totals.gross),
        share(totals.net),
        share(totals.cost),
        String::new(),
    ]);
    let names = ["service", "sold", "cost", "net", "gross", "margin %", "mark-up %", "chair h"];
    sheet.table(&names, &[1, 2, 3, 4, 5, 6, 7], rows);
    sheet.blank();
    for mark in Mark::ALL {
        let marked: Vec<String> =
            table.lines.iter().filter(|line| line.marks.contains(mark)).map(PricedLine::name).collect();
        if !marked.is_empty() {
            sheet.paragraph(&format!("! {mark}: {}", marked.join("; ")), 2);
        }
    }
    let currency = totals.cost.currency().code();
    let rounding = table.rounding;
    sheet.paragraph(&format!("Amounts in {currency}; profit over all {}; rounding {rounding}.", totals.profit), 0);
    sheet.paragraph("Margin is profit over net price, mark-up is profit over cost: not the same number.", 0);
    sheet.paragraph("Chair h: the net price less all costs but the overhead, for an hour of the chair.", 0);
    sheet.finish()
}

fn row(line: &PricedLine) -> Vec<String> {
    let flag = if line.marks.is_empty() { "" } else { " !" };
    vec![
        line.name() + flag,
        line.sold.to_string(),
        amount(line.cost),
        amount(line.net),
        amount(line.gross),
        shown(line.margin_percent.percent(), 1),
        shown(line.markup_percent.percent(), 1),
        shown(line.contribution_per_chair_hour.per_unit, 2),
    ]
}

fn amount(money: Money) -> String {
    money.decimal().to_string()
}

/// So many decimals, half up.
fn shown(value: Decimal, decimals: u32) -> String {
    let mut value = value.round_dp_with_strategy(decimals, Rounding::MidpointAwayFromZero.strategy());
    value.rescale(decimals);
    value.to_string()
}
