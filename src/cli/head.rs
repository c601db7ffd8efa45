//! `foilwork head`: hair, foils and the look of the head in a service file, as text, data or a map.

use super::{BLOCKED, Outcome, Refusal, args::HeadArgs, output, plan};
use crate::{
    chart::{HeadChart, head_chart},
    head::RegionLook,
    service::{Plan, SectionPlan},
    sheet::{self, SheetPart},
};

pub(super) fn run(args: &HeadArgs) -> Outcome {
    let plan = plan::made(&args.file, &[])?;
    let text = match (args.svg, args.report.json) {
        (true, _) => map(&plan)?,
        (false, true) => output::json(&plan.head)?,
        (false, false) => sheet::bench_sheet_of(&plan, &[SheetPart::Head]),
    };
    output::deliver(text, if plan.blocked { BLOCKED } else { 0 }, &args.report.output)
}

fn map(plan: &Plan) -> Result<String, Refusal> {
    let Some(reading) = &plan.head.look else {
        let way_out = "no section says where it lies: name its `regions`, for example [{ name = \"crown\" }]";
        return Err(Refusal(format!("--svg: {way_out}")));
    };
    let here = |look: &RegionLook| -> Vec<String> {
        let names = reading.places.iter().filter(|place| place.region == look.region).map(|place| &place.section);
        let sections = names.filter_map(|name| plan.head.sections.iter().find(|section| section.section == *name));
        sections.flat_map(numbered).collect()
    };
    let written: Vec<Vec<String>> = reading.look.regions.iter().map(here).collect();
    let looks = &reading.look.regions;
    Ok(head_chart(&HeadChart { title: &plan.title, template: &reading.template, looks, written: &written }))
}

/// A section with the numbers of its foils, in the order of the work.
fn numbered(section: &SectionPlan) -> Vec<String> {
    let foils = section.first_foil.zip(section.last_foil);
    let numbers = foils.map(|(first, last)| format!("foils {first}-{last}"));
    [section.section.clone()].into_iter().chain(numbers).collect()
}
