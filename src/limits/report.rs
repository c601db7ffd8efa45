use super::{Finding, Notice, SumFinding, Use, Verdict};
use std::fmt;

/// Everything a table has to say about a mixture.
#[derive(Debug, Clone, PartialEq)]
pub struct Report<'a> {
    /// The name of the table.
    pub table: &'a str,
    /// What the mixture is for and who uses it.
    pub of: Use,
    /// Levels against ceilings, and levels without a ceiling.
    pub findings: Vec<Finding<'a>>,
    /// Ratio sums.
    pub sums: Vec<SumFinding<'a>>,
    /// Rows that are no ceilings.
    pub notices: Vec<Notice<'a>>,
    /// Products of which not everything is known: the table may limit something in them.
    pub undeclared: Vec<&'a str>,
}

impl Report<'_> {
    /// Whether any limit or ratio sum is exceeded.
    #[must_use]
    pub fn is_exceeded(&self) -> bool {
        self.findings.iter().any(Finding::is_exceeded) || self.sums.iter().any(SumFinding::is_exceeded)
    }

    /// Whether everything in the bowl was judged, and nothing was found exceeded. Not a statement of safety: the table
    /// is not complete.
    #[must_use]
    pub fn is_within_everything_checked(&self) -> bool {
        let within = |verdict: Verdict| verdict == Verdict::Within;
        self.undeclared.is_empty()
            && !self.findings.is_empty()
            && self.findings.iter().all(|f| within(f.verdict))
            && self.sums.iter().all(|s| within(s.verdict))
    }
}

impl fmt::Display for Report<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}, {}, {} use", self.table, words(self.of.purpose.code()), self.of.audience)?;
        for finding in &self.findings {
            writeln!(f, "  {finding}")?;
        }
        for sum in &self.sums {
            writeln!(f, "  {sum}")?;
        }
        for notice in &self.notices {
            writeln!(f, "  note: {notice}")?;
        }
        if !self.undeclared.is_empty() {
            writeln!(f, "  not declared in full: {}", self.undeclared.join(", "))?;
        }
        f.write_str("The table is not complete: what it does not name is not thereby allowed.")
    }
}

fn words(code: &str) -> String {
    code.replace('-', " ")
}
