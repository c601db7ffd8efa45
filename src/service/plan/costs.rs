//! The sixth stage: what the service costs and what to charge, from what is weighed and timed in the plan.

use super::{
    ChairTime, CostRange, Mix, PartKind, PriceRange, PricedBy,
    first_steps::FirstSteps,
    price_plan::{self, Takes},
    sections::{Sections, Work},
    stock::pieces,
};
use crate::{
    choice::choice,
    money::{
        CostEntry, CostKind, CostSource, CostTable, Measure, PackPrice, Rounding, ServiceCost, SetPrice, TaxedPrice,
    },
    quantity::{Mass, Quantity},
    service::{
        file::Problems,
        request::{InField, Request},
    },
    shop::{Consumable, Per},
    source::Basis,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What it costs and what to charge. Amounts are exact decimal text.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct MoneyPlan {
    /// The cost, line by line.
    pub cost: CostTable,
    /// The cost as the hair may take less or more mixture; absent where that moves nothing.
    pub cost_range: Option<CostRange>,
    /// What the cost leaves out because the file does not say.
    pub left_out: Vec<LeftOut>,
    /// The net price with margin and mark-up, where one of them is given.
    pub price: Option<SetPrice>,
    /// The same price with its tax, where a rate is given.
    pub taxed: Option<TaxedPrice>,
    /// By what the price was found.
    pub priced_by: Option<PricedBy>,
    /// The price as the hair may take less or more mixture; absent where that moves nothing.
    pub range: Option<PriceRange>,
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
        PackPrice = "pack-price" => "no price in the shop",
        /// Foils that nobody counted.
        Foils = "foils" => "foils",
        /// Pay.
        Labour = "labour",
        /// What comes on top of the pay.
        OnCosts = "on-costs" => "on-costs of the wage",
        /// Hours that are paid while no guest is there.
        PaidHours = "paid-hours" => "paid hours without a guest",
        /// Work besides applying.
        OtherWork = "other-work" => "consultation, drying",
        /// The chair.
        Overhead = "overhead",
    }
}

impl std::fmt::Display for LeftOut {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match (&self.of, self.what) {
            (Some(of), LeftOutCost::PackPrice) => write!(f, "{of}: {}", self.what),
            (Some(of), what) => write!(f, "{what} of {of}"),
            (None, what) => what.fmt(f),
        }
    }
}

impl LeftOut {
    fn whole(what: LeftOutCost) -> Self {
        Self { what, of: None }
    }

    /// The field that would bring it in; none for a pack, which has two.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::service::{LeftOut, LeftOutCost};
    ///
    /// assert_eq!(LeftOut { what: LeftOutCost::Labour, of: None }.field(), Some("shop.terms.wage_per_h"));
    /// ```
    #[must_use]
    pub const fn field(&self) -> Option<&'static str> {
        match self.what {
            LeftOutCost::PackPrice => None,
            LeftOutCost::Foils => Some("foils"),
            LeftOutCost::Labour => Some("shop.terms.wage_per_h"),
            LeftOutCost::OnCosts => Some("shop.terms.on_costs_percent"),
            LeftOutCost::PaidHours => Some("shop.terms.productive_percent"),
            LeftOutCost::OtherWork => Some("service.other_work_min"),
            LeftOutCost::Overhead => Some("shop.terms.overhead_per_h"),
        }
    }
}

/// The cost and the price; none without a table of prices.
pub(super) fn money(
    request: &Request,
    (sections, first): (&Sections<'_>, &FirstSteps),
    mixes: &[Mix],
    chair: &ChairTime,
) -> Result<Option<MoneyPlan>, Problems> {
    let Some(currency) = request.shop.currency else { return Ok(None) };
    let terms = &request.shop.terms;
    let mut left_out = Vec::new();
    let mut others = consumables(request, sections, &mut left_out)?;
    others.extend(labour(request, chair, &mut left_out));
    others.extend(overhead(request, chair, &mut left_out));
    // Products are named first, in the table and in what it leaves out.
    let mut unpriced = Vec::new();
    let mut table = |takes: Takes| {
        let mut service = ServiceCost::new(currency, terms.rounding);
        service.entries = products(request, (sections, first), mixes, takes, &mut unpriced);
        service.entries.extend(others.iter().cloned());
        let table = service.table();
        table
            .map_err(|errors| errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))
            .in_field("shop.terms")
    };
    let (cost, least, most) = (table(Takes::AsPlanned)?, table(Takes::Least)?, table(Takes::Most)?);
    left_out.splice(0..0, unpriced);
    let ends = CostRange { least: least.total(), most: most.total() };

    let in_chair = chair.total;
    // A share of a cost of zero is no price.
    let rule = terms.rule().filter(|_| !cost.total().is_zero());
    let priced = rule.map(|rule| rule.price(cost.total(), Some(in_chair))).transpose().in_field("shop.terms")?;
    let range =
        rule.map(|rule| price_plan::range(&rule, in_chair, &least, &most)).transpose().in_field("shop.terms")?;
    let taxed = priced.filter(|_| terms.tax.is_some()).map(|priced| priced.taxed);
    Ok(Some(MoneyPlan {
        cost,
        cost_range: (ends.least != ends.most).then_some(ends),
        left_out,
        price: priced.map(|priced| priced.set),
        taxed,
        priced_by: rule.zip(priced).map(|(rule, priced)| PricedBy::of(&rule, terms.tax, &priced)),
        range: range.flatten(),
        rounding: terms.rounding,
    }))
}

