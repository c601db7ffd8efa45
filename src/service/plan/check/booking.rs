//! The price of the list against what the service costs.

use super::super::{Booking, MoneyPlan, findings::Findings};
use crate::{
    finding::{
        Reason, Rule,
        Verdict::{NotJudged, Note, Passed, Warning},
    },
    text::list,
};

pub(super) fn check(booking: &Booking, money: Option<&MoneyPlan>, findings: &mut Findings) {
    let (Some(price), Some(money)) = (booking.price, money) else { return };
    let (Some(kept), Some(cost)) = (booking.kept(), booking.cost(money)) else { return };
    let source = Reason::stated("the price list and the costs of the shop");
    let class = booking.service_class;
    let with_fee = booking.card_fee.map(|fee| format!(" with the card fee of {fee}")).unwrap_or_default();
    // The hair may take more than is mixed at first: that is bought too.
    let loss = booking.cost_at_most(money).filter(|most| kept.minor() < most.minor());
    let loss = loss.map(|most| format!("; up to {most} where the hair takes most"));
    let asked_at_most = money.range.map(|range| range.most.gross).filter(|most| price.minor() < most.minor());
    // What is left out can only make it dearer: what is said against the price stands without it.
    let (verdict, text) = if kept.minor() < cost.minor() {
        let kept = booking.net.map(|net| format!(", {net} without tax")).unwrap_or_default();
        (Warning, format!("{class} is {price} on the list{kept}: less than the {cost} that it costs{with_fee}"))
    } else if let Some(by_cost) = booking.by_cost.filter(|by_cost| price.minor() < by_cost.minor()) {
        let costs = loss.map(|most| format!(", and it costs {cost}{with_fee}{most}")).unwrap_or_default();
        let terms = "by its costs and the terms of the shop it would be";
        (Note, format!("{class} is {price} on the list{costs}; {terms} {by_cost}"))
    } else if let Some(most) = loss {
        let kept = booking.net.map(|net| format!(", {net} without tax")).unwrap_or_default();
        (Note, format!("{class} is {price} on the list{kept}, and it costs {cost}{with_fee}{most}"))
    } else if let Some(most) = asked_at_most {
        let terms = "by its costs and the terms of the shop it would be up to";
        (Note, format!("{class} is {price} on the list; {terms} {most} where the hair takes most"))
    } else if money.left_out.is_empty() {
        (Passed, format!("{class} is {price} on the list, and it costs {cost}{with_fee}"))
    } else {
        let mut left_out: Vec<String> = Vec::new();
        for what in money.left_out.iter().map(|one| one.what.to_string()) {
            if !left_out.contains(&what) {
                left_out.push(what);
            }
        }
        let left_out = list(&left_out, "and");
        let text = format!(
            "{class} is {price} on the list; {cost}{with_fee} is not the whole cost, it leaves out: {left_out}"
        );
        (NotJudged, text)
    };
    findings.add(Rule::ListPrice, verdict, text, source);
}
