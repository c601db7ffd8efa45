//! Columns from outside: what lies beyond the last row, and what is said of lengths that do not fit.

use foilwork::{
    colour::{Level, White},
    column::{
        Cells, ColumnError, Coordinates, Draw, Triples, bounded, ciede2000, coordinates, levels_after, make_ups,
        strengths_after_make_up,
    },
    lift::{Belief, Lightening, Situation},
    peroxide::{KnownVolume, StrengthUnit},
    quantity::MassFraction,
    source::Interval,
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

/// Two greys differ in lightness alone. By the formula S_L is `1 + 0.015 (L - 50)^2 / sqrt(20 + (L - 50)^2)` of their mean L, which at
/// a mean of 50 is 1: 49.5 and 50.5 are 1 apart, 49 and 51 are 2.
#[test]
fn one_colour_for_all_rows_is_compared_in_any_number_of_rows() {
    let grey = |l: f64| Triples::Columns([l, 0.0, 0.0].map(Cells::Same));
    for rows in 0..10 {
        let mut out = vec![7.0; rows];
        let outcome = ciede2000(grey(49.5), grey(50.5), &mut out).unwrap();
        assert_eq!((outcome.refused, out), (0, vec![1.0; rows]));
    }
    // Each refused row is counted on either side, wherever it stands, and only the first is named.
    for place in 0..9 {
        let mut lightness = [51.0; 9];
        lightness[place] = 100.5;
        lightness[8] = -0.5;
        let column = Triples::Columns([Cells::Each(&lightness), 0.0.into(), 0.0.into()]);
        for (first, second) in [(column, grey(49.0)), (grey(49.0), column)] {
            let mut out = [7.0; 9];
            let outcome = ciede2000(first, second, &mut out).unwrap();
            assert_eq!((outcome.refused, outcome.first), (if place == 8 { 1 } else { 2 }, Some(place)));
            for (row, apart) in out.into_iter().enumerate() {
                assert!(if row == place || row == 8 { apart.is_nan() } else { apart == 2.0 }, "{row}: {apart}");
            }
        }
    }
}

/// The rows of `Three` are 0, 1, 2 by themselves: as lightness, 0 is 50 below 50, which is further than any grey above it.
#[test]
fn drawn_colours_are_those_of_a_slice() {
    let each = Cells::Each(&[0.0, 1.0, 2.0]);
    let of = |column: Cells<'_>| {
        let mut out = [7.0; 3];
        let outcome = ciede2000(
            Triples::Columns([column, 3.0.into(), column]),
            Triples::Columns([50.0, 3.0, 1.0].map(Cells::Same)),
            &mut out,
        );
        assert_eq!(outcome.unwrap().refused, 0);
        out
    };
    let (drawn, slice) = (of(Cells::Drawn(&Three)), of(each));
    assert_eq!(drawn, slice);
    assert!(drawn[0] > drawn[1] && drawn[1] > drawn[2] && drawn[2] > 0.0, "{drawn:?}");
}

/// A right-angled triangle of 3 and 4: the chroma is 5 in every row but the refused.
#[test]
fn refused_coordinates_are_named_by_their_row() {
    for place in 0..11 {
        let mut labs = [50.0, 3.0, 4.0].repeat(11);
        labs[3 * place + 1] = 200.5;
        labs[3 * 10 + 2] = -200.5;
        let mut lchs = vec![7.0; 33];
        let outcome = coordinates(Coordinates::LabToLch, White::D65TenDegree, &labs, &mut lchs).unwrap();
        assert_eq!((outcome.refused, outcome.first), (if place == 10 { 1 } else { 2 }, Some(place)));
        for (row, lch) in lchs.chunks(3).enumerate() {
            assert!(
                if row == place || row == 10 { lch[1].is_nan() } else { lch[..2] == [50.0, 5.0] },
                "{row}: {lch:?}"
            );
        }
    }
    let mut short = [0.0; 3];
    let error = coordinates(Coordinates::LabToLch, White::D65TenDegree, &[0.0; 6], &mut short).unwrap_err();
    assert_eq!(error, ColumnError::Length { got: 6, want: 3 });
}

/// So many rows are shared out among the processors: each keeps its place, three numbers to a row. What is odd is refused in one case
/// of a thousand.
#[test]
fn a_long_column_of_bounds_keeps_its_rows() {
    let input: Vec<f64> = (0..100_003).map(f64::from).collect();
    let mut out = vec![7.0; 3 * input.len()];
    let refused = |x: f64| x % 1000.0 == 333.0;
    let outcome = bounded(&input, &mut out, |x| if refused(x) { Err(()) } else { Ok([x - 1.0, x, x + 1.0]) }).unwrap();
    assert_eq!((outcome.refused, outcome.first), (100, Some(333)));
    for (x, row) in input.iter().zip(out.chunks(3)) {
        assert!(if refused(*x) { row.iter().all(|value| value.is_nan()) } else { row == [x - 1.0, *x, x + 1.0] });
    }
    let error = bounded(&input, &mut [0.0; 4], |x| Ok::<_, ()>([x; 3])).unwrap_err();
    assert_eq!(error, ColumnError::Length { got: 4, want: 300_009 });
}

/// A time below zero is none, in whichever of the rows it stands; at the beginning hair is as light as it was.
#[test]
fn refused_minutes_are_named_by_their_row() {
    let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0).unwrap()));
    let lightening = Lightening::new(&Belief::untested(), &mix, Level::new(4.0).unwrap());
    for place in 0..11 {
        let mut minutes = [0.0; 11];
        minutes[place] = -1.0;
        minutes[10] = -0.5;
        let mut levels = [7.0; 33];
        let outcome = levels_after(&lightening, &minutes, &mut levels).unwrap();
        assert_eq!((outcome.refused, outcome.first), (if place == 10 { 1 } else { 2 }, Some(place)));
        for (row, level) in levels.chunks(3).enumerate() {
            let refused = row == place || row == 10;
            assert!(if refused { level.iter().all(|one| one.is_nan()) } else { level == [4.0; 3] }, "{row}: {level:?}");
        }
    }
    let error = levels_after(&lightening, &[0.0; 2], &mut [0.0; 5]).unwrap_err();
    assert_eq!(error, ColumnError::Length { got: 5, want: 6 });
}
