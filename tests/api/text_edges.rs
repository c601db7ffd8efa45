//! Which characters act, how chances and rough numbers are told, how a table stands on a page: edge by edge.

use foilwork::{
    quantity::{Mass, Share},
    source::Interval,
    text::{
        Lines, Position, Sheet, amount, cell, from_cell, in_hundred, inert, is_active, is_shown, rough, significant,
    },
};
use rstest::rstest;

/// Sources: Unicode Standard, the controls of ISO/IEC 6429; Annex 9 (directions); the tags and the byte order mark.
#[rstest]
#[case::controls(0x00, 0x08)]
#[case::more_controls(0x0b, 0x1f)]
#[case::delete_and_those_above_it(0x7f, 0x9f)]
#[case::arabic_letter_mark(0x61c, 0x61c)]
#[case::marks(0x200e, 0x200f)]
#[case::separators_and_embeddings(0x2028, 0x202e)]
#[case::isolates(0x2066, 0x2069)]
#[case::byte_order_mark(0xfeff, 0xfeff)]
#[case::tags(0xe0000, 0xe007f)]
fn what_acts_begins_and_ends_here(#[case] first: u32, #[case] last: u32) {
    let at = |code: u32| char::from_u32(code).unwrap();
    assert!((first..=last).all(|code| is_active(at(code)) && !is_shown(at(code))));
    if first > 0 {
        // Tab and line feed do not act, yet are no letters.
        assert!(!is_active(at(first - 1)));
    }
    assert!(!is_active(at(last + 1)));
    assert_eq!(is_shown(at(last + 1)), !matches!(at(last + 1), '\t' | '\n'));
    assert_ne!(inert(&at(first).to_string()), at(first).to_string());
}

#[rstest]
#[case("\0\u{1}\u{1f}", "\u{2400}\u{2401}\u{241f}")]
#[case("\u{7f}", "\u{2421}")]
#[case("\u{80}\u{9f}", "<U+0080><U+009F>")]
#[case("a\tb\nc", "a\tb\nc")]
#[case("a\u{202e}\tb\nc\u{1}", "a<U+202E>\tb\nc\u{2401}")]
#[case("\u{202e}x\u{e0001}", "<U+202E>x<U+E0001>")]
fn what_acts_is_told_by_its_picture_or_its_number(#[case] text: &str, #[case] want: &str) {
    assert_eq!(inert(text), want);
}

#[rstest]
#[case(0.0, "under 1")]
#[case(0.49, "under 1")]
#[case(0.5, "under 1")]
#[case(0.51, "1")]
#[case(42.4, "42")]
#[case(99.49, "99")]
#[case(99.5, "over 99")]
#[case(100.0, "over 99")]
fn a_chance_is_never_nothing_nor_all(#[case] percent: f64, #[case] want: &str) {
    assert_eq!(in_hundred(Share::from_percent(percent).unwrap()), want);
}

/// Three digits, and whole numbers below a thousand.
#[rstest]
#[case(0.0, "0")]
#[case(0.4, "0")]
#[case(0.6, "1")]
#[case(12.5, "13")]
#[case(999.4, "999")]
#[case(1000.0, "1000")]
#[case(1234.0, "1230")]
#[case(1235.0, "1240")]
#[case(99_949.0, "99900")]
#[case(123_456.0, "123000")]
fn a_rough_number_has_three_digits(#[case] g: f64, #[case] want: &str) {
    let mass = Mass::from_g(g).unwrap();
    assert_eq!(rough(&Interval::exact(mass)), want);
    assert_eq!(amount(mass, 1), foilwork::text::number(g, 1));
}

#[test]
fn a_rough_estimate_has_rough_bounds() {
    let g = |of| Mass::from_g(of).unwrap();
    let wide = Interval::new(g(1004.0), g(2345.0), g(98_765.0)).unwrap();
    assert_eq!(rough(&wide), "2350 (1000 to 98800)");
}

#[rstest]
#[case(9.994, 3, "9.99")]
#[case(10.04, 3, "10")]
#[case(0.012_345, 3, "0.0123")]
#[case(123_456.7, 3, "123457")]
#[case(-0.5, 1, "-0.5")]
fn digits_count_from_the_first_that_says_something(#[case] value: f64, #[case] digits: u8, #[case] want: &str) {
    assert_eq!(significant(value, digits), want);
}

fn table(names: &[&str], numbers: &[usize], rows: &[&[&str]]) -> Vec<String> {
    let mut sheet = Sheet::default();
    sheet.table(names, numbers, rows.iter().map(|row| row.iter().map(|cell| (*cell).to_owned()).collect()).collect());
    sheet.finish().lines().map(str::to_owned).collect()
}

