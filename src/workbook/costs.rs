//! The page of a plan's cost and price.

use super::{
    WorkbookError,
    cells::{at, down, rounded},
    page::{Allowed, Page},
};
use crate::{
    money::{Money, SetPrice, TaxRate},
    service::{MoneyPlan, Plan},
    sheet::{booked, price_range, times},
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

/// What the service costs, line by line, and what its price leaves.
pub(super) fn costs(plan: &Plan, money: &MoneyPlan) -> Result<Page, WorkbookError> {
    let lines = money.cost.lines();
    let currency = money.cost.total().currency();
    let decimals = currency.exponent() as usize;
    let amounts = Allowed { low: 0.0, high: 1_000_000_000.0, unit: currency.code() };
    let mut page = Page::new("Cost", "Cost and price of the service", &[20.0, 36.0, 22.0, 14.0, 12.0, 18.0])?;
    if let Some(banner) = plan.banner() {
        page.stop(&banner)?;
        page.row += 1;
    }
    page.how()?;
    page.paragraph(&booked(plan))?;
    page.paragraph(&format!("{}.", times(plan)))?;
    page.paragraph(
        "These amounts are of the bowls as they were planned: other sizes on the page Bench do not change them.",
    )?;
    for left_out in &money.left_out {
        let field = left_out.field().map(|field| format!(": enter `{field}`")).unwrap_or_default();
        page.paragraph(&format!("Not counted: {left_out}{field}"))?;
    }
    if !money.left_out.is_empty() {
        page.row += 1;
    }
    let amount = format!("amount, {}", currency.code());
    page.heading(&["kind", "what", "for", &amount, "share, %", "basis"])?;
    page.repeat_heading()?;
    let first = page.row;
    let last = first + (lines.len() as u32).saturating_sub(1);
    let total_of = format!("SUM({})", down(3, first, last));
    let whole = float(money.cost.total());
    for line in lines {
        page.text(0, &line.kind.to_string())?;
        page.text(1, &line.what)?;
        page.text(2, line.section.as_deref().unwrap_or_default())?;
        page.input(3, float(line.amount), decimals, amounts)?;
        let share = if whole > 0.0 { 100.0 * float(line.amount) / whole } else { 0.0 };
        page.formula(4, &format!("IF({total_of}=0,0,100*{}/{total_of})", at(page.row, 3)), share, 1)?;
        page.text(5, &line.basis.to_string())?;
        page.row += 1;
    }
    page.text(0, "cost")?;
    if lines.is_empty() {
        page.number(3, 0.0, decimals)?;
    } else {
        page.formula(3, &total_of, whole, decimals)?;
    }
    page.call("cost", 3);
    page.row += 2;
    match &money.price {
        Some(set) => price(&mut page, (plan, money), set, decimals, amounts)?,
        None if money.cost.total().minor() == 0 => page.paragraph("Price not computed: nothing here has a cost.")?,
        None => {
            page.paragraph("Price not computed: enter `margin_percent` or `markup_percent` in `shop.terms`.")?;
        }
    }
    if let Some(price) = plan.booking.price {
        by_the_list(&mut page, (plan, money), price, decimals, amounts)?;
    }
    page.paragraph(
        "Margin is profit over net price, mark-up is profit over cost, card fee included: not the same number.",
    )?;
    page.paragraph(&format!("Every line of the plan was rounded once ({}).", money.rounding))?;
    Ok(page)
}

fn price(
    page: &mut Page,
    (plan, money): (&Plan, &MoneyPlan),
    set: &SetPrice,
    decimals: usize,
    amounts: Allowed,
) -> Result<(), WorkbookError> {
    let (net, profit) = (float(set.price), float(set.profit));
    let listed = plan.booking.is_listed();
    let by_costs = |words: &str| if listed { format!("{words}, by its costs") } else { words.to_owned() };
    let rate = money.priced_by.as_ref().and_then(|by| by.tax_percent);
    // Where the list has moved the price, the tax is taken out of what the guest pays, as the plan does.
    let from_list = rate.is_some() && money.priced_by.as_ref().is_some_and(|by| by.moved);
    if from_list {
        page.named_formula("net_price", &by_costs("net price"), "gross_price-tax", net, decimals)?;
    } else {
        page.named_input("net_price", &by_costs("net price"), net, decimals, amounts)?;
    }
    // What the card terminal keeps is in the cost that the price is held against, not among the lines.
    let fee = set.cost.minus(money.cost.total()).map_or(0.0, float);
    page.named_input("card_fee", "card fee, at this price", fee, decimals, amounts)?;
    page.named_formula("profit", &by_costs("profit"), "net_price-cost-card_fee", profit, decimals)?;
    let margin = "IF(net_price=0,0,100*profit/net_price)";
    page.named_formula("margin_percent", &by_costs("margin, %"), margin, percent(set.margin.percent()), 1)?;
    let markup = "IF(cost+card_fee=0,0,100*profit/(cost+card_fee))";
    page.named_formula("markup_percent", &by_costs("mark-up, %"), markup, percent(set.markup.percent()), 1)?;
    let Some(taxed) = &money.taxed else {
        return page.paragraph("Tax is not counted: the shop states none.");
    };
    let (tax, gross) = (float(taxed.tax), float(taxed.gross));
    match rate {
        Some(rate) => {
            tax_rate(page, rate)?;
            let exact =
                if from_list { "gross_price*tax_percent/(100+tax_percent)" } else { "net_price*tax_percent/100" };
            page.named_formula("tax", "tax", &rounded(exact, decimals, money.rounding), tax, decimals)?;
        }
        None => page.named_input("tax", "tax", tax, decimals, amounts)?,
    }
    // Where the price list has a price, the guest pays that one, which stands above.
    let words = if listed { "by its costs, with tax" } else { "THE GUEST PAYS" };
    if from_list {
        page.named_input("gross_price", words, gross, decimals, amounts)?;
    } else {
        page.named_formula("gross_price", words, "net_price+tax", gross, decimals)?;
    }
    if let Some(told) = price_range(plan, money) {
        page.paragraph(&format!("{told}; one visit, the times as planned."))?;
    }
    Ok(())
}

/// The rate of the tax, which both prices are worked with.
fn tax_rate(page: &mut Page, rate: TaxRate) -> Result<(), WorkbookError> {
    let shown = rate.percent().normalize().scale().max(2) as usize;
    page.named_input("tax_percent", "tax, %", percent(rate.percent()), shown, Allowed::PERCENT)
}

/// What the guest pays by the price list, and what it leaves.
fn by_the_list(
    page: &mut Page,
    (plan, money): (&Plan, &MoneyPlan),
    price: Money,
    decimals: usize,
    amounts: Allowed,
) -> Result<(), WorkbookError> {
    page.named_input("list_price", "by the price list", float(price), decimals, amounts)?;
    let booking = &plan.booking;
    let net = match booking.tax_percent {
        Some(rate) => {
            // A price by the costs has written it.
            if money.taxed.is_none() {
                tax_rate(page, rate)?;
            }
            // The tax in it is what is rounded, as the plan does.
            let tax = rounded("list_price*tax_percent/(100+tax_percent)", decimals, money.rounding);
            format!("list_price-{tax}")
        }
        None => "list_price".to_owned(),
    };
    let without_tax = float(booking.kept().unwrap_or(price));
    let words = if booking.tax_percent.is_some() { "without tax" } else { "without tax, none being stated" };
    page.named_formula("list_net_price", words, &net, without_tax, decimals)?;
    let Some(set) = booking.leaves(money) else { return Ok(()) };
    let fee = booking.card_fee.map_or(0.0, float);
    page.named_input("list_card_fee", "card fee, at the price of the list", fee, decimals, amounts)?;
    let profit = "list_net_price-cost-list_card_fee";
    page.named_formula("list_profit", "profit, by the price list", profit, float(set.profit), decimals)?;
    let margin = "IF(list_net_price=0,0,100*list_profit/list_net_price)";
    let percent = percent(set.margin.percent());
    page.named_formula("list_margin_percent", "margin, %, by the price list", margin, percent, 1)?;
    // Where the hair may take more than is planned, the price leaves less.
    let Some((range, [_, least])) = money.cost_range.zip(booking.leaves_between(money)) else { return Ok(()) };
    if least.profit.minor() < set.profit.minor() {
        let most = "cost where the hair takes most";
        page.named_input("list_cost_at_most", most, float(range.most), decimals, amounts)?;
        let profit = "list_net_price-list_cost_at_most-list_card_fee";
        let words = "profit, by the price list, where the hair takes most";
        page.named_formula("list_profit_at_least", words, profit, float(least.profit), decimals)?;
    }
    Ok(())
}

fn percent(decimal: Decimal) -> f64 {
    decimal.to_f64().unwrap_or(0.0)
}

pub(super) fn float(money: Money) -> f64 {
    money.decimal().to_f64().unwrap_or(0.0)
}
