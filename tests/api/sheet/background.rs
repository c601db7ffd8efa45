//! What stands behind the numbers: cautions, defaults, what is missing, what was looked at and its sources.

use super::{base, finding, part, q};
use foilwork::{
    finding::{Finding, Reason, Rule, Verdict},
    service::{Caution, DefaultUsed, DefaultValue, NotComputed, StatedNotUsed, Unknown},
    sheet::{SheetPart, bench_sheet_of},
    source::Basis,
};

fn reason(text: &'static str, from_memory: bool) -> Reason {
    Reason { id: None, text: text.into(), from_memory }
}

fn default(field: &str, value: DefaultValue, sources: Vec<Reason>) -> DefaultUsed {
    DefaultUsed { field: field.to_owned(), value, basis: Basis::Assumed, sources }
}

#[test]
fn defaults_are_told_with_their_sources_where_there_are_any() {
    let mut plan = base();
    plan.defaults = vec![
        default("a", DefaultValue::Time(q(2.0)), vec![reason("one", false), reason("two", true)]),
        default("b", DefaultValue::Pieces(3), vec![reason("three", false)]),
    ];
    let want = "DEFAULTS USED; SAY IT IN THE FILE TO REPLACE IT | - a = 2 min [assumed] one; two [from memory, unverified] \
        - b = 3 [assumed] three";
    assert_eq!(part(&plan, SheetPart::Defaults), want);
    plan.defaults.clear();
    assert!(!bench_sheet_of(&plan, &[SheetPart::Defaults]).contains("DEFAULTS USED"));
}

#[test]
fn what_is_missing_and_what_nothing_reads_is_told() {
    let mut plan = base();
    plan.not_computed = vec![
        NotComputed { what: Unknown::LiftAgainstTime, why: "nothing lifts" },
        NotComputed { what: Unknown::Toner, why: "none asked for" },
    ];
    plan.stated_not_used = vec![
        StatedNotUsed { field: "analysis.curl", why: "no rule reads it" },
        StatedNotUsed { field: "salon.basins", why: "one is enough" },
    ];
    let missing = "NOT COMPUTED | - lift against time: nothing lifts - toner: none asked for";
    let unused = "STATED, NOT USED | - analysis.curl: no rule reads it - salon.basins: one is enough";
    assert_eq!(part(&plan, SheetPart::Unknowns), format!("{missing} {unused}"));
    plan.stated_not_used.clear();
    assert_eq!(part(&plan, SheetPart::Unknowns), missing);
}

#[test]
fn cautions_are_told_in_full() {
    let mut plan = base();
    let caution = |text| Caution { text, reminder: None, sources: Vec::new() };
    plan.cautions = vec![caution("Wear gloves."), caution("Open a window.")];
    assert_eq!(part(&plan, SheetPart::Cautions), "CAUTIONS | - Wear gloves. - Open a window.");
}

/// A rule stands once with all that it looked at; the same sources stand once, under the first rule that has them.
#[test]
fn what_passed_stands_rule_by_rule_and_sources_once() {
    let mut plan = base();
    let of = |rule, verdict, text: &str, sources: Vec<Reason>| Finding { sources, ..finding(rule, verdict, text) };
    plan.findings = vec![
        of(Rule::Lift, Verdict::Note, "hardly", vec![reason("one", false)]),
        of(Rule::Law, Verdict::Passed, "6 of 12 %", vec![reason("two", false), reason("three", true)]),
        of(Rule::Scalp, Verdict::Passed, "intact", vec![reason("one", false)]),
        of(Rule::Law, Verdict::Passed, "3 of 12 %", vec![reason("four", false)]),
    ];
    let sources = "SOURCES OF THE CHECKS | - lift: one - law: two; three [from memory, unverified] - law: four";
    let looked_at =
        "WHAT THE CHECKS LOOKED AT AND FOUND WITHIN WHAT WAS STATED | - law: 6 of 12 %; 3 of 12 % - scalp: intact";
    assert_eq!(part(&plan, SheetPart::Sources), format!("{looked_at} {sources}"));
    plan.findings.truncate(1);
    assert_eq!(part(&plan, SheetPart::Sources), "SOURCES OF THE CHECKS | - lift: one");
}

/// What was found in full: open questions and notes here, what passed in one line.
#[test]
fn the_checks_in_full() {
    let mut plan = base();
    plan.findings = vec![
        finding(Rule::Lift, Verdict::Warning, "slow"),
        finding(Rule::Law, Verdict::NotJudged, "unknown"),
        finding(Rule::Pace, Verdict::Note, "quick"),
        finding(Rule::Law, Verdict::Passed, "6 of 12 %"),
        finding(Rule::Scalp, Verdict::Passed, "intact"),
    ];
    let words = "OPEN means unknown, never passed. \"ok\" means nothing was found, not that anything is safe.";
    let open = "[OPEN] law: unknown [note] pace: quick [ok] law (in part), scalp";
    assert_eq!(part(&plan, SheetPart::Checks), format!("CHECKS | [WARN] lift: slow {open} {words}"));
    // Each mark takes seven columns, so that what it says stands in a column of its own.
    let sheet = bench_sheet_of(&plan, &[SheetPart::Checks]);
    for line in ["[WARN] lift: slow", "[OPEN] law: unknown", "[note] pace: quick", "[ok]   law (in part), scalp"] {
        assert!(sheet.lines().any(|told| told == line), "{line}: {sheet}");
    }
}
