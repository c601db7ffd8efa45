//! Strengths that are not stated in % w/w, as steps of a trail.

use super::Refusal;
use crate::{
    peroxide::{Conditions, StatedStrength, Strength, StrengthUnit, read_label, trace_conversion},
    quantity::{MassFraction, OxygenVolumes},
    source::{Basis, TracedInput, TracedResult},
};

/// The reading that the trade pairs with the label, within the bounds of all three.
const LABEL_FORMULA: &str =
    "% w/w = 0.3 x label; bounds: the least and the most of this, of % w/v and of measured volumes";

/// How a strength that is not stated in % w/w gets there.
pub(super) fn converted(stated: StatedStrength, conditions: &Conditions) -> Result<Option<TracedResult>, Refusal> {
    let by_mass = |strength: Strength| trace_conversion(strength, StrengthUnit::WwPercent, conditions);
    let found = match stated {
        StatedStrength::Ww(_) => return Ok(None),
        StatedStrength::Wv(strength) => by_mass(strength.into())?,
        StatedStrength::OxygenVolumes(strength) => by_mass(strength.into())?,
        StatedStrength::TradeLabel(label) => {
            let as_volumes = by_mass(OxygenVolumes::from_volumes(label.vol())?.into())?;
            let value = read_label(label, conditions)?.spread().map(MassFraction::ww_percent);
            TracedResult::new("strength in % w/w", value, "% w/w", LABEL_FORMULA, Basis::CommonPractice)
                .working(format!("0.3 x {}", label.vol()))
                .made_of([TracedInput::exact("label", label.vol(), "vol")].into_iter().chain(as_volumes.inputs))
                .resting_on(&as_volumes.sources)
        }
    };
    Ok(Some(TracedResult { what: format!("{stated}: {}", found.what), ..found }))
}

/// No better founded than the strengths that go into it.
pub(super) fn resting_on(result: TracedResult, steps: &[TracedResult]) -> TracedResult {
    let basis = steps.iter().fold(result.basis, |basis, step| basis.weaker(step.basis));
    let mut sources: Vec<&str> = result.sources.clone();
    for id in steps.iter().flat_map(|step| &step.sources) {
        if !sources.contains(id) {
            sources.push(id);
        }
    }
    TracedResult { basis, sources, ..result }
}
