//! A day as a row of steps, each with its begin.

/// What is done to a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Does {
    /// Mixed and put on.
    PutOn,
    /// Rinsed.
    Rinse,
}

/// A step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Step {
    pub(super) does: Does,
    pub(super) unit: usize,
    pub(super) person: usize,
    pub(super) begin: i64,
}

/// Steps and when the last of them is over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Steps {
    pub(super) steps: Vec<Step>,
    pub(super) finish: i64,
}
