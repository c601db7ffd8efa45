//! What a section's mix is to the law of lift: the hair under it, its warmth, its time.

use super::{own_times::OwnTimes, sections::Work};
use crate::{
    lift::Situation,
    quantity::{Duration, MassFraction, Quantity, Temperature},
    service::request::{ItemKind, Request, of_hair, on_hair},
    source::Interval,
};

/// Warmth at the scalp: between the room and the skin, which has about 33 C. Assumed.
const SCALP_C: f64 = 30.0;

/// The mix of a section with this strength on the hair.
pub(super) fn situation(request: &Request, work: &Work<'_>, on_hair: Interval<MassFraction>) -> Situation {
    let product = work.products.first().map(|(item, _)| *item);
    let room = request.room;
    let warm = Temperature::nearest(SCALP_C);
    let temperature = if work.task.on_scalp == Some(true) && warm > room { warm } else { room };
    Situation { on_hair, temperature, cover: work.task.cover, ..of_hair(&request.file, product) }
}

/// The strength on the hair of a developer in this section's bowl.
pub(super) fn applied(
    request: &Request,
    work: &Work<'_>,
    developer: Interval<MassFraction>,
) -> Result<Interval<MassFraction>, Box<dyn std::error::Error>> {
    let doses = work.task.additives.iter().filter_map(|i| match request.items.get(*i)?.kind {
        ItemKind::Additive { dose } => Some(dose),
        _ => None,
    });
    match &work.ratio {
        Some(ratio) => on_hair(ratio, developer, &doses.collect::<Vec<_>>()),
        None => Ok(developer),
    }
}

/// The longest that a first strand carries it: as planned, and never beyond a product's own limit.
pub(super) fn longest(work: &Work<'_>) -> Duration {
    let planned = work.task.apply.min() + work.task.develop.min();
    let own = OwnTimes::of(work).longest_on_first_strand(work.task.apply);
    Duration::nearest(own.map_or(planned, |own| planned.min(own.min())))
}
