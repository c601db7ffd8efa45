use super::Exposed;
use crate::colour::{Bands, Fibre, Lab, MODELS, SETS, Shade, Swatch, White, ciede2000, lab_of};

/// The hair and the shades under one set of assumptions, ready to be mixed: absorptions only.
pub(super) struct Predictor {
    hair: Bands,
    fibre: Fibre,
    /// What a mix of nothing but this shade adds.
    full: Vec<Bands>,
}

impl Predictor {
    fn new(exposed: &Exposed, shades: &[&Shade], set: usize) -> Option<Self> {
        let (hair, fibre, uptake) = exposed.behind(set)?;
        let model = MODELS.get(set)?;
        Some(Self { hair, fibre, full: shades.iter().map(|shade| shade.deposit(model) * uptake).collect() })
    }

    /// One predictor for each set of assumptions, the best first.
    pub(super) fn all(exposed: &Exposed, shades: &[&Shade]) -> Vec<Self> {
        (0..SETS).filter_map(|set| Self::new(exposed, shades, set)).collect()
    }

    /// X, Y, Z of the hair after a mix of shades, given as (place in the list, share of the mix).
    pub(super) fn toned(&self, mix: impl IntoIterator<Item = (usize, f64)>) -> [f64; 3] {
        let mut all = self.hair;
        for (place, share) in mix {
            if let Some(full) = self.full.get(place) {
                all = all + *full * share;
            }
        }
        self.fibre.xyz(&all)
    }

    /// CIEDE2000 from the toned hair to a target for D65 and 10 degrees.
    pub(super) fn miss(&self, mix: impl IntoIterator<Item = (usize, f64)>, target: Lab) -> f64 {
        ciede2000(lab_of(self.toned(mix)), target)
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
    target.lab().adapted_to(White::D65TenDegree)
}
