use super::{PorousToning, lighter::is_lighter, search::WORTH_A_SHADE};
use crate::{
    choice::choice,
    colour::{Difference, Level, Swatch, Tone, UnderlyingPigment},
    finding::Finding,
    quantity::{Mass, Share},
};
use schemars::JsonSchema;
use serde::Serialize;

/// One shade of a mix, weighable.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TonerPart {
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
    pub parts: Vec<TonerPart>,
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
        /// The target cannot be reached from these shades on this hair; the answer holds the nearest, and the one that is taken.
        NearestOnly = "nearest-only" => "nearest only",
        /// The hair is nearer to the target untoned than under any mix of these shades.
        AlreadyNearer = "already-nearer" => "already nearer",
        /// Untoned hair and the mix are nearer to each other than the model can tell: the trade's list and a strand decide.
        TooCloseToTell = "too-close-to-tell" => "too close to tell",
    }
}

/// The answer of a toner search.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct TonerAnswer {
    /// Whether the target is reached.
    pub outcome: Outcome,
    /// The warmth that the trade's list names and the mix is chosen against.
    pub against: Option<UnderlyingPigment>,
    /// The colour asked for.
    pub target: Swatch,
    /// From the untoned hair to the target.
    pub before: Difference,
    /// The mix that is taken: the one predicted nearest to the target, a further shade counting only where it is worth it; or,
    /// against warmth, one of those that the model cannot tell from it.
    pub best: TonerMix,
    /// Other choices of shades; the nearest of all and the best of fewer shades are always among them.
    pub alternatives: Vec<TonerMix>,
    /// What rules of the trade say about the best mix.
    pub findings: Vec<Finding>,
    /// On porous hair, what a mix that is meant for other hair would want instead; this one counts on the best estimate already.
    pub porous: Option<PorousToning>,
}

impl TonerMix {
    /// What mixes are ranked by: CIEDE2000 to the target, and what each further shade must be worth.
    pub(super) fn cost(&self) -> f64 {
        self.residual.ciede2000 + WORTH_A_SHADE * self.parts.len() as f64
    }
}

impl TonerAnswer {
    /// The mix that the model predicts nearer than the one that is taken, where there is one, and why it is not taken: it cannot
    /// tell the two apart, and the trade's list or the smaller number of shades decides.
    pub(crate) fn nearer(&self) -> Option<(&TonerMix, &'static str)> {
        // What shows no difference in tenths is none.
        let below = self.best.residual.ciede2000 - 0.05;
        let nearest = self.alternatives.iter().min_by(|a, b| a.residual.ciede2000.total_cmp(&b.residual.ciede2000))?;
        let why = if self.against.is_some() { "against the warmth" } else { "as the simpler mix" };
        (nearest.residual.ciede2000 < below).then_some((nearest, why))
    }

    /// Whether the target is lighter than the hair, which no toner makes it.
    pub(crate) fn asks_to_lighten(&self) -> bool {
        is_lighter(&self.before)
    }

    /// The answer in one sentence: what against what, then the grams, then what the prediction is worth.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{
    ///     colour::{Hue, Level, Shade, Tone},
    ///     quantity::Mass,
    ///     toner::{Exposed, Target, TonerRequest, find_toner},
    /// };
    ///
    /// let (level, lifted) = (Level::new(6.0)?, Level::new(8.0)?);
    /// let shade = Shade::new("J6-plain", level, Tone::neutral())?;
    /// let answer = find_toner(&TonerRequest {
    ///     exposed: Exposed::lightened(Level::new(3.0)?, lifted),
    ///     target: Target::Look { level, tone: Tone::neutral() },
    ///     shades: vec![&shade],
    ///     most_shades: 1,
    ///     bowl: Mass::from_g(30.0)?,
    ///     division: Mass::from_g(1.0)?,
    /// })?;
    /// assert!(answer.summary().contains("30 g of J6-plain"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn summary(&self) -> String {
        let (mix, left, before) = (self.best.recipe(), self.best.residual, self.before.ciede2000);
        let error = self.best.predicted.uncertainty();
        let against = match (self.against, self.best.tone.main_hue()) {
            (Some(warmth), Some(hue)) => format!("{hue} against {}: ", warmth.shown()),
            _ => String::new(),
        };
        match self.outcome {
            Outcome::Reached => {
                format!("{against}{mix}: predicted within {left} of the target, give or take {error:.0}")
            }
            Outcome::NearestOnly => {
                let (which, nearer) = match self.nearer() {
                    None => (", nearest is".to_owned(), String::new()),
                    Some((other, why)) => (
                        format!("; taken, {why}, is"),
                        format!(
                            "; nearer by the model, which cannot tell the two apart, is {}, {:.1} away",
                            other.recipe(),
                            other.residual.ciede2000
                        ),
                    ),
                };
                format!(
                    "{against}cannot be reached from these shades{which} {mix}: from the prediction the target is still \
                     {left} away, give or take {error:.0}{nearer}"
                )
            }
            Outcome::AlreadyNearer => {
                let (mix, left) = self.nearer().map_or((mix, left), |(other, _)| (other.recipe(), other.residual));
                let lift = if self.asks_to_lighten() {
                    format!(
                        "lift further or leave it: the target is {:.1} L* lighter than the hair, and a toner does not \
                         lighten; ",
                        self.before.lighter
                    )
                } else {
                    "leave it: ".to_owned()
                };
                format!(
                    "{lift}untoned hair is {before:.1} from the target, and {mix}, the nearest of these shades, would leave \
                     it {:.1} away",
                    left.ciede2000
                )
            }
            Outcome::TooCloseToTell => format!(
                "{against}{mix}: predicted {:.1} from the target, untoned hair {before:.1}; the model may be off by \
                 {error:.0} and cannot tell the two apart, a strand test decides",
                left.ciede2000
            ),
        }
    }
}
