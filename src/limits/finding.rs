use super::{Limit, Measured, level::Level};
use crate::{quantity::MassFraction, source::Interval};
use std::fmt;

/// What a limit has to say about a level. It never says that a mixture is safe.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Verdict {
    /// Above the limit: its best estimate, or even its lower bound.
    Exceeded {
        /// Whether the lower bound is above the limit too.
        certain: bool,
    },
    /// The whole interval is at or below a verified limit.
    Within,
    /// Neither can be said.
    CannotBeJudged(Why),
}

/// Why a level cannot be judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Why {
    /// The table does not name the substance.
    NotInTable,
    /// The table names it, with no ceiling for this use.
    NoCeilingForThisUse,
    /// The row holds no figure.
    NoFigure,
    /// The level is not above the figure, and the figure is from memory.
    Unverified,
    /// The limit lies between the best estimate and the upper bound.
    Straddles,
    /// The level is not above the limit as far as declared, but what is not declared in the bowl could take it there.
    Undeclared,
    /// How much of the species the law counts is in this form is not known.
    FormUnknown,
    /// The source does not say in what the figure is meant.
    BasisNotStated,
}

impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NotInTable => "the table does not name it, which does not mean that there is no limit",
            Self::NoCeilingForThisUse => "the table names it, with no ceiling for this use",
            Self::NoFigure => "the source gives no figure",
            Self::Unverified => "not above the figure, but the figure is from memory and unverified",
            Self::Straddles => "the limit lies within the bounds of the level (a better known level would decide)",
            Self::Undeclared => {
                "not above the limit as far as declared, but what is not declared in the bowl could take it there"
            }
            Self::FormUnknown => "the content of the form the law counts is not known (state the level in that form)",
            Self::BasisNotStated => "not above the figure as applied, but the source does not say in what it is meant",
        })
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Exceeded { certain: true } => f.write_str("EXCEEDED"),
            Self::Exceeded { certain: false } => f.write_str("EXCEEDED by the best estimate"),
            Self::Within => f.write_str("within"),
            Self::CannotBeJudged(why) => write!(f, "cannot be judged: {why}"),
        }
    }
}

/// One level held against one row of a table, or against no row at all.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding<'a> {
    /// The substance, or the entry when it covers several substances of the bowl.
    pub substance: &'a str,
    /// The product whose level was judged as supplied; nothing when the mixed bowl was.
    pub product: Option<&'a str>,
    /// The level in the form the row counts.
    pub level: Interval<MassFraction>,
    /// The most that products not declared in full could add to it.
    pub undeclared_at_most: MassFraction,
    /// The row, when the table has one.
    pub limit: Option<&'a Limit>,
    /// What follows.
    pub verdict: Verdict,
}

impl Finding<'_> {
    /// Limit minus upper bound of the level and of what is not declared, in percentage points w/w; negative when that
    /// is above the limit.
    #[must_use]
    pub fn margin_percentage_points(&self) -> Option<f64> {
        let ceiling = self.limit.filter(|limit| limit.is_ceiling())?.concentration?;
        Some(ceiling.percent_ww() - self.level.high().percent_ww() - self.undeclared_at_most.percent_ww())
    }

    /// Whether the row was read in its source, as opposed to remembered.
    #[must_use]
    pub fn is_verified(&self) -> bool {
        self.limit.is_some_and(|limit| limit.obtained.is_verified())
    }

    /// Whether the limit is exceeded.
    #[must_use]
    pub const fn is_exceeded(&self) -> bool {
        matches!(self.verdict, Verdict::Exceeded { .. })
    }
}

impl fmt::Display for Finding<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.substance)?;
        if let Some(product) = self.product {
            write!(f, " in {product} as supplied")?;
        }
        write!(f, ": {}", Percent(self.level))?;
        if self.limit.is_some() && self.undeclared_at_most > MassFraction::ZERO {
            write!(f, " and at most {:.3} % undeclared", self.undeclared_at_most.percent_ww())?;
        }
        if let Some(limit) = self.limit {
            match (limit.figure.as_str(), limit.expressed_as) {
                ("", _) => {}
                ("0 %", _) => f.write_str(", not permitted")?,
                (figure, Some(form)) => write!(f, " against {figure} as {form}")?,
                (figure, None) => write!(f, " against {figure}")?,
            }
        }
        write!(f, ": {}", self.verdict)?;
        if let Some(margin) = self.margin_percentage_points().filter(|_| self.verdict == Verdict::Within) {
            write!(f, " (margin {margin:.2} percentage points)")?;
        }
        match self.limit {
            Some(limit) => write!(f, "; {limit}"),
            None => Ok(()),
        }
    }
}

/// A level with its bounds, at three digits.
pub(super) struct Percent(pub Interval<MassFraction>);

impl fmt::Display for Percent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let short = |m: MassFraction| (m.percent_ww() * 1e3).round() / 1e3;
        write!(f, "{} % w/w", short(self.0.best()))?;
        if self.0.is_exact() {
            Ok(())
        } else {
            write!(f, " (from {} to {} %)", short(self.0.low()), short(self.0.high()))
        }
    }
}

/// Judges one level against a ceiling.
pub(super) fn verdict(limit: &Limit, level: &Level<'_>) -> Verdict {
    let Some(ceiling) = limit.concentration.filter(|_| limit.is_ceiling()) else {
        return Verdict::CannotBeJudged(Why::NoFigure);
    };
    // The last bits of a sum of products are not a breach of the law.
    let ceiling = ceiling.percent_ww() * (1.0 + 1e-9);
    if level.low > ceiling {
        Verdict::Exceeded { certain: true }
    } else if level.high > ceiling {
        match (level.form_unknown, level.best > ceiling) {
            (true, _) => Verdict::CannotBeJudged(Why::FormUnknown),
            (false, true) => Verdict::Exceeded { certain: false },
            (false, false) => Verdict::CannotBeJudged(Why::Straddles),
        }
    } else if level.high + level.open > ceiling {
        Verdict::CannotBeJudged(Why::Undeclared)
    } else if !limit.obtained.is_verified() {
        Verdict::CannotBeJudged(Why::Unverified)
    } else if limit.measured == Measured::NotStated {
        Verdict::CannotBeJudged(Why::BasisNotStated)
    } else {
        Verdict::Within
    }
}
