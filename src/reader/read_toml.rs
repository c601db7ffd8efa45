use super::{Kind, Node, Problem};
use crate::text::{Lines, Position, without_thousands};
use toml::{
    Spanned,
    de::{DeTable, DeValue},
};

/// Reads TOML as far as it can be read, with every syntax error on the way.
pub(super) fn read(text: &Lines<'_>) -> (Node, Vec<Problem>) {
    let (table, errors) = DeTable::parse_recoverable(text.text());
    let mut problems: Vec<Problem> = errors
        .iter()
        .map(|error| Problem {
            at: error.span().map(|span| text.position(span.start)),
            field: String::new(),
            message: {
                let span = error.span();
                let line = span.as_ref().and_then(|span| line_of(text.text(), span.start));
                let said = line.and_then(number_with_more);
                let at = span.and_then(|span| text.text().get(span));
                format!("not valid TOML: {}", said.unwrap_or_else(|| words(error.message(), at, line)))
            },
        })
        .collect();
    // What follows a mistake on the same line is its echo.
    problems.dedup_by_key(|problem| problem.at.map(|at| at.line));
    (Node { at: Some(Position::START), kind: table_kind(text, table.get_ref()) }, problems)
}

/// The line around a place.
fn line_of(text: &str, at: usize) -> Option<&str> {
    let at = at.min(text.len());
    let begin = text.get(..at)?.rfind('\n').map_or(0, |end| end + 1);
    let line = text.get(begin..)?;
    line.split('\n').next()
}

/// A number with a decimal comma, or with its unit, after the equals sign of a line.
fn number_with_more(line: &str) -> Option<String> {
    let value = line.split_once('=')?.1.split('#').next()?.trim();
    let end = value.find(|c: char| !(c.is_ascii_digit() || c == '.')).filter(|end| *end > 0)?;
    let (number, rest) = value.split_at_checked(end)?;
    let decimals = rest.strip_prefix(',').filter(|rest| !rest.is_empty() && rest.chars().all(|c| c.is_ascii_digit()));
    if let Some(decimals) = decimals {
        if let Some(plain) = without_thousands(value) {
            return Some(format!("{value} has a comma: write {number}.{decimals} or {plain}, whichever it is"));
        }
        return Some(format!("{value} has a comma: write {number}.{decimals}"));
    }
    let unit = rest.trim();
    let joined = ["min", "h", "g", "cm", "mm", "ml", "%"];
    let apart = rest.starts_with(' ') && unit.chars().all(char::is_alphabetic);
    let is_unit = unit.starts_with('%') || joined.contains(&unit) || apart;
    is_unit.then(|| format!("{value} is more than a number: write {number}, the name of the field says the unit"))
}

/// A value that begins like a number or a date and is neither: `0:25`, `10am`, `26.11.2026`.
fn like_a_date(line: Option<&str>) -> Option<String> {
    let value = line?.split_once('=')?.1.split('#').next()?.trim();
    let plain = value.starts_with(|c: char| c.is_ascii_digit()) && !value.contains(['"', '\'', '[', '{', ',']);
    plain.then(|| {
        format!(
            "{value} is neither a number nor a date: write minutes as 25, a date as 2026-11-25T10:00, text in quotes"
        )
    })
}

/// The parser's own words, except where they would mislead.
fn words(message: &str, at: Option<&str>, line: Option<&str>) -> String {
    let message = message.replace('\n', ", ");
    let kinds = ["invalid time", "invalid date", "invalid float", "invalid integer", "string values must be quoted"];
    if let Some(said) = like_a_date(line).filter(|_| kinds.iter().any(|kind| message.starts_with(kind))) {
        return said;
    }
    match (message.as_str(), at) {
        ("duplicate key", Some(key)) => format!("`{key}` is given twice in one table: keep one"),
        ("invalid basic string, expected `\"`", _) => "text without its closing quote: add it".to_owned(),
        // The parser takes any bare word that begins like `true` or `false` for one of them.
        (words, _) if words.starts_with("invalid boolean") || words.starts_with("string values must be quoted") => {
            "a value without quotes is neither a number nor true nor false: write text in quotes".to_owned()
        }
        _ => message,
    }
}

fn node(text: &Lines<'_>, value: &Spanned<DeValue<'_>>) -> Node {
    let at = Some(text.position(value.span().start));
    let kind = match value.get_ref() {
        DeValue::String(s) => Kind::Text(s.to_string()),
        // Underscores and radix prefixes are TOML's way of writing the same number.
        DeValue::Integer(i) => match i128::from_str_radix(i.as_str(), i.radix()) {
            Ok(whole) => Kind::Number(whole as f64, Some(whole.to_string())),
            Err(_) => Kind::Number(f64::NAN, Some(i.to_string())),
        },
        DeValue::Float(x) => Kind::Number(x.as_str().parse().unwrap_or(f64::NAN), Some(x.to_string())),
        DeValue::Boolean(flag) => Kind::Flag(*flag),
        DeValue::Datetime(moment) => Kind::Text(moment.to_string()),
        DeValue::Array(items) => Kind::List(items.iter().map(|item| node(text, item)).collect()),
        DeValue::Table(table) => table_kind(text, table),
    };
    Node { at, kind }
}

fn table_kind(text: &Lines<'_>, table: &DeTable<'_>) -> Kind {
    let mut entries: Vec<_> = table
        .iter()
        .map(|(key, value)| (key.get_ref().to_string(), Some(text.position(key.span().start)), node(text, value)))
        .collect();
    entries.sort_by_key(|(_, at, _)| *at);
    Kind::Table(entries)
}
