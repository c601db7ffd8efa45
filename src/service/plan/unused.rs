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
    ];
    facts.into_iter().filter(|(stated, ..)| *stated).map(|(_, field, why)| StatedNotUsed { field, why }).collect()
}
