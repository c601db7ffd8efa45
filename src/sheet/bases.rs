//! What stands behind the numbers: cautions in full, defaults, what is missing, sources.

use super::checks;
use crate::{
    finding::{Reason, Verdict},
    service::Plan,
    text::Sheet,
};

/// The cautions in full.
pub(super) fn cautions(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Cautions");
    for caution in &plan.cautions {
        sheet.paragraph(&format!("- {}", caution.text), 2);
    }
}

/// What was used because the file did not say.
pub(super) fn defaults(sheet: &mut Sheet, plan: &Plan) {
    if plan.defaults.is_empty() {
        return;
    }
    sheet.heading("Defaults used; say it in the file to replace it");
    for default in &plan.defaults {
        let sources = all(&default.sources);
        let text = format!("- {} = {}  [{}] {sources}", default.field, default.value, default.basis);
        sheet.paragraph(&text, 2);
    }
}

/// What a reader might look for.
pub(super) fn unknowns(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Not computed");
    for missing in &plan.not_computed {
        sheet.paragraph(&format!("- {}: {}", missing.what, missing.why), 2);
    }
    if !plan.stated_not_used.is_empty() {
        sheet.heading("Stated, not used");
        for fact in &plan.stated_not_used {
            sheet.paragraph(&format!("- {}: {}", fact.field, fact.why), 2);
        }
    }
}

/// What passed, in full and once for each rule, then the sources of all checks.
pub(super) fn sources(sheet: &mut Sheet, plan: &Plan) {
    let passed = || checks::of(plan, Verdict::Passed);
    if passed().next().is_some() {
        sheet.heading("What the checks looked at and found within what was stated");
        for rule in checks::rules(passed()) {
            let texts = passed().filter(|finding| finding.rule == rule).map(|finding| finding.text.as_str());
            sheet.paragraph(&format!("- {rule}: {}", texts.collect::<Vec<_>>().join("; ")), 2);
        }
    }
    sheet.heading("Sources of the checks");
    let mut seen: Vec<String> = Vec::new();
    for finding in &plan.findings {
        let text = all(&finding.sources);
        if !seen.contains(&text) {
            sheet.paragraph(&format!("- {}: {text}", finding.rule), 2);
            seen.push(text);
        }
    }
}

fn all(sources: &[Reason]) -> String {
    sources.iter().map(ToString::to_string).collect::<Vec<_>>().join("; ")
}
