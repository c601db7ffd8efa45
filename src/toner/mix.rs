use crate::{
    choice::choice,
    colour::{Difference, Level, Swatch, Tone},
    finding::Finding,
    quantity::{Mass, Share},
};
use schemars::JsonSchema;
use serde::Serialize;

/// One shade of a mix, weighable.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct MixPart {
    /// The code on the tube.
    pub code: String,
    /// Mass to weigh.
    #[serde(rename = "mass_g")]
    pub mass: Mass,
    /// Share of the mix.
    #[serde(rename = "share_percent")]
    pub share: Share,
}

/// A mix of shades and what it is predicted to give.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TonerMix {
    /// The shades, largest mass first.
    pub parts: Vec<MixPart>,
    /// Mean level of the mix, by mass.
    pub level: Level,
    /// Tone of the mix, by mass.
    pub tone: Tone,
    /// The toned hair: a model with bounds.
    pub predicted: Swatch,
    /// From the prediction to the target: what is left undone, in the directions in which the target differs.
    pub residual: Difference,
}

choice! {
    /// Whether the target is reached.
    Outcome: "outcome" {
        /// The nearest mix is predicted within [`Difference::REPEAT_READINGS`] of the target.
        Reached = "reached",
        /// The target cannot be reached from these shades on this hair; the answer holds the nearest.
        NearestOnly = "nearest-only" => "nearest only",
        /// The hair is nearer to the target untoned than under any mix of these shades.
        AlreadyNearer = "already-nearer" => "already nearer",
    }
}

/// The answer of a toner search.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TonerAnswer {
    /// Whether the target is reached.
    pub outcome: Outcome,
    /// The colour asked for.
    pub target: Swatch,
    /// From the untoned hair to the target.
    pub before: Difference,
    /// The mix predicted nearest to the target, a further shade counting only where it is worth it.
    pub best: TonerMix,
    /// Other choices of shades; the nearest of all and the best of fewer shades are always among them.
    pub alternatives: Vec<TonerMix>,
    /// What the rules of the trade say about the best mix.
    pub findings: Vec<Finding>,
}

impl TonerAnswer {
    /// The answer in one sentence.
    #[must_use]
    pub fn summary(&self) -> String {
        let (mix, left, before) = (self.best.recipe(), self.best.residual, self.before.ciede2000);
        match self.outcome {
            Outcome::Reached => format!("{mix}: predicted within {left} of the target"),
            Outcome::NearestOnly => format!(
                "cannot be reached from these shades, nearest is {mix}: from the prediction the target is still {left} away"
            ),
            Outcome::AlreadyNearer => format!(
                "leave it: untoned hair is {before:.1} from the target, and {mix}, the nearest of these shades, would leave \
                 it {:.1} away",
                left.ciede2000
            ),
        }
    }
}
