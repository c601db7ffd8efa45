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
        span(&Interval::ordered(line.cost_low, line.cost, line.cost_high), |m| writing.money(m))
    };
    let counted = stock.consumables.iter().map(|line| {
        let in_hand = line.in_hand_pieces.map_or_else(|| "?".to_owned(), |pieces| pieces.to_string());
        let wanted = format!("{} pieces", span(&line.wanted_pieces, |pieces| pieces.to_string()));
        vec![line.name.clone(), wanted, in_hand, line.cover.to_string(), cost(line)]
    });
    let rows = stock.products.iter().map(product).chain(counted).collect();
    sheet.table(&["what", "wanted", "in hand", "", "cost"], &[1, 2, 4], rows);
    for line in stock.products.iter().filter(|line| !line.instead.is_empty()) {
        let instead: Vec<String> =
            line.instead.iter().map(|other| format!("{} ({})", other.product, other.why)).collect();
        sheet.paragraph(&format!("- instead of {}: {}", line.product, instead.join("; ")), 2);
    }
}
