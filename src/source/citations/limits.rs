//! Sources cited by the `limits` rules.

use crate::source::Citation;

/// In the order of the register.
pub const CITATIONS: &[Citation] = &[];
