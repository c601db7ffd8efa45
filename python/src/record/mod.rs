//! Wrappers of `foilwork::record`.

mod log;
mod whole;

crate::room::room! {
    /// During the service and after: what is noted, what it says to do, and plan against what happened.
    record {
        log { LogEntry, LogProblem, ServiceLog, log_line, read_log }
        whole { Evenness, Instruction, PlannedActual, Record, instructions, record_of }
    }
}
