use super::{HomeCare, KeptRecord, Lessons, Rebooking, Summary, day::day};
use crate::reader::{self, Document, Node, Problems};
use serde_json::Value;
use std::sync::LazyLock;

impl Document for KeptRecord {
    fn schema() -> &'static Value {
        static SCHEMA: LazyLock<Value> = LazyLock::new(|| reader::derive::<KeptRecord>(form));
        &SCHEMA
    }

    fn text_field(_reader: &str, text: &str) -> Result<(), String> {
        day(text).map(drop)
    }

    fn check_whole(root: &Node, problems: &mut Problems) {
        for (i, section) in root.get("section").map(Node::items).unwrap_or_default().iter().enumerate() {
            let grams = |field: &str| section.get(field).and_then(Node::number);
            if let (Some(weighed), Some(left)) = (grams("weighed_g"), grams("left_over_g"))
                && left > weighed
            {
                let message =
                    format!("{left} g are more than the {weighed} g that were weighed: correct one of the two");
                problems.say(section.at, &format!("section[{}].left_over_g", i + 1), message);
            }
        }
    }
}

fn form(_reader: &str) -> Option<(&'static str, Value)> {
    Some(("pattern", Value::from("^[0-9]{4}-[0-9]{2}-[0-9]{2}$")))
}

/// The JSON Schema (draft 2020-12) of a kept record: of a line of a file of records.
///
/// # Example
///
/// ```
/// assert_eq!(foilwork::history::record_schema()["title"], "KeptRecord");
/// ```
#[must_use]
pub fn record_schema() -> Value {
    KeptRecord::schema().clone()
}

/// The JSON Schema of what is made of records: a [`KeptRecord`], and in its definitions [`Summary`], [`Lessons`], [`Rebooking`]
/// and [`HomeCare`].
///
/// # Example
///
/// ```
/// assert!(foilwork::history::history_schema()["$defs"].get("Summary").is_some());
/// ```
#[must_use]
pub fn history_schema() -> Value {
    let settings = schemars::generate::SchemaSettings::draft2020_12().for_serialize();
    let mut generator = settings.into_generator();
    generator.subschema_for::<Summary>();
    generator.subschema_for::<Lessons>();
    generator.subschema_for::<Rebooking>();
    generator.subschema_for::<HomeCare>();
    generator.into_root_schema_for::<KeptRecord>().to_value()
}
