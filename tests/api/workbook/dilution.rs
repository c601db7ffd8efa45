//! The wall chart, with other numbers typed into it: what it comes to by hand, and what foilwork makes of the same.

use super::{
    book::Book,
    books::{all_near, chart, exact, open, table},
    formula::Value,
};
use rstest::rstest;

/// The place of a row of the chart, counted from the first.
fn cell(book: &Book, column: char, row: usize) -> String {
    format!("{column}{}", book.row("Dilution", "bottle") + 1 + row)
}

/// Worked by hand for 12 % w/w to 3 % in 60 g: 60 x 3 / 12 = 15 and 45. In 61 g: 15.25 and 45.75, on a scale of a gram 15 and 46,
/// which give 15 x 12 / 61 = 2.950820 %. To 4.5 % by a developer of 1.5 % in 61 g: 61 x 3 / 10.5 = 17.428571, so 17 and 44, which
/// give (17 x 12 + 44 x 1.5) / 61 = 4.426230 %.
#[test]
fn a_changed_chart_comes_to_the_sums_by_hand() {
    let mut book = Book::of(&chart(&table(&exact(&[12.0]), &[3.0], exact(&[0.0])[0], (60.0, 1.0))));
    let cells = |book: &Book| ['F', 'G', 'H', 'I', 'J'].map(|column| book.number(&cell(book, column, 0)));
    let near = |came: [f64; 5], want: [f64; 5]| all_near(&came, &want, 5e-7);
    near(cells(&book), [15.0, 45.0, 15.0, 45.0, 3.0]);
    assert_eq!(book.number("divisions"), 60.0);
    book.change("total_g", 61.0);
    near(cells(&book), [15.25, 45.75, 15.0, 46.0, 2.950_820]);
    book.change(&cell(&book, 'E', 0), 4.5);
    book.change("weaker_ww_percent", 1.5);
    near(cells(&book), [17.428_571, 43.571_429, 17.0, 44.0, 4.426_230]);
    book.change(&cell(&book, 'E', 0), 1.4);
    let told = |book: &Book| ['F', 'G', 'H', 'I', 'J', 'K', 'L'].map(|column| book.value(&cell(book, column, 0)));
    assert!(told(&book).iter().all(|value| *value == Value::from("-")));
    assert_eq!(book.value(&cell(&book, 'M', 0)), Value::from("out of reach"));
    // 0.02 % of 12 % in 61 g are 0.1 g, less than half a gram.
    book.change("weaker_ww_percent", 0.0);
    book.change(&cell(&book, 'E', 0), 0.02);
    assert_eq!(book.value(&cell(&book, 'M', 0)), Value::from("too fine for this scale"));
    book.change("division_g", 0.1);
    assert_eq!(book.value(&cell(&book, 'M', 0)), Value::from("weighable"));
}

/// A chart that is changed into another is that other: sizes, scales, halves, bottles that are open, what is stronger than the
/// bottle, targets that nothing reaches.
#[rstest]
#[case((60.0, 1.0), 0.0, &[12.0, 9.0, 3.0], &[6.0, 4.5, 2.0])]
#[case((5.0, 1.0), 0.0, &[12.0, 9.0, 3.0], &[6.0, 0.5, 2.75])]
#[case((2.5, 0.1), 3.0, &[12.0, 9.0, 3.0], &[6.0, 4.5, 3.0])]
#[case((61.0, 0.5), 6.0, &[3.0, 9.0, 6.0], &[6.0, 4.5, 12.0])]
#[case((37.0, 2.0), 1.5, &[12.0, 0.5, 30.0], &[1.0, 7.0, 30.0])]
fn a_changed_chart_is_the_chart_made_so(
    #[case] sizes: (f64, f64),
    #[case] weaker: f64,
    #[case] stocks: &[f64],
    #[case] targets: &[f64],
) {
    let mut book =
        Book::of(&chart(&table(&exact(&[40.0, 11.0, 10.0]), &[9.0, 8.0, 7.0], exact(&[0.1])[0], (77.0, 0.2))));
    // Cautions and what the chart was made for stay: that is another test.
    let mut made = Book::of(&chart(&table(&exact(stocks), targets, exact(&[weaker])[0], sizes)));
    for (name, value) in [("total_g", sizes.0), ("division_g", sizes.1), ("weaker_ww_percent", weaker)] {
        book.change(name, value);
    }
    for (row, stock) in stocks.iter().enumerate() {
        for (column, target) in targets.iter().enumerate() {
            let row = row * targets.len() + column;
            book.change(&cell(&book, 'B', row), *stock);
            book.change(&cell(&book, 'E', row), *target);
        }
    }
    made.change("made_for_ww_percent", 40.0);
    book.is_as(&made);
}

