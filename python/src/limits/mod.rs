//! Wrappers of `foilwork::limits`.

mod check;

crate::room::room! {
    /// What the law allows on the hair, by jurisdiction, with the source of every figure. No table is complete.
    limits {
        check { LimitReport, LimitTable, check_limits, check_peroxide, jurisdictions, salt_factor }
    }
}
