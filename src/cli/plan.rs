use super::{BLOCKED, Outcome, Refusal, args::PlanArgs, output};
use crate::{
    reader::{Format, Problems},
    service, sheet,
};

/// `foilwork plan`: the bench sheet, the mixing cards, or either as JSON.
pub(super) fn run(args: &PlanArgs) -> Outcome {
    let text = output::read(&args.file)?;
    let name = args.file.to_string_lossy();
    let located = |problems: Problems| {
        let lines = problems.0.iter().map(|problem| format!("{name}: {problem}"));
        Refusal(lines.collect::<Vec<_>>().join("\n"))
    };
    let plan = service::plan_text(&text, Format::of_name(&name)).map_err(located)?;
    let text = match (args.cards, args.json) {
        (false, false) => sheet::bench_sheet(&plan),
        (false, true) => serde_json::to_string_pretty(&plan)? + "\n",
        (true, false) => sheet::card_sheet(&service::mixing_cards(&plan)),
        (true, true) => serde_json::to_string_pretty(&service::mixing_cards(&plan))? + "\n",
    };
    output::deliver(text, if plan.blocked { BLOCKED } else { 0 }, &args.output)
}
