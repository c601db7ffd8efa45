use super::Mark;
use crate::{
    money::{Margin, Markup, Money, UnitPrice},
    quantity::Duration,
};
use serde::Serialize;

/// One service, costed and priced. Amounts are for one service; `sold` counts in the totals only.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PricedLine {
    /// The service.
    pub service: String,
    /// The class of guest.
    pub class: Option<String>,
    /// How many were sold.
    pub sold: u32,
    /// Colour, lightener or toner, waste included.
    pub product: Money,
    /// Developer, waste included.
    pub developer: Money,
    /// Foils, gloves, film.
    pub consumables: Money,
    /// Towels and gowns.
    pub laundry: Money,
    /// Hands-on time.
    pub labour: Money,
    /// Chair time.
    pub overhead: Money,
    /// What the card terminal keeps.
    pub card_fee: Money,
    /// The seven together.
    pub cost: Money,
    /// The price without tax.
    pub net: Money,
    /// The tax.
    pub tax: Money,
    /// The price with tax: the one on the list, or the one set by the rule.
    pub gross: Money,
    /// Net price less cost.
    pub profit: Money,
    /// Profit as a part of the net price.
    pub margin_percent: Margin,
    /// Profit as a part of the cost.
    pub markup_percent: Markup,
    /// Net price at which the target of the rule is met exactly.
    pub target_net: Money,
    /// Net price less all costs but the overhead, for an hour of the chair.
    pub contribution_per_chair_hour: UnitPrice,
    /// What is odd about it.
    pub marks: Vec<Mark>,
    /// Whether the price stood on the list; if not, the rule set it.
    #[serde(skip)]
    pub is_listed: bool,
    /// Whether the price ending moved the price that the rule set.
    #[serde(skip)]
    pub moved: bool,
    /// Time in the chair.
    #[serde(skip)]
    pub in_chair: Duration,
}

impl PricedLine {
    /// The service, and the class where the list has classes.
    pub(crate) fn name(&self) -> String {
        match &self.class {
            Some(class) => format!("{}, {class}", self.service),
            None => self.service.clone(),
        }
    }
}
