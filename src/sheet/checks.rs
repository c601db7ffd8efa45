use super::SheetPart;
use crate::{
    finding::{Finding, Rule, Verdict, WORDS_OF_VERDICTS},
    service::Plan,
    text::{Sheet, count, list},
};

/// The banner and everything that says STOP: above whatever is chosen.
pub(super) fn stops(sheet: &mut Sheet, plan: &Plan) {
    let Some(banner) = plan.banner() else { return };
    sheet.blank();
    sheet.paragraph(&banner, 4);
    for finding in of(plan, Verdict::Stop) {
        one(sheet, finding);
    }
}

/// How many findings the chosen parts leave out, so that no part reads as if all were well.
pub(super) fn hidden(sheet: &mut Sheet, plan: &Plan, parts: &[SheetPart]) {
    let checks = parts.contains(&SheetPart::Checks);
    let chair = parts.contains(&SheetPart::Chair);
    let number = |verdict| of(plan, verdict).count();
    let mut left_out = Vec::new();
    if !checks && !chair && number(Verdict::Warning) > 0 {
        left_out.push(count(number(Verdict::Warning), "warning", "warnings"));
    }
    if !checks && !chair && number(Verdict::NotJudged) > 0 {
        left_out.push(count(number(Verdict::NotJudged), "open question", "open questions"));
    }
    // At the chair they stand in the line of the open questions, where there is one.
    if !(checks || chair && number(Verdict::NotJudged) > 0) && number(Verdict::Note) > 0 {
        left_out.push(count(number(Verdict::Note), "note", "notes"));
    }
    if !left_out.is_empty() {
        sheet.blank();
        sheet.paragraph(&format!("Not on this sheet: {} of the checks (part `checks`).", list(&left_out, "and")), 0);
    }
}

/// What the checks found, in full; warnings only where the part for the chair does not show them. What passed is folded to
/// one line: what was looked at stands with the sources.
pub(super) fn checks(sheet: &mut Sheet, plan: &Plan, parts: &[SheetPart]) {
    sheet.heading("Checks");
    let chair = parts.contains(&SheetPart::Chair);
    let shown = |finding: &&Finding| match finding.verdict {
        Verdict::Stop | Verdict::Passed => false,
        Verdict::Warning => !chair,
        _ => true,
    };
    for finding in plan.findings.iter().filter(shown) {
        one(sheet, finding);
    }
    let passed = rules(of(plan, Verdict::Passed));
    if !passed.is_empty() {
        // Of several sections or bowls one may hold and another not, or not be judged.
        let in_part = |rule: &Rule| {
            let not_ok = |found: &&Finding| !matches!(found.verdict, Verdict::Passed | Verdict::Note);
            plan.findings.iter().filter(not_ok).any(|found| found.rule == *rule)
        };
        let name = |rule: &Rule| format!("{rule}{}", if in_part(rule) { " (in part)" } else { "" });
        let names = passed.iter().map(name).collect::<Vec<_>>().join(", ");
        sheet.paragraph(&format!("[{}]   {names}", Verdict::Passed), 7);
    }
    sheet.blank();
    let above = match (plan.blocked, chair && of(plan, Verdict::Warning).next().is_some()) {
        (true, true) => "What says STOP or WARN stands above. ",
        (true, false) => "What says STOP stands above. ",
        (false, true) => "What says WARN stands above. ",
        (false, false) => "",
    };
    sheet.paragraph(&format!("{above}{WORDS_OF_VERDICTS}"), 0);
}

/// One finding, in full.
pub(super) fn one(sheet: &mut Sheet, finding: &Finding) {
    let mark = format!("[{}]", finding.verdict);
    sheet.paragraph(&format!("{mark:<7}{}: {}", finding.rule, finding.text), 7);
}

/// The findings of one verdict.
pub(super) fn of(plan: &Plan, verdict: Verdict) -> impl Iterator<Item = &Finding> {
    plan.findings.iter().filter(move |finding| finding.verdict == verdict)
}

/// The rules of these findings, each once, in their order.
pub(super) fn rules<'f>(findings: impl Iterator<Item = &'f Finding>) -> Vec<Rule> {
    let mut rules: Vec<Rule> = Vec::new();
    for finding in findings {
        if !rules.contains(&finding.rule) {
            rules.push(finding.rule);
        }
    }
    rules
}
