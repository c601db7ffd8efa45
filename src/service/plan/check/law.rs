//! Peroxide on the hair against the law of the jurisdiction stated.
//!
//! A mix of which any maker declares the composition is checked substance by substance. Otherwise only the developer's
//! peroxide is known: it can exceed the limit, but it never passes while another product of the bowl may release more.

use super::super::{Mix, findings::Findings, sections::Sections};
use crate::{
    finding::{
        Reason, Rule,
        Verdict::{NotJudged, Passed},
    },
    limits::{self, Jurisdiction, Limit, Purpose, Table, Use, check_peroxide},
};

/// Adds one finding for each limit and mix.
pub(super) fn check(
    jurisdiction: Option<Jurisdiction>,
    sections: &Sections<'_>,
    mixes: &[Mix],
    findings: &mut Findings,
) {
    let Some(jurisdiction) = jurisdiction else {
        let text = "no jurisdiction stated: no legal limit was checked; enter `service.jurisdiction`";
        return findings.add(Rule::Law, NotJudged, text, Reason::stated("none"));
    };
    // Semi-permanent colour brings no peroxide.
    for (work, mix) in sections.iter().zip(mixes).filter(|(work, _)| work.has_peroxide()) {
        let purpose = if work.lightens() { Purpose::Lightening } else { Purpose::OxidativeColour };
        let name = work.name();
        if let Some(bowl) = &mix.composition {
            let report = limits::check(Table::of(jurisdiction), bowl, Use::professional(purpose));
            for finding in report.findings() {
                findings.push(&[work.place], finding.about(name));
            }
            continue;
        }
        let report = check_peroxide(jurisdiction, mix.on_hair, Use::professional(purpose));
        if report.judgements.is_empty() {
            let text =
                format!("{name}: the table has no peroxide limit for this use, which does not mean there is none");
            findings.of(work.place, Rule::Law, NotJudged, text, Reason::stated(Table::of(jurisdiction).title()));
        }
        for judgement in &report.judgements {
            let verdict = judgement.standing.verdict();
            let printed = judgement.limit.map(|limit| limit.figure.as_str()).filter(|figure| !figure.is_empty());
            let figure = printed.map(|figure| format!(" of {figure}")).unwrap_or_default();
            // The law counts peroxide present or released, and a powder that nobody declares may release any amount.
            let open = verdict == Passed && !mix.undeclared.is_empty();
            let verdict = if open { NotJudged } else { verdict };
            let text = match verdict {
                _ if open => format!(
                    "{name}: {:.2}{figure} from the developer; \"{}\" may release more peroxide: enter its `composition`, \
                     and `declared_in_full` when that is all",
                    judgement.level.high(),
                    mix.undeclared.join("\", \"")
                ),
                Passed => format!("{name} {:.2}{figure}", judgement.level.high()),
                _ => format!("{name}: {:.2}{figure} on the hair: {}", judgement.level.high(), judgement.standing),
            };
            let source = judgement.limit.map_or_else(|| Reason::stated(report.table.to_owned()), source);
            findings.of(work.place, Rule::Law, verdict, text, source);
        }
    }
}

/// Act, date, basis of the figure, and whether it was read or remembered.
fn source(limit: &Limit) -> Reason {
    let words = [limit.basis_as_worded.as_str(), limit.list_date.as_str()];
    let words: Vec<&str> = words.into_iter().filter(|words| !words.is_empty()).collect();
    let behind = if words.is_empty() { String::new() } else { format!(" ({})", words.join("; ")) };
    Reason {
        id: Some(limit.id.clone().into()),
        text: format!("{}{behind}", limit.legal_reference).into(),
        from_memory: !limit.obtained.is_verified(),
    }
}
