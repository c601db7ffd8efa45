//! Long columns of costs: edges of what the quick way vouches for, blocks, threads, bad rows, and what they add up to.

use super::helpers::{HALF_UP, currency, euros, grams, minutes, number, said};
use foilwork::money::{
    ColumnError, ColumnTotals, CostColumns, CostSource, Labour, Money, OnCosts, Overhead, PackPrice, Rounding,
    ServiceColumns, cost_columns, cost_columns_apart, cost_line,
};

/// Price and consumables in minor units, the masses in g, the times in min.
#[derive(Debug, Clone, Copy)]
struct Row {
    price: i64,
    pack: f64,
    used: f64,
    wasted: f64,
    extra: i64,
    hands_on: f64,
    chair: f64,
}

const GOOD: Row = Row { price: 2640, pack: 500.0, used: 40.0, wasted: 5.0, extra: 7, hands_on: 30.0, chair: 60.0 };

/// 15.00 an hour of the hands are 25 minor units a minute, so that 0.02 min are a half; a chair costs 7.30 an hour.
fn rates() -> (Labour, Overhead) {
    let labour = Labour::new(euros("15"), OnCosts::from_percent(0.into()).unwrap(), minutes(60.0), minutes(60.0));
    (labour.unwrap(), Overhead::per_hour(euros("7.30")).unwrap())
}

type Columns = [Vec<i64>; 4];

fn costed<R>(rows: &[Row], run: impl FnOnce(&ServiceColumns<'_>, CostColumns<'_>) -> R) -> (R, Columns) {
    let floats = |of: fn(&Row) -> f64| rows.iter().map(of).collect::<Vec<_>>();
    let whole = |of: fn(&Row) -> i64| rows.iter().map(of).collect::<Vec<_>>();
    let (price, extra) = (whole(|row| row.price), whole(|row| row.extra));
    let (pack, used, wasted) = (floats(|row| row.pack), floats(|row| row.used), floats(|row| row.wasted));
    let (hands_on, chair) = (floats(|row| row.hands_on), floats(|row| row.chair));
    let services = ServiceColumns {
        pack_price_minor: &price,
        pack_g: &pack,
        used_g: &used,
        wasted_g: &wasted,
        consumables_minor: &extra,
        hands_on_min: &hands_on,
        chair_min: &chair,
    };
    let mut columns: Columns = std::array::from_fn(|_| vec![99; rows.len()]);
    let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
    let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
    (run(&services, out), columns)
}

/// What the functions for one row say.
fn one(row: Row, rounding: Rounding) -> Option<[i64; 4]> {
    let (labour, overhead) = rates();
    let mass = |g| foilwork::quantity::Mass::from_g(g).ok();
    let time = |min| foilwork::quantity::Duration::from_min(min).ok();
    let pack = PackPrice::new(Money::from_minor(row.price, currency("EUR")), mass(row.pack)?).ok()?;
    let (used, wasted) = (mass(row.used)?.into(), Some(mass(row.wasted)?.into()));
    let product = cost_line(&CostSource::Supply { pack, used, wasted }, rounding).ok()?.minor();
    let labour = labour.cost(time(row.hands_on)?, rounding).ok()?.minor();
    let overhead = overhead.cost(time(row.chair)?, rounding).ok()?.minor();
    let extra = (row.extra >= 0).then_some(row.extra)?;
    let cost = [extra, labour, overhead].into_iter().try_fold(product, i64::checked_add)?;
    Some([product, labour, overhead, cost])
}

fn grid() -> Vec<Row> {
    let (prices, extras) = ([0, 1, -1, 2640, (1 << 50) - 1, 1 << 50, 1 << 53, i64::MAX], [0, 7, -1, 1 << 50, i64::MAX]);
    let packs = [0.001, 0.0005, 1.0 / 3.0, 60.0, 333.333_3, 999_999_999.999, 1e9, 0.0, -1.0, f64::NAN];
    let used =
        [0.0, 0.0005, 0.001, 0.1 + 0.2, 30.0, 12.345_678, 999_999_999.999, 1e9, 1e9 + 0.001, -0.001, f64::INFINITY];
    let times = [0.0, 0.02, 0.06, 0.001, 33.333_333_3, 1e6, 20_000_000.0, 999_999_999.999, -0.02, f64::NAN];
    let (mut rows, mut place) = (Vec::new(), 0_usize);
    for price in prices {
        for pack in packs {
            for used in used {
                // The others in turn: each meets each of these.
                let of = |list: &[f64]| list[place % list.len()];
                rows.push(Row { price, pack, used, wasted: of(&[0.0, 0.001, 5.0]), ..GOOD });
                place += 1;
            }
        }
    }
    for extra in extras {
        for hands_on in times {
            for chair in times {
                rows.push(Row { extra, hands_on, chair, ..GOOD });
            }
        }
    }
    rows
}

