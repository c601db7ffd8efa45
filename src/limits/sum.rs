use super::{
    Limit, Standing, Table, Why,
    level::{self, Level},
};
use crate::{
    finding::{Finding, Reason, Rule},
    source::Interval,
};
use serde::Serialize;
use std::fmt;

/// The ratio sum of rows that may only be used together within one whole: the sum of level over own maximum.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SumJudgement<'a> {
    /// The rule, by the name of its group in the table.
    pub rule: &'a str,
    /// The rows that take part.
    pub limits: Vec<&'a Limit>,
    /// The sum; 1 is the most the law allows.
    pub sum: Interval<f64>,
    /// Where the sum stands.
    #[serde(flatten)]
    pub standing: Standing,
}

impl SumJudgement<'_> {
    /// The finding of the law that follows, resting on the entries that take part.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{finding::Verdict, limits::{self, Jurisdiction, Purpose, Table, Use}};
    /// use foilwork::{mix::{Composition, Ingredient, Product}, quantity::{Mass, MassFraction}, source::Interval};
    ///
    /// // Each within its own maximum (2 % and 3 %), together more than one whole.
    /// let level = |percent| MassFraction::from_ww_percent(percent).map(Interval::exact);
    /// let diamine = Ingredient::named("toluene-2,5-diamine", level(1.4)?).with_cas("95-70-5".parse()?);
    /// let other = Ingredient::named("a substituted diamine", level(1.8)?).in_group("n-substituted-p-phenylenediamines");
    /// let bowl = Composition::mix(vec![(Mass::from_g(60.0)?, Product::declared("J7-mist", vec![diamine, other]))])?;
    /// let eu = Table::of(Jurisdiction::EuropeanUnion);
    /// let report = limits::check(eu, &bowl, Use::professional(Purpose::OxidativeColour));
    /// assert_ne!(report.sums[0].finding().verdict, Verdict::Passed);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn finding(&self) -> Finding {
        let sources = self.limits.iter().map(|limit| Reason::from(*limit)).collect();
        Finding { rule: Rule::Law, verdict: self.standing.verdict(), text: self.to_string(), sources }
    }

    /// Whether the sum is above 1.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{limits::{self, Jurisdiction, Purpose, Table, Use}, source::Interval};
    /// use foilwork::{mix::{Composition, Form, Ingredient, Product}, quantity::{Mass, MassFraction}};
    ///
    /// // Each within its own maximum (2 % and 3 %): 1.4 / 2 + 1.8 / 3 is more than 1.
    /// let level = |percent| MassFraction::from_ww_percent(percent).map(Interval::exact);
    /// let diamine = Ingredient::named("toluene-2,5-diamine", level(1.4)?).with_cas("95-70-5".parse()?).stated_as(Form::FreeBase);
    /// let other = Ingredient::named("a substituted diamine", level(1.8)?)
    ///     .in_group("n-substituted-p-phenylenediamines")
    ///     .stated_as(Form::FreeBase);
    /// let bowl = Composition::mix(vec![(Mass::from_g(60.0)?, Product::declared("J7-mist", vec![diamine, other]))])?;
    /// let eu = Table::of(Jurisdiction::EuropeanUnion);
    /// let report = limits::check(eu, &bowl, Use::professional(Purpose::OxidativeColour));
    /// assert!(report.sums[0].is_exceeded());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn is_exceeded(&self) -> bool {
        matches!(self.standing, Standing::Exceeded { .. })
    }
}

impl fmt::Display for SumJudgement<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: sum of level over own maximum {:.3}", self.rule, self.sum.best())?;
        if !self.sum.is_exact() {
            write!(f, " (from {:.3} to {:.3})", self.sum.low(), self.sum.high())?;
        }
        write!(f, " against 1: {}", self.standing)
    }
}

/// One judgement for each sum rule that two or more entries of the bowl share.
///
/// A substance with a figure as base and another as salt takes part once, with the larger of its two ratios.
pub(super) fn rules<'a>(table: &'a Table, levels: &[Level<'a>]) -> Vec<SumJudgement<'a>> {
    let mut sums: Vec<(&'a str, Vec<Entry<'a>>)> = Vec::new();
    for level in levels {
        let Some(limit) = table.rows().get(level.row) else { continue };
        let (Some(rule), Some(entry)) = (limit.sum_group.as_deref(), Entry::new(limit, level)) else { continue };
        let at = sums.iter().position(|(known, _)| *known == rule).unwrap_or_else(|| {
            sums.push((rule, Vec::new()));
            sums.len() - 1
        });
        let Some((_, entries)) = sums.get_mut(at) else { continue };
        match entries.iter_mut().find(|e| e.limit.substance == limit.substance) {
            Some(same) => same.widen(entry),
            None => entries.push(entry),
        }
    }
    sums.into_iter().filter(|(_, entries)| entries.len() > 1).map(|(rule, entries)| total(rule, &entries)).collect()
}

struct Entry<'a> {
    limit: &'a Limit,
    ratio: Interval<f64>,
    /// The most that undeclared products could add, over the entry's own maximum.
    open: f64,
    form_unknown: bool,
}

impl<'a> Entry<'a> {
    fn new(limit: &'a Limit, level: &Level<'_>) -> Option<Self> {
        let own = limit.concentration?.ww_percent();
        let ratio = level.level.map(|percent| percent / own);
        (own > 0.0).then_some(Self { limit, ratio, open: level.open / own, form_unknown: level.form_unknown })
    }

    fn widen(&mut self, other: Self) {
        let larger = |bound: fn(&Interval<f64>) -> f64| bound(&self.ratio).max(bound(&other.ratio));
        self.ratio = Interval::ordered(larger(Interval::low), larger(Interval::best), larger(Interval::high));
        self.open = self.open.max(other.open);
        self.form_unknown |= other.form_unknown;
    }
}

fn total<'a>(rule: &'a str, entries: &[Entry<'a>]) -> SumJudgement<'a> {
    let sum = entries.iter().map(|entry| entry.ratio).fold(Interval::exact(0.0), level::plus);
    let any = |test: fn(&Entry<'a>) -> bool| entries.iter().any(test);
    let most = 1.0 + 1e-9;
    let standing = if sum.low() > most {
        Standing::Exceeded { certain: true }
    } else if sum.high() > most && any(|e| e.form_unknown) {
        Standing::open(Why::FormUnknown)
    } else if sum.best() > most {
        Standing::Exceeded { certain: false }
    } else if sum.high() > most {
        Standing::open(Why::Straddles)
    } else if sum.high() + entries.iter().map(|e| e.open).sum::<f64>() > most {
        Standing::open(Why::Undeclared)
    } else if any(|e| !e.limit.obtained.is_verified()) {
        Standing::open(Why::Unverified)
    } else {
        Standing::Within
    };
    SumJudgement { rule, limits: entries.iter().map(|e| e.limit).collect(), sum, standing }
}
