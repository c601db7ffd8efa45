//! What a guest is told before any service, in the same words on every page.

use super::{FirstStep, PartKind, Plan};
use crate::head::ExtraStep;

/// What stands on a page while a check says stop.
pub(crate) const NOT_YET: &str = "We cannot begin yet. Your colourist explains what has to change first.";

/// Common practice.
const ALLERGY: &str = "Hair colour can cause allergy, also when it never did before. A skin test is made and read first; tell us about every earlier reaction, also to a tattoo.";
const LIGHTENING: &str = "Lightening weakens hair. It can become dry, rough, stretch or break, more so where it was coloured, straightened or permed.";
const RESULT: &str = "The result can be warmer, darker or less even than wished; a second visit may be needed.";
const BEFORE: &str =
    "Tell us about henna, metallic colour, medicines and a sore scalp: with some of them we do not begin.";
const STOP: &str = "When the hair or the skin does not stand it, we stop at once, whatever it looks like then.";
const BURNS: &str = "Say at once when it burns, itches or gets hot: we rinse.";

/// What a step before the colour is, for a guest.
fn first(step: &FirstStep) -> String {
    match step.step {
        ExtraStep::PreSoften => "white hair is opened with developer".to_owned(),
        ExtraStep::PrePigment => "warm colour is put back".to_owned(),
        ExtraStep::PreLighten => "your hair is lightened".to_owned(),
        ExtraStep::CleanFirst => {
            let with = match (step.remover(), step.parts.first()) {
                (Some(remover), _) => format!("a remover ({remover})"),
                (None, Some(lightener)) => format!("lightener ({})", lightener.product),
                (None, None) => "a remover or with lightener".to_owned(),
            };
            format!("colour that is in the hair is taken out, with {with}")
        }
    }
}

impl Plan {
    /// What may go wrong in every such service; of lightening only where it is planned.
    pub(crate) fn risks(&self) -> Vec<String> {
        let lightener = |kind| kind == PartKind::Lightener;
        let in_bowls = || self.mixes.iter().any(|mix| mix.products().any(|part| lightener(part.kind)));
        // A remover whose maker says nothing of it is taken for one that lightens.
        let before = || self.first_steps.iter().any(FirstStep::may_lighten);
        let lightens = !self.lift.is_empty() || in_bowls() || before();
        let told = [Some(ALLERGY), lightens.then_some(LIGHTENING), Some(RESULT), Some(BEFORE), Some(STOP), Some(BURNS)];
        told.into_iter().flatten().map(str::to_owned).collect()
    }

    /// The steps that are planned before the colour, for the guest: of which section, and which.
    pub(crate) fn told_first(&self) -> Vec<String> {
        let planned = self.first_steps.iter().filter(|step| step.planned);
        planned.map(|step| format!("{}: before the colour, {}", step.section, first(step))).collect()
    }
}
