//! The price of the list against what the service costs.

use super::super::{Booking, MoneyPlan, findings::Findings};
use crate::finding::{
    Reason, Rule,
    Verdict::{Note, Passed, Warning},
};

pub(super) fn check(booking: &Booking, money: Option<&MoneyPlan>, findings: &mut Findings) {
    let (Some(price), Some(money)) = (booking.price, money) else { return };
    let (kept, cost) = (booking.net.unwrap_or(price), money.cost.total());
    let source = Reason::stated("the price list and the costs of the shop");
    let class = booking.service_class;
    let (verdict, text) = if kept.minor() < cost.minor() {
        (Warning, format!("{class} is {price} on the list, {kept} without tax: less than the {cost} that it costs"))
    } else if booking.by_cost.is_some_and(|by_cost| price.minor() < by_cost.minor()) {
        let by_cost = booking.by_cost.unwrap_or(price);
        (Note, format!("{class} is {price} on the list; by its costs and the terms of the shop it would be {by_cost}"))
    } else {
        (Passed, format!("{class} is {price} on the list, and it costs {cost}"))
    };
    findings.add(Rule::ListPrice, verdict, text, source);
}
