use palette::{
    Xyz,
    white_point::{Any, WhitePoint},
};
use serde::Serialize;
use std::fmt;

/// The white that colour coordinates are counted from: daylight D65, seen by one of the two standard observers.
///
/// Spectrophotometers for hair report 10 degrees, screens (sRGB) are defined for 2 degrees. On hair the two differ by
/// less than moving the tress does, but coordinates of different whites are never compared without adapting them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum White {
    /// D65, 2 degree observer of 1931: the white of sRGB.
    #[default]
    D65TwoDegree,
    /// D65, 10 degree observer of 1964: the usual white of a spectrophotometer.
    D65TenDegree,
}

impl fmt::Display for White {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::D65TwoDegree => "D65/2 degrees",
            Self::D65TenDegree => "D65/10 degrees",
        })
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
