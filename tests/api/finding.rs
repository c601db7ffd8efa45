//! The one shape of a finding, and the ladder it stands on.

use foilwork::{
    finding::{Finding, Reason, Rule, Verdict, worst_first},
    source::COMMON_PRACTICE,
};
use serde_json::json;

fn found(rule: Rule, verdict: Verdict) -> Finding {
    Finding::new(rule, verdict, "text", COMMON_PRACTICE)
}

#[test]
fn the_ladder_goes_from_stop_to_passed() {
    let ladder: Vec<_> = Verdict::ALL.iter().map(|verdict| (verdict.code(), verdict.words())).collect();
    assert_eq!(
        ladder,
        [("stop", "STOP"), ("warning", "WARN"), ("not-judged", "OPEN"), ("note", "note"), ("passed", "ok")]
    );
    assert!(Verdict::ALL.is_sorted());
}

#[test]
fn the_worst_comes_first_and_equals_keep_their_order() {
    let mut findings = vec![
        found(Rule::Law, Verdict::Passed),
        found(Rule::Scale, Verdict::Warning),
        found(Rule::SkinTest, Verdict::NotJudged),
        found(Rule::Age, Verdict::Stop),
        found(Rule::Pace, Verdict::Warning),
        found(Rule::Hairline, Verdict::Note),
        found(Rule::MetalSalts, Verdict::Stop),
    ];
    worst_first(&mut findings);
    let rules: Vec<_> = findings.iter().map(|finding| finding.rule).collect();
    assert_eq!(
        rules,
        [Rule::Age, Rule::MetalSalts, Rule::Scale, Rule::Pace, Rule::SkinTest, Rule::Hairline, Rule::Law]
    );
}

#[test]
fn what_is_open_never_counts_as_passed() {
    assert!(Verdict::NotJudged < Verdict::Note && Verdict::NotJudged < Verdict::Passed);
}

#[test]
fn a_finding_is_one_line_and_says_what_it_is_about() {
    let finding = Finding::new(Rule::OnScalp, Verdict::Warning, "keep off the scalp", Reason::stated("the label"));
    assert_eq!(finding.to_string(), "WARN on scalp: keep off the scalp");
    assert_eq!(finding.about("nape").to_string(), "WARN on scalp: nape: keep off the scalp");
}

#[test]
fn plain_data_has_codes_and_every_source() {
    let finding = found(Rule::StrandTest, Verdict::NotJudged).and_source(Reason::stated("stated by you"));
    let want = json!({
        "rule": "strand-test",
        "verdict": "not-judged",
        "text": "text",
        "sources": [
            { "id": COMMON_PRACTICE.id, "text": COMMON_PRACTICE.text, "from_memory": false },
            { "text": "stated by you", "from_memory": false },
        ],
    });
    assert_eq!(serde_json::to_value(finding).unwrap(), want);
}
