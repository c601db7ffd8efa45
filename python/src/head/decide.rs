//! Wrappers of `foilwork::head`: technique, class of product and class of service.

use crate::{
    answer::answer,
    bounds::{Estimate, Stated},
    colour::AnyLevel,
    error::raise,
    hair::rate_of,
    sequence::Sequence,
    source::TracedResult,
};
use foilwork::{
    hair::{GrowthRate, Weeks},
    head::{self, ClassQuestion, TechniqueQuestion, Treated},
    quantity::{Length, MassFraction, Share},
};
use pyo3::prelude::*;

answer! {
    in "foilwork.head";
    /// What a step before the colour takes; made by ``step_needs``.
    StepNeeds {
        /// Which.
        step: String,
        /// What goes on.
        what: String,
        /// On a gram of hair, in g.
        take_up_g_per_g: Estimate<f64>,
        /// No developer in it is stronger, in % w/w; ``None`` where there is none in it.
        strongest_developer_ww_percent: Option<f64>,
        /// How long it stays on, in min.
        develop_min: Estimate<f64>,
        /// How it ends: ``"blot"`` or ``"rinse"``.
        then: String,
        /// What to mind.
        mind: Vec<String>,
        /// What the figures rest on.
        basis: String,
    }
}

/// What goes on the hair in a step before the colour, how much of it, for how long, and what to mind.
///
/// Args:
///     step: ``"pre-soften"``, ``"pre-pigment"`` or ``"clean-first"``; ``product_class`` names it in ``before``.
///
/// Returns:
///     A ``StepNeeds``.
///
/// Raises:
///     FoilworkError: another step.
///
/// Source:
///     Common practice; the bounds are assumed.
///
/// Examples:
///     >>> from foilwork.head import product_class, step_needs
///     >>> for step in product_class(7, 5, white_percent=70).before:
///     ...     needs = step_needs(step)
///     ...     print(needs.step, needs.develop_min.best, needs.then)
///     pre-soften 10.0 blot
#[pyfunction]
pub fn step_needs(step: &str) -> PyResult<StepNeeds> {
    let needs = step.parse::<head::ExtraStep>().map_err(raise)?.needs();
    Ok(StepNeeds {
        step: needs.step.code().to_owned(),
        what: needs.what.to_owned(),
        take_up_g_per_g: needs.take_up.into(),
        strongest_developer_ww_percent: needs.strongest_developer.map(MassFraction::ww_percent),
        develop_min: needs.develop.into(),
        then: needs.then.code().to_owned(),
        mind: needs.mind.iter().map(|text| (*text).to_owned()).collect(),
        basis: needs.basis.code().to_owned(),
    })
}

answer! {
    in "foilwork.head";
    /// A class of product that was not chosen.
    Rejected {
        /// Which.
        product: String,
        /// Why not.
        why: String,
    }
}

answer! {
    in "foilwork.head";
    /// The class of product for a section, with its reasons; made by ``product_class``.
    ClassDecision {
        /// What to use.
        product: String,
        /// Why.
        why: String,
        /// What was considered and not taken.
        rejected: Vec<Rejected>,
        /// What has to be done before: ``"pre-soften"``, ``"pre-pigment"``, ``"clean-first"``.
        before: Vec<String>,
        /// What the rules rest on.
        basis: String,
    }
}

answer! {
    in "foilwork.head";
    /// A technique that was not chosen.
    RejectedTechnique {
        /// Which.
        technique: String,
        /// Why not.
        why: String,
        /// Whether it would do what is wanted, with more work.
        does_it: bool,
    }
}

answer! {
    in "foilwork.head";
    /// The technique for what is wanted, with its reasons; made by ``choose_technique``.
    TechniqueDecision {
        /// What to do; ``None`` where nothing does it.
        technique: Option<String>,
        /// How hard it is: ``"plain"``, ``"practised"`` or ``"demanding"``.
        practice: Option<String>,
        /// When its regrowth shows, in weeks.
        line_shows_after_weeks: Option<Estimate<f64>>,
        /// What was considered and not taken.
        rejected: Vec<RejectedTechnique>,
        /// What the rules rest on.
        basis: String,
    }
}

