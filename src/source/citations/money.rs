//! Sources cited by the `money` rules.

use crate::source::Citation;

/// In the order of the register.
pub const CITATIONS: &[Citation] = &[];
