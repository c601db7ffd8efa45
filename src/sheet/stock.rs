use super::writing::Writing;
use crate::{
    service::{ConsumableLine, Plan, StockLine},
    source::Interval,
    text::{Sheet, range, span},
};

/// What is taken from the shelf, against what is in hand.
pub(super) fn stock(sheet: &mut Sheet, plan: &Plan) {
    let stock = &plan.stock;
    sheet.heading("From the shelf");
    let product = |line: &StockLine| {
        let in_hand = line.in_hand.map_or_else(|| "?".to_owned(), |mass| format!("{:.0}", mass.g()));
        vec![
            line.product.clone(),
            format!("{} g", range(&line.wanted, 0)),
            in_hand,
            line.cover.to_string(),
            String::new(),
        ]
    };
    let writing = Writing::of(plan.habits);
    let cost = |line: &ConsumableLine| {
        let bounds = (line.cost_low, line.cost, line.cost_high);
        let (Some(low), Some(best), Some(high)) = bounds else { return "?".to_owned() };
        span(&Interval::ordered(low, best, high), |m| writing.money(m))
    };
    let counted = stock.consumables.iter().map(|line| {
        let in_hand = line.in_hand_pieces.map_or_else(|| "?".to_owned(), |pieces| pieces.to_string());
        let wanted = line.wanted_pieces.as_ref().map(|wanted| span(wanted, |pieces| pieces.to_string()));
        let wanted = wanted.map_or_else(|| "?".to_owned(), |wanted| format!("{wanted} pieces"));
        vec![line.name.clone(), wanted, in_hand, line.cover.to_string(), cost(line)]
    });
    let rows = stock.products.iter().map(product).chain(counted).collect();
    sheet.table(&["what", "wanted", "in hand", "", "cost"], &[1, 2, 4], rows);
    for line in stock.products.iter().filter(|line| !line.instead.is_empty()) {
        let instead: Vec<String> = line.instead.iter().map(ToString::to_string).collect();
        sheet.paragraph(&format!("- instead of {}: {}", line.product, instead.join("; ")), 2);
    }
}
