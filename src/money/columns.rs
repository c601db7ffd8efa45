use super::{
    Labour, Money, MoneyError, Overhead, Rounding, ServiceColumns,
    block_costing::{BLOCK, Results},
    row_costing::RowCosting,
};
use crate::threads;
use serde::Serialize;
use std::ops::Range;

/// Where the costs go: columns of the same length, whole minor units.
#[derive(Debug)]
pub struct CostColumns<'a> {
    /// Product, waste included.
    pub product_minor: &'a mut [i64],
    /// Labour.
    pub labour_minor: &'a mut [i64],
    /// Overhead.
    pub overhead_minor: &'a mut [i64],
    /// The three and the consumables together.
    pub cost_minor: &'a mut [i64],
}

/// The sums of the columns: product, consumables, labour and overhead make the cost.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ColumnTotals {
    /// How many services.
    pub rows: usize,
    /// Product.
    pub product: Money,
    /// Consumables.
    pub consumables: Money,
    /// Labour.
    pub labour: Money,
    /// Overhead.
    pub overhead: Money,
    /// All of it.
    pub cost: Money,
}

/// What is wrong with the columns.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ColumnError {
    /// Columns of different lengths.
    #[error("column {column} has {got} rows and pack_price_minor has {want}: give every column the same length")]
    Length {
        /// Which column.
        column: &'static str,
        /// Its length.
        got: usize,
        /// The length of the first column.
        want: usize,
    },
    /// Rows that cannot be costed.
    #[error("row {row}: {problem} ({bad_rows} of {rows} rows cannot be costed; rows count from 0)")]
    Row {
        /// The first of them, counted from 0.
        row: usize,
        /// What is wrong with it.
        problem: MoneyError,
        /// How many there are.
        bad_rows: usize,
        /// How many rows in all.
        rows: usize,
    },
    /// The rows are fine, their sum is too large.
    #[error(transparent)]
    Total(#[from] MoneyError),
}

/// Costs a long list of services; each row is exactly what the scalar functions give ([`cost_line`](super::cost_line())),
/// and no memory is allocated but for the threads that long columns are worked off with.
///
/// # Units
///
/// As the fields say. Labour and overhead set the currency of the `_minor` columns.
///
/// # Errors
///
/// [`ColumnError::Length`] before anything is written. [`ColumnError::Row`] after every row was tried: bad rows hold 0
/// in every column, and the error names the first and counts them. A value that is not a number makes a bad row.
///
/// # Example
///
/// ```
/// use foilwork::{business::*, money::*, quantity::Duration};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let (paid, productive) = (Duration::from_h(40.0)?, Duration::from_h(30.0)?);
/// let labour = Labour::new(euros("15.00")?, OnCosts::from_percent(20.into())?, paid, productive)?; // 0.40 a minute
/// let overhead = Overhead::new(euros("60000.00")?, 4, Duration::from_h(1500.0)?)?; // 10.00 an hour
/// let services = ServiceColumns {
///     pack_price_minor: &[2640, 980],
///     pack_g: &[500.0, 60.0],
///     used_g: &[40.0, 30.0],
///     wasted_g: &[5.0, 0.0],
///     consumables_minor: &[210, 35],
///     hands_on_min: &[70.0, 15.0],
///     chair_min: &[120.0, 40.0],
/// };
/// let mut columns = [[0_i64; 2]; 4];
/// let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
/// let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
/// let totals = cost_columns(&services, &labour, &overhead, Rounding::MidpointAwayFromZero, out)?;
/// assert_eq!(columns, [[238, 490], [2800, 600], [2000, 667], [5248, 1792]]);
/// assert_eq!(totals.cost.to_string(), "70.40 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn cost_columns(
    services: &ServiceColumns<'_>,
    labour: &Labour,
    overhead: &Overhead,
    rounding: Rounding,
    out: CostColumns<'_>,
) -> Result<ColumnTotals, ColumnError> {
    let rows = services.pack_price_minor.len();
    let (totals, Bad { count, kept }) = costed_apart(services, (labour, overhead, rounding), out, 1)?;
    match kept.into_iter().next() {
        Some(BadRow { row, problem }) => Err(ColumnError::Row { row, problem, bad_rows: count, rows }),
        None => Ok(totals),
    }
}

