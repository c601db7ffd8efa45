use super::{
    exponent::{decay, logarithm_of_any_ratio, logarithm_of_ratio},
    formula::{from_ww_percent, to_ww_percent},
    molar::{OXYGEN_G_PER_MOL, PEROXIDE_G_PER_MOL},
    strength::{Strength, StrengthQuantity},
    unit::StrengthUnit,
};
use crate::{
    quantity::{Duration, InvalidQuantity, LossRate},
    source::Interval,
};

/// Why ageing cannot be worked out.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum AgeingError {
    /// Peroxide does not form in the bottle.
    #[error("the strength rose from {first} to {later}: peroxide only decays, so check the two readings")]
    Rising {
        /// The highest the first reading can be.
        first: Strength,
        /// The lowest the later reading can be.
        later: Strength,
    },
    /// No wait.
    #[error("{fresh} is below {wanted} already: ask for a strength below it")]
    AlreadyBelow {
        /// The strength now.
        fresh: Strength,
        /// The strength waited for.
        wanted: Strength,
    },
    /// A zero to divide by.
    #[error("the {what} is zero: give more than 0")]
    Nothing {
        /// What.
        what: &'static str,
    },
    /// A result that cannot be.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}

/// The strength after storage, by first-order loss at a rate that the user measured.
///
/// There is no default rate: it depends on the stabiliser, the bottle, light and warmth, and holds only for the storage
/// it was measured in. [`loss_rate`] gets it from two assays. In a strength by mass the oxygen that leaves the bottle is
/// allowed for; a strength by volume takes the volume as unchanged.
///
/// # Units
///
/// Strength in its own unit, rate per day; the bounds of both are carried over.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::strength_after, quantity::{AmountConcentration, Duration, LossRate}, source::Interval};
///
/// // OpenStax: half is lost in 6.00 h at 40 C, a catalysed solution and no developer.
/// let rate = Interval::exact(LossRate::from_half_life(Duration::from_h(6.0)?)?);
/// let fresh = Interval::exact(AmountConcentration::from_mol_per_l(1.0)?);
/// let later = strength_after(fresh, rate, Duration::from_h(18.0)?);
/// assert_eq!(format!("{:.3}", later.best()), "0.125 mol/L");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// First-order decay; `2 H2O2 -> 2 H2O + O2`.
pub fn strength_after<Q: StrengthQuantity>(
    fresh: Interval<Q>,
    rate: Interval<LossRate>,
    elapsed: Duration,
) -> Interval<Q> {
    fresh.combine(rate, |fresh, rate| {
        Q::nearest(aged(fresh.in_unit(), left(rate.per_day(), elapsed.days()), Q::STRENGTH_UNIT))
    })
}

/// The rate of loss between two assays of one bottle.
///
/// # Errors
///
/// [`AgeingError`] when the strength rose by more than the bounds allow, or no time passed.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::loss_rate, quantity::{AmountConcentration, Duration}, source::Interval};
///
/// let [first, later] = [0.24, 0.060].map(AmountConcentration::from_mol_per_l);
/// let rate = loss_rate(Interval::exact(first?), Interval::exact(later?), Duration::from_min(282.0)?)?;
/// assert_eq!(format!("{:.1} min", rate.best().half_life()?.h() * 60.0), "141.0 min");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn loss_rate<Q: StrengthQuantity + Into<Strength>>(
    first: Interval<Q>,
    later: Interval<Q>,
    elapsed: Duration,
) -> Result<Interval<LossRate>, AgeingError> {
    if elapsed.days() == 0.0 {
        return Err(AgeingError::Nothing { what: "time between the assays" });
    }
    if first.low().in_unit() == 0.0 || later.low().in_unit() == 0.0 {
        return Err(AgeingError::Nothing { what: "lower bound of a strength" });
    }
    if later.low() > first.high() {
        return Err(AgeingError::Rising { first: first.high().into(), later: later.low().into() });
    }
    // Within the bounds it may be that none was lost, but none was gained.
    Ok(first.try_combine(later, |first, later| {
        LossRate::from_per_day(rate_of(lost_of_any(first.in_unit(), later.in_unit(), Q::STRENGTH_UNIT), elapsed.days()))
    })?)
}

