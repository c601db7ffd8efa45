use super::number;
use crate::{
    quantity::{Duration, Quantity, Share},
    source::Interval,
};

/// An estimate in words, without its unit: `6` when it is exact, otherwise `6 (5.7 to 6.1)`.
///
/// # Example
///
/// ```
/// use foilwork::{quantity::Mass, source::Interval, text::range};
///
/// let g = Mass::from_g;
/// assert_eq!(range(&Interval::new(g(30.0)?, g(45.25)?, g(75.0)?)?, 1), "45.2 (30 to 75)");
/// assert_eq!(range(&Interval::exact(g(45.0)?), 1), "45");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn range<Q: Quantity>(interval: &Interval<Q>, decimals: usize) -> String {
    span(interval, |quantity| number(quantity.in_unit(), decimals))
}

/// An estimate in words with three figures of each value: more would say that it is known more closely than its bounds do.
///
/// # Example
///
/// ```
/// use foilwork::{quantity::Mass, source::Interval, text::rough};
///
/// let g = Mass::from_g;
/// assert_eq!(rough(&Interval::new(g(87_388.0)?, g(122_380.0)?, g(176_551.0)?)?), "122000 (87400 to 177000)");
/// assert_eq!(rough(&Interval::exact(g(468.0)?)), "468");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn rough<Q: Quantity>(interval: &Interval<Q>) -> String {
    span(interval, |quantity| {
        let value = quantity.in_unit();
        let unit = 10_f64.powf(value.abs().max(1.0).log10().floor() - 2.0).max(1.0);
        number((value / unit).round() * unit, 0)
    })
}

/// An estimate in words, each of its values written by `write`: one value when it is exact, otherwise
/// `best (low to high)`.
///
/// # Example
///
/// ```
/// use foilwork::{source::Interval, text::span};
///
/// let levels = Interval::new(6, 7, 9)?;
/// assert_eq!(span(&levels, |level| format!("level {level}")), "level 7 (level 6 to level 9)");
/// # Ok::<(), foilwork::source::InvalidInterval>(())
/// ```
#[must_use]
pub fn span<Q: Copy + PartialOrd>(interval: &Interval<Q>, write: impl Fn(Q) -> String) -> String {
    let best = write(interval.best());
    if interval.is_exact() { best } else { format!("{best} ({} to {})", write(interval.low()), write(interval.high())) }
}

/// A quantity without its unit, which the words around it say.
///
/// # Example
///
/// ```
/// use foilwork::{quantity::Mass, text::amount};
///
/// assert_eq!(amount(Mass::from_g(45.25)?, 1), "45.2");
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn amount<Q: Quantity>(quantity: Q, decimals: usize) -> String {
    number(quantity.in_unit(), decimals)
}

/// A chance in whole cases of a hundred; what is not certain is never written as certain.
///
/// # Example
///
/// ```
/// use foilwork::{quantity::Share, text::in_hundred};
///
/// let chance = |percent| Share::from_percent(percent).map(in_hundred);
/// assert_eq!(chance(26.4)?, "26");
/// assert_eq!((chance(99.5)?.as_str(), chance(0.5)?.as_str()), ("over 99", "under 1"));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn in_hundred(chance: Share) -> String {
    match chance.percent() {
        percent if percent <= 0.5 => "under 1".to_owned(),
        percent if percent >= 99.5 => "over 99".to_owned(),
        percent => number(percent, 0),
    }
}

/// Of a hundred, with the bounds where they say something else than the estimate.
pub(crate) fn of_hundred(chance: &Interval<Share>) -> String {
    let [low, best, high] = chance.to_array().map(in_hundred);
    if low == high { format!("{best} of 100") } else { format!("{best} ({low} to {high}) of 100") }
}

/// A minute of a clock, or minutes that are left, as they are shown: the whole ones that are over, for a later one would be beyond
/// what it bounds. What lacks only the last bits of a sum is whole.
pub(crate) fn whole_minutes(time: Duration) -> String {
    number((time.min() + 1e-6).floor(), 0)
}
