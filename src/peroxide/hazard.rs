//! What stands under everything that is mixed by weight: how to, and from which strength on the law calls it a hazard.

use super::{Bearing, handling_facts};
use crate::{quantity::MassFraction, source::Interval};

const CAUTION: &str = "Weigh it; volumes add up only nearly. Blend developers with developers or with a diluent that their \
                       maker allows. Never close the container.";

/// From here on the solution is classified as damaging eyes, and named in the transport list.
const CLASSIFIED_FROM: f64 = 8.0;
/// Above this the public may not buy it, and it is no salon's business to handle it.
const NO_SALON_ABOVE: f64 = 12.0;

/// What is said of a strength on the hair that no salon has business with.
#[cfg(feature = "cli")]
pub(crate) fn too_strong(on_hair: Interval<MassFraction>) -> Option<&'static str> {
    (on_hair.high().ww_percent() > NO_SALON_ABOVE).then_some(
        "TOO STRONG: more than 12 % w/w on the hair: foilwork gives no advice on that in a salon; check the strength, and whether \
         it is that of the bottle",
    )
}

/// The paragraphs for the strongest thing on the bench.
pub(crate) fn cautions(strongest: Interval<MassFraction>) -> Vec<String> {
    let high = strongest.high().ww_percent();
    if high < CLASSIFIED_FROM {
        return vec![CAUTION.to_owned()];
    }
    let facts: Vec<String> = handling_facts(strongest)
        .filter(|(fact, bearing)| {
            let restricted = fact.scheme.contains("precursors") && fact.upper.is_none();
            *bearing != Bearing::Substance && (!fact.code.is_empty() || restricted)
        })
        .map(|(fact, bearing)| {
            let code = if fact.code.is_empty() { String::new() } else { format!("{}, ", fact.code) };
            let may = if bearing == Bearing::MayApply { ", may apply" } else { "" };
            let above = if fact.code.is_empty() { " 12 %" } else { "" };
            let memory = if fact.note.contains("from memory") { "; in part from memory, unverified" } else { "" };
            format!("{}{above} ({code}{}{may}{memory})", fact.class, fact.jurisdiction)
        })
        .collect();
    let classes =
        format!("Hazard classes at {strongest_text}: {}.", facts.join("; "), strongest_text = words(strongest));
    let last = if high > NO_SALON_ABOVE {
        "Stronger than 12 % w/w: foilwork gives no advice on handling it in a salon. Follow the safety data sheet of its \
         supplier."
    } else {
        CAUTION
    };
    vec![classes, last.to_owned()]
}

/// The stronger of two.
pub(crate) fn stronger(one: Interval<MassFraction>, other: Interval<MassFraction>) -> Interval<MassFraction> {
    if other.high() > one.high() { other } else { one }
}

fn words(strength: Interval<MassFraction>) -> String {
    format!("{} % w/w", crate::text::range(&strength, 2))
}
