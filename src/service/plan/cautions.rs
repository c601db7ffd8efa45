//! The cautions for what is in the bowls. They are always printed; no finding replaces them.

use super::Caution;
use crate::{
    mix::{Hazard, handling_advice},
    service::{
        request::{ItemKind, Oxidant, Request},
        shape::ShadeClass,
    },
    source::{COMMON_PRACTICE, Citation, citations::trade},
};

/// What stands above every list of cautions.
const ALWAYS: [(&str, Citation); 2] = [
    (
        "the product's own instructions and local law come first; this sheet replaces neither, nor a licence or training",
        COMMON_PRACTICE,
    ),
    ("test a strand with the very mix before the head", trade::CONSULTATION),
];

/// The cautions of a request: the general ones, then those for what is used, in the order of the work.
pub(super) fn cautions(request: &Request) -> Vec<Caution> {
    let general = ALWAYS.iter().map(|(text, source)| Caution { text: (*text).to_owned(), source: source.to_string() });
    let handling = handling_advice(&hazards(request)).into_iter().map(|advice| {
        let sources: Vec<String> = advice.citations().map(ToString::to_string).collect();
        let source = if sources.is_empty() { COMMON_PRACTICE.to_string() } else { sources.join("; ") };
        Caution { text: advice.text.to_owned(), source }
    });
    general.chain(handling).collect()
}

/// What the mixes bring, read from the kinds of product: their compositions are not in a service file.
///
/// Colour may hold ammonia and resorcinol; that it does is taken for granted, since nobody said that it does not.
fn hazards(request: &Request) -> Vec<Hazard> {
    let mut hazards = Vec::new();
    for task in &request.tasks {
        if task.oxidant != Oxidant::Nothing {
            hazards.push(Hazard::Peroxide);
        }
        for (i, _) in &task.products {
            match request.items.get(*i).map(|item| &item.kind) {
                Some(ItemKind::Lightener { .. }) => hazards.push(Hazard::Persulfate),
                Some(ItemKind::Shade { class: ShadeClass::Semi, .. }) => hazards.push(Hazard::Unknown),
                Some(ItemKind::Shade { .. }) => {
                    hazards.extend([Hazard::OxidativeDye, Hazard::Ammonia, Hazard::Resorcinol]);
                }
                _ => {}
            }
        }
    }
    hazards
}
