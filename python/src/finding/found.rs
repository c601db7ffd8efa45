//! Wrapper of `foilwork::finding`: what a rule has to say.

use crate::answer::answer;
use foilwork::finding;

answer! {
    /// Something that a rule has to say; made by the checks of ``foilwork.mix``, ``foilwork.colour`` and ``foilwork.toner``.
    ///
    /// Examples:
    ///     >>> from foilwork.mix import check_lightener
    ///     >>> finding = check_lightener(powder_g=12, developer_g=6)
    ///     >>> finding.rule, finding.verdict, finding.sources
    ///     ('ratio', 'warning', ['common practice of the trade; no published source'])
    Finding {
        /// The rule.
        rule: String,
        /// What follows: ``"stop"``, ``"warning"``, ``"not-judged"``, ``"note"`` or ``"passed"``.
        verdict: String,
        /// What was found, and the way out.
        text: String,
        /// What the rule rests on.
        sources: Vec<String>,
    }
}

impl From<&finding::Finding> for Finding {
    fn from(found: &finding::Finding) -> Self {
        Self {
            rule: found.rule.code().to_owned(),
            verdict: found.verdict.code().to_owned(),
            text: found.text.clone(),
            sources: found.sources.iter().map(ToString::to_string).collect(),
        }
    }
}
