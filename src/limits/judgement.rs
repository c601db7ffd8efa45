use super::{Limit, Measured, level::Level};
use crate::{
    choice::choice,
    finding::{Finding, Reason, Rule, Verdict},
    quantity::MassFraction,
    source::Interval,
};
use serde::Serialize;
use std::fmt;

/// Where a level stands against a limit. It never says that a mixture is safe.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(tag = "standing", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Standing {
    /// Above the limit: its best estimate, or even its lower bound.
    Exceeded {
        /// Whether the lower bound is above the limit too.
        certain: bool,
    },
    /// The law opens this use to professionals only, and the user is none. Whatever the level, it is not permitted.
    ProfessionalsOnly,
    /// The whole interval is at or below a verified limit.
    Within,
    /// Neither can be said.
    CannotBeJudged {
        /// Why not.
        why: Why,
    },
}

impl Standing {
    pub(super) const fn open(why: Why) -> Self {
        Self::CannotBeJudged { why }
    }

    /// The step on the one ladder of findings: above a limit stops the work, and what cannot be judged is never fine.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{finding::Verdict, limits::Standing};
    ///
    /// assert_eq!(Standing::Exceeded { certain: false }.verdict(), Verdict::Stop);
    /// ```
    #[must_use]
    pub const fn verdict(self) -> Verdict {
        match self {
            Self::Exceeded { .. } | Self::ProfessionalsOnly => Verdict::Stop,
            Self::Within => Verdict::Passed,
            Self::CannotBeJudged { .. } => Verdict::NotJudged,
        }
    }
}

choice! {
    /// Why a level cannot be judged.
    Why: "reason" {
        /// The table does not name the substance.
        NotInTable = "not-in-table" => "the table does not name it, which does not mean that there is no limit",
        /// The table names it, with no ceiling for this use.
        NoCeilingForThisUse = "no-ceiling-for-this-use" => "the table names it, with no ceiling for this use",
        /// The table names it with no ceiling for this use, and prohibits it in another.
        ProhibitedInOtherUse = "prohibited-in-other-use" =>
            "the table prohibits it in another use and says no word of this one",
        /// The row holds no figure.
        NoFigure = "no-figure" => "the source gives no figure",
        /// The level is not above the figure, and the figure is from memory.
        Unverified = "unverified" => "not above the figure, but the figure is from memory and unverified",
        /// The limit lies between the best estimate and the upper bound.
        Straddles = "straddles" => "the limit lies within the bounds of the level (a better known level would decide)",
        /// The level is not above the limit as far as declared, but what is not declared in the bowl could take it there.
        Undeclared = "undeclared" =>
            "not above the limit as far as declared, but what is not declared in the bowl could take it there",
        /// Not above the limit, but an ingredient that foilwork cannot identify might set peroxide free.
        Unidentified = "unidentified" =>
            "not above the limit as far as known, but an ingredient that foilwork does not know could release peroxide \
             enough to cross it (give its CAS number or the name on the label)",
        /// How much of the species the law counts is in this form is not known.
        FormUnknown = "form-unknown" =>
            "the content of the form the law counts is not known (state the level in that form)",
        /// The source does not say in what the figure is meant.
        BasisNotStated = "basis-not-stated" =>
            "not above the figure as applied, but the source does not say in what it is meant",
    }
}

impl fmt::Display for Standing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Exceeded { certain: true } => f.write_str("EXCEEDED"),
            Self::Exceeded { certain: false } => f.write_str("EXCEEDED by the best estimate"),
            Self::ProfessionalsOnly => f.write_str("NOT PERMITTED: the law opens this use to professionals only"),
            Self::Within => f.write_str("within"),
            Self::CannotBeJudged { why } => write!(f, "cannot be judged: {why}"),
        }
    }
}

/// One level held against one row of a table, or against no row at all.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Judgement<'a> {
    /// The substance, or the entry when it covers several substances of the bowl.
    pub substance: &'a str,
    /// The product whose level was judged as supplied; none when the mixed bowl was.
    pub product: Option<&'a str>,
    /// The level in the form the row counts.
    #[serde(rename = "level_ww_percent")]
    pub level: Interval<MassFraction>,
    /// The most that products not declared in full, and for peroxide also ingredients that foilwork does not know, could
    /// add to it.
    #[serde(rename = "undeclared_at_most_ww_percent")]
    pub undeclared_at_most: MassFraction,
    /// The row, when the table has one.
    pub limit: Option<&'a Limit>,
    /// Where the level stands.
    #[serde(flatten)]
    pub standing: Standing,
}

