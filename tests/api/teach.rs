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

/// The sheet as a table, read back: a line for each problem, lists by their letters, and nothing that a spreadsheet calculates from.
/// A dash alone is no formula.
#[test]
fn the_table_holds_the_sheet() {
    let mut sheet = worksheet(&WorksheetRequest { count: 26, ..WorksheetRequest::new(5) }).unwrap();
    let first = &mut sheet.exercises[0];
    (first.question, first.answer.text, first.answer.unit) = ("=1+1".to_owned(), "-".to_owned(), Some("-x".to_owned()));
    let table = sheet.csv();
    let mut rows = csv::Reader::from_reader(table.as_bytes());
    let names = rows.headers().unwrap().clone();
    let rows: Vec<csv::StringRecord> = rows.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), sheet.exercises.len());
    let of = |row: &csv::StringRecord, name: &str| row[names.iter().position(|one| one == name).unwrap()].to_owned();
    assert_eq!([of(&rows[0], "question"), of(&rows[0], "answer"), of(&rows[0], "unit")], ["'=1+1", "-", "'-x"]);
    for (row, exercise) in rows.iter().zip(&sheet.exercises) {
        assert_eq!(of(row, "seed"), "5");
        assert_eq!(of(row, "number"), exercise.number.to_string());
        assert_eq!(of(row, "kind"), exercise.kind);
        assert_eq!(of(row, "letter"), exercise.letter().to_string());
        let letters: Vec<String> = exercise.options.iter().map(|option| option.letter.to_string()).collect();
        let told: Vec<String> = of(row, "options").split(" | ").map(|one| one[..1].to_owned()).collect();
        assert_eq!(told, letters);
        let right: Vec<bool> = of(row, "mistakes").split(" | ").map(|one| one == "right").collect();
        assert_eq!(right, exercise.options.iter().map(|one| one.mistake.is_none()).collect::<Vec<_>>());
        assert_eq!(right.iter().filter(|right| **right).count(), 1);
        assert_eq!(of(row, "steps").split(" | ").count(), exercise.steps.len());
        assert_eq!(of(row, "picture").is_empty(), exercise.picture.is_none());
        assert_eq!(of(row, "value").is_empty(), exercise.answer.value.is_none());
    }
}

/// Each half of a sheet holds its own, and with choices their letters: on paper and as a page.
#[rstest]
fn each_half_holds_its_own(
    #[values(SheetHalf::Both, SheetHalf::Problems, SheetHalf::Key)] half: SheetHalf,
    #[values(true, false)] choices: bool,
) {
    let sheet = worksheet(&WorksheetRequest { count: 12, ..WorksheetRequest::new(11) }).unwrap();
    let (problems, key) = (half != SheetHalf::Key, half != SheetHalf::Problems);
    let text = sheet.text(half, choices);
    let page = sheet.html(half, choices);
    assert_eq!([text.contains("\nName: ") || text.contains("Name: __"), page.contains("Name: __")], [problems; 2]);
    assert_eq!([text.contains("KEY TO WORKSHEET 11"), page.contains("Key to worksheet 11")], [key; 2]);
    assert_eq!(page.contains("<h1>Key to"), half == SheetHalf::Key);
    let lines = |mark: &str| text.lines().filter(|line| line.trim_start().starts_with(mark)).count();
    let wrong: usize = sheet.exercises.iter().flat_map(|one| &one.options).filter(|one| one.mistake.is_some()).count();
    assert_eq!(lines("Answer: ___"), if problems && !choices { 12 } else { 0 });
    assert_eq!(page.matches(">Answer:<").count(), if problems && !choices { 12 } else { 0 });
    assert_eq!(page.matches("class=\"choices\"").count(), if problems && choices { 12 } else { 0 });
    assert_eq!(lines("not "), if key { wrong } else { 0 });
    assert_eq!(lines("A  "), if problems && choices { 12 } else { 0 });
    assert_eq!(text.contains("problems of version"), key);
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for one in &sheet.exercises {
        let letter = if choices { format!("{} ", one.letter()) } else { String::new() };
        let answer = one.answer.text.split_whitespace().collect::<Vec<_>>().join(" ");
        let head = format!("{}. {letter}{answer} ({}, {})", one.number, one.topic, one.difficulty);
        assert_eq!(flat.contains(&head), key, "{head}");
    }
}

fn many(seeds: u64) -> Vec<Exercise> {
    let of = |seed| worksheet(&WorksheetRequest { count: 26, ..WorksheetRequest::new(seed) }).unwrap().exercises;
    (0..seeds).flat_map(of).collect()
}

/// What is to be rounded lies on no step of its scale and not in the middle between two, where there would be nothing to round, or two
/// answers; and each wrong answer is its mistake, worked out here from what is given.
#[test]
fn wrong_answers_come_of_their_mistakes() {
    let (mut rounded, mut diluted) = (0, 0);
    for seed in 0..60 {
        let topics = vec![Topic::Dilution, Topic::Weighing];
        let sheet = worksheet(&WorksheetRequest { topics, count: 40, ..WorksheetRequest::new(seed) }).unwrap();
        for exercise in &sheet.exercises {
            let given = |name: &str| exercise.given[name].parse::<f64>().unwrap();
            let by_mistake: Vec<(Mistake, f64)> = match exercise.kind {
                "round-to-scale" => {
                    rounded += 1;
                    let (wanted, step) = (given("wanted_g"), given("division_g"));
                    let rest = (wanted / step).fract();
                    assert!([0.0, 0.5, 1.0].iter().all(|edge| (rest - edge).abs() > 1e-6), "{}", exercise.question);
                    let below = (wanted / step).floor() * step;
                    vec![
                        (Mistake::CutOff, below),
                        (Mistake::RoundedUp, below + step),
                        (Mistake::GivenForAnswer, wanted),
                    ]
                }
                "dilute-to-total" => {
                    diluted += 1;
                    let (total, target, stock) =
                        (given("total_g"), given("target_ww_percent"), given("stock_ww_percent"));
                    vec![
                        (Mistake::OtherPart, total - total * target / stock),
                        (Mistake::PartAndWhole, total * target / (stock + target)),
                        (Mistake::Inverted, total * stock / target),
                        (Mistake::Denominator, total * target / 100.0),
                    ]
                }
                _ => continue,
            };
            for option in &exercise.options {
                let wanted = by_mistake.iter().find(|(mistake, _)| Some(*mistake) == option.mistake);
                let (Some((mistake, wanted)), Some(value)) = (wanted, option.answer.value) else { continue };
                let off = (value.to_string().parse::<f64>().unwrap() - wanted).abs();
                let half = 0.5 * 0.1_f64.powi(i32::try_from(value.scale()).unwrap()) + 1e-9;
                assert!(off <= half, "{}, {mistake:?}: {value} is not {wanted}", exercise.question);
            }
        }
    }
    assert!(rounded > 50 && diluted > 50, "{rounded} {diluted}");
}
