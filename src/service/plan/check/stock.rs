//! What is in hand covers what the plan takes.

use super::super::{StockCover, StockPlan, findings::Findings};
use crate::{
    finding::{Reason, Rule, Verdict},
    text::{range, span},
};

/// What is short, and what may run short.
pub(super) fn check(stock: &StockPlan, findings: &mut Findings) {
    let verdict = |cover| match cover {
        StockCover::Short => Some((Verdict::Warning, "not enough in hand")),
        StockCover::MayRunShort => Some((Verdict::Note, "may run short")),
        StockCover::Covered | StockCover::NotCounted => None,
    };
    let source = || Reason::stated("the amounts in hand as the shop states them");
    for line in &stock.products {
        let (Some((verdict, said)), Some(in_hand)) = (verdict(line.cover), line.in_hand) else { continue };
        let instead: Vec<String> = line.instead.iter().map(ToString::to_string).collect();
        let way_out = if instead.is_empty() {
            "get more, or mix less".to_owned()
        } else {
            format!("get more, or take instead: {}", instead.join("; "))
        };
        let text = format!(
            "{}: {said}, {} g wanted and {:.0} there: {way_out}",
            line.product,
            range(&line.wanted, 0),
            in_hand
        );
        findings.add(Rule::Stock, verdict, text, source());
    }
    for line in &stock.consumables {
        let counted = line.wanted_pieces.as_ref().zip(line.in_hand_pieces);
        let (Some((verdict, said)), Some((wanted, in_hand))) = (verdict(line.cover), counted) else { continue };
        let wanted = span(wanted, |pieces| pieces.to_string());
        let text = format!("{}: {said}, {wanted} wanted and {in_hand} there: get more", line.name);
        findings.add(Rule::Stock, verdict, text, source());
    }
}
