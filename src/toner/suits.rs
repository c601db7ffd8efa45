use super::Exposed;
use crate::{
    colour::{Level, ProductKind, Shade, Temper},
    finding::{Finding, Rule, Verdict},
    source::COMMON_PRACTICE,
};

/// Levels that a toner may be darker than the hair before it is called colour rather than toner (common practice).
pub(super) const DARKER_LEVELS: f64 = 2.0;

/// What the trade says of one shade as a toner on this hair, for a tone that is wanted there: its level against the
/// hair's, its tone against the exposed warmth, and what its product can do. Without anything to say, the finding is that
/// it was looked at.
///
/// # Example
///
/// ```
/// use foilwork::{
///     colour::{Level, ProductKind, Shade, Tone},
///     finding::Verdict,
///     toner::{Exposed, check_toner},
/// };
///
/// let hair = Exposed::lightened(Level::new(5.0)?, Level::new(9.0)?);
/// let deep = Shade::new("J5-plain", Level::new(5.0)?, Tone::neutral())?;
/// let findings = check_toner(&hair, &deep, None, ProductKind::QuasiPermanentColour);
/// assert_eq!(findings.first().map(|finding| finding.verdict), Some(Verdict::Warning));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Common practice.
#[must_use]
pub fn check_toner(exposed: &Exposed, shade: &Shade, target: Option<Level>, product: ProductKind) -> Vec<Finding> {
    let hair = exposed.level();
    let said = [
        lighter(hair, shade).or_else(|| darker(hair, shade)),
        target.and_then(|target| target_lighter(hair, target, product)),
        adds_warmth(exposed, shade),
    ];
    let mut findings: Vec<Finding> = said.into_iter().flatten().collect();
    if findings.is_empty() {
        findings.push(suits(hair, shade));
    }
    findings
}

fn warn(text: String) -> Finding {
    Finding::new(Rule::TonerLevel, Verdict::Warning, text, COMMON_PRACTICE)
}

/// That a shade was looked at.
pub(crate) fn suits(hair: Level, shade: &Shade) -> Finding {
    let text = format!("shade {shade} on hair at {hair}");
    Finding::new(Rule::TonerLevel, Verdict::Passed, text, COMMON_PRACTICE)
}

/// A shade lighter than the hair does not show on it.
pub(crate) fn lighter(hair: Level, shade: &Shade) -> Option<Finding> {
    (shade.level() > hair)
        .then(|| warn(format!("shade {shade} is lighter than the hair at {hair}: a toner does not lighten")))
}

/// A shade much darker than the hair colours it.
pub(crate) fn darker(hair: Level, shade: &Shade) -> Option<Finding> {
    let step = shade.level() - hair;
    (-step.levels() > DARKER_LEVELS).then(|| {
        warn(format!(
            "shade {shade} is {step} than the hair at {hair}: more than two levels colours instead of toning (choose a \
             lighter shade, or pre-pigment first)"
        ))
    })
}

/// A target lighter than the hair is not reached by deposit.
pub(crate) fn target_lighter(hair: Level, target: Level, product: ProductKind) -> Option<Finding> {
    let kind = match product {
        ProductKind::PermanentColour | ProductKind::HighLiftTint => "on lightened hair colour does not lift further",
        _ => "it deposits and does not lift",
    };
    (target > hair)
        .then(|| warn(format!("the toner's target {target} is lighter than the exposed hair at {hair}: {kind}")))
}

/// A warm shade on warmth of its own kind makes it warmer.
pub(crate) fn adds_warmth(exposed: &Exposed, shade: &Shade) -> Option<Finding> {
    let (warmth, hue) = (exposed.listed_warmth()?, shade.tone().main_hue()?);
    let alike = warmth.exposed.0.steps_to(hue) <= 1 || warmth.exposed.1.steps_to(hue) <= 1;
    (hue.temper() == Temper::Warm && alike).then(|| {
        warn(format!(
            "shade {shade} adds the warmth that is there already ({}): it turns out warmer, not neutral",
            warmth.shown()
        ))
    })
}
