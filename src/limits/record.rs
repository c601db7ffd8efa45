use super::{Finding, Limit, Notice, Report, SumFinding, Verdict};
use crate::{quantity::MassFraction, source::Interval};
use serde::Serialize;

/// A report as plain data: the words are those of the text, the units are in the names.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ReportRecord {
    /// The name of the table.
    pub table: String,
    /// What the mixture is for.
    pub purpose: &'static str,
    /// Who uses it.
    pub audience: &'static str,
    /// Whether any limit or ratio sum is exceeded.
    pub exceeded: bool,
    /// Levels against ceilings, and levels without one.
    pub findings: Vec<FindingRecord>,
    /// Ratio sums.
    pub sums: Vec<SumRecord>,
    /// Rows that are no ceilings.
    pub notices: Vec<String>,
    /// Products of which not everything is known.
    pub undeclared: Vec<String>,
}

/// One finding as plain data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingRecord {
    /// The substance or the entry.
    pub substance: String,
    /// The product judged as supplied; nothing for the mixed bowl.
    pub product: Option<String>,
    /// Lower bound, best estimate and upper bound, in the form the row counts.
    pub level_ww_percent: [f64; 3],
    /// The most that products not declared in full could add.
    pub undeclared_at_most_ww_percent: f64,
    /// `exceeded`, `within` or `cannot be judged`.
    pub verdict: &'static str,
    /// Why it cannot be judged, or that only the best estimate exceeds.
    pub reason: Option<String>,
    /// Limit minus upper bound and minus what is not declared.
    pub margin_percentage_points: Option<f64>,
    /// Key of the row.
    pub limit_id: Option<String>,
    /// The figure as printed.
    pub figure: Option<String>,
    /// How the unit of the figure was read: the EU entries say only "%".
    pub unit_reading: Option<String>,
    /// The form the figure counts.
    pub expressed_as: Option<String>,
    /// In what the figure is meant.
    pub measured: Option<&'static str>,
    /// Conditions, warnings and label duties of the entry, in short.
    pub conditions: Option<String>,
    /// Act and entry.
    pub legal_reference: Option<String>,
    /// Date or edition of the list.
    pub list_date: Option<String>,
    /// The sources in full.
    pub sources: Vec<&'static str>,
    /// Whether the figure was read in a source, as opposed to remembered.
    pub verified: Option<bool>,
    /// The finding in words.
    pub text: String,
}

/// A ratio sum as plain data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SumRecord {
    /// The rule.
    pub rule: String,
    /// Keys of the rows.
    pub limit_ids: Vec<String>,
    /// Lower bound, best estimate and upper bound; 1 is the most.
    pub sum: [f64; 3],
    /// `exceeded`, `within` or `cannot be judged`.
    pub verdict: &'static str,
    /// The finding in words.
    pub text: String,
}

impl Report<'_> {
    /// The report as plain data, to serialise.
    #[must_use]
    pub fn record(&self) -> ReportRecord {
        ReportRecord {
            table: self.table.to_owned(),
            purpose: self.of.purpose.code(),
            audience: self.of.audience.code(),
            exceeded: self.is_exceeded(),
            findings: self.findings.iter().map(Finding::record).collect(),
            sums: self.sums.iter().map(SumFinding::record).collect(),
            notices: self.notices.iter().map(Notice::to_string).collect(),
            undeclared: self.undeclared.iter().map(|name| (*name).to_owned()).collect(),
        }
    }
}

impl Finding<'_> {
    /// The finding as plain data, to serialise.
    #[must_use]
    pub fn record(&self) -> FindingRecord {
        let row = |text: fn(&Limit) -> &str| self.limit.map(text).map(str::to_owned);
        FindingRecord {
            substance: self.substance.to_owned(),
            product: self.product.map(str::to_owned),
            level_ww_percent: bounds(self.level),
            undeclared_at_most_ww_percent: self.undeclared_at_most.percent_ww(),
            verdict: self.verdict.word(),
            reason: self.verdict.reason(),
            margin_percentage_points: self.margin_percentage_points(),
            limit_id: row(|l| &l.id),
            figure: row(|l| &l.figure),
            unit_reading: row(|l| &l.unit_reading),
            expressed_as: self.limit.and_then(|l| l.expressed_as).map(|form| form.to_string()),
            measured: self.limit.map(|l| l.measured.code()),
            conditions: row(|l| &l.conditions),
            legal_reference: row(|l| &l.legal_reference),
            list_date: row(|l| &l.list_date),
            sources: self.limit.map(|l| l.citations.iter().map(|c| c.text).collect()).unwrap_or_default(),
            verified: self.limit.map(|l| l.obtained.is_verified()),
            text: self.to_string(),
        }
    }
}

impl SumFinding<'_> {
    /// The finding as plain data, to serialise.
    #[must_use]
    pub fn record(&self) -> SumRecord {
        SumRecord {
            rule: self.rule.to_owned(),
            limit_ids: self.limits.iter().map(|l| l.id.clone()).collect(),
            sum: self.sum(),
            verdict: self.verdict.word(),
            text: self.to_string(),
        }
    }
}

impl Verdict {
    /// `exceeded`, `within` or `cannot be judged`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Exceeded { .. } => "exceeded",
            Self::Within => "within",
            Self::CannotBeJudged(_) => "cannot be judged",
        }
    }

    /// Why it cannot be judged, or that only the best estimate exceeds.
    fn reason(self) -> Option<String> {
        match self {
            Self::CannotBeJudged(why) => Some(why.to_string()),
            Self::Exceeded { certain: false } => Some("by the best estimate, not by the lower bound".to_owned()),
            _ => None,
        }
    }
}

fn bounds(level: Interval<MassFraction>) -> [f64; 3] {
    [level.low(), level.best(), level.high()].map(MassFraction::percent_ww)
}
