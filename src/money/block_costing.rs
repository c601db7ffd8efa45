//! Costs of many rows without a branch: whole numbers carried in `f64`, which is exact up to 2^53.
//!
//! A row that does not fit (more than three decimals, a negative amount, a product too large) is left to [`RowCosting`], so
//! that every row is what the scalar functions give.

use super::{
    Rounding,
    exact::{MOST_THOUSANDTHS, NEAR, Rate},
    row_costing::RowCosting,
};

/// Rows worked on at a time.
pub(crate) const BLOCK: usize = 128;

/// Products are kept below so many, that of four of them the sum is exact too.
const EXACT_BITS: u32 = 50;
const EXACT: f64 = (1_u64 << EXACT_BITS) as f64;

/// 1.5 x 2^52: adding it leaves no place for a fraction.
const SHIFT: f64 = 6_755_399_441_055_744.0;

/// 2^52: a whole number below it stands in the last bits of the sum with it.
const WHOLE: f64 = 4_503_599_627_370_496.0;

/// A block of rows, column by column. Each is where it lies.
#[derive(Clone, Copy)]
pub(crate) struct Rows<'a> {
    pub(crate) prices: &'a [i64; BLOCK],
    pub(crate) packs: &'a [f64; BLOCK],
    pub(crate) used: &'a [f64; BLOCK],
    pub(crate) wasted: &'a [f64; BLOCK],
    pub(crate) consumables: &'a [i64; BLOCK],
    pub(crate) hands_on: &'a [f64; BLOCK],
    pub(crate) chair: &'a [f64; BLOCK],
}

/// The last rows of a list, filled up to a block with rows that cost nothing.
pub(crate) struct FilledUp {
    pub(crate) prices: [i64; BLOCK],
    pub(crate) packs: [f64; BLOCK],
    pub(crate) used: [f64; BLOCK],
    pub(crate) wasted: [f64; BLOCK],
    pub(crate) consumables: [i64; BLOCK],
    pub(crate) hands_on: [f64; BLOCK],
    pub(crate) chair: [f64; BLOCK],
}

impl FilledUp {
    pub(crate) const fn rows(&self) -> Rows<'_> {
        let Self { prices, packs, used, wasted, consumables, hands_on, chair } = self;
        Rows { prices, packs, used, wasted, consumables, hands_on, chair }
    }
}

/// Product, labour, overhead and all of it.
pub(crate) type Results = [[i64; BLOCK]; 4];

/// Sums of a block: product, consumables, labour, overhead and all of it.
pub(crate) type Sums = [i64; 5];

/// The nearest whole number, for values up to 2^51.
#[inline]
fn nearest(x: f64) -> f64 {
    (x + SHIFT) - SHIFT
}

/// A measured value as whole thousandths, and whether it is that: not negative, three decimals at most.
#[inline]
fn thousandths(value: f64) -> (f64, bool) {
    let scaled = value * 1000.0;
    let whole = nearest(scaled);
    (whole, (scaled - whole).abs() <= whole * NEAR)
}

/// A whole number that is not negative and below 2^52, as what the lanes of a machine reckon with.
#[inline]
fn from_minor(amount: i64) -> f64 {
    f64::from_bits(amount.cast_unsigned() | WHOLE.to_bits()) - WHOLE
}

/// And back.
#[inline]
fn to_minor(whole: f64) -> i64 {
    (whole + WHOLE).to_bits().wrapping_sub(WHOLE.to_bits()).cast_signed()
}

/// The quotient of whole numbers up to `EXACT` that are not negative, rounded by `grows`; `near` is less than three quarters off it.
///
/// `grows` gets the quotient cut off, the rest and the divisor.
#[inline]
fn quotient(over: f64, under: f64, near: f64, grows: impl Fn(f64, f64, f64) -> bool) -> f64 {
    let near = nearest(near);
    // Exact, since both products are whole and below 2^53: the rest says which way the division was off.
    let rest = over - near * under;
    let (cut, rest) = if rest < 0.0 { (near - 1.0, rest + under) } else { (near, rest) };
    if grows(cut, rest, under) { cut + 1.0 } else { cut }
}

/// A rate for a thousandth of a minute as whole numbers that fit.
#[derive(Debug, Clone, Copy)]
struct WholeRate {
    over: f64,
    under: f64,
    /// A product with it is less than a quarter off the quotient.
    inverse: f64,
    /// The most thousandths whose product with `over` is exact.
    most: f64,
}

impl WholeRate {
    fn of(rate: Option<Rate>) -> Option<Self> {
        let (over, under) = rate?.parts();
        let fits = |least: i64, part: i64| (least..=(1_i64 << 52)).contains(&part);
        let most = (MOST_THOUSANDTHS - 1).min((1 << EXACT_BITS) / over.max(1)) as f64;
        let (over, under) = (fits(0, over) && fits(1, under)).then_some((over as f64, under as f64))?;
        Some(Self { over, under, inverse: 1.0 / under, most })
    }

    #[inline]
    fn times(self, thousandths: f64, grows: impl Fn(f64, f64, f64) -> bool) -> f64 {
        let over = self.over * thousandths;
        quotient(over, self.under, over * self.inverse, grows)
    }
}

