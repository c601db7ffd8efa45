//! Peroxide on the hair against the law of the jurisdiction stated.
//!
//! Only the developer is taken to bring peroxide; the sheet says so under what is not computed, since a lightener's
//! composition is not in a service file.

use super::{
    Verdict::{NotJudged, Passed, Stop},
    finding::Findings,
    mixes::Mixed,
};
use crate::{
    limits::{Limit, Purpose, Standing, Table, Use, check_peroxide},
    service::request::{Oxidant, Request, Task},
};

/// Adds one finding for each limit and mix.
pub(super) fn check(request: &Request, mixed: &[(&Task, &Mixed)], findings: &mut Findings) {
    let Some(jurisdiction) = request.jurisdiction else {
        let text = "no jurisdiction stated: no legal limit was checked; enter `service.jurisdiction`";
        return findings.add(NotJudged, "law", text, "none");
    };
    // Semi-permanent colour brings no peroxide.
    for (task, mixed) in mixed.iter().filter(|(task, _)| task.oxidant != Oxidant::Nothing) {
        let purpose = if task.lightens { Purpose::Lightening } else { Purpose::OxidativeColour };
        let report = check_peroxide(jurisdiction, mixed.on_hair, Use::professional(purpose));
        if report.judgements.is_empty() {
            let text = format!(
                "{}: the table has no peroxide limit for this use, which does not mean there is none",
                task.name
            );
            findings.add(NotJudged, "law", text, Table::of(jurisdiction).title());
        }
        for judgement in &report.judgements {
            let verdict = match judgement.standing {
                Standing::Within => Passed,
                Standing::Exceeded { .. } => Stop,
                _ => NotJudged,
            };
            let figure = judgement.limit.map(|limit| format!(" of {}", limit.figure)).unwrap_or_default();
            let text = match verdict {
                Passed => format!("{} {:.2}{figure}", task.name, judgement.level.high()),
                _ => {
                    format!("{}: {:.2}{figure} on the hair: {}", task.name, judgement.level.high(), judgement.standing)
                }
            };
            findings.add(verdict, "law", text, judgement.limit.map_or_else(|| report.table.to_owned(), source));
        }
    }
}

/// Act, date, basis of the figure, and whether it was read or remembered.
fn source(limit: &Limit) -> String {
    let unverified = if limit.obtained.is_verified() { "" } else { " [from memory, unverified]" };
    format!("{} ({}; {}){unverified}", limit.legal_reference, limit.basis_as_worded, limit.list_date)
}
