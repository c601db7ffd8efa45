//! Natural and lightened hair, tabulated: what planning asks for most, without a spectrum each time.
//!
//! Natural hair is kept as the cube roots of X, Y and Z, which are even to the eye: a Chebyshev series in the level for every
//! set of assumptions. Of lightened hair the dose of lightener is kept, roughly, by the level it comes from and how far it went;
//! one spectrum near the right one is enough then.

use super::{
    Level, SETS, Tone,
    chebyshev::{nodes, polynomials, series, value},
    fibre::MODELS,
    observer::BANDS,
    pigment::Melanin,
    sets::{EVERY, Lane, Pigment, singles},
};
use std::sync::LazyLock;
use wide::f64x4;

/// Terms in the level of natural hair.
const LEVEL_TERMS: usize = 24;
/// Terms in the level that lightened hair comes from.
const FROM_TERMS: usize = 8;
/// Terms in the part of the way to the lightest level that it went.
const WAY_TERMS: usize = 10;

/// Steps towards the luminance of a look; the way from there is straight enough.
const NEWTON_STEPS: usize = 2;

/// X, Y, Z under every set of assumptions.
pub(super) type Samples = [[f64; 3]; SETS];

/// A number under every set of assumptions, four to a lane.
type Each = [f64x4; SETS / 4];

/// Cube roots of X, Y, Z of natural hair.
static NATURAL: LazyLock<[[Each; 3]; LEVEL_TERMS]> = LazyLock::new(|| {
    series(&nodes::<LEVEL_TERMS>().map(|place| {
        roots(
            &MODELS
                .each_ref()
                .map(|model| model.fibre.xyz(&Melanin::natural(level_at(place), model).absorption(model))),
        )
    }))
});

/// Of these the luminance alone, set by set: what a level is read by.
static LUMINANCE: LazyLock<[[f64; LEVEL_TERMS]; SETS]> = LazyLock::new(|| {
    let mut each = [[0.0; LEVEL_TERMS]; SETS];
    for (term, [_, y, _]) in NATURAL.iter().enumerate() {
        for (terms, coefficient) in each.iter_mut().zip(flat(*y)) {
            terms.iter_mut().skip(term).take(1).for_each(|place| *place = coefficient);
        }
    }
    each
});

/// Natural logarithm of the dose of lightener for each level of the way: near enough to begin from.
static DOSE: LazyLock<[[Each; WAY_TERMS]; FROM_TERMS]> = LazyLock::new(|| {
    series(&nodes::<FROM_TERMS>().map(|place| {
        let from = level_at(place);
        let mut last = [None; SETS];
        let mut ways = nodes::<WAY_TERMS>();
        // From the shortest way to the longest: each dose tells where to look for the next.
        ways.reverse();
        let mut logarithms = ways.map(|place| {
            let way = f64::midpoint(1.0, place) * (Level::LIGHTEST - from).levels();
            let to = Level::clamped(from.number() + way);
            for (last, model) in last.iter_mut().zip(&*MODELS) {
                let guess = last.map(|per_level: f64| per_level * way);
                *last = Some(Melanin::dose(from, to, guess, model) / way);
            }
            lanes(last.iter().map(|per_level| per_level.unwrap_or(1.0).ln()))
        });
        logarithms.reverse();
        series(&logarithms)
    }))
});

/// X, Y, Z of natural hair.
pub(super) fn natural(level: Level) -> Samples {
    cubes(value(&NATURAL, &polynomials(place_of(level))))
}

