use super::Exposed;
use crate::colour::Lab;
use crate::colour::{Absorption, Assumptions, ENSEMBLE, SETS, Shade, Swatch, White, ciede2000, lab_of_linear};

/// The hair and the shades under one set of assumptions, ready to be mixed: absorptions only.
pub(super) struct Predictor {
    hair: Absorption,
    fibre: Assumptions,
    /// What a mix of nothing but this shade adds.
    full: Vec<Absorption>,
}

impl Predictor {
    fn new(seen: [f64; 3], shades: &[&Shade], with: &Assumptions) -> Self {
        let (hair, fibre) = Absorption::behind(seen, with);
        Self { hair, fibre, full: shades.iter().map(|shade| shade.deposit(with) * with.uptake).collect() }
    }

    /// The predictor under the best assumptions.
    pub(super) fn best(exposed: &Exposed, shades: &[&Shade]) -> Self {
        let ([seen, ..], [with, ..]) = (exposed.look().samples, &ENSEMBLE);
        Self::new(seen, shades, with)
    }

    /// One predictor for each set of assumptions, the best first.
    pub(super) fn all(exposed: &Exposed, shades: &[&Shade]) -> Vec<Self> {
        exposed.look().samples.iter().zip(&ENSEMBLE).map(|(seen, with)| Self::new(*seen, shades, with)).collect()
    }

    /// The hair after a mix of shades, given as (place in the list, share of the mix).
    pub(super) fn toned(&self, mix: impl IntoIterator<Item = (usize, f64)>) -> [f64; 3] {
        let mut all = self.hair;
        for (place, share) in mix {
            if let Some(full) = self.full.get(place) {
                all = all + *full * share;
            }
        }
        all.reflectance(&self.fibre)
    }

    /// CIEDE2000 from the toned hair to a target for D65 and 2 degrees.
    pub(super) fn miss(&self, mix: impl IntoIterator<Item = (usize, f64)>, target: Lab) -> f64 {
        ciede2000(lab_of_linear(self.toned(mix)), target)
    }
}

/// The toned hair under every set of assumptions.
pub(super) fn predict(predictors: &[Predictor], mix: &[(usize, f64)]) -> Swatch {
    let mut samples = [[0.0; 3]; SETS];
    for (sample, predictor) in samples.iter_mut().zip(predictors) {
        *sample = predictor.toned(mix.iter().copied());
    }
    Swatch::modelled(samples)
}

/// The target for the white of the model.
pub(super) fn aim(target: &Swatch) -> Lab {
    target.lab().adapted_to(White::D65TwoDegree)
}
