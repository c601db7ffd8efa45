use super::{
    Cells, ColumnError, ColumnOutcome,
    cells::BLOCK,
    divisor::Machine,
    split::{WORTH_A_THREAD, many_in_parts},
};
use crate::threads::share_out;

/// Applies a scalar rule row by row: `N` input columns, `M` output columns.
///
/// A row with a missing (not-a-number) input gives missing outputs. A row that the rule refuses does too, and is
/// counted. Long columns are worked off by all processors.
///
/// # Errors
///
/// [`ColumnError::Length`] unless all columns have the length of the first output.
///
/// # Example
///
/// ```
/// use foilwork::{column::{Cells, rows}, quantity::{Mass, MassFraction}, peroxide::dilute};
///
/// let (mut stock, mut diluent) = ([0.0; 3], [0.0; 3]);
/// let targets = [3.0, 20.0, f64::NAN];
/// let inputs = [Cells::Same(12.0), Cells::Each(&targets), Cells::Same(60.0)];
/// let outcome = rows(inputs, [&mut stock, &mut diluent], |[stock, target, total]| {
///     let (stock, target) = (MassFraction::from_ww_percent(stock)?, MassFraction::from_ww_percent(target)?);
///     let blend = dilute(stock, target, Mass::from_g(total)?)?;
///     Ok::<_, Box<dyn std::error::Error>>([blend.stock.g(), blend.diluent.g()])
/// })?;
/// assert_eq!((stock[0], diluent[0]), (15.0, 45.0));
/// assert!(stock[1].is_nan() && stock[2].is_nan());
/// assert_eq!((outcome.refused, outcome.first), (1, Some(1)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn rows<const N: usize, const M: usize, E>(
    inputs: [Cells<'_>; N],
    outputs: [&mut [f64]; M],
    rule: impl Fn([f64; N]) -> Result<[f64; M], E> + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    let parts = share_out(outputs.first().map_or(0, |column| column.len()), WORTH_A_THREAD);
    all_rows(inputs, outputs, parts, |_: [f64; N]| ([f64::NAN; M], false), rule)
}

/// A rule without its branches: with each answer it says whether that is what the rule gives, bit for bit; it may say no where
/// it does not know.
pub(super) trait Law<const N: usize, const M: usize>: Copy + Sync {
    /// Rows below which a thread costs more than it saves.
    const WORTH_A_THREAD: usize;

    /// Whether it gains by eight lanes: where memory is what a law waits for, or its numbers are more than the machine holds
    /// at hand, it loses by them.
    const WIDEST: bool = false;

    /// The answer for a row.
    fn row(self, values: [f64; N]) -> ([f64; M], bool);

    /// The same answer, where the machine has lanes and does a product and a sum in one step.
    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    fn row_in_lanes(self, values: [f64; N]) -> ([f64; M], bool) {
        self.row(values)
    }
}

impl<const N: usize, const M: usize, L: Fn([f64; N]) -> ([f64; M], bool) + Copy + Sync> Law<N, M> for L {
    /// It is short.
    const WORTH_A_THREAD: usize = 262_144;

    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    fn row(self, values: [f64; N]) -> ([f64; M], bool) {
        self(values)
    }
}

/// A law with what it knows beforehand. A function that is marked so is inlined however long it is, which no closure with a name can
/// ask for:
/// one that is called instead has no lanes, and takes five to twenty times as long.
#[derive(Clone, Copy)]
pub(super) struct Given<K, F>(pub(super) K, pub(super) F);

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
impl<K: Copy + Sync, F, const N: usize, const M: usize> Law<N, M> for Given<K, F>
where
    F: Fn(K, [f64; N], Machine) -> ([f64; M], bool) + Copy + Sync,
{
    const WORTH_A_THREAD: usize = 65_536;

    #[inline(always)]
    fn row(self, values: [f64; N]) -> ([f64; M], bool) {
        (self.1)(self.0, values, Machine { fuses: false })
    }

    #[inline(always)]
    fn row_in_lanes(self, values: [f64; N]) -> ([f64; M], bool) {
        (self.1)(self.0, values, Machine { fuses: true })
    }
}

