//! Facts that the file states and that no check or computation reads yet: they are named, so that nobody relies on them.

use crate::service::request::Request;
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

/// The facts of one file, in the order of its fields.
pub(super) fn stated_not_used(request: &Request) -> Vec<StatedNotUsed> {
    let file = &request.file;
    let analysis = &file.analysis;
    let facts = [
        (analysis.density.is_some(), "analysis.density", "no amount is worked out from the mass of the hair yet"),
        (analysis.length_cm.is_some(), "analysis.length_cm", "no amount is worked out from the mass of the hair yet"),
        (
            analysis.existing.iter().any(|existing| existing.tone.is_some()),
            "analysis.existing[].tone",
            "words, printed as they are; the colours shown start from the level",
        ),
        (
            file.section.iter().any(|section| section.target_tone.is_some()),
            "section[].target_tone",
            "words, printed as they are; give `target` with `tones` to have them used",
        ),
        (
            file.section.iter().any(|section| section.area.is_some()),
            "section[].area",
            "the head is not mapped yet; `share_percent` says how much hair it is",
        ),
    ];
    facts.into_iter().filter(|(stated, ..)| *stated).map(|(_, field, why)| StatedNotUsed { field, why }).collect()
}
