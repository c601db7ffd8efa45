use super::strength::density_law;
use super::{
    Cells, ColumnError, ColumnOutcome,
    rows::{rows_by_law, within},
};
use crate::{
    peroxide::{self, BlendError, PourError, kernel::MAX_CELSIUS},
    quantity::{Mass, MassFraction, Quantity, Temperature, Volume},
};

/// Strengths of two parts stirred together, by mass.
///
/// # Units
///
/// Strengths in % w/w, masses in g.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, strengths_of_two};
///
/// let mut mixed = [0.0; 2];
/// let (cream, developer) = (0.0.into(), Cells::Each(&[9.0, 120.0]));
/// let outcome = strengths_of_two([cream, developer], [30.0.into(), 60.0.into()], &mut mixed)?;
/// assert_eq!((mixed[0], outcome.first), (6.0, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn strengths_of_two(
    strengths_ww_percent: [Cells<'_>; 2],
    masses_g: [Cells<'_>; 2],
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let ([first, second], [first_g, second_g]) = (strengths_ww_percent, masses_g);
    let (strongest, heaviest) = (MassFraction::MAX.ww_percent(), Mass::MAX.g());
    let law = move |[w1, w2, m1, m2]: [f64; 4]| {
        let total = m1 + m2;
        let mixed = (m1 * w1 + m2 * w2) / total;
        let (weakest, most) = if w1 < w2 { (w1, w2) } else { (w2, w1) };
        // What is less than zero by its sign alone, and a part that weighs nothing, are left to the rule.
        let good = within(weakest, strongest) & within(most, strongest) & w1.is_sign_positive() & w2.is_sign_positive();
        ([mixed.max(weakest).min(most)], good & (m1 > 0.0) & (m2 > 0.0) & (total <= heaviest))
    };
    rows_by_law([first, second, first_g, second_g], [out], law, |[w1, w2, m1, m2]| {
        let part = |percent, g| Ok::<_, BlendError>((MassFraction::from_ww_percent(percent)?, Mass::from_g(g)?));
        Ok::<_, BlendError>([peroxide::mix_two(part(w1, m1)?, part(w2, m2)?)?.ww_percent()])
    })
}

/// Splits wanted volumes into volumes of stock and water: the stock, the water and the contraction, three columns each for
/// the lower bound, the best estimate and the upper bound.
///
/// # Units
///
/// Strengths (stock, target) in % w/w, volumes in mL, temperatures in C.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the same rows.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, dilutions_by_volume};
///
/// let mut out = [[0.0; 2]; 9];
/// let strengths = [35.0.into(), Cells::Each(&[3.0, 40.0])];
/// let outcome = dilutions_by_volume(strengths, 1000.0.into(), 20.0.into(), out.each_mut().map(|column| &mut column[..]))?;
/// assert_eq!((out[1][0].round(), out[4][0].round(), outcome.first), (76.0, 924.0, Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn dilutions_by_volume(
    strengths_ww_percent: [Cells<'_>; 2],
    total_ml: Cells<'_>,
    temperature_c: Cells<'_>,
    out: [&mut [f64]; 9],
) -> Result<ColumnOutcome, ColumnError> {
    let [stock, target] = strengths_ww_percent;
    let most = Volume::MAX.ml();
    let law = move |[stock, target, total, celsius]: [f64; 4]| {
        let (of_stock, stock_known) = density_law([stock, celsius]);
        let (of_target, target_known) = density_law([target, celsius]);
        let ([_, of_water, _], _) = density_law([0.0, celsius]);
        let share = (target / 100.0) / (stock / 100.0);
        let stocks = corners(of_target, of_stock, |target, stock| total * target * share / stock);
        let waters = around(of_target.map(|target| total * target * (1.0 - share) / of_water));
        let shrunk = |stock: f64, water: f64| (stock + water - total).max(0.0).min(most);
        let contractions = corners(stocks, waters, shrunk);
        let good = stock_known & target_known & (stock > 0.0) & (target <= stock) & (total > 0.0) & (total <= most);
        let ([_, _, most_stock], [_, _, most_water]) = (stocks, waters);
        let good = good & within(celsius, MAX_CELSIUS) & (most_stock <= most) & (most_water <= most);
        let ([a, b, c], [d, e, f], [g, h, i]) = (stocks, waters, contractions);
        ([a, b, c, d, e, f, g, h, i], good)
    };
    rows_by_law([stock, target, total_ml, temperature_c], out, law, dilution_rule)
}

fn dilution_rule([stock, target, total, celsius]: [f64; 4]) -> Result<[f64; 9], PourError> {
    let [stock, target] = [stock, target].map(MassFraction::from_ww_percent);
    let (total, temperature) = (Volume::from_ml(total)?, Temperature::from_celsius(celsius)?);
    let made = peroxide::dilute_volume(stock?, target?, total, temperature)?;
    let [[a, b, c], [d, e, f], [g, h, i]] =
        [made.stock, made.water, made.contraction()].map(|volume| volume.to_array().map(Volume::ml));
    Ok([a, b, c, d, e, f, g, h, i])
}

/// Bounds of what depends on two estimates, as [`Interval::combine`](crate::source::Interval::combine) has them.
#[inline]
fn corners(one: [f64; 3], other: [f64; 3], f: impl Fn(f64, f64) -> f64) -> [f64; 3] {
    let ([a0, a, a1], [b0, b, b1]) = (one, other);
    let best = f(a, b);
    let [first, second, third, fourth] = [f(a0, b0), f(a1, b0), f(a0, b1), f(a1, b1)];
    let (low, high) = (first.min(second).min(third.min(fourth)), first.max(second).max(third.max(fourth)));
    [low.min(best), best, high.max(best)]
}

/// Three values with the least first and the greatest last.
#[inline]
fn around([one, best, other]: [f64; 3]) -> [f64; 3] {
    [one.min(other).min(best), best, one.max(other).max(best)]
}