/// A law that works long on a row of few numbers, for the widest lanes that the machine has.
#[derive(Clone, Copy)]
pub(super) struct Widest<L>(pub(super) L);

#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
impl<L: Law<N, M>, const N: usize, const M: usize> Law<N, M> for Widest<L> {
    const WORTH_A_THREAD: usize = L::WORTH_A_THREAD;
    const WIDEST: bool = true;

    #[inline(always)]
    fn row(self, values: [f64; N]) -> ([f64; M], bool) {
        self.0.row(values)
    }

    #[inline(always)]
    fn row_in_lanes(self, values: [f64; N]) -> ([f64; M], bool) {
        self.0.row_in_lanes(values)
    }
}

/// Applies a law without a branch to whole blocks, and the scalar rule to those rows alone that the law does not vouch for.
pub(super) fn rows_by_law<L: Law<N, M>, const N: usize, const M: usize, E>(
    inputs: [Cells<'_>; N],
    outputs: [&mut [f64]; M],
    law: L,
    rule: impl Fn([f64; N]) -> Result<[f64; M], E> + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    let parts = share_out(outputs.first().map_or(0, |column| column.len()), L::WORTH_A_THREAD);
    all_rows(inputs, outputs, parts, law, rule)
}

#[inline]
fn all_rows<const N: usize, const M: usize, E>(
    inputs: [Cells<'_>; N],
    outputs: [&mut [f64]; M],
    parts: usize,
    law: impl Law<N, M>,
    rule: impl Fn([f64; N]) -> Result<[f64; M], E> + Sync,
) -> Result<ColumnOutcome, ColumnError> {
    let count = outputs.first().map_or(0, |column| column.len());
    inputs.iter().try_for_each(|column| column.fits(count))?;
    outputs.iter().try_for_each(|column| Cells::Each(column).fits(count))?;
    Ok(many_in_parts(outputs, parts, |first_row, outputs| one_part(&inputs, first_row, outputs, law, &rule)))
}

/// Works off the rows of one thread.
fn one_part<L: Law<N, M>, const N: usize, const M: usize, E>(
    inputs: &[Cells<'_>; N],
    first_row: usize,
    mut outputs: [&mut [f64]; M],
    law: L,
    rule: impl Fn([f64; N]) -> Result<[f64; M], E>,
) -> ColumnOutcome {
    let count = outputs.first().map_or(0, |column| column.len());
    // The lanes that this machine has; the numbers are the same with any.
    let arch = pulp::Arch::new();
    let mut outcome = ColumnOutcome::default();
    let mut scratch = [[0.0; BLOCK]; N];
    for (block, cells) in scratch.iter_mut().zip(inputs) {
        if let Cells::Same(value) = cells {
            block.fill(*value);
        }
    }
    let mut answers = [[0.0; BLOCK]; M];
    for start in (0..count).step_by(BLOCK) {
        let rows = BLOCK.min(count - start);
        let mut filled = scratch.iter_mut().zip(inputs);
        let blocks: [&[f64; BLOCK]; N] = std::array::from_fn(|_| {
            filled.next().map_or(&MISSING, |(scratch, cells)| cells.block(first_row + start, rows, scratch))
        });
        let mut fill = |answers: &mut [[f64; BLOCK]; M]| {
            let block = Block { blocks, answers: &mut *answers, law };
            if !(if L::WIDEST { arch.dispatch(block) } else { in_usual_lanes(arch, block) }) {
                #[cfg(test)]
                super::left::block();
                for row in 0..rows {
                    let values = at(blocks, row);
                    if !law.row(values).1 {
                        #[cfg(test)]
                        super::left::row(first_row + start + row);
                        let answer = by_rule(values, &rule, || outcome.refuse(first_row + start + row));
                        put(answers, row, answer);
                    }
                }
            }
        };
        // One column of answers is written where it belongs; of several the lanes do not know that they lie apart.
        if let Some(answers) = only_block(&mut outputs, start) {
            fill(answers);
            continue;
        }
        fill(&mut answers);
        for (column, block) in outputs.iter_mut().zip(&answers) {
            if let (Some(slots), Some(values)) = (column.get_mut(start..start + rows), block.get(..rows)) {
                slots.copy_from_slice(values);
            }
        }
    }
    outcome
}

/// By four lanes where the machine has eight.
#[inline]
fn in_usual_lanes<W: pulp::WithSimd>(arch: pulp::Arch, work: W) -> W::Output {
    match arch {
        #[cfg(target_arch = "x86_64")]
        pulp::Arch::V4(eight) => pulp::Simd::vectorize(*eight, work),
        arch => arch.dispatch(work),
    }
}

/// A whole block of the only column.
fn only_block<'a, const M: usize>(columns: &'a mut [&mut [f64]; M], start: usize) -> Option<&'a mut [[f64; BLOCK]; M]> {
    let block = columns.first_mut()?.get_mut(start..)?.first_chunk_mut()?;
    std::array::from_mut(block).as_mut_slice().try_into().ok()
}

/// A block and its law, for the lanes of the machine. The law comes by value: what it holds then lies apart from the answers,
/// and need not be read again for each row.
struct Block<'a, const N: usize, const M: usize, L> {
    blocks: [&'a [f64; BLOCK]; N],
    answers: &'a mut [[f64; BLOCK]; M],
    law: L,
}

impl<const N: usize, const M: usize, L: Law<N, M>> pulp::WithSimd for Block<'_, N, M, L> {
    type Output = bool;

    #[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
    #[inline(always)]
    fn with_simd<S: pulp::Simd>(self, _lanes: S) -> bool {
        let Self { blocks, answers, law } = self;
        // Where there are lanes, there is a product and a sum in one step too.
        if S::F64_LANES > 1 {
            whole_block(blocks, answers, |row| law.row_in_lanes(row))
        } else {
            whole_block(blocks, answers, |row| law.row(row))
        }
    }
}

