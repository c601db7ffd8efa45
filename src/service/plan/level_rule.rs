use super::sections::Work;
use crate::{
    colour::{Canvas, Level, ProductKind, Scale, blended_level, formula_level, white_blend},
    finding::Reason,
    quantity::{Mass, Share},
    shop::ShadeClass,
};
use schemars::JsonSchema;
use serde::Serialize;

/// Level rules of permanent colour on natural hair: rules of thumb, a strand test decides.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LevelRule {
    /// Level of the shades as mixed.
    pub shade_level: Level,
    /// Level that white hair takes.
    pub white_hair_level: Level,
    /// Level that pigmented hair takes: the mean of natural and shade.
    pub pigmented_hair_level: Level,
    /// Shade that would bring pigmented hair to the target, where there is one.
    pub shade_for_target_level: Option<Level>,
    /// Why there is none, otherwise.
    pub no_shade_for_target: Option<String>,
    /// Where the rules are printed.
    pub sources: Vec<Reason>,
}

/// The level rules for a section in permanent colour; none for lightener, demi-permanent and the rest.
pub(super) fn of(work: &Work<'_>, target: Level, white: Share) -> Option<LevelRule> {
    if !work.products.iter().all(|(item, _)| !item.lightens()) || work.shades().next().is_none() {
        return None;
    }
    let shades: Option<Vec<(Level, Mass)>> = work
        .shades()
        .map(|shade| match shade.class {
            ShadeClass::Permanent => Some((shade.level, Mass::from_g(shade.parts).ok()?)),
            _ => None,
        })
        .collect();
    let shade = blended_level(shades?).ok()?.value;
    let from = work.from.best();
    let blend = white_blend(from, shade, white, ProductKind::PermanentColour).ok()?;
    let canvas = if work.on_artificial { Canvas::Coloured } else { Canvas::Natural };
    let needed = formula_level(from, target, ProductKind::PermanentColour, canvas, Scale::European10);
    Some(LevelRule {
        shade_level: shade,
        white_hair_level: blend.value.white_part,
        pigmented_hair_level: blend.value.pigmented_part,
        shade_for_target_level: needed.as_ref().ok().map(|level| level.value),
        no_shade_for_target: needed.err().map(|why| why.to_string()),
        sources: blend.citation.map(Reason::from).into_iter().collect(),
    })
}
