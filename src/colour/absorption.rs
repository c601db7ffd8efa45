use super::assumptions::{Assumptions, GAIN};
use std::ops::{Add, Mul};

/// How strongly a fibre absorbs red, green and blue light, per fibre radius. Pigments add up: mixing is subtractive.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Absorption(pub [f64; 3]);

impl Absorption {
    /// Weighted as the eye weighs the primaries of sRGB: what darkens, whatever the hue.
    pub fn depth(self) -> f64 {
        let [red, green, blue] = self.0;
        0.212_6 * red + 0.715_2 * green + 0.072_2 * blue
    }

    /// Light that a tress sends back, in linear sRGB: the surface reflection and what the pigment leaves of the rest.
    pub fn reflectance(self, with: &Assumptions) -> [f64; 3] {
        let [red, green, blue] = self.0;
        let [white_red, white_green, white_blue] = with.white;
        let channel = |sigma: f64, white: f64| {
            with.surface + (white - with.surface) * (-GAIN * sigma.max(0.0).powf(with.exponent)).exp()
        };
        [channel(red, white_red), channel(green, white_green), channel(blue, white_blue)]
    }

    /// The pigment behind a reflectance, with the fibre it sits in adjusted to be at least that light and at most that
    /// dark, so that [`reflectance`](Self::reflectance) gives the same reflectance back.
    pub fn behind(seen: [f64; 3], with: &Assumptions) -> (Self, Assumptions) {
        let seen = seen.map(|channel| channel.max(1e-4));
        let darkest = seen.into_iter().fold(f64::INFINITY, f64::min);
        let surface = with.surface.min(0.9 * darkest);
        let [red, green, blue] = seen;
        let [white_red, white_green, white_blue] = with.white;
        let white = [white_red.max(red * 1.001), white_green.max(green * 1.001), white_blue.max(blue * 1.001)];
        let channel = |seen: f64, white: f64| {
            (-((seen - surface) / (white - surface)).ln() / GAIN).max(0.0).powf(1.0 / with.exponent)
        };
        let [white_red, white_green, white_blue] = white;
        let pigment = Self([channel(red, white_red), channel(green, white_green), channel(blue, white_blue)]);
        (pigment, Assumptions { white, surface, ..*with })
    }
}

impl Add for Absorption {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        let ([a, b, c], [d, e, f]) = (self.0, other.0);
        Self([a + d, b + e, c + f])
    }
}

impl Mul<f64> for Absorption {
    type Output = Self;

    fn mul(self, factor: f64) -> Self {
        Self(self.0.map(|channel| channel * factor))
    }
}
