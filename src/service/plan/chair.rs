//! How long the chair is taken, on one clock for cost, price and booking.

use super::{DayPlan, Start, first_steps::FirstSteps, sections::Sections, timeline::Timeline};
use crate::{
    choice::choice,
    quantity::{Duration, Quantity},
    service::request::Request,
    source::Basis,
};
use jiff::civil::DateTime;
use schemars::JsonSchema;
use serde::Serialize;

/// Appointments are booked in steps of so many minutes.
const BOOKED_IN_MIN: f64 = 15.0;

/// The small work that a day counts, where the file states its minutes.
const SMALL_WORK: [&str; 4] =
    ["salon.mix_bowl_min", "salon.look_min", "salon.rinse_section_min", "salon.basin_walk_min"];

choice! {
    /// What the time in the chair counts.
    ChairClock: "clock" {
        /// The day in its best order: bowls, looks, walks and rinses besides painting and development.
        Day = "day" => "the day in its best order, with bowls, looks, walks and rinses",
        /// The order of the sheet, where no day is laid out: painting and development alone.
        Sheet = "sheet" => "the order of the sheet, with painting and development alone",
    }
}

/// How long the chair is taken: to the last rinse, then the toners, then the other work. Cost, price and booking all rest on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct ChairTime {
    /// By which clock all of this is told.
    pub clock: ChairClock,
    /// From the first work on the guest to the last rinse of a section.
    #[serde(rename = "sections_min")]
    pub sections: Duration,
    /// Of that, steps before the colour, by the day with the bowl of the first; 0 without any.
    #[serde(rename = "first_steps_min")]
    pub first_steps: Duration,
    /// Toners and root shadow, from the end of that rinse.
    #[serde(rename = "after_rinse_min")]
    pub after_rinse: Duration,
    /// Consultation, drying, where that is stated.
    #[serde(rename = "other_work_min")]
    pub other_work: Option<Duration>,
    /// All of it.
    #[serde(rename = "total_min")]
    pub total: Duration,
    /// How long hands are at work on the guest, those of everybody together: what is paid as labour. While the mix alone works,
    /// the chair is taken and no hand is.
    #[serde(rename = "hands_on_min")]
    pub hands_on: Duration,
    /// What both rest on: assumed where bowls, looks, walks or rinses are counted at minutes that the file does not state, with a
    /// step before the colour, and where the minutes of applying follow from assumed ones for a foil.
    pub basis: Basis,
}

impl ChairTime {
    /// By the day, where one with a finish is laid out; else by the running order.
    pub(super) fn of(
        request: &Request,
        (sections, first): (&Sections<'_>, &FirstSteps),
        timeline: &Timeline,
        day: Option<&DayPlan>,
    ) -> Self {
        let other_work = request.file.service.other_work_min.map(Duration::nearest);
        let mut first_steps = first.over;
        let (clock, to_rinse, after_rinse, hands) = match day.and_then(by_day) {
            Some((to_rinse, after, hands)) => {
                let before: f64 = first.planned().map(|step| step.hands.best().min()).sum();
                // The day counts from the first work, which is a bowl.
                first_steps = first.mixed_before + first.over;
                (ChairClock::Day, first_steps + to_rinse, after, before + hands)
            }
            None => {
                let before: f64 = first.planned().map(|step| step.apply.best().min()).sum();
                let applying: f64 = sections.iter().map(|work| work.task.apply.min()).sum();
                (ChairClock::Sheet, timeline.last_rinse(), timeline.after_rinse(), before + applying)
            }
        };
        let other = other_work.unwrap_or(Duration::ZERO);
        let small_work = || request.defaults.iter().any(|used| SMALL_WORK.contains(&used.field.as_str()));
        // How long a step before the colour takes is assumed.
        let assumed = first.over > Duration::ZERO || (clock == ChairClock::Day && small_work());
        let own = if assumed { Basis::Assumed } else { Basis::Stated };
        // Minutes that nobody stated may follow from the foils.
        let applying = sections.iter().filter_map(|work| Some(work.task.applying.as_ref()?.basis));
        let basis = applying.fold(own, Basis::weaker);
        Self {
            clock,
            sections: to_rinse,
            first_steps,
            after_rinse,
            other_work,
            total: to_rinse + after_rinse + other,
            hands_on: Duration::nearest(hands + other.min()),
            basis,
        }
    }

    /// How long to book: all of it, in whole quarters of an hour.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Duration, service::plan_text, reader::Format};
    ///
    /// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
    /// let (book, spare) = (plan.chair.book(), Duration::from_min(15.0)?);
    /// assert!(book.min() % 15.0 == 0.0 && book >= plan.chair.total && book < plan.chair.total + spare);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn book(&self) -> Duration {
        Duration::nearest((self.total.min() / BOOKED_IN_MIN - 1e-9).ceil() * BOOKED_IN_MIN)
    }

    /// When the guest leaves the chair, where the time of day of the start is stated and all goes as planned.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Duration, service::{ChairClock, ChairTime, Start}, source::Basis};
    /// use jiff::civil::date;
    ///
    /// let min = Duration::from_min;
    /// let (sections, after_rinse, total, hands_on) = (min(80.0)?, min(10.0)?, min(90.0)?, min(45.0)?);
    /// let (clock, first_steps, other_work, basis) = (ChairClock::Day, min(0.0)?, None, Basis::Stated);
    /// let chair = ChairTime { clock, sections, first_steps, after_rinse, other_work, total, hands_on, basis };
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

/// To the last rinse, then toners and root shadow, and the minutes of all hands, in the best order; none without one.
fn by_day(day: &DayPlan) -> Option<(Duration, Duration, f64)> {
    let (best, finish) = (day.proposed.as_ref()?, day.finish?);
    let orders = [Some(best), day.after_rinse.as_ref()].into_iter().flatten();
    let hands = orders.flat_map(|order| &order.hands).map(|hands| hands.min()).sum();
    Some((best.finish, Duration::nearest(finish.min() - best.finish.min()), hands))
}
