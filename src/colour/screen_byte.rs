//! The byte a channel of a screen gets for its light, without a power: the light where one byte ends and the next begins is known.

use palette::{encoding::IntoLinear, encoding::Srgb};
use std::sync::LazyLock;

/// Pieces that the light from 0 to 1 is cut into: so many that at most a few bytes begin in one.
const PIECES: usize = 4096;

struct Bytes {
    /// The least light of each byte from 1.
    least: [f64; 255],
    /// The byte at the beginning of each piece.
    at: [u8; PIECES + 1],
}

static BYTES: LazyLock<Bytes> = LazyLock::new(|| {
    let least: [f64; 255] = std::array::from_fn(|before| light((before as f64 + 0.5) / 255.0));
    let at = std::array::from_fn(|piece| {
        let light = piece as f64 / PIECES as f64;
        least.iter().filter(|least| **least <= light).count() as u8
    });
    Bytes { least, at }
});

/// The light of a channel that is shown as a part of the full one, IEC 61966-2-1.
fn light(shown: f64) -> f64 {
    <Srgb as IntoLinear<f64, f64>>::into_linear(shown)
}

/// The nearest byte to what a light from 0 to 1 is shown as; what is beyond gets the first or last one.
#[inline]
pub(super) fn byte(light: f64) -> u8 {
    let Bytes { least, at } = &*BYTES;
    // Below 0, and of no number, it is piece 0.
    let piece = (light * PIECES as f64) as usize;
    let mut byte = at.get(piece).copied().unwrap_or(u8::MAX);
    while least.get(usize::from(byte)).is_some_and(|least| *least <= light) {
        byte += 1;
    }
    byte
}

/// Whether a light is from 0 to 1 but for what rounding leaves: up to 0.002 of what is shown, below 0 in a straight line.
#[inline]
pub(super) fn can_be_shown(light: f64) -> bool {
    static ENDS: LazyLock<[f64; 2]> = LazyLock::new(|| [-self::light(0.002), self::light(1.002)]);
    let [least, most] = *ENDS;
    (least..=most).contains(&light)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// As IEC 61966-2-1 has it.
    fn shown(light: f64) -> f64 {
        if light <= 0.003_130_8 { 12.92 * light } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        #[test]
        fn a_byte_is_the_nearest_to_what_is_shown(light in -0.1..1.1_f64, dark in 0.0..0.01_f64) {
            for light in [light, dark] {
                let exact = (255.0 * shown(light)).clamp(0.0, 255.0);
                prop_assert!((f64::from(byte(light)) - exact).abs() <= 0.5 + 1e-9, "{light}: {} for {exact}", byte(light));
                let within = (-0.002..=1.002).contains(&shown(light));
                prop_assert_eq!(can_be_shown(light), within, "{}", light);
            }
        }
    }

    #[test]
    fn every_byte_is_that_of_its_own_light() {
        for own in 0..=255_u8 {
            assert_eq!(byte(light(f64::from(own) / 255.0)), own);
        }
        assert_eq!([f64::NEG_INFINITY, -1.0, 2.0, f64::INFINITY].map(byte), [0, 0, 255, 255]);
    }
}
