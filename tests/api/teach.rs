//! Worksheets: refusals, and that a sheet is what was asked for.

use foilwork::teach::{Difficulty, Mistake, SheetHalf, Topic, WorksheetRequest, worksheet};
use rstest::rstest;
use std::collections::BTreeSet;

#[rstest]
#[case(0, "0 problems: give 1 to 200")]
#[case(201, "201 problems: give 1 to 200")]
fn a_number_of_problems_that_no_sheet_has_is_refused(#[case] count: usize, #[case] told: &str) {
    let request = WorksheetRequest { count, ..WorksheetRequest::new(1) };
    assert_eq!(worksheet(&request).unwrap_err().to_string(), told);
}

#[test]
fn two_hundred_problems_are_a_sheet() {
    let sheet = worksheet(&WorksheetRequest { count: 200, ..WorksheetRequest::new(1) }).unwrap();
    assert_eq!(sheet.exercises.len(), 200);
}

#[test]
fn topics_come_in_turn_and_the_difficulty_is_kept() {
    let topics = vec![Topic::Tax, Topic::Ratio];
    let difficulty = Some(Difficulty::Steady);
    let sheet = worksheet(&WorksheetRequest { topics, difficulty, count: 5, ..WorksheetRequest::new(9) }).unwrap();
    let got: Vec<Topic> = sheet.exercises.iter().map(|exercise| exercise.topic).collect();
    assert_eq!(got, [Topic::Tax, Topic::Ratio, Topic::Tax, Topic::Ratio, Topic::Tax]);
    assert!(sheet.exercises.iter().all(|exercise| exercise.difficulty == Difficulty::Steady));
    assert_eq!(sheet.title, "tax and ratio and scaling");
}

#[test]
fn a_longer_sheet_begins_with_the_shorter_one() {
    let of = |count| worksheet(&WorksheetRequest { count, ..WorksheetRequest::new(77) }).unwrap().exercises;
    assert_eq!(of(30)[..7], of(7));
}

#[test]
fn other_seeds_give_other_sheets() {
    let questions: BTreeSet<String> = (0..50)
        .map(|seed| worksheet(&WorksheetRequest { count: 1, ..WorksheetRequest::new(seed) }).unwrap())
        .map(|sheet| sheet.exercises[0].question.clone())
        .collect();
    assert!(questions.len() > 35, "{}", questions.len());
}

#[test]
fn every_mistake_is_met() {
    let mut met = BTreeSet::new();
    for seed in 0..300 {
        let sheet = worksheet(&WorksheetRequest { count: 26, ..WorksheetRequest::new(seed) }).unwrap();
        met.extend(sheet.exercises.iter().flat_map(|e| &e.options).filter_map(|option| option.mistake));
    }
    assert_eq!(met.len(), Mistake::ALL.len(), "{met:?}");
}

#[test]
fn the_key_is_kept_from_what_is_handed_out() {
    let sheet = worksheet(&WorksheetRequest::new(4)).unwrap();
    for text in [sheet.text(SheetHalf::Problems, true), sheet.html(SheetHalf::Problems, true)] {
        assert!(!text.contains("Key") && !text.contains("KEY") && !text.contains(" = "), "{text}");
    }
    let page = sheet.html(SheetHalf::Both, true);
    assert!(page.find("class=\"problems\"").unwrap() < page.find("class=\"key\"").unwrap());
}
