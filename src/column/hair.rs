//! Diameters, cuts and growth of hair. The rules of the room refuse nothing themselves, and their arithmetic is used where it is:
//! `Cut`, and `hair::kernel` for growth. Said once more, without a branch, are the ends of a range, which of the corners are
//! bounds, and the two divisions by one number for all rows, which are three steps in lanes. The tests in
//! `tests/properties/column/hair.rs` hold all of it to the rules, bit for bit.

use super::{
    Cells, ColumnError, ColumnOutcome,
    divisor::{Divisor, Machine},
    ratio::{Range, in_ratio},
    rows::{Given, greater, lesser, rows_by_law},
};
use crate::{
    hair::{
        self, Cut, Diameter, DiameterMethod, GrowthRate, Weeks,
        kernel::{cm_grown, weekly, weeks_for},
    },
    peroxide::kernel::Ratio,
    quantity::{InvalidQuantity, Length, Quantity},
    source::Interval,
};

/// The diameters that a caliper would read, in um.
///
/// # Errors
///
/// [`ColumnError::Length`] unless both columns have the same rows.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, diameters_by_caliper}, hair::DiameterMethod};
///
/// let mut um = [0.0; 2];
/// let outcome = diameters_by_caliper(Cells::Each(&[108.78, 400.0]), DiameterMethod::ScalpCamera, &mut um)?;
/// assert_eq!((format!("{:.1}", um[0]), outcome.first), ("77.1".into(), Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn diameters_by_caliper(
    read_um: Cells<'_>,
    method: DiameterMethod,
    out: &mut [f64],
) -> Result<ColumnOutcome, ColumnError> {
    let [least, most] = [Diameter::MIN, Diameter::MAX].map(Diameter::um);
    let over = method.over_caliper();
    // What a caliper would read below the least is left to the rule, which says the least.
    let range = Range { least: (least * over).next_up(), most_in: most, most_out: most };
    in_ratio(read_um, out, Ratio::Over(over), range, |[read]| {
        Ok::<_, InvalidQuantity>([method.by_caliper(Diameter::from_um(read)?).um()])
    })
}

/// Areas in um2 and circumferences in mm of cuts through hairs, by their axes in um.
///
/// # Errors
///
/// [`ColumnError::Length`] unless all columns have the same rows.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, hair_cuts};
///
/// let (mut um2, mut mm) = ([0.0; 2], [0.0; 2]);
/// let outcome = hair_cuts([60.7.into(), Cells::Each(&[85.6, 0.0])], [&mut um2, &mut mm])?;
/// assert_eq!((format!("{:.0} {:.4}", um2[0], mm[0]), outcome.first), ("4081 0.2315".into(), Some(1)));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn hair_cuts(axes_um: [Cells<'_>; 2], out: [&mut [f64]; 2]) -> Result<ColumnOutcome, ColumnError> {
    let cut = |[one, other]: [Diameter; 2]| {
        let cut = Cut::new(one, other);
        [cut.area().um2(), cut.circumference().mm()]
    };
    let law = move |axes: [f64; 2]| {
        let [one, other] = axes;
        (cut(axes.map(Diameter::nearest)), inside::<Diameter>(one) & inside::<Diameter>(other))
    };
    rows_by_law(axes_um, out, law, |[one, other]| {
        Ok::<_, InvalidQuantity>(cut([Diameter::from_um(one)?, Diameter::from_um(other)?]))
    })
}

