use super::{
    Cells, ColumnError, ColumnOutcome, by_unit,
    divisor::{Divisor, LEAST, Machine},
    rows::{Given, Widest, lesser, rows_by_law, within},
};
use crate::{
    peroxide::{
        AgeingError, StrengthQuantity, StrengthUnit,
        kernel::{aged, left, lost, rate_of},
    },
    quantity::{
        ActiveOxygen, Duration, InvalidQuantity, LossRate, MassConcentration, MassFraction, Molality, Quantity,
    },
};

/// A law of the type that goes with a unit: by volume the law is the same for all, and one stands for them.
macro_rules! law_of {
    ($unit:expr, $law:ident => $name:ident, $body:expr) => {
        match $unit {
            StrengthUnit::WwPercent => {
                let $name = $law::<MassFraction>;
                $body
            }
            StrengthUnit::MolPerKg => {
                let $name = $law::<Molality>;
                $body
            }
            StrengthUnit::ActiveOxygenPercent => {
                let $name = $law::<ActiveOxygen>;
                $body
            }
            _ => {
                let $name = $law::<MassConcentration>;
                $body
            }
        }
    };
}

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
pub fn strengths_after(
    fresh: Cells<'_>,
    unit: StrengthUnit,
    rates_per_day: Cells<'_>,
    days: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let typed @ (scale, _) = by_unit::scale_and_most(unit);
    let rule = by_unit::strength_after(unit);
    let rule = |[fresh, rate, days]: [f64; 3]| {
        let (rate, elapsed) = (LossRate::from_per_day(rate)?, Duration::from_days(days)?);
        let later = rule(fresh * scale, rate, elapsed)?;
        Ok::<_, AgeingError>([of_given(fresh, fresh * scale, later, later / scale)])
    };
    law_of!(unit, after => law, rows_by_law([fresh, rates_per_day, days], [out], Widest(Given(typed, law)), rule))
}

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
#[inline(always)]
fn after<Q: StrengthQuantity>(
    (scale, strongest): (f64, f64),
    [fresh, rate, days]: [f64; 3],
    machine: Machine,
) -> ([f64; 1], bool) {
    let (given, fresh, elapsed) = (fresh, fresh * scale, stored(days, machine));
    let later = lesser(aged(fresh, left(rate, elapsed), Q::STRENGTH_UNIT), strongest);
    let in_unit = if scale > 1.0 { of_given(given, fresh, later, machine.over(later, Divisor::TEN)) } else { later };
    // Zero has two signs: it is left to the rule, and so is what is too small to be divided in steps.
    let good = (fresh >= LEAST) & (fresh <= strongest) & (later >= LEAST);
    ([in_unit], good & within(rate, LossRate::MAX.per_day()) & lasts(days))
}

/// What is left in the unit of what was given: all of it where nothing is lost, and never more.
#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn of_given(given: f64, fresh: f64, later: f64, in_unit: f64) -> f64 {
    let in_unit = if in_unit < given { in_unit } else { given };
    if later < fresh { in_unit } else { given }
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
pub fn loss_rates(
    first: Cells<'_>,
    later: Cells<'_>,
    unit: StrengthUnit,
    days: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let typed @ (scale, _) = by_unit::scale_and_most(unit);
    let rule = by_unit::loss_rate(unit);
    let rule = |[first, later, days]: [f64; 3]| {
        Ok::<_, AgeingError>([rule(first * scale, later * scale, Duration::from_days(days)?)?])
    };
    law_of!(unit, between => law, rows_by_law([first, later, days], [out], Widest(Given(typed, law)), rule))
}

#[expect(clippy::inline_always, reason = "as above")]
#[expect(clippy::needless_bitwise_bool, reason = "as above")]
#[inline(always)]
fn between<Q: StrengthQuantity>(
    (scale, strongest): (f64, f64),
    [first, later, days]: [f64; 3],
    machine: Machine,
) -> ([f64; 1], bool) {
    let (first, later) = (first * scale, later * scale);
    let elapsed = stored(days, machine);
    let rate = rate_of(lost(first, later, Q::STRENGTH_UNIT), elapsed);
    let good = (later >= LEAST) & (later <= first) & (first <= strongest) & lasts(days) & (elapsed > 0.0);
    ([rate], good & within(rate, LossRate::MAX.per_day()))
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
pub fn times_until(
    fresh: Cells<'_>,
    wanted: Cells<'_>,
    unit: StrengthUnit,
    rates_per_day: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let typed @ (scale, _) = by_unit::scale_and_most(unit);
    let rule = by_unit::time_until(unit);
    let rule = |[fresh, wanted, rate]: [f64; 3]| {
        Ok::<_, AgeingError>([rule(fresh * scale, wanted * scale, LossRate::from_per_day(rate)?)?])
    };
    law_of!(unit, until => law, rows_by_law([fresh, wanted, rates_per_day], [out], Widest(Given(typed, law)), rule))
}

#[expect(clippy::inline_always, reason = "as above")]
#[expect(clippy::needless_bitwise_bool, reason = "as above")]
#[inline(always)]
fn until<Q: StrengthQuantity>(
    (scale, strongest): (f64, f64),
    [fresh, wanted, rate]: [f64; 3],
    machine: Machine,
) -> ([f64; 1], bool) {
    let (fresh, wanted) = (fresh * scale, wanted * scale);
    let fallen = lost(fresh, wanted, Q::STRENGTH_UNIT);
    let days = rate_of(if fresh > wanted { fallen } else { 0.0 }, rate);
    let good = (wanted >= LEAST) & (wanted <= fresh) & (fresh <= strongest);
    ([stored(days, machine)], good & (rate > 0.0) & (rate <= LossRate::MAX.per_day()) & lasts(days))
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
    // No time at all is a rate without end, and out of range as that.
    let law = move |[days]: [f64; 1]| {
        let rate = std::f64::consts::LN_2 / stored(days, PLAIN);
        ([rate], lasts(days) & within(rate, LossRate::MAX.per_day()))
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
    // No loss is a half-life without end.
    let law = move |[rate]: [f64; 1]| {
        let days = std::f64::consts::LN_2 / rate;
        ([stored(days, PLAIN)], within(rate, LossRate::MAX.per_day()) & lasts(days))
    };
    rows_by_law([rates_per_day], [out], law, |[rate]| {
        Ok::<_, InvalidQuantity>([LossRate::from_per_day(rate)?.half_life()?.days()])
    })
}

/// Days as a duration holds them, in minutes.
#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn stored(days: f64, machine: Machine) -> f64 {
    machine.over(days * 1440.0, Divisor::MINUTES_OF_DAY)
}

const PLAIN: Machine = Machine { fuses: false };

#[inline]
fn lasts(days: f64) -> bool {
    within(days * 1440.0, Duration::MAX.min())
}
