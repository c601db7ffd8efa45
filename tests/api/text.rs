//! How numbers, ranges and places are written.

use foilwork::{
    quantity::Mass,
    source::Interval,
    text::{
        Lines, Position, Sheet, WIDTH, count, escaped, from_cell, inert, list, number, range, significant, wrapped,
    },
};
use rstest::rstest;

#[rstest]
#[case::zeros_go(2.500, 3, "2.5")]
#[case::whole(30.0, 2, "30")]
#[case::zeros_before_the_point_stay(1200.0, 2, "1200")]
#[case::rounded_up(0.005_1, 2, "0.01")]
#[case::rounded_away(0.004, 2, "0")]
#[case::no_minus_zero(-0.000_4, 3, "0")]
#[case::minus_zero(-0.0, 0, "0")]
#[case::below_zero(-2.50, 1, "-2.5")]
#[case::no_decimals(11.5, 0, "12")]
#[case::not_a_number(f64::NAN, 2, "NaN")]
fn numbers_are_short(#[case] value: f64, #[case] decimals: usize, #[case] want: &str) {
    assert_eq!(number(value, decimals), want);
}

#[rstest]
#[case::five(11.541_46, "11.541")]
#[case::small(0.000_123_456, "0.00012346")]
#[case::large(123_456.0, "123456")]
#[case::zero(0.0, "0")]
#[case::below_zero(-41.234_56, "-41.235")]
#[case::beyond_twelve_decimals(1e-14, "0")]
fn significant_digits(#[case] value: f64, #[case] want: &str) {
    assert_eq!(significant(value, 5), want);
}

/// What a terminal obeys is shown, and a guard is taken off only where one was put on: at the beginning of a cell.
#[test]
fn marks_are_shown_and_guards_taken_off() {
    assert_eq!(inert("a\u{7f}b\u{1b}c"), "a\u{2421}b\u{241b}c");
    assert_eq!(from_cell("a=b,'=c,d'=e"), "a=b,=c,d'=e");
}

#[test]
fn an_estimate_keeps_its_bounds_even_when_they_round_to_it() {
    let g = |value| Mass::from_g(value).unwrap();
    let tight = Interval::new(g(29.99), g(30.0), g(30.01)).unwrap();
    assert_eq!(range(&tight, 0), "30 (30 to 30)");
    assert_eq!(range(&Interval::exact(g(30.0)), 2), "30");
}

#[test]
fn words_agree_with_numbers() {
    assert_eq!([0, 1, 2].map(|n| count(n, "box", "boxes")), ["0 boxes", "1 box", "2 boxes"]);
    assert_eq!(list(Vec::<String>::new(), "and"), "");
}

#[test]
fn nothing_in_a_text_is_markup() {
    let text = "<script>'\"&amp;";
    assert_eq!(escaped(text), "&lt;script&gt;&#39;&quot;&amp;amp;");
}

#[rstest]
#[case::first(0, 1, 1)]
#[case::after_a_letter_of_two_bytes(4, 1, 4)]
#[case::line_break(5, 1, 5)]
#[case::second_line(6, 2, 1)]
#[case::past_the_end(99, 3, 1)]
fn a_byte_has_a_line_and_a_column(#[case] byte: usize, #[case] line: usize, #[case] column: usize) {
    let lines = Lines::of("cr\u{e8}m\nx\n");
    assert_eq!((lines.position(byte), lines.line(byte)), (Position { line, column }, line));
}

#[test]
fn lines_of_either_ending_are_counted_alike() {
    let (unix, dos) = ("a\nb\nc", "a\r\nb\r\nc");
    assert_eq!(Lines::of(unix).line(4), 3);
    assert_eq!(Lines::of(dos).line(6), 3);
}

#[test]
fn a_sheet_keeps_to_its_width_and_loses_no_word() {
    let text = "Weigh it; volumes add up only nearly. Blend developers with developers. ".repeat(6);
    let mut sheet = Sheet::default();
    sheet.title("DILUTION");
    sheet.heading("cautions");
    sheet.paragraph(&text, 3);
    sheet.indented(&text, 5);
    sheet.table(&["what", "note"], &[], vec![vec!["bowl".to_owned(), text.clone()]]);
    let written = sheet.finish();
    assert!(written.lines().all(|line| line.chars().count() <= WIDTH && line.trim_end() == line), "{written}");
    assert_eq!(written.matches("Weigh").count(), 18);
    assert!(written.contains("\nCAUTIONS\n"));
    assert_eq!(wrapped(&text).join(" "), text.trim_end());
}
