//! Wrappers of `foilwork::service`.

mod error;
mod known;
mod plan;
mod starter;
mod trace;

pub use error::raise_problems;
pub use plan::Plan;

crate::room::room! {
    /// The service: read a service file, plan it, print the bench sheet.
    service {
        error { ServiceFileError }
        plan { Plan, plan, plan_file, service_schema }
        starter { starter }
        trace { trace_consultation, trace_day }
    }
}
