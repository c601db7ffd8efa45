//! Columns from outside: what lies beyond the last row, and what is said of lengths that do not fit.

use foilwork::{
    column::{Cells, ColumnError, Draw, Triples, ciede2000, make_ups, strengths_after_make_up},
    peroxide::{KnownVolume, StrengthUnit},
};
use rstest::rstest;

/// A column that must not be asked for a row it has not.
#[derive(Debug)]
struct Three;

impl Draw for Three {
    fn rows(&self) -> usize {
        3
    }

    fn draw(&self, start: usize, block: &mut [f64]) {
        assert!(start + block.len() <= self.rows(), "rows {start} to {} of 3", start + block.len());
        for (row, slot) in (start..).zip(block) {
            *slot = row as f64;
        }
    }
}

#[test]
fn beyond_the_last_row_is_nothing() {
    let (drawn, each) = (Cells::Drawn(&Three), Cells::Each(&[0.0, 1.0, 2.0]));
    for row in 0..3 {
        assert_eq!((drawn.get(row), each.get(row)), (row as f64, row as f64));
    }
    assert!(drawn.get(3).is_nan() && each.get(3).is_nan() && drawn.get(usize::MAX).is_nan());
    assert_eq!(Cells::Same(7.0).get(usize::MAX), 7.0);
    let rows = [50.0, 2.0, 3.0, 60.0, 4.0, 5.0];
    assert_eq!((Triples::Rows(&rows).get(0), Triples::Rows(&rows).get(1)), ([50.0, 2.0, 3.0], [60.0, 4.0, 5.0]));
    assert!(Triples::Rows(&rows).get(2).iter().all(|value| value.is_nan()));
}

/// Colours row after row are three numbers each: seven or nine numbers are no two rows.
#[rstest]
#[case(3, 1)]
#[case(7, 2)]
#[case(9, 3)]
fn rows_of_three_that_do_not_fit_are_refused(#[case] numbers: usize, #[case] got: usize) {
    let (values, two) = (vec![10.0; numbers], [50.0, 2.0, 3.0, 60.0, 4.0, 5.0]);
    let mut out = [0.0; 2];
    for (first, second) in [(&values[..], &two[..]), (&two[..], &values[..])] {
        let error = ciede2000(Triples::Rows(first), Triples::Rows(second), &mut out).unwrap_err();
        assert_eq!(error, ColumnError::Length { got, want: 2 });
        let want = format!("columns of different length (got {got} and 2 values): give one value for each row");
        assert_eq!(error.to_string(), want);
    }
    let long = Triples::Columns([Cells::Each(&[1.0; 3]), Cells::Same(2.0), Cells::Same(3.0)]);
    assert_eq!(ciede2000(Triples::Rows(&two), long, &mut out), Err(ColumnError::Length { got: 3, want: 2 }));
}

/// 30 % w/v made up to 3 %: a tenth of 200 mL, or ten times 20 mL; beyond 200 % w/v there is no such solution. What counts by mass is
/// not made up to a mark.
#[test]
fn percent_by_volume_is_ten_grams_in_a_litre() {
    let stocks = Cells::Each(&[30.0, 200.0, 200.1]);
    let (mut stock, mut total) = ([0.0; 3], [0.0; 3]);
    let unit = StrengthUnit::WvPercent;
    let outcome =
        make_ups([stocks, 3.0.into()], unit, KnownVolume::Total, 200.0.into(), [&mut stock, &mut total]).unwrap();
    assert_eq!((outcome.refused, outcome.first), (1, Some(2)));
    assert_eq!((stock[0], stock[1], total[1], stock[2].is_nan()), (20.0, 3.0, 200.0, true));
    let mut found = [0.0; 3];
    let outcome = strengths_after_make_up(stocks, unit, 20.0.into(), 200.0.into(), &mut found).unwrap();
    assert_eq!((outcome.refused, found[0], found[1], found[2].is_nan()), (1, 3.0, 20.0, true));
    let by_mass = make_ups(
        [stocks, 3.0.into()],
        StrengthUnit::WwPercent,
        KnownVolume::Total,
        200.0.into(),
        [&mut stock, &mut total],
    );
    assert!(by_mass.is_err_and(|error| error.to_string().starts_with("% w/w counts by mass: weigh it")));
}
