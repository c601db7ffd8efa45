use super::first;
use crate::{
    quantity::Duration,
    service::{Plan, WorkStage},
    text::{Sheet, amount, whole_minutes},
};

/// The running order in minutes, as a timer counts them.
pub(super) fn order(sheet: &mut Sheet, plan: &Plan) {
    sheet.heading("Order, in minutes from the first brush");
    first::order(sheet, plan);
    let minutes = |list: &[Duration]| list.iter().map(|at| whole_minutes(*at)).collect::<Vec<_>>().join(" ");
    for (stage, note) in [(WorkStage::Section, ""), (WorkStage::Toner, "After rinsing, counted anew:")] {
        let steps: Vec<_> = plan
            .order
            .iter()
            .filter(|step| (step.stage == WorkStage::Section) == (stage == WorkStage::Section))
            .collect();
        if steps.is_empty() {
            continue;
        }
        if !note.is_empty() {
            sheet.blank();
            sheet.line(note);
        }
        let rows = steps
            .into_iter()
            .map(|step| {
                vec![
                    step.number.to_string(),
                    step.name.clone(),
                    format!("{} to {}", amount(step.begin, 0), amount(step.applied, 0)),
                    minutes(&step.look_at),
                    step.look_at_last.map_or_else(|| "-".to_owned(), whole_minutes),
                    whole_minutes(step.rinse_by),
                    whole_minutes(step.off_by),
                ]
            })
            .collect();
        sheet.table(&["#", "what", "apply", "look at", "last strand", "rinse", "latest"], &[0, 4, 5, 6], rows);
    }
    sheet.blank();
    sheet.paragraph(&format!("The order is {}.", plan.order_basis), 0);
    let text = "Times on the hair count from the first strand; from \"last strand\" on look at that one too. Rinse a \
                strand when it is there, not when the clock says so: \"rinse\" is planned, \"latest\" is the longest of its \
                products where all of them state theirs, and else as planned. One pair of hands is assumed.";
    sheet.paragraph(text, 0);
}
