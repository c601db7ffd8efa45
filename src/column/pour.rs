use super::{
    Cells, ColumnError, ColumnOutcome,
    divisor::{Divisor, LEAST, Machine},
    rows::{Given, greater, lesser, rows_by_law, within},
    strength::density_bounds,
};
use crate::{
    peroxide::{
        self, BlendError, PourError,
        kernel::{Cubic, MAX_CELSIUS, MAX_STRENGTH_WW},
    },
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
        ([lesser(greater(mixed, weakest), most)], good & (m1 > 0.0) & (m2 > 0.0) & (total <= heaviest))
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
pub fn dilutions_by_volume(
    strengths_ww_percent: [Cells<'_>; 2],
    total_ml: Cells<'_>,
    temperature_c: Cells<'_>,
    out: [&mut [f64]; 9],
) -> Result<ColumnOutcome, ColumnError> {
    let [stock, target] = strengths_ww_percent;
    match temperature_c {
        // One temperature is looked up once; a missing one makes every row missing.
        Cells::Same(celsius) if !celsius.is_nan() => {
            let rule = |[stock, target, total]: [f64; 3]| dilution_rule([stock, target, total, celsius]);
            rows_by_law(
                [stock, target, total_ml],
                out,
                Given(At::celsius(celsius, Machine { fuses: false }), by_volume_at),
                rule,
            )
        }
        _ => rows_by_law([stock, target, total_ml, temperature_c], out, Given((), by_volume), dilution_rule),
    }
}

/// What peroxide and water weigh at a temperature.
#[derive(Debug, Clone, Copy)]
struct At {
    solution: Cubic,
    water: f64,
    known: bool,
}

impl At {
    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    fn celsius(celsius: f64, machine: Machine) -> Self {
        let solution = Cubic::aqueous(celsius);
        let [_, water, _] = density_bounds(&solution, 0.0, machine);
        Self { solution, water, known: within(celsius, MAX_CELSIUS) }
    }
}

#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn by_volume((): (), [stock, target, total, celsius]: [f64; 4], machine: Machine) -> ([f64; 9], bool) {
    by_volume_at(At::celsius(celsius, machine), [stock, target, total], machine)
}

/// Volumes rise with the density of the target and fall with that of the stock, step by step, so that of their corners two are
/// the bounds; what they shrink by rises with both.
#[expect(clippy::inline_always, reason = "as above")]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
#[inline(always)]
fn by_volume_at(at: At, [stock, target, total]: [f64; 3], machine: Machine) -> ([f64; 9], bool) {
    let [s0, s1, s2] = density_bounds(&at.solution, stock, machine);
    let [t0, t1, t2] = density_bounds(&at.solution, target, machine);
    let share = machine.over(target, Divisor::HUNDRED) / machine.over(stock, Divisor::HUNDRED);
    let measured = |target: f64, stock: f64| total * target * share / stock;
    let poured = |target: f64| total * target * (1.0 - share) / at.water;
    let most = Volume::MAX.ml();
    let shrunk = |stock: f64, water: f64| lesser(greater(stock + water - total, 0.0), most);
    let [a, b, c] = [measured(t0, s2), measured(t1, s1), measured(t2, s0)];
    let [d, e, f] = [poured(t0), poured(t1), poured(t2)];
    // A zero with a sign is left to the rule, and what is too small to be divided in steps.
    let divides = (stock >= LEAST) & ((target >= LEAST) | (target.to_bits() == 0));
    let known = at.known & divides & (stock <= MAX_STRENGTH_WW) & (target <= stock);
    let good = known & (total > 0.0) & (total <= most) & (c <= most) & (f <= most);
    ([a, b, c, d, e, f, shrunk(a, d), shrunk(b, e), shrunk(c, f)], good)
}

fn dilution_rule([stock, target, total, celsius]: [f64; 4]) -> Result<[f64; 9], PourError> {
    let [stock, target] = [stock, target].map(MassFraction::from_ww_percent);
    let (total, temperature) = (Volume::from_ml(total)?, Temperature::from_celsius(celsius)?);
    let made = peroxide::dilute_volume(stock?, target?, total, temperature)?;
    let [[a, b, c], [d, e, f], [g, h, i]] =
        [made.stock, made.water, made.contraction()].map(|volume| volume.to_array().map(Volume::ml));
    Ok([a, b, c, d, e, f, g, h, i])
}
