//! Rows of comma-separated text, each with its line.

use super::{line::check_names, place::Place};
use crate::{
    money::parse_decimal,
    reader::{Problem, Problems},
    text::{Comma, Lines, with_comma},
};

/// One row, by the names of its columns.
#[derive(Clone, Copy)]
pub(in crate::business) struct Row<'r> {
    header: &'r csv::StringRecord,
    record: &'r csv::StringRecord,
}

impl<'r> Row<'r> {
    /// The text under a name; `None` where there is no such column.
    pub(in crate::business) fn get(self, column: &str) -> Option<&'r str> {
        self.header.iter().position(|name| name == column).and_then(|place| self.record.get(place))
    }
}

/// Calls `row` for every row of a text with a header, and collects all that is wrong with it.
///
/// Semicolons or tabs instead of commas are recognised by the header. Empty lines are skipped.
pub(in crate::business) fn each_row(
    text: &str,
    columns: &[&str],
    of: &str,
    mut row: impl FnMut(Place, Row<'_>, &mut Problems),
) -> Result<(), Problems> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(delimiter(text))
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut problems = Problems::default();
    let header: csv::StringRecord = match reader.headers() {
        Ok(header) => header.iter().map(column).collect(),
        Err(error) => {
            Place::Line(1).say(&mut problems, "", error);
            return Err(problems);
        }
    };
    check_names(Place::Line(1), header.iter(), columns, &mut problems);
    let places = Lines::of(text);
    let mut empty = true;
    for record in reader.records() {
        empty = false;
        let record = match record {
            Ok(record) => record,
            Err(error) => {
                line_of(&places, error.position()).say(&mut problems, "", error);
                continue;
            }
        };
        let place = line_of(&places, record.position());
        if record.len() != header.len() {
            let (got, want) = (record.len(), header.len());
            let message = format!("{got} fields under {want} column names: quote a field that holds the separator");
            place.say(&mut problems, "", message);
            continue;
        }
        row(place, Row { header: &header, record: &record }, &mut problems);
    }
    if empty && problems.0.is_empty() {
        Place::Whole.say(&mut problems, "", format!("the list has no {of}: give at least one line"));
    }
    one_for_commas(problems).or(())
}

/// The line where a record begins. A reader of records stops before the line feed of a CR LF, so breaks are skipped.
fn line_of(lines: &Lines<'_>, position: Option<&csv::Position>) -> Place {
    let begin = position.and_then(|position| usize::try_from(position.byte()).ok()).unwrap_or(0);
    let rest = lines.text().get(begin..).unwrap_or_default();
    Place::Line(lines.line(begin + rest.len() - rest.trim_start_matches(['\r', '\n']).len()))
}

/// Decimal commas are one habit, not one mistake a cell: they are told once, with the first as the example. Commas that may part
/// thousands are told apart from them: what is right for `40,5` would make 1.2 of twelve hundred.
fn one_for_commas(problems: Problems) -> Problems {
    let (mut decimal, mut either, mut others) = (Vec::new(), Vec::new(), Vec::new());
    for problem in problems.0 {
        match number_with_comma(&problem.message) {
            None => others.push(problem),
            Some((text, comma)) if comma.plain.is_none() => decimal.push((problem, text, comma)),
            Some((text, comma)) => either.push((problem, text, comma)),
        }
    }
    others.extend([decimal, either].into_iter().filter_map(told_once));
    Problems(others).sorted()
}

/// The number of a complaint, where all that is wrong with it is its comma.
fn number_with_comma(message: &str) -> Option<(String, Comma)> {
    let quoted = message.split('"').nth(1).filter(|_| message.contains("is not a decimal number"))?;
    with_comma(quoted, |point| parse_decimal("number", point).is_ok()).map(|comma| (quoted.to_owned(), comma))
}

/// All complaints of one kind as one.
fn told_once(alike: Vec<(Problem, String, Comma)>) -> Option<Problem> {
    let more = alike.len().saturating_sub(1);
    let (first, text, Comma { point, plain }) = alike.into_iter().next()?;
    let (so_are, points) = match more {
        0 => (String::new(), "a point"),
        1 => (", and so is 1 other number".to_owned(), "points"),
        _ => (format!(", and so are {more} other numbers"), "points"),
    };
    let message = match plain {
        None => format!("\"{text}\" is written with a decimal comma{so_are}: write {points}, here {point}"),
        Some(plain) => {
            format!("\"{text}\" is written with a comma{so_are}: write {point} or {plain}, whichever it is")
        }
    };
    Some(Problem { message, ..first })
}

/// The name of a column in a header, as a person or a spreadsheet writes it: `Hands-on min` is `hands_on_min`.
fn column(name: &str) -> String {
    name.to_lowercase().replace([' ', '-'], "_")
}

/// No column name holds a separator, so the first one in the header is it.
fn delimiter(text: &str) -> u8 {
    let header = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    header.bytes().find(|byte| matches!(byte, b',' | b';' | b'\t')).unwrap_or(b',')
}
