use super::{Limit, Table};
use crate::source::{Basis, Interval, TracedInput, TracedResult};

const LIMIT_FORMULA: &str = "the act's own figure, for its substance and use";

impl Table {
    /// Where each concentration of the table comes from: act and entry, the figure as printed, the date of the list.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Table};
    ///
    /// let trail = Table::of(Jurisdiction::EuropeanUnion).trail();
    /// assert!(trail.iter().any(|row| row.what.starts_with("HYDROGEN PEROXIDE") && row.value == "12"));
    /// ```
    #[must_use]
    pub fn trail(&self) -> Vec<TracedResult> {
        self.rows().iter().filter_map(row).collect()
    }
}

fn row(limit: &Limit) -> Option<TracedResult> {
    let percent = limit.concentration?.ww_percent();
    let sources: Vec<&str> = limit.citations.iter().map(|citation| citation.id).collect();
    // What nobody looked up is not published to us.
    let seen = !limit.citations.is_empty() && limit.citations.iter().all(|citation| citation.is_verified());
    let basis = if seen { Basis::Published } else { Basis::Assumed };
    let told = |what: &str, text: &str| TracedInput::exact(what, text, "as printed");
    let what = format!("{}: {}", limit.substance, limit.use_as_worded);
    let found = TracedResult::new(what, Interval::exact(percent), "% w/w", LIMIT_FORMULA, basis)
        .made_of([
            told("figure", &limit.figure),
            told("act and entry", &limit.legal_reference),
            told("list of", &limit.list_date),
        ])
        .resting_on(&sources);
    Some(found)
}
