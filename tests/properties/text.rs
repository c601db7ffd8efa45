//! Laws of text: places counted one by one, cells that no spreadsheet calculates from and that come back, lines cut in the middle.

use foilwork::text::{Lines, WIDTH, cell, from_cell, inert, is_active, is_shown, list, number, shortened, wrapped};
use proptest::prelude::*;

/// Letters of one to four bytes, line ends, and enough of them for several blocks of the index.
fn any_lines() -> impl Strategy<Value = String> {
    prop::collection::vec(prop::sample::select(vec!["a", "\u{e8}", "\u{2014}", "\u{1f600}", "\n", "\r\n", " "]), 0..900)
        .prop_map(|parts| parts.concat())
}

fn any_cells() -> impl Strategy<Value = String> {
    let parts = vec![
        "=", "+", "-", "@", "\t", "\r", "\n", ";", ",", " ", "\"", "'", "x", "\u{ff1d}", "\u{ff0b}", "\u{ff0d}",
        "\u{ff20}",
    ];
    prop::collection::vec(prop::sample::select(parts), 0..24).prop_map(|parts| parts.concat())
}

/// What a spreadsheet takes for the beginning of a formula.
const CALCULATED: [char; 8] = ['=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

proptest! {
    #[test]
    fn a_place_is_counted_letter_by_letter(text in any_lines()) {
        let lines = Lines::of(&text);
        prop_assert_eq!(lines.text(), &text);
        let (mut line, mut column) = (1, 1);
        for (byte, letter) in text.char_indices() {
            let place = lines.position(byte);
            prop_assert_eq!((place.line, place.column, lines.line(byte)), (line, column, line), "byte {}", byte);
            (line, column) = if letter == '\n' { (line + 1, 1) } else { (line, column + 1) };
        }
        for past in [text.len(), text.len() + 7] {
            let place = lines.position(past);
            prop_assert_eq!((place.line, place.column), (line, column));
        }
    }

    #[test]
    fn no_cell_is_calculated_from_and_all_come_back(text in any_cells()) {
        let guarded = cell(&text);
        for field in guarded.split([';', ',', '\t', '\r', '\n']) {
            let begins = field.trim_start_matches([' ', '"']);
            prop_assert!(!begins.starts_with(CALCULATED), "{guarded:?} of {text:?}");
        }
        // Nothing but apostrophes is put in.
        prop_assert_eq!(guarded.replace('\'', ""), text.replace('\'', ""));
        if !text.contains('\'') {
            prop_assert_eq!(from_cell(&guarded), text);
        }
    }

    #[test]
    fn what_is_shown_does_nothing(text in "\\PC{0,20}|[\\x00-\\x{2fff}\\x{feff}\\x{e0000}-\\x{e00ff}]{0,40}") {
        let shown = inert(&text);
        prop_assert!(!shown.contains(is_active), "{shown:?}");
        // What acts is exchanged, and the rest is as it was.
        let kept: String = text.chars().filter(|c| !is_active(*c)).collect();
        if kept == text {
            prop_assert_eq!(shown.as_ref(), text.as_str());
        }
        for letter in text.chars().filter(|c| is_shown(*c)) {
            prop_assert!(shown.contains(letter) && letter != '\n' && letter != '\t');
        }
    }

    /// Six hundred from the front, four hundred from the end, and the number of those between.
    #[test]
    fn a_long_line_is_cut_in_the_middle(length in 0_usize..1500) {
        let line: String = (0..length).map(|place| char::from_u32(0x4e00 + u32::try_from(place).unwrap()).unwrap()).collect();
        let letters: Vec<char> = line.chars().collect();
        let short = shortened(&line);
        if length <= 1000 {
            prop_assert_eq!(short.as_ref(), line.as_str());
        } else {
            let (head, tail): (String, String) = (letters[..600].iter().collect(), letters[length - 400..].iter().collect());
            prop_assert_eq!(short.as_ref(), format!("{head} [... {} characters ...] {tail}", length - 1000));
        }
    }

    #[test]
    fn a_wrapped_text_is_the_same_words(words in prop::collection::vec("[a-z]{1,30}", 0..60)) {
        let text = words.join(" ");
        let lines = wrapped(&text);
        prop_assert_eq!(lines.join(" "), text);
        for (line, next) in lines.iter().zip(lines.iter().skip(1)) {
            prop_assert!(line.len() <= WIDTH);
            prop_assert!(line.len() + next.len() > WIDTH - 40, "lines that would have gone together");
        }
    }

    #[test]
    fn a_number_is_within_half_a_digit_and_has_no_more(value in -1e6..1e6, decimals in 0_usize..6) {
        let text = number(value, decimals);
        let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
        prop_assert!(part.len() <= decimals && !part.ends_with('0') && !whole.is_empty() && text != "-0");
        let half = 0.5 / 10_f64.powi(i32::try_from(decimals).unwrap());
        prop_assert!((text.parse::<f64>().unwrap() - value).abs() <= half + 1e-9);
    }

    #[test]
    fn a_list_has_one_word_before_its_last(items in prop::collection::vec("[a-z]{1,5}", 1..9)) {
        let told = list(&items, "&");
        prop_assert_eq!(told.matches(" & ").count(), usize::from(items.len() > 1));
        let plain = told.replace(" & ", ", ");
        prop_assert_eq!(plain.split(", ").collect::<Vec<_>>(), items);
    }
}
