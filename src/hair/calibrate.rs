use super::spread::agreed;
use crate::{
    quantity::{Mass, Quantity},
    source::Interval,
};

/// How well one use of a mix repeats another on the same hair: bounds of 80 of 100, as a factor (assumed).
const REPEATS_WITHIN: f64 = 1.2;

/// An amount as predicted, and as it was really used on this guest: both together, the narrower weighing more.
///
/// Give what was put on the hair, not what was mixed.
///
/// # Example
///
/// ```
/// use foilwork::{hair::calibrated, quantity::{Mass, Quantity}, source::Interval};
///
/// let predicted = Interval::new(Mass::from_g(60.0)?, Mass::from_g(100.0)?, Mass::from_g(170.0)?)?;
/// let now = calibrated(predicted, Mass::from_g(70.0)?);
/// assert!(now.best().g() > 70.0 && now.best().g() < 76.0);
/// assert!(now.high().g() / now.low().g() < 1.5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn calibrated(predicted: Interval<Mass>, used: Mass) -> Interval<Mass> {
    if used.g() > 0.0 && predicted.low().g() > 0.0 { agreed(predicted, as_used(used)) } else { predicted }
}

/// What a use says of the next one like it.
pub(crate) fn as_used(used: Mass) -> Interval<Mass> {
    let factor = Interval::ordered(1.0 / REPEATS_WITHIN, 1.0, REPEATS_WITHIN);
    factor.map(|factor| Mass::nearest(used.g() * factor))
}
