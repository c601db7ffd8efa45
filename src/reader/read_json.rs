use super::{Kind, Node, Problem};
use crate::text::{Lines, Position};
use jsonc_parser::{CollectOptions, ParseOptions, ast, common::Ranged, parse_to_ast};
use std::collections::HashSet;

/// Plain JSON (RFC 8259): none of the extensions the parser offers.
const STRICT: ParseOptions = ParseOptions {
    allow_comments: false,
    allow_loose_object_property_names: false,
    allow_trailing_commas: false,
    allow_missing_commas: false,
    allow_single_quoted_strings: false,
    allow_hexadecimal_numbers: false,
    allow_unary_plus_numbers: false,
    allow_bare_decimal_point_numbers: false,
    allow_non_finite_numbers: false,
    allow_extended_string_escapes: false,
};

/// Reads JSON, with the syntax error and any key that is given twice.
pub(super) fn read(text: &Lines<'_>) -> (Node, Vec<Problem>) {
    let mut problems = Vec::new();
    let empty = Node { at: Some(Position::START), kind: Kind::Table(Vec::new()) };
    let root = match parse_to_ast(text.text(), &CollectOptions::default(), &STRICT) {
        Ok(parsed) => parsed.value.map_or(empty, |value| node(text, &value, "", &mut problems)),
        Err(error) => {
            let at = Some(text.position(error.range().start));
            let message = format!("not valid JSON: {}", lower_first(&error.kind().to_string()));
            problems.push(Problem { at, field: String::new(), message });
            empty
        }
    };
    (root, problems)
}

/// The parser's own words, in the style of the other messages.
fn lower_first(text: &str) -> String {
    let mut rest = text.chars();
    rest.next().map(|first| first.to_lowercase().chain(rest).collect()).unwrap_or_default()
}

fn node(text: &Lines<'_>, value: &ast::Value<'_>, field: &str, problems: &mut Vec<Problem>) -> Node {
    let at = Some(text.position(value.range().start));
    let kind = match value {
        ast::Value::NullKeyword(_) => Kind::Null,
        ast::Value::BooleanLit(lit) => Kind::Flag(lit.value),
        ast::Value::NumberLit(lit) => Kind::Number(lit.value.parse().unwrap_or(f64::NAN), Some(lit.value.to_owned())),
        ast::Value::StringLit(lit) => Kind::Text(lit.value.to_string()),
        ast::Value::Array(list) => {
            let items = list.elements.iter().enumerate();
            Kind::List(items.map(|(i, v)| node(text, v, &format!("{field}[{}]", i + 1), problems)).collect())
        }
        ast::Value::Object(table) => {
            let mut entries: Vec<(String, Option<Position>, Node)> = Vec::new();
            let mut seen = HashSet::new();
            for property in &table.properties {
                let key = property.name.as_str().to_owned();
                let path = if field.is_empty() { key.clone() } else { format!("{field}.{key}") };
                let key_at = Some(text.position(property.range.start));
                if !seen.insert(property.name.as_str()) {
                    let message = "given twice in one table: keep one".to_owned();
                    problems.push(Problem { at: key_at, field: path.clone(), message });
                }
                entries.push((key, key_at, node(text, &property.value, &path, problems)));
            }
            Kind::Table(entries)
        }
    };
    Node { at, kind }
}
