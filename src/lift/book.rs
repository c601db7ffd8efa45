//! A book of strand readings as text: one line for each, so that a line can be appended and a torn one is seen.

use super::{Ph, Situation, StrandReading};
use crate::{
    colour::Level,
    quantity::{Duration, MassFraction, Temperature},
    source::Interval,
    text::{flat, quoted},
};

/// The columns of the book, in the order in which they are written.
const COLUMNS: [&str; 16] = [
    "guest",
    "product",
    "before_level",
    "after_level",
    "min",
    "on_hair_low_ww_percent",
    "on_hair_ww_percent",
    "on_hair_high_ww_percent",
    "temperature_c",
    "booster",
    "ph",
    "uptake",
    "texture",
    "cover",
    "reader",
    "end",
];
/// The names of a JSON object: the same without the end, which its brace is.
const FIELDS: &[&str] = COLUMNS.split_at(COLUMNS.len() - 1).0;
/// Those that are text even when they look like a number.
const TEXTS: [&str; 2] = ["guest", "product"];
/// The last cell of a whole line: a line that was torn in the middle lacks it.
const END: &str = ".";

/// What a book holds, and what could not be read.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct StrandBook {
    /// The readings, in the order of the lines.
    pub readings: Vec<StrandReading>,
    /// Lines that could not be read; all others count.
    pub problems: Vec<BookProblem>,
}

/// A line of a strand book that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("line {line}: {message}")]
pub struct BookProblem {
    /// The line, counted from one.
    pub line: u64,
    /// What is wrong, and the way out.
    pub message: String,
}

/// The line of one reading, with its line break; append it to the book in one write. The heading is the line of no
/// reading.
///
/// # Example
///
/// ```
/// use foilwork::lift::{read_strand_book, strand_line};
///
/// let heading = strand_line(None);
/// assert!(heading.ends_with('\n'));
/// assert!(read_strand_book(&heading).readings.is_empty());
/// ```
#[must_use]
pub fn strand_line(reading: Option<&StrandReading>) -> String {
    let cells: Vec<String> = match reading {
        None => COLUMNS.iter().map(|name| (*name).to_owned()).collect(),
        Some(reading) => cells(reading),
    };
    let quoted: Vec<String> = cells.iter().map(|cell| quoted(cell)).collect();
    format!("{}\n", quoted.join(","))
}

fn cells(reading: &StrandReading) -> Vec<String> {
    let mix = &reading.situation;
    let on_hair = mix.on_hair.to_array().map(|strength| strength.ww_percent().to_string());
    let [low, best, high] = on_hair;
    vec![
        reading.guest.clone().unwrap_or_default(),
        reading.product.clone().unwrap_or_default(),
        reading.before.number().to_string(),
        reading.after.number().to_string(),
        reading.time.min().to_string(),
        low,
        best,
        high,
        mix.temperature.celsius().to_string(),
        mix.booster.code().to_owned(),
        mix.ph.map(|ph| ph.value().to_string()).unwrap_or_default(),
        mix.uptake.code().to_owned(),
        mix.texture.code().to_owned(),
        mix.cover.code().to_owned(),
        reading.reader.code().to_owned(),
        END.to_owned(),
    ]
}

/// Reads a book of strand readings: comma-separated text with a heading, or a JSON object in each line. A heading may name the
/// columns in any order, `end` last.
///
/// A line that cannot be read is reported and the others count; a line without its last cell was torn by a crash. So is a strand
/// that became darker by more than two readings of the same hair differ by: nothing of lift is learned from it.
///
/// # Example
///
/// ```
/// use foilwork::lift::{read_strand_book, strand_line};
///
/// let text = strand_line(None) + "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.\nJ-014,,4,8";
/// let book = read_strand_book(&text);
/// assert_eq!(book.readings.len(), 1);
/// assert!(book.problems[0].to_string().starts_with("line 3: torn"));
/// assert_eq!(strand_line(Some(&book.readings[0])), "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.\n");
/// ```
#[must_use]
pub fn read_strand_book(text: &str) -> StrandBook {
    let mut book = StrandBook::default();
    let mut columns: Option<Vec<String>> = Some(COLUMNS.map(str::to_owned).to_vec());
    // A reading is one line whatever is in it, so a torn one cannot swallow those that follow.
    let lines = text.strip_prefix('\u{feff}').unwrap_or(text).lines();
    for (line, text) in (1..).zip(lines).filter(|(_, text)| !text.trim().is_empty()) {
        let found = match text.trim_start().chars().next() {
            Some('{') => of_json(text),
            Some('[') => Err("a list cannot be appended to: write one object in each line".to_owned()),
            _ => match cells_of(text) {
                Ok(cells) if cells.iter().any(|cell| cell == "before_level") => match columns_of(&cells) {
                    Ok(told) => {
                        columns = Some(told);
                        continue;
                    }
                    // Read in another order, numbers of the wrong column would be learned from.
                    Err(message) => {
                        if !is_torn_usual(&cells) {
                            columns = None;
                        }
                        Err(message)
                    }
                },
                Ok(cells) => match &columns {
                    Some(columns) => of_cells(columns, &cells),
                    None => Err("the heading above cannot be read (mend it first)".to_owned()),
                },
                Err(message) => Err(message),
            },
        };
        match found {
            Ok(reading) => book.readings.push(reading),
            Err(message) => book.problems.push(BookProblem { line, message }),
        }
    }
    book
}

const TORN: &str = "torn: the line has no end (the program was stopped while it was written; enter it again)";

/// The cells of a line.
fn cells_of(line: &str) -> Result<Vec<String>, String> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(line.as_bytes());
    match reader.records().next() {
        Some(Ok(record)) => Ok(record.iter().map(|cell| cell.trim().to_owned()).collect()),
        Some(Err(error)) => Err(format!("not comma-separated text: {error}")),
        None => Ok(Vec::new()),
    }
}

