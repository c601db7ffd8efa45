use super::{Reason, Rule, Verdict};
use serde::Serialize;

/// One thing that a check found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, schemars::JsonSchema)]
pub struct Finding {
    /// The rule that was checked.
    pub rule: Rule,
    /// What follows.
    pub verdict: Verdict,
    /// What was found, with the values, and the way out.
    pub text: String,
    /// What the rule rests on.
    pub sources: Vec<Reason>,
}

impl Finding {
    /// A finding that rests on one source.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::finding::{Finding, Reason, Rule, Verdict};
    ///
    /// let leaflet = Reason::stated("the product's leaflet");
    /// let finding = Finding::new(Rule::SkinTest, Verdict::Stop, "read after 48 h", leaflet).and_source(Reason::assumed());
    /// assert_eq!(finding.sources.len(), 2);
    /// assert_eq!(finding.about("crown").text, "crown: read after 48 h");
    /// ```
    pub fn new(rule: Rule, verdict: Verdict, text: impl Into<String>, source: impl Into<Reason>) -> Self {
        Self { rule, verdict, text: text.into(), sources: vec![source.into()] }
    }

    /// The same finding, resting on one source more.
    #[must_use]
    pub fn and_source(mut self, source: impl Into<Reason>) -> Self {
        self.sources.push(source.into());
        self
    }

    /// The same finding; a stop that rests on a memory says so in its own line.
    #[must_use]
    pub(crate) fn memory_said(mut self) -> Self {
        const MEMORY: &str = " [from memory, unverified: look it up]";
        let rests_on_memory = self.sources.iter().any(|source| source.from_memory);
        if self.verdict == Verdict::Stop && rests_on_memory && !self.text.ends_with(MEMORY) {
            self.text += MEMORY;
        }
        self
    }

    /// The same finding about something with a name, which comes first in the text.
    #[must_use]
    pub fn about(mut self, name: &str) -> Self {
        self.text = format!("{name}: {}", self.text);
        self
    }
}

impl std::fmt::Display for Finding {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}: {}", self.verdict, self.rule, self.text)
    }
}

/// Sorts findings worst first; those of one verdict keep their order.
///
/// # Example
///
/// ```
/// use foilwork::finding::{Finding, Reason, Rule, Verdict, worst_first};
///
/// let found = |verdict| Finding::new(Rule::SkinTest, verdict, "read after 48 h", Reason::stated("stated by you"));
/// let mut findings = [found(Verdict::Passed), found(Verdict::Stop)];
/// worst_first(&mut findings);
/// assert_eq!(findings[0].verdict, Verdict::Stop);
/// ```
pub fn worst_first(findings: &mut [Finding]) {
    findings.sort_by_key(|finding| finding.verdict);
}
