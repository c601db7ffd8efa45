//! Costs of many rows without a branch: whole numbers carried in `f64`, which is exact up to 2^53, and one division each.
//!
//! A row that does not fit (more than three decimals, a negative amount, a product too large) is left to [`RowCosting`], so
//! that every row is what the scalar functions give.

use super::{
    Rounding,
    exact::{MOST_THOUSANDTHS, Rate},
    row_costing::RowCosting,
};

/// Rows worked on at a time.
pub(crate) const BLOCK: usize = 128;

/// Whole numbers so far below what `f64` holds all of that the sum of four of them still fits.
const EXACT: f64 = 1_125_899_906_842_624.0; // 2^50

/// 1.5 x 2^52: adding it leaves no place for a fraction.
const SHIFT: f64 = 6_755_399_441_055_744.0;

/// A block of rows, column by column: price of the pack, pack, used, wasted, consumables, hands-on and chair time.
pub(crate) type Rows = [[f64; BLOCK]; 7];

/// Product, labour, overhead and all of it.
pub(crate) type Results = [[f64; BLOCK]; 4];

/// The nearest whole number, for values up to 2^51.
#[inline]
fn nearest(x: f64) -> f64 {
    (x + SHIFT) - SHIFT
}

/// A measured value as whole thousandths, and whether it is that: not negative, three decimals at most.
#[inline]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
fn thousandths(value: f64) -> (f64, bool) {
    let whole = nearest(value * 1000.0);
    (whole, (whole >= 0.0) & (whole <= MOST_THOUSANDTHS as f64) & (whole / 1000.0 == value))
}

/// The whole quotient of numbers that are whole and not negative, rounded by `grows`, and whether it is exact.
///
/// `grows` gets the quotient cut off, the rest and the divisor.
#[inline]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
fn quotient(over: f64, under: f64, grows: impl Fn(f64, f64, f64) -> bool) -> (f64, bool) {
    let near = nearest(over / under);
    // Exact, since both products are whole and below 2^53: the rest says which way the division was off.
    let rest = over - near * under;
    let (cut, rest) = if rest < 0.0 { (near - 1.0, rest + under) } else { (near, rest) };
    let (cut, rest) = if rest >= under { (cut + 1.0, rest - under) } else { (cut, rest) };
    let found = if grows(cut, rest, under) { cut + 1.0 } else { cut };
    (found, (over <= EXACT) & (under > 0.0) & (under <= EXACT))
}

/// A rate as whole numbers that fit.
fn whole(rate: Option<Rate>) -> Option<(f64, f64)> {
    let (over, under) = rate?.parts();
    let fits = |part: i64| (0..=(1_i64 << 52)).contains(&part);
    (fits(over) && fits(under)).then_some((over as f64, under as f64))
}

impl RowCosting<'_> {
    /// Costs a block; says for each row whether the answer holds.
    pub(crate) fn block(&self, rows: &Rows, out: &mut Results, good: &mut [bool; BLOCK]) {
        let (labour, overhead) = self.rates();
        let (Some(labour), Some(overhead)) = (whole(labour), whole(overhead)) else {
            *good = [false; BLOCK];
            return;
        };
        let rates = [labour, overhead];
        // The widest lanes that this machine has; the numbers are the same with any.
        let arch = pulp::Arch::new();
        let twice = |rest: f64| rest + rest;
        let odd = |cut: f64| nearest(cut * 0.5) * 2.0 != cut;
        match self.rounding() {
            Rounding::MidpointAwayFromZero => {
                arch.dispatch(|| work(rows, out, good, rates, |_, rest, under| twice(rest) >= under));
            }
            Rounding::MidpointTowardZero => {
                arch.dispatch(|| work(rows, out, good, rates, |_, rest, under| twice(rest) > under));
            }
            Rounding::MidpointNearestEven => {
                let grows =
                    |cut: f64, rest: f64, under: f64| if twice(rest) == under { odd(cut) } else { twice(rest) > under };
                arch.dispatch(|| work(rows, out, good, rates, grows));
            }
            Rounding::ToZero | Rounding::ToNegativeInfinity => {
                arch.dispatch(|| work(rows, out, good, rates, |_, _, _| false));
            }
            Rounding::AwayFromZero | Rounding::ToPositiveInfinity => {
                arch.dispatch(|| work(rows, out, good, rates, |_, rest, _| rest > 0.0));
            }
        }
    }
}

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn work(
    rows: &Rows,
    out: &mut Results,
    good: &mut [bool; BLOCK],
    [labour, overhead]: [(f64, f64); 2],
    grows: impl Fn(f64, f64, f64) -> bool,
) {
    let [prices, packs, used, wasted, consumables, hands_on, chair] = rows;
    // Arrays of its own, which overlap nothing: else no row could be read before the one above it is written.
    let (mut found, mut holds) = ([[0.0; BLOCK]; 4], [false; BLOCK]);
    let [products, labours, overheads, costs] = &mut found;
    for row in 0..BLOCK {
        let at = |column: &[f64; BLOCK]| column.get(row).copied().unwrap_or(f64::NAN);
        let (price, extra) = (at(prices), at(consumables));
        let (pack, pack_fits) = thousandths(at(packs));
        let (used, used_fits) = thousandths(at(used));
        let (wasted, wasted_fits) = thousandths(at(wasted));
        let (hands_on, hands_on_fits) = thousandths(at(hands_on));
        let (chair, chair_fits) = thousandths(at(chair));
        let taken = used + wasted;
        let (product, product_fits) = quotient(price * taken, pack, &grows);
        let (labour, labour_fits) = quotient(labour.0 * hands_on, labour.1, &grows);
        let (overhead, overhead_fits) = quotient(overhead.0 * chair, overhead.1, &grows);
        let amounts = (0.0..=EXACT).contains(&price) & (0.0..=EXACT).contains(&extra);
        let measures = pack_fits & used_fits & wasted_fits & hands_on_fits & chair_fits;
        let fits = amounts & measures & (0.0..=MOST_THOUSANDTHS as f64).contains(&taken);
        let set = |column: &mut [f64; BLOCK], value: f64| {
            if let Some(slot) = column.get_mut(row) {
                *slot = value;
            }
        };
        set(products, product);
        set(labours, labour);
        set(overheads, overhead);
        set(costs, product + extra + labour + overhead);
        if let Some(slot) = holds.get_mut(row) {
            *slot = fits & product_fits & labour_fits & overhead_fits;
        }
    }
    (*out, *good) = (found, holds);
}