impl Judgement<'_> {
    /// The finding of the law that follows, resting on act and entry.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{finding::{Rule, Verdict}, limits::{Jurisdiction, Purpose, Use, check_peroxide}};
    /// use foilwork::{quantity::MassFraction, source::Interval};
    ///
    /// let bowl = Interval::exact(MassFraction::from_ww_percent(13.0)?);
    /// let report = check_peroxide(Jurisdiction::EuropeanUnion, bowl, Use::professional(Purpose::Lightening));
    /// let finding = report.judgements[0].finding();
    /// assert_eq!((finding.rule, finding.verdict), (Rule::Law, Verdict::Stop));
    /// assert!(finding.text.starts_with("hydrogen peroxide: 13 % w/w against 12 %"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn finding(&self) -> Finding {
        let sources = self.limit.map(Reason::from).into_iter().collect();
        let finding =
            Finding { rule: Rule::Law, verdict: self.standing.verdict(), text: Words(self).to_string(), sources };
        finding.memory_said()
    }

    /// Limit minus upper bound of the level and of what is not declared, in percentage points w/w; negative when that
    /// is above the limit.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Purpose, Use, check_peroxide};
    /// use foilwork::{quantity::MassFraction, source::Interval};
    ///
    /// let bowl = Interval::exact(MassFraction::from_ww_percent(8.0)?);
    /// let report = check_peroxide(Jurisdiction::EuropeanUnion, bowl, Use::professional(Purpose::Lightening));
    /// assert_eq!(report.judgements[0].margin_percentage_points(), Some(4.0));
    /// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
    /// ```
    #[must_use]
    pub fn margin_percentage_points(&self) -> Option<f64> {
        let ceiling = self.limit.filter(|limit| limit.is_ceiling())?.concentration?;
        Some(ceiling.ww_percent() - self.level.high().ww_percent() - self.undeclared_at_most.ww_percent())
    }

    /// Whether the row was read in its source, as opposed to remembered.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::limits::{Jurisdiction, Purpose, Use, check_peroxide};
    /// use foilwork::{quantity::MassFraction, source::Interval};
    ///
    /// let bowl = Interval::exact(MassFraction::from_ww_percent(13.0)?);
    /// let report = check_peroxide(Jurisdiction::EuropeanUnion, bowl, Use::professional(Purpose::Lightening));
    /// let judgement = &report.judgements[0]; // 13 % where 12 % is the most
    /// assert!(judgement.is_exceeded() && judgement.is_verified());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn is_verified(&self) -> bool {
        self.limit.is_some_and(|limit| limit.obtained.is_verified())
    }

    /// Whether the limit is exceeded, or the use is not open to the user at all.
    #[must_use]
    pub const fn is_exceeded(&self) -> bool {
        matches!(self.standing, Standing::Exceeded { .. } | Standing::ProfessionalsOnly)
    }
}

/// A judgement without its source.
struct Words<'j, 'a>(&'j Judgement<'a>);

impl fmt::Display for Words<'_, '_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let judgement = self.0;
        write!(f, "{}", judgement.substance)?;
        if let Some(product) = judgement.product {
            write!(f, " in {product} as supplied")?;
        }
        write!(f, ": {}", Percent(judgement.level))?;
        if judgement.limit.is_some() && judgement.undeclared_at_most > MassFraction::ZERO {
            write!(f, " and at most {:.3} % undeclared", judgement.undeclared_at_most.ww_percent())?;
        }
        if let Some(limit) = judgement.limit {
            match (limit.figure.as_str(), limit.expressed_as) {
                ("", _) => {}
                ("0 %", _) => f.write_str(", not permitted")?,
                (figure, Some(form)) => write!(f, " against {figure} as {form}")?,
                (figure, None) => write!(f, " against {figure}")?,
            }
        }
        write!(f, ": {}", judgement.standing)?;
        if let Some(margin) = judgement.margin_percentage_points().filter(|_| judgement.standing == Standing::Within) {
            write!(f, " (margin {margin:.2} percentage points)")?;
        }
        Ok(())
    }
}

impl From<&Limit> for Reason {
    fn from(limit: &Limit) -> Self {
        let list = if limit.list_date.is_empty() { String::new() } else { format!("; list: {}", limit.list_date) };
        Self {
            id: Some(limit.id.clone().into()),
            text: format!("{}{list}", limit.legal_reference).into(),
            from_memory: !limit.obtained.is_verified(),
        }
    }
}

impl fmt::Display for Judgement<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Words(self).fmt(f)?;
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
        let short = |m: MassFraction| (m.ww_percent() * 1e3).round() / 1e3;
        write!(f, "{} % w/w", short(self.0.best()))?;
        if self.0.is_exact() {
            Ok(())
        } else {
            write!(f, " (from {} to {} %)", short(self.0.low()), short(self.0.high()))
        }
    }
}

/// Judges one level against a ceiling.
pub(super) fn standing(limit: &Limit, level: &Level<'_>) -> Standing {
    let Some(ceiling) = limit.concentration.filter(|_| limit.is_ceiling()) else {
        return Standing::open(Why::NoFigure);
    };
    // The last bits of a sum of products are not a breach of the law.
    let ceiling = ceiling.ww_percent() * (1.0 + 1e-9);
    if level.level.low() > ceiling {
        Standing::Exceeded { certain: true }
    } else if level.level.high() > ceiling {
        match (level.form_unknown, level.level.best() > ceiling) {
            (true, _) => Standing::open(Why::FormUnknown),
            (false, true) => Standing::Exceeded { certain: false },
            (false, false) => Standing::open(Why::Straddles),
        }
    } else if level.level.high() + level.open > ceiling {
        Standing::open(Why::Undeclared)
    } else if level.level.high() + level.open + level.unidentified > ceiling {
        Standing::open(Why::Unidentified)
    } else if !limit.obtained.is_verified() {
        Standing::open(Why::Unverified)
    } else if limit.measured == Measured::NotStated {
        Standing::open(Why::BasisNotStated)
    } else {
        Standing::Within
    }
}
