//! What the quick ways of costing promise: a row whose masses and times have three decimals at most, and whose products fit, is
//! vouched for and so worked without decimals. Worked out once more with whole numbers of 128 bits.

use super::{
    Currency, Labour, Money, OnCosts, Overhead, Rounding, ServiceColumns,
    block_costing::{BLOCK, Rows},
    row_costing::{Row, RowCosting},
};
use crate::quantity::Duration;

/// A measured value, and how many thousandths it is.
type Measured = (f64, Option<i128>);

const MASSES: [Measured; 15] = [
    (0.0, Some(0)),
    (0.001, Some(1)),
    (0.0005, None),
    (1.0 / 3.0, None),
    (0.1 + 0.2, Some(300)),
    (30.0, Some(30_000)),
    (45.0, Some(45_000)),
    (12.345_678, None),
    (999_999_999.999, Some(999_999_999_999)),
    (1e9, Some(1_000_000_000_000)),
    (1_000_000_000.001, None),
    (-0.001, Some(-1)),
    (-0.0005, None),
    (f64::NAN, None),
    (f64::INFINITY, None),
];

const TIMES: [Measured; 16] = [
    (0.0, Some(0)),
    (0.001, Some(1)),
    (0.02, Some(20)),
    (0.06, Some(60)),
    (0.1, Some(100)),
    (33.333_333_3, None),
    (70.5, Some(70_500)),
    // 2^50 over 33 333 333 is 33 776 997.5, over 99 999 997 it is 11 258 999.4.
    (33_776.997, Some(33_776_997)),
    (33_776.998, Some(33_776_998)),
    (11_258.999, Some(11_258_999)),
    (11_259.0, Some(11_259_000)),
    (999_999_999.999, Some(999_999_999_999)),
    (1e9, Some(1_000_000_000_000)),
    // The next number above: so near to it that it is taken for it.
    (1_000_000_000.000_000_1, Some(1_000_000_000_000)),
    (-0.02, Some(-20)),
    (f64::NAN, None),
];

const AMOUNTS: [i64; 9] = [0, 1, 7, 1000, 2640, (1 << 50) - 1, 1 << 50, i64::MAX, -1];

/// The measures of a row in thousandths.
#[derive(Debug, Clone, Copy)]
struct Case {
    price: i64,
    extra: i64,
    /// Pack, used, wasted, hands-on, chair.
    measures: [Measured; 5],
}

const GOOD: Case = Case {
    price: 2640,
    extra: 7,
    measures: [
        (500.0, Some(500_000)),
        (40.0, Some(40_000)),
        (5.0, Some(5000)),
        (30.0, Some(30_000)),
        (60.0, Some(60_000)),
    ],
};

/// Each measure and each amount on every value of its own, used by waste, and price by consumables.
fn cases() -> Vec<Case> {
    let mut cases = vec![GOOD];
    for place in 0..5 {
        for value in if place < 3 { &MASSES[..] } else { &TIMES[..] } {
            let mut case = GOOD;
            case.measures[place] = *value;
            cases.push(case);
            case.price = 1000;
            cases.push(case);
        }
    }
    for used in MASSES {
        cases.extend(MASSES.map(|wasted| {
            let [pack, _, _, hands_on, chair] = GOOD.measures;
            Case { price: 1, measures: [pack, used, wasted, hands_on, chair], ..GOOD }
        }));
    }
    for price in AMOUNTS {
        cases.extend(AMOUNTS.map(|extra| Case { price, extra, ..GOOD }));
    }
    // A thousandth of a gram at the highest price that fits, and at half of it.
    let [_, _, _, hands_on, chair] = GOOD.measures;
    let a_thousandth = [(1.0, Some(1000)), (0.001, Some(1)), (0.0, Some(0)), hands_on, chair];
    cases.extend([(1 << 50) - 1, 1 << 49].map(|price| Case { price, measures: a_thousandth, ..GOOD }));
    cases
}

/// Rounded by name; neither is negative.
fn rounded(over: i128, under: i128, rounding: Rounding) -> i128 {
    let (cut, rest) = (over / under, over % under);
    let up = match rounding {
        Rounding::MidpointAwayFromZero => 2 * rest >= under,
        Rounding::MidpointTowardZero => 2 * rest > under,
        Rounding::MidpointNearestEven => 2 * rest > under || (2 * rest == under && cut % 2 == 1),
        Rounding::ToZero | Rounding::ToNegativeInfinity => false,
        Rounding::AwayFromZero | Rounding::ToPositiveInfinity => rest > 0,
    };
    cut + i128::from(up)
}

