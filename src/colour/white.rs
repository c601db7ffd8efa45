use crate::choice::choice;
use palette::{
    Xyz,
    white_point::{Any, WhitePoint},
};

choice! {
    /// The white that colour coordinates are counted from: daylight D65, seen by one of the two standard observers.
    ///
    /// One observer is the default wherever hair is meant: 10 degrees, the one a spectrophotometer for hair reports.
    /// Screens (sRGB) are defined for 2 degrees; the colours shown on them are adapted. On hair the two differ by less
    /// than moving the tress does, but coordinates of different whites are never compared without adapting them.
    #[derive(Default)]
    White: "white" {
        /// D65, 10 degree observer of 1964: the usual white of a spectrophotometer.
        #[default]
        D65TenDegree = "d65-10-degrees" => "D65/10 degrees",
        /// D65, 2 degree observer of 1931: the white of sRGB.
        D65TwoDegree = "d65-2-degrees" => "D65/2 degrees",
    }
}

pub(super) use palette::white_point::D65 as TwoDegree;

/// D65 for the 10 degree observer to five decimals; the one of `palette` is rounded to four and three.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct TenDegree;

impl WhitePoint<f64> for TenDegree {
    // Source: see `D65_WHITES` in the register.
    fn get_xyz() -> Xyz<Any, f64> {
        Xyz::new(0.948_11, 1.0, 1.073_04)
    }
}

impl palette::xyz::meta::HasXyzMeta for TenDegree {
    type XyzMeta = Self;
}
