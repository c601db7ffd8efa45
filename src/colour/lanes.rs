use wide::{CmpGe, CmpLe, f64x4};

/// Four numbers worked on at once.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lanes(f64x4);

impl Lanes {
    /// How many.
    pub(crate) const WIDTH: usize = 4;

    /// The same number four times.
    #[inline]
    pub(crate) fn splat(value: f64) -> Self {
        Self(of(value))
    }

    #[inline]
    pub(crate) fn to_array(self) -> [f64; Self::WIDTH] {
        self.0.to_array()
    }

    #[inline]
    pub(super) const fn all(self) -> f64x4 {
        self.0
    }
}

impl From<[f64; Lanes::WIDTH]> for Lanes {
    #[inline]
    fn from(values: [f64; Self::WIDTH]) -> Self {
        Self(f64x4::new(values))
    }
}

impl From<f64x4> for Lanes {
    #[inline]
    fn from(values: f64x4) -> Self {
        Self(values)
    }
}

#[inline]
pub(super) fn of(value: f64) -> f64x4 {
    f64x4::splat(value)
}

/// The ranges that a kind of coordinates is checked against: those of [`Lab::new`](super::Lab::new) and its like. Not-a-number
/// is in none.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ranges([(f64, f64); 3]);

impl Ranges {
    pub(crate) const LAB: Self = Self([(0.0, 100.0), (-200.0, 200.0), (-200.0, 200.0)]);
    pub(crate) const XYZ: Self = Self([(0.0, 2.0); 3]);
    pub(crate) const LCH: Self = Self([(0.0, 100.0), (0.0, 200.0), (-360.0, 360.0)]);

    /// Whether three coordinates are.
    #[inline]
    pub(crate) fn hold(self, values: [f64; 3]) -> bool {
        let mut within = values.iter().zip(self.0).map(|(value, (low, high))| (low..=high).contains(value));
        within.all(|within| within)
    }

    /// Whether those of all four are.
    #[inline]
    pub(crate) fn hold_all(self, values: [Lanes; 3]) -> bool {
        let mut within = f64x4::ZERO.cmp_ge(f64x4::ZERO);
        for (value, (low, high)) in values.iter().zip(self.0) {
            within &= value.0.cmp_ge(of(low)) & value.0.cmp_le(of(high));
        }
        within.all()
    }
}
