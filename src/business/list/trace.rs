use super::{PricedLine, PricedTable};
use crate::{
    money::{COST_FORMULA, Money, PriceRule, PriceTarget, SetPrice, TaxedPrice, amount, net_of, of},
    source::{Basis, Interval, TracedInput, TracedResult, citations::money},
    text::traced,
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
        self.lines.iter().flat_map(|one| line(one, &self.rule)).collect()
    }
}

fn line(line: &PricedLine, rule: &PriceRule) -> Vec<TracedResult> {
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
    let set = SetPrice {
        cost: line.cost,
        price: line.net,
        profit: line.profit,
        margin: line.margin_percent,
        markup: line.markup_percent,
    };
    let all = [cost].into_iter().chain(price(line, rule)).chain(set.trail(None));
    all.map(|found| TracedResult { what: format!("{}: {}", line.name(), found.what), ..found }).collect()
}

/// A price of the list is the gross price; one that the rule sets begins with the net price, which the list may move.
fn price(line: &PricedLine, rule: &PriceRule) -> Vec<TracedResult> {
    let net = |what| net_of((what, line.gross), rule.tax, ("net price", line.net), Basis::Stated);
    if line.is_listed {
        return vec![net("gross price, on the list")];
    }
    let taxed = TaxedPrice { net: line.net, tax: line.tax, gross: line.gross };
    let minutes = traced("minutes in the chair", Interval::exact(line.in_chair));
    let set = rule.traced((cost(line, rule), Some(minutes)), line.target_net, (&taxed, line.moved), Basis::Stated);
    set.into_iter().chain(line.moved.then(|| net("gross price"))).collect()
}

/// What the rule makes a net price of. The hour of a chair has to earn the overhead, so that it is no cost there.
fn cost(line: &PricedLine, rule: &PriceRule) -> TracedInput {
    let by_the_hour = matches!(rule.target, PriceTarget::PerChairHour(_));
    let parts = [line.product, line.developer, line.consumables, line.laundry, line.labour];
    let overhead = (!by_the_hour).then_some(line.overhead);
    let cost = Money::total(parts.into_iter().chain(overhead), line.cost.currency()).unwrap_or(line.cost);
    let name = match (by_the_hour, rule.card) {
        (true, _) => "cost, without overhead and card fee",
        (false, Some(_)) => "cost, without card fee",
        (false, None) => "cost",
    };
    of(name, cost)
}
