use super::{
    White,
    observer::{BANDS, weights},
};
use std::{
    ops::{Add, Mul},
    sync::LazyLock,
};
use wide::f64x4;

/// Wide lanes that hold a spectrum; the lane after 700 nm weighs nothing.
const LANES: usize = BANDS.div_ceil(4);

/// A quantity at each wavelength from 400 to 700 nm: absorption or reflectance.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bands(pub(super) [f64x4; LANES]);

impl Bands {
    /// Nothing at any wavelength.
    pub(crate) const ZERO: Self = Self([f64x4::ZERO; LANES]);

    /// From a function of the wavelength in nm.
    pub(crate) fn at(of: impl Fn(f64) -> f64) -> Self {
        let mut nm = 390.0;
        Self([(); LANES].map(|()| {
            f64x4::new([(); 4].map(|()| {
                nm += 10.0;
                of(nm)
            }))
        }))
    }

    /// Each wavelength through a function.
    pub(crate) fn map(self, of: impl Fn(f64) -> f64) -> Self {
        Self(self.0.map(|lanes| f64x4::new(lanes.to_array().map(&of))))
    }

    /// Two spectra wavelength by wavelength.
    pub(super) fn with(self, other: &Self, of: impl Fn(f64x4, f64x4) -> f64x4) -> Self {
        let mut out = self;
        for (mine, other) in out.0.iter_mut().zip(other.0) {
            *mine = of(*mine, other);
        }
        out
    }

    /// The sum over the wavelengths with weights.
    pub(super) fn sum(&self, weights: &Self) -> f64 {
        let products = self.0.iter().zip(weights.0).map(|(value, weight)| *value * weight);
        products.fold(f64x4::ZERO, |all, one| all + one).reduce_add()
    }

    /// X, Y, Z of a reflectance for D65 and 10 degrees.
    pub(crate) fn xyz(&self) -> [f64; 3] {
        XYZ.each_ref().map(|weights| self.sum(weights))
    }
}

/// Light times the 10 degree observer.
pub(super) static XYZ: LazyLock<[Bands; 3]> = LazyLock::new(|| {
    weights(White::D65TenDegree).map(|weights| {
        let mut values = weights.into_iter();
        Bands([(); LANES].map(|()| f64x4::new([(); 4].map(|()| values.next().unwrap_or(0.0)))))
    })
});

impl Add for Bands {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        self.with(&other, |a, b| a + b)
    }
}

impl Mul<f64> for Bands {
    type Output = Self;

    fn mul(self, factor: f64) -> Self {
        Self(self.0.map(|lanes| lanes * factor))
    }
}
