use super::{
    Cells, ColumnError, ColumnOutcome,
    divisor::{Divisor, Machine},
    rows::{Given, Widest, rows_by_law},
};
use crate::{
    mix::{
        self, MinimumError,
        kernel::{FINEST_G, FINEST_TOLERANCE, least_g},
    },
    quantity::{InvalidQuantity, Mass, Quantity, Share},
};

/// The least that scales can weigh of one thing so that rounding is off by no more than tolerances, in g.
///
/// # Units
///
/// Divisions in g, tolerances in % of the mass.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, minimum_masses};
///
/// let mut least = [0.0; 2];
/// let outcome = minimum_masses(1.0.into(), Cells::Each(&[5.0, 0.0]), &mut least)?;
/// assert_eq!((least[0], outcome.first), (10.0, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn minimum_masses(
    divisions_g: Cells<'_>,
    tolerances_percent: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    rows_by_law([divisions_g, tolerances_percent], [out], Widest(Given((), least)), |[division, tolerance]| {
        let range = |error: InvalidQuantity| MinimumError::Ratio(error.into());
        let (division, tolerance) =
            (Mass::from_g(division).map_err(range)?, Share::from_percent(tolerance).map_err(range)?);
        Ok::<_, MinimumError>([mix::minimum_mass(division, tolerance)?.g()])
    })
}

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
#[inline(always)]
fn least((): (), [division, tolerance]: [f64; 2], machine: Machine) -> ([f64; 1], bool) {
    let least = least_g(division, machine.over(tolerance, Divisor::HUNDRED));
    let heaviest = Mass::MAX.g();
    let on_scale = (division >= FINEST_G) & (division <= heaviest) & (least <= heaviest);
    ([least], on_scale & (tolerance >= FINEST_TOLERANCE) & (tolerance <= Share::ALL.percent()))
}