/// A row that cannot be costed, counted from 0.
#[derive(Debug, Clone, PartialEq)]
pub struct BadRow {
    /// Which.
    pub row: usize,
    /// What is wrong with it.
    pub problem: MoneyError,
}

/// The same with the rows that cannot be costed kept apart: they hold 0 in every column and are listed in their order.
///
/// # Units
///
/// As for [`cost_columns`].
///
/// # Errors
///
/// [`ColumnError`] for columns of different lengths, currencies that differ, and a sum that is too large.
///
/// # Example
///
/// ```
/// use foilwork::{business::*, money::*, quantity::Duration};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let (paid, productive) = (Duration::from_h(40.0)?, Duration::from_h(30.0)?);
/// let labour = Labour::new(euros("15.00")?, OnCosts::from_percent(20.into())?, paid, productive)?;
/// let overhead = Overhead::new(euros("60000.00")?, 4, Duration::from_h(1500.0)?)?;
/// let services = ServiceColumns {
///     pack_price_minor: &[2640, 980],
///     pack_g: &[500.0, -60.0],
///     used_g: &[40.0, 30.0],
///     wasted_g: &[5.0, 0.0],
///     consumables_minor: &[210, 35],
///     hands_on_min: &[70.0, 15.0],
///     chair_min: &[120.0, 40.0],
/// };
/// let mut columns = [[0_i64; 2]; 4];
/// let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
/// let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
/// let (totals, bad) = cost_columns_apart(&services, &labour, &overhead, Rounding::MidpointAwayFromZero, out)?;
/// assert_eq!((columns[3], bad[0].row, totals.cost.to_string()), ([5248, 0], 1, "52.48 EUR".to_owned()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn cost_columns_apart(
    services: &ServiceColumns<'_>,
    labour: &Labour,
    overhead: &Overhead,
    rounding: Rounding,
    out: CostColumns<'_>,
) -> Result<(ColumnTotals, Vec<BadRow>), ColumnError> {
    costed_apart(services, (labour, overhead, rounding), out, usize::MAX).map(|(totals, bad)| (totals, bad.kept))
}

/// How many rows are bad, and the first of them, as many as are asked for.
#[derive(Debug, Default)]
struct Bad {
    count: usize,
    kept: Vec<BadRow>,
}

fn costed_apart(
    services: &ServiceColumns<'_>,
    (labour, overhead, rounding): (&Labour, &Overhead, Rounding),
    out: CostColumns<'_>,
    most_bad: usize,
) -> Result<(ColumnTotals, Bad), ColumnError> {
    let rows = check_lengths(services, &out)?;
    let currency = labour.currency();
    Money::zero(currency).same_currency(Money::zero(overhead.currency()))?;
    let costing = RowCosting::new(labour, overhead, currency, rounding);
    let Tally { bad, sums } = in_parts(&costing, services, out, most_bad);
    let sum = |sum: i128| {
        let too_large = MoneyError::TooLarge { field: "total" };
        i64::try_from(sum).map(|minor| Money::from_minor(minor, currency)).map_err(|_| too_large)
    };
    let [product, consumables, labour, overhead, cost] = sums;
    let totals = ColumnTotals {
        rows,
        product: sum(product)?,
        consumables: sum(consumables)?,
        labour: sum(labour)?,
        overhead: sum(overhead)?,
        cost: sum(cost)?,
    };
    Ok((totals, bad))
}

/// What a stretch of rows comes to.
#[derive(Debug, Default)]
struct Tally {
    bad: Bad,
    sums: [i128; 5],
}

/// Rows below which starting a thread costs more than it saves.
const WORTH_A_THREAD: usize = 16_384;

