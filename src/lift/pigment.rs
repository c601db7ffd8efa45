//! Two pigments: most of it goes quickly, the red-yellow part resists.

use super::real::Real;

/// Share of the pigment that resists.
///
/// Assumed within the published range of pheomelanin in black to brown hair, 1 to 17 % (citations `borges-2001`,
/// `pheomelanin-2018`); red hair holds more.
const RESISTING: f64 = 0.09;

/// How fast the resisting part goes, as a share of the rate of the rest. Assumed: pheomelanin resists peroxide longer
/// (citation `hair-cosmetics-review`), by how much was not found.
const RESISTING_RATE: f64 = 9.0 / 20.0;

/// What is left of the quick and of the resisting pigment. Both are powers of one exponential, since their rates are as 20
/// to 9; an exponential costs more than all the products.
#[inline]
fn parts<T: Real>(dose: T) -> (T, T) {
    let x = (dose * T::of(-1.0 / 20.0)).exp();
    let x4 = (x * x) * (x * x);
    let x8 = x4 * x4;
    (T::of(1.0 - RESISTING) * (x8 * x8 * x4), T::of(RESISTING) * (x8 * x))
}

/// Share of the pigment that is left after a dose.
#[inline]
pub(super) fn left<T: Real>(dose: T) -> T {
    let (quick, resisting) = parts(dose);
    quick + resisting
}

/// The same share, and how fast it falls with the dose.
#[inline]
pub(super) fn left_and_slope(dose: f64) -> (f64, f64) {
    let (quick, resisting) = parts(dose);
    (quick + resisting, -quick - RESISTING_RATE * resisting)
}

/// How fast that share falls with the dose; never positive.
pub(super) fn slope(dose: f64) -> f64 {
    left_and_slope(dose).1
}

/// The dose that leaves this share; infinite for none.
///
/// The share falls between those of either pigment alone, which brackets the answer; Newton's steps on its logarithm,
/// which is nearly straight and convex, come from the safe side and meet it in a few steps.
pub(super) fn dose_leaving(share: f64) -> f64 {
    if share >= 1.0 {
        return 0.0;
    }
    if share <= 0.0 {
        return f64::INFINITY;
    }
    let wanted = share.ln();
    let mut dose = -wanted;
    for _ in 0..20 {
        let (quick, resisting) = parts(dose);
        let now = quick + resisting;
        let step = (wanted - now.ln()) * now / (quick + RESISTING_RATE * resisting);
        dose -= step;
        if step.abs() <= 1e-14 * dose {
            break;
        }
    }
    dose
}
