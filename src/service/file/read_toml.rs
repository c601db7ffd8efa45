use super::{Kind, Node, Position, Problem};
use toml::{
    Spanned,
    de::{DeTable, DeValue},
};

/// Reads TOML as far as it can be read, with every syntax error on the way.
pub(super) fn read(text: &str) -> (Node, Vec<Problem>) {
    let (table, errors) = DeTable::parse_recoverable(text);
    let problems = errors
        .iter()
        .map(|error| Problem {
            at: error.span().map(|span| Position::of(text, span.start)),
            field: String::new(),
            message: format!("not valid TOML: {}", error.message().replace('\n', ", ")),
        })
        .collect();
    let at = Position { line: 1, column: 1 };
    (Node { at, kind: table_kind(text, table.get_ref()) }, problems)
}

fn node(text: &str, value: &Spanned<DeValue<'_>>) -> Node {
    let at = Position::of(text, value.span().start);
    let kind = match value.get_ref() {
        DeValue::String(s) => Kind::Text(s.to_string()),
        // Underscores and radix prefixes are TOML's way of writing the same number.
        DeValue::Integer(i) => match i128::from_str_radix(i.as_str(), i.radix()) {
            Ok(whole) => Kind::Number(whole as f64, whole.to_string()),
            Err(_) => Kind::Number(f64::NAN, i.to_string()),
        },
        DeValue::Float(x) => Kind::Number(x.as_str().parse().unwrap_or(f64::NAN), x.to_string()),
        DeValue::Boolean(flag) => Kind::Flag(*flag),
        DeValue::Datetime(moment) => Kind::Text(moment.to_string()),
        DeValue::Array(items) => Kind::List(items.iter().map(|item| node(text, item)).collect()),
        DeValue::Table(table) => table_kind(text, table),
    };
    Node { at, kind }
}

fn table_kind(text: &str, table: &DeTable<'_>) -> Kind {
    let mut entries: Vec<_> = table
        .iter()
        .map(|(key, value)| (key.get_ref().to_string(), Position::of(text, key.span().start), node(text, value)))
        .collect();
    entries.sort_by_key(|(_, at, _)| *at);
    Kind::Table(entries)
}
