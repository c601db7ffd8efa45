//! The sixth stage: what the service costs and what to charge, from what is weighed and timed in the plan.

use super::{
    Mix, PartKind,
    sections::{Sections, Work},
    timeline::Timeline,
};
use crate::{
    choice::choice,
    money::{
        CostEntry, CostKind, CostSource, CostTable, Currency, Labour, Margin, Markup, Measure, Money, OnCosts,
        Overhead, PackPrice, PriceRule, PriceTarget, ProductiveShare, Rounding, ServiceCost, SetPrice, TaxRate,
        TaxedPrice,
    },
    quantity::{Duration, Mass, Quantity},
    service::{
        file::Problems,
        request::{InField, Priced, Request},
        shape::{Per, Prices},
    },
    source::Basis,
};
use rust_decimal::Decimal;
use schemars::JsonSchema;
use serde::Serialize;

/// What it costs and what to charge. Amounts are exact decimal text.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct MoneyPlan {
    /// The cost, line by line.
    pub cost: CostTable,
    /// What the cost leaves out because the file does not say.
    pub left_out: Vec<LeftOut>,
    /// The net price with margin and mark-up, where one of them is given.
    pub price: Option<SetPrice>,
    /// The same price with its tax, where a rate is given.
    pub taxed: Option<TaxedPrice>,
    /// How amounts are rounded.
    pub rounding: Rounding,
}

/// Something that the cost leaves out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct LeftOut {
    /// What.
    pub what: LeftOutCost,
    /// The product or section, where it is one of several.
    pub of: Option<String>,
}

choice! {
    /// Costs that a plan may have to leave out.
    LeftOutCost: "cost left out" {
        /// A product whose pack has no price.
        PackPrice = "pack-price" => "no price on the shelf",
        /// Foils that nobody counted.
        Foils = "foils" => "foils",
        /// Pay.
        Labour = "labour",
        /// What comes on top of the pay.
        OnCosts = "on-costs" => "on-costs of the wage",
        /// Hours that are paid while no guest is there.
        PaidHours = "paid-hours" => "paid hours without a guest",
        /// Work besides applying.
        OtherWork = "other-work" => "consultation, rinsing, drying",
        /// The chair.
        Overhead = "overhead",
    }
}

impl LeftOut {
    fn whole(what: LeftOutCost) -> Self {
        Self { what, of: None }
    }

    /// The field that would bring it in; none for a pack, which has two.
    #[must_use]
    pub const fn field(&self) -> Option<&'static str> {
        match self.what {
            LeftOutCost::PackPrice => None,
            LeftOutCost::Foils => Some("foils"),
            LeftOutCost::Labour => Some("prices.wage_per_hour"),
            LeftOutCost::OnCosts => Some("prices.on_cost_percent"),
            LeftOutCost::PaidHours => Some("prices.productive_percent"),
            LeftOutCost::OtherWork => Some("prices.other_work_min"),
            LeftOutCost::Overhead => Some("prices.overhead_per_hour"),
        }
    }
}

/// Every line is rounded to the minor unit as cash is: a half goes up.
const ROUNDING: Rounding = Rounding::MidpointAwayFromZero;

