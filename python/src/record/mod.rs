//! Wrappers of `foilwork::record`.

mod again;
mod log;
mod looked;
mod rest;
mod whole;

pub use log::LogEntry;

crate::room::room! {
    /// During the service and after: what is noted, what it says to do, and plan against what happened.
    record {
        again { AgainRejected, SecondApplication, second_applications }
        log { LogEntry, LogProblem, ServiceLog, log_line, read_log }
        looked { AfterLevel, LevelsSeen, after_levels, levels_seen }
        rest { RestOfService, rest_of_service }
        whole { Evenness, Instruction, PlannedActual, Record, instructions, record_of, trace_record }
    }
}
