//! Wrappers of `foilwork::source`.

mod citation;
mod trail;

pub use trail::TracedResult;

crate::room::room! {
    /// What numbers rest on: the register of every citation in use, and results with what they were made of.
    source {
        citation { Citation, register, resolve }
        trail { TracedInput, TracedResult }
    }
}
