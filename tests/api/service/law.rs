//! Peroxide on the hair against the law: exceeded, within, straddling, from memory, and no law at all.

use super::base::{changed, only_lightener, shop, texts, verdicts};
use foilwork::{
    finding::{
        Rule,
        Verdict::{self, NotJudged, Passed, Stop},
    },
    limits::Jurisdiction,
    service::Plan,
};
use rstest::rstest;

/// Developer with hardly anything in it: 100 g at 1 part to 99, so that 0.99 of its strength lies on the hair.
fn nearly_neat(jurisdiction: Option<&str>, strength: &str) -> Plan {
    changed(only_lightener(), |file| {
        file.service.jurisdiction = jurisdiction.map(str::to_owned);
        shop(file).developer[0].strength = strength.to_owned();
        shop(file).lightener[0].strongest_developer_ww_percent = Some(15.0);
        file.section[0].ratio = Some("1:99".to_owned());
        file.section[0].mix_g = Some(100.0);
    })
}

// Source: Regulation (EC) No 1223/2009, Annex III, entry 12(a): hair products, 12 % of H2O2 present or released in the
// ready-for-use preparation.
#[rstest]
#[case::below("12.1 % w/w", Passed)] // 11.979 % on the hair
#[case::above("12.2 % w/w", Stop)] // 12.078 %
#[case::far_above("15 % w/w", Stop)] // 14.85 %
// Twelve by mass or by volume: 11.4 to 12.6 % on the hair for a cream of unknown density.
#[case::label_straddles("40 vol label", NotJudged)]
fn eu_limit(#[case] strength: &str, #[case] want: Verdict) {
    let plan = nearly_neat(Some("EU"), strength);
    assert_eq!(verdicts(&plan, "law"), [want], "{}", texts(&plan, "law"));
    assert_eq!(plan.blocked, want == Stop);
}

#[test]
fn an_exceeded_limit_is_said_loudly_with_its_source() {
    let plan = nearly_neat(Some("EU"), "15 % w/w");
    assert_eq!(texts(&plan, "law"), "top: 14.85 % w/w of 12 % on the hair: EXCEEDED\n");
    let finding = plan.findings.iter().find(|finding| finding.rule == Rule::Law).unwrap();
    assert!(finding.sources[0].text.contains("1223/2009"), "{:?}", finding.sources);
    let sheet = foilwork::sheet::bench_sheet(&plan);
    assert!(sheet.contains("*** DO NOT BEGIN: 1 finding says STOP."), "{sheet}");
    assert!(sheet.contains("[STOP] law: top: 14.85 % w/w of 12 % on the hair: EXCEEDED"), "{sheet}");
}

#[test]
fn without_a_jurisdiction_no_limit_is_passed() {
    let plan = nearly_neat(None, "3 % w/w");
    assert_eq!(verdicts(&plan, "law"), [NotJudged]);
    assert!(texts(&plan, "law").contains("`service.jurisdiction`"));
}

/// A figure that nobody looked up can condemn a mix but never pass it; where a table has no figure, nothing is passed.
#[rstest]
fn unverified_or_absent_figures_never_pass(
    #[values("JP", "US", "CA")] code: &str,
    #[values("1 % w/w", "6 % w/w")] strength: &str,
) {
    let plan = nearly_neat(Some(code), strength);
    let verdicts = verdicts(&plan, "law");
    assert!(!verdicts.is_empty() && !verdicts.contains(&Passed), "{code}: {}", texts(&plan, "law"));
}

/// No law leaves a gap where its figure, its basis or its date would stand, whatever the table knows.
#[test]
fn no_finding_of_the_law_has_a_gap() {
    for jurisdiction in Jurisdiction::ALL {
        let plan = nearly_neat(Some(jurisdiction.code()), "9 % w/w");
        for finding in plan.findings.iter().filter(|finding| finding.rule == Rule::Law) {
            let text =
                format!("{} {}", finding.text, finding.sources.iter().map(ToString::to_string).collect::<String>());
            assert!(!text.contains("of  ") && !text.contains("(;") && !text.contains("  "), "{jurisdiction}: {text}");
        }
    }
}
