//! What a number rests on: its basis, its citation, and the bounds of an estimate.

mod basis;
mod citation;
pub mod citations;
mod interval;
mod register;
mod sourced;
mod traced;
mod traced_input;
mod worked;

pub use basis::Basis;
pub(crate) use citation::citations as cite;
pub use citation::{COMMON_PRACTICE, Citation, Consulted};
pub use interval::{Interval, InvalidInterval};
pub use register::register;
pub use sourced::Sourced;
pub use traced::TracedResult;
pub use traced_input::TracedInput;
