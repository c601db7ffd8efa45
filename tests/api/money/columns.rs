//! Columns: the scalar functions row by row, and bad rows.

use super::helpers::{HALF_UP, currency, euros, grams, minutes, number, product_cost, said};
use foilwork::money::{
    ColumnError, CostColumns, Labour, Money, OnCosts, Overhead, Rounding, ServiceColumns, cost_columns,
};

#[test]
fn a_column_is_the_scalar_functions_row_by_row() {
    let labour =
        Labour::new(euros("17.35"), OnCosts::from_percent(number("21.4")).unwrap(), minutes(2280.0), minutes(1422.0))
            .unwrap();
    let overhead = Overhead::new(euros("48123.45"), 4, minutes(70_200.0)).unwrap();
    let pack_price_minor = [2640, 980, 1, 4999, 0, 2640];
    let pack_g = [500.0, 60.0, 1000.0, 333.333_3, 60.0, 500.0];
    let used_g = [40.0, 0.1 + 0.2, 0.0, 12.345_678, 5.0, 1e-9];
    let wasted_g = [5.0, 0.0, 0.0, 1.1, 0.5, 0.0];
    let consumables_minor = [210, 0, 7, 35, 1, 0];
    let hands_on_min = [70.0, 0.3, 0.0, 33.333_333_3, 15.5, 1e6];
    let chair_min = [120.0, 1.0, 0.1, 47.25, 40.0, 1e-3];
    let services = ServiceColumns {
        pack_price_minor: &pack_price_minor,
        pack_g: &pack_g,
        used_g: &used_g,
        wasted_g: &wasted_g,
        consumables_minor: &consumables_minor,
        hands_on_min: &hands_on_min,
        chair_min: &chair_min,
    };
    for &rounding in Rounding::ALL {
        let mut columns = [[0_i64; 6]; 4];
        let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
        let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
        let totals = cost_columns(&services, &labour, &overhead, rounding, out).unwrap();
        for row in 0..6 {
            let used = grams(used_g[row] + wasted_g[row]);
            let product = product_cost(
                Money::from_minor(pack_price_minor[row], currency("EUR")),
                grams(pack_g[row]),
                used,
                rounding,
            );
            assert_eq!(columns[0][row], product.unwrap().minor(), "product of row {row}, {rounding}");
            assert_eq!(columns[1][row], labour.cost(minutes(hands_on_min[row]), rounding).unwrap().minor());
            assert_eq!(columns[2][row], overhead.cost(minutes(chair_min[row]), rounding).unwrap().minor());
        }
        assert_eq!(totals.cost.minor(), columns[3].iter().sum::<i64>());
        assert_eq!(
            Money::total([totals.product, totals.consumables, totals.labour, totals.overhead], currency("EUR")),
            Ok(totals.cost)
        );
    }
}

#[test]
fn bad_rows_are_flagged_and_the_first_is_named() {
    let labour =
        Labour::new(euros("15.00"), OnCosts::from_percent(0.into()).unwrap(), minutes(60.0), minutes(60.0)).unwrap();
    let overhead = Overhead::new(euros("10.00"), 1, minutes(60.0)).unwrap();
    let run = |services: &ServiceColumns<'_>| {
        let mut columns = [[7_i64; 4]; 4];
        let [product_minor, labour_minor, overhead_minor, cost_minor] = &mut columns;
        let out = CostColumns { product_minor, labour_minor, overhead_minor, cost_minor };
        let result = cost_columns(services, &labour, &overhead, HALF_UP, out);
        (result, columns)
    };
    let good = ServiceColumns {
        pack_price_minor: &[100; 4],
        pack_g: &[100.0; 4],
        used_g: &[10.0, 10.0, 10.0, 10.0],
        wasted_g: &[0.0; 4],
        consumables_minor: &[0; 4],
        hands_on_min: &[60.0; 4],
        chair_min: &[60.0; 4],
    };
    let bad = ServiceColumns { used_g: &[10.0, f64::NAN, -1.0, 10.0], consumables_minor: &[0, 0, 0, -1], ..good };
    let (result, columns) = run(&bad);
    assert_eq!(
        said(result),
        "row 1: invalid mass (got NaN g): must be from 0 to 1e9 g (3 of 4 rows cannot be costed; rows count from 0)",
    );
    assert_eq!(columns[3], [2510, 0, 0, 0], "good rows are costed, bad rows hold 0");
    for bad in [f64::INFINITY, f64::NEG_INFINITY, -0.001, 2e9] {
        assert!(matches!(
            run(&ServiceColumns { chair_min: &[bad; 4], ..good }).0,
            Err(ColumnError::Row { bad_rows: 4, .. })
        ));
    }
    for bad in [0.0, -0.001, -60.0] {
        let packs = ServiceColumns { pack_g: &[bad; 4], ..good };
        assert!(matches!(run(&packs).0, Err(ColumnError::Row { bad_rows: 4, .. })), "a pack of {bad} g");
    }
    assert_eq!(
        said(run(&ServiceColumns { wasted_g: &[0.0; 3], ..good }).0),
        "column wasted_g has 3 rows and pack_price_minor has 4: give every column the same length",
    );
    assert!(run(&good).0.is_ok());
}