/// What a case comes to, and whether a block of it fits.
fn by_hand(case: Case, [labour, overhead]: [(i128, i128); 2], rounding: Rounding) -> Option<([i128; 5], bool)> {
    let [pack, used, wasted, hands_on, chair] = case.measures.map(|(_, thousandths)| thousandths);
    let (pack, taken, hands_on, chair) = (pack?, (used?, wasted?), hands_on?, chair?);
    let negative = [pack - 1, taken.0, taken.1, hands_on, chair, case.price.into(), case.extra.into()];
    let taken = taken.0 + taken.1;
    let most = 10_i128.pow(12);
    if negative.iter().any(|number| *number < 0) || [pack, taken, hands_on, chair].iter().any(|number| *number >= most)
    {
        return None;
    }
    let products = [i128::from(case.price) * taken, labour.0 * hands_on, overhead.0 * chair];
    let cost = |product: i128, under: i128| rounded(product, under, rounding);
    let found =
        [cost(products[0], pack), case.extra.into(), cost(products[1], labour.1), cost(products[2], overhead.1)];
    let all: i128 = found.iter().sum();
    if products.iter().chain([&all]).any(|number| *number > i64::MAX.into()) {
        return None;
    }
    let block = 1_i128 << 50;
    let amounts = [case.price, case.extra].iter().all(|amount| i128::from(*amount) < block);
    let [product, extra, labour, overhead] = found;
    Some(([product, extra, labour, overhead, all], amounts && products.iter().all(|product| *product <= block)))
}

fn minutes(min: f64) -> Duration {
    Duration::from_min(min).unwrap()
}

/// A wage in minor units an hour, and what a chair costs in them.
fn rates(wage: i64, chair: i64) -> (Labour, Overhead) {
    let none = OnCosts::from_percent(0.into()).unwrap();
    let of = |minor| Money::from_minor(minor, Currency::EUR);
    let labour = Labour::new(of(wage), none, minutes(60.0), minutes(60.0)).unwrap();
    (labour, Overhead::per_hour(of(chair)).unwrap())
}

#[test]
fn what_fits_is_costed_the_quick_way() {
    // In minor units for a thousandth of a minute: 15.00 an hour are 1/40, 7.30 are 73/6000, 0.06 are 1/10000, and so on.
    let all = [
        ((1500, 730), [(1, 40), (73, 6000)]),
        ((0, 6), [(0, 1), (1, 10_000)]),
        ((99_999_999, 99_999_997), [(33_333_333, 20_000), (99_999_997, 60_000)]),
    ];
    let (mut blocks, mut alone, mut left) = (0, 0, 0);
    for ((wage, chair), fractions) in all {
        let (labour, overhead) = rates(wage, chair);
        for rounding in Rounding::ALL.iter().copied() {
            let costing = RowCosting::new(&labour, &overhead, Currency::EUR, rounding);
            for case in cases() {
                let want = by_hand(case, fractions, rounding);
                let [pack_g, used_g, wasted_g, hands_on_min, chair_min] = case.measures.map(|(value, _)| value);
                let (pack_price, consumables) = (case.price, case.extra);
                let row = Row { pack_price, pack_g, used_g, wasted_g, consumables, hands_on_min, chair_min };
                let quick = costing.quick(&row).map(|costs| costs.map(i128::from));
                assert_eq!(quick, want.map(|(costs, _)| costs), "{case:?}, {rounding}, {fractions:?}");
                let rows = Rows {
                    prices: &[pack_price; BLOCK],
                    packs: &[pack_g; BLOCK],
                    used: &[used_g; BLOCK],
                    wasted: &[wasted_g; BLOCK],
                    consumables: &[consumables; BLOCK],
                    hands_on: &[hands_on_min; BLOCK],
                    chair: &[chair_min; BLOCK],
                };
                let mut out = [[7; BLOCK]; 4];
                let sums = costing.block(rows, &mut out).map(|sums| sums.map(i128::from));
                let fits = want.filter(|(_, fits)| *fits).map(|(costs, _)| costs);
                assert_eq!(sums, fits.map(|costs| costs.map(|cost| 128 * cost)), "{case:?}, {rounding}, {fractions:?}");
                if let Some([product, _, labour, overhead, cost]) = fits {
                    let costs = out.map(|column| [column[0], column[77], column[127]].map(i128::from));
                    assert_eq!(costs, [product, labour, overhead, cost].map(|cost| [cost; 3]), "{case:?}, {rounding}");
                    blocks += 1;
                } else if want.is_some() {
                    alone += 1;
                } else {
                    left += 1;
                }
            }
        }
    }
    assert!(blocks > 1000 && alone > 100 && left > 1000, "{blocks} {alone} {left}");
}

