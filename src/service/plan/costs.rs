//! What the service costs and what to charge, from what is weighed and timed in the plan.

use super::{
    MoneyPlan, Step,
    mixes::{Mixed, Stocked},
    order,
};
use crate::{
    money::{CostEntry, CostKind, CostSource, Measure, PackPrice, Rounding, ServiceCost},
    quantity::Duration,
    service::{
        file::Problems,
        request::{InField, ItemKind, Request, Stage},
    },
    shop::{Consumable, Per},
    source::Basis,
};

/// Every line is rounded to the minor unit as cash is: a half goes up.
const ROUNDING: Rounding = Rounding::MidpointAwayFromZero;

/// The cost and the price; nothing without a table of prices.
pub(super) fn money(request: &Request, steps: &[Step], mixed: &[Mixed]) -> Result<Option<MoneyPlan>, Problems> {
    let Some(currency) = request.shop.currency else { return Ok(None) };
    let mut left_out = Vec::new();
    let mut service = ServiceCost::new(currency, ROUNDING);
    service.entries = products(request, mixed, &mut left_out)?;
    service.entries.extend(consumables(request, &mut left_out)?);
    service.entries.extend(labour(request, &mut left_out)?);
    service.entries.extend(overhead(request, steps, &mut left_out)?);
    let cost = service.table().map_err(|errors| errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "));
    let cost = cost.in_field("shop.terms")?;

    let priced = match request.shop.terms.rule() {
        // A share of a cost of zero is no price.
        Some(rule) if !cost.total().is_zero() => Some(rule.price(cost.total(), None).in_field("shop.terms")?),
        _ => None,
    };
    let taxed = priced.filter(|_| request.shop.terms.tax.is_some()).map(|priced| priced.taxed);
    Ok(Some(MoneyPlan { cost, left_out, price: priced.map(|priced| priced.set), taxed, rounding: ROUNDING }))
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
            let Some(pack) = priced else {
                let note = format!("{name}: no price in the shop");
                if !left_out.contains(&note) {
                    left_out.push(note);
                }
                continue;
            };
            let source = CostSource::Supply { pack, used: (*mass).into(), wasted: None };
            let section = Some(mix.name.clone());
            supplies.push(CostEntry { section, ..CostEntry::new(part, name, Basis::Derived, source) });
        }
    }
    Ok(supplies)
}

fn consumables(request: &Request, left_out: &mut Vec<String>) -> Result<Vec<CostEntry>, Problems> {
    let consumables = &request.shop.consumables;
    if consumables.iter().any(|consumable| consumable.per == Per::Foil) {
        let sections = request.file.section.iter();
        let uncounted = sections.filter(|section| section.foils.is_none() && section.technique.is_in_foil());
        left_out.extend(uncounted.map(|section| format!("foils of {}: enter `foils`", section.name)));
    }
    let foils: u32 = request.tasks.iter().map(|task| task.foils).sum();
    let supply = |(i, consumable): (usize, &Consumable)| {
        let pieces = consumable.pieces.unwrap_or(1);
        let used = match consumable.per {
            Per::Service => pieces,
            Per::Foil => pieces.saturating_mul(foils),
        };
        let field = format!("shop.consumable[{}].price", i + 1);
        let pack = PackPrice::new(consumable.price, Measure::Count(consumable.pack_pieces)).in_field(&field)?;
        let source = CostSource::Supply { pack, used: Measure::Count(used), wasted: None };
        Ok(CostEntry::new(CostKind::Consumables, &consumable.name, Basis::Stated, source))
    };
    consumables.iter().enumerate().map(supply).collect()
}

/// Hands-on time: applying, and the other work that is stated. Waiting belongs to the chair, not to the hands.
fn labour(request: &Request, left_out: &mut Vec<String>) -> Result<Option<CostEntry>, Problems> {
    let terms = &request.shop.terms;
    let Some(labour) = terms.labour else {
        left_out.push("labour: enter `shop.terms.wage_per_h`".to_owned());
        return Ok(None);
    };
    for field in &terms.not_stated {
        let what = match *field {
            "on_costs_percent" => "on-costs of the wage",
            _ => "paid hours without a guest",
        };
        left_out.push(format!("{what}: enter `shop.terms.{field}`"));
    }
    let applying: f64 = request.tasks.iter().map(|task| task.apply.min()).sum();
    let hands_on = Duration::from_min(applying + other_work(request)).in_field("service.other_work_min")?;
    if request.file.service.other_work_min.is_none() {
        left_out.push("consultation, rinsing, drying: enter `service.other_work_min`".to_owned());
    }
    Ok(Some(CostEntry::labour(labour, hands_on, Basis::Derived)))
}

/// Time in the chair: to the last rinse, then the toners, then the other work.
fn overhead(request: &Request, steps: &[Step], left_out: &mut Vec<String>) -> Result<Option<CostEntry>, Problems> {
    let Some(overhead) = request.shop.terms.overhead else {
        left_out.push("overhead: enter `shop.terms.overhead_per_h`".to_owned());
        return Ok(None);
    };
    let after = order::end_min(steps, |stage| stage != Stage::Section);
    let chair = order::end_min(steps, |stage| stage == Stage::Section) + after + other_work(request);
    let chair = Duration::from_min(chair).in_field("service.other_work_min")?;
    Ok(Some(CostEntry::overhead(overhead, chair, Basis::Derived)))
}

fn other_work(request: &Request) -> f64 {
    request.file.service.other_work_min.unwrap_or(0.0)
}
