//! The pictures of a plan.

use super::writing::Writing;
use crate::{
    chart::{
        CostChart, DayChart, HeadChart, LookChart, SwatchStrip, cost_chart, day_chart, head_chart, head_text,
        look_chart, swatch_strip,
    },
    quantity::Duration,
    service::{Plan, SectionColour, SectionLift},
};

/// The map of the head with the foils numbered in the order of the work; none where no section says where it lies.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, sheet::head_map};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// assert!(head_map(&plan).is_some_and(|svg| svg.contains("nape")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn head_map(plan: &Plan) -> Option<String> {
    map(plan, head_chart)
}

/// The same map for a terminal.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, sheet::head_map_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// assert!(head_map_text(&plan).is_some_and(|text| text.contains("I back: L* ") && text.contains("; nape, foils 4-12")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn head_map_text(plan: &Plan) -> Option<String> {
    map(plan, head_text)
}

fn map(plan: &Plan, draw: fn(&HeadChart<'_>) -> String) -> Option<String> {
    let reading = plan.head.look.as_ref()?;
    let (template, looks, mut written) = (&reading.template, &reading.look.regions, reading.written());
    // Behind which of the light foils darker strands go.
    for place in plan.head.sections.iter().flat_map(|section| &section.lowlight_places) {
        let at = looks.iter().position(|look| place.region.as_ref() == Some(&look.region));
        if let Some(lines) = at.and_then(|at| written.get_mut(at)) {
            let behind: Vec<String> = place.behind_foils.iter().map(u32::to_string).collect();
            lines.push(format!("lowlights behind {}", behind.join(", ")));
        }
    }
    Some(draw(&HeadChart { title: &plan.title, template, looks, written: &written }))
}

/// Now, exposed and at the end.
pub(super) fn swatches(section: &SectionColour) -> String {
    let mut shown = vec![("now", &section.natural)];
    shown.extend(section.exposed_swatch.as_ref().map(|swatch| ("exposed", swatch)));
    if section.exposed_swatch.as_ref() != Some(&section.swatch) {
        shown.push((if section.toner.is_some() { "toned" } else { "at the end" }, &section.swatch));
    }
    swatch_strip(&SwatchStrip { title: &section.section, swatches: &shown })
}

/// What to expect at each look, and at the rinse.
pub(super) fn looks(section: &SectionLift) -> String {
    let mut looks: Vec<(Duration, _)> = section.looks.iter().map(|look| (look.on_hair, look.level)).collect();
    if looks.last().is_none_or(|(time, _)| *time < section.limit) {
        looks.push((section.limit, section.first_strand));
    }
    let (start, target) = (section.from_level, section.target_level);
    look_chart(&LookChart { title: &section.section, start, target, looks: &looks })
}

/// Hands, looks and basin on the clock, in the order of the sheet where hands allow it, else in the best order.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, sheet::day_picture};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// assert!(day_picture(&plan).is_some_and(|svg| svg.contains("hands 1")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn day_picture(plan: &Plan) -> Option<String> {
    let day = plan.day.as_ref()?;
    let (title, timeline) = match (&day.as_planned, &day.proposed) {
        (Some(planned), _) => ("The order of this sheet", planned),
        (None, Some(best)) => ("The best order", best),
        (None, None) => return None,
    };
    Some(day_chart(&DayChart { title, timeline }))
}

/// What the service costs, kind by kind, as a picture; none without prices.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::plan_text, sheet::cost_picture};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// assert!(cost_picture(&plan, "Cost").is_some_and(|svg| svg.contains("labour")));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn cost_picture(plan: &Plan, title: &str) -> Option<String> {
    let money = plan.money.as_ref().filter(|money| money.cost.total().minor() > 0)?;
    let left_out: Vec<String> = money.left_out.iter().map(ToString::to_string).collect();
    Some(cost_chart(&CostChart {
        title,
        table: &money.cost,
        left_out: &left_out,
        style: Writing::of(plan.habits).style(),
    }))
}
