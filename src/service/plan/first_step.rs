//! What a step before the colour is called, and what it brings to the hair.

use super::{FirstStep, PartKind};
use crate::{
    head::ExtraStep,
    service::request::{Item, ItemKind, Request},
};

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
