//! Diameters, cuts and growth.

use super::{about, combined, hold};
use foilwork::{
    column::{self, Cells, ColumnError},
    hair::{Cut, Diameter, DiameterMethod, GrowthRate, Weeks, grown, weeks_to_grow},
    quantity::{Length, Quantity},
    source::Interval,
};

fn of<Q: Quantity>(ordinary: &[f64]) -> Vec<f64> {
    about(Q::MIN.in_unit(), Q::MAX.in_unit(), ordinary)
}

#[test]
fn diameters_and_cuts() {
    let axes = of::<Diameter>(&[45.5, 70.0, 93.0]);
    for method in DiameterMethod::ALL {
        hold(
            &combined([&axes]),
            |[read], [out]| column::diameters_by_caliper(read, *method, out),
            |[read]| Some([method.by_caliper(Diameter::from_um(read).ok()?).um()]),
        );
    }
    hold(&combined([&axes, &axes]), column::hair_cuts, |[one, other]| {
        let cut = Cut::new(Diameter::from_um(one).ok()?, Diameter::from_um(other).ok()?);
        Some([cut.area().um2(), cut.circumference().mm()])
    });
}

/// Three numbers in any order are the bounds and the best.
#[test]
fn growth() {
    let ordered = |[a, b, c]: [f64; 3]| -> Option<Interval<GrowthRate>> {
        let [a, b, c] =
            [GrowthRate::from_unit(a).ok()?, GrowthRate::from_unit(b).ok()?, GrowthRate::from_unit(c).ok()?];
        Some(Interval::ordered(a, b, c))
    };
    let rates = [&of::<GrowthRate>(&[0.9])[..], &[1.0, 1.25], &[1.3, f64::NAN, f64::INFINITY]];
    let weeks = [&of::<Weeks>(&[6.0])[..], &[6.5], &[7.0, -1.0]];
    hold(
        &combined([weeks[0], weeks[1], weeks[2], rates[0], rates[1], rates[2]]),
        |[a, b, c, d, e, f], out| column::regrowths([a, b, c], [d, e, f], out),
        |[a, b, c, d, e, f]| {
            let [a, b, c] = [Weeks::from_unit(a).ok()?, Weeks::from_unit(b).ok()?, Weeks::from_unit(c).ok()?];
            Some(grown(Interval::ordered(a, b, c), ordered([d, e, f])?).to_array().map(Length::cm))
        },
    );
    let lengths = [&[2.0, 7.5, f64::NAN, -1.0][..], &of::<Length>(&[3.0]), &of::<Length>(&[4.0])];
    hold(
        &combined([lengths[0], lengths[1], lengths[2], rates[1], rates[2], rates[0]]),
        |[a, b, c, d, e, f], out| column::growth_times([a, b, c], [d, e, f], out),
        |[a, b, c, d, e, f]| {
            let [a, b, c] = [Length::from_cm(a).ok()?, Length::from_cm(b).ok()?, Length::from_cm(c).ok()?];
            Some(weeks_to_grow(Interval::ordered(a, b, c), ordered([d, e, f])?).to_array().map(Weeks::weeks))
        },
    );
    // Of one column each the bounds are the best estimate.
    let (some_weeks, some_rates, some_lengths) =
        (of::<Weeks>(&[6.0, 26.5]), of::<GrowthRate>(&[0.9, 1.25]), of::<Length>(&[2.0, 7.5]));
    hold(
        &combined([&some_weeks, &some_rates]),
        |[weeks, rate], out| column::regrowths([weeks; 3], [rate; 3], out),
        |[weeks, rate]| {
            let weeks = Interval::exact(Weeks::from_unit(weeks).ok()?);
            Some(grown(weeks, ordered([rate; 3])?).to_array().map(Length::cm))
        },
    );
    hold(
        &combined([&some_lengths, &some_rates]),
        |[length, rate], out| column::growth_times([length; 3], [rate; 3], out),
        |[length, rate]| {
            let length = Interval::exact(Length::from_cm(length).ok()?);
            Some(weeks_to_grow(length, ordered([rate; 3])?).to_array().map(Weeks::weeks))
        },
    );
}

#[test]
fn all_bounds_have_the_rows_of_the_columns() {
    let (column, mut two, mut three, mut also) = ([1.0; 3], [0.0; 2], [0.0; 3], [0.0; 3]);
    let same = [Cells::from(&column[..]); 3];
    for outcome in [
        column::growth_times(same, same, [&mut two, &mut three, &mut also]),
        column::growth_times(same, same, [&mut three, &mut also, &mut two]),
    ] {
        assert_eq!(outcome, Err(ColumnError::Length { got: 2, want: 3 }));
    }
}