/// Which technique gives the start, the upkeep and the share that are wanted; of those that do, the plainest.
///
/// Args:
///     start: how the start may look at the sharpest: ``"line"``, ``"soft"`` or ``"diffuse"``.
///     upkeep_weeks: how long the regrowth must not show.
///     length_cm: of the hair.
///     taken_percent: the share of the hair that is to be lighter, where that is known.
///     rate_cm_per_month: how fast the hair grows; without it as people do.
///
/// Returns:
///     A ``TechniqueDecision``.
///
/// Raises:
///     FoilworkError: another word, or a value out of range.
///
/// Source:
///     Common practice; start and upkeep as ``profile`` and ``line_shows_after`` assume them.
///
/// Examples:
///     >>> from foilwork.head import choose_technique
///     >>> found = choose_technique("diffuse", 12, length_cm=40, taken_percent=50)
///     >>> found.technique, found.practice, len(found.rejected)
///     ('back-comb', 'practised', 5)
///     >>> choose_technique("diffuse", 50, length_cm=40).technique is None
///     True
#[pyfunction]
#[pyo3(signature = (start, upkeep_weeks, *, length_cm, taken_percent = None, rate_cm_per_month = None))]
pub fn choose_technique(
    start: &str,
    upkeep_weeks: f64,
    length_cm: f64,
    taken_percent: Option<f64>,
    rate_cm_per_month: Option<Stated<GrowthRate>>,
) -> PyResult<TechniqueDecision> {
    let found = head::choose_technique(&wish(start, upkeep_weeks, length_cm, taken_percent, rate_cm_per_month)?);
    let rejected = |other: &head::RejectedTechnique| RejectedTechnique {
        technique: other.technique.code().to_owned(),
        why: other.why.clone(),
        does_it: other.does_it,
    };
    Ok(TechniqueDecision {
        technique: found.technique.map(|technique| technique.code().to_owned()),
        practice: found.practice.map(|practice| practice.code().to_owned()),
        line_shows_after_weeks: found.line_shows_after.map(Into::into),
        rejected: found.rejected.iter().map(rejected).collect(),
        basis: found.basis.code().to_owned(),
    })
}

fn wish(
    start: &str,
    upkeep_weeks: f64,
    length_cm: f64,
    taken_percent: Option<f64>,
    rate_cm_per_month: Option<Stated<GrowthRate>>,
) -> PyResult<TechniqueQuestion> {
    Ok(TechniqueQuestion {
        start: start.parse().map_err(raise)?,
        upkeep: Weeks::from_weeks(upkeep_weeks).map_err(raise)?,
        taken: taken_percent.map(Share::from_percent).transpose().map_err(raise)?,
        length: Length::from_cm(length_cm).map_err(raise)?,
        growth: rate_of(rate_cm_per_month),
        planned: None,
    })
}

fn class_wish(
    (from, to): (AnyLevel, AnyLevel),
    artificial: bool,
    lightened: bool,
    white_percent: f64,
    planned: Option<&str>,
) -> PyResult<ClassQuestion> {
    let white = Share::from_percent(white_percent).map_err(raise)?;
    let planned = planned.map(str::parse).transpose().map_err(raise)?;
    Ok(ClassQuestion { from: from.0, to: to.0, artificial, lightened, white, planned })
}

/// How the technique of a section is decided on.
///
/// Args:
///     start: as of :func:`choose_technique`.
///     upkeep_weeks: how long the regrowth must not show.
///     length_cm: of the hair.
///     taken_percent: the share of the hair that is to be lighter, where that is known.
///     rate_cm_per_month: how fast the hair grows; without it as people do.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: as :func:`choose_technique`.
///
/// Examples:
///     >>> from foilwork.head import trace_technique
///     >>> trace_technique("diffuse", 12, length_cm=40, taken_percent=50).value
///     'back-comb'
#[pyfunction]
#[pyo3(signature = (start, upkeep_weeks, *, length_cm, taken_percent = None, rate_cm_per_month = None))]
pub fn trace_technique(
    start: &str,
    upkeep_weeks: f64,
    length_cm: f64,
    taken_percent: Option<f64>,
    rate_cm_per_month: Option<Stated<GrowthRate>>,
) -> PyResult<TracedResult> {
    let wish = wish(start, upkeep_weeks, length_cm, taken_percent, rate_cm_per_month)?;
    Ok(head::trace_technique(&wish).into())
}

