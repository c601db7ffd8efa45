use super::{ExtraStep, TakeUp};
use crate::{
    choice::choice,
    quantity::{Duration, MassFraction, Quantity},
    source::{Basis, COMMON_PRACTICE, Citation, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// How a step before the colour ends.
    StepEnd: "end of a step" {
        /// Blotted dry, and the colour goes over it.
        Blot = "blot" => "blot it dry, do not rinse",
        /// Rinsed and dried, and the hair is judged anew.
        Rinse = "rinse" => "rinse, dry, and judge the hair anew",
    }
}

/// What a step before the colour takes.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct StepNeeds {
    /// Which.
    pub step: ExtraStep,
    /// What goes on.
    pub what: &'static str,
    /// On a gram of hair.
    #[serde(rename = "take_up_g_per_g")]
    pub take_up: Interval<TakeUp>,
    /// No developer in it is stronger; absent where there is none in it.
    #[serde(rename = "strongest_developer_ww_percent")]
    pub strongest_developer: Option<MassFraction>,
    /// How long it stays on, looked at all the while.
    #[serde(rename = "develop_min")]
    pub develop: Interval<Duration>,
    /// How it ends.
    pub then: StepEnd,
    /// What to mind.
    pub mind: Vec<&'static str>,
    /// What the figures rest on: what is done is common practice, grams on a gram are assumed.
    pub basis: Basis,
    /// Where they come from.
    pub citation: &'static Citation,
}

/// What every step asks for, whatever is in it.
const ALWAYS: [&str; 2] =
    ["gloves; test a strand with the very step before the head", "the product's own instructions come first"];

impl ExtraStep {
    /// Whether lightener goes on.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::ExtraStep;
    ///
    /// assert!(ExtraStep::PreLighten.lightens() && !ExtraStep::PreSoften.lightens());
    /// ```
    #[must_use]
    pub const fn lightens(self) -> bool {
        matches!(self, Self::CleanFirst | Self::PreLighten)
    }

    /// What goes on the hair, how much of it, for how long, and what to mind.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::head::{ExtraStep, StepEnd};
    ///
    /// let needs = ExtraStep::PreSoften.needs();
    /// assert_eq!(needs.then, StepEnd::Blot);
    /// assert!(needs.develop.low() < needs.develop.best() && needs.strongest_developer.is_some());
    /// ```
    ///
    /// # Source
    ///
    /// Common practice; the bounds are assumed.
    #[must_use]
    pub fn needs(self) -> StepNeeds {
        let (what, take_up, developer, minutes, then, mind) = match self {
            // A liquid: in a laboratory 1 g of it stays on 1 g of hair.
            Self::PreSoften => (
                "developer as it is, on the white hair only",
                (0.5, 0.8, 1.2),
                Some(6.0),
                (5.0, 10.0, 20.0),
                StepEnd::Blot,
                &["keep it off the skin; on sore or broken skin not at all"][..],
            ),
            Self::PrePigment => (
                "a warm shade without lift, as it comes or with water, on the lightened hair only",
                (0.7, 1.0, 1.5),
                None,
                (5.0, 10.0, 20.0),
                StepEnd::Blot,
                &["the colour that goes over it makes it darker: watch it"][..],
            ),
            Self::CleanFirst => (
                "a colour remover by its own instructions, or lightener with weak developer, on the artificial colour only",
                (1.0, 1.5, 2.5),
                Some(6.0),
                (5.0, 10.0, 20.0),
                StepEnd::Rinse,
                &[
                    "look every few minutes and stop at the level that is wanted",
                    "not on hair with metallic salts, nor on hair that a strand test has shown weak",
                ][..],
            ),
            Self::PreLighten => (
                "lightener with weak developer, to the level wanted, on the hair that the colour is for",
                (1.0, 1.5, 2.5),
                Some(6.0),
                (10.0, 25.0, 45.0),
                StepEnd::Rinse,
                &[
                    "look every few minutes and stop at the level that is wanted; the colour shows what warmth is left",
                    "not on hair with metallic salts, nor on hair that a strand test has shown weak; once lightened it takes \
                     colour faster",
                ][..],
            ),
        };
        let (low, best, high) = take_up;
        let (least, usual, most) = minutes;
        StepNeeds {
            step: self,
            what,
            take_up: Interval::ordered(low, best, high).map(TakeUp::nearest),
            strongest_developer: developer.map(MassFraction::nearest),
            develop: Interval::ordered(least, usual, most).map(Duration::nearest),
            then,
            mind: mind.iter().copied().chain(ALWAYS).collect(),
            basis: Basis::Assumed,
            citation: &COMMON_PRACTICE,
        }
    }
}
