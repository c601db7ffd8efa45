//! What the shelf has instead of a product that runs short.

use super::super::{PartKind, near_shades::near};
use crate::{
    colour::Swatch,
    mix::{Cas, Ingredient},
    peroxide::{Objective, Shelf, Stock, blend_shelf},
    quantity::{Mass, MassFraction, Quantity},
    service::request::Request,
    shop::{StockFacts, StockedAdditive, StockedShade},
    source::Interval,
    text::{list, number, span},
};
use schemars::JsonSchema;
use serde::Serialize;
use std::fmt;

/// What could be taken instead, and what changes with it.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Substitute {
    /// Its name in the shop; of a blend all names.
    pub product: String,
    /// What it is, and what to mind.
    pub why: String,
    /// How far its colour is from the one that is missing, on white hair by the model; absent for what is no shade.
    pub apart_ciede2000: Option<Interval<f64>>,
}

/// What to take, and why.
impl fmt::Display for Substitute {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({})", self.product, self.why)
    }
}

/// What runs short.
pub(super) struct Missing<'m> {
    pub(super) product: &'m str,
    pub(super) kind: PartKind,
    pub(super) wanted: Interval<Mass>,
}

/// How many are offered.
const OFFERED: usize = 2;

/// What the shelf has enough of, nearest first; what an additive does is not known, so that another one is offered only
/// where both declare something alike. `taken` is what the same service takes of each product.
pub(super) fn of(request: &Request, line: &Missing<'_>, taken: &[(String, Mass)]) -> Vec<Substitute> {
    match line.kind {
        PartKind::Colour => shades(request, line, taken),
        PartKind::Developer => developers(request, line, taken).into_iter().collect(),
        PartKind::Lightener => lighteners(request, line, taken),
        PartKind::Diluent => {
            let others = request.shop.diluents.iter().filter(|other| other.name != line.product);
            let enough = others.filter(|other| has(&other.name, &other.facts, line, taken));
            let offer = |other: &crate::shop::Diluent| Substitute {
                product: other.name.clone(),
                why: "weakens the developer as well".to_owned(),
                apart_ciede2000: None,
            };
            enough.map(offer).take(OFFERED).collect()
        }
        PartKind::Additive => additives(request, line, taken),
        PartKind::Remover => Vec::new(),
    }
}

/// Whether there is enough besides what the service takes of it anyway; what is not counted is always enough, as everywhere
/// in the shop.
fn has(name: &str, facts: &StockFacts, line: &Missing<'_>, taken: &[(String, Mass)]) -> bool {
    facts.in_hand.is_none_or(|in_hand| spare(name, in_hand, taken) >= line.wanted.high())
}

/// What is left of a product when the service has taken its part.
fn spare(name: &str, in_hand: Mass, taken: &[(String, Mass)]) -> Mass {
    taken.iter().filter(|(product, _)| product == name).fold(in_hand, |left, (_, taken)| left.minus_or_zero(*taken))
}

/// Shades of the same class by how far they look apart on white hair.
fn shades(request: &Request, line: &Missing<'_>, taken: &[(String, Mass)]) -> Vec<Substitute> {
    let Some(missing) = request.shop.shade(line.product) else { return Vec::new() };
    let looks = Swatch::of_shade(&missing.shade);
    let fits = |other: &StockedShade| {
        let code = other.shade.code();
        code != line.product && other.class == missing.class && has(code, &other.facts, line, taken)
    };
    let offer = |(other, ciede2000): (&StockedShade, Interval<f64>)| {
        let apart = span(&ciede2000, |apart| number(apart, 1));
        let ratio = if other.ratio == missing.ratio { "" } else { ", with a ratio of its own" };
        let why = format!("{}, CIEDE2000 {apart} apart on white hair{ratio}", of_shade(other));
        Substitute { product: other.shade.code().to_owned(), why, apart_ciede2000: Some(ciede2000) }
    };
    near(request, &looks, fits).into_iter().map(offer).take(OFFERED).collect()
}

fn of_shade(other: &StockedShade) -> String {
    format!("{} {}", other.shade.level(), other.shade.tone())
}

