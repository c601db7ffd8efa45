//! CIEDE2000 of four pairs of colours at once.

use super::{
    Lanes,
    chebyshev::{nodes, series},
    lanes::of,
};
use std::sync::LazyLock;
use wide::{CmpEq, CmpGe, CmpGt, CmpLt, f64x4};

/// CIEDE2000 (kL = kC = kH = 1) in four lanes.
///
/// The formula of `CIEDE2000_PAPER` in the register with its hue angles as directions: the mean hue is the direction half way
/// between two, and what depends on it is worked out from its cosine and sine, so that no angle is taken. Divisions and roots
/// are what takes the time: those that can share one do.
#[inline]
pub(crate) fn ciede2000_lanes(first: [Lanes; 3], second: [Lanes; 3]) -> [f64; Lanes::WIDTH] {
    let ([l1, a1, b1], [l2, a2, b2]) = (first.map(Lanes::all), second.map(Lanes::all));
    let (zero, one, half) = (f64x4::ZERO, f64x4::ONE, f64x4::HALF);
    let mean_chroma = (length(a1, b1) + length(a2, b2)) * half;
    let stretch = of(1.5) - half * seventh(mean_chroma);
    let (a1, a2) = (a1 * stretch, a2 * stretch);
    let (c1, c2) = (length(a1, b1), length(a2, b2));
    let chroma = (c1 + c2) * half;

    let hue = Hues { a1, b1, c1, a2, b2, c2 }.mean();
    let lightness = (l1 + l2) * half - of(50.0);
    let lightness = lightness * lightness;
    let root = (of(20.0) + lightness).sqrt();
    // Each difference over its weight, the three weights over one division; that of lightness is multiplied by its root.
    let (of_lightness, of_chroma) = (root + of(0.015) * lightness, one + of(0.045) * chroma);
    let of_hue = one + of(0.015) * chroma * hue.weight();
    let of_both = of_chroma * of_hue;
    let inverse = one / (of_lightness * of_both);
    let lighter = (l2 - l1) * root * of_both * inverse;
    let inverse = of_lightness * inverse;
    let stronger = (c2 - c1) * of_hue * inverse;
    let turned = hue.apart * of_chroma * inverse;
    let rotation = of(-2.0) * seventh(chroma) * hue.turn();
    let sum = lighter * lighter + stronger * stronger + turned * turned + rotation * stronger * turned;
    sum.fast_max(zero).sqrt().to_array()
}

#[inline]
fn length(a: f64x4, b: f64x4) -> f64x4 {
    (a * a + b * b).sqrt()
}

/// The square root of x^7 / (x^7 + 25^7).
#[inline]
fn seventh(x: f64x4) -> f64x4 {
    const TWENTY_FIVE_TO_THE_SEVENTH: f64 = 6_103_515_625.0;
    let squared = x * x;
    let power = squared * squared * squared * x;
    (power / (power + of(TWENTY_FIVE_TO_THE_SEVENTH))).sqrt()
}

/// Two hues as directions, each with its chroma.
struct Hues {
    a1: f64x4,
    b1: f64x4,
    c1: f64x4,
    a2: f64x4,
    b2: f64x4,
    c2: f64x4,
}

/// The mean of two hues, and how far they are apart.
struct Mean {
    cos: f64x4,
    sin: f64x4,
    /// 2 sqrt(c1 c2) sin(half the angle between).
    apart: f64x4,
}

impl Hues {
    /// Half way between the two along the shorter arc. Where one has no hue the differences in hue are zero, and with them
    /// whatever the mean is used for: any direction will do.
    #[inline]
    fn mean(&self) -> Mean {
        let Self { a1, b1, c1, a2, b2, c2 } = *self;
        // Small enough to be no chroma; large enough for the reciprocal, and for coordinates whose squares are lost in c1 and c2.
        let product = (c1 * c2).fast_max(of(1e-140));
        let (dot, cross) = (a1 * a2 + b1 * b2, a1 * b2 - a2 * b1);
        // The sum of the two directions points half way, and where they are more than a right angle apart, and lose digits in
        // it, their difference points across it.
        let opposed = dot.cmp_lt(f64x4::ZERO);
        let (along_a, along_b) = (a1 * c2 + a2 * c1, b1 * c2 + b2 * c1);
        let (across_a, across_b) = (b2 * c1 - b1 * c2, a1 * c2 - a2 * c1);
        let mut side = cross;
        let opposite = opposed & cross.cmp_eq(f64x4::ZERO);
        if opposite.any() {
            // Of two directions exactly opposite the mean angle lies from 90 to below 270 degrees.
            let upright = across_a.cmp_eq(f64x4::ZERO).blend(across_b, -across_a);
            side = opposite.blend(upright, cross);
        }
        let a = opposed.blend(across_a.flip_signs(side), along_a);
        let b = opposed.blend(across_b.flip_signs(side), along_b);
        // Both sums are sqrt(2 c1 c2 (c1 c2 + |dot|)) long.
        let root = product.sqrt();
        let doubled = (of(2.0) * (product + dot.abs())).sqrt();
        let inverse = f64x4::ONE / (root * doubled);
        let narrow = of(2.0) * cross * root * inverse;
        Mean { cos: a * inverse, sin: b * inverse, apart: opposed.blend(doubled.flip_signs(side), narrow) }
    }
}

