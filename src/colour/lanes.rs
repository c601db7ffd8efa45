use super::white::TwoDegree;
use palette::{Lab, color_difference::Ciede2000};
use wide::f64x4;

/// Four numbers worked on at once.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lanes(f64x4);

impl Lanes {
    /// How many.
    pub(crate) const WIDTH: usize = 4;
}

impl From<[f64; Lanes::WIDTH]> for Lanes {
    fn from(values: [f64; Self::WIDTH]) -> Self {
        Self(f64x4::new(values))
    }
}

/// CIEDE2000 in four lanes: the formula of `palette`, instantiated for vectors.
#[inline]
pub(crate) fn ciede2000_lanes(first: [Lanes; 3], second: [Lanes; 3]) -> [f64; Lanes::WIDTH] {
    let ([l1, a1, b1], [l2, a2, b2]) = (first, second);
    let lab = |l: Lanes, a: Lanes, b: Lanes| Lab::<TwoDegree, f64x4>::new(l.0, a.0, b.0);
    lab(l1, a1, b1).difference(lab(l2, a2, b2)).to_array()
}

/// Whether three numbers are CIELAB coordinates, as [`Lab::new`](super::Lab::new) checks them.
#[inline]
pub(crate) fn lab_in_range([l, a, b]: [f64; 3]) -> bool {
    (0.0..=100.0).contains(&l) & (-200.0..=200.0).contains(&a) & (-200.0..=200.0).contains(&b)
}
