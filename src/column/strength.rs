use super::{
    Cells, ColumnError, ColumnOutcome,
    divisor::{Divisor, Machine},
    ratio::{Range, in_ratio},
    rows::{Given, greater, lesser, rows_by_law, within},
};
use crate::{
    peroxide::{
        self, Conditions, ConversionError, Strength, StrengthUnit,
        kernel::{
            Cubic, MAX_CELSIUS, MAX_STRENGTH_WW, Ratio, from_ww_percent, g_per_l, g_per_l_each, half_width,
            max_g_per_l, to_ww_percent, ww_percent,
        },
    },
    quantity::{Density, MassFraction, Quantity, Temperature},
};

/// One unit, one loop: with the unit a constant, nothing is left to decide for each row.
macro_rules! by_mass {
    ($unit:expr, $rule:ident as $name:ident => $body:expr) => {
        match $unit {
            StrengthUnit::MolPerKg => {
                let $name = move |x| $rule(x, StrengthUnit::MolPerKg);
                $body
            }
            StrengthUnit::ActiveOxygenPercent => {
                let $name = move |x| $rule(x, StrengthUnit::ActiveOxygenPercent);
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
pub fn convert_strengths<'a>(
    values: impl Into<Cells<'a>>,
    from: StrengthUnit,
    to: StrengthUnit,
    conditions: &Conditions,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let task = Task { values: values.into(), from, to, at: *conditions, out };
    let vm = conditions.molar_volume;
    let limit = conditions.max_ww_percent();
    let density = || -> Result<Cubic, ColumnError> { Ok(conditions.cubic().map_err(ConversionError::from)?) };
    match (from.is_by_mass(), to.is_by_mass()) {
        _ if from == to => task.run(move |x| (x, true)),
        (false, false) => {
            let Task { values, from, to, at, out } = task;
            let range = Range { least: 0.0, most_in: from.max(), most_out: to.max() };
            in_ratio(values, out, Ratio::between(from, to, vm), range, convert_rule(from, to, at))
        }
        (true, true) => {
            by_mass!(from, to_ww_percent as decode => by_mass!(to, from_ww_percent as encode => task.run(move |x| (encode(decode(x)), true))))
        }
        (true, false) => {
            let (cubic, per) = (density()?, g_per_l_each(to, vm));
            by_mass!(from, to_ww_percent as decode => task.run(move |x| {
                let percent = decode(x);
                (g_per_l(percent, &cubic) / per, percent <= limit)
            }))
        }
        (false, true) => {
            let (cubic, each) = (density()?, g_per_l_each(from, vm));
            let most = max_g_per_l(limit, &cubic);
            by_mass!(to, from_ww_percent as encode => task.run(move |x| {
                let concentration = x * each;
                (encode(ww_percent(concentration, &cubic).min(limit)), concentration <= most)
            }))
        }
    }
}

/// A column with its units and the conditions it is converted under.
struct Task<'a, 'b> {
    values: Cells<'a>,
    from: StrengthUnit,
    to: StrengthUnit,
    at: Conditions,
    out: &'b mut [f64],
}

impl Task<'_, '_> {
    /// Runs a law without a branch for each row, so that the loop vectorises.
    #[inline]
    fn run(self, law: impl Fn(f64) -> (f64, bool) + Copy + Sync) -> Result<ColumnOutcome, ColumnError> {
        let Self { values, from, to, at, out } = self;
        let (max_in, max_out) = (from.max(), to.max());
        let law = move |[x]: [f64; 1]| {
            let (y, known) = law(x);
            ([y], known & within(x, max_in) & within(y, max_out))
        };
        rows_by_law([values], [out], law, convert_rule(from, to, at))
    }
}

fn convert_rule(
    from: StrengthUnit,
    to: StrengthUnit,
    at: Conditions,
) -> impl Fn([f64; 1]) -> Result<[f64; 1], ConversionError> + Sync {
    move |[x]| Ok([peroxide::convert(Strength::of(x, from)?, to, &at)?.number()])
}

/// Converts strengths of a product whose temperature is a column too; the other conditions hold for all rows.
///
/// # Units
///
/// `values` in `from`, `temperature_c` in C, `out` in `to`.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::{column::{self, Cells}, peroxide::{Conditions, StrengthUnit}};
///
/// let mut wv = [0.0; 2];
/// let (percent, celsius) = (Cells::Same(12.0), [10.0, 40.0]);
/// let (from, to) = (StrengthUnit::WwPercent, StrengthUnit::WvPercent);
/// let outcome =
///     column::convert_strengths_at(percent, Cells::Each(&celsius), (from, to), &Conditions::default(), &mut wv)?;
/// assert_eq!((wv.map(|wv| format!("{wv:.2}")), outcome.refused), (["12.54".into(), "12.39".into()], 0)); // warm is thin
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn convert_strengths_at(
    values: Cells<'_>,
    temperature_c: Cells<'_>,
    (from, to): (StrengthUnit, StrengthUnit),
    product: &Conditions,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let law = move |[x, celsius]: [f64; 2]| {
        let (y, _, good) = best(x, celsius, (from, to), product);
        ([y], good)
    };
    rows_by_law([values, temperature_c], [out], law, |[x, celsius]| {
        let at = Conditions { temperature: Temperature::from_celsius(celsius)?, ..*product };
        Ok::<_, ConversionError>([peroxide::convert(Strength::of(x, from)?, to, &at)?.number()])
    })
}

/// The same with the bounds that the density brings: lower bounds, best values and upper bounds.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the same rows.
///
/// # Example
///
/// ```
/// use foilwork::{column::{self, Cells}, peroxide::{Conditions, SolutionDensity, StrengthUnit}};
///
/// let cream = Conditions::default().with_density(SolutionDensity::Emulsion);
/// let (mut low, mut best, mut high) = ([0.0; 1], [0.0; 1], [0.0; 1]);
/// let units = (StrengthUnit::WwPercent, StrengthUnit::Volumes);
/// let outcome =
///     column::convert_intervals(6.0.into(), 20.0.into(), units, &cream, [&mut low, &mut best, &mut high])?;
/// assert_eq!(format!("{:.1} to {:.1}", low[0], high[0]), "18.5 to 20.6");
/// assert_eq!(outcome.refused, 0);
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub fn convert_intervals(
    values: Cells<'_>,
    temperature_c: Cells<'_>,
    (from, to): (StrengthUnit, StrengthUnit),
    product: &Conditions,
    out: [&mut [f64]; 3],
) -> Result<ColumnOutcome, ColumnError> {
    let crosses = from.is_by_mass() != to.is_by_mass();
    let law = move |[x, celsius]: [f64; 2]| {
        let (y, percent, good) = best(x, celsius, (from, to), product);
        if !crosses {
            return ([y; 3], good);
        }
        let (light, dense) = product.relative_bounds(percent, cubic_at(celsius, product).at(percent / 100.0));
        let bound = |factor: f64| {
            let shifted = if to.is_by_mass() { from_ww_percent((percent / factor).min(100.0), to) } else { y * factor };
            shifted.max(0.0).min(to.max())
        };
        // The denser, the more of it in a litre, and the less of a litre's in a gram.
        let (low, high) = if to.is_by_mass() { (bound(dense), bound(light)) } else { (bound(light), bound(dense)) };
        // Zero has two signs; which of them a bound has is left to the rule.
        ([low, y, high], good & (y > 0.0))
    };
    rows_by_law([values, temperature_c], out, law, |[x, celsius]| {
        let at = Conditions { temperature: Temperature::from_celsius(celsius)?, ..*product };
        let found = peroxide::convert_interval(Strength::of(x, from)?, to, &at)?;
        Ok::<_, ConversionError>([found.low().number(), found.best().number(), found.high().number()])
    })
}

/// Densities of clear solutions in g/mL.
///
/// # Units
///
/// Strengths in % w/w, temperatures in C.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the rows of `out`.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, densities};
///
/// let mut found = [0.0; 2];
/// let outcome = densities(Cells::Each(&[12.0, 71.0]), 20.0.into(), &mut found)?;
/// assert_eq!((format!("{:.4}", found[0]), outcome.first), ("1.0415".into(), Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn densities(
    strength_ww_percent: Cells<'_>,
    temperature_c: Cells<'_>,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let best = |found: [f64; 3]| [found[1]];
    match temperature_c {
        // One temperature is looked up once (here and for dilutions by volume, not for bounds); a missing one makes every row
        // missing.
        Cells::Same(celsius) if !celsius.is_nan() => {
            let known = (Cubic::aqueous(celsius), within(celsius, MAX_CELSIUS));
            let rule = |[percent]: [f64; 1]| density_rule([percent, celsius]).map(best);
            rows_by_law([strength_ww_percent], [out], Given(known, best_density_at), rule)
        }
        _ => {
            let rule = |row| density_rule(row).map(best);
            rows_by_law([strength_ww_percent, temperature_c], [out], Given((), best_density_law), rule)
        }
    }
}

/// The same with the bounds within which independent tables agree: lower bounds, best values and upper bounds.
///
/// # Errors
///
/// [`ColumnError::Length`] unless every column has the same rows.
///
/// # Example
///
/// ```
/// use foilwork::column::density_intervals;
///
/// let (mut low, mut best, mut high) = ([0.0], [0.0], [0.0]);
/// let outcome = density_intervals(12.0.into(), 20.0.into(), [&mut low, &mut best, &mut high])?;
/// assert_eq!((format!("{:.4} to {:.4}", low[0], high[0]), outcome.refused), ("1.0410 to 1.0420".into(), 0));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn density_intervals(
    strength_ww_percent: Cells<'_>,
    temperature_c: Cells<'_>,
    out: [&mut [f64]; 3],
) -> Result<ColumnOutcome, ColumnError> {
    rows_by_law([strength_ww_percent, temperature_c], out, Given((), density_law), density_rule)
}

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn density_law((): (), [percent, celsius]: [f64; 2], machine: Machine) -> ([f64; 3], bool) {
    let good = within(percent, MAX_STRENGTH_WW) & within(celsius, MAX_CELSIUS);
    (density_bounds(&Cubic::aqueous(celsius), percent, machine), good)
}

#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn best_density_law((): (), [percent, celsius]: [f64; 2], machine: Machine) -> ([f64; 1], bool) {
    best_density_at((Cubic::aqueous(celsius), within(celsius, MAX_CELSIUS)), [percent], machine)
}

