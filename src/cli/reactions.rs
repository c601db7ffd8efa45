//! What went wrong in earlier services, told before all else that was kept of them.

use crate::{history::KeptRecord, service::shape::Elasticity, text::Sheet};
use serde::Serialize;

/// A reaction, an accident or a weak strand of a kept service.
#[derive(Serialize)]
pub(super) struct WentWrong<'r> {
    on: &'r str,
    guest: Option<&'r str>,
    text: String,
}

/// All of them, the newest first.
pub(super) fn of(records: &[KeptRecord]) -> Vec<WentWrong<'_>> {
    let mut found: Vec<WentWrong> = records.iter().flat_map(of_one).collect();
    found.sort_by(|a, b| b.on.cmp(a.on));
    found
}

fn of_one(record: &KeptRecord) -> impl Iterator<Item = WentWrong<'_>> {
    let weak = record.section.iter().filter_map(|section| {
        let elasticity = section.elasticity.filter(|strand| *strand != Elasticity::Good)?;
        Some(format!("elasticity of {}: {elasticity}", section.name))
    });
    let all = record.incident.iter().cloned().chain(weak);
    all.map(|text| WentWrong { on: &record.on, guest: record.guest.as_deref(), text })
}

pub(super) fn told(sheet: &mut Sheet, all: &[WentWrong<'_>]) {
    if all.is_empty() {
        return;
    }
    sheet.heading("Reactions, accidents and weak hair");
    for one in all {
        let guest = one.guest.map(|guest| format!(" {guest}")).unwrap_or_default();
        sheet.paragraph(&format!("{}{guest}: {}", one.on, one.text), 2);
    }
}
