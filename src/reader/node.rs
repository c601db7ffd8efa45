use crate::text::Position;
use serde_json::{Map, Number, Value};

/// A value that remembers where it stands, whatever the file format was.
///
/// # Example
///
/// ```
/// use foilwork::reader::{Kind, Node};
///
/// let node = |kind| Node { at: None, kind };
/// let name = node(Kind::Text("crown".into()));
/// let bowls = node(Kind::List(vec![name, node(Kind::Number(80.0, None))]));
/// let tree = node(Kind::Table(vec![("bowls".into(), None, bowls), ("who".into(), None, node(Kind::Null))]));
///
/// assert!(tree.get("who").is_none()); // null counts as left out
/// let bowls = tree.get("bowls").map(Node::items).unwrap_or_default();
/// assert_eq!((bowls[0].text(), bowls[0].kind_name()), (Some("crown"), "text"));
/// assert_eq!((bowls[1].number(), bowls[1].text()), (Some(80.0), None));
/// assert_eq!(tree.to_json()["bowls"][0], "crown");
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// Where it begins; `None` for a value that comes from no text.
    pub at: Option<Position>,
    /// What it is.
    pub kind: Kind,
}

/// The kinds that TOML and JSON share. TOML dates arrive as text.
#[derive(Debug, Clone, PartialEq)]
pub enum Kind {
    /// JSON `null`.
    Null,
    /// `true` or `false`.
    Flag(bool),
    /// A number, with the text it was written as where it comes from a text.
    Number(f64, Option<String>),
    /// Text.
    Text(String),
    /// A list.
    List(Vec<Node>),
    /// A table: the key, where the key stands, and the value.
    Table(Vec<(String, Option<Position>, Node)>),
}

impl Node {
    /// The tree of a JSON value, without places.
    pub(super) fn of_json(value: &Value) -> Self {
        let kind = match value {
            Value::Null => Kind::Null,
            Value::Bool(flag) => Kind::Flag(*flag),
            Value::Number(number) => Kind::Number(number.as_f64().unwrap_or(f64::NAN), Some(number.to_string())),
            Value::String(text) => Kind::Text(text.clone()),
            Value::Array(items) => Kind::List(items.iter().map(Self::of_json).collect()),
            Value::Object(fields) => {
                Kind::Table(fields.iter().map(|(key, inner)| (key.clone(), None, Self::of_json(inner))).collect())
            }
        };
        Self { at: None, kind }
    }

    /// The tree of a TOML value, without places.
    pub(super) fn of_toml(value: toml::Value) -> Self {
        let kind = match value {
            toml::Value::Boolean(flag) => Kind::Flag(flag),
            toml::Value::Integer(whole) => Kind::Number(whole as f64, None),
            toml::Value::Float(number) => Kind::Number(number, None),
            toml::Value::String(text) => Kind::Text(text),
            toml::Value::Datetime(moment) => Kind::Text(moment.to_string()),
            toml::Value::Array(items) => Kind::List(items.into_iter().map(Self::of_toml).collect()),
            toml::Value::Table(fields) => {
                Kind::Table(fields.into_iter().map(|(key, inner)| (key, None, Self::of_toml(inner))).collect())
            }
        };
        Self { at: None, kind }
    }

    /// The value under a key of a table; `null` counts as left out.
    pub fn get(&self, key: &str) -> Option<&Node> {
        let Kind::Table(entries) = &self.kind else { return None };
        let found = entries.iter().find(|(k, ..)| k == key).map(|(.., node)| node);
        found.filter(|node| node.kind != Kind::Null)
    }

    /// The elements of a list; empty for any other kind.
    pub fn items(&self) -> &[Node] {
        match &self.kind {
            Kind::List(items) => items,
            _ => &[],
        }
    }

    /// The text, if it is text.
    pub fn text(&self) -> Option<&str> {
        match &self.kind {
            Kind::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The number, if it is a number.
    pub fn number(&self) -> Option<f64> {
        match self.kind {
            Kind::Number(value, _) => Some(value),
            _ => None,
        }
    }

    /// What a message calls this kind.
    pub fn kind_name(&self) -> &'static str {
        match self.kind {
            Kind::Null => "nothing",
            Kind::Flag(_) => "true/false",
            Kind::Number(..) => "a number",
            Kind::Text(_) => "text",
            Kind::List(_) => "a list",
            Kind::Table(_) => "a table",
        }
    }

    /// The same value without its places, for `serde`; fields that are `null` are left out.
    pub fn to_json(&self) -> Value {
        match &self.kind {
            Kind::Null => Value::Null,
            Kind::Flag(flag) => Value::Bool(*flag),
            // `8.0` is a whole number too; up to 2^53 nothing is lost.
            Kind::Number(value, _) if value.fract() == 0.0 && value.abs() < 9e15 => Value::from(*value as i64),
            Kind::Number(value, _) => Number::from_f64(*value).map_or(Value::Null, Value::Number),
            Kind::Text(text) => Value::String(text.clone()),
            Kind::List(items) => items.iter().map(Node::to_json).collect(),
            Kind::Table(entries) => {
                let stated = entries.iter().filter(|(.., v)| v.kind != Kind::Null);
                Value::Object(stated.map(|(k, _, v)| (k.clone(), v.to_json())).collect::<Map<_, _>>())
            }
        }
    }
}
