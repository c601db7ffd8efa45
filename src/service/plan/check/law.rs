//! Peroxide on the hair against the law of the jurisdiction stated.
//!
//! A mix of which any maker declares the composition is checked substance by substance. Otherwise only the developer's
//! peroxide is known: it can exceed the limit, but it never passes while another product of the bowl may release more.

use super::super::{
    FirstStep, Mix,
    findings::{Findings, Of},
    sections::Sections,
};
use crate::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{NotJudged, Note, Passed},
    },
    limits::{self, Judgement, Jurisdiction, Limit, Purpose, Report, Standing, Table, Use, Why, check_peroxide},
    mix::{Cas, Composition},
    quantity::MassFraction,
    source::{Interval, citations::peroxide::BP_LIMITS},
    text::number,
};

/// A bowl as the law sees it.
struct Held<'h> {
    name: String,
    of: Of<'h>,
    purpose: Purpose,
    on_hair: Interval<MassFraction>,
    as_labelled: Interval<MassFraction>,
    composition: Option<&'h Composition>,
    undeclared: &'h [String],
    decimals: usize,
}

/// Adds one finding for each limit and mix, steps before the colour included.
pub(super) fn check(
    jurisdiction: Option<Jurisdiction>,
    (sections, mixes): (&Sections<'_>, &[Mix]),
    first: &[FirstStep],
    findings: &mut Findings,
) {
    let Some(jurisdiction) = jurisdiction else {
        let text = "no jurisdiction stated: no legal limit was checked; enter `service.jurisdiction`";
        return findings.add(Rule::Law, NotJudged, text, Reason::stated("none"));
    };
    let mut unlimited = Unlimited::default();
    // Semi-permanent colour brings no peroxide.
    for (work, mix) in sections.iter().zip(mixes).filter(|(work, _)| work.has_peroxide()) {
        let held = Held {
            name: work.name().to_owned(),
            of: Of::Mix(&[work.place]),
            purpose: if work.lightens() { Purpose::Lightening } else { Purpose::OxidativeColour },
            on_hair: mix.on_hair,
            as_labelled: mix.on_hair_as_labelled,
            composition: mix.composition.as_ref(),
            undeclared: &mix.undeclared,
            decimals: mix.decimals(),
        };
        judge(jurisdiction, &held, &mut unlimited, findings);
    }
    for (place, step) in first.iter().enumerate().filter(|(_, step)| step.planned) {
        before(jurisdiction, (place, step), &mut unlimited, findings);
    }
    unlimited.say(jurisdiction, findings);
}

/// A step before the colour goes on the same head.
fn before(
    jurisdiction: Jurisdiction,
    (place, step): (usize, &FirstStep),
    unlimited: &mut Unlimited,
    findings: &mut Findings,
) {
    let name = step.name();
    let unknown = |findings: &mut Findings, why: &str| {
        let text = format!("{name}: {why}: held against no limit of the law");
        findings
            .of_step(place, Finding::new(Rule::Law, NotJudged, text, Reason::stated(Table::of(jurisdiction).title())));
    };
    let Some(bowl) = &step.bowl else { return unknown(findings, "what goes on is not known") };
    let peroxide = step.has_developer();
    if !peroxide && bowl.composition.is_none() {
        return unknown(findings, "nobody declares what is in it");
    }
    let purpose = match step.step {
        _ if !peroxide => Purpose::NonOxidativeColour,
        step if step.lightens() => Purpose::Lightening,
        _ => Purpose::OxidativeColour,
    };
    let held = Held {
        name,
        of: Of::Step(place),
        purpose,
        on_hair: bowl.on_hair,
        as_labelled: bowl.on_hair_as_labelled,
        composition: bowl.composition.as_ref(),
        undeclared: &bowl.undeclared,
        decimals: if bowl.on_hair == bowl.on_hair_as_labelled { 2 } else { 1 },
    };
    judge(jurisdiction, &held, unlimited, findings);
}

fn judge(jurisdiction: Jurisdiction, held: &Held<'_>, unlimited: &mut Unlimited, findings: &mut Findings) {
    let name = &held.name;
    let used = Use::professional(held.purpose);
    if let Some(bowl) = held.composition {
        let mut report = limits::check(Table::of(jurisdiction), bowl, used);
        unlimited.take(bowl, &mut report);
        let rows = peroxide_rows(&report);
        for finding in report.findings() {
            let of_peroxide = finding.verdict != Note && finding.sources.iter().any(|source| rows.contains(source));
            let finding = finding.about(name);
            held.of.push(findings, if of_peroxide { by_label(finding, held) } else { finding });
        }
        return;
    }
    let report = check_peroxide(jurisdiction, held.as_labelled, used);
    if report.judgements.is_empty() {
        let text = format!("{name}: the table has no peroxide limit for this use, which does not mean there is none");
        let source = Reason::stated(Table::of(jurisdiction).title());
        held.of.push(findings, Finding::new(Rule::Law, NotJudged, text, source));
    }
    for judgement in &report.judgements {
        let verdict = judgement.standing.verdict();
        let printed = judgement.limit.map(|limit| limit.figure.as_str()).filter(|figure| !figure.is_empty());
        let figure = printed.map(|figure| format!(" of {figure}")).unwrap_or_default();
        // The law counts peroxide present or released, and a powder that nobody declares may release any amount.
        let open = verdict == Passed && !held.undeclared.is_empty();
        let verdict = if open { NotJudged } else { verdict };
        let level = number(judgement.level.high().ww_percent(), held.decimals);
        let text = match verdict {
            _ if open => format!(
                "{name}: {level} % w/w{figure} from the developer; \"{}\" may release more peroxide: enter its \
                 `composition`, and `declared_in_full` when that is all",
                held.undeclared.join("\", \"")
            ),
            Passed => format!("{name} {level} % w/w{figure}"),
            _ => format!("{name}: {level} % w/w{figure} on the hair: {}", judgement.standing),
        };
        let source = judgement.limit.map_or_else(|| Reason::stated(report.table.to_owned()), source);
        held.of.push(findings, by_label(Finding::new(Rule::Law, verdict, text, source), held));
    }
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
fn by_label(finding: Finding, held: &Held<'_>) -> Finding {
    if held.as_labelled == held.on_hair {
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
