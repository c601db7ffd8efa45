//! What the fuzz targets share: texts changed word by word, so that many stay readable, and the readers of short texts.

#[path = "../../tests/properties/hostile/changed.rs"]
mod changed;
#[path = "../../tests/properties/hostile/shown.rs"]
mod shown;

use changed::{Dice, changed, words};
pub use shown::show_everything;
use std::{fmt::Debug, str::FromStr};

/// Changes the text in `data` in place, from its byte `from` on; gives the new length, or none where that does not fit.
pub fn change(data: &mut [u8], size: usize, max_size: usize, (from, seed): (usize, u32)) -> Option<usize> {
    let text = std::str::from_utf8(data.get(from..size)?).ok()?;
    let vocabulary: Vec<String> = words(text).into_iter().map(|(start, end)| text[start..end].to_owned()).collect();
    if vocabulary.is_empty() {
        return None;
    }
    let new = changed(text, &vocabulary, &mut Dice(seed.into()));
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