/// Two spaces between columns; numbers stand at the right of theirs.
#[test]
fn a_table_stands_in_columns() {
    let told = table(&["what", "g"], &[1], &[&["toner", "5"], &["powder", "120"]]);
    assert_eq!(told, ["what      g", "toner     5", "powder  120"]);
    // Without names there is no line for them.
    assert_eq!(table(&["", ""], &[], &[&["toner", "5"]]), ["toner  5"]);
}

/// No word is broken as long as the longest words of all columns fit beside each other: 38 + 2 and 38 + 2 are 80.
#[test]
fn words_stay_whole_while_they_fit() {
    let (word, long) = ("x".repeat(38), "x".repeat(39));
    let text = |word: &str| format!("{word} {}", "a ".repeat(60));
    for (word, whole) in [(&word, true), (&long, false)] {
        let told =
            table(&["one", "other"], &[], &[&[text(word).as_str(), text(&word.replace('x', "y")).as_str()]]).join("\n");
        assert_eq!(told.contains(word.as_str()) && told.contains(&word.replace('x', "y")), whole, "{told}");
        assert!(told.lines().all(|line| line.chars().count() <= 80), "{told}");
    }
}

#[test]
fn a_sheet_is_made_line_by_line() {
    let mut sheet = Sheet::default();
    sheet.title("BOWL");
    sheet.heading("developer");
    sheet.line("60 g  ");
    sheet.blank();
    sheet.indented("ends", 3);
    let (double, single) = ("=".repeat(80), "-".repeat(80));
    assert_eq!(sheet.finish(), format!("BOWL\n{double}\n\nDEVELOPER\n{single}\n60 g\n\n   ends\n"));
    // What follows hangs under the text, and one letter more than 80 begins a line.
    let mut sheet = Sheet::default();
    sheet.paragraph(&format!("{} {}", "a".repeat(40), "b".repeat(39)), 2);
    sheet.paragraph(&format!("{} {}", "a".repeat(40), "b".repeat(40)), 2);
    let lines: Vec<usize> = sheet.finish().lines().map(str::len).collect();
    assert_eq!(lines, [80, 40, 42]);
}

/// A place is counted anew here for every letter of a text: of one line longer than the blocks that are counted ahead, and of several.
#[test]
fn every_letter_has_its_line_and_its_column() {
    let long: String = ["a", "\u{e9}", "\u{20ac}", "\u{1f58c}"].concat().repeat(120);
    for text in [long.clone(), format!("{long}\nx\n\n{long}y\r\n{long}"), "\n".repeat(600), "\u{20ac}".repeat(256)] {
        let lines = Lines::of(&text);
        let (mut line, mut column) = (1, 1);
        for (byte, letter) in text.char_indices() {
            assert_eq!(lines.position(byte), Position { line, column }, "byte {byte}");
            assert_eq!(lines.line(byte), line);
            (line, column) = if letter == '\n' { (line + 1, 1) } else { (line, column + 1) };
        }
        assert_eq!(lines.position(text.len()), Position { line, column });
        assert_eq!(lines.text(), text);
    }
}

/// A sign from which a spreadsheet would calculate is guarded where a cell begins: at the beginning, behind a separator, and behind blanks
/// and quotes there (common practice of exports: a leading apostrophe).
#[rstest]
#[case("=1", "'=1")]
#[case("-5", "'-5")]
#[case("+5", "'+5")]
#[case("@a", "'@a")]
#[case("\u{ff1d}1", "'\u{ff1d}1")]
#[case("\u{ff0b}1\u{ff0d}2", "'\u{ff0b}1\u{ff0d}2")]
#[case(" =1", " '=1")]
#[case(" \"=1", " \"'=1")]
#[case("\t=1", "'\t'=1")]
#[case("a;=1", "a;'=1")]
#[case("a, +1", "a, '+1")]
#[case("a\t-1", "a\t'-1")]
#[case("a\n@b", "a\n'@b")]
#[case("a\r=b", "a\r'=b")]
#[case("a =1", "a =1")]
#[case("a-5", "a-5")]
#[case("a \"=1", "a \"=1")]
#[case("it's", "it's")]
#[case("'a", "'a")]
fn a_cell_is_guarded_where_it_begins(#[case] text: &str, #[case] want: &str) {
    assert_eq!(cell(text), want);
    assert_eq!(from_cell(want), text);
}
