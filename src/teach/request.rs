use super::{Difficulty, Topic};
use crate::money::Currency;

/// What a sheet is to hold.
#[derive(Debug, Clone, PartialEq)]
pub struct WorksheetRequest {
    /// The same seed gives the same sheet.
    pub seed: u64,
    /// The topics, in turn; none means all of them.
    pub topics: Vec<Topic>,
    /// How much the problems ask for; none mixes.
    pub difficulty: Option<Difficulty>,
    /// How many problems.
    pub count: usize,
    /// The currency of prices.
    pub currency: Currency,
}

impl WorksheetRequest {
    /// The most problems of one sheet.
    pub const MOST: usize = 200;

    /// Ten problems of all topics in euros.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::teach::{Topic, WorksheetRequest, worksheet};
    ///
    /// let request = WorksheetRequest { topics: vec![Topic::Dilution], count: 3, ..WorksheetRequest::new(7) };
    /// let sheet = worksheet(&request)?;
    /// assert!(sheet.exercises.iter().all(|exercise| exercise.topic == Topic::Dilution));
    /// assert_eq!(sheet, worksheet(&request)?);
    /// # Ok::<(), foilwork::teach::WorksheetError>(())
    /// ```
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self { seed, topics: Vec::new(), difficulty: None, count: 10, currency: Currency::EUR }
    }
}

/// Why there is no sheet.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum WorksheetError {
    /// Too many, or none.
    #[error("{count} problems: give 1 to {most}", most = WorksheetRequest::MOST)]
    Count {
        /// How many were asked for.
        count: usize,
    },
    /// No numbers of a problem gave one answer.
    #[error("no numbers found for a problem of {topic} with the seed {seed} (take another seed)")]
    NoNumbers {
        /// The topic.
        topic: Topic,
        /// The seed.
        seed: u64,
    },
}
