//! The strengths that a section may be given: every bottle that its product takes, and blends between them.

use super::{
    developer::{self, Candidate},
    scalp::Ceiling,
    sections::Work,
    situation::applied,
};
use crate::{
    quantity::{Mass, MassFraction, Quantity},
    service::request::{Oxidant, Request},
    source::Interval,
};

/// Blends are tried in steps of this many percent: what a bench can blend and tell apart.
const STEP_WW_PERCENT: f64 = 0.5;
/// The weakest blend that is tried; below it lightener hardly lifts. Assumed.
const WEAKEST_WW_PERCENT: f64 = 1.5;

/// A strength that can be made.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Possible {
    /// Before mixing.
    pub(super) developer: Interval<MassFraction>,
    pub(super) on_hair: Interval<MassFraction>,
    /// Whether it is a bottle as it stands on the shelf.
    pub(super) bottle: bool,
}

/// What a section can be given, weakest first, and what it cannot, with the reason.
pub(super) struct ShelfStrengths {
    pub(super) possible: Vec<Possible>,
    pub(super) refused: Vec<(MassFraction, String)>,
}

/// The strengths for a section whose strength is open; the only one for another.
pub(super) fn strengths(
    request: &Request,
    stocks: &[Candidate<'_>],
    work: &Work<'_>,
    liquid: Mass,
) -> Result<ShelfStrengths, Box<dyn std::error::Error>> {
    if work.task.oxidant != Oxidant::Open {
        let developer = developer::resolve(request, stocks, work.task, liquid, None)?.strength;
        let on_hair = applied(request, work, developer)?;
        return Ok(ShelfStrengths {
            possible: vec![Possible { developer, on_hair, bottle: true }],
            refused: Vec::new(),
        });
    }
    let ceilings = ceilings(work, request);
    let forbids = |strength: &Interval<MassFraction>| ceilings.iter().find(|of| !of.allows(strength));
    let bottles: Vec<Interval<MassFraction>> =
        stocks.iter().map(|stock| stock.strength).filter(|strength| strength.best() > MassFraction::ZERO).collect();
    let percent = |strength: MassFraction| strength.ww_percent();
    let why = |of: &Ceiling| format!("{} takes {} at most", of.whose, of.most);
    let refused = bottles.iter().filter_map(|strength| Some((strength.best(), why(forbids(strength)?))));
    let mut refused: Vec<_> = refused.collect();
    let most = bottles.iter().map(|strength| percent(strength.best())).fold(0.0, f64::max);
    let most = ceilings.iter().map(|of| percent(of.most)).fold(most, f64::min);
    let allowed = bottles.iter().filter(|strength| forbids(strength).is_none());
    let mut wanted: Vec<(f64, bool)> = allowed.map(|strength| (percent(strength.best()), true)).collect();
    // A hundred steps of half a percent are more than any shelf has.
    let steps = (0..100u8).map(|i| WEAKEST_WW_PERCENT + f64::from(i) * STEP_WW_PERCENT);
    wanted.extend(steps.take_while(|step| *step <= most + 1e-9).map(|step| (step, false)));
    // A bottle comes before the blend of its strength, which is then left out.
    wanted.sort_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
    wanted.dedup_by(|later, kept| (later.0 - kept.0).abs() < STEP_WW_PERCENT / 5.0 && !later.1);
    let mut possible = Vec::new();
    for (percent, bottle) in wanted {
        let target = MassFraction::nearest(percent);
        match developer::resolve(request, stocks, work.task, liquid, Some(target)) {
            Ok(made) if forbids(&made.strength).is_none() => {
                let on_hair = applied(request, work, made.strength)?;
                possible.push(Possible { developer: made.strength, on_hair, bottle });
            }
            Err(error) if bottle => refused.push((target, error.to_string())),
            // Too strong for the work, or a blend below the weakest bottle: no loss worth a line.
            Ok(_) | Err(_) => {}
        }
    }
    if possible.is_empty() {
        return Err(match refused.first() {
            Some((strength, why)) => format!("no strength of the shop can be used: {strength}: {why}").into(),
            None => "there is no developer on the shelf".into(),
        });
    }
    Ok(ShelfStrengths { possible, refused })
}

/// The strongest developer that each product takes, and the scalp where they touch it, and whose limit it is; the least first.
fn ceilings(work: &Work<'_>, request: &Request) -> Vec<Ceiling> {
    let items = || work.products.iter().map(|(item, _)| *item);
    let own = items().filter_map(|item| Some((item, item.own_limits()?.strongest?)));
    let own = own.map(|(item, most)| Ceiling { whose: format!("\"{}\"", item.name), most, is_usual: false });
    // Where nobody says whether a gap is left, it is said that this stands on it.
    let touches = if work.task.on_scalp.is_some() { "on the scalp" } else { "on the scalp if no gap is left" };
    let on_scalp = work.scalp_ceilings(items(), request).into_iter();
    let on_scalp = on_scalp.map(|of| Ceiling { whose: format!("{touches}, {}", of.whose), ..of });
    let mut all: Vec<Ceiling> = own.chain(on_scalp).collect();
    all.sort_by(|a, b| a.most.ww_percent().total_cmp(&b.most.ww_percent()));
    all
}
