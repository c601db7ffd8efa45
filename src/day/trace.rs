use super::Timeline;
use crate::{
    quantity::{Duration, Quantity},
    source::{Basis, Interval, TracedResult},
    text::traced,
};

const FINISH_FORMULA: &str = "end of the last rinse";
const CARRIED_FORMULA: &str = "rinse - first strand on";

impl Timeline {
    /// How the finish, and the time that each section carries its mixture, come about.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{day::{Effort, Floor, SectionWork, arrange}, quantity::Duration};
    ///
    /// let min = |value| Duration::from_min(value);
    /// let nape = SectionWork::new("nape", min(15.0)?, min(35.0)?, min(60.0)?);
    /// let trail = arrange(&[nape], &[], &Floor::default(), Effort::Quick)?.trail();
    /// assert_eq!(trail[0].what, "nape: time of the first strand");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn trail(&self) -> Vec<TracedResult> {
        // Minutes of small work are assumed until somebody states them.
        let minutes = |what: String, time: Duration, formula| {
            TracedResult::new(what, Interval::exact(time.min()), Duration::UNIT, formula, Basis::Assumed)
        };
        let carried = self.sections.iter().map(|one| {
            let time = Duration::nearest(one.rinse.min() - one.start.min());
            minutes(format!("{}: time of the first strand", one.name), time, CARRIED_FORMULA).made_of([
                traced("rinse", Interval::exact(one.rinse)),
                traced("first strand on", Interval::exact(one.start)),
            ])
        });
        let ends = self.sections.iter().map(|one| traced(format!("{}, rinsed", one.name), Interval::exact(one.rinsed)));
        let each: Vec<String> = self.sections.iter().map(|one| one.rinsed.min().to_string()).collect();
        let worked = format!("largest ({})", each.join(", "));
        let finish = minutes("finish".to_owned(), self.finish, FINISH_FORMULA).working(worked).made_of(ends);
        carried.chain([finish]).collect()
    }
}
