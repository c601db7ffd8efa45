use super::{
    assumptions::{Assumptions, ENSEMBLE, Power, SETS},
    bands::{Bands, XYZ},
};
use std::sync::LazyLock;
use wide::f64x4;

/// A fibre without pigment under one set of assumptions: how absorption in it becomes reflectance.
///
/// `surface + (keratin - surface) exp(-gain absorption^power)`, wavelength by wavelength.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fibre {
    surface: Bands,
    span: Bands,
    gain: f64,
    power: Power,
}

/// One set of assumptions, made ready.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Model {
    pub(crate) with: Assumptions,
    pub(crate) fibre: Fibre,
    /// Absorption of a unit of oxidised melanin.
    pub(super) oxidised: Bands,
}

/// Every set of assumptions, the best first.
pub(crate) static MODELS: LazyLock<[Model; SETS]> = LazyLock::new(|| {
    ENSEMBLE.map(|with| Model {
        with,
        fibre: Fibre::new(&with),
        oxidised: Bands::at(|nm| (-(nm - 400.0) / with.tail_nm).exp()),
    })
});

impl Fibre {
    fn new(with: &Assumptions) -> Self {
        let surface = Bands::at(|nm| with.surface * (nm / 550.0).powf(with.surface_tilt));
        let keratin = Bands::at(|nm| {
            let yellow = with.keratin_violet * (-(nm - 400.0) / 60.0).exp();
            with.keratin * (nm / 550.0).powf(with.keratin_warmth) * (-yellow).exp()
        });
        Self { surface, span: keratin.with(&surface, |k, s| k - s), gain: with.gain, power: with.power }
    }

    /// What the fibre reflects with this absorption in it.
    pub(crate) fn reflectance(&self, absorption: &Bands) -> Bands {
        let gain = f64x4::splat(-self.gain);
        let seen = absorption.with(&self.span, |sigma, span| span * (gain * self.raised(sigma)).exp());
        seen + self.surface
    }

    /// X, Y, Z of it, for D65 and 10 degrees.
    pub(crate) fn xyz(&self, absorption: &Bands) -> [f64; 3] {
        self.reflectance(absorption).xyz()
    }

    /// What bare fibre reflects above bare surface.
    pub(super) const fn span(&self) -> Bands {
        self.span
    }

    /// X, Y, Z of the surface alone.
    pub(super) fn bare_surface(&self) -> [f64; 3] {
        self.surface.xyz()
    }

    /// What the absorption is multiplied by.
    pub(super) const fn gain(&self) -> f64 {
        self.gain
    }

    /// Luminance Y, and how it changes along a change of the absorption.
    pub(super) fn luminance(&self, absorption: &Bands, change: &Bands) -> (f64, f64) {
        let [_, weights, _] = &*XYZ;
        let (gain, exponent) = (f64x4::splat(-self.gain), f64x4::splat(self.power.exponent()));
        let (mut seen, mut slope) = (f64x4::ZERO, f64x4::ZERO);
        let lanes = absorption.0.iter().zip(change.0).zip(self.span.0).zip(weights.0);
        for (((sigma, change), span), weight) in lanes {
            let depth = gain * self.raised(*sigma);
            let through = weight * span * depth.exp();
            seen += through;
            slope += through * depth * exponent * change / sigma.fast_max(f64x4::splat(1e-12));
        }
        (seen.reduce_add() + self.surface.sum(weights), slope.reduce_add())
    }

    /// How deep a luminance lies between bare fibre and bare surface, so that it is close to linear in the logarithm of
    /// the pigment; and its derivative.
    pub(super) fn depth(&self, luminance: f64) -> (f64, f64) {
        let [_, weights, _] = &*XYZ;
        let (above, span) = (luminance - self.surface.sum(weights), self.span.sum(weights));
        let left = (above / span).clamp(1e-12, 1.0 - 1e-12).ln();
        ((-left).ln(), 1.0 / (above.max(1e-12) * left))
    }

