use crate::{business::list::PricedTable, money::Money, text::Sheet};

/// A priced list of services as plain text: one line a service, then the totals.
#[must_use]
pub fn service_table(table: &PricedTable) -> String {
    let mut sheet = Sheet::default();
    let amount = |money: Money| money.decimal().to_string();
    let currency = table.totals.cost.currency().code();
    let mut rows: Vec<Vec<String>> = table
        .lines
        .iter()
        .map(|line| {
            vec![
                match &line.class {
                    Some(class) => format!("{}, {class}", line.service),
                    None => line.service.clone(),
                },
                line.sold.to_string(),
                amount(line.cost),
                amount(line.net),
                amount(line.gross),
                format!("{:.1}", line.margin_percent.percent()),
                format!("{:.1}", line.markup_percent.percent()),
                line.contribution_per_chair_hour.to_string(),
            ]
        })
        .collect();
    let totals = &table.totals;
    rows.push(vec![
        "all that were sold".to_owned(),
        totals.sold.to_string(),
        amount(totals.cost),
        amount(totals.net),
        amount(totals.gross),
        String::new(),
        String::new(),
        String::new(),
    ]);
    let names = ["service", "sold", "cost", "net", "gross", "margin %", "mark-up %", "left for a chair hour"];
    sheet.table(&names, &[1, 2, 3, 4, 5, 6, 7], rows);
    sheet.blank();
    sheet.paragraph(
        &format!("Amounts in {currency}; profit over all {}; rounding {}.", totals.profit, table.rounding),
        0,
    );
    sheet.paragraph("Margin is profit over net price, mark-up is profit over cost: not the same number.", 0);
    sheet.finish()
}
