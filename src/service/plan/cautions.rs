//! The cautions for what is in the bowls. They are always printed; no finding replaces them.

use super::Caution;
use crate::{
    service::request::{ItemKind, Request},
    service::shape::ShadeClass,
    source::{COMMON_PRACTICE, Citation, citations::trade},
};

/// The cautions of a request, the general ones first.
pub(super) fn cautions(request: &Request) -> Vec<Caution> {
    let used = |wanted: fn(&ItemKind) -> bool| {
        request
            .tasks
            .iter()
            .flat_map(|task| &task.products)
            .any(|(i, _)| request.items.get(*i).is_some_and(|item| wanted(&item.kind)))
    };
    let mut cautions = vec![
        caution(
            "The product's own instructions and local law come first; this sheet replaces neither, nor a licence \
                 or training.",
            &COMMON_PRACTICE,
        ),
        caution(
            "Gloves for mixing, applying, rinsing and cutting afterwards; a new pair for each guest.",
            &trade::HSE_HAIRDRESSING,
        ),
        caution("Work in moving air; do not lean over the bowl.", &trade::HSE_HAIRDRESSING),
        caution(
            "Never close or cap a mixed bowl, bottle or tube: it makes gas and can burst. Throw leftovers away \
                 with plenty of water; nothing goes back into its pack.",
            &trade::JP_STORAGE,
        ),
        caution(
            "No metal in bowls, brushes or clips, and no peroxide on hair with metal salts: heat, bubbles or \
                 breaking mean rinse at once.",
            &trade::INCOMPATIBILITY,
        ),
        caution("Keep away from eyes; on contact rinse at once with plenty of water.", &trade::EU_PEROXIDE_LABEL),
        caution("Burning, swelling, dizziness or trouble breathing: stop, rinse, get medical help.", &COMMON_PRACTICE),
        caution("Test a strand with the very mix before the head.", &trade::CONSULTATION),
    ];
    if used(|kind| matches!(kind, ItemKind::Lightener { .. })) {
        cautions.push(caution(
            "Lightener powder can cause asthma, dust-free kinds too: pour slowly, mix at once, no added heat unless its \
             instructions ask for it.",
            &trade::PERSULFATE_DUST,
        ));
    }
    if used(|kind| matches!(kind, ItemKind::Shade { class, .. } if *class != ShadeClass::Semi)) {
        cautions.push(caution(
            "Oxidative colour can cause severe allergy: skin test every time, never on lashes or brows, not on an \
             irritated or damaged scalp, not after an earlier reaction, not under sixteen.",
            &trade::EU_DYE_LABEL,
        ));
    }
    cautions
}

fn caution(text: &str, source: &Citation) -> Caution {
    Caution { text: text.to_owned(), source: source.to_string() }
}