/// X, Y, Z of hair lightened from one level to another; of natural hair where that is no lightening.
///
/// The dose near the right one gives a colour near the right one, and how it changes along the dose; what is missing to the
/// luminance of natural hair of the level reached is made up along that change.
pub(super) fn lightened(from: Level, to: Level) -> Samples {
    if to <= from {
        return natural(from);
    }
    let way = to.number() - from.number();
    let part = 2.0 * way / (Level::LIGHTEST.number() - from.number()) - 1.0;
    let per_level = value(&value(&DOSE, &polynomials(place_of(from))), &polynomials(part));
    let doses = flat(per_level.map(|logarithm| logarithm.exp() * way));
    let luminance = luminance_roots(to).map(|root| root * root * root);
    let mut lanes = narrow(&doses).into_iter().zip(narrow(&luminance));
    let xyz = EVERY.each_ref().map(|sets| {
        let (dose, wanted) = lanes.next().unwrap_or_default();
        let start = sets.melanin(Lane::splat(from.number() as f32 - 1.0) + sets.reading);
        let [left, pheomelanin_left, gone] =
            [Lane::ONE, sets.resistance, sets.survival].map(|rate| (-dose * rate).exp());
        let formed = sets.formed * start.eumelanin;
        let after = Pigment {
            eumelanin: start.eumelanin * left,
            pheomelanin: start.pheomelanin * pheomelanin_left,
            oxidised: formed * (gone - left),
            dye: Lane::ZERO,
        };
        let change = Pigment {
            eumelanin: -after.eumelanin,
            pheomelanin: -after.pheomelanin * sets.resistance,
            oxidised: formed * (left - sets.survival * gone),
            dye: Lane::ZERO,
        };
        let seen = sets.along(&after, &change, &[0.0; BANDS]);
        seen.moved_to(wanted)
    });
    as_light_as(luminance, xyz)
}

/// X, Y, Z of a level and a tone as a shade shows them on white hair: tone and neutral pigment in their shares, and as much
/// of both as leaves it as light as the level.
pub(super) fn look(level: Level, tone: &Tone) -> Samples {
    let dye = tone.dye();
    let absorption = dye.as_ref().map_or([0.0; BANDS], singles);
    let xyz = EVERY.each_ref().map(|sets| {
        // The label states the level: the uncertainty of reading a head by eye is not part of it.
        let neutral = sets.melanin(Lane::splat(level.number() as f32 - 1.0));
        let plain = sets.along(&neutral, &neutral, &[0.0; BANDS]);
        if dye.is_none() {
            return plain.xyz;
        }
        let [_, wanted, _] = plain.xyz;
        let of_tone = sets.tone_share * (neutral.eumelanin + neutral.pheomelanin);
        let mixed = Pigment { dye: of_tone, ..neutral.times(Lane::ONE - sets.tone_share) };
        let mut less = Lane::ZERO;
        let mut seen = sets.along(&mixed, &mixed.times(-Lane::ONE), &absorption);
        for _ in 0..NEWTON_STEPS {
            less += sets.step(&seen, wanted);
            let here = mixed.times((-less).exp());
            seen = sets.along(&here, &here.times(-Lane::ONE), &absorption);
        }
        seen.moved_to(wanted)
    });
    widened(xyz)
}

/// Cube roots of the luminance of natural hair of a level.
pub(super) fn luminance_roots(level: Level) -> [f64; SETS] {
    let [_, y, _] = value(&NATURAL, &polynomials(place_of(level)));
    flat(y)
}

/// The cube root of the luminance of natural hair as a function of the level under one set of assumptions.
pub(super) fn luminance_root(set: usize) -> impl Fn(Level) -> f64 {
    let terms = LUMINANCE.get(set).unwrap_or(&[0.0; LEVEL_TERMS]);
    move |level| terms.iter().zip(polynomials::<LEVEL_TERMS>(place_of(level))).map(|(term, by)| term * by).sum()
}

/// A level as a place from -1 to 1.
fn place_of(level: Level) -> f64 {
    let (low, high) = (Level::DARKEST.number(), Level::LIGHTEST.number());
    (2.0 * level.number() - low - high) / (high - low)
}

fn level_at(place: f64) -> Level {
    let (low, high) = (Level::DARKEST.number(), Level::LIGHTEST.number());
    Level::clamped(f64::midpoint(low, high) + place * (high - low) / 2.0)
}

fn roots(samples: &Samples) -> [Each; 3] {
    let root = |of: fn(&[f64; 3]) -> f64| lanes(samples.iter().map(|sample| of(sample).cbrt()));
    [root(|[x, _, _]| *x), root(|[_, y, _]| *y), root(|[_, _, z]| *z)]
}