    /// The absorption behind a reflectance, with a fibre adjusted to be at least that light and at most that dark, so
    /// that [`reflectance`](Self::reflectance) gives the same back.
    pub(crate) fn behind(&self, seen: &Bands) -> (Bands, Self) {
        let surface = self.surface.with(seen, |surface, seen| surface.fast_min(seen * 0.9));
        let keratin = (self.span + self.surface).with(seen, |keratin, seen| keratin.fast_max(seen * 1.001));
        let fibre = Self { surface, span: keratin.with(&surface, |k, s| k - s), ..*self };
        let left = seen.with(&surface, |seen, surface| seen - surface).with(&fibre.span, |a, b| a / b);
        let exponent = 1.0 / self.power.exponent();
        (left.map(|left| (-left.clamp(1e-12, 1.0).ln() / self.gain).powf(exponent)), fibre)
    }

    /// The absorption to the power of the model.
    #[inline]
    fn raised(&self, absorption: f64x4) -> f64x4 {
        let half = absorption.fast_max(f64x4::ZERO).sqrt();
        match self.power {
            Power::Half => half,
            Power::FiveEighths => half * half.sqrt().sqrt(),
            Power::ThreeQuarters => half * half.sqrt(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::pigment::{EUMELANIN, Melanin, PHEOMELANIN};

    // A derivative is the limit of a quotient of differences: here of 1e-6 to both sides, off by its square and by rounding.
    #[test]
    fn luminance_and_depth_change_as_their_quotients_of_differences() {
        for model in &*MODELS {
            for level in [1.0, 4.0, 7.5, 11.0] {
                let absorption = Melanin::natural(crate::colour::Level::clamped(level), model).absorption(model);
                let at = |part: f64| model.fibre.luminance(&(absorption * part), &absorption);
                let (luminance, slope) = at(1.0);
                let quotient = (at(1.0 + 1e-6).0 - at(1.0 - 1e-6).0) / 2e-6;
                assert!((quotient / slope - 1.0).abs() < 1e-6, "{level}: {quotient} {slope}");
                let ((_, slope), step) = (model.fibre.depth(luminance), luminance * 1e-6);
                let [high, low] = [luminance + step, luminance - step].map(|y| model.fibre.depth(y).0);
                let quotient = (high - low) / (2.0 * step);
                assert!((quotient / slope - 1.0).abs() < 1e-6, "{level}: {quotient} {slope}");
            }
        }
    }

    fn near(got: f64, want: f64, part: f64) {
        assert!((got - want).abs() <= part * want.abs(), "{got} for {want}");
    }

    fn bands(of: &Bands) -> Vec<f64> {
        of.0.map(f64x4::to_array).concat()
    }

    fn melanin() -> Bands {
        *EUMELANIN * 2.0 + *PHEOMELANIN * 0.1
    }

    /// What lies behind a colour gives that colour again, also where it is darker than the surface or lighter than bare fibre.
    #[test]
    fn what_lies_behind_a_colour_gives_it_again() {
        for Model { fibre, .. } in &*MODELS {
            let hair = fibre.reflectance(&melanin());
            for seen in [hair, hair * 0.01, Bands::at(|_| 0.9)] {
                let (absorption, own) = fibre.behind(&seen);
                for (got, want) in bands(&own.reflectance(&absorption)).into_iter().zip(bands(&seen)) {
                    assert!((got - want).abs() < 1e-9, "{got} for {want}");
                }
            }
            // What is far lighter than the surface leaves it as it is.
            let (_, own) = fibre.behind(&Bands::at(|_| 0.9));
            assert_eq!(bands(&own.surface), bands(&fibre.surface));
        }
    }

    /// 4 to 1/2, 5/8 and 3/4: 2, 2.3784 and 2.8284, as school has it. Without pigment bare fibre is seen.
    #[test]
    fn absorption_is_raised_to_its_power() {
        for Model { fibre, with, .. } in &*MODELS {
            let want = match with.power {
                Power::Half => 2.0,
                Power::FiveEighths => 2.378_414,
                Power::ThreeQuarters => 2.828_427,
            };
            near(fibre.raised(f64x4::splat(4.0)).to_array()[0], want, 1e-6);
            near(4f64.powf(with.power.exponent()), want, 1e-6);
            let bare = bands(&fibre.reflectance(&Bands::ZERO));
            for ((bare, span), surface) in bare.into_iter().zip(bands(&fibre.span)).zip(bands(&fibre.surface)) {
                assert!((bare - span - surface).abs() < 1e-12);
            }
        }
    }
}
