use super::Exposed;
use crate::{
    colour::{Bands, Fibre, Lab, MODELS, SETS, Shade, Swatch, White, ciede2000, lab_of},
    quantity::Share,
};

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

/// The hair after a mix of shades, each with its share of all of them: the model with its bounds.
///
/// # Example
///
/// ```
/// use foilwork::{
///     colour::{Hue, Level, Shade, Tone},
///     quantity::Share,
///     toner::{Exposed, toned},
/// };
///
/// let nine = Level::new(9.0)?;
/// let violet = Shade::new("J9-mist", nine, Tone::of(Hue::Violet))?;
/// let hair = Exposed::lightened(Level::new(5.0)?, nine);
/// assert!(toned(&hair, [(&violet, Share::ALL)]).lab().b() < hair.look().lab().b());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The model of [`Swatch`]; absorptions add up, and how much is taken up is assumed.
#[must_use]
pub fn toned<'a>(exposed: &Exposed, mix: impl IntoIterator<Item = (&'a Shade, Share)>) -> Swatch {
    let (shades, shares): (Vec<&Shade>, Vec<Share>) = mix.into_iter().unzip();
    let shares: Vec<_> = shares.into_iter().map(Share::fraction).enumerate().collect();
    predict(&Predictor::all(exposed, &shades), &shares)
}

/// The target for the white of the model.
pub(super) fn aim(target: &Swatch) -> Lab {
    target.lab().adapted_to(White::D65TenDegree)
}
