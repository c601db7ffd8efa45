//! Worksheets: refusals, and that a sheet is what was asked for.

use super::common::school;
use foilwork::teach::{Difficulty, Exercise, Mistake, SheetHalf, Topic, WorksheetRequest, worksheet};
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

/// Each line of the working can be done again by anybody, and comes to what stands behind it, to as many decimals.
#[test]
fn every_line_of_the_working_comes_to_what_it_says() {
    let mut kinds = BTreeSet::new();
    for exercise in many(60) {
        for step in &exercise.steps {
            let told = step.result.split(' ').next().unwrap_or_default();
            let (Some(worked), Ok(number)) = (school(&step.formula.replace(" g", "")), told.parse::<f64>()) else {
                continue;
            };
            let decimals = told.split_once('.').map_or(0, |(_, decimals)| decimals.len());
            let near = (worked - number).abs() <= 0.5 * 0.1_f64.powi(decimals as i32) + 1e-9;
            assert!(near, "{}, {}: {} = {}", exercise.kind, step.what, step.formula, step.result);
            kinds.insert(exercise.kind);
        }
    }
    assert!(kinds.len() > 30, "{kinds:?}");
}

/// The mean of both levels is asked for only where the shade is two levels lighter or more, and for two as well.
#[test]
fn a_shade_is_two_levels_lighter_or_more() {
    let of = |exercise: &Exercise, name: &str| exercise.given.get(name).map(|level| level.parse::<i32>().unwrap());
    let lighter = many(120).into_iter().filter(|one| one.question.starts_with("Permanent colour of level "));
    let lighter: BTreeSet<i32> =
        lighter.map(|one| of(&one, "shade_level").unwrap() - of(&one, "natural_level").unwrap()).collect();
    assert_eq!(lighter.first(), Some(&2), "{lighter:?}");
}

/// Whoever cannot see a picture reads what is in it; one of a price says of which cost.
#[test]
fn every_picture_is_told_in_words() {
    let mut costs = 0;
    for exercise in many(40) {
        let Some(picture) = &exercise.picture else { continue };
        assert!(picture.says.split_whitespace().count() > 4, "{}: {:?}", exercise.kind, picture.says);
        if let Some(cost) = exercise.given.get("cost") {
            assert!(picture.says.contains(cost.as_str()), "{}: {}", exercise.kind, picture.says);
            costs += 1;
        }
    }
    assert!(costs > 0);
}

fn many(seeds: u64) -> Vec<Exercise> {
    let of = |seed| worksheet(&WorksheetRequest { count: 26, ..WorksheetRequest::new(seed) }).unwrap().exercises;
    (0..seeds).flat_map(of).collect()
}