/// A label of 6 % that may be 5 to 7 %, changed to 12 %, may be 10 to 14 %; one of 90 % not more than all of it. What is added is at
/// least what it was, where its best value is nothing.
#[test]
fn bounds_follow_a_label() {
    let mut book = Book::of(&chart(&table(&[open(5.0, 6.0, 7.0)], &[3.0], open(0.0, 0.0, 1.0), (60.0, 1.0))));
    let bounds = |book: &Book| ['C', 'D', 'J', 'K', 'L'].map(|column| book.number(&cell(book, column, 0)));
    // Half and half: the middle of the bounds of both.
    assert_eq!(bounds(&book), [5.0, 7.0, 3.0, 2.5, 4.0]);
    assert_eq!([book.number("weaker_low_ww_percent"), book.number("weaker_high_ww_percent")], [0.0, 1.0]);
    book.change(&cell(&book, 'B', 0), 12.0);
    book.change(&cell(&book, 'E', 0), 6.0);
    assert_eq!(bounds(&book).map(|bound| (bound * 1e9).round() / 1e9), [10.0, 14.0, 6.0, 5.0, 7.5]);
    book.change(&cell(&book, 'B', 0), 90.0);
    assert_eq!(book.number(&cell(&book, 'D', 0)), 100.0);
    book.change("weaker_ww_percent", 2.0);
    assert_eq!([book.number("weaker_low_ww_percent"), book.number("weaker_high_ww_percent")], [2.0, 3.0]);
}

/// The ceiling is the 12 % of Annex III, entry 12 of Regulation (EC) No 1223/2009.
#[test]
fn what_passes_the_ceiling_is_loud() {
    let made = table(&exact(&[12.0, 9.0, 20.0]), &[6.0], exact(&[0.0])[0], (60.0, 1.0));
    let mut book = Book::of(&chart(&made));
    assert_eq!(book.number("limit_ww_percent"), 12.0);
    assert_eq!(book.number("made_for_ww_percent"), 20.0);
    let said = |book: &Book| [0, 1, 2].map(|row| book.value(&cell(book, 'N', row)).to_string());
    assert_eq!(said(&book), ["held against 12 % w/w", "held against 12 % w/w", "BOTTLE ABOVE 12 % w/w"]);
    let cautions = format!("B{}", book.row("Dilution", "cautions"));
    assert_eq!(book.value(&cautions), Value::from("no bottle is above that"));
    for (row, strength) in [(0, 12.000_001), (1, 5.0)] {
        book.change(&cell(&book, 'B', row), strength);
    }
    assert_eq!(said(&book), ["BOTTLE ABOVE 12 % w/w", "-", "BOTTLE ABOVE 12 % w/w"]);
    book.change(&cell(&book, 'B', 2), 20.1);
    book.change(&cell(&book, 'E', 2), 13.0);
    assert_eq!(said(&book)[2], "ABOVE 12 % w/w");
    let stronger = "ABOVE what this chart was made for: its cautions do not hold, make the chart anew";
    assert_eq!(book.value(&cautions), Value::from(stronger));
    book.change(&cell(&book, 'B', 2), 20.0);
    book.change("weaker_ww_percent", 20.1);
    assert_eq!(book.value(&cautions), Value::from(stronger));
}

/// A chart whose mixture passes the ceiling is made with the word in it, and one exactly at it without.
#[rstest]
#[case(20.0, 12.0, "BOTTLE ABOVE 12 % w/w")]
#[case(20.0, 13.0, "ABOVE 12 % w/w")]
#[case(12.0, 12.0, "held against 12 % w/w")]
#[case(12.0, 13.0, "-")]
fn a_chart_is_made_with_its_alarm(#[case] stock: f64, #[case] target: f64, #[case] want: &str) {
    let book = Book::of(&chart(&table(&exact(&[stock]), &[target], exact(&[0.0])[0], (60.0, 1.0))));
    assert_eq!(book.left(book.place(&cell(&book, 'N', 0))), Value::from(want));
}

/// What the chart says from the top, row by row.
#[test]
fn the_chart_reads_from_the_top() {
    let book = Book::of(&chart(&table(&exact(&[12.0, 9.0]), &[3.0], exact(&[0.0])[0], (60.0, 1.0))));
    let told = book.first_column("Dilution");
    let want = [
        "Dilution by mass",
        "",
        "Coloured cells",
        "",
        "A CHANGED NUMBER IS NOT CHECKED",
        "",
        "total of every mix, g",
        "the scale counts in, g",
        "divisions of the scale in a mix",
        "Added: diluent",
        "its strength, % w/w",
        "  at least",
        "  at most",
        "bottles up to, % w/w",
        "cautions",
        "ceiling held against, % w/w",
        "Peroxide on the hair",
        "",
        "bottle",
        "bottle 0",
        "bottle 1",
        "",
    ];
    book.reads("Dilution", &want);
    assert!(told.iter().any(|text| text.starts_with("These cautions are for the bottles")));
    let sources = book.first_column("Sources");
    assert_eq!(sources[2], "what");
    assert!(sources.iter().any(|text| text == "strengths of the bottles"));
    assert!(!sources.iter().any(|text| text.starts_with("bounds of a")));
    let basis = |weaker: f64| {
        let book = Book::of(&chart(&table(&exact(&[12.0]), &[3.0], exact(&[weaker])[0], (60.0, 1.0))));
        book.value(&format!("Sources!B{}", book.row("Sources", "strength of what is added"))).to_string()
    };
    assert_eq!([basis(0.0), basis(1.5)], ["assumed", "stated by you"]);
    let label = Book::of(&chart(&table(&[open(5.0, 6.0, 7.0)], &[3.0], exact(&[0.0])[0], (60.0, 1.0))));
    assert!(label.first_column("Sources").iter().filter(|text| text.starts_with("bounds of a")).count() == 2);
}
