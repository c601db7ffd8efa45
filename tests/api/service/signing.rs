//! The two pages to sign: one rule says when either may be signed.

use super::consult::{consulted, with};
use foilwork::{
    service::{
        Go, plan,
        shape::{HistoryFlag, Test, TestResult},
    },
    sheet::{agreement_page, consultation_sheet, guest_page},
};
use rstest::rstest;

/// What is not waited for, not read or too old by the house rule is tested again before anybody signs, on either page. The rule
/// is 7 days and 48 h; the start is on 25 November at 10:00. After a reaction no other test is asked for.
#[rstest]
#[case::clear(Some(("2026-11-23T10:00", TestResult::Clear)), true)]
#[case::none(None, false)]
#[case::unread(Some(("2026-11-23T10:00", TestResult::Pending)), false)]
#[case::old(Some(("2026-11-10T10:00", TestResult::Clear)), false)]
fn no_page_is_signed_without_a_skin_test(#[case] test: Option<(&str, TestResult)>, #[case] signed: bool) {
    let mut file = with(|_| ());
    (file.toner, file.root_shadow) = (Vec::new(), None);
    file.analysis.skin_test = test.map(|(applied, result)| Test { applied: applied.to_owned(), result });
    let found = consulted(&file);
    assert_ne!(found.decision.go, Go::Stop);
    let asked = found.agreement.before.iter().any(|said| said == "A skin test is made and read first.");
    assert_eq!((found.agreement.may_be_signed, asked), (signed, !signed), "{:?}", found.agreement.before);
    for page in [agreement_page(&found), guest_page(&plan(&file).unwrap())] {
        assert_eq!(page.contains("class=\"sign\""), signed);
        assert_eq!(page.contains("Not to be signed yet"), !signed);
        assert_eq!(page.contains("<h2>Before we begin</h2>"), !signed);
    }
}

/// A doctor who has still to agree keeps both pages from being signed, and both name what it is about in words for a guest.
#[test]
fn no_page_is_signed_before_the_doctor_agrees() {
    let mut file = with(|_| ());
    file.analysis.history = Some(vec![HistoryFlag::ReactionToLightener, HistoryFlag::Asthma]);
    file.service.jurisdiction = None;
    let found = consulted(&file);
    for page in [agreement_page(&found), guest_page(&plan(&file).unwrap())] {
        assert!(
            page.contains("The doctor has to agree (an earlier reaction to colour or lightener and asthma)."),
            "{page}"
        );
        assert!(!page.contains("class=\"sign\""));
        assert!(page.contains("what the law allows") && !page.contains("law;"), "{page}");
    }
    let sheet = consultation_sheet(&found);
    assert!(sheet.contains("not yet settled: what the law allows"), "{sheet}");
}
