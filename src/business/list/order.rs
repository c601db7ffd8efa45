use super::{PricedLine, PricedTable};
use crate::choice::choice;
use std::cmp::Ordering;

choice! {
    /// The order of a priced list; what earns more comes first.
    ListOrder: "order" {
        /// As in the list.
        Listed = "listed" => "as listed",
        /// By what is left for an hour of the chair.
        ChairHour = "chair-hour" => "what is left for a chair hour",
        /// By the profit of one service.
        Profit = "profit",
        /// By the profit of all that were sold.
        TotalProfit = "total-profit" => "profit of all sold",
        /// By profit as a part of the net price.
        Margin = "margin",
        /// By the price that the guest pays.
        Price = "price",
        /// By how many were sold.
        Sold = "sold",
    }
}

impl PricedTable {
    /// The lines in an order, the best first; equals keep their order.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::list::{ListOrder, parse_csv, price_services}, reader::Format, shop::{Shop, parse_shop}};
    ///
    /// let shop = Shop::new(&parse_shop(&std::fs::read_to_string("examples/juniper_and_tide.toml")?, Format::Toml)?)?;
    /// let business = shop.business()?;
    /// let text = "service,hands_on_min,chair_min,price\ntoner,20,40,45.50\nconsultation,20,20,30.50\n";
    /// let table = price_services(&parse_csv(text, business.currency)?, &business)?;
    /// let best = table.in_order(ListOrder::ChairHour);
    /// assert_eq!(best[0].service, "consultation");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn in_order(&self, order: ListOrder) -> Vec<&PricedLine> {
        let mut lines: Vec<_> = self.lines.iter().collect();
        lines.sort_by(|a, b| better(order, a, b));
        lines
    }
}

/// What earns more comes first.
fn better(order: ListOrder, a: &PricedLine, b: &PricedLine) -> Ordering {
    let all = |line: &PricedLine| i128::from(line.profit.minor()) * i128::from(line.sold);
    match order {
        ListOrder::Listed => Ordering::Equal,
        ListOrder::ChairHour => b.contribution_per_chair_hour.per_unit.cmp(&a.contribution_per_chair_hour.per_unit),
        ListOrder::Profit => b.profit.minor().cmp(&a.profit.minor()),
        ListOrder::TotalProfit => all(b).cmp(&all(a)),
        ListOrder::Margin => b.margin_percent.cmp(&a.margin_percent),
        ListOrder::Price => b.gross.minor().cmp(&a.gross.minor()),
        ListOrder::Sold => b.sold.cmp(&a.sold),
    }
}
