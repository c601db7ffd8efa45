//! Kept records as comma-separated text: a row for each section, the fields of its service repeated in each.

use super::{KeptRecord, KeptRecords, RecordProblem, lines::of_value};
use crate::text::{cell, from_cell, quoted};
use serde_json::{Map, Value};

/// Fields of a service, in the order of the columns; `record` counts them, so that rows of one service hang together.
const OF_SERVICE: [&str; 13] = [
    "record",
    "format",
    "on",
    "title",
    "guest",
    "colourist",
    "service_class",
    "chair_min",
    "currency",
    "cost",
    "left_over_cost",
    "price",
    "incident",
];
/// Fields of a section; its `name` is the column `section`.
const OF_SECTION: [&str; 19] = [
    "name",
    "technique",
    "foils",
    "expected_g",
    "planned_g",
    "weighed_g",
    "left_over_g",
    "planned_apply_min",
    "apply_min",
    "applications",
    "on_hair_min",
    "from_level",
    "target_level",
    "result_level",
    "toned_level",
    "tone",
    "elasticity",
    "part",
    "mixture",
];
/// Those whose cell is text even when it looks like a number.
const TEXTS: [&str; 13] = [
    "on",
    "title",
    "guest",
    "colourist",
    "service_class",
    "currency",
    "cost",
    "left_over_cost",
    "price",
    "name",
    "technique",
    "tone",
    "elasticity",
];

fn column(field: &'static str) -> &'static str {
    if field == "name" { "section" } else { field }
}

/// The records as a table with a heading, for a spreadsheet: a row for each section. Lists and mixtures stand in a cell as JSON.
///
/// # Example
///
/// ```
/// use foilwork::{history::{keep, read_records_csv, records_csv}, reader::Format, record::replay, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let record = keep(&plan, &replay(&[]));
/// let table = records_csv(&[record.clone()]);
/// assert!(table.starts_with("record,format,on,title,guest"));
/// assert_eq!(read_records_csv(&table).records, [record]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn records_csv(records: &[KeptRecord]) -> String {
    let heading: Vec<&str> = OF_SERVICE.into_iter().chain(OF_SECTION.into_iter().map(column)).collect();
    let mut table = format!("{}\n", heading.join(","));
    for (number, record) in (1..).zip(records) {
        let mut fields = serde_json::to_value(record).unwrap_or_default();
        let sections = fields.as_object_mut().and_then(|fields| fields.remove("section"));
        let sections = sections.and_then(|sections| sections.as_array().cloned()).unwrap_or_default();
        let service =
            OF_SERVICE.map(|field| if field == "record" { format!("{number}") } else { text(&fields, field) });
        let rows = if sections.is_empty() { vec![Value::Null] } else { sections };
        for section in rows {
            let cells = service.iter().cloned().chain(OF_SECTION.map(|field| text(&section, field)));
            let cells: Vec<String> = cells.map(|text| quoted(&cell(&text))).collect();
            table += &format!("{}\n", cells.join(","));
        }
    }
    table
}

fn text(fields: &Value, name: &str) -> String {
    match fields.get(name) {
        None | Some(Value::Null) => String::new(),
        Some(Value::String(text)) => text.clone(),
        Some(Value::Array(items)) if items.is_empty() => String::new(),
        Some(other) => other.to_string(),
    }
}

/// The rows of one service so far: its number, the line of the first, its fields, its sections.
type Open = (String, u64, Map<String, Value>, Vec<Value>);

/// Reads such a table; columns may stand in any order, and unknown ones are named. A row that cannot be read leaves its service
/// out, and the others count.
///
/// # Example
///
/// ```
/// use foilwork::history::read_records_csv;
///
/// let table = "record,format,on,title,section,weighed_g\n1,1,2026-11-25,gloss,lengths,75\n2,1,never,gloss,lengths,75\n";
/// let found = read_records_csv(table);
/// assert_eq!(found.records[0].section[0].weighed_g, Some(75.0));
/// assert!(found.problems[0].to_string().starts_with("line 3: on: \"never\" is not a day"));
/// ```
#[must_use]
pub fn read_records_csv(text: &str) -> KeptRecords {
    let mut found = KeptRecords::default();
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader = csv::ReaderBuilder::new().flexible(true).from_reader(text.as_bytes());
    let heading: Vec<String> = match reader.headers() {
        Ok(heading) => heading.iter().map(|name| name.trim().to_owned()).collect(),
        Err(error) => return refused(format!("not comma-separated text: {error}")),
    };
    let known = |name: &str| OF_SERVICE.contains(&name) || OF_SECTION.map(column).contains(&name);
    if let Some(unknown) = heading.iter().find(|name| !known(name)) {
        let all: Vec<&str> = OF_SERVICE.into_iter().chain(OF_SECTION.map(column)).collect();
        return refused(format!("unknown column \"{unknown}\": the columns are {}", all.join(", ")));
    }
    let mut open: Option<Open> = None;
    let mut close = |open: &mut Option<Open>| {
        if let Some((_, line, mut fields, sections)) = open.take() {
            fields.insert("section".to_owned(), Value::Array(sections));
            match of_value(Value::Object(fields)) {
                Ok(record) => found.records.push(record),
                Err(message) => found.problems.push(RecordProblem { line, message }),
            }
        }
    };
    let mut torn = Vec::new();
    for row in reader.records() {
        let row = match row {
            Ok(row) => row,
            Err(error) => {
                let line = error.position().map_or(0, csv::Position::line);
                torn.push(RecordProblem { line, message: format!("not comma-separated text: {error}") });
                continue;
            }
        };
        let at =
            |name: &str| heading.iter().position(|known| known == name).and_then(|i| row.get(i)).unwrap_or_default();
        let line = row.position().map_or(0, csv::Position::line);
        let number = at("record").trim().to_owned();
        if open.as_ref().is_none_or(|(known, ..)| *known != number || number.is_empty()) {
            close(&mut open);
            let fields = OF_SERVICE.iter().filter(|field| **field != "record");
            let fields = fields.filter_map(|field| Some(((*field).to_owned(), value(field, at(field))?)));
            open = Some((number, line, fields.collect(), Vec::new()));
        }
        let section =
            OF_SECTION.iter().filter_map(|field| Some(((*field).to_owned(), value(field, at(column(field)))?)));
        let section: Map<String, Value> = section.collect();
        if let (Some((.., sections)), false) = (&mut open, section.is_empty()) {
            sections.push(Value::Object(section));
        }
    }
    close(&mut open);
    found.problems.extend(torn);
    found
}

fn refused(message: String) -> KeptRecords {
    KeptRecords { records: Vec::new(), problems: vec![RecordProblem { line: 1, message }] }
}

/// A cell as a value: none where it is empty, a number or JSON where the field is no text. What is neither stays a text, so that
/// the reader of the fields says what is wrong.
fn value(field: &str, cell: &str) -> Option<Value> {
    let cell = cell.trim();
    if cell.is_empty() {
        return None;
    }
    // The sign that keeps a spreadsheet from reckoning is no part of a text.
    let plain = from_cell(cell);
    if TEXTS.contains(&field) {
        return Some(Value::from(plain));
    }
    Some(serde_json::from_str(&plain).unwrap_or_else(|_| Value::from(plain)))
}
