use super::{
    Cells, ColumnError, ColumnOutcome, by_unit,
    rows::{rows_by_law, within},
};
use crate::{
    peroxide::{KnownVolume, MakeUpError, StrengthUnit},
    quantity::{Quantity, Volume},
};

/// Which volume is known; a column of volumes goes with it.
pub type WhichVolume = fn(Volume) -> KnownVolume;

/// Makes solutions up to the mark: columns of stock and of total in mL.
///
/// # Units
///
/// Strengths (stock, target) in `unit`, which counts by volume; volumes in mL.
///
/// # Errors
///
/// [`ColumnError`] unless every column has the same rows and the unit counts by volume.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, make_ups}, peroxide::{KnownVolume, StrengthUnit}};
///
/// let (mut stock, mut total) = ([0.0; 2], [0.0; 2]);
/// let strengths = [Cells::Each(&[100.0, 60.0]), 20.0.into()];
/// let unit = StrengthUnit::Volumes;
/// let outcome = make_ups(strengths, unit, KnownVolume::Total, 500.0.into(), [&mut stock, &mut total])?;
/// assert_eq!((stock[0], total[1], outcome.refused), (100.0, 500.0, 0));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn make_ups(
    strengths: [Cells<'_>; 2],
    unit: StrengthUnit,
    known: WhichVolume,
    volumes_ml: Cells<'_>,
    out: [&mut [f64]; 2],
) -> Result<ColumnOutcome, ColumnError> {
    let [stock, target] = strengths;
    let unit = by_unit::by_volume(unit)?;
    let (scale, strongest) = by_unit::scale_and_most(unit);
    let rule = by_unit::make_up(unit);
    let from_stock = matches!(known(Volume::MIN), KnownVolume::Stock(_));
    let law = move |[stock, target, volume]: [f64; 3]| {
        let (from, to) = (stock * scale, target * scale);
        let other = if from_stock { volume * from / to } else { volume * to / from };
        let good = (from <= strongest) & (to > 0.0) & (to <= from);
        let good = good & (volume > 0.0) & (volume <= Volume::MAX.ml()) & within(other, Volume::MAX.ml());
        (if from_stock { [volume, other] } else { [other, volume] }, good)
    };
    rows_by_law([stock, target, volumes_ml], out, law, |[stock, target, volume]| {
        let made = rule(stock * scale, target * scale, known(Volume::from_ml(volume)?))?;
        Ok::<_, MakeUpError>([made.stock.ml(), made.total.ml()])
    })
}

/// Strengths after volumes of stock are made up to the mark, in the unit of the stock.
///
/// # Units
///
/// Strengths in `unit`, which counts by volume; volumes in mL.
///
/// # Errors
///
/// [`ColumnError`] unless every column has the same rows and the unit counts by volume.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, strengths_after_make_up}, peroxide::StrengthUnit};
///
/// let mut weak = [0.0; 2];
/// let (taken, mark) = (Cells::Each(&[417.0, 20_000.0]), Cells::Same(10_000.0));
/// let outcome = strengths_after_make_up(3.0.into(), StrengthUnit::WvPercent, taken, mark, &mut weak)?;
/// assert_eq!((weak[0], outcome.first), (0.1251, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn strengths_after_make_up(
    stock: Cells<'_>,
    unit: StrengthUnit,
    taken_ml: Cells<'_>,
    total_ml: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let unit = by_unit::by_volume(unit)?;
    let (scale, strongest) = by_unit::scale_and_most(unit);
    let rule = by_unit::strength_after_make_up(unit);
    let law = move |[stock, taken, total]: [f64; 3]| {
        let stock = stock * scale;
        let found = stock * taken / total;
        let good = within(stock, strongest) & (taken >= 0.0) & (taken <= total);
        ([found / scale], good & (total <= Volume::MAX.ml()) & within(found, strongest))
    };
    rows_by_law([stock, taken_ml, total_ml], [out], law, |[stock, taken, total]| {
        let (taken, total) = (Volume::from_ml(taken)?, Volume::from_ml(total)?);
        Ok::<_, MakeUpError>([rule(stock * scale, taken, total)? / scale])
    })
}
