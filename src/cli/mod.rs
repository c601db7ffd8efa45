//! The command line: the only room that reads files and prints.

use std::ffi::OsString;

/// Runs the command line with the given arguments (the first is the program's name) and returns the exit status.
#[must_use]
pub fn run(_args: Vec<OsString>) -> u8 {
    0
}
