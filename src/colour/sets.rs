//! The hair model under every set of assumptions at once: a set to a lane, a wavelength at a time, in single precision.
//!
//! Single precision is a ten-thousandth of a unit of CIELAB. Lightness is not left to it: the caller knows the luminance that
//! is wanted, and a colour near it is moved there along a change of the pigment.

use super::{
    SETS,
    bands::{Bands, XYZ},
    fibre::{MODELS, Model},
    observer::BANDS,
    pigment::{EUMELANIN, PHEOMELANIN},
};
use std::{array::from_fn, sync::LazyLock};
use wide::f32x8;

/// Sets in one lane.
const WIDTH: usize = 8;

/// A number under eight sets of assumptions.
pub(super) type Lane = f32x8;

/// Eight sets of assumptions, made ready.
pub(super) struct Sets {
    /// Reflectance of bare fibre above bare surface at each wavelength.
    span: [Lane; BANDS],
    /// Absorption of a unit of oxidised melanin.
    oxidised: [Lane; BANDS],
    /// X, Y, Z of the surface alone.
    surface: [Lane; 3],
    /// Y of the span.
    span_luminance: Lane,
    gain: Lane,
    exponent: Lane,
    /// How much of 1, the square root and the fourth root the square root of the absorption is taken times.
    roots: [Lane; 3],
    pub(super) black: Lane,
    pub(super) halvings_per_level: Lane,
    pub(super) reading: Lane,
    pub(super) pheomelanin: Lane,
    pub(super) resistance: Lane,
    pub(super) formed: Lane,
    pub(super) survival: Lane,
    pub(super) tone_share: Lane,
}

/// What all sets have in common at a wavelength.
struct Band {
    eumelanin: f32,
    pheomelanin: f32,
    weights: [f32; 3],
}

/// Every set, eight at a time.
pub(super) static EVERY: LazyLock<[Sets; SETS / WIDTH]> =
    LazyLock::new(|| from_fn(|eight| Sets::new(MODELS.get(eight * WIDTH..).unwrap_or_default())));

static COMMON: LazyLock<[Band; BANDS]> = LazyLock::new(|| {
    let [eumelanin, pheomelanin] = [&*EUMELANIN, &*PHEOMELANIN].map(singles);
    let [x, y, z] = XYZ.each_ref().map(singles);
    from_fn(|band| Band {
        eumelanin: at(&eumelanin, band),
        pheomelanin: at(&pheomelanin, band),
        weights: [at(&x, band), at(&y, band), at(&z, band)],
    })
});

/// A spectrum in single precision.
pub(super) fn singles(bands: &Bands) -> [f32; BANDS] {
    let mut values = bands.0.iter().flat_map(|four| four.to_array());
    from_fn(|_| values.next().unwrap_or(0.0) as f32)
}

fn at(values: &[f32; BANDS], band: usize) -> f32 {
    values.get(band).copied().unwrap_or(0.0)
}

/// Pigment under eight sets: the two melanins, oxidised melanin, and any amount of one dye.
#[derive(Clone, Copy)]
pub(super) struct Pigment {
    pub(super) eumelanin: Lane,
    pub(super) pheomelanin: Lane,
    pub(super) oxidised: Lane,
    pub(super) dye: Lane,
}

impl Pigment {
    /// The same pigment, more or less of it.
    pub(super) fn times(self, by: Lane) -> Self {
        Self {
            eumelanin: self.eumelanin * by,
            pheomelanin: self.pheomelanin * by,
            oxidised: self.oxidised * by,
            dye: self.dye * by,
        }
    }
}

/// X, Y, Z under eight sets, and how they change.
pub(super) struct Seen {
    pub(super) xyz: [Lane; 3],
    pub(super) slope: [Lane; 3],
}

