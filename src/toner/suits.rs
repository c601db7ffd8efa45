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
    let (hair, level) = (exposed.level(), shade.level());
    let warn = |text: String| Finding::new(Rule::TonerLevel, Verdict::Warning, text, COMMON_PRACTICE);
    let mut findings = Vec::new();
    let step = level - hair;
    if step.is_lift() {
        findings.push(warn(format!("shade {shade} is lighter than the hair at {hair}: a toner does not lighten")));
    } else if -step.levels() > DARKER_LEVELS {
        findings.push(warn(format!(
            "shade {shade} is {step} than the hair at {hair}: more than two levels colours instead of toning (choose a \
             lighter shade, or pre-pigment first)"
        )));
    }
    if let Some(target) = target.filter(|target| *target > hair) {
        let kind = match product {
            ProductKind::PermanentColour | ProductKind::HighLiftTint => {
                "on lightened hair colour does not lift further"
            }
            _ => "it deposits and does not lift",
        };
        findings.push(warn(format!("the toner's target {target} is lighter than the exposed hair at {hair}: {kind}")));
    }
    if let (Some(warmth), Some(hue)) = (exposed.listed_warmth(), shade.tone().main_hue())
        && hue.temper() == Temper::Warm
        && (warmth.exposed.0.steps_to(hue) <= 1 || warmth.exposed.1.steps_to(hue) <= 1)
    {
        findings.push(warn(format!(
            "shade {shade} adds the warmth that is there already ({}): it turns out warmer, not neutral",
            warmth.shown()
        )));
    }
    if findings.is_empty() {
        let text = format!("shade {shade} on hair at {hair}");
        findings.push(Finding::new(Rule::TonerLevel, Verdict::Passed, text, COMMON_PRACTICE));
    }
    findings
}
