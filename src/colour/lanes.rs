//! Differences and coordinates of four colours at once.

use wide::{CmpEq, CmpGt, CmpLe, CmpLt, f64x4};

/// Four numbers worked on at once.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lanes(f64x4);

impl Lanes {
    /// How many.
    pub(crate) const WIDTH: usize = 4;

    pub(crate) fn to_array(self) -> [f64; Self::WIDTH] {
        self.0.to_array()
    }
}

impl From<[f64; Lanes::WIDTH]> for Lanes {
    fn from(values: [f64; Self::WIDTH]) -> Self {
        Self(f64x4::new(values))
    }
}

#[inline]
fn of(value: f64) -> f64x4 {
    f64x4::splat(value)
}

/// 25 to the power of 7.
const TWENTY_FIVE_TO_THE_SEVENTH: f64 = 6_103_515_625.0;

/// The square root of x^7 / (x^7 + 25^7).
#[inline]
fn seventh(x: f64x4) -> f64x4 {
    let squared = x * x;
    let power = squared * squared * squared * x;
    (power / (power + of(TWENTY_FIVE_TO_THE_SEVENTH))).sqrt()
}

/// CIEDE2000 (kL = kC = kH = 1) in four lanes.
///
/// The formula of `CIEDE2000_PAPER` in the register with its hue angles as directions: the mean hue is the direction half way
/// between two, and multiples of it follow from its cosine and sine, so that one angle is taken instead of two and no cosine.
#[inline]
pub(crate) fn ciede2000_lanes(first: [Lanes; 3], second: [Lanes; 3]) -> [f64; Lanes::WIDTH] {
    let ([l1, a1, b1], [l2, a2, b2]) = (first.map(|lane| lane.0), second.map(|lane| lane.0));
    let (zero, one, half) = (f64x4::ZERO, f64x4::ONE, f64x4::HALF);
    let mean_chroma = ((a1 * a1 + b1 * b1).sqrt() + (a2 * a2 + b2 * b2).sqrt()) * half;
    let stretch = one + half * (one - seventh(mean_chroma));
    let (a1, a2) = (a1 * stretch, a2 * stretch);
    let (c1, c2) = ((a1 * a1 + b1 * b1).sqrt(), (a2 * a2 + b2 * b2).sqrt());
    let (chroma, product) = ((c1 + c2) * half, c1 * c2);
    let (dot, cross) = (a1 * a2 + b1 * b2, a1 * b2 - a2 * b1);

    // Hue difference 2 sqrt(c1 c2) sin(half the angle between): each form where it loses no digits.
    let narrow = cross * ((of(2.0) / (product + dot)).sqrt());
    let wide = ((product - dot).fast_max(zero) * of(2.0)).sqrt();
    let wide = cross.cmp_lt(zero).blend(-wide, wide);
    let hue_apart = dot.cmp_gt(zero).blend(narrow, wide);
    let hue_apart = product.cmp_gt(zero).blend(hue_apart, zero);

    // Half way between the two directions; a colour without hue leaves the other's.
    let unit = |x: f64x4, c: f64x4| c.cmp_gt(zero).blend(x / c, zero);
    let (x1, y1, x2, y2) = (unit(a1, c1), unit(b1, c1), unit(a2, c2), unit(b2, c2));
    let (across_x, across_y) = (y2 - y1, x1 - x2);
    // Of two directions exactly opposite the mean angle lies from 90 to below 270 degrees.
    let flip = cross.cmp_lt(zero)
        | (cross.cmp_eq(zero) & (across_x.cmp_gt(zero) | (across_x.cmp_eq(zero) & across_y.cmp_lt(zero))));
    let (across_x, across_y) = (flip.blend(-across_x, across_x), flip.blend(-across_y, across_y));
    let beside = dot.cmp_lt(zero);
    let (x, y) = (beside.blend(across_x, x1 + x2), beside.blend(across_y, y1 + y2));
    let length = (x * x + y * y).sqrt();
    let told = length.cmp_gt(zero);
    let (cos, sin) = (told.blend(x / length, one), told.blend(y / length, zero));

    let (cos2, sin2) = (of(2.0) * cos * cos - one, of(2.0) * sin * cos);
    let (cos3, sin3) = (cos2 * cos - sin2 * sin, sin2 * cos + cos2 * sin);
    let (cos4, sin4) = (of(2.0) * cos2 * cos2 - one, of(2.0) * sin2 * cos2);
    let (sin6, cos6) = 6.0_f64.to_radians().sin_cos();
    let (sin30, cos30) = 30.0_f64.to_radians().sin_cos();
    let (sin63, cos63) = 63.0_f64.to_radians().sin_cos();
    let weight = one - of(0.17) * (cos * of(cos30) + sin * of(sin30))
        + of(0.24) * cos2
        + of(0.32) * (cos3 * of(cos6) - sin3 * of(sin6))
        - of(0.20) * (cos4 * of(cos63) + sin4 * of(sin63));

    let angle = sin.atan2(cos) * of(180.0 / std::f64::consts::PI);
    let angle = angle.cmp_lt(zero).blend(angle + of(360.0), angle);
    let off_blue = (angle - of(275.0)) / of(25.0);
    let turn = of(60.0_f64.to_radians()) * (-(off_blue * off_blue)).exp();
    let rotation = -(turn.sin() * of(2.0) * seventh(chroma));

    let middle = (l1 + l2) * half - of(50.0);
    let middle = middle * middle;
    let lighter = (l2 - l1) / (one + of(0.015) * middle / (of(20.0) + middle).sqrt());
    let stronger = (c2 - c1) / (one + of(0.045) * chroma);
    let hue_apart = hue_apart / (one + of(0.015) * chroma * weight);
    let sum = lighter * lighter + stronger * stronger + hue_apart * hue_apart + rotation * stronger * hue_apart;
    sum.fast_max(zero).sqrt().to_array()
}

