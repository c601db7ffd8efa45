use super::{BLOCKED, Outcome, Refusal, args::PlanArgs, output};
use crate::{
    service::{self, Format},
    sheet,
};

/// `foilwork plan`: the bench sheet, or the plan as JSON.
pub(super) fn run(args: &PlanArgs) -> Outcome {
    let text = output::read(&args.file)?;
    let name = args.file.to_string_lossy();
    let located = |problems: service::Problems| {
        let lines = problems.0.iter().map(|problem| format!("{name}: {problem}"));
        Refusal(lines.collect::<Vec<_>>().join("\n"))
    };
    let plan = service::plan_text(&text, Format::of_name(&name)).map_err(located)?;
    let text = if args.json { serde_json::to_string_pretty(&plan)? + "\n" } else { sheet::bench_sheet(&plan) };
    output::deliver(text, if plan.is_blocked() { BLOCKED } else { 0 }, &args.output)
}
