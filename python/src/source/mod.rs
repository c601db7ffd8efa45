//! Wrappers of `foilwork::source`.

mod citation;

crate::room::room! {
    /// What numbers rest on: the register of every citation in use.
    source {
        citation { Citation, register, resolve }
    }
}
