//! Whether hair would have to become lighter, which no toner does.

use crate::colour::Difference;

/// Whether a target, by its difference from the hair, is lighter by more than two readings may differ.
pub(super) fn is_lighter(before: &Difference) -> bool {
    before.lighter > Difference::REPEAT_READINGS
}
