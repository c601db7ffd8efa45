//! What every choice keeps to; each `choice!` runs it, so that none can be forgotten.

use super::{Choice, UnknownChoice};
use serde::{Serialize, de::DeserializeOwned};
use std::{
    fmt::{Debug, Display},
    str::FromStr,
};

/// Choices whose codes a standard or the units themselves write, by what is chosen.
const WRITTEN_ELSEWHERE: &[&str] = &["jurisdiction", "country", "strength unit", "mass unit", "amount unit", "unit"];

/// Code, words, parser, plain data and schema of a choice say the same.
pub(crate) fn agrees<C>()
where
    C: Choice + Debug + Display + FromStr<Err = UnknownChoice> + Serialize + DeserializeOwned + schemars::JsonSchema,
{
    let (what, codes) = (C::WHAT, C::CODES);
    assert_eq!(C::ALL.len(), codes.len(), "{what}");
    for (choice, code) in C::ALL.iter().zip(codes) {
        assert_eq!(choice.code(), *code, "{what}");
        assert_eq!(choice.to_string(), choice.words(), "{what}: display prints the words");
        for text in [*code, choice.words(), &format!("  {} ", code.to_uppercase()), &choice.words().to_uppercase()] {
            assert_eq!(text.parse::<C>(), Ok(*choice), "{what}: {text:?} is read back");
        }
        for also in choice.synonyms() {
            assert_eq!(also.parse::<C>(), Ok(*choice), "{what}: {also:?} is understood");
        }
        let json = serde_json::json!(code);
        assert_eq!(serde_json::to_value(choice).ok().as_ref(), Some(&json), "{what}: plain data is the code");
        assert_eq!(serde_json::from_value::<C>(json).ok().as_ref(), Some(choice), "{what}: plain data is read back");
        let kebab = code
            .split('-')
            .all(|part| !part.is_empty() && part.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit()));
        let elsewhere = WRITTEN_ELSEWHERE.contains(&what);
        assert!(
            kebab || elsewhere,
            "{what}: {code:?} is not kebab-case; if a standard writes it so, say it in {}",
            file!()
        );
    }
    let schema = schemars::schema_for!(C).to_value();
    let branches = schema.get("oneOf").and_then(serde_json::Value::as_array).cloned().unwrap_or_default();
    assert_eq!(branches.len(), codes.len(), "{what}: every choice has a description of its own: {schema}");
    for (branch, code) in branches.iter().zip(codes) {
        assert_eq!(branch["const"], **code, "{what}: the schema lists the codes in their order");
        assert!(branch["description"].as_str().is_some_and(|text| !text.is_empty()), "{what}: {code} says what it is");
    }
    let unknown = "no such word".parse::<C>().unwrap_err();
    assert_eq!((unknown.what, unknown.choices, unknown.got.as_str()), (what, codes, "no such word"));
    assert!(unknown.to_string().starts_with(&format!("unknown {what} \"no such word\": give one of ")), "{unknown}");
    assert!(what.to_lowercase() == what && !what.contains('_'), "{what:?} stands in the middle of a sentence");
}
