//! Words to choose from: one declaration gives an enum its code, words, list, parser, schema and error.

#[cfg(test)]
pub(crate) mod agrees;
mod choose;
mod unknown;

pub use choose::Choice;
pub(crate) use choose::{choice, parse};
pub use unknown::{UnknownChoice, nearest};
