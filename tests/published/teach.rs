//! Worksheets against sums worked by hand.
//!
//! Source: `tests/data/teach/worked.csv`, written by `tests/python/teach_table.py` from fractions of Python's library and the
//! sums and errors as they are said in `teach_by_hand.py` and `teach_mistakes.py`.

use foilwork::teach::{Exercise, ExerciseAnswer, Topic, WorksheetRequest, worksheet};
use rust_decimal::Decimal;
use std::collections::BTreeMap;

#[derive(serde::Deserialize)]
struct Row {
    seed: u64,
    topic: String,
    kind: String,
    given: String,
    answer: String,
    errors: String,
}

fn pairs(text: &str) -> BTreeMap<&str, &str> {
    text.split(';').map(|pair| pair.split_once('=').unwrap()).collect()
}

fn fraction(text: &str) -> Option<(Decimal, Decimal)> {
    let (over, under) = text.split_once('/')?;
    Some((over.parse().ok()?, under.parse().ok()?))
}

/// Whether the answer is that, to as many decimals as it is written with.
fn shows(answer: &ExerciseAnswer, worked: &str, exact: bool) -> bool {
    let (Some(value), Some((over, under))) = (answer.value, fraction(worked)) else { return answer.text == worked };
    let digits = if exact { 6 } else { value.scale().max(1) };
    (value * under - over).abs() <= under * Decimal::new(5, digits + 1)
}

fn of_seed(row: &Row) -> Exercise {
    let topic: Topic = row.topic.parse().unwrap();
    let sheet =
        worksheet(&WorksheetRequest { topics: vec![topic], count: 1, ..WorksheetRequest::new(row.seed) }).unwrap();
    sheet.exercises.into_iter().next().unwrap()
}

/// The problem of a seed stays what it was, whatever else is added; its answers are those of the sums.
#[test]
fn problems_answers_and_errors_are_as_worked_by_hand() {
    let mut kinds = BTreeMap::<String, usize>::new();
    for row in csv::Reader::from_reader(&include_bytes!("../data/teach/worked.csv")[..]).deserialize() {
        let row: Row = row.unwrap();
        let found = of_seed(&row);
        let at = format!("seed {} of {}", row.seed, row.topic);
        assert_eq!(found.kind, row.kind, "{at}");
        let given: BTreeMap<&str, &str> = found.given.iter().map(|(name, value)| (*name, value.as_str())).collect();
        assert_eq!(given, pairs(&row.given), "{at}");
        let exact = !found.question.contains(" Round to ");
        assert!(shows(&found.answer, &row.answer, exact), "{at}: {} for {}", found.answer.text, row.answer);
        let mut errors = pairs(&row.errors);
        for option in &found.options {
            let Some(mistake) = option.mistake else { continue };
            let leads = errors.get(mistake.code()).unwrap_or_else(|| panic!("{at}: {mistake}"));
            let some = leads.split('|').any(|worked| shows(&option.answer, worked, false));
            assert!(some, "{at}, {mistake}: {} for {leads}", option.answer.text);
        }
        errors.retain(|code, _| found.options.iter().all(|option| option.mistake.is_none_or(|m| m.code() != *code)));
        assert!(errors.is_empty(), "{at}: {errors:?} is not offered");
        *kinds.entry(row.kind).or_default() += 1;
    }
    assert!(kinds.len() > 60 && kinds.values().all(|count| *count == 5), "{kinds:?}");
}
