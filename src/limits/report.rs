use super::{Judgement, Notice, Standing, SumJudgement, Use};
use crate::finding::{self, Finding, Reason, Rule, Verdict};
use serde::Serialize;
use std::fmt;

/// Everything a table has to say about a mixture.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Report<'a> {
    /// The name of the table.
    pub table: &'a str,
    /// What the mixture is for and who uses it.
    #[serde(flatten)]
    pub of: Use,
    /// Levels against ceilings, and levels without a ceiling.
    pub judgements: Vec<Judgement<'a>>,
    /// Ratio sums.
    pub sums: Vec<SumJudgement<'a>>,
    /// Rows that are no ceilings.
    pub notices: Vec<Notice<'a>>,
    /// Products of which not everything is known: the table may limit something in them.
    pub undeclared: Vec<&'a str>,
}

impl Report<'_> {
    /// The report as findings of the law, worst first. They never say that a mixture is safe.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{finding::Verdict, limits::{Jurisdiction, Purpose, Use, check_peroxide}};
    /// use foilwork::{quantity::MassFraction, source::Interval};
    ///
    /// let bowl = Interval::exact(MassFraction::from_ww_percent(6.0)?);
    /// let japan = check_peroxide(Jurisdiction::Japan, bowl, Use::professional(Purpose::Lightening));
    /// // The figure is from memory, so it is not the basis of "passed".
    /// assert_eq!(japan.findings()[0].verdict, Verdict::NotJudged);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn findings(&self) -> Vec<Finding> {
        let table = || Reason::stated(self.table.to_owned());
        let rests = |finding: Finding| if finding.sources.is_empty() { finding.and_source(table()) } else { finding };
        let mut findings: Vec<Finding> = self.judgements.iter().map(Judgement::finding).map(rests).collect();
        findings.extend(self.sums.iter().map(SumJudgement::finding));
        findings.extend(self.notices.iter().map(Notice::finding));
        if !self.undeclared.is_empty() {
            let text = format!("not declared in full: {}", self.undeclared.join(", "));
            findings.push(Finding::new(Rule::Law, Verdict::NotJudged, text, table()));
        }
        let mut findings: Vec<Finding> = findings.into_iter().map(Finding::memory_said).collect();
        finding::worst_first(&mut findings);
        findings
    }

    /// Whether any limit or ratio sum is exceeded.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Purpose, Use, check_peroxide};
    /// use foilwork::{quantity::MassFraction, source::Interval};
    ///
    /// let bowl = Interval::exact(MassFraction::from_ww_percent(12.5)?);
    /// assert!(check_peroxide(Jurisdiction::EuropeanUnion, bowl, Use::professional(Purpose::Lightening)).is_exceeded());
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn is_exceeded(&self) -> bool {
        self.judgements.iter().any(Judgement::is_exceeded) || self.sums.iter().any(SumJudgement::is_exceeded)
    }

    /// Whether everything in the bowl was judged, and no limit was found exceeded. Not a statement of safety: the table
    /// is not complete.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Purpose, Use, check_peroxide};
    /// use foilwork::{quantity::MassFraction, source::Interval};
    ///
    /// let bowl = Interval::exact(MassFraction::from_ww_percent(6.0)?);
    /// // The United States have no figure, so there is no judgement to be within.
    /// let report = check_peroxide(Jurisdiction::UnitedStates, bowl, Use::professional(Purpose::Lightening));
    /// assert!(!report.is_exceeded() && !report.is_within_everything_checked());
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn is_within_everything_checked(&self) -> bool {
        let within = |standing: Standing| standing == Standing::Within;
        self.undeclared.is_empty()
            && !self.judgements.is_empty()
            && self.judgements.iter().all(|judgement| within(judgement.standing))
            && self.sums.iter().all(|sum| within(sum.standing))
    }
}

impl fmt::Display for Report<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}, {}", self.table, self.of)?;
        for judgement in &self.judgements {
            writeln!(f, "  {judgement}")?;
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
