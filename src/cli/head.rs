//! `foilwork head`: hair, foils and the look of the head in a service file, as text, data or a map.

use super::{BLOCKED, Outcome, Refusal, args::HeadArgs, output, plan};
use crate::{
    service::Plan,
    sheet::{self, SheetPart},
};

pub(super) fn run(args: &HeadArgs) -> Outcome {
    let plan = plan::made(&args.file)?;
    if args.trail.trail {
        let status = if plan.blocked { BLOCKED } else { 0 };
        return output::deliver(output::trail(&plan.trail_of_head(), args.report.json)?, status, &args.report.output);
    }
    let text = match (args.svg, args.report.json) {
        (true, _) => map(&plan)?,
        (false, true) => output::json(&plan.head)?,
        (false, false) => {
            let part = sheet::bench_sheet_of(&plan, &[SheetPart::Head]);
            [Some(part), sheet::head_map_text(&plan)].into_iter().flatten().collect::<Vec<_>>().join("\n")
        }
    };
    output::deliver(text, if plan.blocked { BLOCKED } else { 0 }, &args.report.output)
}

fn map(plan: &Plan) -> Result<String, Refusal> {
    let way_out = "no section says where it lies: name its `regions`, for example [{ name = \"crown\" }]";
    sheet::head_map(plan).ok_or_else(|| Refusal(format!("--svg: {way_out}")))
}
