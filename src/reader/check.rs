//! Checks a file against the schema of its shape and reports everything that is wrong, not the first thing only.
//!
//! Only the keywords that the derived schema uses are understood; `schema_uses_only_known_keywords` in the tests keeps
//! that true.

use super::{Kind, Node, Problem, path::Path};
use crate::{
    choice::nearest,
    text::{Position, is_active},
};
use serde_json::{Map, Value};

/// The most entries of a list whose shape does not say.
const MOST_ITEMS: u64 = 10_000;
/// The most characters of a text whose shape does not say.
const MOST_CHARACTERS: u64 = 200;

/// The walk's state: the whole schema for `$ref`, and what was found so far.
pub(super) struct Checker<'s> {
    pub(super) root: &'s Value,
    /// Reads a text field as its `x-parse` names it.
    pub(super) text_field: fn(&str, &str) -> Result<(), String>,
    pub(super) problems: Vec<Problem>,
    /// Whether a table or a list stands under a name that is not known: what it names cannot be looked up then.
    pub(super) hidden: bool,
}

impl<'s> Checker<'s> {
    /// Checks one value under one schema. Nearly all of it is right: words are put together only where something is not.
    pub(super) fn check(&mut self, node: &Node, schema: &'s Value, field: Path<'_>) {
        let schema = self.resolve(schema);
        if let Some(choices) = schema.get("oneOf").and_then(Value::as_array) {
            return self.check_choice(node, choices, field);
        }
        match (fitting_type(schema, node), &node.kind) {
            (Some("object"), Kind::Table(entries)) => self.check_table(node.at, entries, schema, field),
            (Some("array"), Kind::List(items)) => self.check_list(node.at, items, schema, field),
            (Some("string"), Kind::Text(text)) => self.check_text(node.at, text, schema, field),
            (Some("number" | "integer"), Kind::Number(value, text)) => {
                self.check_number(node.at, *value, text.as_deref(), schema, field);
            }
            (Some("boolean"), Kind::Flag(_)) | (None, _) => {}
            (Some(wanted), _) => {
                let message = format!(
                    "{} where {} belongs: {}",
                    shown(node),
                    expected(wanted, schema),
                    way_out(node, wanted, schema, field.is_root())
                );
                self.report(node.at, field, message);
            }
        }
    }

    fn report(&mut self, at: Option<Position>, field: Path<'_>, message: String) {
        self.problems.push(Problem { at, field: field.to_string(), message });
    }

    /// Follows `$ref` and looks through the `null` half of an optional field.
    fn resolve(&self, schema: &'s Value) -> &'s Value {
        // Two kinds of indirection can alternate; the derived schema never nests them deeply.
        let mut current = schema;
        for _ in 0..8 {
            if let Some(target) = current.get("$ref").and_then(Value::as_str) {
                match target.strip_prefix("#/$defs/").and_then(|name| self.root.get("$defs")?.get(name)) {
                    Some(found) => current = found,
                    None => break,
                }
            } else if let Some(some) = current
                .get("anyOf")
                .and_then(Value::as_array)
                .and_then(|any| any.iter().find(|s| s.get("type").and_then(Value::as_str) != Some("null")))
            {
                current = some;
            } else {
                break;
            }
        }
        current
    }

    /// One of the words of an enumeration, each of which has its description.
    fn check_choice(&mut self, node: &Node, choices: &'s [Value], field: Path<'_>) {
        let words = || choices.iter().filter_map(|choice| choice.get("const").and_then(Value::as_str));
        if node.text().is_some_and(|text| words().any(|word| word == text)) {
            return;
        }
        let near = node.text().and_then(|text| nearest(text, words()));
        let hint = near.map(|word| format!("did you mean \"{word}\"? ")).unwrap_or_default();
        self.report(node.at, field, format!("{} is not one of the choices: {hint}give {}", shown(node), list(words())));
    }

    fn check_table(
        &mut self,
        at: Option<Position>,
        entries: &[(String, Option<Position>, Node)],
        schema: &'s Value,
        field: Path<'_>,
    ) {
        let known = schema.get("properties").and_then(Value::as_object);
        let names = || known.into_iter().flat_map(Map::keys).map(String::as_str);
        let other = schema.get("additionalProperties").filter(|other| other.is_object());
        let mut meant: Vec<&str> = Vec::new();
        for (key, key_at, value) in entries {
            let path = Path::Key(&field, key);
            match known.and_then(|fields| fields.get(key)) {
                // JSON may say `null` for a field that may be left out.
                Some(_) if matches!(value.kind, Kind::Null) && !required(schema).any(|name| name == key) => {}
                Some(inner) => self.check(value, inner, path),
                // A table whose keys are the user's own says what every value is.
                None if other.is_some() => {
                    if let Some(inner) = other {
                        self.check(value, inner, path);
                    }
                }
                None => {
                    self.hidden |= matches!(value.kind, Kind::Table(_) | Kind::List(_));
                    let hint = match (self.home_of(key, value, known), nearest(key, names())) {
                        (Some(table), _) => format!("it belongs into `{table}`: write `{}`", join(&table, key)),
                        (None, Some(word)) => {
                            meant.push(word);
                            format!("did you mean `{word}`?")
                        }
                        (None, None) => format!("the fields here are {}", list(names())),
                    };
                    self.report(*key_at, path, format!("unknown field: {hint}"));
                }
            }
        }
        for name in required(schema) {
            // A misspelt field is one mistake, not an unknown field and a missing one.
            if !entries.iter().any(|(key, ..)| key == name) && !meant.contains(&name) {
                let what = known.and_then(|fields| fields.get(name)).and_then(|s| self.description(s));
                let what = what.map(|text| format!(" ({text})")).unwrap_or_default();
                self.report(at, Path::Key(&field, name), format!("missing: add it{what}"));
            }
        }
    }

    /// The table beside this key that has a field of its name and kind.
    fn home_of(&self, key: &str, value: &Node, known: Option<&'s Map<String, Value>>) -> Option<String> {
        let fits = |table: &'s Value| {
            let field = self.resolve(self.resolve(table).get("properties")?.get(key)?);
            Some(matches!(
                (type_name(field), &value.kind),
                (Some("array"), Kind::List(_))
                    | (Some("object"), Kind::Table(_))
                    | (Some("string") | None, Kind::Text(_))
                    | (Some("number" | "integer"), Kind::Number(..))
                    | (Some("boolean"), Kind::Flag(_))
            ))
        };
        let mut homes = known?.iter().filter(|(_, table)| fits(table) == Some(true)).map(|(name, _)| name.clone());
        homes.next().filter(|_| homes.next().is_none())
    }

