//! Hands, looks and basin on the clock.

use super::writing::Writing;
use crate::{
    day::{FoilGroup, Piece, PieceKind, SECTIONS_AT_MOST, SectionTimes, Timeline},
    quantity::Duration,
    service::{DayPlan, OrderedBy, Plan},
    text::{Sheet, amount, count, list, whole_minutes},
};

/// Who does what when, in full: the order proposed, the sheet's own, every piece of work.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{parse, plan}, sheet::day_sheet};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let text = day_sheet(&plan(&file)?);
/// assert!(text.contains("PIECE BY PIECE") && text.lines().all(|line| line.chars().count() <= 80));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn day_sheet(plan: &Plan) -> String {
    let mut sheet = Sheet::default();
    sheet.title(&format!("THE DAY  {}", plan.title));
    super::checks::stops(&mut sheet, plan);
    day(&mut sheet, plan);
    if let Some(best) = plan.day.as_ref().and_then(|day| day.proposed.as_ref()) {
        sheet.heading("Piece by piece");
        pieces(&mut sheet, best);
    }
    if let Some(toning) = plan.day.as_ref().and_then(|day| day.after_rinse.as_ref()) {
        sheet.heading("After the rinse, piece by piece, counted anew");
        pieces(&mut sheet, toning);
    }
    sheet.finish()
}

/// The day as a part of the bench sheet.
pub(super) fn day(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Hands, looks and basin, in minutes from the first work");
    let Some(day) = &plan.day else {
        sheet.line(&format!("Not arranged: more than {SECTIONS_AT_MOST} sections."));
        return;
    };
    if plan.chair.first_steps > Duration::ZERO {
        let steps =
            format!("Counted from the end of the steps before the colour, {} min.", amount(plan.chair.first_steps, 0));
        sheet.paragraph(&steps, 0);
    }
    match (&day.proposed, &day.proposed_why_not) {
        (Some(best), _) => {
            times(sheet, best);
            sheet.blank();
            for line in summary(plan, day, best) {
                sheet.paragraph(&line, 0);
            }
        }
        (None, why) => sheet.paragraph(&format!("No order: {}.", why.as_deref().unwrap_or("unknown")), 0),
    }
    if let Some(toning) = &day.after_rinse {
        sheet.blank();
        sheet.line("After the last of these rinses, counted anew:");
        times(sheet, toning);
    }
    sheet.blank();
    for left in &day.left_out {
        sheet.paragraph(&format!("Left out: {left}."), 0);
    }
    let floor = day.floor;
    let text = format!(
        "Counted with {}, {} min for a bowl, {} min for a look over all that is on, {} min to the basin and {} min to rinse a \
         section. Hands begin \
         what they can, unless something has to be rinsed first. Rinse a strand when it is there, not when the clock says so.",
        count(floor.people as usize, "pair of hands", "pairs of hands"),
        amount(floor.mix, 1),
        amount(floor.look, 1),
        amount(floor.walk, 1),
        amount(floor.rinse, 1)
    );
    sheet.paragraph(&text, 0);
}

/// When each section is mixed, put on, looked at and rinsed.
pub(crate) fn times(sheet: &mut Sheet, timeline: &Timeline) {
    let many = |times: &[Duration]| times.iter().map(|at| whole_minutes(*at)).collect::<Vec<_>>().join(" ");
    let row = |(i, one): (usize, &SectionTimes)| {
        vec![
            (i + 1).to_string(),
            one.name.clone(),
            many(&one.mix_at),
            whole_minutes(one.start),
            whole_minutes(one.applied),
            many(&one.looks),
            whole_minutes(one.rinse),
            amount(one.on_hair, 0),
        ]
    };
    let names = ["#", "what", "mix", "start", "all on", "look", "rinse", "on hair"];
    sheet.table(&names, &[0, 3, 4, 6, 7], timeline.sections.iter().enumerate().map(row).collect());
}

/// How good a finish is; `nothing_beats` is its bound in words. Where rules are kept, [`kept`] names them.
pub(crate) fn proof(timeline: &Timeline, rules: &[OrderedBy], nothing_beats: &str) -> String {
    match (timeline.proven, rules) {
        (false, _) => format!("the best found; nothing beats {nothing_beats}"),
        (true, []) => "the earliest there is".to_owned(),
        (true, _) => "the earliest that keeps to the rules below".to_owned(),
    }
}

