//! What a scale can weigh at all.

use super::{about, combined, hold};
use foilwork::{
    column,
    mix::minimum_mass,
    quantity::{Mass, Quantity, Share},
};

/// The finest balance shows a ten-millionth of a gram, and below a tolerance of 0.01 % no scale will do.
#[test]
fn minimum_masses() {
    let divisions = [about(0.0, Mass::MAX.g(), &[0.01, 0.1, 1.0, 3.3]), about(1e-7, 1e-6, &[])].concat();
    let tolerances = about(0.01, 100.0, &[0.5, 5.0, 33.3]);
    hold(
        &combined([&divisions, &tolerances]),
        |[division, tolerance], [out]| column::minimum_masses(division, tolerance, out),
        |[division, tolerance]| {
            let (division, tolerance) = (Mass::from_g(division).ok()?, Share::from_percent(tolerance).ok()?);
            Some([minimum_mass(division, tolerance).ok()?.g()])
        },
    );
}
