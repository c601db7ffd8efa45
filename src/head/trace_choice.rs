//! How technique, class of product and class of service are decided on.

use super::{
    ClassQuestion, TechniqueQuestion, Treated, choose_technique,
    classes::{HALF_BELOW_PERCENT, PARTIAL_BELOW_PERCENT},
    product_class, service_class,
};
use crate::{
    colour::Level,
    source::{Basis, Interval, TracedInput, TracedResult},
    text::traced,
};

const TECHNIQUE: &str =
    "the plainest technique whose start is no sharper, whose regrowth shows no sooner and that takes such a share";
const CLASS: &str = "the gentlest class that lifts so far on such hair, or deposits where nothing is lifted";

fn words(what: &str, value: impl ToString) -> TracedInput {
    TracedInput::exact(what, value, "word").resting(Basis::Stated)
}

fn level(what: &str, level: Level) -> TracedInput {
    TracedInput::new(what, Interval::exact(level.number()), "level").resting(Basis::Stated)
}

/// How the technique of a section is decided on.
///
/// # Example
///
/// ```
/// use foilwork::{
///     hair::{Weeks, growth}, head::{Softness, TechniqueQuestion, trace_technique}, quantity::{Length, Share},
/// };
///
/// let found = trace_technique(&TechniqueQuestion {
///     start: Softness::Diffuse, upkeep: Weeks::from_weeks(12.0)?, taken: Some(Share::from_percent(50.0)?),
///     length: Length::from_cm(40.0)?, growth: growth(None).value, planned: None,
/// });
/// assert_eq!((found.value.as_str(), found.sources.as_slice()), ("back-comb", ["common-practice"].as_slice()));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn trace_technique(wish: &TechniqueQuestion) -> TracedResult {
    let found = choose_technique(wish);
    let value = found.technique.map_or_else(|| "none".to_owned(), |technique| technique.code().to_owned());
    let inputs = [
        Some(words("start at the sharpest", wish.start)),
        Some(traced("regrowth must not show for", wish.upkeep.into()).resting(Basis::Stated)),
        wish.taken.map(|taken| traced("share to be lighter", taken.into()).resting(Basis::Stated)),
        Some(traced("length of the hair", wish.length.into()).resting(Basis::Stated)),
        Some(traced("growth", wish.growth)),
    ];
    TracedResult::exact("technique", value, "word", TECHNIQUE, found.basis)
        .made_of(inputs.into_iter().flatten())
        .resting_on(&[found.citation.id])
}

/// How the class of product of a section is decided on.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, head::{ClassQuestion, trace_product_class}, quantity::Share};
///
/// let found = trace_product_class(&ClassQuestion {
///     from: Level::new(5.0)?, to: Level::new(9.0)?, artificial: false, lightened: false, white: Share::NONE,
///     planned: None,
/// });
/// assert_eq!((found.value.as_str(), found.inputs[1].value.as_str()), ("lightener", "9"));
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn trace_product_class(wish: &ClassQuestion) -> TracedResult {
    let found = product_class(wish);
    let yes = |is: bool| if is { "yes" } else { "no" };
    let inputs = [
        Some(level("level now", wish.from)),
        Some(level("level wanted", wish.to)),
        Some(words("artificial colour", yes(wish.artificial))),
        Some(words("lightened", yes(wish.lightened))),
        Some(traced("white hair", wish.white.into()).resting(Basis::Stated)),
        wish.planned.map(|planned| words("class that is planned", planned)),
    ];
    TracedResult::exact("class of product", found.product.code(), "word", CLASS, found.basis)
        .made_of(inputs.into_iter().flatten())
        .resting_on(&[found.citation.id])
}

/// How the class of a service is decided on.
///
/// # Example
///
/// ```
/// use foilwork::{head::{Technique, Treated, trace_service_class}, quantity::Share};
///
/// let sides = Treated { technique: Technique::Weave, area: Share::from_percent(55.0)? };
/// assert_eq!(trace_service_class(&[sides]).value, "half");
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn trace_service_class(treated: &[Treated]) -> TracedResult {
    let formula = format!(
        "regrowth where nothing else is done; else by the sum of the areas: partial below {PARTIAL_BELOW_PERCENT} %, half \
         below {HALF_BELOW_PERCENT} %, full from there"
    );
    let areas =
        treated.iter().map(|part| traced(format!("area, {}", part.technique), part.area.into()).resting(Basis::Stated));
    TracedResult::exact("class of service", service_class(treated).code(), "word", formula, Basis::Assumed)
        .made_of(areas)
}
