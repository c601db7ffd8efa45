use crate::text::from_cell;
use serde_json::Value;

/// A file without the lines of a guest.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Forgotten {
    /// What is left: every other line, byte for byte.
    pub kept: Vec<u8>,
    /// The lines that are taken out, counted from one.
    pub removed: Vec<u64>,
    /// Lines that cannot be read and hold the code somewhere: they stay, and somebody has to look at them.
    pub unsure: Vec<u64>,
}

/// Takes the lines of a guest out of a file of records or a strand book, JSON lines or comma-separated text with a heading that
/// names a column `guest`. Every other byte stays as it is.
///
/// A line belongs to the guest when its field `guest` is the code, blanks around it and the guard of a spreadsheet's cell apart.
/// What cannot be read is never taken out.
///
/// # Example
///
/// ```
/// use foilwork::history::forget;
///
/// let text = b"{\"guest\":\"J-014\",\"title\":\"gloss\"}\n{\"guest\":\"J-088\"}\r\n{\"guest\":\"J-0";
/// let left = forget(text, "J-014");
/// assert_eq!((left.kept, left.removed), (b"{\"guest\":\"J-088\"}\r\n{\"guest\":\"J-0".to_vec(), vec![1]));
/// ```
#[must_use]
pub fn forget(file: &[u8], guest: &str) -> Forgotten {
    let mut found = Forgotten { kept: Vec::with_capacity(file.len()), ..Forgotten::default() };
    let guest = guest.trim();
    let mut column: Option<Column> = None;
    for (line, bytes) in (1..).zip(file.split_inclusive(|byte| *byte == b'\n')) {
        let text = String::from_utf8_lossy(bytes);
        let text = text.trim_start_matches('\u{feff}').trim();
        match whose(text, &mut column) {
            Line::Of(code) if code.trim() == guest && !guest.is_empty() => {
                found.removed.push(line);
                continue;
            }
            Line::Unread if !guest.is_empty() && text.contains(guest) => found.unsure.push(line),
            Line::Of(_) | Line::Nobody | Line::Unread => {}
        }
        found.kept.extend_from_slice(bytes);
    }
    found
}

enum Line {
    /// Of a guest.
    Of(String),
    /// Of nobody: a heading, an empty line, a line without a code.
    Nobody,
    /// It cannot be read.
    Unread,
}

/// Where a table keeps the code.
#[derive(Clone, Copy)]
struct Column {
    place: usize,
    /// Whether its texts are guarded, as those of a table of records are; a strand book has them as they are.
    guarded: bool,
}

/// Names that stand in the heading of a list beside `guest`, and in no row.
const BESIDE: [&str; 2] = ["title", "before_level"];

fn whose(text: &str, column: &mut Option<Column>) -> Line {
    if text.is_empty() {
        return Line::Nobody;
    }
    if text.starts_with('{') {
        let Ok(value) = serde_json::from_str::<Value>(text) else { return Line::Unread };
        return match value.get("guest") {
            Some(Value::String(code)) => Line::Of(code.clone()),
            Some(Value::Null) | None => Line::Nobody,
            Some(other) => Line::Of(other.to_string()),
        };
    }
    let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(text.as_bytes());
    let Some(Ok(cells)) = reader.records().next() else { return Line::Unread };
    // A heading says where the code stands from here on. A row may hold the word as well, in another place.
    let has = |name: &str| cells.iter().any(|cell| cell.trim() == name);
    if let Some(place) = cells.iter().position(|cell| cell.trim() == "guest")
        && (column.is_none_or(|known| known.place == place) || BESIDE.into_iter().any(has))
    {
        *column = Some(Column { place, guarded: has("title") });
        return Line::Nobody;
    }
    match column.and_then(|column| Some((cells.get(column.place)?, column.guarded))) {
        Some((code, _)) if code.trim().is_empty() => Line::Nobody,
        Some((code, true)) => Line::Of(from_cell(code.trim())),
        Some((code, false)) => Line::Of(code.to_owned()),
        None => Line::Unread,
    }
}