/// How long until a bottle has fallen to a strength.
///
/// A bottle that may be at that strength already, within its bounds, has a lower bound of no time at all.
///
/// # Units
///
/// Strengths in their own unit, rate per day.
///
/// # Errors
///
/// [`AgeingError`] when the best estimate is already below, or the rate or the strength to wait for may be zero.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::time_until, quantity::{AmountConcentration, LossRate}, source::Interval};
///
/// let [fresh, wanted] = [1.0, 0.5].map(AmountConcentration::from_mol_per_l);
/// let rate = Interval::exact(LossRate::from_per_day(0.1)?);
/// let wait = time_until(Interval::exact(fresh?), wanted?, rate)?;
/// assert_eq!(format!("{:.2}", wait.best().days()), "6.93"); // ln 2 / 0.1
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// As [`strength_after`], solved for the time.
pub fn time_until<Q: StrengthQuantity + Into<Strength>>(
    fresh: Interval<Q>,
    wanted: Q,
    rate: Interval<LossRate>,
) -> Result<Interval<Duration>, AgeingError> {
    if rate.low().per_day() == 0.0 {
        return Err(AgeingError::Nothing { what: "loss rate" });
    }
    if wanted.in_unit() == 0.0 {
        return Err(AgeingError::Nothing { what: "strength to wait for" });
    }
    if wanted > fresh.best() {
        return Err(AgeingError::AlreadyBelow { fresh: fresh.best().into(), wanted: wanted.into() });
    }
    let time = |fresh: Q, rate: LossRate| {
        // Where the lower bound is below already, the wait is over.
        let lost = if fresh > wanted { lost_of_any(fresh.in_unit(), wanted.in_unit(), Q::STRENGTH_UNIT) } else { 0.0 };
        // The time that leaves a share at a rate is the rate that leaves it after a time, with the two in each other's place.
        Duration::from_days(rate_of(lost, rate.per_day()))
    };
    Ok(fresh.try_combine(rate, time)?)
}

/// Oxygen lost for each gram of peroxide that decays.
const OXYGEN_SHARE: f64 = OXYGEN_G_PER_MOL / PEROXIDE_G_PER_MOL;

/// The strength in a unit once a share of the peroxide is left, before it is moved into its range.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(crate) fn aged(fresh: f64, left: f64, unit: StrengthUnit) -> f64 {
    if !unit.is_by_mass() {
        return fresh * left;
    }
    let before = to_ww_percent(fresh, unit);
    let after = before * left / (1.0 - before * (1.0 - left) * (OXYGEN_SHARE / 100.0));
    let later = from_ww_percent(after, unit);
    // There and back may be off in the last place: of what nothing is lost all is left, and never more.
    let later = if later < fresh { later } else { fresh };
    if left < 1.0 { later } else { fresh }
}

/// How far the peroxide has fallen between two strengths, the first over the later as a natural logarithm: from it follows the
/// share that [`aged`] takes. Of strengths from 1e-200, and as exact for two that are nearly equal.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(crate) fn lost(first: f64, later: f64, unit: StrengthUnit) -> f64 {
    let [over, under] = parts_of_share(first, later, unit);
    -logarithm_of_ratio(over, under)
}

/// The same of any strengths above zero.
fn lost_of_any(first: f64, later: f64, unit: StrengthUnit) -> f64 {
    let [over, under] = parts_of_share(first, later, unit);
    -logarithm_of_any_ratio(over, under)
}

/// The share of the peroxide left between two strengths, as what is divided and by what.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn parts_of_share(first: f64, later: f64, unit: StrengthUnit) -> [f64; 2] {
    if !unit.is_by_mass() {
        return [later, first];
    }
    let [before, after] = [first, later].map(|strength| to_ww_percent(strength, unit));
    [after * (100.0 - before * OXYGEN_SHARE), before * (100.0 - after * OXYGEN_SHARE)]
}

/// What is left after some days at a rate per day.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(crate) fn left(rate_per_day: f64, days: f64) -> f64 {
    decay(rate_per_day * days)
}

/// The rate per day at which so much is lost in some days; none below zero, and no negative zero.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(crate) fn rate_of(lost: f64, days: f64) -> f64 {
    let rate = lost / days;
    if rate > 0.0 { rate } else { 0.0 }
}
