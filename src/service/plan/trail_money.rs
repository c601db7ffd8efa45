//! The way to cost and price: by the costs, and by the list of prices where it has one for the service.

use super::{MoneyPlan, Plan, PricedBy};
use crate::{
    money::{COST_FORMULA, Money, SetPrice, TaxRate, TaxedPrice, amount, net_of, of},
    source::{Basis, Interval, TracedResult, citations::money},
    text::traced,
};

/// Cost, price, tax, what is left, and how far the price may move.
pub(super) fn amounts(plan: &Plan, money: &MoneyPlan) -> Vec<TracedResult> {
    let basis = money.cost.basis().unwrap_or(Basis::Stated);
    let mut results = vec![cost(money, basis)];
    // A price is no better founded than its cost.
    let basis = basis.weaker(Basis::Derived);
    if let (Some(set), Some(by)) = (&money.price, &money.priced_by) {
        results.extend(price(plan, money, set, by, basis));
        if !plan.booking.is_listed() {
            results.push(left(set, by.card_percent.map(|_| by.card_fee), basis));
        }
        results.extend(range(money, basis));
    }
    if let Some(price) = plan.booking.price {
        // The guest pays this one; what stands before is what the costs would ask for.
        for result in results.iter_mut().skip(1) {
            result.what += BY_COSTS;
        }
        results.extend(listed(plan, money, price, basis));
    }
    results
}

const BY_COSTS: &str = ", by its costs";
const LISTED: &str = "price of the class";
const LISTED_AND_FURTHER: &str = "price of the class + price of the time beyond";

/// What the guest pays by the list, the tax in it, and what it leaves.
fn listed(plan: &Plan, money: &MoneyPlan, price: Money, basis: Basis) -> Vec<TracedResult> {
    let booking = &plan.booking;
    let extra = booking.extra.filter(|extra| !extra.is_zero());
    let class = extra.and_then(|extra| price.minus(extra).ok()).unwrap_or(price);
    let inputs = [Some(of("price of the class", class)), extra.map(|extra| of("price of the time beyond", extra))];
    let stated = if extra.is_some() { plan.chair.basis.weaker(Basis::Derived) } else { Basis::Stated };
    let formula = if extra.is_some() { LISTED_AND_FURTHER } else { LISTED };
    let mut results =
        vec![amount("price by the price list", price, formula, stated).made_of(inputs.into_iter().flatten())];
    let taxed = booking.net.zip(booking.tax_percent);
    // Where none is stated, all that the guest pays is taken for the shop's.
    let untaxed = || Some((price, TaxRate::from_percent(0.into()).ok()?));
    let mut stated = stated;
    if let Some((net, tax)) = taxed.or_else(untaxed) {
        let named = ("net price by the price list", net);
        let mut net = net_of(("gross price", price), tax, named, stated.weaker(Basis::Derived));
        if taxed.is_none() {
            without_tax(&mut net);
            stated = stated.weaker(Basis::Assumed);
        }
        results.push(net);
    }
    if let Some(set) = booking.leaves(money) {
        let ends = booking.leaves_between(money).map(|[least, most]| [most, least].map(|end| percent_of(&end)));
        let basis = if ends.is_some() { basis.weaker(Basis::Assumed) } else { basis };
        let mut margin = TracedResult { bounds: ends, ..left(&set, booking.card_fee, basis.weaker(stated)) };
        let between = money.cost_range.map(|range| [range.least, range.most].map(|cost| cost.decimal().to_string()));
        for cost in margin.inputs.iter_mut().filter(|input| input.what == "cost") {
            cost.bounds.clone_from(&between);
        }
        results.push(margin);
    }
    results
}

fn cost(money: &MoneyPlan, basis: Basis) -> TracedResult {
    let lines = money.cost.lines().iter().map(|line| of(&line.what, line.amount));
    amount("cost", money.cost.total(), COST_FORMULA, basis).made_of(lines).resting_on(&[money::COSTING_A_SERVICE.id])
}

/// From the cost to what the guest pays; where the list moves the price, the net price is what is left of it.
fn price(plan: &Plan, money: &MoneyPlan, set: &SetPrice, by: &PricedBy, basis: Basis) -> Vec<TracedResult> {
    let rule = &by.rule;
    // Without a tax the guest pays the net price.
    let untaxed = TaxedPrice { net: set.price, tax: Money::zero(set.price.currency()), gross: set.price };
    let taxed = money.taxed.unwrap_or(untaxed);
    let minutes = traced("minutes in the chair", Interval::exact(plan.chair.total));
    let inputs = (of("cost", money.cost.total()), Some(minutes));
    let [net, gross] = rule.traced(inputs, by.target_net, (&taxed, by.moved), basis);
    let gross = (by.moved || money.taxed.is_some()).then_some(gross);
    let left = || net_of(("gross price", taxed.gross), rule.tax, ("net price", taxed.net), basis);
    let mut steps: Vec<_> = [Some(net), gross, by.moved.then(left)].into_iter().flatten().collect();
    if by.tax_percent.is_none() {
        steps.iter_mut().for_each(without_tax);
    }
    steps
}

/// A step that reckons with a tax although none is stated says so.
fn without_tax(step: &mut TracedResult) {
    for tax in step.inputs.iter_mut().filter(|input| input.what == "tax") {
        "tax, none being stated".clone_into(&mut tax.what);
        tax.basis = Some(Basis::Assumed);
        step.basis = step.basis.weaker(Basis::Assumed);
    }
}

/// What the price leaves, as a part of it.
fn left(set: &SetPrice, card_fee: Option<Money>, basis: Basis) -> TracedResult {
    let cost = card_fee.and_then(|fee| set.cost.minus(fee).ok()).unwrap_or(set.cost);
    let fee = card_fee.map(|fee| of("card fee, of this price", fee));
    let formula = match fee {
        Some(_) => "(net price - cost - card fee) / net price x 100",
        None => "(net price - cost) / net price x 100",
    };
    TracedResult::exact("margin that comes out", percent_of(set), "% of the price", formula, basis)
        .made_of([of("net price", set.price), of("cost", cost)].into_iter().chain(fee))
}

fn percent_of(set: &SetPrice) -> String {
    set.margin.percent().round_dp(6).normalize().to_string()
}

/// The same rule at the cost of less and of more mixture.
fn range(money: &MoneyPlan, basis: Basis) -> Option<TracedResult> {
    let range = money.range.as_ref()?;
    let gross =
        money.taxed.as_ref().map_or_else(|| money.price.as_ref().map(|set| set.price), |taxed| Some(taxed.gross));
    let formula = "the same rule at the cost of fewer bowls, and of as much as the hair takes at most; one visit, times as planned";
    let inputs = [of("cost at least", range.least.cost), of("cost at most", range.most.cost)];
    let ends = [range.least.gross, range.most.gross].map(|gross| gross.decimal().to_string());
    let basis = basis.weaker(Basis::Assumed);
    Some(
        TracedResult { bounds: Some(ends), ..amount("price as the hair takes it", gross?, formula, basis) }
            .made_of(inputs),
    )
}
