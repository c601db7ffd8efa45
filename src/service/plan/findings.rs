use super::{FirstStep, Mix};
use crate::finding::{Finding, Reason, Rule, Verdict};

/// Collects findings in the order of the checks.
#[derive(Default)]
pub(super) struct Findings {
    /// Each with the places, in the working order, of the mixes it concerns.
    found: Vec<(Vec<usize>, Finding)>,
    /// Steps before the colour, by their places, each with the place of a finding that concerns it.
    steps: Vec<(usize, usize)>,
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

    /// A finding about a step before the colour, by its place among them.
    pub(super) fn of_step(&mut self, step: usize, finding: Finding) {
        self.steps.push((step, self.found.len()));
        self.push(&[], finding);
    }

    /// Worst first; within a verdict the order of the checks. Each mix and each step before the colour learns which findings
    /// concern it.
    pub(super) fn finish(mut self, mixes: &mut [Mix], first: &mut [FirstStep]) -> Vec<Finding> {
        for (step, place) in &self.steps {
            let found = self.found.get(*place).map(|(_, finding)| finding.clone());
            if let Some((step, finding)) = first.get_mut(*step).zip(found) {
                step.findings.push(finding);
            }
        }
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

/// What a finding is about.
#[derive(Clone, Copy)]
pub(super) enum Of<'p> {
    /// Mixes, by their places in the working order.
    Mix(&'p [usize]),
    /// A step before the colour, by its place among them.
    Step(usize),
}

impl Of<'_> {
    pub(super) fn push(self, findings: &mut Findings, finding: Finding) {
        match self {
            Self::Mix(places) => findings.push(places, finding),
            Self::Step(step) => findings.of_step(step, finding),
        }
    }
}
