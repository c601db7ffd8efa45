//! A worksheet in full, of one problem whose figures are put in by hand; and its pictures.

use foilwork::{
    source::{Basis, COMMON_PRACTICE},
    teach::{
        Difficulty, Exercise, ExerciseAnswer, Mistake, OfferedAnswer, SheetHalf, Topic, Working, Worksheet,
        WorksheetRequest, worksheet,
    },
};
use rstest::rstest;
use std::collections::BTreeSet;

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn answer(text: &str) -> ExerciseAnswer {
    ExerciseAnswer { text: text.to_owned(), value: None, unit: None }
}

fn sheet() -> Worksheet {
    let mut sheet = worksheet(&WorksheetRequest { count: 1, ..WorksheetRequest::new(7) }).unwrap();
    let option = |letter, text: &str, mistake| OfferedAnswer { letter, answer: answer(text), mistake };
    let step =
        |what, formula: &str, result: &str| Working { what, formula: formula.to_owned(), result: result.to_owned() };
    sheet.title = "tax".to_owned();
    let made = sheet.exercises.remove(0);
    sheet.exercises = vec![Exercise {
        number: 1,
        topic: Topic::Tax,
        difficulty: Difficulty::Steady,
        question: "What?".to_owned(),
        picture: None,
        answer: answer("10 g"),
        steps: vec![step("first", "1 + 1", "2"), step("then", "2 x 5", "10 g")],
        options: vec![
            option('A', "20 g", Some(Mistake::ALL[0])),
            option('B', "10 g", None),
            option('C', "30 g", Some(Mistake::ALL[1])),
        ],
        basis: Basis::Derived,
        sources: Vec::new(),
        ..made
    }];
    sheet
}

/// Problems, then the key; letters only where there are answers to choose from.
#[rstest]
#[case(SheetHalf::Problems, true)]
#[case(SheetHalf::Problems, false)]
#[case(SheetHalf::Key, true)]
#[case(SheetHalf::Key, false)]
#[case(SheetHalf::Both, true)]
#[case(SheetHalf::Both, false)]
fn a_worksheet_as_text(#[case] half: SheetHalf, #[case] choices: bool) {
    let sheet = sheet();
    let rule = "=".repeat(80);
    let problem = if choices { "1. What? A 20 g B 10 g C 30 g" } else { "1. What? Answer: ____________________" };
    let problems =
        format!("WORKSHEET 7 tax {rule} Name: ______________________________ Date: ______________ {problem}");
    let [a, b, c] = if choices { ["A ", "B ", "C "] } else { [""; 3] };
    let [one, other] = [Mistake::ALL[0], Mistake::ALL[1]];
    let key = format!(
        "KEY TO WORKSHEET 7 tax {rule} 1. {b}10 g (tax, steady) first: 1 + 1 = 2 then: 2 x 5 = 10 g not {a}20 g: {one} not {c}30 g: {other} \
         [derived: arithmetic] foilwork {}, problems of version {}, seed 7. Sums for a class: no product's instructions, no law and no test on \
         a strand or on skin is replaced by them.",
        sheet.foilwork, sheet.format
    );
    let want = match half {
        SheetHalf::Problems => problems,
        SheetHalf::Key => key,
        _ => format!("{problems} {key}"),
    };
    assert_eq!(flat(&sheet.text(half, choices)), want);
}

/// What the sum rests on: arithmetic alone, common practice, or sources by their ids.
#[rstest]
#[case(Basis::CommonPractice, &[COMMON_PRACTICE.id], "[common practice]")]
#[case(Basis::Published, &["one"], "[published: one]")]
#[case(Basis::Published, &["one", "two", "three"], "[published: one, two and three]")]
#[case(Basis::CommonPractice, &[COMMON_PRACTICE.id, "two"], "[common practice: common-practice and two]")]
fn what_a_sum_rests_on(#[case] basis: Basis, #[case] sources: &[&'static str], #[case] want: &str) {
    let mut sheet = sheet();
    (sheet.exercises[0].basis, sheet.exercises[0].sources) = (basis, sources.to_vec());
    let key = flat(&sheet.text(SheetHalf::Key, false));
    let want = want.replace("common-practice and", &format!("{} and", COMMON_PRACTICE.id));
    assert!(key.contains(&want), "{want}: {key}");
}

/// Every kind of picture is drawn under its title, and none is left empty.
#[test]
fn every_kind_of_picture_is_drawn() {
    let mut titles = BTreeSet::new();
    for seed in 0..30 {
        let sheet = worksheet(&WorksheetRequest { count: 26, ..WorksheetRequest::new(seed) }).unwrap();
        for picture in sheet.exercises.iter().filter_map(|exercise| exercise.picture.as_ref()) {
            let svg = picture.svg();
            let title = svg.split_once("<title>").unwrap().1.split_once("</title>").unwrap().0;
            titles.insert(title.replace(|sign: char| sign.is_ascii_digit(), ""));
            assert!(svg.lines().count() > 8 && svg.ends_with("</svg>\n"), "{svg}");
            if title.starts_with("Foils") {
                assert!(svg.matches(">foils ").count() > 1, "{svg}");
            }
        }
    }
    let want = [
        "Cost of the service",
        "Foils in the order of the work",
        "Level of the first strand",
        "Lightened from level ",
        "Net price against margin",
        "The day",
        "To make  g",
        "Twelve hues",
    ];
    assert_eq!(titles, want.into_iter().map(str::to_owned).collect());
}