/// Works the rows off in stretches, one for each processor where there are enough of them.
fn in_parts(costing: &RowCosting<'_>, services: &ServiceColumns<'_>, out: CostColumns<'_>, most_bad: usize) -> Tally {
    let parts = threads::share_out(services.pack_price_minor.len(), WORTH_A_THREAD);
    let CostColumns { product_minor, labour_minor, overhead_minor, cost_minor } = out;
    let columns = [product_minor, labour_minor, overhead_minor, cost_minor];
    let stretch = |from: usize, out: [&mut [i64]; 4]| costed(costing, services, from, out, most_bad);
    threads::in_parts(columns, (parts, BLOCK), stretch, |mut all, one| {
        all.bad.count += one.bad.count;
        let room = most_bad.saturating_sub(all.bad.kept.len());
        all.bad.kept.extend(one.bad.kept.into_iter().take(room));
        for (sum, part) in all.sums.iter_mut().zip(one.sums) {
            *sum += part;
        }
        all
    })
}

/// Costs the rows from `from` that `out` has places for, block by block.
fn costed(
    costing: &RowCosting<'_>,
    services: &ServiceColumns<'_>,
    from: usize,
    mut out: [&mut [i64]; 4],
    most_bad: usize,
) -> Tally {
    let rows = out.first().map_or(0, |column| column.len());
    let mut tally = Tally::default();
    let mut found = [[0; BLOCK]; 4];
    for start in (0..rows).step_by(BLOCK) {
        let place = from + start;
        let count = BLOCK.min(rows - start);
        // Parts are whole blocks but for the last, and that ends with the columns: a block that is there is of this part.
        let sums = match services.block(place) {
            Some(block) => costing.block(block, &mut found),
            None => costing.block(services.filled_up(place..place + count).rows(), &mut found),
        };
        let sums = sums.map_or_else(
            || one_by_one(costing, services, place..place + count, &mut found, &mut tally.bad, most_bad),
            |sums| sums.map(i128::from),
        );
        for (sum, more) in tally.sums.iter_mut().zip(sums) {
            *sum += more;
        }
        for (column, found) in out.iter_mut().zip(&found) {
            if let (Some(slots), Some(found)) = (column.get_mut(start..start + count), found.get(..count)) {
                slots.copy_from_slice(found);
            }
        }
    }
    tally
}

/// Rows of which one at least does not fit: each for itself, and what they come to.
#[cold]
fn one_by_one(
    costing: &RowCosting<'_>,
    services: &ServiceColumns<'_>,
    places: Range<usize>,
    found: &mut Results,
    bad: &mut Bad,
    most_bad: usize,
) -> [i128; 5] {
    let mut sums = [0; 5];
    for (slot, place) in places.enumerate() {
        let costs = services.row(place).map_or([0; 5], |row| {
            costing.quick(&row).unwrap_or_else(|| {
                costing.careful(&row).unwrap_or_else(|problem| {
                    bad.count += 1;
                    if bad.kept.len() < most_bad {
                        bad.kept.push(BadRow { row: place, problem });
                    }
                    [0; 5]
                })
            })
        });
        let [product, _, labour, overhead, cost] = costs;
        for (column, value) in found.iter_mut().zip([product, labour, overhead, cost]) {
            if let Some(slot) = column.get_mut(slot) {
                *slot = value;
            }
        }
        for (sum, cost) in sums.iter_mut().zip(costs) {
            *sum += i128::from(cost);
        }
    }
    sums
}

fn check_lengths(services: &ServiceColumns<'_>, out: &CostColumns<'_>) -> Result<usize, ColumnError> {
    let want = services.pack_price_minor.len();
    let lengths = [
        ("pack_g", services.pack_g.len()),
        ("used_g", services.used_g.len()),
        ("wasted_g", services.wasted_g.len()),
        ("consumables_minor", services.consumables_minor.len()),
        ("hands_on_min", services.hands_on_min.len()),
        ("chair_min", services.chair_min.len()),
        ("product_minor", out.product_minor.len()),
        ("labour_minor", out.labour_minor.len()),
        ("overhead_minor", out.overhead_minor.len()),
        ("cost_minor", out.cost_minor.len()),
    ];
    match lengths.into_iter().find(|(_, got)| *got != want) {
        Some((column, got)) => Err(ColumnError::Length { column, got, want }),
        None => Ok(want),
    }
}
