use super::{PricedLine, PricedTable};
use crate::{
    money::{COST_FORMULA, SetPrice, TaxedPrice, amount, of},
    source::{Basis, TracedResult, citations::money},
};

impl PricedTable {
    /// How cost, price and what is left of each service come about.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::list::{parse_csv, price_services}, reader::Format, shop};
    ///
    /// let shop = "currency = \"EUR\"\n[terms]\nwage_per_h = \"18.00\"\nproductive_percent = 50\n\
    ///             overhead_per_h = \"10.00\"\nmargin_percent = 25";
    /// let business = shop::Shop::new(&shop::parse_shop(shop, Format::Toml)?)?.business()?;
    /// let list = parse_csv("service,hands_on_min,chair_min\ntoner,15,40\n", business.currency)?;
    /// let trail = price_services(&list, &business)?.trail();
    /// assert_eq!(trail[0].what, "toner: cost");
    /// assert_eq!(trail[0].formula, "sum of the lines, each rounded once");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> Vec<TracedResult> {
        self.lines.iter().flat_map(line).collect()
    }
}

fn line(line: &PricedLine) -> Vec<TracedResult> {
    let parts = [
        ("product", line.product),
        ("developer", line.developer),
        ("consumables", line.consumables),
        ("laundry", line.laundry),
        ("labour", line.labour),
        ("overhead", line.overhead),
        ("card fee", line.card_fee),
    ];
    let cost = amount("cost", line.cost, COST_FORMULA, Basis::Stated)
        .made_of(parts.map(|(what, part)| of(what, part)))
        .resting_on(&[money::COSTING_A_SERVICE.id]);
    let taxed = TaxedPrice { net: line.net, tax: line.tax, gross: line.gross };
    let set = SetPrice {
        cost: line.cost,
        price: line.net,
        profit: line.profit,
        margin: line.margin_percent,
        markup: line.markup_percent,
    };
    let all = [cost, taxed.trail()].into_iter().chain(set.trail(None));
    all.map(|found| TracedResult { what: format!("{}: {}", line.service, found.what), ..found }).collect()
}