/// How the class of product of a section is decided on.
///
/// Args:
///     from_level: the level now.
///     to_level: the level wanted.
///     artificial: whether the hair there carries artificial colour.
///     lightened: whether it has been lightened.
///     white_percent: how much of it is white.
///     planned: the class of the colour that is planned, where one is.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Examples:
///     >>> from foilwork.head import trace_product_class
///     >>> trace_product_class(5, 9).value
///     'lightener'
#[pyfunction]
#[pyo3(signature = (from_level, to_level, *, artificial = false, lightened = false, white_percent = 0.0, planned = None))]
pub fn trace_product_class(
    from_level: AnyLevel,
    to_level: AnyLevel,
    artificial: bool,
    lightened: bool,
    white_percent: f64,
    planned: Option<&str>,
) -> PyResult<TracedResult> {
    let wish = class_wish((from_level, to_level), artificial, lightened, white_percent, planned)?;
    Ok(head::trace_product_class(&wish).into())
}

/// How the class of a service is decided on.
///
/// Args:
///     treated: as of :func:`service_class`.
///
/// Returns:
///     A :class:`foilwork.source.TracedResult`.
///
/// Raises:
///     FoilworkError: another technique, or a share outside 0 to 100 %.
///
/// Examples:
///     >>> from foilwork.head import trace_service_class
///     >>> trace_service_class([("weave", 55)]).value
///     'half'
#[pyfunction]
pub fn trace_service_class(treated: Sequence<(String, f64)>) -> PyResult<TracedResult> {
    Ok(head::trace_service_class(&parts_of(treated)?).into())
}

/// Which class of product takes hair from one level to another, and which do not, each with its reason.
///
/// Args:
///     from_level: the level now.
///     to_level: the level wanted.
///     artificial: whether the hair there carries artificial colour.
///     lightened: whether it has been lightened.
///     white_percent: how much of it is white.
///     planned: the class of the colour that is planned, where one is: what it cannot lift comes before it.
///
/// Returns:
///     A ``ClassDecision``.
///
/// Raises:
///     FoilworkError: a value out of range.
///
/// Source:
///     Common practice.
///
/// Examples:
///     >>> from foilwork.head import product_class
///     >>> found = product_class(5, 9)
///     >>> found.product, len(found.rejected), found.rejected[0].product
///     ('lightener', 4, 'semi-permanent')
///     >>> product_class(5, 7, artificial=True).before
///     ['clean-first']
///     >>> product_class(5, 8, planned="semi-permanent").before
///     ['pre-lighten']
#[pyfunction]
#[pyo3(signature = (from_level, to_level, *, artificial = false, lightened = false, white_percent = 0.0, planned = None))]
pub fn product_class(
    from_level: AnyLevel,
    to_level: AnyLevel,
    artificial: bool,
    lightened: bool,
    white_percent: f64,
    planned: Option<&str>,
) -> PyResult<ClassDecision> {
    let found =
        head::product_class(&class_wish((from_level, to_level), artificial, lightened, white_percent, planned)?);
    let rejected =
        |other: &head::Rejected| Rejected { product: other.product.code().to_owned(), why: other.why.to_owned() };
    Ok(ClassDecision {
        product: found.product.code().to_owned(),
        why: found.why.to_owned(),
        rejected: found.rejected.iter().map(rejected).collect(),
        before: found.before.iter().map(|step| step.code().to_owned()).collect(),
        basis: found.basis.code().to_owned(),
    })
}

/// What to call a service when booking and pricing it: ``"regrowth"``, ``"partial"``, ``"half"`` or ``"full"``.
///
/// Args:
///     treated: for each part its technique, and the share of all the hair that lies in the area worked on, in percent.
///
/// Returns:
///     The class. Its bounds, 40 and 75 %, are assumed.
///
/// Raises:
///     FoilworkError: another technique, or a share outside 0 to 100 %.
///
/// Examples:
///     >>> from foilwork.head import service_class
///     >>> service_class([("weave", 55)])
///     'half'
#[pyfunction]
pub fn service_class(treated: Sequence<(String, f64)>) -> PyResult<&'static str> {
    Ok(head::service_class(&parts_of(treated)?).code())
}

fn parts_of(treated: Sequence<(String, f64)>) -> PyResult<Vec<Treated>> {
    let part = |(technique, percent): (String, f64)| {
        Ok(Treated { technique: technique.parse().map_err(raise)?, area: Share::from_percent(percent).map_err(raise)? })
    };
    treated.0.into_iter().map(part).collect()
}
