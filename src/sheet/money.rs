use super::writing::Writing;
use crate::{
    money::TaxedPrice,
    service::{LeftOut, MoneyPlan, Plan},
    text::{Sheet, amount},
};

/// Cost and price.
pub(super) fn money(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Cost and price");
    sheet.paragraph(&booked(plan), 0);
    let Some(money) = &plan.money else {
        sheet.line("not computed: the shop states no `currency`");
        return;
    };
    let writing = Writing::of(plan.habits);
    cost(sheet, money, writing);
    price(sheet, plan, money);
    sheet.paragraph(&format!("{}.", times(plan)), 2);
    for left_out in &money.left_out {
        sheet.paragraph(&format!("- not counted: {}", words(left_out)), 2);
    }
    sheet.paragraph(&format!("Every line is rounded once ({}); the total is their sum.", money.rounding), 0);
}

/// The class to book, its time, and what the price list says for it.
pub(crate) fn booked(plan: &Plan) -> String {
    let (booking, writing) = (&plan.booking, Writing::of(plan.habits));
    let minutes = booking.book.map(|book| format!(" for {} min", amount(book, 0))).unwrap_or_default();
    let price = match (booking.price, booking.extra.filter(|extra| !extra.is_zero())) {
        (None, _) => format!("price unknown, {}", booking.price_why_not.as_deref().unwrap_or_default()),
        (Some(price), None) => format!("{} by the price list", writing.money(price)),
        (Some(price), Some(extra)) => {
            format!(
                "{} by the price list, of which {} for the time beyond what it includes ({} min in the chair)",
                writing.money(price),
                writing.money(extra),
                amount(booking.in_chair, 0)
            )
        }
    };
    format!("Booked as {}{minutes}: {price}.", booking.service_class)
}

fn cost(sheet: &mut Sheet, money: &MoneyPlan, writing: Writing) {
    let shares = money.cost.shares();
    let mut rows: Vec<Vec<String>> = money
        .cost
        .lines()
        .iter()
        .enumerate()
        .map(|(place, line)| {
            vec![
                line.kind.to_string(),
                line.what.clone(),
                line.section.clone().unwrap_or_default(),
                writing.money(line.amount),
                shares.get(place).map(|share| format!("{} %", share.share_percent)).unwrap_or_default(),
            ]
        })
        .collect();
    let total = writing.money(money.cost.total());
    rows.push(vec!["cost".to_owned(), String::new(), String::new(), total, String::new()]);
    sheet.table(&["", "what", "for", "amount", "share"], &[3, 4], rows);
}

fn price(sheet: &mut Sheet, plan: &Plan, money: &MoneyPlan) {
    let writing = Writing::of(plan.habits);
    sheet.blank();
    match &money.price {
        Some(set) => {
            sheet.paragraph(
                &format!(
                    "{}{}net price {}: margin {}, which is mark-up {}",
                    by_costs(plan),
                    fee(money, writing),
                    writing.money(set.price),
                    set.margin,
                    set.markup
                ),
                2,
            );
        }
        None if money.cost.total().minor() == 0 => sheet.line("price not computed: nothing here has a cost"),
        None => sheet.line("price not computed: enter `margin_percent` or `markup_percent` in `shop.terms`"),
    }
    match (&money.taxed, &money.price) {
        (Some(taxed), _) => sheet.line(&with_tax(plan, taxed, "THE GUEST PAYS")),
        (None, Some(_)) => sheet.line("tax not counted: enter `shop.terms.tax_percent` if there is one"),
        (None, None) => {}
    }
    if let Some(told) = range(plan, money) {
        sheet.paragraph(&format!("{told}; one visit, the times as planned."), 2);
    }
    if let Some(listed) = plan.booking.price {
        sheet.line(&format!("THE GUEST PAYS {}, by the price list", writing.money(listed)));
        if let Some(told) = leaves(plan, money) {
            sheet.paragraph(&told, 2);
        }
    }
}

/// What the price of the list is without tax, the card fee of that price, and what it leaves.
fn leaves(plan: &Plan, money: &MoneyPlan) -> Option<String> {
    let (booking, writing) = (&plan.booking, Writing::of(plan.habits));
    let set = booking.leaves(money)?;
    let net = booking.net.map_or_else(
        || "tax is not counted, for none is stated; ".to_owned(),
        |net| format!("{} of it without tax; ", writing.money(net)),
    );
    let fee = booking.card_fee.map(|fee| format!("card fee {}, a cost too; ", writing.money(fee))).unwrap_or_default();
    let down_to = down_to(plan, money).map(|told| format!("; {told}")).unwrap_or_default();
    Some(format!("{net}{fee}it leaves {}: margin {}{down_to}", writing.money(set.profit), set.margin))
}

/// What the price of the list leaves at least, where the hair may take more than is planned.
fn down_to(plan: &Plan, money: &MoneyPlan) -> Option<String> {
    let [_, most] = plan.booking.leaves_between(money)?;
    let less = most.profit.minor() < plan.booking.leaves(money)?.profit.minor();
    less.then(|| format!("down to {} where the hair takes most", Writing::of(plan.habits).money(most.profit)))
}

/// Before what the costs would ask for, where the price list has a price: the guest pays that one.
pub(super) const fn by_costs(plan: &Plan) -> &'static str {
    if plan.booking.is_listed() { "by its costs: " } else { "" }
}

/// The tax and the price with it: what the guest pays, or would pay by the costs.
pub(super) fn with_tax(plan: &Plan, taxed: &TaxedPrice, pays: &str) -> String {
    let writing = Writing::of(plan.habits);
    let (tax, gross) = (writing.money(taxed.tax), writing.money(taxed.gross));
    if plan.booking.is_listed() {
        format!("tax {tax}, with tax {gross} by its costs")
    } else {
        format!("tax {tax}, {pays} {gross}")
    }
}

/// The minutes behind chair, hands and price, and what they count.
pub(crate) fn times(plan: &Plan) -> String {
    let chair = &plan.chair;
    let (total, hands) = (amount(chair.total, 0), amount(chair.hands_on, 0));
    format!("Counted are {total} min in the chair and {hands} min of hands, by {}", chair.clock)
}

/// The card fee, which counts as a cost in margin and mark-up and is not among the lines of the cost.
pub(super) fn fee(money: &MoneyPlan, writing: Writing) -> String {
    let fee = money.priced_by.as_ref().map(|by| by.card_fee).filter(|fee| fee.minor() != 0);
    fee.map(|fee| format!("card fee {}, a cost too; ", writing.money(fee))).unwrap_or_default()
}

/// The price of the costs where the hair takes less or more mixture; what the price list says stands whatever it takes.
pub(crate) fn range(plan: &Plan, money: &MoneyPlan) -> Option<String> {
    let (range, writing) = (money.range.as_ref()?, Writing::of(plan.habits));
    let (least, most) = (writing.money(range.least.gross), writing.money(range.most.gross));
    let from = if plan.booking.is_listed() { "By its costs from" } else { "From" };
    Some(format!("{from} {least} to {most}, as the hair takes less or more mixture"))
}

/// What is left out, with the field that would bring it in.
pub(super) fn words(left_out: &LeftOut) -> String {
    match left_out.field() {
        Some(field) => format!("{left_out}: enter `{field}`"),
        None => left_out.to_string(),
    }
}