#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn best_density_at((cubic, known): (Cubic, bool), [percent]: [f64; 1], machine: Machine) -> ([f64; 1], bool) {
    let [_, best, _] = density_bounds(&cubic, percent, machine);
    ([best], known & within(percent, MAX_STRENGTH_WW))
}

#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
pub(super) fn density_bounds(cubic: &Cubic, percent: f64, machine: Machine) -> [f64; 3] {
    let (best, half) = (cubic.at(machine.over(percent, Divisor::HUNDRED)), half_width(percent));
    [best - half, best, best + half]
        .map(|density| lesser(greater(density, Density::MIN.g_per_ml()), Density::MAX.g_per_ml()))
}

fn density_rule([percent, celsius]: [f64; 2]) -> Result<[f64; 3], ConversionError> {
    let found = peroxide::density(MassFraction::from_ww_percent(percent)?, Temperature::from_celsius(celsius)?)?;
    Ok([found.low(), found.best(), found.high()].map(Density::g_per_ml))
}

/// The density of a product at a temperature, in range or not.
#[inline]
fn cubic_at(celsius: f64, product: &Conditions) -> Cubic {
    product.measured_cubic().unwrap_or_else(|| Cubic::aqueous(celsius))
}

/// A strength in another unit, the same in % w/w where a density stands between, and whether that is what the rule gives.
#[inline]
fn best(x: f64, celsius: f64, (from, to): (StrengthUnit, StrengthUnit), product: &Conditions) -> (f64, f64, bool) {
    let (vm, limit) = (product.molar_volume, product.max_ww_percent());
    let (y, percent, known) = match (from.is_by_mass(), to.is_by_mass()) {
        _ if from == to => (x, x, true),
        (false, false) => (Ratio::between(from, to, vm).apply(x), x, true),
        (true, true) => (from_ww_percent(to_ww_percent(x, from), to), x, true),
        (true, false) => {
            let percent = to_ww_percent(x, from);
            let found = g_per_l(percent, &cubic_at(celsius, product)) / g_per_l_each(to, vm);
            (found, percent, percent <= limit)
        }
        (false, true) => {
            let cubic = cubic_at(celsius, product);
            let concentration = x * g_per_l_each(from, vm);
            let percent = ww_percent(concentration, &cubic).min(limit);
            (from_ww_percent(percent, to), percent, concentration <= max_g_per_l(limit, &cubic))
        }
    };
    let good = known & within(x, from.max()) & within(y, to.max()) & within(celsius, MAX_CELSIUS);
    (y, percent, good)
}
