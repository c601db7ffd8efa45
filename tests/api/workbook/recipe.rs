//! A recipe with other amounts, another size and another scale typed into it.

use super::{book::Book, books::recipe, formula::Value};
use rstest::rstest;

const LOST: &str = "a part rounds to NOTHING: use a finer scale or make more";

fn column(book: &Book, letter: char, parts: usize) -> Vec<f64> {
    let first = book.row("Recipe", "part") + 1;
    (first..=first + parts).map(|row| book.number(&format!("{letter}{row}"))).collect()
}

/// 30 and 60 in 75: 25 and 50; in 100: 33.333 and 66.667, weighed as 33 and 67; with 45 in place of 60 in 100: 40 and 60.
#[test]
fn a_recipe_of_another_size_comes_to_the_sums_by_hand() {
    let mut book = Book::of(&recipe("30 g lightener + 60 g 6%", 75, 1.0));
    assert_eq!(column(&book, 'B', 2), [30.0, 60.0, 90.0]);
    assert_eq!(column(&book, 'C', 2), [25.0, 50.0, 75.0]);
    assert_eq!(column(&book, 'E', 2), [25.0, 50.0, 75.0]);
    book.change("wanted_total", 100.0);
    assert!((book.number("times") - 10.0 / 9.0).abs() < 1e-12);
    assert_eq!(column(&book, 'E', 2), [33.0, 67.0, 100.0]);
}

/// Changed into another, a recipe is that other: parts that tie, that round away, that are zero, scales that do not divide the bowl.
#[rstest]
#[case("30 g a + 15 g b + 67.5 g c", 41, 0.5)]
#[case("1 g a + 1 g b + 1 g c", 2, 1.0)]
#[case("1 g a + 1 g b + 1 g c", 10, 3.0)]
#[case("5 g a + 5 g b + 2 g c", 7, 1.0)]
#[case("10 g a + 0.1 g b + 20 g c", 60, 1.0)]
#[case("2.5 g a + 2.5 g b + 5 g c", 5, 0.1)]
#[case("7 g a + 11 g b + 13 g c", 100, 0.2)]
fn a_changed_recipe_is_the_recipe_made_so(#[case] text: &str, #[case] total: i64, #[case] division: f64) {
    let mut book = Book::of(&recipe("40 g a + 50 g b + 60 g c", 155, 0.01));
    let first = book.row("Recipe", "part") + 1;
    for (place, part) in text.split(" + ").enumerate() {
        let amount: f64 = part.split(' ').next().unwrap().parse().unwrap();
        book.change(&format!("B{}", first + place), amount);
    }
    book.change("wanted_total", total as f64);
    book.change("division_g", division);
    let made = Book::of(&recipe(text, total, division));
    assert!(made.holds() >= 24);
    book.is_as(&made);
    let weighed = column(&book, 'E', 3);
    assert!((weighed[..3].iter().sum::<f64>() - weighed[3]).abs() < 1e-9, "{weighed:?}");
}

#[rstest]
#[case("10 g a + 0.05 g b", 60, LOST)]
#[case("10 g a + 1 g b", 60, "no part rounds away")]
fn a_part_that_rounds_away_is_told(#[case] text: &str, #[case] total: i64, #[case] want: &str) {
    let mut book = Book::of(&recipe(text, total, 1.0));
    let at = format!("B{}", book.row("Recipe", "on this scale"));
    assert_eq!(book.left(book.place(&at)), Value::from(want));
    book.change("division_g", 0.01);
    assert_eq!(book.value(&at), Value::from("no part rounds away"));
    book.change("wanted_total", 0.0);
    assert_eq!(book.value(&at), Value::from("-"));
}

/// Volumes are not weighed: no scale, no column for it, nothing said of rounding.
#[test]
fn what_is_measured_is_not_weighed() {
    let mut book = Book::of(&recipe("30 mL a + 10 mL b", 75, 1.0));
    assert!(book.name_places().all(|(name, _)| name != "division_g"));
    let heading = &book.rows("Recipe")[book.row("Recipe", "part") - 1];
    assert_eq!(
        heading.iter().map(ToString::to_string).collect::<Vec<_>>()[..4],
        ["part", "as written, mL", "now, mL", "share, %"]
    );
    assert_eq!(heading.len(), 4);
    assert!(!book.first_column("Recipe").iter().any(|text| text == "on this scale"));
    assert!(!book.first_column("Sources").iter().any(|text| text == "rounding to the scale"));
    assert_eq!(column(&book, 'C', 2), [56.25, 18.75, 75.0]);
    assert_eq!(column(&book, 'D', 1), [75.0, 25.0]);
    book.change("wanted_total", 20.0);
    assert_eq!(column(&book, 'C', 2), [15.0, 5.0, 20.0]);
    let weighed = Book::of(&recipe("30 g a + 10 g b", 75, 1.0));
    assert!(weighed.first_column("Sources").iter().any(|text| text == "rounding to the scale"));
}

#[test]
fn the_recipe_reads_from_the_top() {
    let book = Book::of(&recipe("30 g a + 60 g b", 75, 1.0));
    let told = book.first_column("Recipe");
    let want = [
        "A recipe at another size",
        "",
        "Coloured cells",
        "",
        "A CHANGED NUMBER",
        "",
        "total wanted, g",
        "the scale counts in, g",
        "times the recipe",
        "",
        "part",
        "a",
        "b",
        "total",
        "on this scale",
        "",
    ];
    book.reads("Recipe", &want);
    assert!(told.len() > want.len(), "cautions stand below");
}
