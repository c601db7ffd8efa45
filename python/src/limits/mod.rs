//! Wrappers of `foilwork::limits`.

mod check;
mod rows;
mod table;

crate::room::room! {
    /// What the law allows on the hair, by jurisdiction, with the source of every figure. No table is complete.
    limits {
        check { Judgement, Notice, Report, SumJudgement, check, check_peroxide, salt_factor }
        rows { Limit, ListedLimit }
        table { Table, jurisdictions }
    }
}