impl Seen {
    /// X, Y, Z moved along the change until the luminance is the one wanted: straight in their cube roots.
    pub(super) fn moved_to(&self, wanted: Lane) -> [Lane; 3] {
        let ([_, y, _], [_, slope, _]) = (self.xyz, self.slope);
        let by = ((wanted / y).ln() / Lane::splat(3.0)).exp() - Lane::ONE;
        let third = by * y / slope;
        let mut slopes = self.slope.into_iter();
        self.xyz.map(|value| {
            let root = Lane::ONE + slopes.next().unwrap_or_default() * third / value;
            value * root * root * root
        })
    }
}

impl Sets {
    fn new(models: &[Model]) -> Self {
        let lane = |of: &dyn Fn(&Model) -> f64| {
            let mut values = models.iter().map(of);
            Lane::new(from_fn(|_| values.next().unwrap_or(0.0) as f32))
        };
        let spectrum = |of: fn(&Model) -> Bands| {
            let spectra: Vec<[f32; BANDS]> = models.iter().map(|model| singles(&of(model))).collect();
            from_fn(|band| {
                let mut values = spectra.iter().map(|spectrum| at(spectrum, band));
                Lane::new(from_fn(|_| values.next().unwrap_or(0.0)))
            })
        };
        let exponent = |model: &Model| model.with.power.exponent();
        Self {
            span: spectrum(|model| model.fibre.span()),
            oxidised: spectrum(|model| model.oxidised),
            surface: from_fn(|place| lane(&|model| model.fibre.bare_surface().get(place).copied().unwrap_or(0.0))),
            span_luminance: lane(&|model| {
                let [_, y, _] = model.fibre.span().xyz();
                y
            }),
            gain: lane(&|model| -model.fibre.gain()),
            exponent: lane(&exponent),
            roots: [0.5, 0.75, 0.625].map(|power| lane(&|model| f64::from(u8::from(exponent(model) == power)))),
            black: lane(&|model| model.with.melanin_of_black),
            halvings_per_level: lane(&|model| 1.0 / model.with.levels_per_halving),
            reading: lane(&|model| model.with.reading),
            pheomelanin: lane(&|model| model.with.pheomelanin),
            resistance: lane(&|model| model.with.resistance),
            formed: lane(&|model| model.with.oxidised / (1.0 - model.with.survival)),
            survival: lane(&|model| model.with.survival),
            tone_share: lane(&|model| model.with.tone_share),
        }
    }

    /// Melanin of hair so many levels above black.
    pub(super) fn melanin(&self, above_black: Lane) -> Pigment {
        let all = self.black * (above_black * self.halvings_per_level * Lane::splat(-std::f32::consts::LN_2)).exp();
        let zero = Lane::ZERO;
        Pigment {
            eumelanin: all * (Lane::ONE - self.pheomelanin),
            pheomelanin: all * self.pheomelanin,
            oxidised: zero,
            dye: zero,
        }
    }

    /// X, Y, Z with this pigment, and how they change along a change of it. The dye is given as its absorption.
    pub(super) fn along(&self, pigment: &Pigment, change: &Pigment, dye: &[f32; BANDS]) -> Seen {
        let (mut xyz, mut slope) = (self.surface, [Lane::ZERO; 3]);
        let [one, square, fourth] = self.roots;
        for (((band, oxidised), span), dye) in COMMON.iter().zip(&self.oxidised).zip(&self.span).zip(dye) {
            let absorption = |of: &Pigment| {
                of.eumelanin * Lane::splat(band.eumelanin)
                    + of.pheomelanin * Lane::splat(band.pheomelanin)
                    + of.oxidised * *oxidised
                    + of.dye * Lane::splat(*dye)
            };
            let sigma = absorption(pigment).fast_max(Lane::splat(1e-12));
            let root = sigma.sqrt();
            let (second, third) = (root.sqrt(), root.sqrt().sqrt());
            let depth = self.gain * root * (one + square * second + fourth * third);
            let through = *span * depth.exp();
            let turn = through * depth * absorption(change) / sigma;
            for ((sum, turned), weight) in xyz.iter_mut().zip(&mut slope).zip(band.weights) {
                *sum += through * Lane::splat(weight);
                *turned += turn * Lane::splat(weight);
            }
        }
        Seen { xyz, slope: slope.map(|turned| turned * self.exponent) }
    }