/// The other bottles, blended to the same strength.
fn developers(request: &Request, line: &Missing<'_>, taken: &[(String, Mass)]) -> Option<Substitute> {
    let strength = request.bottles.iter().find(|bottle| bottle.name == line.product)?.strength;
    let own = request.bottles.iter().zip(&request.shop.bottles);
    let bottles = own.filter(|(bottle, _)| bottle.name != line.product);
    let mut stocks: Vec<Stock> = bottles.map(|(bottle, stocked)| stocked.facts.stock(bottle.strength)).collect();
    stocks.extend(request.shop.diluents.iter().map(|one| one.facts.stock(Interval::exact(MassFraction::ZERO))));
    for stock in &mut stocks {
        stock.in_hand = stock.in_hand.map(|in_hand| spare(&stock.name, in_hand, taken));
    }
    stocks.retain(|stock| stock.in_hand.is_none_or(|in_hand| in_hand.g() > 0.0));
    let shelf = Shelf::new(stocks).ok()?;
    let blend = blend_shelf(&shelf, strength.best(), line.wanted.high(), Objective::FewestBottles).ok()?;
    let names: Vec<&str> = blend.portions.iter().map(|portion| portion.stock.name.as_str()).collect();
    let grams: Vec<String> = blend.portions.iter().map(|portion| format!("{:.0}", portion.mass)).collect();
    let why = match grams.as_slice() {
        [_] => "the same strength".to_owned(),
        _ => format!("blended to the same strength, {}", grams.join(" + ")),
    };
    Some(Substitute { product: names.join(" + "), why, apart_ciede2000: None })
}

/// Other additives in which something is declared that the missing one declares too, those with most of it first; each at its
/// own dose.
fn additives(request: &Request, line: &Missing<'_>, taken: &[(String, Mass)]) -> Vec<Substitute> {
    let all = &request.shop.additives;
    let Some(missing) = all.iter().find(|one| one.name == line.product) else { return Vec::new() };
    let alike = |other: &StockedAdditive| -> Vec<String> {
        let held = missing.facts.declared.ingredients.iter().filter(|one| one.level.high() > MassFraction::ZERO);
        let also = |one: &&Ingredient| {
            let same = |there: &Ingredient| match (one.identity(), there.identity()) {
                (Some(one), Some(there)) => one == there,
                _ => one.name.eq_ignore_ascii_case(&there.name),
            };
            // Water is in nearly all of them and does nothing.
            one.identity() != Some(Cas::WATER)
                && other
                    .facts
                    .declared
                    .ingredients
                    .iter()
                    .any(|there| there.level.high() > MassFraction::ZERO && same(there))
        };
        held.filter(also).map(|one| one.name.clone()).collect()
    };
    let enough = |other: &StockedAdditive| {
        let by_dose = other.dose.percent() / missing.dose.percent();
        let wanted = line.wanted.map(|mass| Mass::nearest(mass.g() * by_dose));
        has(&other.name, &other.facts, &Missing { wanted, ..*line }, taken)
    };
    let others = all.iter().filter(|other| other.name != line.product && enough(other));
    let mut found: Vec<(Vec<String>, &StockedAdditive)> = others.map(|other| (alike(other), other)).collect();
    found.retain(|(alike, _)| !alike.is_empty());
    // In the order of the shop where as much is alike.
    found.sort_by_key(|(alike, _)| std::cmp::Reverse(alike.len()));
    let offer = |(alike, other): (Vec<String>, &StockedAdditive)| Substitute {
        product: other.name.clone(),
        why: format!(
            "declares {} too, dose {} instead of {}: by its own leaflet",
            list(alike, "and"),
            other.dose,
            missing.dose
        ),
        apart_ciede2000: None,
    };
    found.into_iter().map(offer).take(OFFERED).collect()
}

/// Other lighteners that may touch the scalp if this one may.
fn lighteners(request: &Request, line: &Missing<'_>, taken: &[(String, Mass)]) -> Vec<Substitute> {
    let missing = request.shop.lighteners.iter().find(|one| one.name == line.product);
    let Some(missing) = missing else { return Vec::new() };
    let others = request.shop.lighteners.iter().filter(|other| other.name != line.product);
    let fits =
        others.filter(|other| (other.on_scalp || !missing.on_scalp) && has(&other.name, &other.facts, line, taken));
    let offer = |other: &crate::shop::Lightener| Substitute {
        product: other.name.clone(),
        why: format!("{} to developer: weigh it anew, and test a strand", other.ratio),
        apart_ciede2000: None,
    };
    fits.map(offer).take(OFFERED).collect()
}