/// Terms of [`NEAR_BLUE`]: what they leave out is below 1e-12.
const TERMS: usize = 22;

/// exp(-((h - 275) / 25)^2 / 2) of a hue angle h in degrees, as a Chebyshev series in the cosine of h - 275: the even terms
/// and the odd ones in pairs.
static NEAR_BLUE: LazyLock<[[f64; 2]; TERMS / 2]> = LazyLock::new(|| {
    let terms: [f64; TERMS] = series(&nodes().map(|cos: f64| {
        let off = cos.acos().to_degrees() / 25.0;
        (-off * off / 2.0).exp()
    }));
    let mut terms = terms.into_iter();
    [(); TERMS / 2].map(|()| [(); 2].map(|()| terms.next().unwrap_or(0.0)))
});

/// Terms of the series of sin(60 degrees x) from x = 0 to 1 in odd powers of x; the next one is 6e-15.
const SINE: [f64; 8] = {
    const SQUARED: f64 = std::f64::consts::FRAC_PI_3 * std::f64::consts::FRAC_PI_3;
    const fn next(term: f64, power: u32) -> f64 {
        -term * SQUARED / (power * (power - 1)) as f64
    }
    let first = std::f64::consts::FRAC_PI_3;
    let third = next(first, 3);
    let fifth = next(third, 5);
    let seventh = next(fifth, 7);
    let ninth = next(seventh, 9);
    let eleventh = next(ninth, 11);
    let thirteenth = next(eleventh, 13);
    [first, third, fifth, seventh, ninth, eleventh, thirteenth, next(thirteenth, 15)]
};

impl Mean {
    /// The weight of hue: T in the paper.
    #[inline]
    fn weight(&self) -> f64x4 {
        let Self { cos, sin, .. } = *self;
        let (cos2, sin2) = (of(2.0) * cos * cos - f64x4::ONE, of(2.0) * sin * cos);
        let (cos3, sin3) = (cos2 * cos - sin2 * sin, sin2 * cos + cos2 * sin);
        let (cos4, sin4) = (of(2.0) * cos2 * cos2 - f64x4::ONE, of(2.0) * sin2 * cos2);
        let (sin30, cos30) = 30.0_f64.to_radians().sin_cos();
        let (sin6, cos6) = 6.0_f64.to_radians().sin_cos();
        let (sin63, cos63) = 63.0_f64.to_radians().sin_cos();
        f64x4::ONE - (cos * of(0.17 * cos30) + sin * of(0.17 * sin30))
            + of(0.24) * cos2
            + (cos3 * of(0.32 * cos6) - sin3 * of(0.32 * sin6))
            - (cos4 * of(0.20 * cos63) + sin4 * of(0.20 * sin63))
    }

    /// sin(2 dTheta) in the paper: sin(60 degrees exp(-((h - 275) / 25)^2)), which turns the ellipses of blue colours.
    #[inline]
    fn turn(&self) -> f64x4 {
        let (sin275, cos275) = 275.0_f64.to_radians().sin_cos();
        let near = near_blue(self.cos * of(cos275) + self.sin * of(sin275));
        let x = near * near;
        let squared = x * x;
        let fourth = squared * squared;
        let [s1, s3, s5, s7, s9, s11, s13, s15] = SINE.map(of);
        let lower = (s1 + s3 * squared) + fourth * (s5 + s7 * squared);
        let upper = (s9 + s11 * squared) + fourth * (s13 + s15 * squared);
        let turn = x * (lower + fourth * fourth * upper);
        // The paper counts h from 0 to 360 degrees, so that what lies beyond 360 is far from 275.
        let beyond = self.cos.cmp_gt(f64x4::ZERO) & self.sin.cmp_ge(f64x4::ZERO);
        beyond.blend(f64x4::ZERO, turn)
    }
}

/// [`NEAR_BLUE`] by Clenshaw's rule, in the cosine of twice the angle: even and odd terms are summed side by side, so that one
/// does not wait for the other.
#[inline]
fn near_blue(cos: f64x4) -> f64x4 {
    let cos2 = of(2.0) * cos * cos - f64x4::ONE;
    let twice = of(2.0) * cos2;
    let [[zeroth, first], rest @ ..] = &*NEAR_BLUE;
    let [mut even, mut even_before, mut odd, mut odd_before] = [f64x4::ZERO; 4];
    for [even_term, odd_term] in rest.iter().rev() {
        (even, even_before) = ((of(*even_term) - even_before) + twice * even, even);
        (odd, odd_before) = ((of(*odd_term) - odd_before) + twice * odd, odd);
    }
    // The first odd polynomial of the rule is cos, the one before it cos again: cos(h) and cos(-h).
    let even = of(*zeroth) - even_before + cos2 * even;
    let odd = of(*first) - odd_before + (twice - f64x4::ONE) * odd;
    even + cos * odd
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_series_hold_what_they_stand_for() {
        for tenth in 0..3600 {
            let angle = f64::from(tenth) / 10.0;
            let (sin, cos) = angle.to_radians().sin_cos();
            let got = Mean { cos: of(cos), sin: of(sin), apart: f64x4::ZERO }.turn().to_array()[0];
            let want = (60.0_f64.to_radians() * (-((angle - 275.0) / 25.0).powi(2)).exp()).sin();
            assert!((got - want).abs() < 1e-12, "{angle}: {got} for {want}");
        }
    }
}
