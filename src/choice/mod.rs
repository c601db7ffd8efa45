//! Words to choose from: one declaration gives an enum its code, words, list, parser, schema and error.

#[cfg(test)]
pub(crate) mod agrees;
mod choose;
mod nearest;
mod parse;
mod unknown;

pub use choose::Choice;
pub(crate) use choose::choice;
pub use nearest::nearest;
pub(crate) use parse::parse;
pub use unknown::UnknownChoice;
