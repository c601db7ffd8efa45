//! What the fuzz targets share: texts changed word by word, so that many stay readable, and the readers of short texts.

use std::{fmt::Debug, str::FromStr};

/// What nobody would write where a word or a number is wanted.
const ODD: [&str; 16] = [
    "0", "-1", "1e308", "1e-320", "nan", "inf", "true", "[]", "{}", "\"\"", "100", "0.5", "12", "6 % w/w", "1:2",
    "\u{202e}",
];

/// SplitMix64.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % (end.max(1) as u64)) as usize
    }
}

fn words(text: &str) -> Vec<(usize, usize)> {
    let mut found: Vec<(usize, usize)> = Vec::new();
    for (at, c) in text.char_indices().filter(|(_, c)| c.is_alphanumeric() || "._-+%:".contains(*c)) {
        match found.last_mut() {
            Some((_, end)) if *end == at => *end = at + c.len_utf8(),
            _ => found.push((at, at + c.len_utf8())),
        }
    }
    found
}

/// A text with a word exchanged for another of its words or for an odd one, or with a line doubled, moved or left out; none
/// where there is nothing to exchange.
fn changed(text: &str, seed: u32) -> Option<String> {
    let mut dice = Dice(seed.into());
    let places = words(text);
    let lines: Vec<&str> = text.lines().collect();
    if places.is_empty() || lines.is_empty() {
        return None;
    }
    let (start, end) = places[dice.below(places.len())];
    let mut text = text.to_owned();
    match dice.below(8) {
        0..=2 => {
            let (from, to) = places[dice.below(places.len())];
            let other = text[from..to].to_owned();
            text.replace_range(start..end, &other);
        }
        3 | 4 => text.replace_range(start..end, ODD[dice.below(ODD.len())]),
        choice => {
            let (from, to) = (dice.below(lines.len()), dice.below(lines.len()));
            let mut lines = lines;
            let line = if choice == 5 { lines[from] } else { lines.remove(from) };
            if choice != 7 {
                lines.insert(to.min(lines.len()), line);
            }
            text = lines.join("\n");
        }
    }
    Some(text)
}

/// Changes the text in `data` in place, from its byte `from` on; gives the new length, or none where that does not fit.
pub fn change(data: &mut [u8], size: usize, max_size: usize, (from, seed): (usize, u32)) -> Option<usize> {
    let text = std::str::from_utf8(data.get(from..size)?).ok()?;
    let new = changed(text, seed)?;
    let end = from + new.len();
    if end > max_size.min(data.len()) {
        return None;
    }
    data[from..end].copy_from_slice(new.as_bytes());
    Some(end)
}

/// What is printed reads back as the same.
pub fn reads_back<T: FromStr + ToString + PartialEq + Debug>(text: &str) {
    if let Ok(value) = text.parse::<T>() {
        assert_eq!(value.to_string().parse::<T>().ok().as_ref(), Some(&value), "{text:?} is printed otherwise");
    }
}
