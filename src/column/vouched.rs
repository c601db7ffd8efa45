//! What the kernels promise: every row that has an answer is vouched for, and so worked in the lanes of the machine, but for the
//! few that they say they leave. That the answers are those of the rules is asked in `tests/properties/column/`.

use super::{
    Cells, ColumnError, ColumnOutcome, diameters_by_caliper, formula_levels, growth_times, hair_cuts,
    left::{self, Left},
    levels_on_scale, lifts_needed, minimum_masses, regrowths, result_levels, rows,
};
use crate::{
    colour::{Canvas, Level, ProductKind, Scale, ScaleMapping, ScaleReading},
    hair::DiameterMethod,
    source::Basis,
};
use std::collections::BTreeSet;

type Found = Result<ColumnOutcome, ColumnError>;

/// Ordinary numbers, the ends of a range with their neighbours, and what is no quantity.
pub(super) fn about(low: f64, high: f64, ordinary: &[f64]) -> Vec<f64> {
    let edges = [low.next_down(), low, low.next_up(), high.next_down(), high, high.next_up()];
    [ordinary, &edges, &[-0.0, f64::NAN, f64::INFINITY]].concat()
}

/// Holds a kernel to its promise on every combination of numbers: among rows that are refused, and some of them in a block alone.
///
/// `odd` says, of a row and the first of its answers, whether the kernel leaves it to the rule though it has one.
#[track_caller]
pub(super) fn promised<const N: usize, const M: usize>(
    grid: [&[f64]; N],
    kernel: impl Fn([Cells<'_>; N], [&mut [f64]; M]) -> Found,
    odd: impl Fn([f64; N], f64) -> bool,
) {
    let combinations: usize = grid.iter().map(|numbers| numbers.len()).product();
    let combined = (0..combinations).map(|mut place| {
        grid.map(|numbers| {
            let number = numbers[place % numbers.len()];
            place /= numbers.len();
            number
        })
    });
    // No block is without one that is refused, and so each is gone over row by row.
    let rows: Vec<[f64; N]> = combined
        .enumerate()
        .flat_map(|(place, row)| if place % 100 == 99 { vec![[f64::NEG_INFINITY; N], row] } else { vec![row] })
        .chain([[f64::NEG_INFINITY; N]])
        .collect();
    let first = answers(&rows, &kernel);
    let left = left::taken();
    let leaves = |(row, answer): (&[f64; N], &f64)| answer.is_nan() || odd(*row, *answer);
    let want: Vec<usize> =
        rows.iter().zip(&first).enumerate().filter(|(_, pair)| leaves(*pair)).map(|(place, _)| place).collect();
    let (of_it, of_us): (BTreeSet<usize>, BTreeSet<usize>) =
        (left.rows.iter().copied().collect(), want.into_iter().collect());
    let missed: Vec<_> =
        of_it.symmetric_difference(&of_us).take(5).map(|place| (&rows[*place], first[*place])).collect();
    assert!(missed.is_empty(), "left or not, against the promise: {missed:?}");
    assert_eq!((left.blocks, left.rows.len()), (rows.len().div_ceil(256), of_us.len()));
    let answered = first.iter().filter(|answer| !answer.is_nan()).count();
    assert!(answered > 0 && answered < combinations, "{answered} of {combinations} have an answer");
    for (row, answer) in rows.iter().zip(&first).step_by(rows.len() / 30 + 1) {
        answers(&[*row], &kernel);
        let want =
            if leaves((row, answer)) { Left { blocks: 1, rows: vec![0] } } else { Left { blocks: 0, rows: vec![] } };
        assert_eq!(left::taken(), want, "{row:?} alone, answer {answer}");
    }
}

/// The first answer of each row.
fn answers<const N: usize, const M: usize>(
    rows: &[[f64; N]],
    kernel: impl Fn([Cells<'_>; N], [&mut [f64]; M]) -> Found,
) -> Vec<f64> {
    drop(left::taken());
    let columns: [Vec<f64>; N] = std::array::from_fn(|place| rows.iter().map(|row| row[place]).collect());
    let mut out: [Vec<f64>; M] = std::array::from_fn(|_| vec![7.0; rows.len()]);
    let _outcome = kernel(columns.each_ref().map(Cells::from), out.each_mut().map(|column| &mut column[..])).unwrap();
    out.into_iter().next().unwrap_or_default()
}

/// None is left.
pub(super) fn none<const N: usize>(_: [f64; N], _: f64) -> bool {
    false
}

#[test]
fn a_rule_without_a_law_is_asked_about_every_row() {
    let mut out = [0.0; 300];
    drop(left::taken());
    let outcome = rows([1.5.into()], [&mut out], |[x]: [f64; 1]| Ok::<_, ()>([2.0 * x])).unwrap();
    assert_eq!((outcome.refused, out), (0, [3.0; 300]));
    assert_eq!(left::taken(), Left { blocks: 2, rows: (0..300).collect() });
}

/// Only the blocks with such a row are gone over, and only that row is left: the second of three blocks, and its last row.
#[test]
fn one_row_costs_its_own_block_alone() {
    let mut levels = [4.0; 600];
    levels[511] = 12.5;
    let mut lifts = [0.0; 600];
    drop(left::taken());
    let outcome = lifts_needed((&levels).into(), 9.0.into(), &mut lifts).unwrap();
    assert_eq!((outcome.refused, outcome.first), (1, Some(511)));
    assert_eq!(left::taken(), Left { blocks: 1, rows: vec![511] });
    assert!(lifts.iter().enumerate().all(|(row, lift)| if row == 511 { lift.is_nan() } else { *lift == 5.0 }));
}

#[test]
fn of_levels_every_one_is_vouched_for() {
    let levels = about(Level::DARKEST.number(), Level::LIGHTEST.number(), &[1.5, 4.0, 6.3, 9.9]);
    let both = [&levels[..]; 2];
    promised(both, |[from, to], [out]| lifts_needed(from, to, out), none);
    for product in ProductKind::ALL.iter().copied() {
        let permanent = product == ProductKind::PermanentColour;
        // Of any other product the rule has its own to say.
        let odd = |_: [f64; 2], _: f64| !permanent;
        if result_of(product).is_some() {
            promised(both, |[natural, applied], [out]| result_levels(natural, applied, product, out), odd);
        }
        for canvas in Canvas::ALL.iter().copied() {
            for scale in Scale::ALL.iter().copied() {
                let odd = |_: [f64; 2], _: f64| !permanent || canvas != Canvas::Natural || !scale.counts_levels();
                if shade_of(product, canvas, scale).is_some() {
                    let of = (product, canvas, scale);
                    promised(both, |[natural, target], [out]| formula_levels(natural, target, of, out), odd);
                }
            }
        }
    }
    assert_eq!(result_of(ProductKind::PermanentColour), Some(5.0));
    assert_eq!(shade_of(ProductKind::PermanentColour, Canvas::Natural, Scale::ALL[0]), Some(5.0));
}

/// What 5 on 5 comes to, where the product is for that at all.
fn result_of(product: ProductKind) -> Option<f64> {
    let mut out = [0.0];
    let outcome = result_levels(5.0.into(), 5.0.into(), product, &mut out).unwrap();
    (outcome.refused == 0).then_some(out[0])
}

/// The shade for 5 on 5, likewise.
fn shade_of(product: ProductKind, canvas: Canvas, scale: Scale) -> Option<f64> {
    let mut out = [0.0];
    let outcome = formula_levels(5.0.into(), 5.0.into(), (product, canvas, scale), &mut out).unwrap();
    (outcome.refused == 0).then_some(out[0])
}

/// Up to eight stretches, and so nine anchors, are looked through without a branch; a mapping of ten asks the rule.
#[test]
fn readings_between_so_many_anchors_are_vouched_for() {
    for (anchors, few) in [(2, true), (9, true), (10, false)] {
        let anchors: Vec<(ScaleReading, Level)> = (1..=anchors)
            .map(|place| 1.0 + f64::from(place) * 0.75)
            .map(|number| (ScaleReading::new(Scale::Us10, number).unwrap(), Level::new(number).unwrap()))
            .collect();
        let mapping = ScaleMapping::new(&anchors, 0.5, Basis::Stated).unwrap();
        let highest = anchors.last().unwrap().1.number();
        let readings = about(1.75, highest, &[2.0, 2.25, 2.5, 3.25, 4.0]);
        promised([&readings], |[readings], out| levels_on_scale(readings, Scale::Us10, &mapping, out), |_, _| !few);
    }
}

/// The ends of what a diameter can be are 5 and 300 um, those of a rate 0.1 and 3 cm a month, of weeks 0 and 2000, of a length 0 and
/// 1e5 cm. The lower end is left, where a zero may have a sign.
#[test]
fn of_hair_all_but_the_lower_end_is_vouched_for() {
    let um = about(5.0, 300.0, &[45.0, 70.0, 93.0]);
    // What is not a number stays what it is, and needs no rule for that.
    let numbers: Vec<f64> = um.iter().copied().filter(|um| !um.is_nan()).collect();
    for method in DiameterMethod::ALL.iter().copied() {
        // What a caliper would read as the least or below is said to be the least.
        let least = |_: [f64; 1], answer: f64| answer == 5.0;
        promised([&numbers], |[read], [out]| diameters_by_caliper(read, method, out), least);
    }
    promised([&um, &um], hair_cuts, |axes, _| axes.contains(&5.0));
    let (weeks, rates) = (about(0.0, 2000.0, &[6.0]), about(0.1, 3.0, &[1.0]));
    let lengths = about(0.0, 1e5, &[6.0]);
    // Each of the six in turn, the others being ordinary.
    for place in 0..6 {
        for weeks_not_lengths in [true, false] {
            let amounts = if weeks_not_lengths { &weeks } else { &lengths };
            let grid: [&[f64]; 6] = std::array::from_fn(|at| match (at == place, at < 3) {
                (true, true) => &amounts[..],
                (true, false) => &rates[..],
                (false, true) => &[5.0, 7.0][..],
                (false, false) => &[0.9, 1.2][..],
            });
            let odd = |row: [f64; 6], _: f64| row[..3].contains(&0.0) || row[3..].contains(&0.1);
            promised(
                grid,
                |[a, b, c, d, e, f], out| {
                    if weeks_not_lengths {
                        regrowths([a, b, c], [d, e, f], out)
                    } else {
                        growth_times([a, b, c], [d, e, f], out)
                    }
                },
                odd,
            );
        }
    }
    // Of one column each, worked out once.
    let odd = |[amount, rate]: [f64; 2], _: f64| amount == 0.0 || rate == 0.1;
    promised([&weeks, &rates], |[weeks, rate], out| regrowths([weeks; 3], [rate; 3], out), odd);
    promised([&lengths, &rates], |[length, rate], out| growth_times([length; 3], [rate; 3], out), odd);
}

/// A balance shows a ten-millionth of a gram at the finest, and no scale will do below a tolerance of 0.01 %.
#[test]
fn of_scales_every_one_is_vouched_for() {
    let divisions = [about(1e-7, 1e9, &[0.1, 1.0, 3.3]), vec![0.0, 2e5, 2.1e5]].concat();
    let tolerances = about(0.01, 100.0, &[0.5, 33.3]);
    promised([&divisions, &tolerances], |[division, tolerance], [out]| minimum_masses(division, tolerance, out), none);
}
