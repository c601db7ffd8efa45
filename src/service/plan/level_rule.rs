use super::LevelRule;
use crate::{
    colour::{Canvas, Level, ProductKind, Scale, blended_level, formula_level, white_blend},
    quantity::{Mass, Share},
    service::{
        request::{ItemKind, Request, Task},
        shape::ShadeClass,
    },
};

/// The level rules for a section in permanent colour; nothing for lightener, demi-permanent and the rest.
pub(super) fn of(request: &Request, task: &Task, target: Level) -> Option<LevelRule> {
    let shades: Option<Vec<(Level, Mass)>> = task
        .products
        .iter()
        .map(|(i, parts)| match &request.items.get(*i)?.kind {
            ItemKind::Shade { level, class: ShadeClass::Permanent, .. } => Some((*level, Mass::from_g(*parts).ok()?)),
            _ => None,
        })
        .collect();
    let shade = blended_level(shades?).ok()?.value;
    let white = Share::from_percent(request.file.analysis.white_percent).ok()?;
    let blend = white_blend(task.from, shade, white, ProductKind::PermanentColour).ok()?;
    let artificial = request.file.analysis.existing.iter().any(|e| e.artificial && e.zone == task.zone);
    let canvas = if artificial { Canvas::Coloured } else { Canvas::Natural };
    let needed = formula_level(task.from, target, ProductKind::PermanentColour, canvas, Scale::European10);
    Some(LevelRule {
        shade_level: shade.number(),
        white_level: blend.value.white_part.number(),
        pigmented_level: blend.value.pigmented_part.number(),
        shade_for_target: needed.map_or_else(|why| why.to_string(), |level| level.value.number().to_string()),
        source: blend.citation.map(ToString::to_string).unwrap_or_default(),
    })
}