/// Alone and in a block of its like, a row costs what the functions for one row say, or is refused by both.
#[test]
fn a_row_on_any_edge_is_what_it_is_alone() {
    let (labour, overhead) = rates();
    let (mut taken, mut refused) = (0, 0);
    for (place, row) in grid().into_iter().enumerate() {
        let rounding = Rounding::ALL[place % Rounding::ALL.len()];
        let want = one(row, rounding);
        for count in [1, 128] {
            let rows = vec![row; count];
            let ((totals, bad), columns) = costed(&rows, |services, out| {
                cost_columns_apart(services, &labour, &overhead, rounding, out).unwrap_or_else(|error| {
                    // Many of the largest amounts have no sum.
                    assert!(count > 1 && matches!(error, ColumnError::Total(_)), "{row:?}: {error}");
                    cost_columns_apart(&EMPTY, &labour, &overhead, rounding, no_columns()).unwrap()
                })
            });
            let first = columns.each_ref().map(|column| column[0]);
            assert_eq!(first, want.unwrap_or_default(), "{row:?}, {rounding}, {count} of them");
            assert!(columns.iter().all(|column| column.iter().all(|value| *value == column[0])), "{row:?}");
            if totals.rows > 0 {
                assert_eq!(bad.len(), if want.is_some() { 0 } else { count }, "{row:?}");
            }
        }
        *(if want.is_some() { &mut taken } else { &mut refused }) += 1;
    }
    assert!(taken > 400 && refused > 400, "{taken} {refused}");
}

const EMPTY: ServiceColumns<'static> = ServiceColumns {
    pack_price_minor: &[],
    pack_g: &[],
    used_g: &[],
    wasted_g: &[],
    consumables_minor: &[],
    hands_on_min: &[],
    chair_min: &[],
};

fn no_columns() -> CostColumns<'static> {
    CostColumns { product_minor: &mut [], labour_minor: &mut [], overhead_minor: &mut [], cost_minor: &mut [] }
}

/// By hand: 45 g of 500 for 26.40 are 2.376, so 238; 30 min are 750; an hour of the chair 730; with 7 that is 1725. A row whose price
/// is its place costs 9 hundredths of it.
#[test]
fn rows_far_down_are_costed_and_named_like_the_first() {
    let (labour, overhead) = rates();
    for count in [1, 127, 128, 129, 1000, 200_003] {
        let rows: Vec<Row> =
            (0..count).map(|place| Row { price: 100 * i64::try_from(place).unwrap(), ..GOOD }).collect();
        let (totals, columns) = costed(&rows, |services, out| cost_columns(services, &labour, &overhead, HALF_UP, out));
        assert!(columns[0].iter().zip(0..).all(|(product, place)| *product == 9 * place));
        let (n, all): (i64, i64) = (i64::try_from(count).unwrap(), columns[0].iter().sum());
        assert_eq!(all, 9 * n * (n - 1) / 2);
        let of = |minor| Money::from_minor(minor, currency("EUR"));
        let want = ColumnTotals {
            rows: count,
            product: of(all),
            consumables: of(7 * n),
            labour: of(750 * n),
            overhead: of(730 * n),
            cost: of(all + 1487 * n),
        };
        assert_eq!(totals.unwrap(), want);
        assert!(columns[3].iter().zip(&columns[0]).all(|(cost, product)| *cost == product + 1487));
    }
    let wanted = [3, 131, 70_000, 150_000, 150_001, 200_002];
    let mut rows = vec![GOOD; 200_003];
    for place in wanted {
        rows[place].used = -1.0;
    }
    let (apart, columns) =
        costed(&rows, |services, out| cost_columns_apart(services, &labour, &overhead, HALF_UP, out));
    let (totals, bad) = apart.unwrap();
    assert_eq!(bad.iter().map(|bad| bad.row).collect::<Vec<_>>(), wanted);
    assert!(bad.iter().all(|bad| bad.problem.to_string() == "invalid mass (got -1 g): must be from 0 to 1e9 g"));
    assert_eq!(totals.cost.minor(), 1725 * (200_003 - 6));
    for (place, cost) in columns[3].iter().enumerate() {
        assert_eq!(*cost, if wanted.contains(&place) { 0 } else { 1725 }, "row {place}");
    }
    assert_eq!(
        said(costed(&rows, |services, out| cost_columns(services, &labour, &overhead, HALF_UP, out)).0),
        "row 3: invalid mass (got -1 g): must be from 0 to 1e9 g (6 of 200003 rows cannot be costed; rows count from 0)"
    );
}