/// Where CIELAB turns from a cube root to a straight line, as a cube root: 6/29.
const CORNER: f64 = 6.0 / 29.0;

/// CIELAB to X, Y, Z for a white.
#[inline]
pub(crate) fn lab_to_xyz_lanes([l, a, b]: [Lanes; 3], white: [f64; 3]) -> [Lanes; 3] {
    let y = (l.0 + of(16.0)) / of(116.0);
    let (x, z) = (y + a.0 / of(500.0), y - b.0 / of(200.0));
    let [white_x, white_y, white_z] = white;
    let back = |root: f64x4, white: f64| {
        let line = of(3.0 * CORNER * CORNER) * (root - of(4.0 / 29.0));
        Lanes(of(white) * root.cmp_gt(of(CORNER)).blend(root * root * root, line))
    };
    [back(x, white_x), back(y, white_y), back(z, white_z)]
}

/// X, Y, Z to CIELAB for a white.
#[inline]
pub(crate) fn xyz_to_lab_lanes([x, y, z]: [Lanes; 3], white: [f64; 3]) -> [Lanes; 3] {
    let [white_x, white_y, white_z] = white;
    let root = |value: f64x4, white: f64| {
        let part = value / of(white);
        let line = part / of(3.0 * CORNER * CORNER) + of(4.0 / 29.0);
        part.cmp_le(of(CORNER * CORNER * CORNER)).blend(line, cube_root(part))
    };
    let (x, y, z) = (root(x.0, white_x), root(y.0, white_y), root(z.0, white_z));
    [Lanes(of(116.0) * y - of(16.0)), Lanes(of(500.0) * (x - y)), Lanes(of(200.0) * (y - z))]
}

/// The cube root of numbers from 0.001 to 10.
///
/// Steps of Newton for the reciprocal root, which need no division, from a third of the bits of the number.
#[inline]
fn cube_root(value: f64x4) -> f64x4 {
    /// Two thirds of the exponent's offset, less what brings the guess nearest on the whole.
    const OFFSET: u64 = 0x553e_f0ff_289d_d796;
    let value = value.fast_max(of(1e-3));
    let mut inverse = f64x4::new(value.to_array().map(|one| f64::from_bits(OFFSET - one.to_bits() / 3)));
    for _ in 0..4 {
        inverse = inverse * (of(4.0) - value * inverse * inverse * inverse) / of(3.0);
    }
    let root = value * inverse * inverse;
    // A last step on the root itself keeps its last digits.
    root - (root - value / (root * root)) / of(3.0)
}

/// CIELAB to lightness, chroma and hue angle in degrees.
#[inline]
pub(crate) fn lab_to_lch_lanes([l, a, b]: [Lanes; 3]) -> [Lanes; 3] {
    let chroma = (a.0 * a.0 + b.0 * b.0).sqrt();
    let angle = b.0.atan2(a.0) * of(180.0 / std::f64::consts::PI);
    let angle = angle.cmp_lt(f64x4::ZERO).blend(angle + of(360.0), angle);
    [l, Lanes(chroma), Lanes(angle)]
}

/// Lightness, chroma and hue angle in degrees to CIELAB.
#[inline]
pub(crate) fn lch_to_lab_lanes([l, chroma, angle]: [Lanes; 3]) -> [Lanes; 3] {
    let (sin, cos) = (angle.0 * of(std::f64::consts::PI / 180.0)).sin_cos();
    [l, Lanes(chroma.0 * cos), Lanes(chroma.0 * sin)]
}

/// Whether three numbers are CIELAB coordinates, as [`Lab::new`](super::Lab::new) checks them.
#[inline]
pub(crate) fn lab_in_range([l, a, b]: [f64; 3]) -> bool {
    (0.0..=100.0).contains(&l) & (-200.0..=200.0).contains(&a) & (-200.0..=200.0).contains(&b)
}

/// The same for X, Y, Z, as [`Xyz::new`](super::Xyz::new) checks them.
#[inline]
pub(crate) fn xyz_in_range([x, y, z]: [f64; 3]) -> bool {
    (0.0..=2.0).contains(&x) & (0.0..=2.0).contains(&y) & (0.0..=2.0).contains(&z)
}

/// The same for lightness, chroma and hue angle, as [`Lch::new`](super::Lch::new) checks them.
#[inline]
pub(crate) fn lch_in_range([l, chroma, angle]: [f64; 3]) -> bool {
    (0.0..=100.0).contains(&l) & (0.0..=200.0).contains(&chroma) & (-360.0..=360.0).contains(&angle)
}
