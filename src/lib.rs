//! Hair-colour chemistry: facts about hair, products and money go in; a checked, explained, weighable plan comes out.

#![forbid(unsafe_code)]
#![warn(missing_docs)]
#![cfg_attr(not(test), deny(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

pub mod business;
pub mod choice;
pub mod colour;
pub mod column;
pub mod finding;
pub mod limits;
pub mod mix;
pub mod money;
pub mod peroxide;
pub mod quantity;
pub mod reader;
pub mod scale;
pub mod service;
pub mod sheet;
pub mod source;
pub mod text;
pub mod toner;

#[cfg(feature = "cli")]
pub mod cli;

/// The examples of the README, run as doctests.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
pub struct Readme;