#[test]
fn what_does_not_go_together_is_refused_as_a_whole() {
    let (labour, overhead) = rates();
    let dollars = Overhead::per_hour(Money::parse("1", currency("USD")).unwrap()).unwrap();
    let run =
        |rows: &[Row], overhead| costed(rows, |services, out| cost_columns(services, &labour, overhead, HALF_UP, out));
    assert!(said(run(&[GOOD], &dollars).0).starts_with("cannot put EUR and USD into one sum"));
    let large = Row { extra: i64::MAX / 2, ..GOOD };
    assert!(run(&[large], &overhead).0.is_ok());
    assert_eq!(
        said(run(&[large; 3], &overhead).0),
        "total is too large: amounts reach about 9.2e18 minor units of the currency"
    );
    // One of them is as much as there can be, and its own cost is more.
    let most = Row { extra: i64::MAX, ..GOOD };
    assert_eq!(
        said(run(&[most], &overhead).0),
        "row 0: sum is too large: amounts reach about 9.2e18 minor units of the currency (1 of 1 rows cannot be costed; \
         rows count from 0)"
    );
    let lengths: [(&str, ServiceColumns<'_>); 6] = [
        ("pack_g", ServiceColumns { pack_g: &[1.0], ..EMPTY }),
        ("used_g", ServiceColumns { used_g: &[1.0], ..EMPTY }),
        ("wasted_g", ServiceColumns { wasted_g: &[1.0], ..EMPTY }),
        ("consumables_minor", ServiceColumns { consumables_minor: &[1], ..EMPTY }),
        ("hands_on_min", ServiceColumns { hands_on_min: &[1.0], ..EMPTY }),
        ("chair_min", ServiceColumns { chair_min: &[1.0], ..EMPTY }),
    ];
    for (column, services) in lengths {
        assert_eq!(
            said(cost_columns(&services, &labour, &overhead, HALF_UP, no_columns())),
            format!("column {column} has 1 rows and pack_price_minor has 0: give every column the same length")
        );
    }
    let one = &mut [0];
    let outs = [
        ("product_minor", CostColumns { product_minor: one, ..no_columns() }),
        ("labour_minor", CostColumns { labour_minor: &mut [0], ..no_columns() }),
        ("overhead_minor", CostColumns { overhead_minor: &mut [0], ..no_columns() }),
        ("cost_minor", CostColumns { cost_minor: &mut [0], ..no_columns() }),
    ];
    for (column, out) in outs {
        assert!(
            said(cost_columns(&EMPTY, &labour, &overhead, HALF_UP, out))
                .starts_with(&format!("column {column} has 1 rows"))
        );
    }
}

/// Rates that no whole number holds are worked row by row: 1/3 of a percent of on-costs in 28 digits.
#[test]
fn a_rate_with_many_digits_is_worked_row_by_row() {
    let on_costs = OnCosts::from_percent(number("0.3333333333333333333333333333")).unwrap();
    let labour = Labour::new(euros("15"), on_costs, minutes(60.0), minutes(60.0)).unwrap();
    let (_, overhead) = rates();
    let rows: Vec<Row> = (1..300).map(|place| Row { hands_on: 12.0 * f64::from(place), ..GOOD }).collect();
    let (totals, columns) = costed(&rows, |services, out| cost_columns(services, &labour, &overhead, HALF_UP, out));
    for (place, found) in (1..300).zip(&columns[1]) {
        // 300 x 1.00333... are 301 less a rest that no cent sees, and its multiples.
        assert_eq!(*found, 301 * place);
    }
    assert_eq!(totals.unwrap().labour.minor(), 301 * 299 * 300 / 2);
    assert_eq!(columns[0][0], 238, "{:?}", grams(45.0));
}
