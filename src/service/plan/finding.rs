use serde::Serialize;

/// What a check came to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Do not begin until it is resolved; the plan's exit status is 1.
    Stop,
    /// Go on only with a reason.
    Warning,
    /// Something needed for a judgement is unknown; never to be read as passed.
    NotJudged,
    /// Nothing found. Not a statement that anything is safe.
    Passed,
}

impl Verdict {
    /// The mark printed in front of a finding.
    #[must_use]
    pub const fn mark(self) -> &'static str {
        match self {
            Self::Stop => "STOP",
            Self::Warning => "WARN",
            Self::NotJudged => "OPEN",
            Self::Passed => "ok",
        }
    }
}

/// The result of one check.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Finding {
    /// What it came to.
    pub verdict: Verdict,
    /// What was checked, in two or three words.
    pub check: String,
    /// The values compared, and the way out where there is one.
    pub text: String,
    /// Where the rule comes from.
    pub source: String,
}

/// Collects findings in the order of the checks.
#[derive(Debug, Default)]
pub(super) struct Findings(pub(super) Vec<Finding>);

impl Findings {
    pub(super) fn add(
        &mut self,
        verdict: Verdict,
        check: &str,
        text: impl Into<String>,
        source: impl std::fmt::Display,
    ) {
        self.0.push(Finding { verdict, check: check.to_owned(), text: text.into(), source: source.to_string() });
    }

    /// The gravest first; within a verdict the order of the checks.
    pub(super) fn sorted(mut self) -> Vec<Finding> {
        self.0.sort_by_key(|finding| finding.verdict);
        self.0
    }
}
