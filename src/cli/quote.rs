//! `foilwork business quote`, and the break-even of a whole list.

use super::{
    Outcome, Refusal,
    args::{BreakEvenArgs, QuoteArgs},
    cost::priced,
    kind::Kind,
    output,
    read::about,
    shop::read_with,
    workbook::List,
};
use crate::{
    business::{
        ClassCost, Deposit, PriceListEntry, Quote, SalesMixPlan, price_list, quote_range, read_cost_ranges,
        trace_sales_mix,
    },
    money::{Currency, Money, PriceRule, parse_decimal},
    shop::Shop,
    source::TracedResult,
    text::Sheet,
};
use rust_decimal::Decimal;
use std::path::Path;

pub(super) fn run(args: &QuoteArgs) -> Outcome {
    let (_, business) = read_with(&args.shop, Shop::business)?;
    let list = List::read(&args.list)?;
    let classes =
        read_cost_ranges(&list.text, business.currency).map_err(|problems| list.refused(Kind::Quote, &problems))?;
    match &args.service {
        None => {
            let trail = || of_all(&classes, &business.rule);
            if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
                return told;
            }
            let list = price_list(&classes, &business.rule)?;
            output::report(&args.report, &list, || listed(&list))
        }
        Some(service) => quoted(args, service, &classes, business.currency, &business.rule),
    }
}

/// How every price of the list comes about.
fn of_all(classes: &[ClassCost], rule: &PriceRule) -> Result<Vec<TracedResult>, Refusal> {
    let mut all = Vec::new();
    for class in classes {
        let quote = quote_range(&class.parts, rule, class.in_chair, Deposit::Percent(Decimal::ZERO))?;
        let name = full_name(&class.service, &class.class);
        let trail = quote.trail(&class.parts, rule, class.in_chair).into_iter();
        all.extend(trail.map(|one| TracedResult { what: format!("{name}: {}", one.what), ..one }));
    }
    Ok(all)
}

fn quoted(args: &QuoteArgs, service: &str, classes: &[ClassCost], currency: Currency, rule: &PriceRule) -> Outcome {
    let wanted = |cost: &&ClassCost| {
        cost.service == service && args.class.as_ref().is_none_or(|class| cost.class.as_str() == class.as_str())
    };
    let found: Vec<&ClassCost> = classes.iter().filter(wanted).collect();
    let class = match found.as_slice() {
        [class] => *class,
        [] => {
            let known: Vec<String> = classes.iter().map(|cost| full_name(&cost.service, &cost.class)).collect();
            return Err(Refusal(format!("--service: no {service:?} in the list; it has {}", known.join("; "))));
        }
        several => {
            let classes: Vec<&str> = several.iter().map(|cost| cost.class.as_str()).collect();
            return Err(Refusal(format!(
                "--service {service:?} has several classes: add --class, one of {}",
                classes.join(", ")
            )));
        }
    };
    let deposit = match args.deposit.as_deref() {
        None => Deposit::Percent(Decimal::ZERO),
        Some(text) => match text.trim().strip_suffix('%') {
            Some(percent) => {
                Deposit::Percent(parse_decimal("percentage", percent.trim()).map_err(|e| about("--deposit", e))?)
            }
            None => Deposit::Fixed(Money::parse(text.trim(), currency).map_err(|e| about("--deposit", e))?),
        },
    };
    let quote = quote_range(&class.parts, rule, class.in_chair, deposit)?;
    let trail = || Ok::<_, Refusal>(quote.trail(&class.parts, rule, class.in_chair));
    if let Some(told) = output::traced((&args.trail, &args.report), 0, trail) {
        return told;
    }
    output::report(&args.report, &quote, || quote_text(&full_name(&class.service, &class.class), &quote))
}

fn full_name(service: &str, class: &str) -> String {
    if class.is_empty() { service.to_owned() } else { format!("{service}, {class}") }
}

fn quote_text(name: &str, quote: &Quote) -> String {
    let mut sheet = Sheet::default();
    let (low, best, high) = (quote.low.taxed.gross, quote.best.taxed.gross, quote.high.taxed.gross);
    sheet.paragraph(&format!("{name}: {low} to {high}, as expected {best} (the guest pays, with tax)"), 2);
    if !quote.deposit.is_zero() {
        sheet.line(&format!("  in advance {}, then {}", quote.deposit, quote.balance));
    }
    sheet.blank();
    let rows = quote.drivers.iter().map(|driver| {
        let share = driver.share_percent.map(|share| format!("{share} %")).unwrap_or_default();
        vec![driver.what.clone(), driver.swing.to_string(), share, driver.basis.to_string()]
    });
    sheet.table(&["what moves the price", "by, net", "share", "basis"], &[1, 2], rows.collect());
    sheet.finish()
}

fn listed(list: &[PriceListEntry]) -> String {
    let mut sheet = Sheet::default();
    let amount = |money: Money| money.decimal().to_string();
    let rows = list.iter().map(|entry| {
        let driver = entry.driver.as_ref().map(|driver| driver.what.clone()).unwrap_or_default();
        let name = full_name(&entry.service, &entry.class);
        vec![name, amount(entry.low), amount(entry.usual), amount(entry.high), driver]
    });
    sheet.table(&["service", "from", "usual", "to", "moved most by"], &[1, 2, 3], rows.collect());
    if let Some(first) = list.first() {
        sheet.blank();
        sheet.line(&format!("Amounts in {}, with tax.", first.low.currency()));
    }
    sheet.finish()
}

/// How many of each service of the list, in the mix they are sold in, reach the goal.
pub(super) fn sales_of_the_list(args: &BreakEvenArgs, list: &Path, shop: &Path) -> Outcome {
    let table = priced(list, shop)?;
    let amount =
        |name, text: &str| Money::parse(text, table.totals.cost.currency()).map_err(|error| about(name, error));
    let plan = table.sales_needed(amount("--fixed", &args.fixed)?, amount("--profit", &args.profit)?)?;
    if let Some(told) = output::traced((&args.trail, &args.report), 0, || Ok::<_, Refusal>(trace_sales_mix(&plan))) {
        return told;
    }
    output::report(&args.report, &plan, || mix_text(&plan))
}

fn mix_text(plan: &SalesMixPlan) -> String {
    let mut sheet = Sheet::default();
    let amount = |money: Money| money.decimal().to_string();
    let rows = plan
        .services
        .iter()
        .map(|line| vec![line.what.clone(), line.count.to_string(), amount(line.sales), amount(line.contribution)]);
    let mut rows: Vec<_> = rows.collect();
    rows.push(vec!["all".to_owned(), plan.count.to_string(), amount(plan.sales), String::new()]);
    sheet.table(&["service", "to sell", "net takings", "leaves"], &[1, 2, 3], rows);
    sheet.blank();
    let left = format!("Amounts in {}; beyond the goal: {}.", plan.sales.currency(), plan.left_over);
    sheet.paragraph(&left, 0);
    sheet.paragraph(
        "Wages by the hour and rent are fixed costs here; each service leaves its net price less product, \
                     consumables, laundry and card fee. Whole services are rounded up, so the mix is kept only nearly.",
        0,
    );
    sheet.finish()
}
