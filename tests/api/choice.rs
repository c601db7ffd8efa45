//! Words to choose from: what is read, and the one message for every other word.

use foilwork::{
    choice::{Choice, UnknownChoice, nearest},
    finding::{Rule, Verdict},
    source::Basis,
};
use rstest::rstest;

fn read<C: Choice + std::str::FromStr<Err = UnknownChoice>>(text: &str) -> Result<&'static str, String> {
    text.parse::<C>().map(Choice::code).map_err(|error| error.to_string())
}

#[rstest]
#[case::code("skin-test", "skin-test")]
#[case::words("skin test", "skin-test")]
#[case::capitals("SKIN TEST", "skin-test")]
#[case::spaces("  law ", "law")]
fn code_and_words_are_read(#[case] text: &str, #[case] code: &str) {
    assert_eq!(read::<Rule>(text), Ok(code.to_owned().leak() as &str));
}

#[test]
fn another_word_gets_the_choices_and_the_nearest() {
    assert_eq!(
        read::<Verdict>("warnings").unwrap_err(),
        "unknown verdict \"warnings\": give one of stop, warning, not-judged, note, passed (did you mean warning?)"
    );
    assert_eq!(
        read::<Verdict>("").unwrap_err(),
        "unknown verdict \"\": give one of stop, warning, not-judged, note, passed"
    );
    assert_eq!(
        read::<Basis>("mesured").unwrap_err(),
        "unknown basis \"mesured\": give one of published, derived, measured, stated, common-practice, assumed (did you \
         mean measured?)"
    );
}

#[test]
fn the_error_holds_what_a_program_needs() {
    let error = "warnings".parse::<Verdict>().unwrap_err();
    assert_eq!(error.what, "verdict");
    assert_eq!(error.got, "warnings");
    assert_eq!(error.choices, <Verdict as Choice>::CODES);
    assert_eq!(error.nearest(), Some("warning"));
}

#[rstest]
#[case::slip("developr", Some("developer"))]
#[case::capitals("LIGHTENER", Some("lightener"))]
#[case::plural("toners", Some("toner"))]
#[case::unlike("quux", None)]
#[case::empty("", None)]
fn the_nearest_word_is_one_that_is_like_it(#[case] word: &str, #[case] want: Option<&str>) {
    assert_eq!(nearest(word, ["developer", "lightener", "toner"]), want);
}

/// A choice of somebody else's, who says no more than must be said: no other words, no way out of its own.
#[test]
fn a_choice_needs_no_other_words() {
    #[derive(Clone, Copy, PartialEq, Eq)]
    struct Only;
    impl Choice for Only {
        const WHAT: &'static str = "thing";
        const ALL: &'static [Self] = &[Only];
        const CODES: &'static [&'static str] = &["only"];
        fn code(self) -> &'static str {
            "only"
        }
        fn words(self) -> &'static str {
            "the only one"
        }
    }
    assert!(Only.synonyms().is_empty());
    assert_eq!(Only::hint("other"), None);
}
