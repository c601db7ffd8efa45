use super::Mix;
use crate::finding::{Finding, Reason, Rule, Verdict};

/// Collects findings in the order of the checks.
#[derive(Default)]
pub(super) struct Findings {
    /// Each with the places, in the working order, of the mixes it concerns.
    found: Vec<(Vec<usize>, Finding)>,
}

impl Findings {
    /// Something about the service as a whole.
    pub(super) fn add(&mut self, rule: Rule, verdict: Verdict, text: impl Into<String>, source: impl Into<Reason>) {
        self.push(&[], Finding::new(rule, verdict, text, source));
    }

    /// Something about the mix at a place of the working order.
    pub(super) fn of(
        &mut self,
        place: usize,
        rule: Rule,
        verdict: Verdict,
        text: impl Into<String>,
        source: impl Into<Reason>,
    ) {
        self.push(&[place], Finding::new(rule, verdict, text, source));
    }

    /// A finding with the places of the mixes that it concerns.
    pub(super) fn push(&mut self, places: &[usize], finding: Finding) {
        self.found.push((places.to_vec(), finding.memory_said()));
    }

    /// Worst first; within a verdict the order of the checks. Each mix learns which findings concern it.
    pub(super) fn finish(mut self, mixes: &mut [Mix]) -> Vec<Finding> {
        self.found.sort_by_key(|(_, finding)| finding.verdict);
        for (i, (places, _)) in self.found.iter().enumerate() {
            for place in places {
                if let Some(mix) = mixes.get_mut(*place) {
                    mix.findings.push(i);
                }
            }
        }
        self.found.into_iter().map(|(_, finding)| finding).collect()
    }
}
