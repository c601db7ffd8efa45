//! What the service puts on this guest: its mixes, and the steps that are planned before the colour.

use super::super::{FirstStep, sections::Sections};
use crate::{
    head::ExtraStep,
    service::request::{ItemKind, Request},
    shop::ShadeClass,
};

/// What touches the guest in the whole of the service. What the shop has nothing for is planned all the same, and counts.
#[derive(Clone, Copy)]
pub(super) struct Brings {
    /// Lightener, and with it persulfates.
    pub(super) lightener: bool,
    /// Peroxide, in colour, in lightener or as it is.
    pub(super) peroxide: bool,
    /// Oxidative colour, which the label of hair colour speaks of.
    pub(super) oxidative_colour: bool,
}

impl Brings {
    pub(super) fn of(sections: &Sections<'_>, first: &[FirstStep], request: &Request) -> Self {
        let planned =
            |which: ExtraStep| first.iter().filter(move |step| step.planned && step.step == which).collect::<Vec<_>>();
        let brings: Vec<_> = first.iter().filter(|step| step.planned).map(|step| step.brings(request)).collect();
        let (lightener, peroxide) = (brings.iter().any(|one| one.0), brings.iter().any(|one| one.1));
        let dyes = planned(ExtraStep::PrePigment).into_iter().any(|step| !is_semi(step, request));
        Self {
            lightener: sections.lighten() || lightener,
            peroxide: sections.have_peroxide() || peroxide,
            oxidative_colour: sections.have_oxidative_colour() || dyes,
        }
    }
}

/// Whether it is weighed of shades that need no developer to become colour; of what is not known that is not assumed.
fn is_semi(step: &FirstStep, request: &Request) -> bool {
    let semi = |kind: &ItemKind| matches!(kind, ItemKind::Shade { class: ShadeClass::Semi, .. });
    !step.parts.is_empty() && step.items(request).all(|item| semi(&item.kind))
}