/// The rules that an order keeps to, in words.
pub(crate) fn kept(rules: &[OrderedBy]) -> Option<String> {
    let one = |rule: &OrderedBy| {
        let rinsed = if rule.rinsed { " is rinsed" } else { "" };
        format!("{} after {}{rinsed} ({})", rule.then, rule.first, rule.rule)
    };
    let told: Vec<String> = rules.iter().map(one).collect();
    (!told.is_empty()).then(|| format!("It keeps to: {}.", told.join("; ")))
}

/// What the day comes to.
pub(super) fn summary(plan: &Plan, day: &DayPlan, best: &Timeline) -> Vec<String> {
    let min = |time: Duration| format!("{} min", amount(time, 0));
    let names = |timeline: &Timeline| {
        let names: Vec<&str> = timeline.sections.iter().map(|one| one.name.as_str()).collect();
        list(names, "then")
    };
    let proof = proof(best, &day.rules, &min(best.bound));
    let mut lines = vec![format!(
        "Best order: {}. All rinsed after {} ({proof}), at the basin {}, nobody works for {}.",
        names(best),
        min(best.finish),
        count(best.visits, "time", "times"),
        min(best.idle)
    )];
    lines.extend(kept(&day.rules));
    lines.push(match (&day.as_planned, &day.order_saves) {
        (Some(planned), _) if names(planned) == names(best) => "That is the order of this sheet.".to_owned(),
        (Some(planned), Some(saves)) => {
            let differs = match day.house_rules_cost {
                Some(cost) => format!(", {} earlier, for it breaks rules of the house", min(cost)),
                None if saves.min() <= 0.5 => ", no later".to_owned(),
                None => format!(", {} later", min(*saves)),
            };
            format!("The order of this sheet, {}: rinsed after {}{differs}.", names(planned), min(planned.finish))
        }
        _ => {
            format!("The order of this sheet: {}.", day.as_planned_why_not.as_deref().unwrap_or("it was not laid out"))
        }
    });
    if let Some(saves) = day.helper_saves {
        let hands = count(day.floor.people as usize + 1, "pair of hands", "pairs of hands");
        lines.push(if saves.min() <= 0.5 {
            format!("With {hands}: no earlier finish was found.")
        } else {
            format!("With {hands}: at least {} earlier.", min(saves))
        });
    }
    if let (Some(finish), Some(book)) = (day.finish, plan.booking.book) {
        let other = match plan.chair.other_work {
            Some(other) => format!("{} of other work", min(other)),
            None => "other work, for which the file states no `other_work_min`".to_owned(),
        };
        let until = plan
            .start
            .plus(plan.chair.first_steps + finish)
            .map(|at| format!(", at {}", Writing::of(plan.habits).time(at)));
        let what = if day.after_rinse.is_some() { "With toners" } else { "Through" };
        lines.push(format!(
            "{what} after {}{}; book {} ({other}, whole quarters of an hour).",
            min(finish),
            until.unwrap_or_default(),
            min(book)
        ));
        lines.push(format!(
            "That counts bowls, looks, walks and rinses, so none of them belongs to the other work. Cost and price count it so too: \
             {} in the chair, {} of hands.",
            min(plan.chair.total),
            min(plan.chair.hands_on)
        ));
    }
    if let Some(why) = &day.after_rinse_why_not {
        lines.push(format!("After the rinse no order, so that no finish is known and nothing to book: {why}."));
    }
    lines
}

/// Every piece of work.
pub(crate) fn pieces(sheet: &mut Sheet, timeline: &Timeline) {
    let row = |piece: &Piece| {
        let section = piece.section.and_then(|place| timeline.sections.iter().find(|one| one.section == place));
        let what = match (piece.kind, section) {
            (PieceKind::Walk, _) => "to the basin".to_owned(),
            (PieceKind::Look, _) | (_, None) => "all that is on".to_owned(),
            (_, Some(section)) => section.name.clone(),
        };
        let foils = match piece.foils {
            Some(FoilGroup { first, last }) if first == last => format!("foil {first}"),
            Some(FoilGroup { first, last }) => format!("foils {first}-{last}"),
            None => String::new(),
        };
        let span = format!("{} to {}", amount(piece.from, 1), amount(piece.to, 1));
        vec![span, format!("hands {}", piece.person + 1), piece.kind.to_string(), what, foils]
    };
    sheet.table(&["min", "who", "does", "what", ""], &[], timeline.pieces.iter().map(row).collect());
}
