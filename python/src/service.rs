//! Wrappers of `foilwork::service` and of the command line.

use pyo3::prelude::*;
use std::ffi::OsString;

/// Run the command line with ``args`` (the first is the program's name) and return its exit status.
///
/// 0 fine, 1 the plan has blocking findings, 2 bad input.
#[pyfunction]
pub fn main(py: Python<'_>, args: Vec<OsString>) -> u8 {
    py.detach(|| foilwork::cli::run(args))
}
