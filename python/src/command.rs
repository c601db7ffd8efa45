//! The command line.

use pyo3::prelude::*;
use std::ffi::OsString;

/// Run the command line with ``args`` (the first is the program's name) and return its exit status.
///
/// 0 fine, 1 the plan or the log says stop, 2 bad input. Prints to the process's own standard output.
///
/// Args:
///     args: the words of the command line.
///
/// Returns:
///     The exit status.
///
/// Examples:
///     >>> from foilwork._native import main
///     >>> main(["foilwork", "plan", "no-such-file.toml"])
///     2
#[pyfunction]
pub fn main(py: Python<'_>, args: Vec<OsString>) -> u8 {
    py.detach(|| foilwork::cli::run(args))
}
