//! Reading a service file: TOML or JSON in, the checked shape out, or everything that is wrong with it.

mod amounts;
mod check;
mod locate;
mod node;
mod problem;
mod read_json;
mod read_toml;
mod references;
mod schema;
mod text_fields;

pub use problem::{Problem, Problems};
pub use schema::schema;
pub(in crate::service) use text_fields::Moment;

use super::shape::ServiceFile;
use crate::text::Lines;
use check::Checker;
use node::{Kind, Node};

/// How a service file is written; both have the same shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// TOML 1.1.
    Toml,
    /// JSON (RFC 8259).
    Json,
}

impl Format {
    /// The format a file's name speaks of: `.json` is JSON, everything else TOML.
    #[must_use]
    pub fn of_name(name: &str) -> Self {
        if name.to_ascii_lowercase().ends_with(".json") { Self::Json } else { Self::Toml }
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
/// use foilwork::service::{Format, parse};
///
/// let problems = parse("format = 2\n[service]\ntitle = \"\"", Format::Toml).unwrap_err();
/// assert!(problems.to_string().contains("line 1: format: 2 is out of range: give 1"));
/// assert!(problems.to_string().contains("line 3: service.title: empty text"));
/// ```
pub fn parse(text: &str, format: Format) -> Result<ServiceFile, Problems> {
    let (root, mut problems) = tree(text, format);
    // After a syntax error the rest of the tree is a guess: what it lacks may be there.
    if problems.is_empty() {
        let schema = schema::derived();
        let mut checker = Checker { root: schema, problems: Vec::new() };
        checker.check(&root, schema, "");
        problems.append(&mut checker.problems);
        problems.extend(references::check(&root));
    }
    if !problems.is_empty() {
        return Err(Problems::sorted(problems));
    }
    serde_json::from_value(root.to_json()).map_err(|error| {
        // Unreachable while the schema is derived from the shape; said rather than panicked about.
        Problems(vec![Problem { at: None, field: String::new(), message: error.to_string() }])
    })
}

/// The text as a tree with places, and what is wrong with its syntax.
fn tree(text: &str, format: Format) -> (Node, Vec<Problem>) {
    // Spreadsheet programs like to put a byte order mark in front.
    let lines = Lines::of(text.strip_prefix('\u{feff}').unwrap_or(text));
    match format {
        Format::Toml => read_toml::read(&lines),
        Format::Json => read_json::read(&lines),
    }
}
