use super::{Start, timeline::Timeline};
use crate::quantity::{Duration, Quantity};
use jiff::civil::DateTime;
use schemars::JsonSchema;
use serde::Serialize;

/// How long the chair is taken: to the last rinse, then the toners, then the other work.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct ChairTime {
    /// From the first brush to the last rinse of a section.
    #[serde(rename = "sections_min")]
    pub sections: Duration,
    /// Of that, steps before the colour; 0 without any.
    #[serde(rename = "first_steps_min")]
    pub first_steps: Duration,
    /// Toners and root shadow, from the end of that rinse.
    #[serde(rename = "after_rinse_min")]
    pub after_rinse: Duration,
    /// Consultation, rinsing, drying, where that is stated.
    #[serde(rename = "other_work_min")]
    pub other_work: Option<Duration>,
    /// All of it.
    #[serde(rename = "total_min")]
    pub total: Duration,
}

impl ChairTime {
    pub(super) fn of(timeline: &Timeline, first_steps: Duration, other_work_min: Option<f64>) -> Self {
        let (sections, after_rinse) = (timeline.last_rinse(), timeline.after_rinse());
        let other_work = other_work_min.map(Duration::nearest);
        let total = sections + after_rinse + other_work.unwrap_or(Duration::ZERO);
        Self { sections, first_steps, after_rinse, other_work, total }
    }

    /// When the guest leaves the chair, where the time of day of the start is stated and all goes as planned.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Duration, service::{ChairTime, Start}};
    /// use jiff::civil::date;
    ///
    /// let min = Duration::from_min;
    /// let chair = ChairTime { first_steps: min(0.0)?, sections: min(80.0)?, after_rinse: min(10.0)?, other_work: None, total: min(90.0)? };
    /// let day = date(2026, 11, 25);
    /// assert_eq!(chair.finish(Start::At(day.at(10, 0, 0, 0))), Some(day.at(11, 30, 0, 0)));
    /// assert_eq!(chair.finish(Start::Day(day)), None); // no time of day is made up
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn finish(&self, start: Start) -> Option<DateTime> {
        start.plus(self.total)
    }
}
