//! Facts that the file states and that no check or computation reads yet: they are named, so that nobody relies on them.

use crate::service::{
    request::{Oxidant, Request},
    shape::Section,
};
use schemars::JsonSchema;
use serde::Serialize;

/// A stated fact that is not used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub struct StatedNotUsed {
    /// Its field in the file.
    pub field: &'static str,
    /// What it would be for.
    pub why: &'static str,
}

/// Whether the gradient gives a section its share, its start or its foils.
fn takes_from_gradient(section: &Section) -> bool {
    let counted = section.foils.is_some() || section.panel.is_some();
    let stated = section.share_percent.is_some() && (section.start_cm.is_some() || section.over_directed.is_some());
    !(section.regions.is_empty() || (stated && counted))
}

/// The facts of one file, in the order of its fields.
pub(super) fn stated_not_used(request: &Request) -> Vec<StatedNotUsed> {
    let file = &request.file;
    let analysis = &file.analysis;
    // What is read of a section counts before what is read of the whole head, and a measurement before an eye.
    let own = |section: &Section| section.measured.is_some() || section.seen.is_some();
    let all_own = file.section.iter().all(own);
    let open = request.tasks.iter().any(|task| task.oxidant == Oxidant::Open);
    let facts = [
        (analysis.measured.is_some() && all_own, "analysis.measured", "every section has its own reading"),
        (
            analysis.seen.is_some() && (all_own || analysis.measured.is_some()),
            "analysis.seen",
            "what is measured, or read of a section, counts before it",
        ),
        (
            analysis.measured_with.is_some() && analysis.measured.is_none(),
            "analysis.measured_with",
            "nothing is stated that was read with it: enter `measured`",
        ),
        (
            analysis.existing.iter().any(|existing| existing.tone.is_some()),
            "analysis.existing[].tone",
            "words, printed as they are; the colours shown start from the level",
        ),
        (
            file.section.iter().any(|section| section.area.is_some()),
            "section[].area",
            "words, for you; `regions` puts the section on the map",
        ),
        (dry(request), "section[].cover", "only lightener is forecast by whether it dries"),
        (
            file.section.iter().any(|section| section.seen.is_some() && section.measured.is_some()),
            "section[].seen",
            "what is `measured` of the same section counts before it",
        ),
        (
            file.section.iter().any(|section| section.measured_with.is_some() && section.measured.is_none()),
            "section[].measured_with",
            "nothing is stated that was read with it: enter `measured`",
        ),
        (
            file.gradient.is_some() && !file.section.iter().any(takes_from_gradient),
            "gradient",
            "every section states its own share, start and foils, or lies in no `regions`",
        ),
        (
            file.service.outline.is_some() && request.map.is_none(),
            "service.outline",
            "no section says in `regions` where it lies",
        ),
        (
            file.service.part.is_some() && request.map.is_none(),
            "service.part",
            "no section says in `regions` where it lies",
        ),
        (
            (file.finish.within_min.is_some() || file.finish.tolerance_levels.is_some()) && !open,
            "finish",
            "every strength is stated: leave `developer` and `strength` out of the sections that are to finish together",
        ),
    ];
    facts.into_iter().filter(|(stated, ..)| *stated).map(|(_, field, why)| StatedNotUsed { field, why }).collect()
}

/// Whether a section says what lies over a mix that does not lighten.
fn dry(request: &Request) -> bool {
    let sections = request.file.section.iter().zip(&request.tasks);
    sections.into_iter().any(|(section, task)| section.cover.is_some() && !task.lightens)
}
