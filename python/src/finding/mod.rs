//! Wrappers of `foilwork::finding`.

mod found;

pub use found::Finding;

crate::room::room! {
    /// What a check found: one shape and one ladder of verdicts.
    finding {
        found { Finding, Reason }
    }
}