impl RowCosting<'_> {
    /// Costs a block and sums it up; none where one of its rows does not fit, and the results are then of no use.
    pub(crate) fn block(&self, rows: Rows<'_>, out: &mut Results) -> Option<Sums> {
        let (labour, overhead) = self.rates();
        let rates = [WholeRate::of(labour)?, WholeRate::of(overhead)?];
        let twice = |rest: f64| rest + rest;
        let odd = |cut: f64| nearest(cut * 0.5) * 2.0 != cut;
        match self.rounding() {
            Rounding::MidpointAwayFromZero => in_lanes(rows, out, rates, |_, rest, under| twice(rest) >= under),
            Rounding::MidpointTowardZero => in_lanes(rows, out, rates, |_, rest, under| twice(rest) > under),
            Rounding::MidpointNearestEven => {
                in_lanes(
                    rows,
                    out,
                    rates,
                    |cut, rest, under| {
                        if twice(rest) == under { odd(cut) } else { twice(rest) > under }
                    },
                )
            }
            Rounding::ToZero | Rounding::ToNegativeInfinity => in_lanes(rows, out, rates, |_, _, _| false),
            Rounding::AwayFromZero | Rounding::ToPositiveInfinity => {
                in_lanes(rows, out, rates, |_, rest, _| rest > 0.0)
            }
        }
    }
}

/// By the widest lanes that this machine has; the numbers are the same with any.
fn in_lanes(
    rows: Rows<'_>,
    out: &mut Results,
    rates: [WholeRate; 2],
    grows: impl Fn(f64, f64, f64) -> bool,
) -> Option<Sums> {
    let (fit, sums) = pulp::Arch::new().dispatch(Block { rows, out, rates, grows });
    fit.then_some(sums)
}

/// A block and how it is rounded, for the lanes of the machine.
struct Block<'a, G> {
    rows: Rows<'a>,
    out: &'a mut Results,
    rates: [WholeRate; 2],
    grows: G,
}

impl<G: Fn(f64, f64, f64) -> bool> pulp::WithSimd for Block<'_, G> {
    type Output = (bool, Sums);

    // A closure would not do: only what is inlined gets the lanes of the machine.
    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    fn with_simd<S: pulp::Simd>(self, _lanes: S) -> (bool, Sums) {
        let Self { rows, out, rates, grows } = self;
        work(rows, out, rates, grows)
    }
}

#[expect(clippy::inline_always, reason = "as above")]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
#[inline(always)]
fn work(
    rows: Rows<'_>,
    out: &mut Results,
    [labour, overhead]: [WholeRate; 2],
    grows: impl Fn(f64, f64, f64) -> bool,
) -> (bool, Sums) {
    // As wide as the numbers: a truth of one byte would be packed and unpacked for each row.
    let (mut unfit, mut sums) = (0_u64, [0_i64; 4]);
    for row in 0..BLOCK {
        let measure = |column: &[f64; BLOCK]| column.get(row).copied().unwrap_or(f64::NAN);
        let amount = |column: &[i64; BLOCK]| column.get(row).copied().unwrap_or(i64::MIN);
        let (price, extra) = (amount(rows.prices), amount(rows.consumables));
        let (pack, pack_fits) = thousandths(measure(rows.packs));
        let (used, used_fits) = thousandths(measure(rows.used));
        let (wasted, wasted_fits) = thousandths(measure(rows.wasted));
        let (hands_on, hands_on_fits) = thousandths(measure(rows.hands_on));
        let (chair, chair_fits) = thousandths(measure(rows.chair));
        let taken = used + wasted;
        let paid = from_minor(price) * taken;
        let product = to_minor(quotient(paid, pack, paid / pack, &grows));
        let (labour_fits, overhead_fits) = (hands_on <= labour.most, chair <= overhead.most);
        let labour = to_minor(labour.times(hands_on, &grows));
        let overhead = to_minor(overhead.times(chair, &grows));
        let cost = product.wrapping_add(extra).wrapping_add(labour).wrapping_add(overhead);
        for (column, value) in out.iter_mut().zip([product, labour, overhead, cost]) {
            if let Some(slot) = column.get_mut(row) {
                *slot = value;
            }
        }
        for (sum, value) in sums.iter_mut().zip([product, extra, labour, overhead]) {
            *sum = sum.wrapping_add(value);
        }
        // Neither is negative, nor has bits that a product would have to be exact in.
        let amounts = (price | extra).cast_unsigned() >> EXACT_BITS == 0;
        let measures = pack_fits & used_fits & wasted_fits & hands_on_fits & chair_fits;
        // Below the most, where what is dust here would be too much there.
        let most = if pack > taken { pack } else { taken };
        let bounded = (pack > 0.0) & (most < MOST_THOUSANDTHS as f64) & (paid <= EXACT);
        unfit |= u64::from(!(amounts & measures & bounded & labour_fits & overhead_fits));
    }
    let [product, extra, labour, overhead] = sums;
    let cost = product.wrapping_add(extra).wrapping_add(labour).wrapping_add(overhead);
    (unfit == 0, [product, extra, labour, overhead, cost])
}
