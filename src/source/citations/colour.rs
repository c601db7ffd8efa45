//! Sources cited by the `colour` rules.

use crate::source::Citation;

/// In the order of the register.
pub const CITATIONS: &[Citation] = &[];