    fn check_list(&mut self, at: Option<Position>, items: &[Node], schema: &'s Value, field: Path<'_>) {
        if let Some(least) = schema.get("minItems").and_then(Value::as_u64)
            && (items.len() as u64) < least
        {
            self.report(at, field, format!("the list has {} entries: give at least {least}", items.len()));
        }
        let most = schema.get("maxItems").and_then(Value::as_u64).unwrap_or(MOST_ITEMS);
        if items.len() as u64 > most {
            return self.report(at, field, format!("the list has {} entries: give at most {most}", items.len()));
        }
        if let Some(inner) = schema.get("items") {
            for (i, item) in items.iter().enumerate() {
                self.check(item, inner, Path::Item(&field, i));
            }
        }
    }

    fn check_text(&mut self, at: Option<Position>, text: &str, schema: &'s Value, field: Path<'_>) {
        let characters = text.chars().count() as u64;
        if schema.get("minLength").and_then(Value::as_u64).is_some_and(|least| characters < least) {
            self.report(at, field, "empty text: write something, or leave the field out if it is optional".to_owned());
        }
        let most = schema.get("maxLength").and_then(Value::as_u64).unwrap_or(MOST_CHARACTERS);
        if characters > most {
            return self.report(at, field, format!("the text has {characters} characters: give at most {most}"));
        }
        // A name with a line break could forge a line of a sheet.
        let may_break = schema.get("x-lines").and_then(Value::as_bool) == Some(true);
        if let Some((place, found)) =
            text.chars().enumerate().find(|(_, c)| is_active(*c) || (*c == '\n' && !may_break))
        {
            let what = if found == '\n' { "a line break".to_owned() } else { format!("U+{:04X}", u32::from(found)) };
            let place = place + 1;
            let message = format!("character {place} is {what}, which would act instead of being shown: remove it");
            return self.report(at, field, message);
        }
        if let Some(reader) = schema.get("x-parse").and_then(Value::as_str)
            && let Err(message) = (self.text_field)(reader, text)
        {
            self.report(at, field, message);
        }
    }

    fn check_number(
        &mut self,
        at: Option<Position>,
        value: f64,
        text: Option<&str>,
        schema: &'s Value,
        field: Path<'_>,
    ) {
        let (low, high) = (bound(schema, "minimum"), bound(schema, "maximum"));
        let wrong = if !value.is_finite() {
            "not a finite number"
        } else if type_name(schema) == Some("integer") && value.fract() != 0.0 {
            "not a whole number"
        } else if low.is_some_and(|low| value < low) || high.is_some_and(|high| value > high) {
            "out of range"
        } else {
            return;
        };
        let unit = schema.get("x-unit").and_then(Value::as_str).map(|u| format!(" {u}")).unwrap_or_default();
        self.report(at, field, format!("{}{unit} is {wrong}: {}", written(value, text), range(schema)));
    }

    fn description(&self, schema: &'s Value) -> Option<String> {
        let text = schema.get("description").or_else(|| self.resolve(schema).get("description"))?.as_str()?;
        // Its first sentence, which may go over the end of a line.
        let lines: Vec<&str> = text.split("\n\n").next()?.split_whitespace().collect();
        Some(lines.join(" ").split(". ").next()?.trim_end_matches('.').to_owned())
    }
}

