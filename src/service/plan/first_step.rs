//! A step before the colour: what it is called, what it takes and how long, and what it brings to the hair.

use super::{
    PartKind,
    first_bowl::{FirstPart, StepBowl},
};
use crate::{
    finding::Finding,
    head::{ExtraStep, StepEnd},
    quantity::{Duration, Mass, MassFraction},
    service::request::{Item, ItemKind, Request},
    source::{Basis, Interval},
};
use schemars::JsonSchema;
use serde::Serialize;

/// A step before the colour of a section.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FirstStep {
    /// The section.
    pub section: String,
    /// Which step.
    pub step: ExtraStep,
    /// Whether the file plans it in `first`: then it is in the running order, on the shelf and in the cost.
    pub planned: bool,
    /// Whether what is there and what is wanted ask for it.
    pub asked_for: bool,
    /// What goes on.
    pub what: String,
    /// How much of it.
    #[serde(rename = "mix_g")]
    pub mix: Interval<Mass>,
    /// What the amount rests on.
    pub basis: Basis,
    /// What of the shop it is weighed of; empty where the shop has nothing for it.
    pub parts: Vec<FirstPart>,
    /// Strength on the hair; absent where no developer is in it.
    #[serde(rename = "on_hair_ww_percent")]
    pub on_hair: Option<Interval<MassFraction>>,
    /// Why the shop has nothing for it.
    pub why_not: Option<String>,
    /// How long it takes to put on.
    #[serde(rename = "apply_min")]
    pub apply: Interval<Duration>,
    /// How long it stays on.
    #[serde(rename = "develop_min")]
    pub develop: Interval<Duration>,
    /// How long hands are at work on it: its bowl, its brush, a look every few minutes and one at its end, and its rinse.
    #[serde(rename = "hands_min")]
    pub hands: Interval<Duration>,
    /// When it begins, from the first brush; absent where it is not planned.
    #[serde(rename = "begin_min")]
    pub begin: Option<Interval<Duration>>,
    /// When it is all on.
    #[serde(rename = "applied_min")]
    pub applied: Option<Interval<Duration>>,
    /// When its end is due, by the estimate: what comes after is its rinse, where it is rinsed.
    #[serde(rename = "due_min")]
    pub due: Option<Interval<Duration>>,
    /// When it is over, rinse and all.
    #[serde(rename = "over_min")]
    pub over: Option<Interval<Duration>>,
    /// How it ends.
    pub then: StepEnd,
    /// What to mind.
    pub mind: Vec<&'static str>,
    /// What it brings to the hair, for the law. Not part of the plain data.
    #[serde(skip)]
    #[schemars(skip)]
    pub(super) bowl: Option<StepBowl>,
    /// Whether it brings lightener or persulfate, and whether peroxide. Not part of the plain data.
    #[serde(skip)]
    #[schemars(skip)]
    pub(super) brought: (bool, bool),
    /// What the checks say of it, for its card. Not part of the plain data.
    #[serde(skip)]
    #[schemars(skip)]
    pub(super) findings: Vec<Finding>,
}

impl FirstStep {
    /// The section and the step, as the findings name it.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{reader::Format, service::plan_text};
    ///
    /// let text = std::fs::read_to_string("examples/soft-gradient.toml")?;
    /// let text = text.replacen("name = \"nape\"", "name = \"nape\"\nfirst = [\"clean-first\"]", 1);
    /// let plan = plan_text(&text, Format::Toml)?;
    /// assert_eq!(plan.first_steps[0].name(), "nape, clean out the artificial pigment first");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn name(&self) -> String {
        format!("{}, {}", self.section, self.step)
    }

    /// The products of the shop that it is weighed of; developers are none.
    pub(super) fn items<'r>(&self, request: &'r Request) -> impl Iterator<Item = &'r Item> {
        self.parts.iter().filter_map(|part| request.items.iter().find(|item| item.name == part.product))
    }

    /// Whether lightener or persulfate goes on, and whether peroxide does, by what is weighed; of what is not known both are taken for
    /// so. What softens is peroxide, and what puts warmth back is judged as colour.
    pub(super) fn brings(&self, request: &Request) -> (bool, bool) {
        let remover = self.items(request).find_map(|item| match item.kind {
            ItemKind::Remover { persulfate, peroxide } => Some((persulfate, peroxide)),
            _ => None,
        });
        match self.step {
            ExtraStep::CleanFirst => remover.unwrap_or((true, true)),
            ExtraStep::PreLighten => (true, true),
            ExtraStep::PreSoften => (false, true),
            ExtraStep::PrePigment => (false, false),
        }
    }

    /// Whether it is a planned lightening, or takes colour out with what may lighten: lightener, persulfate or peroxide.
    pub(super) fn may_lighten(&self) -> bool {
        let (lightener, peroxide) = self.brought;
        self.planned && self.step.lightens() && (lightener || peroxide)
    }

    /// The remover that it is weighed of, where it is cleaning with one: no lightener.
    pub(super) fn remover(&self) -> Option<&str> {
        self.parts.iter().find(|part| part.kind == PartKind::Remover).map(|part| part.product.as_str())
    }

    /// Whether it is planned and the shop has what lightens for it.
    pub(crate) fn lightens_first(&self) -> bool {
        self.planned && self.step == ExtraStep::PreLighten && self.has_developer()
    }

    /// Whether it is planned and the shop has what cleans for it.
    pub(crate) fn cleans_first(&self) -> bool {
        self.planned && self.step == ExtraStep::CleanFirst && !self.parts.is_empty()
    }

    /// Whether a developer is in it.
    pub(super) fn has_developer(&self) -> bool {
        self.parts.iter().any(|part| part.kind == PartKind::Developer)
    }
}
