//! Which bottles give the strength that a task asks for.

use super::mixes::Stocked;
use crate::{
    mix::as_applied,
    peroxide::{KnownMass, blend_two},
    quantity::{Mass, MassFraction, Share},
    service::request::{ItemKind, Oxidant, Request, Task},
    source::{Basis, Interval},
};

/// A developer as it goes into the bowl: bottles and diluent by share.
pub(super) struct Oxidising {
    pub(super) parts: Vec<(Stocked, Share, Interval<MassFraction>)>,
    pub(super) strength: Interval<MassFraction>,
    pub(super) basis: Basis,
}

type Candidate = (Stocked, Interval<MassFraction>, Basis);

/// The bottle that was named, or a blend of the two stocks next above and below the strength asked for.
///
/// The nearest neighbours are taken because a weighing error then changes the strength least. A diluent counts as a
/// stock without peroxide.
pub(super) fn resolve(request: &Request, task: &Task) -> Result<Oxidising, Box<dyn std::error::Error>> {
    let stocks = stocks(request);
    match task.oxidant {
        Oxidant::Bottle(i) => {
            let (stocked, strength, basis) = stocks.get(i).copied().ok_or("the developer is not on the shelf")?;
            Ok(Oxidising { parts: vec![(stocked, Share::ALL, strength)], strength, basis })
        }
        Oxidant::Nothing => {
            Ok(Oxidising { parts: Vec::new(), strength: Interval::exact(MassFraction::ZERO), basis: Basis::Stated })
        }
        Oxidant::Strength(stated) => blend(&stocks, stated.mass_fraction(request.room)?.best()),
    }
}

/// Developers first, in the order of the shelf, then diluents.
fn stocks(request: &Request) -> Vec<Candidate> {
    let bottles = request.bottles.iter().enumerate();
    let diluents = request.items.iter().enumerate().filter(|(_, item)| item.kind == ItemKind::Diluent);
    bottles
        .map(|(i, bottle)| (Stocked::Bottle(i), bottle.strength, bottle.basis))
        .chain(diluents.map(|(i, _)| (Stocked::Item(i), Interval::exact(MassFraction::ZERO), Basis::Stated)))
        .collect()
}

fn blend(stocks: &[Candidate], target: MassFraction) -> Result<Oxidising, Box<dyn std::error::Error>> {
    let best = |(_, strength, _): &&Candidate| strength.best();
    let by_strength = |a: &&Candidate, b: &&Candidate| best(a).percent_ww().total_cmp(&best(b).percent_ww());
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
    if best(&above) == best(&below) {
        let (stocked, strength, basis) = *above;
        return Ok(Oxidising { parts: vec![(stocked, Share::ALL, strength)], strength, basis });
    }
    let hundred = Mass::from_g(100.0)?;
    let blend = blend_two(best(&above), best(&below), target, KnownMass::Total(hundred))?;
    let weighed = [(blend.first, above.1), (blend.second, below.1)];
    Ok(Oxidising {
        parts: vec![
            (above.0, Share::from_percent(blend.first.g())?, above.1),
            (below.0, Share::from_percent(blend.second.g())?, below.1),
        ],
        strength: as_applied(&weighed)?,
        basis: above.2.weaker(below.2).weaker(Basis::Derived),
    })
}
