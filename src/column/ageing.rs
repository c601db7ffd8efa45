use super::{
    Cells, ColumnError, ColumnOutcome, by_unit,
    rows::{rows_by_law, within},
};
use crate::{
    peroxide::{
        AgeingError, StrengthUnit,
        kernel::{aged, kept, left, rate_of},
    },
    quantity::{Duration, InvalidQuantity, LossRate, Quantity},
};

/// Strengths after storage at rates that were measured, in the unit of the fresh ones.
///
/// # Units
///
/// Strengths in `unit`, rates per day, times in days.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, strengths_after}, peroxide::StrengthUnit};
///
/// let mut later = [0.0; 2];
/// let days = Cells::Each(&[0.0, 365.0]);
/// let outcome = strengths_after(6.0.into(), StrengthUnit::WvPercent, 0.0005.into(), days, &mut later)?;
/// assert_eq!((later.map(|wv| format!("{wv:.3}")), outcome.refused), (["6.000".into(), "4.999".into()], 0));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn strengths_after(
    fresh: Cells<'_>,
    unit: StrengthUnit,
    rates_per_day: Cells<'_>,
    days: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let (scale, strongest) = by_unit::scale_and_most(unit);
    let rule = by_unit::strength_after(unit);
    let law = move |[fresh, rate, days]: [f64; 3]| {
        let (fresh, elapsed) = (fresh * scale, stored(days));
        let later = aged(fresh, left(rate, elapsed), unit).max(0.0).min(strongest);
        // Zero has two signs: it is left to the rule.
        let good = (fresh > 0.0) & (fresh <= strongest) & within(rate, LossRate::MAX.per_day()) & lasts(days);
        ([later / scale], good)
    };
    rows_by_law([fresh, rates_per_day, days], [out], law, |[fresh, rate, days]| {
        let (rate, elapsed) = (LossRate::from_per_day(rate)?, Duration::from_days(days)?);
        Ok::<_, AgeingError>([rule(fresh * scale, rate, elapsed)? / scale])
    })
}

/// Rates of loss per day between assays.
///
/// # Units
///
/// Strengths in `unit`, times in days, rates per day.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, loss_rates}, peroxide::StrengthUnit};
///
/// let mut rates = [0.0; 2];
/// let later = Cells::Each(&[5.7, 6.1]); // a strength does not rise
/// let outcome = loss_rates(6.0.into(), later, StrengthUnit::WwPercent, 90.0.into(), &mut rates)?;
/// assert_eq!((format!("{:.6}", rates[0]), outcome.first), ("0.000586".into(), Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn loss_rates(
    first: Cells<'_>,
    later: Cells<'_>,
    unit: StrengthUnit,
    days: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let (scale, strongest) = by_unit::scale_and_most(unit);
    let rule = by_unit::loss_rate(unit);
    let law = move |[first, later, days]: [f64; 3]| {
        let (first, later) = (first * scale, later * scale);
        let rate = rate_of(kept(first, later, unit), stored(days));
        let good = (later > 0.0) & (later <= first) & (first <= strongest) & lasts(days) & (stored(days) > 0.0);
        ([rate], good & within(rate, LossRate::MAX.per_day()))
    };
    rows_by_law([first, later, days], [out], law, |[first, later, days]| {
        Ok::<_, AgeingError>([rule(first * scale, later * scale, Duration::from_days(days)?)?])
    })
}

/// Days until bottles have fallen to strengths.
///
/// # Units
///
/// Strengths in `unit`, rates per day, times in days.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, times_until}, peroxide::StrengthUnit};
///
/// let mut days = [0.0; 2];
/// let outcome = times_until(1.0.into(), Cells::Each(&[0.5, 2.0]), StrengthUnit::MolPerL, 0.1.into(), &mut days)?;
/// assert_eq!((format!("{:.2}", days[0]), outcome.first), ("6.93".into(), Some(1))); // ln 2 / 0.1
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn times_until(
    fresh: Cells<'_>,
    wanted: Cells<'_>,
    unit: StrengthUnit,
    rates_per_day: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let (scale, strongest) = by_unit::scale_and_most(unit);
    let rule = by_unit::time_until(unit);
    let law = move |[fresh, wanted, rate]: [f64; 3]| {
        let (fresh, wanted) = (fresh * scale, wanted * scale);
        let kept = if fresh > wanted { kept(fresh, wanted, unit) } else { 1.0 };
        let days = rate_of(kept, rate);
        let good = (wanted > 0.0) & (wanted <= fresh) & (fresh <= strongest);
        ([stored(days)], good & (rate > 0.0) & (rate <= LossRate::MAX.per_day()) & lasts(days))
    };
    rows_by_law([fresh, wanted, rates_per_day], [out], law, |[fresh, wanted, rate]| {
        Ok::<_, AgeingError>([rule(fresh * scale, wanted * scale, LossRate::from_per_day(rate)?)?])
    })
}

/// Rates of loss per day from half-lives in days: one is ln 2 over the other.
///
/// # Errors
///
/// [`ColumnError::Length`] unless both columns have the same rows.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, half_lives, rates_of_half_lives};
///
/// let (mut rates, mut back) = ([0.0; 2], [0.0; 2]);
/// let outcome = rates_of_half_lives(Cells::Each(&[10.0, 0.0]), &mut rates)?;
/// assert_eq!((format!("{:.5}", rates[0]), outcome.first), ("0.06931".into(), Some(1)));
/// let outcome = half_lives(Cells::Each(&rates), &mut back)?;
/// assert_eq!((format!("{:.3}", back[0]), back[1].is_nan(), outcome.refused), ("10.000".into(), true, 0));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn rates_of_half_lives(half_lives_days: Cells<'_>, out: &mut [f64]) -> Result<ColumnOutcome, ColumnError> {
    let law = move |[days]: [f64; 1]| {
        let rate = std::f64::consts::LN_2 / stored(days);
        ([rate], (days > 0.0) & lasts(days) & within(rate, LossRate::MAX.per_day()))
    };
    rows_by_law([half_lives_days], [out], law, |[days]| {
        Ok::<_, InvalidQuantity>([LossRate::from_half_life(Duration::from_days(days)?)?.per_day()])
    })
}

/// Half-lives in days from rates of loss per day: the inverse of [`rates_of_half_lives`].
///
/// # Errors
///
/// [`ColumnError::Length`] unless both columns have the same rows.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, half_lives};
///
/// let mut days = [0.0; 2];
/// let outcome = half_lives(Cells::Each(&[0.1, 0.0]), &mut days)?; // what loses nothing has no half-life
/// assert_eq!((format!("{:.2}", days[0]), outcome.first), ("6.93".into(), Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn half_lives(rates_per_day: Cells<'_>, out: &mut [f64]) -> Result<ColumnOutcome, ColumnError> {
    let law = move |[rate]: [f64; 1]| {
        let days = std::f64::consts::LN_2 / rate;
        ([stored(days)], (rate > 0.0) & (rate <= LossRate::MAX.per_day()) & lasts(days))
    };
    rows_by_law([rates_per_day], [out], law, |[rate]| {
        Ok::<_, InvalidQuantity>([LossRate::from_per_day(rate)?.half_life()?.days()])
    })
}

/// Days as a duration holds them, in minutes.
#[inline]
fn stored(days: f64) -> f64 {
    days * 1440.0 / 1440.0
}

#[inline]
fn lasts(days: f64) -> bool {
    within(days * 1440.0, Duration::MAX.min())
}
