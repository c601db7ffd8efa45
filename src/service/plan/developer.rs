//! Which bottles give the strength that a task asks for.

use super::PartKind;
use crate::{
    mix::as_applied,
    peroxide::{Conditions, Objective, Shelf, StatedStrength, Stock, as_labelled, blend_shelf},
    quantity::{Mass, MassFraction, Share, Temperature},
    service::request::{Oxidant, Request, Task},
    shop::Bottle,
    source::{Basis, Interval},
};

/// A developer as it goes into the bowl: bottles and diluent by share.
pub(super) struct Oxidising<'r> {
    pub(super) parts: Vec<(&'r Candidate<'r>, Share)>,
    pub(super) strength: Interval<MassFraction>,
    pub(super) basis: Basis,
}

/// A bottle or a diluent of the shop.
pub(super) struct Candidate<'r> {
    pub(super) name: &'r str,
    pub(super) kind: PartKind,
    pub(super) strength: Interval<MassFraction>,
    basis: Basis,
    /// A developer's.
    bottle: Option<&'r Bottle>,
    /// With the amount in hand and the price, as far as the shop states them.
    stock: Stock,
}

impl Candidate<'_> {
    /// A developer's name, the strength that it states, and under what that is read.
    pub(super) fn states(&self, room: Temperature) -> Option<(String, StatedStrength, Conditions)> {
        self.bottle.map(|bottle| (bottle.name.clone(), bottle.stated, bottle.conditions(room)))
    }

    /// What it may hold: where nobody measured it, what a solution so labelled may be off comes to its strength.
    pub(super) fn may_hold(&self) -> Interval<MassFraction> {
        if self.kind == PartKind::Developer && self.basis >= Basis::Stated {
            as_labelled(self.strength)
        } else {
            self.strength
        }
    }
}

/// Developers first, in the order of the shop, then diluents, which count as stocks without peroxide.
pub(super) fn candidates(request: &Request) -> Vec<Candidate<'_>> {
    let bottles = request.bottles.iter().zip(&request.shop.bottles).map(|(bottle, stocked)| Candidate {
        name: &bottle.name,
        kind: PartKind::Developer,
        strength: bottle.strength,
        basis: bottle.basis,
        bottle: Some(stocked),
        stock: stocked.facts.stock(bottle.strength),
    });
    let diluents = request.shop.diluents.iter().map(|diluent| Candidate {
        name: &diluent.name,
        kind: PartKind::Diluent,
        strength: Interval::exact(MassFraction::ZERO),
        basis: Basis::Stated,
        bottle: None,
        stock: diluent.facts.stock(Interval::exact(MassFraction::ZERO)),
    });
    bottles.chain(diluents).collect()
}

/// The bottle that was named, or a blend that makes `total` of the strength asked for, or of the one that was `chosen`
/// for a task that asks for none.
pub(super) fn resolve<'r>(
    request: &Request,
    stocks: &'r [Candidate<'r>],
    task: &Task,
    total: Mass,
    chosen: Option<MassFraction>,
) -> Result<Oxidising<'r>, Box<dyn std::error::Error>> {
    match task.oxidant {
        Oxidant::Bottle(i) => {
            let stock = stocks.get(i).ok_or("the developer is not in the shop")?;
            Ok(Oxidising { parts: vec![(stock, Share::ALL)], strength: stock.strength, basis: stock.basis })
        }
        Oxidant::Nothing => {
            Ok(Oxidising { parts: Vec::new(), strength: Interval::exact(MassFraction::ZERO), basis: Basis::Stated })
        }
        Oxidant::Open => blend(stocks, chosen.ok_or("no strength was chosen for it")?, total),
        Oxidant::Strength(stated) => blend(stocks, stated.mass_fraction(request.room)?.best(), total),
    }
}

/// The least cost where every stock has a price. Without prices the two stocks next above and below the strength asked
/// for are taken, because a weighing error then changes the strength least; if too little of them is in hand, the
/// fewest bottles that do it.
fn blend<'r>(
    stocks: &'r [Candidate<'r>],
    target: MassFraction,
    total: Mass,
) -> Result<Oxidising<'r>, Box<dyn std::error::Error>> {
    let best = |stock: &&Candidate| stock.strength.best();
    let by_strength = |a: &&Candidate, b: &&Candidate| best(a).ww_percent().total_cmp(&best(b).ww_percent());
    let above = stocks.iter().filter(|stock| best(stock) >= target).min_by(by_strength);
    let below = stocks.iter().filter(|stock| best(stock) <= target).max_by(by_strength);
    let ends = (stocks.iter().min_by(by_strength), stocks.iter().max_by(by_strength));
    let (Some(above), Some(below)) = (above, below) else {
        let (Some(weakest), Some(strongest)) = ends else { return Err("there is no developer on the shelf".into()) };
        let reach = match (best(&weakest), best(&strongest)) {
            (low, high) if low == high => format!("has nothing but {low:.2}"),
            (low, high) => format!("reaches from {low:.2} to {high:.2}"),
        };
        let way_out = "change the strength, or add a developer or a diluent";
        return Err(format!("cannot blend {target}: the shelf {reach}; {way_out}").into());
    };
    let shelf =
        |chosen: &mut dyn Iterator<Item = &Candidate>| Shelf::new(chosen.map(|one| one.stock.clone()).collect());
    let everything = || shelf(&mut stocks.iter());
    let blended = if stocks.iter().all(|stock| stock.stock.price.is_some()) {
        blend_shelf(&everything()?, target, total, Objective::LeastCost)
    } else {
        let nearest: &[&Candidate] = if best(&above) == best(&below) { &[above] } else { &[above, below] };
        let nearest = shelf(&mut nearest.iter().copied())?;
        match blend_shelf(&nearest, target, total, Objective::FewestBottles) {
            Ok(blended) => Ok(blended),
            Err(_) => blend_shelf(&everything()?, target, total, Objective::FewestBottles),
        }
    }?;

    // The strongest goes into the bowl first.
    let mut portions: Vec<_> = blended.portions.iter().collect();
    portions.sort_by(|a, b| b.stock.strength.best().ww_percent().total_cmp(&a.stock.strength.best().ww_percent()));
    let mut basis = Basis::Derived;
    let (mut parts, mut weighed) = (Vec::new(), Vec::new());
    for portion in portions {
        let Some(stock) = stocks.iter().find(|stock| stock.name == portion.stock.name) else { continue };
        basis = basis.weaker(stock.basis);
        parts.push((stock, Share::from_fraction((portion.mass.g() / total.g()).min(1.0))?));
        weighed.push((portion.mass, stock.strength));
    }
    if let [(only, _)] = parts.as_slice() {
        basis = only.basis;
    }
    Ok(Oxidising { parts, strength: as_applied(&weighed)?, basis })
}
