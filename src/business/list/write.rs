use super::{PricedLine, PricedTable};
use crate::{
    money::{Money, Rounding},
    text::cell,
};
use rust_decimal::Decimal;

const HEADER: [&str; 19] = [
    "service",
    "class",
    "sold",
    "product",
    "developer",
    "consumables",
    "laundry",
    "labour",
    "overhead",
    "card_fee",
    "cost",
    "net",
    "tax",
    "gross",
    "profit",
    "margin_percent",
    "markup_percent",
    "target_net",
    "contribution_per_chair_hour",
];

impl PricedTable {
    /// The table as comma-separated text with a header row and a last line `total`.
    ///
    /// Amounts are units of the currency with all their decimals; percentages and hourly rates are shown to two
    /// decimals, half up. A text that a spreadsheet would run as a formula gets an apostrophe in front.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::list::{parse_csv, price_services}, reader::Format, shop};
    ///
    /// let shop = "currency = \"EUR\"\n[terms]\nwage_per_h = \"18.00\"\noverhead_per_h = \"10.00\"\nmargin_percent = 25";
    /// let business = shop::Shop::new(&shop::parse_shop(shop, Format::Toml)?)?.business()?;
    /// let list = parse_csv("service,hands_on_min,chair_min\nfringe trim,10,15\n", business.currency)?;
    /// let table = price_services(&list, &business)?;
    /// assert!(table.to_csv().lines().last().is_some_and(|sums| sums.starts_with("total,")));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn to_csv(&self) -> String {
        let mut writer = csv::Writer::from_writer(Vec::new());
        let total = self.total_row();
        let rows = self.lines.iter().map(row).chain(std::iter::once(total));
        // Writing to memory does not fail, and every row has as many fields as the header.
        let written =
            writer.write_record(HEADER).and_then(|()| rows.into_iter().try_for_each(|row| writer.write_record(row)));
        match (written, writer.into_inner()) {
            (Ok(()), Ok(bytes)) => String::from_utf8_lossy(&bytes).into_owned(),
            _ => String::new(),
        }
    }

    fn total_row(&self) -> [String; 19] {
        let t = &self.totals;
        let percent = |whole: Money| t.profit.percent_of(whole).map(two_decimals).unwrap_or_default();
        let tail = [percent(t.net), percent(t.cost), String::new(), String::new()];
        assemble(["total".to_owned(), String::new(), t.sold.to_string()], t.amounts(), tail)
    }
}

fn row(line: &PricedLine) -> [String; 19] {
    let class = line.class.as_deref().unwrap_or_default();
    let head = [cell(&line.service).into_owned(), cell(class).into_owned(), line.sold.to_string()];
    let tail = [
        two_decimals(line.margin_percent.percent()),
        two_decimals(line.markup_percent.percent()),
        line.target_net.decimal().to_string(),
        two_decimals(line.contribution_per_chair_hour.per_unit),
    ];
    assemble(head, line.amounts(), tail)
}

fn assemble(head: [String; 3], amounts: [(&str, Money); 12], tail: [String; 4]) -> [String; 19] {
    let mut fields = head.into_iter().chain(amounts.map(|(_, amount)| amount.decimal().to_string())).chain(tail);
    std::array::from_fn(|_| fields.next().unwrap_or_default())
}

fn two_decimals(value: Decimal) -> String {
    let mut shown = value.round_dp_with_strategy(2, Rounding::MidpointAwayFromZero.strategy());
    shown.rescale(2);
    shown.to_string()
}
