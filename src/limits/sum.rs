use super::{Limit, Table, Verdict, Why, level::Level};
use std::fmt;

/// The ratio sum of rows that may only be used together within one whole: the sum of level over own maximum.
#[derive(Debug, Clone, PartialEq)]
pub struct SumFinding<'a> {
    /// The rule, by the name of its group in the table.
    pub rule: &'a str,
    /// The rows that take part.
    pub limits: Vec<&'a Limit>,
    low: f64,
    best: f64,
    high: f64,
    /// What follows.
    pub verdict: Verdict,
}

impl SumFinding<'_> {
    /// Lower bound, best estimate and upper bound of the sum; 1 is the most the law allows.
    #[must_use]
    pub const fn sum(&self) -> [f64; 3] {
        [self.low, self.best, self.high]
    }

    /// Whether the sum is above 1.
    #[must_use]
    pub const fn is_exceeded(&self) -> bool {
        matches!(self.verdict, Verdict::Exceeded { .. })
    }
}

impl fmt::Display for SumFinding<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: sum of level over own maximum {:.3}", self.rule, self.best)?;
        if self.low < self.high {
            write!(f, " (from {:.3} to {:.3})", self.low, self.high)?;
        }
        write!(f, " against 1: {}", self.verdict)
    }
}

/// One finding for each sum rule that two or more entries of the bowl share.
///
/// A substance with a figure as base and another as salt takes part once, with the larger of its two ratios.
pub(super) fn rules<'a>(table: &'a Table, levels: &[Level<'a>]) -> Vec<SumFinding<'a>> {
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
    ratio: [f64; 3],
    /// The most that undeclared products could add, over the entry's own maximum.
    open: f64,
    form_unknown: bool,
}

impl<'a> Entry<'a> {
    fn new(limit: &'a Limit, level: &Level<'_>) -> Option<Self> {
        let own = limit.concentration?.percent_ww();
        let ratio = [level.low / own, level.best / own, level.high / own];
        (own > 0.0).then_some(Self { limit, ratio, open: level.open / own, form_unknown: level.form_unknown })
    }

    fn widen(&mut self, other: Self) {
        for (mine, theirs) in self.ratio.iter_mut().zip(other.ratio) {
            *mine = mine.max(theirs);
        }
        self.open = self.open.max(other.open);
        self.form_unknown |= other.form_unknown;
    }
}

fn total<'a>(rule: &'a str, entries: &[Entry<'a>]) -> SumFinding<'a> {
    let mut sum = [0.0; 3];
    for entry in entries {
        for (total, ratio) in sum.iter_mut().zip(entry.ratio) {
            *total += ratio;
        }
    }
    let [low, best, high] = sum;
    let any = |test: fn(&Entry<'a>) -> bool| entries.iter().any(test);
    let most = 1.0 + 1e-9;
    let verdict = if low > most {
        Verdict::Exceeded { certain: true }
    } else if high > most && any(|e| e.form_unknown) {
        Verdict::CannotBeJudged(Why::FormUnknown)
    } else if best > most {
        Verdict::Exceeded { certain: false }
    } else if high > most {
        Verdict::CannotBeJudged(Why::Straddles)
    } else if high + entries.iter().map(|e| e.open).sum::<f64>() > most {
        Verdict::CannotBeJudged(Why::Undeclared)
    } else if any(|e| !e.limit.obtained.is_verified()) {
        Verdict::CannotBeJudged(Why::Unverified)
    } else {
        Verdict::Within
    };
    SumFinding { rule, limits: entries.iter().map(|e| e.limit).collect(), low, best, high, verdict }
}
