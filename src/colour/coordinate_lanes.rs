//! CIELAB, X, Y, Z and lightness, chroma, hue of four colours at once.

use super::{Lanes, lanes::of};
use wide::{CmpGt, CmpLe, CmpLt, f32x4, f64x4};

/// Where CIELAB turns from a cube root to a straight line, as a cube root: 6/29.
const CORNER: f64 = 6.0 / 29.0;

/// CIELAB to X, Y, Z for a white.
#[inline]
pub(crate) fn lab_to_xyz_lanes([l, a, b]: [Lanes; 3], white: [f64; 3]) -> [Lanes; 3] {
    let y = (l.all() + of(16.0)) * of(1.0 / 116.0);
    let (x, z) = (y + a.all() * of(1.0 / 500.0), y - b.all() * of(1.0 / 200.0));
    let [white_x, white_y, white_z] = white;
    let back = |root: f64x4, white: f64| {
        let line = of(3.0 * CORNER * CORNER) * (root - of(4.0 / 29.0));
        Lanes::from(of(white) * root.cmp_gt(of(CORNER)).blend(root * root * root, line))
    };
    [back(x, white_x), back(y, white_y), back(z, white_z)]
}

/// X, Y, Z to CIELAB for a white.
#[inline]
pub(crate) fn xyz_to_lab_lanes([x, y, z]: [Lanes; 3], white: [f64; 3]) -> [Lanes; 3] {
    let [white_x, white_y, white_z] = white;
    let root = |value: Lanes, white: f64| {
        let part = value.all() * of(1.0 / white);
        let line = part * of(1.0 / (3.0 * CORNER * CORNER)) + of(4.0 / 29.0);
        part.cmp_le(of(CORNER * CORNER * CORNER)).blend(line, cube_root(part))
    };
    let (x, y, z) = (root(x, white_x), root(y, white_y), root(z, white_z));
    [of(116.0) * y - of(16.0), of(500.0) * (x - y), of(200.0) * (y - z)].map(Lanes::from)
}

/// The cube root of numbers from 0.001 to 10, to within three units of the last digit.
///
/// Steps towards the reciprocal root, which need no division, from a third of the bits of the number: in single precision as far
/// as that goes.
#[inline]
fn cube_root(value: f64x4) -> f64x4 {
    /// Two thirds of the exponent's offset, less what brings the guess nearest on the whole: within 4 %.
    const OFFSET: u32 = 0x54a2_1d2a;
    let value = value.fast_max(of(1e-3));
    let single = value.to_array().map(|one| one as f32);
    let mut near = f32x4::new(single.map(|one| f32::from_bits(OFFSET - one.to_bits() / 3)));
    let third = f32x4::new(single) * f32x4::splat(1.0 / 3.0);
    // Newton's steps: 4 % become 0.3 %, and these 2e-5.
    for _ in 0..2 {
        near *= f32x4::splat(4.0 / 3.0) - third * (near * near * near);
    }
    let near = f64x4::new(near.to_array().map(f64::from));
    // The first terms of (1 - off)^(-1/3) leave out less than a double holds.
    let off = f64x4::ONE - value * (near * near * near);
    let inverse = near + near * off * (of(1.0 / 3.0) + off * (of(2.0 / 9.0) + off * of(14.0 / 81.0)));
    value * inverse * inverse
}

/// CIELAB to lightness, chroma and hue angle in degrees.
#[inline]
pub(crate) fn lab_to_lch_lanes([l, a, b]: [Lanes; 3]) -> [Lanes; 3] {
    let (a, b) = (a.all(), b.all());
    let chroma = (a * a + b * b).sqrt();
    let angle = b.atan2(a) * of(180.0 / std::f64::consts::PI);
    let angle = angle.cmp_lt(f64x4::ZERO).blend(angle + of(360.0), angle);
    [l, chroma.into(), angle.into()]
}

/// Lightness, chroma and hue angle in degrees to CIELAB.
#[inline]
pub(crate) fn lch_to_lab_lanes([l, chroma, angle]: [Lanes; 3]) -> [Lanes; 3] {
    let (sin, cos) = (angle.all() * of(std::f64::consts::PI / 180.0)).sin_cos();
    [l, (chroma.all() * cos).into(), (chroma.all() * sin).into()]
}

#[cfg(test)]
mod tests {
    use super::*;

    // The cube root of Rust's library, which is that of the C library or as good.
    #[test]
    fn cube_roots_stand_to_the_last_digits() {
        for step in 0..=40_000 {
            let value = 0.001 * 10_f64.powf(f64::from(step) / 10_000.0);
            let [got, ..] = cube_root(of(value)).to_array();
            assert!((got / value.cbrt() - 1.0).abs() < 8e-16, "{value}: {got}");
        }
    }
}
