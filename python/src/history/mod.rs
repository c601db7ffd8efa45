//! Wrappers of `foilwork::history`.

mod after;
mod kept;
mod many;

crate::room::room! {
    /// Many services: what is kept of each, summed up, learned from, and forgotten when a guest asks for it.
    history {
        after { home_care, rebooking, trace_rebooking }
        kept { forget, keep, read_records, read_records_csv, records_csv }
        many { lessons, strand_readings, summarise, trace_lessons, trace_summaries }
    }
}
