//! Wrapper of `foilwork::finding`: what a rule has to say.

use crate::answer::answer;
use foilwork::finding;

answer! {
    in "foilwork.finding";
    /// Why a finding says what it says: a citation, a clause of a law, or the user's own words.
    Reason {
        /// The id of the citation; None for what the user states.
        id: Option<String>,
        /// The source in words.
        text: String,
        /// Whether it is from memory: never looked up, so a user should before relying on it.
        from_memory: bool,
    }
}

impl From<&finding::Reason> for Reason {
    fn from(reason: &finding::Reason) -> Self {
        let (id, text) = (reason.id.as_ref().map(ToString::to_string), reason.text.to_string());
        Self { id, text, from_memory: reason.from_memory }
    }
}

answer! {
    in "foilwork.finding";
    /// Something that a rule has to say; made by a plan and by the checks of the rooms.
    ///
    /// Examples:
    ///     >>> from foilwork.mix import check_lightener
    ///     >>> finding = check_lightener(powder_g=12, developer_g=6)
    ///     >>> finding.rule, finding.verdict, finding.sources[0].id
    ///     ('ratio', 'warning', 'common-practice')
    Finding {
        /// The rule.
        rule: String,
        /// What follows: ``"stop"``, ``"warning"``, ``"not-judged"``, ``"note"`` or ``"passed"``.
        verdict: String,
        /// What was found, and the way out.
        text: String,
        /// What the rule rests on.
        sources: Vec<Reason>,
    }
}

impl From<&finding::Finding> for Finding {
    fn from(found: &finding::Finding) -> Self {
        Self {
            rule: found.rule.code().to_owned(),
            verdict: found.verdict.code().to_owned(),
            text: found.text.clone(),
            sources: found.sources.iter().map(Reason::from).collect(),
        }
    }
}
