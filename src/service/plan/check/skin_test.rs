use super::{
    super::{Hair, Start, TestDone, findings::Findings},
    brings::Brings,
};
use crate::{
    finding::{
        Reason, Rule,
        Verdict::{NotJudged, Passed, Stop, Warning},
    },
    service::shape::{Salon, TestResult},
    source::{COMMON_PRACTICE, citations::trade},
};

/// Whether a skin test was done, waited for and read, by the rule that binds the salon.
pub(super) fn check(hair: &Hair, brings: Brings, start: Start, salon: &Salon, findings: &mut Findings) {
    let missing = if brings.oxidative_colour { Stop } else { Warning };
    let Some(test) = hair.skin_test else {
        let text = "none recorded: test with the products of this service first, then enter `analysis.skin_test`";
        return findings.add(Rule::SkinTest, missing, text, trade::SKIN_TEST_US_CA);
    };
    match test.result {
        TestResult::Reaction => {
            let text = "reacted: do not go on; refer to a doctor";
            return findings.add(Rule::SkinTest, Stop, text, trade::EU_DYE_LABEL);
        }
        TestResult::Pending => {
            return findings.add(Rule::SkinTest, missing, "not read yet: wait for it", trade::SKIN_TEST_US_CA);
        }
        TestResult::Clear => {}
    }
    let Some(age) = age_in_hours(test, start) else {
        let text = format!("applied {} is not before the start {start}", test.applied);
        return findings.add(Rule::SkinTest, Stop, text, COMMON_PRACTICE);
    };
    let source = salon.skin_test_source.clone().unwrap_or_else(|| "your own rule, no source given".to_owned());
    let source = Reason::stated(source);
    let hours = hours(age.0);
    let rule = Rule::SkinTest;
    match salon.skin_test_wait_h {
        // Sources disagree (24 h, 48 h, some advise against it): the rule is the user's to state.
        None => {
            let text = format!(
                "clear, applied {hours} before; the waiting time is not judged: enter `salon.skin_test_wait_h` by the \
                 rule that binds you"
            );
            findings.add(rule, NotJudged, text, trade::SKIN_TEST_US_CA);
        }
        Some(wait) if age.0 < wait => {
            let text = format!("applied {hours} before the start, your rule asks for {wait} h: move the start");
            findings.add(rule, Stop, text, source.clone());
        }
        Some(wait) => {
            findings.add(rule, Passed, format!("clear, applied {hours} before (rule {wait} h)"), source.clone());
        }
    }
    if let Some(valid) = salon.skin_test_valid_days
        && age.1 > valid * 24.0
    {
        let text = format!("{:.0} days old, your rule allows {valid}: test again", age.1 / 24.0);
        findings.add(Rule::SkinTestAge, missing, text, source);
    }
}

/// Whole minutes, cut off: a test that is a minute short must not read as long enough.
fn hours(hours: f64) -> String {
    let minutes = (hours * 60.0 + 1e-6).floor();
    match minutes % 60.0 {
        0.0 => format!("{} h", minutes / 60.0),
        rest => format!("{} h {rest} min", (minutes / 60.0).floor()),
    }
}

/// Hours between a test and the start: at least, and at most. None if the test comes after the start.
fn age_in_hours(test: TestDone, start: Start) -> Option<(f64, f64)> {
    let between =
        |from: jiff::civil::DateTime, to: jiff::civil::DateTime| to.duration_since(from).as_secs_f64() / 3600.0;
    let least = between(test.applied.latest(), start.earliest());
    let most = between(test.applied.earliest(), start.latest());
    (most >= 0.0).then_some((least.max(0.0), most))
}
