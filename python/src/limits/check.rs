//! Wrappers of `foilwork::limits`: checks and reports.

use super::{rows::Limit, table::Table};
use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    error::raise,
    mix::Composition,
};
use foilwork::{
    limits::{self, Conversion, Standing, Use},
    mix::{Cas, Form},
    quantity::MassFraction,
};
use pyo3::prelude::*;

fn usage(purpose: &str, audience: &str) -> PyResult<Use> {
    Ok(Use { purpose: purpose.parse().map_err(raise)?, audience: audience.parse().map_err(raise)? })
}

/// Where a level stands, whether an excess is certain, and why it cannot be judged.
fn told(standing: Standing) -> (String, Option<bool>, Option<String>) {
    match standing {
        Standing::Exceeded { certain } => ("exceeded".to_owned(), Some(certain), None),
        Standing::ProfessionalsOnly => ("professionals-only".to_owned(), None, None),
        Standing::Within => ("within".to_owned(), None, None),
        Standing::CannotBeJudged { why } => ("cannot-be-judged".to_owned(), None, Some(why.code().to_owned())),
        _ => (standing.to_string(), None, None),
    }
}

answer! {
    in "foilwork.limits";
    /// One level held against one row of a table, or against no row at all.
    Judgement {
        /// The substance, or the entry when it covers several substances of the bowl.
        substance: String,
        /// The product whose level was judged as supplied; None when the mixed bowl was.
        product: Option<String>,
        /// The level in the form the row counts, in % w/w.
        level_ww_percent: Estimate<f64>,
        /// The most that is not declared or not known could add to it, in % w/w.
        undeclared_at_most_ww_percent: f64,
        /// The row, when the table has one.
        limit: Option<Limit>,
        /// ``"exceeded"``, ``"professionals-only"``, ``"within"`` or ``"cannot-be-judged"``.
        standing: String,
        /// For what is exceeded: whether the lower bound is above the limit too.
        certain: Option<bool>,
        /// For what cannot be judged: why, for example ``"not-in-table"``.
        why: Option<String>,
        /// Limit minus upper bound and minus what is not declared, in percentage points; negative above the limit.
        margin_percentage_points: Option<f64>,
        /// The judgement in words, with its source.
        text: String,
    }
}

impl From<&limits::Judgement<'_>> for Judgement {
    fn from(judged: &limits::Judgement<'_>) -> Self {
        let (standing, certain, why) = told(judged.standing);
        Self {
            substance: judged.substance.to_owned(),
            product: judged.product.map(str::to_owned),
            level_ww_percent: judged.level.into(),
            undeclared_at_most_ww_percent: judged.undeclared_at_most.ww_percent(),
            limit: judged.limit.map(Limit::from),
            standing,
            certain,
            why,
            margin_percentage_points: judged.margin_percentage_points(),
            text: judged.to_string(),
        }
    }
}

answer! {
    in "foilwork.limits";
    /// The ratio sum of rows that may only be used together within one whole: the sum of level over own maximum.
    SumJudgement {
        /// The rule, by the name of its group in the table.
        rule: String,
        /// The rows that take part.
        limits: Vec<Limit>,
        /// The sum; 1 is the most the law allows.
        sum: Estimate<f64>,
        /// As in a :class:`Judgement`.
        standing: String,
        /// As in a :class:`Judgement`.
        certain: Option<bool>,
        /// As in a :class:`Judgement`.
        why: Option<String>,
        /// The judgement in words.
        text: String,
    }
}

impl From<&limits::SumJudgement<'_>> for SumJudgement {
    fn from(judged: &limits::SumJudgement<'_>) -> Self {
        let (standing, certain, why) = told(judged.standing);
        Self {
            rule: judged.rule.to_owned(),
            limits: judged.limits.iter().map(|limit| Limit::from(*limit)).collect(),
            sum: Estimate::by(judged.sum, |bound| bound),
            standing,
            certain,
            why,
            text: judged.to_string(),
        }
    }
}

answer! {
    in "foilwork.limits";
    /// A row that is no ceiling but bears on what is in the bowl: a warning duty, a schedule, a conclusion.
    Notice {
        /// The substance.
        substance: String,
        /// The product whose level was compared as supplied; None when the mixed bowl was.
        product: Option<String>,
        /// The level in the form the row counts, in % w/w.
        level_ww_percent: Estimate<f64>,
        /// The row.
        limit: Limit,
        /// Whether the level meets the row's condition; None when the bounds do not tell or the row has no figure.
        applies: Option<bool>,
        /// The notice in words.
        text: String,
    }
}

impl From<&limits::Notice<'_>> for Notice {
    fn from(notice: &limits::Notice<'_>) -> Self {
        Self {
            substance: notice.substance.to_owned(),
            product: notice.product.map(str::to_owned),
            level_ww_percent: notice.level.into(),
            limit: notice.limit.into(),
            applies: notice.applies,
            text: notice.to_string(),
        }
    }
}

