use super::{first, writing::Writing};
use crate::{
    quantity::Mass,
    service::{Bowl, Mix, Plan, Step, WorkStage},
    text::{Sheet, amount, number, range},
};

/// What to weigh, mix by mix.
pub(super) fn mixes(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("What to weigh");
    first::weigh(sheet, plan);
    for (mix, step) in plan.mixes.iter().zip(&plan.order) {
        if step.number > 1 {
            sheet.blank();
        }
        one(sheet, step, mix, Writing::of(plan.habits));
    }
}

fn one(sheet: &mut Sheet, step: &Step, mix: &Mix, writing: Writing) {
    let stage = if mix.stage == WorkStage::Section { "" } else { ", after rinsing" };
    let parts = mix.ratio.as_ref().map_or("no developer".to_owned(), |ratio| format!("{ratio} parts"));
    let needed = range(&mix.needed, 0);
    let head = format!("{}. {}{stage}: {parts}, {needed} g needed [{}]", step.number, mix.name, mix.needed_basis);
    sheet.paragraph(&head, 3);
    for bowl in &mix.bowls {
        weigh(sheet, bowl, step, writing);
    }
    let strength = format!(
        "   developer {} % w/w{} before mixing; ON THE HAIR {} % w/w [{}]",
        range(&mix.developer, mix.decimals()),
        writing.label(&mix.developer),
        range(&mix.on_hair, mix.decimals()),
        mix.strength_basis
    );
    sheet.paragraph(&strength, 3);
    if mix.leftover.g() > 0.5 {
        sheet.line(&format!("   left over: about {} g", amount(mix.leftover, 0)));
    }
}

fn weigh(sheet: &mut Sheet, bowl: &Bowl, step: &Step, writing: Writing) {
    let grams = |mass| format!("{} g", amount::<Mass>(mass, 2));
    let rows = bowl.parts.iter().map(|part| {
        vec![String::new(), part.product.clone(), writing.grams(part.weigh), grams(part.scale_shows), grams(part.exact)]
    });
    sheet.table(&["  ", "into the tared bowl", "weigh", "scale shows", "exact"], &[2, 3, 4], rows.collect());
    let mut words = match bowl.count {
        1 => format!("   one bowl of {}", grams(bowl.total)),
        count => format!("   {count} fresh bowls of {} each", grams(bowl.total)),
    };
    let times: Vec<_> = step.mix_at.iter().map(|at| amount(*at, 0)).collect();
    words += &format!(", mixed at minute {}, used within {} min", times.join(", "), amount(bowl.use_within, 0));
    if bowl.worst_ratio_error_percent >= 0.05 {
        words +=
            &format!("; rounding to the scale moves a part by up to {} %", number(bowl.worst_ratio_error_percent, 1));
    }
    sheet.paragraph(&words, 3);
}
