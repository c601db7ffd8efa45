use super::{Format, Kind, Node, Problem, Problems, check::Checker, path::Path, read_json, read_toml};
use crate::text::{Lines, Position};
use schemars::{JsonSchema, generate::SchemaSettings};
use serde::{Serialize, de::DeserializeOwned};
use serde_json::{Value, json};

/// The most bytes of a file: the widest shop with ten thousand of everything is half of it.
const MOST_BYTES: usize = 8 << 20;

/// A file that foilwork reads: a shape of plain fields from which the schema is derived, and what a schema cannot say.
pub trait Document: JsonSchema + Serialize + DeserializeOwned + 'static {
    /// The JSON Schema of the file, derived once: [`derive`] makes it.
    fn schema() -> &'static Value;

    /// Reads a text field as the `x-parse` of its schema names it.
    ///
    /// # Errors
    ///
    /// What is wrong with the text, and what to write.
    fn text_field(reader: &str, text: &str) -> Result<(), String>;

    /// What a schema cannot say: names that must exist, names given twice, either-or fields.
    ///
    /// It works on whatever could be read, so that one broken table does not hide what is wrong with the next.
    fn check_whole(root: &Node, problems: &mut Problems);
}

/// Derives the JSON Schema (draft 2020-12) of a shape.
///
/// `forms` tells for each `x-parse` what an editor can know of its texts: keywords such as `pattern` or `enum`.
pub(crate) fn derive<T: JsonSchema>(forms: fn(&str) -> Option<(&'static str, Value)>) -> Value {
    let mut schema = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<T>().to_value();
    add_forms(&mut schema, forms);
    schema
}

fn add_forms(schema: &mut Value, forms: fn(&str) -> Option<(&'static str, Value)>) {
    match schema {
        Value::Object(keywords) => {
            if let Some((keyword, mut form)) = keywords.get("x-parse").and_then(Value::as_str).and_then(forms) {
                // A field that may be left out may be `null` in JSON.
                if let (Some(Value::Array(_)), Some(words)) = (keywords.get("type"), form.as_array_mut()) {
                    words.push(Value::Null);
                }
                keywords.insert(keyword.to_owned(), form);
            }
            keywords.values_mut().for_each(|inner| add_forms(inner, forms));
        }
        Value::Array(items) => items.iter_mut().for_each(|inner| add_forms(inner, forms)),
        _ => {}
    }
}

/// The schema of a table that has this field, neither `null` nor an empty list.
fn given(field: &str) -> Value {
    json!({ "required": [field], "properties": { field: { "not": { "enum": [null, []] } } } })
}

/// For `allOf` of a schema: exactly one of these fields is given.
pub(crate) fn one_of(fields: &[&str]) -> Value {
    json!({ "oneOf": fields.iter().map(|field| given(field)).collect::<Vec<_>>() })
}

/// For `allOf` of a schema: at most one of these fields is given.
pub(crate) fn at_most_one(fields: &[&str]) -> Value {
    let pairs = fields.iter().enumerate().flat_map(|(i, one)| {
        fields.iter().skip(i + 1).map(move |other| json!({ "allOf": [given(one), given(other)] }))
    });
    json!({ "not": { "anyOf": pairs.collect::<Vec<_>>() } })
}

/// Reads a file.
///
/// # Errors
///
/// [`Problems`] holds everything that is wrong, in the order of the lines: each with its line, its field, the value,
/// the allowed range and the way out.
///
/// # Example
///
/// ```
/// use foilwork::{reader::{Format, parse_document}, service::ServiceFile};
///
/// let problems = parse_document::<ServiceFile>("format = 2\n[service]\ntitle = \"\"", Format::Toml).unwrap_err();
/// assert!(problems.to_string().contains("line 1: format: 2 is out of range: give 1"));
/// assert!(problems.to_string().contains("line 3: service.title: empty text"));
/// ```
pub fn parse_document<T: Document>(text: &str, format: Format) -> Result<T, Problems> {
    let (root, problems) = tree(text, format);
    // After a syntax error the rest of the tree is a guess: what it lacks may be there.
    if !problems.is_empty() {
        return Err(Problems(problems).sorted());
    }
    read_tree(&root)
}

/// Reads a file that has been taken apart already, for example by another program; problems name no lines.
///
/// # Errors
///
/// [`Problems`], as for [`parse_document`].
///
/// # Example
///
/// ```
/// use foilwork::{reader::from_value, service::ServiceFile};
///
/// let problems = from_value::<ServiceFile>(&serde_json::json!({ "format": 2 })).unwrap_err();
/// assert!(problems.to_string().starts_with("format: 2 is out of range: give 1"));
/// ```
pub fn from_value<T: Document>(value: &Value) -> Result<T, Problems> {
    read_tree(&Node::of_json(value))
}

/// Holds a file that was put together in code against the same rules as a text.
///
/// # Errors
///
/// [`Problems`], as for [`parse_document`]; none names a line.
///
/// # Example
///
/// ```
/// use foilwork::{reader::{self, Format}, service::ServiceFile};
///
/// let text = std::fs::read_to_string("examples/soft-gradient.toml")?;
/// let mut file: ServiceFile = reader::parse_document(&text, Format::Toml)?;
/// file.analysis.white_percent = Some(300.0);
/// let problems = reader::validate(&file).unwrap_err();
/// assert_eq!(problems.to_string(), "analysis.white_percent: 300 % is out of range: give 0 to 100 %");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn validate<T: Document>(file: &T) -> Result<(), Problems> {
    // TOML knows every number that Rust has; JSON would turn one that is not finite into "left out".
    let value = toml::Value::try_from(file).map_err(|error| whole(error.to_string()))?;
    check_tree::<T>(&Node::of_toml(value))
}

/// The text under one key of the outermost table, where that has not the other one too.
pub(crate) fn field(text: &str, format: Format, key: &str, unless: &str) -> Option<String> {
    let (root, _) = tree(text, format);
    root.get(key).filter(|_| root.get(unless).is_none())?.text().map(str::to_owned)
}

/// Reads a file in which `old`, when it is there, gives way to `new`, whose value is at hand already.
pub(crate) fn parse_replacing<T: Document>(
    text: &str,
    format: Format,
    old: &str,
    new: &str,
    value: &impl Serialize,
) -> Result<T, Problems> {
    let (root, problems) = tree(text, format);
    if !problems.is_empty() {
        return Err(Problems(problems).sorted());
    }
    replacing(root, old, new, value)
}

/// The same of a file that has been taken apart already.
pub(crate) fn from_value_replacing<T: Document>(
    file: &Value,
    old: &str,
    new: &str,
    value: &impl Serialize,
) -> Result<T, Problems> {
    replacing(Node::of_json(file), old, new, value)
}

fn replacing<T: Document>(mut root: Node, old: &str, new: &str, value: &impl Serialize) -> Result<T, Problems> {
    if let Kind::Table(entries) = &mut root.kind
        && let Some((_, at, _)) = entries.iter().find(|(key, ..)| key == new)
    {
        let message = format!(
            "a {new} is given beside the file, and the file has one inside: leave one of them out, or name it in `{old}`"
        );
        return Err(Problems(vec![Problem { at: *at, field: new.to_owned(), message }]));
    }
    if let Kind::Table(entries) = &mut root.kind
        && let Some((key, _, node)) = entries.iter_mut().find(|(key, ..)| key == old)
    {
        *node = Node::of_toml(toml::Value::try_from(value).map_err(|error| whole(error.to_string()))?);
        new.clone_into(key);
    }
    read_tree(&root)
}

fn read_tree<T: Document>(root: &Node) -> Result<T, Problems> {
    check_tree::<T>(root)?;
    // Unreachable while the schema is derived from the shape; said rather than panicked about.
    serde_json::from_value(root.to_json()).map_err(|error| whole(error.to_string()))
}

fn check_tree<T: Document>(root: &Node) -> Result<(), Problems> {
    let schema = T::schema();
    let mut checker = Checker { root: schema, text_field: T::text_field, problems: Vec::new(), hidden: false };
    checker.check(root, schema, Path::Root);
    let mut problems = Problems(checker.problems);
    if !checker.hidden {
        T::check_whole(root, &mut problems);
    }
    problems.or(())
}

fn whole(message: String) -> Problems {
    Problems(vec![Problem { at: None, field: String::new(), message }])
}

/// The text as a tree with places, and what is wrong with its syntax.
pub(crate) fn tree(text: &str, format: Format) -> (Node, Vec<Problem>) {
    if text.len() > MOST_BYTES {
        let message = format!("the file has {} bytes: give at most {MOST_BYTES}, and split what is longer", text.len());
        let empty = Node { at: Some(Position::START), kind: Kind::Table(Vec::new()) };
        return (empty, vec![Problem { at: None, field: String::new(), message }]);
    }
    // Spreadsheet programs like to put a byte order mark in front.
    let lines = Lines::of(text.strip_prefix('\u{feff}').unwrap_or(text));
    match format {
        Format::Toml => read_toml::read(&lines),
        Format::Json => read_json::read(&lines),
    }
}
