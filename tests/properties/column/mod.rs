//! Columns against the rule for one row, bit for bit, on a grid of ordinary numbers, edges and everything that is no quantity.

mod hair;
mod levels;
mod mix;
mod peroxide;

use foilwork::{
    colour::White,
    column::{self, Cells, ColumnError, ColumnOutcome},
};

/// Ordinary numbers between the edges of a quantity, each edge with its neighbours, and what is no number.
fn about(low: f64, high: f64, ordinary: &[f64]) -> Vec<f64> {
    let edges = [low.next_down(), low, low.next_up(), high.next_down(), high, high.next_up()];
    let odd = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -1.0, -0.0, 0.0, 1e300];
    [ordinary, &edges, &odd].concat()
}

/// Every combination of the values, one of each list.
fn combined<const N: usize>(values: [&[f64]; N]) -> Vec<[f64; N]> {
    values.iter().enumerate().fold(vec![[0.0; N]], |rows, (place, values)| {
        let with = |row: &[f64; N], value: f64| {
            let mut row = *row;
            row[place] = value;
            row
        };
        rows.iter().flat_map(|row| values.iter().map(move |value| with(row, *value))).collect()
    })
}

/// A missing number makes the row missing; a refusal does too and is counted; all else is what the rule gives.
///
/// How many rows have an answer, and how many are refused.
#[track_caller]
fn compared<const N: usize, const M: usize>(
    rows: &[[f64; N]],
    kernel: impl Fn([Cells<'_>; N], [&mut [f64]; M]) -> Result<ColumnOutcome, ColumnError>,
    rule: impl Fn([f64; N]) -> Option<[f64; M]>,
) -> (usize, usize) {
    let columns: [Vec<f64>; N] = std::array::from_fn(|place| rows.iter().map(|row| row[place]).collect());
    let mut out: [Vec<f64>; M] = std::array::from_fn(|_| vec![7.0; rows.len()]);
    let outcome = kernel(columns.each_ref().map(Cells::from), out.each_mut().map(|column| &mut column[..])).unwrap();
    let (mut refused, mut given) = (Vec::new(), Vec::new());
    for (place, row) in rows.iter().enumerate() {
        let got: [f64; M] = std::array::from_fn(|column| out[column][place]);
        if row.iter().any(|value| value.is_nan()) {
            assert!(got.iter().all(|value| value.is_nan()), "{row:?}: {got:?}");
        } else if let Some(want) = rule(*row) {
            assert_eq!(got.map(f64::to_bits), want.map(f64::to_bits), "{row:?}: {got:?}, the rule says {want:?}");
            given.push((*row, want));
        } else {
            assert!(got.iter().all(|value| value.is_nan()), "{row:?}: {got:?}, the rule refuses");
            refused.push(place);
        }
    }
    assert_eq!((outcome.refused, outcome.first), (refused.len(), refused.first().copied()));
    in_blocks(&given, kernel);
    (given.len(), refused.len())
}

/// Only a block of rows that a kernel vouches for is worked in the lanes of the machine: some hundred rows fill one each.
#[track_caller]
fn in_blocks<const N: usize, const M: usize>(
    given: &[([f64; N], [f64; M])],
    kernel: impl Fn([Cells<'_>; N], [&mut [f64]; M]) -> Result<ColumnOutcome, ColumnError>,
) {
    const BLOCK: usize = 256;
    for (row, want) in given.iter().step_by(given.len() / 300 + 1) {
        let columns = row.map(|value| [value; BLOCK]);
        let mut out = [[7.0; BLOCK]; M];
        let columns = columns.each_ref().map(|column| Cells::Each(column));
        let outcome = kernel(columns, out.each_mut().map(|column| &mut column[..])).unwrap();
        assert_eq!(outcome.refused, 0, "{row:?}");
        for place in [0, BLOCK - 1] {
            let got = out.map(|column| column[place]);
            assert_eq!(got.map(f64::to_bits), want.map(f64::to_bits), "{row:?}: {got:?}, the rule says {want:?}");
        }
    }
}

#[track_caller]
fn hold<const N: usize, const M: usize>(
    rows: &[[f64; N]],
    kernel: impl Fn([Cells<'_>; N], [&mut [f64]; M]) -> Result<ColumnOutcome, ColumnError>,
    rule: impl Fn([f64; N]) -> Option<[f64; M]>,
) {
    let (given, refused) = compared(rows, kernel, rule);
    assert!(given > 0 && refused > 0, "{given} rows with an answer, {refused} without");
}

/// Of a column that is shared out, all refused rows are counted and the first is named, wherever it stands.
#[test]
fn refused_rows_are_counted_over_all_parts() {
    const ROWS: usize = 100_003;
    for refused in [&[300][..], &[99_999], &[300, 301, 70_000, 70_001, 100_002], &[60_000, 60_001, 99_000]] {
        let mut days = vec![2.0; ROWS];
        for place in refused {
            days[*place] = -1.0;
        }
        days[5] = f64::NAN;
        let mut out = vec![7.0; ROWS];
        let outcome = column::rates_of_half_lives((&days).into(), &mut out).unwrap();
        assert_eq!((outcome.refused, outcome.first), (refused.len(), refused.first().copied()));
        // ln 2 in two days.
        let want = std::f64::consts::LN_2 / 2.0;
        for (place, rate) in out.iter().enumerate() {
            assert!(if place == 5 || refused.contains(&place) { rate.is_nan() } else { (rate - want).abs() < 1e-12 });
        }
    }
    // Colours are shared out too: three numbers for each, four back.
    let labs: Vec<f64> =
        (0..100_003).flat_map(|place| [if place % 20_000 == 7 { 200.0 } else { 50.0 }, 0.0, 0.0]).collect();
    let mut shown = vec![0.0; 400_012];
    let outcome = column::screen_colours(White::D65TenDegree, &labs, &mut shown).unwrap();
    assert_eq!((outcome.refused, outcome.first), (5, Some(7)));
}