/// One row that does not fit is enough, wherever it stands.
#[test]
fn a_block_fits_where_all_of_its_rows_do() {
    let (labour, overhead) = rates(1500, 730);
    let costing = RowCosting::new(&labour, &overhead, Currency::EUR, Rounding::ToZero);
    let mut chair = [60.0; BLOCK];
    let fits = |chair: &[f64; BLOCK]| {
        let rows = Rows {
            prices: &[2640; BLOCK],
            packs: &[500.0; BLOCK],
            used: &[40.0; BLOCK],
            wasted: &[5.0; BLOCK],
            consumables: &[7; BLOCK],
            hands_on: &[30.0; BLOCK],
            chair,
        };
        costing.block(rows, &mut [[0; BLOCK]; 4]).is_some()
    };
    assert!(fits(&chair));
    for place in [0, 1, 64, 126, 127] {
        chair[place] = -1.0;
        assert!(!fits(&chair), "{place}");
        chair[place] = 60.0;
    }
}

/// Up to 2^52 either part of a rate is a whole number that the lanes reckon with: 4 294 967 291 chairs of 1000 minutes are 4.29e15
/// thousandths for a cent, 1100 minutes 4.72e15, and 2^52 is 4.50e15. A wage of more minor units than that, with no divisor but 1 in
/// common with the 60 000 thousandths of an hour, has too large a numerator.
#[test]
fn a_rate_of_two_numbers_that_fit_is_worked_in_blocks() {
    let cent = Money::from_minor(1, Currency::EUR);
    let (usual, hourly) = rates(1500, 730);
    let chairs = |min| Overhead::new(cent, 4_294_967_291, minutes(min)).unwrap();
    let (dear, _) = rates(9_000_000_000_000_000_001, 0);
    let good = GOOD.measures.map(|(value, _)| value);
    for (labour, overhead, fits) in
        [(usual, hourly, true), (usual, chairs(1000.0), true), (usual, chairs(1100.0), false), (dear, hourly, false)]
    {
        let costing = RowCosting::new(&labour, &overhead, Currency::EUR, Rounding::MidpointAwayFromZero);
        let rows = Rows {
            prices: &[2640; BLOCK],
            packs: &[good[0]; BLOCK],
            used: &[good[1]; BLOCK],
            wasted: &[good[2]; BLOCK],
            consumables: &[7; BLOCK],
            hands_on: &[0.0; BLOCK],
            chair: &[good[4]; BLOCK],
        };
        assert_eq!(costing.block(rows, &mut [[0; BLOCK]; 4]).is_some(), fits, "{labour:?} {overhead:?}");
    }
}

/// A block is taken where it lies as long as there are so many rows; the rest is filled up with rows that cost nothing.
#[test]
fn rows_are_worked_where_they_lie() {
    let whole: Vec<i64> = (0..200).collect();
    let parts: Vec<f64> = (1..=200).map(f64::from).collect();
    let services = ServiceColumns {
        pack_price_minor: &whole,
        pack_g: &parts,
        used_g: &parts,
        wasted_g: &parts,
        consumables_minor: &whole,
        hands_on_min: &parts,
        chair_min: &parts,
    };
    let block = services.block(72).unwrap();
    assert_eq!((block.prices[0], block.prices[127], block.packs[0], block.chair[127]), (72, 199, 73.0, 200.0));
    assert_eq!(block.prices.as_ptr(), whole[72..].as_ptr());
    assert!(services.block(73).is_none());
    let filled = services.filled_up(128..200);
    let rows = filled.rows();
    assert_eq!((rows.prices[71], rows.packs[71], rows.chair[71]), (199, 200.0, 200.0));
    assert_eq!((rows.prices[72], rows.packs[72], rows.used[72], rows.wasted[127]), (0, 1.0, 0.0, 0.0));
    assert_eq!((rows.consumables[72], rows.hands_on[72], rows.chair[127]), (0, 0.0, 0.0));
    assert!(services.row(199).is_some() && services.row(200).is_none());
}
