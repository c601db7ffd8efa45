use super::{Group, GrowthRate, Weeks, group};
use crate::{
    quantity::{Length, Quantity},
    source::{Interval, Sourced},
};

/// How fast scalp hair grows: the mean of the group, and where 80 of 100 people lie.
///
/// # Example
///
/// ```
/// use foilwork::hair::{Group, growth};
///
/// assert_eq!(format!("{:.2}", growth(Some(Group::European)).value.best()), "1.12 cm/month");
/// assert!(growth(None).value.low() < growth(Some(Group::African)).value.best());
/// ```
///
/// # Source
///
/// Citations `growth-by-group` and, without a group, `growth-review` with the bounds of all groups.
#[must_use]
pub fn growth(group: Option<Group>) -> Sourced<Interval<GrowthRate>> {
    group::growth(group)
}

/// The regrowth after some weeks.
///
/// # Example
///
/// ```
/// use foilwork::{hair::{GrowthRate, Weeks, grown}, source::Interval};
///
/// let rate = Interval::exact(GrowthRate::from_cm_per_month(1.12)?);
/// assert_eq!(format!("{:.2}", grown(Weeks::from_weeks(8.0)?.into(), rate).best()), "2.06 cm");
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn grown(weeks: Interval<Weeks>, rate: Interval<GrowthRate>) -> Interval<Length> {
    weeks.combine(rate, |weeks, rate| Length::nearest(cm_grown(weeks.weeks(), rate.cm_per_week())))
}

/// The weeks after which so much has grown.
///
/// # Example
///
/// ```
/// use foilwork::{hair::{GrowthRate, weeks_to_grow}, quantity::Length, source::Interval};
///
/// let rate = Interval::exact(GrowthRate::from_cm_per_month(1.12)?);
/// assert_eq!(format!("{:.1}", weeks_to_grow(Length::from_cm(2.0)?.into(), rate).best()), "7.8 weeks");
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn weeks_to_grow(length: Interval<Length>, rate: Interval<GrowthRate>) -> Interval<Weeks> {
    length.combine(rate, |length, rate| Weeks::nearest(weeks_for(length.cm(), rate.cm_per_week())))
}

/// The centimetres that grow in some weeks.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(crate) fn cm_grown(weeks: f64, cm_per_week: f64) -> f64 {
    weeks * cm_per_week
}

/// The weeks that some centimetres take: the inverse of [`cm_grown`].
#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
pub(crate) fn weeks_for(cm: f64, cm_per_week: f64) -> f64 {
    cm / cm_per_week
}
