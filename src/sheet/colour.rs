use super::{looks::looks, writing::Writing};
use crate::{
    colour::{Level, LevelChange, UnderlyingPigment},
    service::{Contrast, FirstStep, Mix, PartKind, Plan, SectionColour},
    source::Interval,
    text::{Sheet, number, span},
};

/// Level and tone, section by section.
pub(super) fn colour(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Level and tone, section by section");
    let row = |section: &SectionColour| {
        let mix = plan.mixes.iter().find(|mix| mix.name == section.section);
        let pigment = section.exposed.as_ref().map(|pigment| &pigment.value);
        let dash = || "-".to_owned();
        let first = before(plan, section);
        vec![
            section.section.clone(),
            mix.map(with).unwrap_or_default(),
            format!("{} to {}", levels(section.from_level), number(section.target_level.number(), 1)),
            match first {
                Some(step) if step.cleans_first() => "after cleaning".to_owned(),
                Some(_) => format!("{} first", change(section.change_levels)),
                None => change(section.change_levels),
            },
            pigment.map_or_else(dash, exposed),
            pigment.and_then(neutralised_by).unwrap_or_else(dash),
            section.target_tone.clone().unwrap_or_else(dash),
        ]
    };
    let rows = plan.colour.iter().map(row).collect();
    sheet.table(&["section", "with", "level", "levels", "exposes", "neutraliser", "wanted"], &[], rows);
    let shown = plan.colour.iter().flat_map(|section| [section.from_level.best(), section.target_level]);
    if let Some(names) = Writing::of(plan.habits).level_names(shown) {
        sheet.blank();
        sheet.paragraph(&names, 0);
    }
    if !plan.contrasts.is_empty() {
        let at_the_end = |name: &str| plan.colour.iter().find(|section| section.section == name).map(|one| one.swatch);
        let pair = |Contrast { first, second, ciede2000 }: &Contrast| {
            let swatches = at_the_end(first).zip(at_the_end(second));
            let apart = swatches.map_or(Interval::exact(*ciede2000), |(one, other)| one.difference_bounds(&other));
            format!("{first} / {second} {}", span(&apart, |apart| number(apart, 1)))
        };
        let pairs: Vec<_> = plan.contrasts.iter().map(pair).collect();
        sheet.blank();
        sheet.paragraph(&format!("Contrast by the colour model (CIEDE2000): {}.", pairs.join("; ")), 0);
    }
    for section in &plan.colour {
        let first = before(plan, section);
        if first.is_some_and(FirstStep::cleans_first) {
            let text = format!(
                "{}: cleaned before the colour: what cleaning leaves decides which shade it needs; judge the level anew and \
                 work from that.",
                section.section
            );
            sheet.blank();
            sheet.paragraph(&text, 0);
        }
        let Some(rule) = &section.level_rule else { continue };
        sheet.blank();
        let after =
            first.map(|_| format!("after the step before, from level {}, ", number(section.target_level.number(), 1)));
        let text = format!(
            "{}: {}by the level rules the shade (level {}) leaves white hair at about {} and pigmented hair at about {}; for \
             the target the rules ask for: {}. Lighter than natural hair the result is the mean of natural and shade, \
             darker the shade's own level. Rules of thumb; the strand decides.",
            section.section,
            after.unwrap_or_default(),
            number(rule.shade_level.number(), 1),
            number(rule.white_hair_level.number(), 1),
            levels(rule.pigmented_hair_level),
            match (rule.shade_for_target_level, &rule.no_shade_for_target) {
                (Some(level), _) => levels(level),
                (None, why) => why.clone().unwrap_or_default(),
            }
        );
        sheet.paragraph(&text, 0);
    }
    if plan.colour.iter().any(|section| section.exposed.is_some()) {
        sheet.blank();
        sheet.paragraph("Exposed pigment and its neutralising tone: common practice, hue by hue; read the strand.", 0);
    }
    looks(sheet, plan);
}

/// The planned step that lightens or cleans the hair of a section before its colour; lightening has the last word on its level.
fn before<'p>(plan: &'p Plan, section: &SectionColour) -> Option<&'p FirstStep> {
    let own = || plan.first_steps.iter().filter(|step| step.section == section.section);
    own().find(|step| step.lightens_first()).or_else(|| own().find(|step| step.cleans_first()))
}

/// The products of a mix and what they are mixed with.
fn with(mix: &Mix) -> String {
    let products: Vec<&str> = mix.products().map(|part| part.product.as_str()).collect();
    let oxidant: Vec<_> = mix.oxidant().collect();
    let products = products.join(" + ");
    match oxidant.as_slice() {
        [] => products,
        [bottle] if bottle.kind == PartKind::Developer => format!("{products}, {}", bottle.product),
        _ => format!("{products}, {} % w/w blended", number(mix.developer.best().ww_percent(), 2)),
    }
}

fn levels(levels: Interval<Level>) -> String {
    span(&levels, |level| number(level.number(), 1))
}

fn change(change: Interval<LevelChange>) -> String {
    let words = |change: LevelChange| number(change.levels(), 1);
    if change.best().is_deposit() {
        format!("deposit {}", span(&change.map(|change| -change), words))
    } else {
        format!("lift {}", span(&change, words))
    }
}

fn exposed(pigment: &UnderlyingPigment) -> String {
    from_to(pigment.words)
}

fn neutralised_by(pigment: &UnderlyingPigment) -> Option<String> {
    pigment.neutraliser.map(|(a, b)| from_to((a.words(), b.words())))
}

/// `orange` for a whole level, `orange to yellow-orange` between two.
fn from_to((darker, lighter): (&str, &str)) -> String {
    if darker == lighter { darker.to_owned() } else { format!("{darker} to {lighter}") }
}