/// Regrowth in cm with its bounds, by weeks and rates in cm a month with theirs: each is low, best, high.
///
/// A row whose bounds are out of order takes them in order.
///
/// # Errors
///
/// [`ColumnError::Length`] unless all columns have the same rows.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, regrowths};
///
/// let (mut low, mut best, mut high) = ([0.0; 2], [0.0; 2], [0.0; 2]);
/// let weeks = [8.0, -1.0];
/// let rates = [0.8, 1.12, 1.4].map(Cells::from);
/// let outcome = regrowths([Cells::Each(&weeks); 3], rates, [&mut low, &mut best, &mut high])?;
/// assert_eq!((format!("{:.2}", best[0]), outcome.first), ("2.06".into(), Some(1)));
/// assert!(low[0] < best[0] && best[0] < high[0]);
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn regrowths(
    weeks: [Cells<'_>; 3],
    rates_cm_per_month: [Cells<'_>; 3],
    out: [&mut [f64]; 3],
) -> Result<ColumnOutcome, ColumnError> {
    with_bounds(weeks, rates_cm_per_month, out, length_after, |weeks: Interval<Weeks>, rate: Interval<GrowthRate>| {
        hair::grown(weeks, rate).to_array().map(Length::cm)
    })
}

/// Weeks after which so much has grown, with their bounds: the inverse of [`regrowths`].
///
/// # Errors
///
/// [`ColumnError::Length`] unless all columns have the same rows.
///
/// # Example
///
/// ```
/// use foilwork::column::{Cells, growth_times};
///
/// let (mut low, mut best, mut high) = ([0.0; 2], [0.0; 2], [0.0; 2]);
/// let (lengths, rate) = ([2.0, f64::NAN], Cells::from(1.12));
/// let outcome = growth_times([Cells::Each(&lengths); 3], [rate; 3], [&mut low, &mut best, &mut high])?;
/// assert_eq!((format!("{:.1}", best[0]), best[1].is_nan(), outcome.refused), ("7.8".into(), true, 0));
/// # Ok::<(), foilwork::column::ColumnError>(())
/// ```
pub fn growth_times(
    lengths_cm: [Cells<'_>; 3],
    rates_cm_per_month: [Cells<'_>; 3],
    out: [&mut [f64]; 3],
) -> Result<ColumnOutcome, ColumnError> {
    with_bounds(
        lengths_cm,
        rates_cm_per_month,
        out,
        weeks_until,
        |length: Interval<Length>, rate: Interval<GrowthRate>| {
            hair::weeks_to_grow(length, rate).to_array().map(Weeks::weeks)
        },
    )
}

fn with_bounds<A: Quantity, B: Quantity>(
    [a, b, c]: [Cells<'_>; 3],
    [d, e, f]: [Cells<'_>; 3],
    out: [&mut [f64]; 3],
    law: impl Fn((), [f64; 6], Machine) -> ([f64; 3], bool) + Copy + Sync,
    rule: impl Fn(Interval<A>, Interval<B>) -> [f64; 3] + Copy + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    let rule = |[a, b, c, d, e, f]: [f64; 6]| {
        let one = Interval::ordered(A::from_unit(a)?, A::from_unit(b)?, A::from_unit(c)?);
        let other = Interval::ordered(B::from_unit(d)?, B::from_unit(e)?, B::from_unit(f)?);
        Ok::<_, InvalidQuantity>(rule(one, other))
    };
    let exact = [&a, &c].iter().all(|bound| bound.is(&b)) && [&d, &f].iter().all(|bound| bound.is(&e));
    if !exact {
        return rows_by_law([a, b, c, d, e, f], out, Given((), law), rule);
    }
    // Three times the same: worked out once, and written thrice.
    let [low, best, high] = out;
    [&low, &high].into_iter().try_for_each(|bound| Cells::Each(bound).fits(best.len()))?;
    let thrice = |x: f64, y: f64| [x, x, x, y, y, y];
    let once = |[x, y]: [f64; 2]| rule(thrice(x, y)).map(|[_, found, _]| [found]);
    let outcome = rows_by_law([b, e], [&mut *best], Given(law, middle), once)?;
    low.copy_from_slice(best);
    high.copy_from_slice(best);
    Ok(outcome)
}

/// The best estimate where there are no bounds.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn middle<L: Fn((), [f64; 6], Machine) -> ([f64; 3], bool)>(
    law: L,
    [x, y]: [f64; 2],
    machine: Machine,
) -> ([f64; 1], bool) {
    let ([_, best, _], good) = law((), [x, x, x, y, y, y], machine);
    ([best], good)
}

/// More weeks and a faster growth are more hair.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn length_after((): (), row: [f64; 6], machine: Machine) -> ([f64; 3], bool) {
    let ([few, weeks, many], [slow, rate, fast], good) = in_order::<Weeks>(row, machine);
    let grown = |weeks: f64, cm_per_week: f64| {
        lesser(greater(cm_grown(weeks, cm_per_week), Length::MIN.cm()), Length::MAX.cm())
    };
    ([grown(few, slow), grown(weeks, rate), grown(many, fast)], good)
}

/// The faster the growth, the sooner.
#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn weeks_until((): (), row: [f64; 6], machine: Machine) -> ([f64; 3], bool) {
    let ([short, length, long], [slow, rate, fast], good) = in_order::<Length>(row, machine);
    let until =
        |cm: f64, cm_per_week: f64| lesser(greater(weeks_for(cm, cm_per_week), Weeks::MIN.weeks()), Weeks::MAX.weeks());
    ([until(short, fast), until(length, rate), until(long, slow)], good)
}

/// Bounds around their best estimates, and rates in cm a week.
#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn in_order<A: Quantity>([a, b, c, d, e, f]: [f64; 6], machine: Machine) -> ([f64; 3], [f64; 3], bool) {
    let good = inside::<A>(a) & inside::<A>(b) & inside::<A>(c);
    let good = good & inside::<GrowthRate>(d) & inside::<GrowthRate>(e) & inside::<GrowthRate>(f);
    let ordered =
        |one: f64, best: f64, other: f64| [lesser(lesser(one, other), best), best, greater(greater(one, other), best)];
    let rate = |cm_per_month: f64| weekly(machine.over(cm_per_month, Divisor::DAYS_OF_MONTH));
    (ordered(a, b, c), ordered(rate(d), rate(e), rate(f)), good)
}

/// Well inside the range of a type; the rule itself is asked about the lower end, where a zero may have a sign.
#[inline]
fn inside<Q: Quantity>(number: f64) -> bool {
    (number > Q::MIN.in_unit()) & (number <= Q::MAX.in_unit())
}
