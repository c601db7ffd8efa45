use crate::{
    service::{Bowl, Mix, Plan, Stage},
    text::{Sheet, number},
};

/// What to weigh, mix by mix.
pub(super) fn mixes(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("What to weigh");
    for (i, mix) in plan.mixes.iter().enumerate() {
        if i > 0 {
            sheet.blank();
        }
        one(sheet, i + 1, mix);
    }
}

fn one(sheet: &mut Sheet, place: usize, mix: &Mix) {
    let stage = if mix.stage == Stage::Section { "" } else { ", after rinsing" };
    let parts = mix.ratio.as_ref().map_or("no developer".to_owned(), |ratio| format!("{ratio} parts"));
    let needed = mix.needed_g.words(0);
    sheet.paragraph(&format!("{place}. {}{stage}: {parts}, {needed} g needed [{}]", mix.name, mix.needed_basis), 3);
    for bowl in &mix.bowls {
        weigh(sheet, bowl);
    }
    let strength = format!(
        "   developer {} % w/w before mixing; ON THE HAIR {} % w/w [{}]",
        mix.developer_ww_percent.words(2),
        mix.on_hair_ww_percent.words(2),
        mix.strength_basis
    );
    sheet.paragraph(&strength, 3);
    if mix.leftover_g >= 0.5 {
        sheet.line(&format!("   left over: about {} g", number(mix.leftover_g, 0)));
    }
}

fn weigh(sheet: &mut Sheet, bowl: &Bowl) {
    let rows = bowl
        .parts
        .iter()
        .map(|part| {
            vec![
                String::new(),
                part.product.clone(),
                format!("{} g", number(part.weigh_g, 2)),
                format!("{} g", number(part.scale_shows_g, 2)),
                format!("{} g", number(part.exact_g, 2)),
            ]
        })
        .collect();
    sheet.table(&["  ", "into the tared bowl", "weigh", "scale shows", "exact"], &[2, 3, 4], rows);
    let mut words = match bowl.count {
        1 => format!("   one bowl of {} g", number(bowl.total_g, 2)),
        count => format!("   {count} fresh bowls of {} g each", number(bowl.total_g, 2)),
    };
    let times: Vec<_> = bowl.mix_at_min.iter().map(|at| number(*at, 0)).collect();
    words += &format!(", mixed at minute {}, used within {} min", times.join(", "), number(bowl.use_within_min, 0));
    if bowl.worst_ratio_error_percent >= 0.05 {
        words +=
            &format!("; rounding to the scale moves a part by up to {} %", number(bowl.worst_ratio_error_percent, 1));
    }
    sheet.paragraph(&words, 3);
}
