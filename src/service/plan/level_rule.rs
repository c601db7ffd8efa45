use super::sections::Work;
use crate::{
    colour::{Canvas, Level, ProductKind, Scale, blended_level, result_level, shade_level},
    finding::Reason,
    quantity::Mass,
    shop::ShadeClass,
    source::{COMMON_PRACTICE, Interval, citations::colour},
};
use schemars::JsonSchema;
use serde::Serialize;

/// Level rules of permanent colour: rules of thumb, a strand test decides.
///
/// Lighter than natural hair the result is the mean of natural and shade; at its level and darker the shade deposits its
/// own level.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LevelRule {
    /// Level of the shades as mixed.
    pub shade_level: Level,
    /// Level that white hair takes.
    pub white_hair_level: Level,
    /// Levels that pigmented hair takes.
    pub pigmented_hair_level: Interval<Level>,
    /// Shades that would bring pigmented hair to the target, where there are such shades.
    pub shade_for_target_level: Option<Interval<Level>>,
    /// Why there are none, otherwise.
    pub no_shade_for_target: Option<String>,
    /// What the rules rest on.
    pub sources: Vec<Reason>,
}

/// The level rules for a section in permanent colour; none for lightener, demi-permanent and the rest.
///
/// A planned lightening before it leaves the target, by the plan, and no artificial colour in it.
pub(super) fn of(work: &Work<'_>, target: Level, lightened_first: bool) -> Option<LevelRule> {
    if !work.products.iter().all(|(item, _)| !item.lightens()) || work.shades().next().is_none() {
        return None;
    }
    let shades: Option<Vec<(Level, Mass)>> = work
        .shades()
        .map(|part| match part.class {
            ShadeClass::Permanent => Some((part.shade.level(), Mass::from_g(part.parts).ok()?)),
            _ => None,
        })
        .collect();
    let shade = blended_level(shades?).ok()?.value;
    let product = ProductKind::PermanentColour;
    let from = if lightened_first { Interval::exact(target) } else { work.from };
    let coloured = !lightened_first && work.artificial.is_some_and(|there| target > there);
    let canvas = if coloured { Canvas::Coloured } else { Canvas::Natural };
    let scale = Scale::European10;
    let needed = |at| shade_level(at, target, product, canvas, scale).map(|level| level.value);
    // Beyond the end of the scale for a bound, the end is meant.
    let bound = |at: Level| {
        let end = if at < from.best() { Level::LIGHTEST_OF_TEN } else { Level::DARKEST };
        needed(at).unwrap_or(end)
    };
    let needed = needed(from.best());
    let span = |best| Interval::ordered(bound(from.low()), best, bound(from.high()));
    let result =
        |at| if shade > at { result_level(at, shade, product).map_or(shade, |level| level.value) } else { shade };
    let lifts = shade > from.low() || target > from.low();
    let rests_on: &[_] = if lifts { &[colour::RESULT_LEVEL, COMMON_PRACTICE] } else { &[COMMON_PRACTICE] };
    Some(LevelRule {
        shade_level: shade,
        white_hair_level: shade,
        pigmented_hair_level: from.map(result),
        shade_for_target_level: needed.as_ref().ok().map(|level| span(*level)),
        no_shade_for_target: needed.err().map(|why| why.to_string()),
        sources: rests_on.iter().map(Reason::from).collect(),
    })
}
