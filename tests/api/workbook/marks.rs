//! Worksheets as workbooks: answers are marked as they are typed.

use super::{book::Book, books::problems, formula::Value};
use foilwork::{
    source::register,
    teach::{SheetHalf, WorksheetRequest, worksheet},
};
use rust_decimal::{Decimal, prelude::ToPrimitive};

const COUNT: usize = 40;

/// Right is what is within half of the last decimal of the key, whole numbers only themselves, words whatever their case.
#[test]
fn answers_are_marked_as_they_are_typed() {
    let sheet = worksheet(&WorksheetRequest { count: COUNT, ..WorksheetRequest::new(3) }).unwrap();
    let mut book = Book::of(&problems(3, COUNT, SheetHalf::Both));
    let said = |book: &Book, row: usize| book.value(&format!("Problems!E{row}")).to_string();
    let (mut numbers, mut words, mut whole) = (0, 0, 0);
    for (place, exercise) in sheet.exercises.iter().enumerate() {
        let row = place + 4;
        assert_eq!(said(&book, row), "open");
        let answer = format!("Problems!C{row}");
        let mut tried = |value: Value| {
            book.change(&answer, value);
            said(&book, row)
        };
        match exercise.answer.value {
            Some(value) => {
                numbers += 1;
                whole += usize::from(value.scale() == 0);
                let key = value.to_f64().unwrap();
                let half = if value.scale() == 0 { Decimal::ZERO } else { Decimal::new(5, value.scale() + 1) };
                let half = half.to_f64().unwrap();
                for (off, want) in
                    [(half, "right"), (-half, "right"), (half + 1e-6, "not yet"), (-half - 1e-6, "not yet")]
                {
                    assert_eq!(tried((key + off).into()), want, "{} off by {off}", exercise.answer.text);
                }
                assert_eq!(tried("no number".into()), "not yet");
                assert_eq!(tried(key.into()), "right");
            }
            None => {
                words += 1;
                assert_eq!(tried("something else".into()), "not yet");
                assert_eq!(tried(format!(" {} ", exercise.answer.text.to_uppercase()).as_str().into()), "right");
            }
        }
        assert_eq!(book.number("right_so_far"), place as f64 + 1.0);
    }
    assert!(numbers >= 20 && words >= 1 && whole >= 1, "{numbers} {words} {whole}");
}

/// The key has for each problem its answer, what it may be off, its unit and its working, and the page of sources what it rests on.
#[test]
fn the_key_stands_beside_the_problems() {
    let sheet = worksheet(&WorksheetRequest { count: COUNT, ..WorksheetRequest::new(3) }).unwrap();
    let book = Book::of(&problems(3, COUNT, SheetHalf::Both));
    assert_eq!(book.sheets, ["Problems", "Key", "Sources"]);
    let (asked, key, rests) = (book.rows("Problems"), book.rows("Key"), book.rows("Sources"));
    let texts = |row: &[Value]| row.iter().map(ToString::to_string).collect::<Vec<_>>();
    assert_eq!(texts(&asked[2]), ["", "problem", "your answer", "unit", ""]);
    assert_eq!(texts(&key[2]), ["", "answer", "value", "unit", "within", "working"]);
    assert_eq!(texts(&asked[0])[0], format!("Problems: {} (sheet 3)", sheet.title));
    assert_eq!(texts(&key[0])[0], format!("Key: {} (sheet 3)", sheet.title));
    for (place, exercise) in sheet.exercises.iter().enumerate() {
        let (asked, key, rests) = (texts(&asked[place + 3]), texts(&key[place + 3]), texts(&rests[place + 3]));
        let unit = exercise.answer.unit.clone().unwrap_or_default();
        assert_eq!(asked[..4], [(place + 1).to_string(), exercise.in_words(), String::new(), unit.clone()]);
        assert_eq!([&key[0], &key[1], &key[3]], [&(place + 1).to_string(), &exercise.answer.text, &unit]);
        assert_eq!(key[5].lines().count(), exercise.steps.len());
        for (line, step) in key[5].lines().zip(&exercise.steps) {
            assert_eq!(line, format!("{}: {} = {}", step.what, step.formula, step.result));
        }
        let cited: Vec<String> =
            exercise.sources.iter().map(|id| register().find(|one| one.id == *id).unwrap().to_string()).collect();
        let cited = if cited.is_empty() { "arithmetic".to_owned() } else { cited.join("; ") };
        assert_eq!(rests, [format!("problem {}", place + 1), exercise.basis.to_string(), cited]);
    }
    // Below the last problem: the count, an empty row, how to write, and what comes first on hair.
    let below: Vec<String> = asked[COUNT + 3..].iter().map(|row| texts(row).concat()).collect();
    assert_eq!(below[..2], ["right so far0", ""]);
    assert!(below[2].starts_with("Coloured cells are for your answers") && below[3].starts_with("Exercises on paper"));
    assert_eq!(below.len(), 4);
}

/// A half alone has no marks, and no page of the other.
#[test]
fn a_half_is_a_half() {
    let asked = Book::of(&problems(3, 5, SheetHalf::Problems));
    assert_eq!(asked.sheets, ["Problems", "Sources"]);
    assert_eq!((asked.holds(), asked.name_places().count()), (0, 0));
    assert!(
        asked.rows("Problems").iter().all(|row| row.get(1).is_none_or(|told| *told != Value::from("right so far")))
    );
    let key = Book::of(&problems(3, 5, SheetHalf::Key));
    assert_eq!((key.sheets.as_slice(), key.holds()), (["Key".to_owned(), "Sources".to_owned()].as_slice(), 0));
}
