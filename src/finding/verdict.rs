use crate::choice::choice;

/// What the words of verdicts do not say.
pub(crate) const WORDS_OF_VERDICTS: &str =
    "OPEN means unknown, never passed. \"ok\" means nothing was found, not that anything is safe.";

choice! {
    /// What follows from a check, worst first: the order of the sheet.
    Verdict: "verdict" {
        /// Do not go on.
        Stop = "stop" => "STOP",
        /// Think again, or agree on it with the guest.
        Warning = "warning" => "WARN",
        /// Something is missing, so that nothing can be said. It never counts as fine.
        NotJudged = "not-judged" => "OPEN",
        /// Worth knowing; nothing has to be done.
        Note = "note" => "note",
        /// Looked at, and within what was stated. It does not say that anything is safe.
        Passed = "passed" => "ok",
    }
}
