use super::{
    BLOCKED, Outcome,
    args::PlanArgs,
    output,
    shop::{located, read_shape},
};
use crate::{
    reader::{Format, Problems},
    service, sheet,
};
use std::path::Path;

/// `foilwork plan`: the bench sheet, the mixing cards, or either as JSON.
pub(super) fn run(args: &PlanArgs) -> Outcome {
    let text = output::read(&args.file)?;
    let name = args.file.to_string_lossy();
    let format = Format::of(&name, &text);
    let problems = |problems: Problems| located(&name, &problems.located(&text, format));
    let file = match service::shop_file(&text, format) {
        // The path is meant from the folder of the file that names it.
        Some(path) => {
            let shop = read_shape(&args.file.parent().unwrap_or(Path::new("")).join(path))?;
            service::parse_with_shop(&text, format, &shop)
        }
        None => service::parse(&text, format),
    };
    let plan = file.and_then(|file| service::plan(&file)).map_err(problems)?;
    let text = match (args.cards, args.json) {
        (false, false) => sheet::bench_sheet(&plan),
        (false, true) => output::json(&plan)?,
        (true, false) => sheet::card_sheet(&service::mixing_cards(&plan)),
        (true, true) => output::json(&service::mixing_cards(&plan))?,
    };
    output::deliver(text, if plan.blocked { BLOCKED } else { 0 }, &args.output)
}
