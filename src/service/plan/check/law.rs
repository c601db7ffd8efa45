//! Peroxide on the hair against the law of the jurisdiction stated.
//!
//! A mix of which any maker declares the composition is checked substance by substance. Otherwise only the developer's
//! peroxide is known: it can exceed the limit, but it never passes while another product of the bowl may release more.

use super::super::{Mix, findings::Findings, sections::Sections};
use crate::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{NotJudged, Note, Passed},
    },
    limits::{self, Judgement, Jurisdiction, Limit, Purpose, Report, Standing, Table, Use, Why, check_peroxide},
    mix::{Cas, Composition},
    source::citations::peroxide::BP_LIMITS,
    text::number,
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
    let mut unlimited = Unlimited::default();
    // Semi-permanent colour brings no peroxide.
    for (work, mix) in sections.iter().zip(mixes).filter(|(work, _)| work.has_peroxide()) {
        let purpose = if work.lightens() { Purpose::Lightening } else { Purpose::OxidativeColour };
        let name = work.name();
        if let Some(bowl) = &mix.composition {
            let mut report = limits::check(Table::of(jurisdiction), bowl, Use::professional(purpose));
            unlimited.take(bowl, &mut report);
            let rows = peroxide_rows(&report);
            for finding in report.findings() {
                let of_peroxide = finding.verdict != Note && finding.sources.iter().any(|source| rows.contains(source));
                let finding = finding.about(name);
                findings.push(&[work.place], if of_peroxide { by_label(finding, mix) } else { finding });
            }
            continue;
        }
        let report = check_peroxide(jurisdiction, mix.on_hair_as_labelled, Use::professional(purpose));
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
            let level = number(judgement.level.high().ww_percent(), mix.decimals());
            let text = match verdict {
                _ if open => format!(
                    "{name}: {level} % w/w{figure} from the developer; \"{}\" may release more peroxide: enter its \
                     `composition`, and `declared_in_full` when that is all",
                    mix.undeclared.join("\", \"")
                ),
                Passed => format!("{name} {level} % w/w{figure}"),
                _ => format!("{name}: {level} % w/w{figure} on the hair: {}", judgement.standing),
            };
            let source = judgement.limit.map_or_else(|| Reason::stated(report.table.to_owned()), source);
            findings.push(&[work.place], by_label(Finding::new(Rule::Law, verdict, text, source), mix));
        }
    }
    unlimited.say(jurisdiction, findings);
}

/// The rows that a report holds the peroxide of a bowl against.
fn peroxide_rows(report: &Report<'_>) -> Vec<Reason> {
    let rows = report.judgements.iter().filter_map(|judgement| judgement.limit);
    rows.filter(|limit| limit.cas.contains(&Cas::HYDROGEN_PEROXIDE)).map(Reason::from).collect()
}

/// The declared substances of all mixes that the table has no ceiling for: said once, so that they do not drown the rest.
#[derive(Default)]
struct Unlimited {
    substances: Vec<String>,
    rows: Vec<Reason>,
}

impl Unlimited {
    /// Takes them out of the report of one mix.
    fn take(&mut self, bowl: &Composition, report: &mut Report<'_>) {
        let open = |judgement: &Judgement<'_>| {
            let why = [Why::NotInTable, Why::NoCeilingForThisUse, Why::NoFigure];
            why.map(|why| Standing::CannotBeJudged { why }).contains(&judgement.standing)
        };
        for judgement in report.judgements.extract_if(.., |judgement| open(judgement)) {
            // A row may name more than the bowl holds.
            let named = |limit: &Limit| {
                let held =
                    bowl.constituents().iter().filter(|held| held.cas.is_some_and(|cas| limit.cas.contains(&cas)));
                held.map(|held| held.name.clone()).collect::<Vec<String>>()
            };
            let names = judgement.limit.map(named).filter(|names| !names.is_empty());
            for name in names.unwrap_or_else(|| vec![judgement.substance.to_owned()]) {
                if !self.substances.iter().any(|known| known.eq_ignore_ascii_case(&name)) {
                    self.substances.push(name);
                }
            }
            // A row without a figure says who looked for one.
            let row = judgement.limit.map(Reason::from).filter(|row| !self.rows.contains(row));
            self.rows.extend(row);
        }
    }

    fn say(self, jurisdiction: Jurisdiction, findings: &mut Findings) {
        if self.substances.is_empty() {
            return;
        }
        let text = format!(
            "the table has no ceiling in this use for {}, which does not mean that there is none",
            self.substances.join(", ")
        );
        let source = Reason::stated(Table::of(jurisdiction).title());
        let finding = Finding::new(Rule::Law, NotJudged, text, source);
        // It is about the table rather than about any one bowl, so that no card repeats it.
        findings.push(&[], self.rows.into_iter().fold(finding, Finding::and_source));
    }
}

/// A strength that nobody measured is held against the law at the upper end of what such a label may mean.
fn by_label(finding: Finding, mix: &Mix) -> Finding {
    if mix.on_hair_as_labelled == mix.on_hair {
        return finding;
    }
    let why = "the bottle is not measured: counted up to a sixth above its label, as the pharmacopoeial solution may be \
               (assumed for developers)";
    finding.and_source(Reason::stated(why)).and_source(BP_LIMITS)
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
