use super::{
    Cells, ColumnError, ColumnOutcome,
    rows::{rows_by_law, within},
};
use crate::{
    peroxide::{self, BlendError, KnownMass, kernel::shares},
    quantity::{Mass, MassFraction, Quantity},
};

/// Which amount of a blend is known; a column of masses goes with it.
pub type WhichMass = fn(Mass) -> KnownMass;

/// Blends columns of two strengths to columns of a third: the first and the second parts in g.
///
/// `known` says what the masses are: [`KnownMass::Total`], [`KnownMass::First`] or [`KnownMass::Second`]. A stock and water is a
/// blend whose second strength is 0.
///
/// # Units
///
/// Strengths (first, second, target) in % w/w, masses in g.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the same rows.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, blends}, peroxide::KnownMass};
///
/// let (mut stock, mut water) = ([0.0; 3], [0.0; 3]);
/// let targets = Cells::Each(&[3.0, 6.0, 14.0]);
/// let outcome =
///     blends([12.0.into(), 0.0.into(), targets], KnownMass::Total, 60.0.into(), [&mut stock, &mut water])?;
/// assert_eq!((stock[0], water[1], outcome.first), (15.0, 30.0, Some(2)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn blends(
    strengths_ww_percent: [Cells<'_>; 3],
    known: WhichMass,
    masses_g: Cells<'_>,
    out: [&mut [f64]; 2],
) -> Result<ColumnOutcome, ColumnError> {
    let [first, second, target] = strengths_ww_percent;
    let inputs = [first, second, target, masses_g];
    let rule = |[first, second, target, mass]: [f64; 4]| {
        let [first, second, target] = [first, second, target].map(MassFraction::from_ww_percent);
        let blend = peroxide::blend_two(first?, second?, target?, known(Mass::from_g(mass)?))?;
        Ok::<_, BlendError>([blend.first.g(), blend.second.g()])
    };
    let (strongest, heaviest) = (MassFraction::MAX.ww_percent(), Mass::MAX.g());
    let possible = move |[w1, w2, w, mass]: [f64; 4]| {
        let (weak, strong) = if w1 < w2 { (w1, w2) } else { (w2, w1) };
        (weak >= 0.0) & (strong <= strongest) & (w >= weak) & (w <= strong) & (mass > 0.0) & (mass <= heaviest)
    };
    match known(Mass::ZERO) {
        KnownMass::Total(_) => {
            let law = move |row: [f64; 4]| {
                let [w1, w2, w, total] = row;
                let (a, b) = shares(w1, w2, w);
                let first = total * (a / (a + b));
                ([first, (total - first).max(0.0)], possible(row) & within(first, heaviest))
            };
            rows_by_law(inputs, out, law, rule)
        }
        KnownMass::First(_) => {
            // Of a part that is not in the blend there is no number to divide by: what comes of it is no mass.
            let law = move |row: [f64; 4]| {
                let [w1, w2, w, first] = row;
                let (a, b) = shares(w1, w2, w);
                let second = first * (b / a);
                ([first, second], possible(row) & within(second, heaviest))
            };
            rows_by_law(inputs, out, law, rule)
        }
        KnownMass::Second(_) => {
            let law = move |row: [f64; 4]| {
                let [w1, w2, w, second] = row;
                let (a, b) = shares(w1, w2, w);
                let first = second * (a / b);
                ([first, second], possible(row) & within(first, heaviest))
            };
            rows_by_law(inputs, out, law, rule)
        }
    }
}
