//! Reading: TOML or JSON in, a checked shape out, or everything that is wrong with it, each with its line and field.
//!
//! The shape of a file is said once, as a Rust struct; its JSON Schema is derived from it, and every file is checked
//! against that schema. A file that was put together in code goes through the same checks ([`validate`]).
//!
//! - Read: [`parse_document`] a text, [`from_value`] plain data; [`Format`] says which of the two languages.
//! - Check: [`validate`] what was put together in code.
//! - Report: [`Problems`] holds all that is wrong, each a [`Problem`] with its [`Position`](crate::text::Position).
//! - Describe a file of your own: [`Document`].

mod check;
mod document;
mod format;
mod locate;
mod node;
mod path;
mod problem;
mod read_json;
mod read_toml;

pub use document::{Document, from_value, parse_document, validate};
pub use format::Format;
pub use node::{Kind, Node};
pub use problem::{Problem, Problems};

pub(crate) use document::{at_most_one, derive, field, from_value_replacing, one_of, parse_replacing, tree};
pub(crate) use problem::InField;
