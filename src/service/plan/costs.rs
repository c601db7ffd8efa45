//! What the service costs and what to charge, from what is weighed and timed in the plan.

use super::{
    MoneyPlan, Step,
    mixes::{Mixed, Stocked},
    order,
};
use crate::{
    money::{
        CostEntry, CostKind, CostSource, Currency, Labour, Margin, Markup, Measure, Money, OnCosts, Overhead,
        PackPrice, PriceRule, PriceTarget, ProductiveShare, Rounding, ServiceCost, TaxRate,
    },
    quantity::Duration,
    service::{
        file::Problems,
        request::{InField, ItemKind, Priced, Request, Stage},
        shape::{Per, Prices},
    },
    source::Basis,
};
use rust_decimal::Decimal;

/// Every line is rounded to the minor unit as cash is: a half goes up.
const ROUNDING: Rounding = Rounding::MidpointAwayFromZero;

/// The cost and the price; nothing without a table of prices.
pub(super) fn money(request: &Request, steps: &[Step], mixed: &[Mixed]) -> Result<Option<MoneyPlan>, Problems> {
    let (Some(prices), Some(currency)) = (&request.file.prices, request.currency) else { return Ok(None) };
    let mut left_out = Vec::new();
    let mut service = ServiceCost::new(currency, ROUNDING);
    service.entries = products(request, mixed, &mut left_out)?;
    service.entries.extend(consumables(request, prices, currency, &mut left_out)?);
    service.entries.extend(labour(request, prices, currency, &mut left_out)?);
    service.entries.extend(overhead(prices, steps, currency, &mut left_out)?);
    let cost = service.table().map_err(|errors| errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "));
    let cost = cost.in_field("prices")?;

    let priced = match rule(prices)? {
        // A share of a cost of zero is no price.
        Some(rule) if !cost.total().is_zero() => Some(rule.price(cost.total(), None).in_field("prices")?),
        _ => None,
    };
    let taxed = priced.filter(|_| prices.tax_percent.is_some()).map(|priced| priced.taxed);
    Ok(Some(MoneyPlan { cost, left_out, price: priced.map(|priced| priced.set), taxed, rounding: ROUNDING }))
}

/// How the price is set; `None` when the file does not say.
fn rule(prices: &Prices) -> Result<Option<PriceRule>, Problems> {
    let percent = |value: f64| Decimal::try_from(value).map_err(|error| error.to_string());
    let target = match (prices.margin_percent, prices.markup_percent) {
        (Some(margin), _) => {
            let margin = Margin::from_percent(percent(margin).in_field("prices.margin_percent")?);
            PriceTarget::Margin(margin.in_field("prices.margin_percent")?)
        }
        (None, Some(markup)) => {
            let markup = Markup::from_percent(percent(markup).in_field("prices.markup_percent")?);
            PriceTarget::Markup(markup.in_field("prices.markup_percent")?)
        }
        (None, None) => return Ok(None),
    };
    let tax = TaxRate::from_percent(percent(prices.tax_percent.unwrap_or(0.0)).in_field("prices.tax_percent")?);
    let tax = tax.in_field("prices.tax_percent")?;
    Ok(Some(PriceRule { target, tax, card: None, ending: None, rounding: ROUNDING }))
}

/// Everything that is weighed, section by section, leftovers included: they are paid for all the same.
fn products(request: &Request, mixed: &[Mixed], left_out: &mut Vec<String>) -> Result<Vec<CostEntry>, Problems> {
    let mut supplies = Vec::new();
    for Mixed { mix, used, .. } in mixed {
        for (stocked, mass) in used {
            let (name, part, priced) = match stocked {
                Stocked::Bottle(i) => match request.bottles.get(*i) {
                    Some(bottle) => (&bottle.name, CostKind::Product, bottle.priced),
                    None => continue,
                },
                Stocked::Item(i) => match request.items.get(*i) {
                    Some(item) if matches!(item.kind, ItemKind::Additive { .. }) => {
                        (&item.name, CostKind::Additive, item.priced)
                    }
                    Some(item) => (&item.name, CostKind::Product, item.priced),
                    None => continue,
                },
            };
            let Some(Priced { pack, price }) = priced else {
                let note = format!("{name}: no price on the shelf");
                if !left_out.contains(&note) {
                    left_out.push(note);
                }
                continue;
            };
            let pack = PackPrice::new(price, pack).in_field("shelf")?;
            let source = CostSource::Supply { pack, used: (*mass).into(), wasted: None };
            let section = Some(mix.name.clone());
            supplies.push(CostEntry { section, ..CostEntry::new(part, name, Basis::Derived, source) });
        }
    }
    Ok(supplies)
}

fn consumables(
    request: &Request,
    prices: &Prices,
    currency: Currency,
    left_out: &mut Vec<String>,
) -> Result<Vec<CostEntry>, Problems> {
    if prices.consumable.iter().any(|consumable| consumable.per == Per::Foil) {
        let sections = request.file.section.iter();
        let uncounted = sections.filter(|section| section.foils.is_none() && section.technique.is_in_foil());
        left_out.extend(uncounted.map(|section| format!("foils of {}: enter `foils`", section.name)));
    }
    let foils: u32 = request.tasks.iter().map(|task| task.foils).sum();
    let supply = |(i, consumable): (usize, &crate::service::shape::Consumable)| {
        let pieces = consumable.pieces.unwrap_or(1);
        let used = match consumable.per {
            Per::Service => pieces,
            Per::Foil => pieces.saturating_mul(foils),
        };
        let field = format!("prices.consumable[{}].price", i + 1);
        let price = Money::parse(&consumable.price, currency).in_field(&field)?;
        let pack = PackPrice::new(price, Measure::Count(consumable.pack_pieces)).in_field(&field)?;
        let source = CostSource::Supply { pack, used: Measure::Count(used), wasted: None };
        Ok(CostEntry::new(CostKind::Consumables, &consumable.name, Basis::Stated, source))
    };
    prices.consumable.iter().enumerate().map(supply).collect()
}

/// Hands-on time: applying, and the other work that is stated. Waiting belongs to the chair, not to the hands.
fn labour(
    request: &Request,
    prices: &Prices,
    currency: Currency,
    left_out: &mut Vec<String>,
) -> Result<Option<CostEntry>, Problems> {
    let Some(wage) = &prices.wage_per_hour else {
        left_out.push("labour: enter `prices.wage_per_hour`".to_owned());
        return Ok(None);
    };
    let field = "prices.wage_per_hour";
    let wage = Money::parse(wage, currency).in_field(field)?;
    let on_costs = Decimal::try_from(prices.on_cost_percent.unwrap_or(0.0)).in_field("prices.on_cost_percent")?;
    let on_costs = OnCosts::from_percent(on_costs).in_field("prices.on_cost_percent")?;
    if prices.on_cost_percent.is_none() {
        left_out.push("on-costs of the wage: enter `prices.on_cost_percent`".to_owned());
    }
    if prices.productive_percent.is_none() {
        left_out.push("paid hours without a guest: enter `prices.productive_percent`".to_owned());
    }
    let productive =
        Decimal::try_from(prices.productive_percent.unwrap_or(100.0)).in_field("prices.productive_percent")?;
    let productive = ProductiveShare::from_percent(productive).in_field("prices.productive_percent")?;
    let labour = Labour::with_productive_share(wage, on_costs, productive).in_field(field)?;
    let applying: f64 = request.tasks.iter().map(|task| task.apply.min()).sum();
    let hands_on = Duration::from_min(applying + other_work(prices)).in_field("prices.other_work_min")?;
    if prices.other_work_min.is_none() {
        left_out.push("consultation, rinsing, drying: enter `prices.other_work_min`".to_owned());
    }
    Ok(Some(CostEntry::labour(labour, hands_on, Basis::Derived)))
}

/// Time in the chair: to the last rinse, then the toners, then the other work.
fn overhead(
    prices: &Prices,
    steps: &[Step],
    currency: Currency,
    left_out: &mut Vec<String>,
) -> Result<Option<CostEntry>, Problems> {
    let Some(overhead) = &prices.overhead_per_hour else {
        left_out.push("overhead: enter `prices.overhead_per_hour`".to_owned());
        return Ok(None);
    };
    let field = "prices.overhead_per_hour";
    let overhead = Overhead::per_hour(Money::parse(overhead, currency).in_field(field)?).in_field(field)?;
    let after = order::end_min(steps, |stage| stage != Stage::Section);
    let chair = order::end_min(steps, |stage| stage == Stage::Section) + after + other_work(prices);
    Ok(Some(CostEntry::overhead(overhead, Duration::from_min(chair).in_field(field)?, Basis::Derived)))
}

fn other_work(prices: &Prices) -> f64 {
    prices.other_work_min.unwrap_or(0.0)
}
