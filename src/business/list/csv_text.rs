use super::{
    Place, ServiceLine, TableProblem,
    line::{check_names, read_line},
};
use crate::money::Currency;

/// Reads a list of services from comma-separated text with a header row.
///
/// Semicolons or tabs instead of commas are recognised by the header; decimals are written with a point all the same.
/// Columns may come in any order, see [`COLUMNS`](super::COLUMNS). Empty lines are skipped.
///
/// # Errors
///
/// Everything that is wrong, together, each with its line and column.
///
/// # Example
///
/// ```
/// use foilwork::{business::list::parse_csv, money::Currency};
///
/// let text = "service,product_pack_price,product_pack_g,product_g,hands_on_min,chair_min\n\
///             half head of foils,26.40,500,35,70,120\n\
///             toner,9.80,60,thirty,15,\n";
/// let problems = parse_csv(text, Currency::from_code("EUR")?).unwrap_err();
/// let said: Vec<_> = problems.iter().map(ToString::to_string).collect();
/// assert_eq!(said, [
///     r#"line 3, product_g: number "thirty" is not a decimal number: write digits with a point, for example 12.50"#,
///     "line 3, chair_min: is missing: give a value",
/// ]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn parse_csv(text: &str, currency: Currency) -> Result<Vec<ServiceLine>, Vec<TableProblem>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(delimiter(text))
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let header = match reader.headers() {
        Ok(header) => header.clone(),
        Err(error) => return Err(vec![TableProblem::new(Place::Header, "text", error)]),
    };
    let mut problems = check_names(Place::Header, header.iter());
    let mut lines = Vec::new();
    for record in reader.records() {
        let record = match record {
            Ok(record) => record,
            Err(error) => {
                let line = error.position().map_or(0, csv::Position::line);
                problems.push(TableProblem::new(Place::Line(line), "text", error));
                continue;
            }
        };
        let place = Place::Line(record.position().map_or(0, csv::Position::line));
        if record.len() != header.len() {
            let (got, want) = (record.len(), header.len());
            let problem = format!("{got} fields under {want} column names: quote a field that holds the separator");
            problems.push(TableProblem::new(place, "line", problem));
            continue;
        }
        let get = |column: &str| header.iter().position(|name| name == column).and_then(|place| record.get(place));
        match read_line(place, currency, get) {
            Ok(line) => lines.push(line),
            Err(mut found) => problems.append(&mut found),
        }
    }
    if lines.is_empty() && problems.is_empty() {
        problems.push(TableProblem::new(Place::Header, "list", "has no services: give at least one line"));
    }
    if problems.is_empty() { Ok(lines) } else { Err(problems) }
}

/// No column name holds a separator, so the first one in the header is it.
fn delimiter(text: &str) -> u8 {
    let header = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    header.bytes().find(|byte| matches!(byte, b',' | b';' | b'\t')).unwrap_or(b',')
}