fn lanes(values: impl IntoIterator<Item = f64>) -> Each {
    let mut values = values.into_iter();
    [(); SETS / 4].map(|()| f64x4::new([(); 4].map(|()| values.next().unwrap_or(0.0))))
}

/// In single precision, eight to a lane.
fn narrow(values: &[f64; SETS]) -> [Lane; SETS / 8] {
    let mut values = values.iter().map(|value| *value as f32);
    [(); SETS / 8].map(|()| Lane::new([(); 8].map(|()| values.next().unwrap_or(0.0))))
}

fn widened(xyz: [[Lane; 3]; SETS / 8]) -> Samples {
    let mut each = xyz.into_iter().flat_map(|[x, y, z]| {
        let each = x.to_array().into_iter().zip(y.to_array()).zip(z.to_array());
        each.map(|((x, y), z)| [f64::from(x), f64::from(y), f64::from(z)])
    });
    [(); SETS].map(|()| each.next().unwrap_or_default())
}

/// Exactly as light as wanted.
fn as_light_as(luminance: [f64; SETS], xyz: [[Lane; 3]; SETS / 8]) -> Samples {
    let mut wanted = luminance.into_iter();
    widened(xyz).map(|[x, y, z]| [x, wanted.next().unwrap_or(y), z])
}

fn cubes(roots: [Each; 3]) -> Samples {
    let [x, y, z] = roots.map(|each| flat(each.map(|root| root * root * root)));
    let mut each = x.into_iter().zip(y).zip(z);
    [(); SETS].map(|()| each.next().map_or([0.0; 3], |((x, y), z)| [x, y, z]))
}

fn flat(each: Each) -> [f64; SETS] {
    let mut values = each.into_iter().flat_map(f64x4::to_array);
    [(); SETS].map(|()| values.next().unwrap_or(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::{Hue, difference::ciede2000, dye::deposit, space::lab_of};

    /// The largest CIEDE2000 between two lists of samples.
    fn apart(one: &Samples, other: &Samples) -> f64 {
        one.iter().zip(other).map(|(one, other)| ciede2000(lab_of(*one), lab_of(*other))).fold(0.0, f64::max)
    }

    #[test]
    fn the_table_of_natural_hair_is_the_spectrum_summed_up() {
        let mut worst = 0.0_f64;
        for step in 0..=440 {
            let level = Level::clamped(1.0 + f64::from(step) / 40.0);
            let direct =
                MODELS.each_ref().map(|model| model.fibre.xyz(&Melanin::natural(level, model).absorption(model)));
            worst = worst.max(apart(&natural(level), &direct));
        }
        assert!(worst < 0.05, "{worst}");
    }

    #[test]
    fn a_look_is_the_spectrum_summed_up() {
        let hues = Hue::ALL.iter().map(|hue| Tone::of(*hue));
        let tones: Vec<Tone> = hues.chain([Tone::neutral(), Tone::from_hues([Hue::Blue, Hue::Yellow])]).collect();
        let mut worst = 0.0_f64;
        for tone in &tones {
            for step in 0..=11 {
                let level = Level::clamped(1.0 + f64::from(step));
                let direct = MODELS.each_ref().map(|model| model.fibre.xyz(&deposit(level, tone, model)));
                worst = worst.max(apart(&look(level, tone), &direct));
            }
        }
        assert!(worst < 0.05, "{worst}");
    }

    #[test]
    fn the_table_of_lightened_hair_is_the_spectrum_summed_up() {
        let mut worst = (0.0, 0.0, 0.0);
        for from in 0..=17 {
            let from = Level::clamped(1.0 + f64::from(from) * 0.63);
            for to in 0..=31 {
                let to = Level::clamped(from.number() + f64::from(to) / 31.0 * (12.0 - from.number()));
                let direct = MODELS
                    .each_ref()
                    .map(|model| model.fibre.xyz(&Melanin::lightened(from, to, model).absorption(model)));
                let off = apart(&lightened(from, to), &direct);
                if off > worst.0 {
                    worst = (off, from.number(), to.number());
                }
            }
        }
        assert!(worst.0 < 0.05, "{worst:?}");
    }
}
