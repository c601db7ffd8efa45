use super::{Outcome, TonerAnswer, TonerMix};
use crate::colour::{ColourFinding, SwatchData};
use serde::Serialize;

/// A toner answer as plain data, for a plan or a file.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TonerData {
    /// Whether the nearest mix is predicted to reach the target.
    pub reached: bool,
    /// The answer in one sentence.
    pub summary: String,
    /// The colour asked for.
    pub target: SwatchData,
    /// CIEDE2000 from the untoned hair to the target.
    pub before_ciede2000: f64,
    /// The nearest mix.
    pub best: MixData,
    /// Other mixes, nearest first.
    pub alternatives: Vec<MixData>,
    /// What the rules of the trade say.
    pub findings: Vec<ColourFinding>,
}

/// A mix as plain data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MixData {
    /// The shades, largest mass first.
    pub parts: Vec<PartData>,
    /// Mean level of the mix.
    pub level: f64,
    /// Tone of the mix in words.
    pub tone: String,
    /// The toned hair.
    pub predicted: SwatchData,
    /// CIEDE2000 from the prediction to the target.
    pub residual_ciede2000: f64,
    /// The same with its directions, in words.
    pub residual: String,
}

/// One shade of a mix as plain data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PartData {
    /// The code on the tube.
    pub code: String,
    /// Mass to weigh, in g.
    pub mass_g: f64,
    /// Share of the mix, in percent.
    pub share_percent: f64,
}

impl TonerMix {
    /// The mix as plain data.
    #[must_use]
    pub fn data(&self) -> MixData {
        let part = |part: &super::MixPart| PartData {
            code: part.code.clone(),
            mass_g: part.mass.g(),
            share_percent: part.share.percent(),
        };
        MixData {
            parts: self.parts.iter().map(part).collect(),
            level: self.level.number(),
            tone: self.tone.to_string(),
            predicted: self.predicted.data(),
            residual_ciede2000: self.residual.ciede2000,
            residual: self.residual.to_string(),
        }
    }
}

impl TonerAnswer {
    /// The answer as plain data.
    #[must_use]
    pub fn data(&self) -> TonerData {
        TonerData {
            reached: self.outcome == Outcome::Reached,
            summary: self.summary(),
            target: self.target.data(),
            before_ciede2000: self.before.ciede2000,
            best: self.best.data(),
            alternatives: self.alternatives.iter().map(TonerMix::data).collect(),
            findings: self.findings.clone(),
        }
    }
}
