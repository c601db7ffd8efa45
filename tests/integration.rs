//! One test binary: published values, properties, and the public interface, each room in its own file.

#![allow(clippy::pedantic, reason = "a table of cases may be long, and a test spells out what it means")]

mod api;
mod properties;
mod published;
