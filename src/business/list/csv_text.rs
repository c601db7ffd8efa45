use super::{
    ServiceLine,
    line::{check_names, read_line},
    place::Place,
};
use crate::{money::Currency, reader::Problems, text::Lines};

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
/// let said: Vec<_> = problems.0.iter().map(ToString::to_string).collect();
/// assert_eq!(said, [
///     r#"line 3: product_g: number "thirty" is not a decimal number: write digits with a point, for example 12.50"#,
///     "line 3: chair_min: is missing: give a value",
/// ]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn parse_csv(text: &str, currency: Currency) -> Result<Vec<ServiceLine>, Problems> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(delimiter(text))
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut problems = Problems::default();
    let header = match reader.headers() {
        Ok(header) => header.clone(),
        Err(error) => {
            Place::Line(1).say(&mut problems, "", error);
            return Err(problems);
        }
    };
    check_names(Place::Line(1), header.iter(), &mut problems);
    let places = Lines::of(text);
    let mut lines = Vec::new();
    for record in reader.records() {
        let record = match record {
            Ok(record) => record,
            Err(error) => {
                Place::Line(places.of_record(error.position())).say(&mut problems, "", error);
                continue;
            }
        };
        let place = Place::Line(places.of_record(record.position()));
        if record.len() != header.len() {
            let (got, want) = (record.len(), header.len());
            let message = format!("{got} fields under {want} column names: quote a field that holds the separator");
            place.say(&mut problems, "", message);
            continue;
        }
        let get = |column: &str| header.iter().position(|name| name == column).and_then(|place| record.get(place));
        lines.extend(read_line(place, currency, get, &mut problems));
    }
    if lines.is_empty() && problems.0.is_empty() {
        Place::Whole.say(&mut problems, "", "the list has no services: give at least one line");
    }
    one_for_commas(problems).or(lines)
}

/// Decimal commas are one habit, not one mistake a cell: they are told once, with the first as the example.
fn one_for_commas(problems: Problems) -> Problems {
    let with_comma = |message: &str| {
        let quoted = message.split('"').nth(1).filter(|_| message.contains("is not a decimal number"))?;
        let (whole, part) = quoted.split_once(',')?;
        let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
        (digits(whole.trim_start_matches('-')) && digits(part)).then(|| (quoted.to_owned(), format!("{whole}.{part}")))
    };
    let (commas, mut others): (Vec<_>, Vec<_>) =
        problems.0.into_iter().partition(|problem| with_comma(&problem.message).is_some());
    if let (Some(first), more @ 1..) = (commas.first(), commas.len().saturating_sub(1)) {
        if let Some((comma, point)) = with_comma(&first.message) {
            let message = format!(
                "\"{comma}\" is written with a decimal comma, and so are {more} other numbers: write points, here {point}"
            );
            others.push(crate::reader::Problem { message, ..first.clone() });
        }
    } else {
        others.extend(commas);
    }
    Problems(others).sorted()
}

/// No column name holds a separator, so the first one in the header is it.
fn delimiter(text: &str) -> u8 {
    let header = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    header.bytes().find(|byte| matches!(byte, b',' | b';' | b'\t')).unwrap_or(b',')
}
