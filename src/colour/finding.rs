use crate::source::Basis;
use serde::Serialize;
use std::fmt;

/// How much a finding of the colour rooms weighs. None of them is about safety.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Weight {
    /// Worth knowing.
    Note,
    /// The result will probably not be what was asked for.
    Caution,
}

/// The rules of colour that a finding can come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum ColourRule {
    /// Depth at the root is not darker than the natural base.
    DepthAtRoot,
    /// The hairline is at least as light as its neighbours.
    Hairline,
    /// Two formulas in one foil need a tone between them.
    Transition,
    /// Two sections that should differ, or should not.
    Contrast,
    /// Going darker on lightened hair needs warm pigment first.
    PrePigmentation,
    /// Colour that only deposits does not lighten.
    TonerLighterThanHair,
    /// The neutralising tone is stronger than the warmth it meets.
    OverNeutralising,
    /// Porous hair takes up more.
    Porosity,
    /// Blue or violet is a large part of the mix for hair this light.
    CoolDose,
}

/// Something a colour check has to say, with the numbers in the text.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ColourFinding {
    /// The rule.
    pub rule: ColourRule,
    /// How much it weighs.
    pub weight: Weight,
    /// What was found and the way out, in lower case without a full stop.
    pub text: String,
    /// The ground of the rule.
    pub basis: Basis,
}

impl ColourFinding {
    pub(crate) fn note(rule: ColourRule, basis: Basis, text: String) -> Self {
        Self { rule, weight: Weight::Note, text, basis }
    }

    pub(crate) fn caution(rule: ColourRule, basis: Basis, text: String) -> Self {
        Self { rule, weight: Weight::Caution, text, basis }
    }
}

impl fmt::Display for ColourFinding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let weight = match self.weight {
            Weight::Note => "note",
            Weight::Caution => "caution",
        };
        write!(f, "{weight}: {} [{}]", self.text, self.basis)
    }
}