/// Everything that is weighed, section by section, leftovers included: they are paid for all the same.
fn products(
    request: &Request,
    (sections, first): (&Sections<'_>, &FirstSteps),
    mixes: &[Mix],
    takes: Takes,
    left_out: &mut Vec<LeftOut>,
) -> Vec<CostEntry> {
    let mut supplies = Vec::new();
    let mut pay = |name: &str, product: &str, kind: PartKind, used: Mass| {
        let Some(pack) = priced(request, product) else {
            let note = LeftOut { what: LeftOutCost::PackPrice, of: Some(product.to_owned()) };
            if !left_out.contains(&note) {
                left_out.push(note);
            }
            return;
        };
        let kind = if kind == PartKind::Additive { CostKind::Additive } else { CostKind::Product };
        let source = CostSource::Supply { pack, used: used.into(), wasted: None };
        let section = Some(name.to_owned());
        supplies.push(CostEntry { section, ..CostEntry::new(kind, product, Basis::Derived, source) });
    };
    for (work, mix) in sections.iter().zip(mixes) {
        let made = takes.of_planned(mix, work);
        for (bowl, part) in mix.bowls.iter().flat_map(|bowl| bowl.parts.iter().map(move |part| (bowl, part))) {
            let used = Mass::nearest(part.weigh.g() * bowl.count as f64 * made);
            pay(&mix.name, &part.product, part.kind, used);
        }
    }
    for (step, part) in first.planned().flat_map(|step| step.parts.iter().map(move |part| (step, part))) {
        let used = match takes {
            Takes::Least => part.mass.low(),
            Takes::AsPlanned => part.weigh,
            Takes::Most => part.mass.high(),
        };
        pay(&step.section, &part.product, part.kind, used);
    }
    supplies
}

/// The pack of a product; names are unique in the shop.
fn priced(request: &Request, name: &str) -> Option<PackPrice> {
    let bottle = request.bottles.iter().find(|bottle| bottle.name == name).map(|bottle| bottle.priced);
    let item = || request.items.iter().find(|item| item.name == name).map(|item| item.priced);
    bottle.or_else(item).flatten()
}

fn consumables(
    request: &Request,
    sections: &Sections<'_>,
    left_out: &mut Vec<LeftOut>,
) -> Result<Vec<CostEntry>, Problems> {
    let consumables = &request.shop.consumables;
    if consumables.iter().any(|consumable| consumable.per == Per::Foil) {
        let of = |work: &Work| LeftOut { what: LeftOutCost::Foils, of: Some(work.name().to_owned()) };
        left_out.extend(sections.uncounted_foils().map(of));
    }
    let foils = sections.foils();
    let supply = |(i, consumable): (usize, &Consumable)| {
        let used = pieces(consumable, foils).best();
        let field = format!("shop.consumable[{}].price", i + 1);
        let pack = PackPrice::new(consumable.price, Measure::Count(consumable.pack_pieces)).in_field(&field)?;
        let source = CostSource::Supply { pack, used: Measure::Count(used), wasted: None };
        Ok(CostEntry::new(CostKind::Consumables, &consumable.name, Basis::Stated, source))
    };
    consumables.iter().enumerate().map(supply).collect()
}

/// Hands-on time. Waiting belongs to the chair, not to the hands.
fn labour(request: &Request, chair: &ChairTime, left_out: &mut Vec<LeftOut>) -> Option<CostEntry> {
    let terms = &request.shop.terms;
    let Some(labour) = terms.labour else {
        left_out.push(LeftOut::whole(LeftOutCost::Labour));
        return None;
    };
    left_out.extend(terms.not_stated.iter().map(|field| match *field {
        "on_costs_percent" => LeftOut::whole(LeftOutCost::OnCosts),
        _ => LeftOut::whole(LeftOutCost::PaidHours),
    }));
    if chair.other_work.is_none() {
        left_out.push(LeftOut::whole(LeftOutCost::OtherWork));
    }
    Some(CostEntry::labour(labour, chair.hands_on, chair.basis))
}

/// Time in the chair.
fn overhead(request: &Request, chair: &ChairTime, left_out: &mut Vec<LeftOut>) -> Option<CostEntry> {
    let Some(overhead) = request.shop.terms.overhead else {
        left_out.push(LeftOut::whole(LeftOutCost::Overhead));
        return None;
    };
    Some(CostEntry::overhead(overhead, chair.total, chair.basis))
}