/// The lesser of two numbers, where neither is missing: one step, and three where a missing number has to be heeded.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
pub(super) fn lesser(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The greater, likewise.
#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
pub(super) fn greater(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// From 0 to a maximum, without a branch.
#[inline]
pub(super) fn within(x: f64, most: f64) -> bool {
    between(x, 0.0, most)
}

/// From the least to the most, without a branch.
#[inline]
#[expect(clippy::needless_bitwise_bool, reason = "a lazy operator is a branch")]
pub(super) fn between(x: f64, least: f64, most: f64) -> bool {
    (x >= least) & (x <= most)
}

static MISSING: [f64; BLOCK] = [f64::NAN; BLOCK];

/// The law over a whole block, without a branch for each row so that the loop vectorises; says whether it vouches for all.
#[expect(clippy::inline_always, reason = "only what is inlined gets the lanes of the machine")]
#[inline(always)]
fn whole_block<const N: usize, const M: usize>(
    blocks: [&[f64; BLOCK]; N],
    answers: &mut [[f64; BLOCK]; M],
    law: impl Fn([f64; N]) -> ([f64; M], bool),
) -> bool {
    // As wide as the numbers: a truth of one byte would be packed and unpacked for each row.
    let mut bad = 0_u64;
    for row in 0..BLOCK {
        let (answer, good) = law(at(blocks, row));
        put(answers, row, answer);
        bad |= u64::from(!good);
    }
    bad == 0
}

#[inline]
fn by_rule<const N: usize, const M: usize, E>(
    values: [f64; N],
    rule: impl Fn([f64; N]) -> Result<[f64; M], E>,
    refuse: impl FnOnce(),
) -> [f64; M] {
    if values.iter().any(|value| value.is_nan()) {
        return [f64::NAN; M];
    }
    rule(values).unwrap_or_else(|_| {
        refuse();
        [f64::NAN; M]
    })
}

/// A row of the blocks. Within a block the bound is known, so nothing is checked.
#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn at<const N: usize>(blocks: [&[f64; BLOCK]; N], row: usize) -> [f64; N] {
    blocks.map(|block| block.get(row).copied().unwrap_or(f64::NAN))
}

#[expect(clippy::inline_always, reason = "as above")]
#[inline(always)]
fn put<const M: usize>(answers: &mut [[f64; BLOCK]; M], row: usize, answer: [f64; M]) {
    for (block, value) in answers.iter_mut().zip(answer) {
        if let Some(slot) = block.get_mut(row) {
            *slot = value;
        }
    }
}