answer! {
    in "foilwork.limits";
    /// What a table has to say about a mixture; made by :func:`check` and :func:`check_peroxide`.
    Report {
        /// The name of the table.
        table: String,
        /// What the mixture is for.
        purpose: String,
        /// Who uses it.
        audience: String,
        /// Levels against ceilings, and levels without a ceiling.
        judgements: Vec<Judgement>,
        /// Ratio sums.
        sums: Vec<SumJudgement>,
        /// Rows that are no ceilings.
        notices: Vec<Notice>,
        /// Products of which not everything is known.
        undeclared: Vec<String>,
        /// Whether any limit or ratio sum is exceeded, or the use is not open to the user.
        is_exceeded: bool,
        /// Whether everything in the bowl was judged and no limit was found exceeded; no table is complete.
        is_within_everything_checked: bool,
        /// The report on one page.
        text: String,
    }
    impl {
        fn __str__(&self) -> &str {
            &self.text
        }
    }
}

impl From<limits::Report<'_>> for Report {
    fn from(report: limits::Report<'_>) -> Self {
        Self {
            table: report.table.to_owned(),
            purpose: report.of.purpose.code().to_owned(),
            audience: report.of.audience.code().to_owned(),
            judgements: report.judgements.iter().map(Judgement::from).collect(),
            sums: report.sums.iter().map(SumJudgement::from).collect(),
            notices: report.notices.iter().map(Notice::from).collect(),
            undeclared: report.undeclared.iter().map(|name| (*name).to_owned()).collect(),
            is_exceeded: report.is_exceeded(),
            is_within_everything_checked: report.is_within_everything_checked(),
            text: report.to_string(),
        }
    }
}

/// Hold a mixed bowl, and the products in it, against a table.
///
/// Args:
///     table: the table.
///     bowl: the bowl.
///     purpose: ``"oxidative-colour"``, ``"non-oxidative-colour"``, ``"lightening"`` or ``"lash-colour"``.
///     audience: ``"professional"`` or ``"general"``.
///
/// Returns:
///     What was judged: each level exceeded, within or not to be judged, with its source.
///
/// Raises:
///     FoilworkError: for an unknown purpose or audience.
///
/// Examples:
///     >>> from foilwork.limits import Table, check
///     >>> from foilwork.mix import Composition, Ingredient, Product
///     >>> def bowl(*ingredients):
///     ...     return Composition([(90, Product("bowl", list(ingredients)))])
///     >>> report = check(Table("EU"), bowl(Ingredient("hydrogen peroxide", 6)), "lightening")
///     >>> [(judged.standing, judged.margin_percentage_points) for judged in report.judgements]
///     [('within', 6.0)]
///     >>> diamines = bowl(Ingredient("PTD", 1.4), Ingredient("diamine", 1.8, groups=["n-substituted-p-phenylenediamines"]))
///     >>> check(Table("EU"), diamines).sums[0].rule
///     'EU-III-8/9/9a'
///     >>> check(Table("AU"), bowl(Ingredient("hydrogen peroxide", 9))).notices[1].applies
///     True
///
/// Source:
///     Each judgement carries its own: act and entry, date of the list, how it was obtained.
#[pyfunction]
#[pyo3(signature = (table, bowl, purpose = "oxidative-colour", audience = "professional"))]
pub fn check(table: &Table, bowl: &Composition, purpose: &str, audience: &str) -> PyResult<Report> {
    Ok(limits::check(&table.table, &bowl.0, usage(purpose, audience)?).into())
}

/// Hold the hydrogen peroxide strength of a mixed bowl against a built-in table.
///
/// Args:
///     jurisdiction: code or name, for example ``"EU"``.
///     strength_ww_percent: strength as applied in % w/w, as a number or (low, best, high).
///     purpose: as for :func:`check`.
///     audience: as for :func:`check`.
///
/// Returns:
///     The report.
///
/// Raises:
///     FoilworkError: when there is no such table, purpose or audience, or the strength is out of range.
///
/// Examples:
///     >>> from foilwork.limits import check_peroxide
///     >>> check_peroxide("EU", 13).is_exceeded
///     True
#[pyfunction]
#[pyo3(signature = (jurisdiction, strength_ww_percent, purpose = "lightening", audience = "professional"))]
pub fn check_peroxide(
    jurisdiction: &str,
    strength_ww_percent: Stated<MassFraction>,
    purpose: &str,
    audience: &str,
) -> PyResult<Report> {
    let of = usage(purpose, audience)?;
    let jurisdiction = jurisdiction.parse().map_err(raise)?;
    Ok(limits::check_peroxide(jurisdiction, strength_ww_percent.0, of).into())
}

/// Grams of the form the law counts in one gram of a substance: salt to base, releaser to hydrogen peroxide.
///
/// Args:
///     cas: CAS number of the substance.
///     counted_as: the form, for example ``"free-base"``, ``"h2o2-released"`` or ``"so2"``.
///
/// Returns:
///     The factor, or None where it is not known or not fixed.
///
/// Raises:
///     FoilworkError: for a mistyped CAS number or an unknown form.
///
/// Examples:
///     >>> from foilwork.limits import salt_factor
///     >>> round(salt_factor("124-43-6", "h2o2-released"), 4)
///     0.3616
///
/// Source:
///     Formulas from chemicals 1.5.2, atomic weights from periodictable 2.1.0.
#[pyfunction]
pub fn salt_factor(cas: &str, counted_as: &str) -> PyResult<Option<f64>> {
    let (cas, form): (Cas, Form) = (cas.parse().map_err(raise)?, counted_as.parse().map_err(raise)?);
    Ok(Conversion::of(cas, form).and_then(Conversion::grams_per_gram))
}
