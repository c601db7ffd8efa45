//! A book of strand readings as text: one line for each, so that a line can be appended and a torn one is seen.

use super::{Ph, Situation, StrandReading};
use crate::{
    colour::Level,
    quantity::{Duration, MassFraction, Temperature},
    source::Interval,
};

/// The columns of the book, in the order in which they are written.
const COLUMNS: [&str; 15] = [
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
    "thickness",
    "reader",
    "end",
];
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
        mix.thickness.code().to_owned(),
        reading.reader.code().to_owned(),
        END.to_owned(),
    ]
}

/// A cell in quotes where it needs them. Line breaks become spaces: a reading is one line.
fn quoted(cell: &str) -> String {
    let flat: String = cell.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    if flat.contains([',', '"']) { format!("\"{}\"", flat.replace('"', "\"\"")) } else { flat }
}

/// Reads a book of strand readings: comma-separated text with a heading.
///
/// A line that cannot be read is reported and the others count; a line without its last cell was torn by a crash.
///
/// # Example
///
/// ```
/// use foilwork::lift::{read_strand_book, strand_line};
///
/// let text = strand_line(None) + "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,eye,.\nJ-014,,4,8";
/// let book = read_strand_book(&text);
/// assert_eq!(book.readings.len(), 1);
/// assert!(book.problems[0].to_string().starts_with("line 3: torn"));
/// assert_eq!(strand_line(Some(&book.readings[0])), "J-014,,4,8.5,30,4,4,4,25,persulfate,,normal,medium,eye,.\n");
/// ```
#[must_use]
pub fn read_strand_book(text: &str) -> StrandBook {
    let mut book = StrandBook::default();
    let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(text.as_bytes());
    for record in reader.records() {
        let record = match record {
            Ok(record) => record,
            Err(error) => {
                book.problems.push(BookProblem { line: 0, message: format!("not comma-separated text: {error}") });
                break;
            }
        };
        let line = record.position().map_or(0, csv::Position::line);
        if record.get(0) == COLUMNS.first().copied() {
            continue;
        }
        match reading(&record) {
            Ok(reading) => book.readings.push(reading),
            Err(message) => book.problems.push(BookProblem { line, message }),
        }
    }
    book
}

fn reading(record: &csv::StringRecord) -> Result<StrandReading, String> {
    let cell = |name: &str| {
        let place = COLUMNS.iter().position(|column| *column == name);
        place.and_then(|i| record.get(i)).map(str::trim).unwrap_or_default()
    };
    if cell("end") != END {
        return Err(
            "torn: the line has no end (the program was stopped while it was written; enter it again)".to_owned()
        );
    }
    let number = |name: &str| {
        cell(name)
            .parse::<f64>()
            .map_err(|_| format!("{name}: \"{}\" is not a number (write it with a point)", cell(name)))
    };
    let said = |name: &str, error: String| format!("{name}: {error}");
    let percent = |name: &str| MassFraction::from_ww_percent(number(name)?).map_err(|e| said(name, e.to_string()));
    let level = |name: &str| Level::new(number(name)?).map_err(|e| said(name, e.to_string()));
    let name = |name: &str| Some(cell(name)).filter(|text| !text.is_empty()).map(str::to_owned);
    let on_hair = Interval::new(
        percent("on_hair_low_ww_percent")?,
        percent("on_hair_ww_percent")?,
        percent("on_hair_high_ww_percent")?,
    );
    let ph = match cell("ph") {
        "" => None,
        _ => Some(Ph::new(number("ph")?).map_err(|e| said("ph", e.to_string()))?),
    };
    Ok(StrandReading {
        situation: Situation {
            on_hair: on_hair.map_err(|e| said("on_hair_ww_percent", e.to_string()))?,
            temperature: Temperature::from_celsius(number("temperature_c")?)
                .map_err(|e| said("temperature_c", e.to_string()))?,
            booster: cell("booster")
                .parse()
                .map_err(|e: crate::choice::UnknownChoice| said("booster", e.to_string()))?,
            ph,
            uptake: cell("uptake").parse().map_err(|e: crate::choice::UnknownChoice| said("uptake", e.to_string()))?,
            thickness: cell("thickness")
                .parse()
                .map_err(|e: crate::choice::UnknownChoice| said("thickness", e.to_string()))?,
        },
        time: Duration::from_min(number("min")?).map_err(|e| said("min", e.to_string()))?,
        before: level("before_level")?,
        after: level("after_level")?,
        reader: cell("reader").parse().map_err(|e: crate::choice::UnknownChoice| said("reader", e.to_string()))?,
        guest: name("guest"),
        product: name("product"),
    })
}
