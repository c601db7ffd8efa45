use crate::choice::choice;

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