fn bound(schema: &Value, key: &str) -> Option<f64> {
    schema.get(key).and_then(Value::as_f64)
}

/// What a number may be, as a request: `give 1 to 120 min`.
fn range(schema: &Value) -> String {
    let unit = schema.get("x-unit").and_then(Value::as_str).map(|u| format!(" {u}")).unwrap_or_default();
    match (bound(schema, "minimum"), bound(schema, "maximum")) {
        (Some(low), Some(high)) if low == high => format!("give {low}{unit}"),
        (Some(low), Some(high)) => format!("give {low} to {high}{unit}"),
        (Some(low), None) => format!("give {low}{unit} or more"),
        (None, Some(high)) => format!("give {high}{unit} or less"),
        (None, None) => "give a finite number".to_owned(),
    }
}

fn required(schema: &Value) -> impl Iterator<Item = &str> {
    schema.get("required").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str)
}

/// The type of a schema without the `null` of an optional field.
fn type_name(schema: &Value) -> Option<&str> {
    match schema.get("type")? {
        Value::Array(names) => names.iter().filter_map(Value::as_str).find(|name| *name != "null"),
        name => name.as_str(),
    }
}

/// Of the types that a value may have, the one that it has; without one that fits, the first.
fn fitting_type<'s>(schema: &'s Value, node: &Node) -> Option<&'s str> {
    let fits = |name: &&str| {
        matches!(
            (*name, &node.kind),
            ("object", Kind::Table(_))
                | ("array", Kind::List(_))
                | ("string", Kind::Text(_))
                | ("number" | "integer", Kind::Number(..))
                | ("boolean", Kind::Flag(_))
        )
    };
    let names = schema.get("type").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str);
    names.clone().find(fits).or_else(|| type_name(schema))
}

fn join(field: &str, key: &str) -> String {
    if field.is_empty() { key.to_owned() } else { format!("{field}.{key}") }
}

fn list<'a>(words: impl Iterator<Item = &'a str>) -> String {
    words.collect::<Vec<_>>().join(", ")
}

/// A number as it was written, or as Rust writes it.
fn written(value: f64, text: Option<&str>) -> String {
    text.map_or_else(|| value.to_string(), str::to_owned)
}

fn shown(node: &Node) -> String {
    match &node.kind {
        Kind::Text(text) => format!("\"{text}\""),
        Kind::Number(value, text) => written(*value, text.as_deref()),
        Kind::Flag(flag) => flag.to_string(),
        Kind::Null => "null".to_owned(),
        _ => node.kind_name().to_owned(),
    }
}

fn expected(wanted: &str, schema: &Value) -> String {
    let unit = schema.get("x-unit").and_then(Value::as_str).map(|u| format!(" in {u}")).unwrap_or_default();
    match wanted {
        "object" => "a table".to_owned(),
        "array" => "a list".to_owned(),
        "string" => "text".to_owned(),
        "integer" => format!("a whole number{unit}"),
        "number" if schema.get("properties").is_some() => format!("a number{unit}, or {{ low, best, high }}"),
        "number" => format!("a number{unit}"),
        "boolean" => "true or false".to_owned(),
        other => other.to_owned(),
    }
}

fn way_out(node: &Node, wanted: &str, schema: &Value, outermost: bool) -> String {
    let one_word = !matches!(node.kind, Kind::Null | Kind::List(_) | Kind::Table(_));
    match wanted {
        "string" if one_word => "write it in quotes".to_owned(),
        "number" | "integer" if node.text().is_some_and(|text| text.trim().parse::<f64>().is_ok()) => {
            "write it without quotes".to_owned()
        }
        "number" | "integer" => range(schema),
        "boolean" => "write true or false, without quotes".to_owned(),
        "array" if one_word => "write it in [ ]".to_owned(),
        "array" => "write [[ ]] around its name, or in JSON a list of tables".to_owned(),
        "object" if !outermost && !node.items().is_empty() => {
            "there is only one: write [ ] around its name, or in JSON { }".to_owned()
        }
        "object" => match example(node, schema) {
            Some(example) => format!("write its fields, each with its name, for example {example}"),
            None => "write its fields, each with its name".to_owned(),
        },
        _ => "give that".to_owned(),
    }
}

/// A table with only the fields it needs, the text at hand in the first of them: `{ shade = "J9-mist", parts = 1 }`.
fn example(node: &Node, schema: &Value) -> Option<String> {
    let text = node.text()?;
    let properties = schema.get("properties")?.as_object()?;
    let mut fields = Vec::new();
    for name in required(schema) {
        let value = match type_name(properties.get(name)?)? {
            "string" if fields.is_empty() => format!("\"{text}\""),
            "number" | "integer" => "1".to_owned(),
            _ => return None,
        };
        fields.push(format!("{name} = {value}"));
    }
    (!fields.is_empty()).then(|| format!("{{ {} }}", fields.join(", ")))
}