    /// The step along the change that brings the luminance to a wanted one, taken where depth is close to linear.
    pub(super) fn step(&self, seen: &Seen, wanted: Lane) -> Lane {
        let ([_, bare, _], [_, y, _], [_, slope, _]) = (self.surface, seen.xyz, seen.slope);
        let tiny = Lane::splat(1e-9);
        let (above, wanted) = ((y - bare).fast_max(tiny), (wanted - bare).fast_max(tiny));
        // Depth is ln(-ln(part of the span that comes through)); both logarithms are below zero.
        let (here, there) = ((above / self.span_luminance).ln(), (wanted / self.span_luminance).ln());
        (there / here).ln() * above * here / slope
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{Hue, Tone};

    fn pigment([eumelanin, pheomelanin, oxidised, dye]: [f32; 4]) -> Pigment {
        let [eumelanin, pheomelanin, oxidised, dye] = [eumelanin, pheomelanin, oxidised, dye].map(Lane::splat);
        Pigment { eumelanin, pheomelanin, oxidised, dye }
    }

    fn yellow() -> [f32; BANDS] {
        Tone::of(Hue::Yellow).dye().as_ref().map_or([0.0; BANDS], singles)
    }

    /// As near as so much of what is wanted, for every set.
    fn near(got: Lane, want: Lane, part: f32) {
        for (got, want) in got.to_array().into_iter().zip(want.to_array()) {
            assert!((got - want).abs() <= part * want.abs(), "{got} for {want}");
        }
    }

    /// A slope is what a colour changes by along the change: the difference of two colours around it, over their distance.
    #[test]
    fn a_slope_is_a_difference_over_a_step() {
        let (here, change, step) = ([2.0, 0.1, 0.3, 0.5], [-1.0, -0.05, 0.2, 0.1], 0.02_f32);
        let at = |by: f32| {
            let mut moved = here;
            moved.iter_mut().zip(change).for_each(|(here, change)| *here += by * change);
            pigment(moved)
        };
        for sets in &*EVERY {
            let of = |by: f32| sets.along(&at(by), &pigment(change), &yellow());
            let (before, after) = (of(-step).xyz, of(step).xyz);
            for (place, slope) in of(0.0).slope.into_iter().enumerate() {
                near(slope, (after[place] - before[place]) / Lane::splat(2.0 * step), 0.01);
            }
        }
    }

    /// Half of the pigment is gone after the levels that halve it, and black has all of it, in its shares.
    #[test]
    fn melanin_halves_by_levels() {
        for sets in &*EVERY {
            for (levels, left) in [(0.0, 1.0), (1.0, 0.5), (2.0, 0.25)] {
                let melanin = sets.melanin(Lane::splat(levels) / sets.halvings_per_level);
                let all = sets.black * Lane::splat(left);
                near(melanin.eumelanin + melanin.pheomelanin, all, 1e-4);
                near(melanin.pheomelanin, all * sets.pheomelanin, 1e-4);
            }
        }
    }

    /// A step, and a move, bring the luminance to what a fifth less pigment gives: by about a fifth, and exactly.
    #[test]
    fn steps_and_moves_reach_a_luminance() {
        for sets in &*EVERY {
            let of = |by: f32| {
                let here = pigment([3.0, 0.2, 0.4, 0.5]).times(Lane::splat((-by).exp()));
                sets.along(&here, &here.times(-Lane::ONE), &yellow())
            };
            let (here, there) = (of(0.0), of(0.2));
            let [_, wanted, _] = there.xyz;
            near(sets.step(&here, wanted), Lane::splat(0.2), 0.05);
            let moved = here.moved_to(wanted);
            near(moved[1], wanted, 1e-4);
            near(moved[0], there.xyz[0], 0.01);
            near(moved[2], there.xyz[2], 0.03);
        }
    }
}
