//! What tests of several rooms share.

use std::{fs, path::Path};

/// The text of an example.
pub(crate) fn example(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("examples").join(name)).unwrap()
}

/// A number against what it is by hand.
pub(crate) fn near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "got {got}, want {want} within {tolerance}");
}

/// Several of them.
pub(crate) fn all_near(got: &[f64], want: &[f64], tolerance: f64) {
    let same = got.len() == want.len() && got.iter().zip(want).all(|(got, want)| (got - want).abs() <= tolerance);
    assert!(same, "got {got:?}, want {want:?} within {tolerance}");
}
