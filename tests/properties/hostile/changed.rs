//! Texts changed as a careless hand, another program or malice would: for the hunt of hostile texts, and for fuzzing.

/// What a careless hand, another program or malice puts where a word or a number is wanted.
pub(crate) const ODD: [&str; 40] = [
    "",
    "0",
    "-0",
    "-1",
    "1e308",
    "-1e308",
    "1e-320",
    "nan",
    "inf",
    "-inf",
    "999999999999999999999",
    "0.1e",
    "1_000",
    "0x1f",
    "true",
    "null",
    "[]",
    "{}",
    "[[",
    "]]",
    "[[section]]",
    "=",
    ",",
    ";",
    "\"",
    "\"\"\"",
    "'",
    "#",
    "\\u0000",
    "\u{0}",
    "\u{1b}[2J",
    "\u{202e}",
    "\u{feff}",
    "\u{2028}",
    "\r\n",
    "é",
    "👩‍🔬",
    "6 % w/w",
    "1:2",
    "2026-02-30T25:61",
];

/// SplitMix64: the same texts at every run.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) % (end.max(1) as u64)) as usize
    }

    pub(crate) fn pick<'t, T>(&mut self, of: &'t [T]) -> &'t T {
        &of[self.below(of.len())]
    }
}

fn is_of_a_word(c: char) -> bool {
    c.is_alphanumeric() || "._-+%:".contains(c)
}

/// The words of a text, as places in it.
pub(crate) fn words(text: &str) -> Vec<(usize, usize)> {
    let mut found: Vec<(usize, usize)> = Vec::new();
    for (at, c) in text.char_indices().filter(|(_, c)| is_of_a_word(*c)) {
        match found.last_mut() {
            Some((_, end)) if *end == at => *end = at + c.len_utf8(),
            _ => found.push((at, at + c.len_utf8())),
        }
    }
    found
}

/// A text with one to four changes, mostly one, and the words that changes may bring in.
pub(crate) fn changed(text: &str, vocabulary: &[String], dice: &mut Dice) -> String {
    let mut text = text.to_owned();
    for _ in 0..*dice.pick(&[1, 1, 1, 2, 4]) {
        let lines: Vec<String> = text.lines().map(str::to_owned).collect();
        match dice.below(8) {
            // A word becomes another, or something odd.
            0..=3 => {
                let places = words(&text);
                if !places.is_empty() {
                    let (start, end) = *dice.pick(&places);
                    let new =
                        if dice.below(2) == 0 { (*dice.pick(&ODD)).to_owned() } else { dice.pick(vocabulary).clone() };
                    text.replace_range(start..end, &new);
                }
            }
            4 if !lines.is_empty() => {
                let (from, to) = (dice.below(lines.len()), dice.below(lines.len()));
                let mut lines = lines;
                let line = lines[from].clone();
                lines.insert(to, line);
                text = lines.join("\n");
            }
            5 if !lines.is_empty() => {
                let mut lines = lines;
                lines.remove(dice.below(lines.len()));
                text = lines.join("\n");
            }
            6 => {
                let ends: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
                if !ends.is_empty() {
                    text.truncate(*dice.pick(&ends));
                }
            }
            _ => {
                let ends: Vec<usize> = text.char_indices().map(|(at, _)| at).collect();
                if !ends.is_empty() {
                    let odd: &str = dice.pick::<&str>(&ODD);
                    text.insert_str(*dice.pick(&ends), odd);
                }
            }
        }
    }
    text
}
