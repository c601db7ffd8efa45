use crate::{
    colour::{ColourFinding, Difference, Level, Swatch, Tone},
    quantity::{Mass, Share},
};

/// One shade of a mix, weighable.
#[derive(Debug, Clone, PartialEq)]
pub struct MixPart {
    /// The code on the tube.
    pub code: String,
    /// Mass to weigh.
    pub mass: Mass,
    /// Share of the mix.
    pub share: Share,
}

/// A mix of shades and what it is predicted to give.
#[derive(Debug, Clone, PartialEq)]
pub struct TonerMix {
    /// The shades, largest mass first.
    pub parts: Vec<MixPart>,
    /// Mean level of the mix, by mass.
    pub level: Level,
    /// Tone of the mix, by mass.
    pub tone: Tone,
    /// The toned hair: a model with bounds.
    pub predicted: Swatch,
    /// From the prediction to the target: what is left undone.
    pub residual: Difference,
}

/// Whether the target is reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// The nearest mix is predicted within [`Difference::REPEAT_READINGS`] of the target.
    Reached,
    /// The target cannot be reached from these shades on this hair; the answer holds the nearest.
    NearestOnly,
}

/// The answer of a toner search.
#[derive(Debug, Clone, PartialEq)]
pub struct TonerAnswer {
    /// Whether the target is reached.
    pub outcome: Outcome,
    /// The colour asked for.
    pub target: Swatch,
    /// From the untoned hair to the target.
    pub before: Difference,
    /// The mix predicted nearest to the target.
    pub best: TonerMix,
    /// Other choices of shades, nearest first; the best mix of fewer shades is always among them.
    pub alternatives: Vec<TonerMix>,
    /// What the rules of the trade say about the best mix.
    pub findings: Vec<ColourFinding>,
}

impl TonerAnswer {
    /// The answer in one sentence.
    #[must_use]
    pub fn summary(&self) -> String {
        let mix = self.best.recipe();
        match self.outcome {
            Outcome::Reached => format!("{mix}: predicted {} from the target", self.best.residual),
            Outcome::NearestOnly => {
                format!(
                    "cannot be reached from these shades, nearest is {mix}: predicted {} short of the target",
                    self.best.residual
                )
            }
        }
    }
}