/// A heading: which column is where from here on. One without its end was torn, and says nothing.
fn columns_of(cells: &[String]) -> Result<Vec<String>, String> {
    if cells.last().is_none_or(|last| last != "end") {
        return Err(TORN.to_owned());
    }
    match cells.iter().find(|cell| !COLUMNS.contains(&cell.as_str())) {
        None => Ok(cells.to_vec()),
        Some(unknown) => Err(format!("unknown column \"{unknown}\": the columns are {}", COLUMNS.join(", "))),
    }
}

/// The beginning of the heading that this program writes: a crash tore it, and the lines below are in its order.
fn is_torn_usual(cells: &[String]) -> bool {
    let Some((torn, whole)) = cells.split_last() else { return false };
    let [before @ .., at] = COLUMNS.get(..cells.len()).unwrap_or_default() else { return false };
    whole.iter().eq(before) && at.starts_with(torn.as_str())
}

/// A reading by its columns.
fn of_cells(columns: &[String], cells: &[String]) -> Result<StrandReading, String> {
    let cell = |name: &str| {
        let place = columns.iter().position(|column| column == name);
        place.and_then(|i| cells.get(i)).cloned().unwrap_or_default()
    };
    if cell("end") == END { reading(&cell) } else { Err(TORN.to_owned()) }
}

/// A line that is a JSON object with the names of the columns.
fn of_json(line: &str) -> Result<StrandReading, String> {
    let object: serde_json::Map<String, serde_json::Value> = serde_json::from_str(line)
        .map_err(|error| if error.is_eof() { TORN.to_owned() } else { format!("not an object of JSON: {error}") })?;
    if let Some(unknown) = object.keys().find(|key| !COLUMNS.contains(&key.as_str())) {
        return Err(format!("unknown field \"{unknown}\": the fields are {}", FIELDS.join(", ")));
    }
    reading(&|name: &str| match object.get(name) {
        None | Some(serde_json::Value::Null) => String::new(),
        Some(serde_json::Value::String(text)) => text.trim().to_owned(),
        Some(other) => other.to_string(),
    })
}

/// The line of one reading as a JSON object, with its line break: for a book with an object in each line, which
/// [`read_strand_book`] reads too.
///
/// # Example
///
/// ```
/// use foilwork::lift::{read_strand_book, strand_json_line};
///
/// let text = "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,foil,eye,.";
/// let line = strand_json_line(&read_strand_book(text).readings[0]);
/// assert!(line.starts_with("{\"guest\":\"J-014\",\"before_level\":4"));
/// assert_eq!(read_strand_book(&line), read_strand_book(text));
/// ```
#[must_use]
pub fn strand_json_line(reading: &StrandReading) -> String {
    let named = FIELDS.iter().zip(cells(reading)).filter(|(_, cell)| !cell.is_empty());
    let value = |(name, cell): (&&str, String)| {
        let text = || serde_json::Value::from(flat(&cell)).to_string();
        let bare = !TEXTS.contains(name) && cell.parse::<f64>().is_ok();
        format!("\"{name}\":{}", if bare { cell.clone() } else { text() })
    };
    format!("{{{}}}\n", named.map(value).collect::<Vec<_>>().join(","))
}

/// A reading from its cells by their names.
fn reading(cell: &dyn Fn(&str) -> String) -> Result<StrandReading, String> {
    let number = |name: &str| {
        cell(name)
            .parse::<f64>()
            .map_err(|_| format!("{name}: \"{}\" is not a number (write it with a point)", cell(name)))
    };
    let said = |name: &str, error: String| format!("{name}: {error}");
    let percent = |name: &str| MassFraction::from_ww_percent(number(name)?).map_err(|e| said(name, e.to_string()));
    let level = |name: &str| Level::new(number(name)?).map_err(|e| said(name, e.to_string()));
    let name = |name: &str| Some(flat(&cell(name)).trim().to_owned()).filter(|text| !text.is_empty());
    let on_hair = Interval::new(
        percent("on_hair_low_ww_percent")?,
        percent("on_hair_ww_percent")?,
        percent("on_hair_high_ww_percent")?,
    );
    let ph = match cell("ph").as_str() {
        "" => None,
        _ => Some(Ph::new(number("ph")?).map_err(|e| said("ph", e.to_string()))?),
    };
    let found = StrandReading {
        situation: Situation {
            on_hair: on_hair.map_err(|e| said("on_hair_ww_percent", e.to_string()))?,
            temperature: Temperature::from_celsius(number("temperature_c")?)
                .map_err(|e| said("temperature_c", e.to_string()))?,
            booster: cell("booster")
                .parse()
                .map_err(|e: crate::choice::UnknownChoice| said("booster", e.to_string()))?,
            ph,
            uptake: cell("uptake").parse().map_err(|e: crate::choice::UnknownChoice| said("uptake", e.to_string()))?,
            texture: cell("texture")
                .parse()
                .map_err(|e: crate::choice::UnknownChoice| said("texture", e.to_string()))?,
            cover: cell("cover").parse().map_err(|e: crate::choice::UnknownChoice| said("cover", e.to_string()))?,
        },
        time: Duration::from_min(number("min")?).map_err(|e| said("min", e.to_string()))?,
        before: level("before_level")?,
        after: level("after_level")?,
        reader: cell("reader").parse().map_err(|e: crate::choice::UnknownChoice| said("reader", e.to_string()))?,
        guest: name("guest"),
        product: name("product"),
    };
    found.darker().map_or(Ok(()), |why| Err(format!("after_level: {why}")))?;
    Ok(found)
}