/// The cost and the price; none without a table of prices.
pub(super) fn money(
    request: &Request,
    sections: &Sections<'_>,
    mixes: &[Mix],
    timeline: &Timeline,
) -> Result<Option<MoneyPlan>, Problems> {
    let (Some(prices), Some(currency)) = (&request.file.prices, request.currency) else { return Ok(None) };
    let mut left_out = Vec::new();
    let mut service = ServiceCost::new(currency, ROUNDING);
    service.entries = products(request, mixes, &mut left_out)?;
    service.entries.extend(consumables(sections, prices, currency, &mut left_out)?);
    service.entries.extend(labour(sections, prices, currency, &mut left_out)?);
    service.entries.extend(overhead(prices, timeline, currency, &mut left_out)?);
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
fn products(request: &Request, mixes: &[Mix], left_out: &mut Vec<LeftOut>) -> Result<Vec<CostEntry>, Problems> {
    let mut supplies = Vec::new();
    for (mix, bowl) in mixes.iter().flat_map(|mix| mix.bowls.iter().map(move |bowl| (mix, bowl))) {
        for part in &bowl.parts {
            let Some(Priced { pack, price }) = priced(request, &part.product) else {
                let note = LeftOut { what: LeftOutCost::PackPrice, of: Some(part.product.clone()) };
                if !left_out.contains(&note) {
                    left_out.push(note);
                }
                continue;
            };
            let kind = if part.kind == PartKind::Additive { CostKind::Additive } else { CostKind::Product };
            let pack = PackPrice::new(price, pack).in_field("shelf")?;
            let used = Mass::nearest(part.weigh.g() * bowl.count as f64);
            let source = CostSource::Supply { pack, used: used.into(), wasted: None };
            let section = Some(mix.name.clone());
            supplies.push(CostEntry { section, ..CostEntry::new(kind, &part.product, Basis::Derived, source) });
        }
    }
    Ok(supplies)
}

/// The pack of a product; names are unique on the shelf.
fn priced(request: &Request, name: &str) -> Option<Priced> {
    let bottle = request.bottles.iter().find(|bottle| bottle.name == name).map(|bottle| bottle.priced);
    let item = || request.items.iter().find(|item| item.name == name).map(|item| item.priced);
    bottle.or_else(item).flatten()
}

fn consumables(
    sections: &Sections<'_>,
    prices: &Prices,
    currency: Currency,
    left_out: &mut Vec<LeftOut>,
) -> Result<Vec<CostEntry>, Problems> {
    if prices.consumable.iter().any(|consumable| consumable.per == Per::Foil) {
        let uncounted = sections.iter().filter(|work| work.task.foils.is_none() && work.is_in_foil());
        let of = |work: &Work| LeftOut { what: LeftOutCost::Foils, of: Some(work.name().to_owned()) };
        left_out.extend(uncounted.map(of));
    }
    let foils: u32 = sections.iter().filter_map(|work| work.task.foils).sum();
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
    sections: &Sections<'_>,
    prices: &Prices,
    currency: Currency,
    left_out: &mut Vec<LeftOut>,
) -> Result<Option<CostEntry>, Problems> {
    let Some(wage) = &prices.wage_per_hour else {
        left_out.push(LeftOut::whole(LeftOutCost::Labour));
        return Ok(None);
    };
    let field = "prices.wage_per_hour";
    let wage = Money::parse(wage, currency).in_field(field)?;
    let on_costs = Decimal::try_from(prices.on_cost_percent.unwrap_or(0.0)).in_field("prices.on_cost_percent")?;
    let on_costs = OnCosts::from_percent(on_costs).in_field("prices.on_cost_percent")?;
    if prices.on_cost_percent.is_none() {
        left_out.push(LeftOut::whole(LeftOutCost::OnCosts));
    }
    if prices.productive_percent.is_none() {
        left_out.push(LeftOut::whole(LeftOutCost::PaidHours));
    }
    let productive =
        Decimal::try_from(prices.productive_percent.unwrap_or(100.0)).in_field("prices.productive_percent")?;
    let productive = ProductiveShare::from_percent(productive).in_field("prices.productive_percent")?;
    let labour = Labour::with_productive_share(wage, on_costs, productive).in_field(field)?;
    let applying: f64 = sections.iter().map(|work| work.task.apply.min()).sum();
    let hands_on = Duration::from_min(applying + other_work(prices)).in_field("prices.other_work_min")?;
    if prices.other_work_min.is_none() {
        left_out.push(LeftOut::whole(LeftOutCost::OtherWork));
    }
    Ok(Some(CostEntry::labour(labour, hands_on, Basis::Derived)))
}

/// Time in the chair: to the last rinse, then the toners, then the other work.
fn overhead(
    prices: &Prices,
    timeline: &Timeline,
    currency: Currency,
    left_out: &mut Vec<LeftOut>,
) -> Result<Option<CostEntry>, Problems> {
    let Some(overhead) = &prices.overhead_per_hour else {
        left_out.push(LeftOut::whole(LeftOutCost::Overhead));
        return Ok(None);
    };
    let field = "prices.overhead_per_hour";
    let overhead = Overhead::per_hour(Money::parse(overhead, currency).in_field(field)?).in_field(field)?;
    let chair = timeline.last_rinse().min() + timeline.after_rinse().min() + other_work(prices);
    Ok(Some(CostEntry::overhead(overhead, Duration::from_min(chair).in_field(field)?, Basis::Derived)))
}

fn other_work(prices: &Prices) -> f64 {
    prices.other_work_min.unwrap_or(0.0)
}
