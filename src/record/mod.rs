//! During the service and after: what is noted line by line, what it says to do, and plan against what happened.
//!
//! The core parses and writes text; a caller appends a line in one write. A line that a crash tore costs that line alone, and
//! is told at the next reading.
//!
//! # Note and read
//!
//! [`LogEntry`] with its [`Noted`]; [`log_line`] writes one, [`read_log`] reads them all into a [`ServiceLog`].
//!
//! # Replay
//!
//! [`replay`] gives [`SoFar`], the same for the same lines; [`instructions`] says what follows, the worst first. Levels of the
//! log move a plan: [`levels_seen`] gives them as a plan takes them, [`after_levels`] says what follows, on the clock of the log.
//!
//! # Go on
//!
//! [`rest_of_service`] arranges what is left of the day from where the log stands.
//!
//! # A second application
//!
//! [`second_applications`] decides from level, condition, time and applications together: stop and tone, a fresh mix, another
//! visit, treat only, or test first.
//!
//! # Hold against the plan
//!
//! [`record`] puts planned beside actual, with the spread of the levels and what it takes to repeat the result.

mod again;
mod against;
mod begun;
mod carried;
mod compare;
#[cfg(feature = "cli")]
mod corrected;
mod entry;
mod evenness;
mod instructions;
mod log;
mod looked;
mod repeat;
mod replay;
mod rest;
mod so_far;
mod toned;
mod too_long;
mod trace;

pub use again::{Again, AgainRejected, SecondApplication, second_applications};
pub(crate) use carried::Undergone;
#[cfg(feature = "cli")]
pub(crate) use compare::strange;
pub use compare::{Compared, PlannedActual, Record, record};
#[cfg(feature = "cli")]
pub(crate) use corrected::corrected;
pub use entry::{Comfort, FoilHeat, InvalidEntry, LogEntry, Noted};
pub use evenness::Evenness;
pub use instructions::{Instruction, instructions};
pub use log::{LogProblem, ServiceLog, log_line, read_log};
pub use looked::{AfterLevel, LevelLeftOut, LevelsSeen, after_levels, levels_seen};
pub use replay::replay;
pub use rest::{RestOfService, rest_of_service};
pub use so_far::{EarlierApplication, SectionSoFar, SoFar};
pub(crate) use toned::came_to;
#[cfg(feature = "cli")]
pub(crate) use too_long::instructed;
pub(crate) use too_long::stopped_for;
pub use trace::trace_record;
