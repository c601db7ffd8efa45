use super::{ColumnError, ColumnOutcome};
use crate::peroxide::{
    Conditions, ConversionError, StrengthUnit,
    kernel::{Cubic, Ratio, from_ww_percent, g_per_l, g_per_l_each, max_g_per_l, to_ww_percent, ww_percent},
};

/// One unit, one loop: with the unit a constant, nothing is left to decide for each row.
macro_rules! by_mass {
    ($unit:expr, $rule:ident as $name:ident => $body:expr) => {
        match $unit {
            StrengthUnit::MolPerKg => {
                let $name = |x| $rule(x, StrengthUnit::MolPerKg);
                $body
            }
            StrengthUnit::ActiveOxygenPercent => {
                let $name = |x| $rule(x, StrengthUnit::ActiveOxygenPercent);
                $body
            }
            _ => {
                let $name = |x: f64| x;
                $body
            }
        }
    };
}

/// Converts a column of strengths from one unit to another, all under the same conditions.
///
/// # Units
///
/// `values` in `from`, `out` in `to`.
///
/// # Errors
///
/// [`ColumnError`] when the columns differ in length, or when a density is needed and the temperature has none.
///
/// # Example
///
/// ```
/// use foilwork::{column, peroxide::{Conditions, StrengthUnit}};
///
/// let mut volumes = [0.0; 3];
/// let (ww, vol) = (StrengthUnit::WwPercent, StrengthUnit::Volumes);
/// let outcome = column::convert_strengths(&[3.0, 6.0, 120.0], ww, vol, &Conditions::default(), &mut volumes)?;
/// assert_eq!(volumes.map(|v| format!("{v:.1}")), ["10.0", "20.2", "NaN"]);
/// assert_eq!((outcome.refused, outcome.first), (1, Some(2)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn convert_strengths(
    values: &[f64],
    from: StrengthUnit,
    to: StrengthUnit,
    conditions: &Conditions,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    if values.len() != out.len() {
        return Err(ColumnError::Length { got: out.len(), want: values.len() });
    }
    let task = Task { values, max_in: from.max(), max_out: to.max(), out };
    let vm = conditions.molar_volume;
    let limit = conditions.max_ww_percent();
    let density = || -> Result<Cubic, ColumnError> { Ok(conditions.cubic().map_err(ConversionError::from)?) };
    let all_good = match (from.is_by_mass(), to.is_by_mass()) {
        _ if from == to => task.run(|x| (x, true)),
        (false, false) => match Ratio::between(from, to, vm) {
            Ratio::Times(factor) => task.run(|x| (x * factor, true)),
            Ratio::Over(factor) => task.run(|x| (x / factor, true)),
        },
        (true, true) => {
            by_mass!(from, to_ww_percent as decode => by_mass!(to, from_ww_percent as encode => task.run(|x| (encode(decode(x)), true))))
        }
        (true, false) => {
            let (cubic, per) = (density()?, g_per_l_each(to, vm));
            by_mass!(from, to_ww_percent as decode => task.run(|x| {
                let percent = decode(x);
                (g_per_l(percent, &cubic) / per, percent <= limit)
            }))
        }
        (false, true) => {
            let (cubic, each) = (density()?, g_per_l_each(from, vm));
            let most = max_g_per_l(limit, &cubic);
            by_mass!(to, from_ww_percent as encode => task.run(|x| {
                let concentration = x * each;
                (encode(ww_percent(concentration, &cubic).min(limit)), concentration <= most)
            }))
        }
    };
    Ok(if all_good { ColumnOutcome::default() } else { count(values, out) })
}

/// Input and output with the ranges of their units.
struct Task<'a> {
    values: &'a [f64],
    max_in: f64,
    max_out: f64,
    out: &'a mut [f64],
}

impl Task<'_> {
    /// Runs a rule without a branch for each row, so that the loop vectorises; says whether every value was good.
    #[inline]
    #[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
    fn run(self, rule: impl Fn(f64) -> (f64, bool)) -> bool {
        let mut all_good = true;
        for (&x, slot) in self.values.iter().zip(self.out.iter_mut()) {
            let (y, known) = rule(x);
            let good = known & (x >= 0.0) & (x <= self.max_in) & (y >= 0.0) & (y <= self.max_out);
            *slot = if good { y } else { f64::NAN };
            all_good &= good;
        }
        all_good
    }
}

/// Tells refused values from missing ones, once there are any.
fn count(values: &[f64], out: &[f64]) -> ColumnOutcome {
    let mut outcome = ColumnOutcome::default();
    for (row, (x, y)) in values.iter().zip(out).enumerate() {
        if y.is_nan() && !x.is_nan() {
            outcome.refused += 1;
            outcome.first.get_or_insert(row);
        }
    }
    outcome
}
