use super::{
    formula::{from_percent_ww, to_percent_ww},
    molar::{OXYGEN_G_PER_MOL, PEROXIDE_G_PER_MOL},
    strength::{Strength, StrengthQuantity},
};
use crate::{
    quantity::{Duration, InvalidQuantity, LossRate},
    source::{Interval, InvalidInterval},
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
    /// Nothing to wait for.
    #[error("{fresh} is below {wanted} already: ask for a strength below it")]
    AlreadyBelow {
        /// The strength now.
        fresh: Strength,
        /// The strength waited for.
        wanted: Strength,
    },
    /// Division by nothing.
    #[error("the {what} is zero: give more than 0")]
    Nothing {
        /// What.
        what: &'static str,
    },
    /// A result that cannot be.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
    /// Bounds out of order; does not happen with bounds in order.
    #[error(transparent)]
    Interval(#[from] InvalidInterval),
}

/// The strength after storage, by first-order loss at a rate that the user measured.
///
/// There is no default rate: it depends on the stabiliser, the bottle, light and warmth, and holds only for the storage
/// it was measured in. [`loss_rate`] gets it from two assays. In a strength by mass the oxygen that leaves the bottle is
/// allowed for; a strength by volume takes the volume as unchanged.
///
/// # Errors
///
/// [`AgeingError`] never with quantities in range.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::strength_after, quantity::{AmountConcentration, Duration, LossRate}, source::Interval};
///
/// // OpenStax: half is lost in 6.00 h at 40 C, a catalysed solution and no developer.
/// let rate = Interval::exact(LossRate::from_half_life(Duration::from_h(6.0)?)?);
/// let fresh = Interval::exact(AmountConcentration::from_mol_per_l(1.0)?);
/// let later = strength_after(fresh, rate, Duration::from_h(18.0)?)?;
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
) -> Result<Interval<Q>, AgeingError> {
    let at = |fresh: Q, rate: LossRate| aged(fresh, (-rate.per_day() * elapsed.days()).exp());
    Ok(Interval::new(at(fresh.low(), rate.high())?, at(fresh.best(), rate.best())?, at(fresh.high(), rate.low())?)?)
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
    if first.low().number() == 0.0 || later.low().number() == 0.0 {
        return Err(AgeingError::Nothing { what: "lower bound of a strength" });
    }
    if later.low() > first.high() {
        return Err(AgeingError::Rising { first: first.high().into(), later: later.low().into() });
    }
    // Within the bounds nothing may have been lost, but nothing was gained.
    let rate = |first: Q, later: Q| LossRate::from_per_day((-kept(first, later).ln() / elapsed.days()).max(0.0));
    Ok(Interval::new(
        rate(first.low(), later.high())?,
        rate(first.best(), later.best())?,
        rate(first.high(), later.low())?,
    )?)
}

/// How long until a bottle has fallen to a strength.
///
/// # Errors
///
/// [`AgeingError`] when it is already below, or nothing is lost.
pub fn time_until<Q: StrengthQuantity + Into<Strength>>(
    fresh: Q,
    wanted: Q,
    rate: LossRate,
) -> Result<Duration, AgeingError> {
    if rate.per_day() == 0.0 {
        return Err(AgeingError::Nothing { what: "loss rate" });
    }
    if wanted.number() == 0.0 {
        return Err(AgeingError::Nothing { what: "strength to wait for" });
    }
    if wanted > fresh {
        return Err(AgeingError::AlreadyBelow { fresh: fresh.into(), wanted: wanted.into() });
    }
    Ok(Duration::from_days((-kept(fresh, wanted).ln() / rate.per_day()).max(0.0))?)
}

/// Oxygen lost for each gram of peroxide that decays.
const OXYGEN_SHARE: f64 = OXYGEN_G_PER_MOL / PEROXIDE_G_PER_MOL;

/// The strength once a share of the peroxide is left.
fn aged<Q: StrengthQuantity>(fresh: Q, left: f64) -> Result<Q, InvalidQuantity> {
    if !Q::UNIT.is_by_mass() {
        return Q::checked(fresh.number() * left);
    }
    let before = to_percent_ww(fresh.number(), Q::UNIT) / 100.0;
    let after = before * left / (1.0 - before * (1.0 - left) * OXYGEN_SHARE);
    Q::checked(from_percent_ww(100.0 * after, Q::UNIT))
}

/// The share of the peroxide left between two strengths: the inverse of [`aged`].
fn kept<Q: StrengthQuantity>(first: Q, later: Q) -> f64 {
    if !Q::UNIT.is_by_mass() {
        return later.number() / first.number();
    }
    let [before, after] = [first, later].map(|strength| to_percent_ww(strength.number(), Q::UNIT) / 100.0);
    after * (1.0 - before * OXYGEN_SHARE) / (before * (1.0 - after * OXYGEN_SHARE))
}
