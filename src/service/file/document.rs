use super::{amounts, references, text_fields};
use crate::{
    reader::{self, Document, Format, Node, Problems},
    service::shape::ServiceFile,
};
use serde_json::Value;
use std::sync::LazyLock;

impl Document for ServiceFile {
    fn schema() -> &'static Value {
        static SCHEMA: LazyLock<Value> = LazyLock::new(reader::derive::<ServiceFile>);
        &SCHEMA
    }

    fn text_field(reader: &str, text: &str) -> Result<(), String> {
        text_fields::check(reader, text)
    }

    fn check_whole(root: &Node, problems: &mut Problems) {
        references::check(root, problems);
        amounts::check(root, problems);
    }
}

/// Reads a service file.
///
/// # Errors
///
/// [`Problems`] holds everything that is wrong, in the order of the lines: each with its line, its field, the value,
/// the allowed range and the way out.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service};
///
/// let problems = service::parse("format = 2\n[service]\ntitle = \"\"", Format::Toml).unwrap_err();
/// assert!(problems.to_string().contains("line 1: format: 2 is out of range: give 1"));
/// assert!(problems.to_string().contains("line 3: service.title: empty text"));
/// ```
pub fn parse(text: &str, format: Format) -> Result<ServiceFile, Problems> {
    reader::parse(text, format)
}

/// The JSON Schema (draft 2020-12) of a service file, derived from its shape.
///
/// `foilwork schema` prints it; editors can use it while a file is written, and [`parse`] checks every file against it.
///
/// # Example
///
/// ```
/// let schema = foilwork::service::schema();
/// assert_eq!(schema["title"], "ServiceFile");
/// ```
#[must_use]
pub fn schema() -> Value {
    ServiceFile::schema().clone()
}
