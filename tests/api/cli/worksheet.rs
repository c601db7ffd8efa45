//! `foilwork worksheet`: one sheet in four forms.

use super::{data, fine, foilwork};

const ASKED: [&str; 7] = ["worksheet", "--topics", "ratio,tax", "--count", "4", "--seed", "6"];

#[test]
fn text_page_table_and_data_hold_the_same_answers() {
    let exercises = data(&ASKED)["exercises"].clone();
    let with = |option: &str| fine(&[&ASKED[..], &[option]].concat());
    let (text, page, table) = (fine(&ASKED), with("--html"), with("--csv"));
    for exercise in exercises.as_array().unwrap() {
        let answer = exercise["answer"]["text"].as_str().unwrap();
        for form in [&text, &page, &table] {
            assert!(form.contains(answer), "{answer}");
        }
    }
    assert_eq!(table.lines().count(), 5);
}

#[test]
fn halves_are_one_sheet() {
    let with = |half: &str| fine(&[&ASKED[..], &["--half", half]].concat());
    assert_eq!(format!("{}\n{}", with("problems"), with("key")), fine(&ASKED));
}

#[test]
fn what_is_not_known_is_refused() {
    for (option, value) in [("--topics", "dilutoin"), ("--difficulty", "hard"), ("--half", "third"), ("--count", "0")] {
        let output = foilwork(&["worksheet", option, value]);
        let told = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2));
        assert!(told.starts_with(&format!("error: {option}: ")), "{told}");
    }
    // The way out is that of the number, which has no unit to leave out.
    for seed in ["-3", "1.5", "x"] {
        let output = foilwork(&["worksheet", "--seed", seed]);
        let told = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(2));
        assert!(told.contains("write a whole number from 0 to ") && !told.contains("unit"), "{told}");
    }
}
