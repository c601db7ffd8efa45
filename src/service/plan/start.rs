use crate::{quantity::Duration, service::file::Moment};
use jiff::{
    SignedDuration,
    civil::{Date, DateTime},
};
use schemars::JsonSchema;
use serde::Serialize;
use std::fmt;

/// When something is, on the salon clock: a day, or a day with its time. No time of day is made up for a bare day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum Start {
    /// The time of day is stated.
    At(#[schemars(with = "String")] DateTime),
    /// Only the day is stated.
    Day(#[schemars(with = "String")] Date),
}

impl Start {
    pub(super) fn of(moment: Moment) -> Self {
        if moment.earliest == moment.latest { Self::At(moment.earliest) } else { Self::Day(moment.earliest.date()) }
    }

    /// The earliest it can be: midnight of a bare day.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Duration, service::Start};
    /// use jiff::civil::date;
    ///
    /// let day = date(2026, 11, 25);
    /// let (bare, timed) = (Start::Day(day), Start::At(day.at(10, 5, 0, 0)));
    /// assert_eq!((bare.earliest(), bare.latest()), (day.at(0, 0, 0, 0), day.at(23, 59, 59, 0)));
    /// assert_eq!(timed.plus(Duration::from_min(35.0)?), Some(day.at(10, 40, 0, 0)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn earliest(self) -> DateTime {
        match self {
            Self::At(at) => at,
            Self::Day(day) => day.at(0, 0, 0, 0),
        }
    }

    /// So much later, where the time of day is stated.
    #[must_use]
    pub fn plus(self, time: Duration) -> Option<DateTime> {
        let Self::At(at) = self else { return None };
        let time = SignedDuration::try_from_secs_f64(time.min() * 60.0).unwrap_or_default();
        Some(at.saturating_add(time))
    }

    /// The latest it can be: the last second of a bare day.
    #[must_use]
    pub fn latest(self) -> DateTime {
        match self {
            Self::At(at) => at,
            Self::Day(day) => day.at(23, 59, 59, 0),
        }
    }
}

impl fmt::Display for Start {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::At(at) if at.second() == 0 => write!(f, "{}", at.strftime("%Y-%m-%d %H:%M")),
            Self::At(at) => write!(f, "{}", at.strftime("%Y-%m-%d %H:%M:%S")),
            Self::Day(day) => write!(f, "{day}"),
        }
    }
}
