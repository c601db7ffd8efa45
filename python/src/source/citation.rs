//! The register of citations.

use crate::{answer::answer, error::FoilworkError};
use foilwork::{choice, source};
use pyo3::prelude::*;

answer! {
    in "foilwork.source";
    /// One published source, or the plain words that there is none; made by :func:`register` and :func:`resolve`.
    Citation {
        /// Short key, unique in the register, as results name it.
        id: String,
        /// Author, title, year, table or clause: enough to find it again.
        text: String,
        /// How the cited text was seen: what is ``"from-memory"`` is unverified.
        consulted: String,
        /// Whether the source has been seen, so that a finding may rest on it.
        is_verified: bool,
    }
}

impl From<source::Citation> for Citation {
    fn from(cited: source::Citation) -> Self {
        Self {
            id: cited.id.to_owned(),
            text: cited.text.to_owned(),
            consulted: cited.consulted.code().to_owned(),
            is_verified: cited.is_verified(),
        }
    }
}

/// Every citation that foilwork rests on, in the order of the rooms.
///
/// Returns:
///     The citations; no two have one id.
///
/// Examples:
///     >>> from foilwork.source import register
///     >>> [cited.consulted for cited in register() if cited.id == "common-practice"]
///     ['common-practice']
#[pyfunction]
pub fn register() -> Vec<Citation> {
    source::register().map(|cited| (*cited).into()).collect()
}

/// The citation of an id, as results name it.
///
/// Args:
///     id: the short key, for example of ``Finding.sources``.
///
/// Returns:
///     The citation.
///
/// Raises:
///     FoilworkError: for an id that is not in the register, with the nearest one.
///
/// Examples:
///     >>> from foilwork.source import resolve
///     >>> resolve("common-practice").text
///     'common practice of the trade; no published source'
#[pyfunction]
pub fn resolve(id: &str) -> PyResult<Citation> {
    if let Some(cited) = source::register().find(|cited| cited.id == id) {
        return Ok((*cited).into());
    }
    let hint = choice::nearest(id, source::register().map(|cited| cited.id));
    let hint = hint.map_or_else(String::new, |near| format!(" (did you mean {near:?}?)"));
    Err(FoilworkError::new_err(format!("no citation has the id {id:?}{hint}")))
}
