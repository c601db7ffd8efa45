use super::{
    BLOCKED, Outcome, Refusal,
    args::PlanArgs,
    kind::{self, Kind},
    output, read,
    shop::read_shape,
};
use crate::{
    lift::read_strand_book,
    reader::{Format, Problems},
    service::{self, Evidence, Plan, ServiceFile},
    sheet::{self, SheetPart},
};
use std::path::Path;

/// `foilwork plan`: the bench sheet, the mixing cards, either as JSON, or a page.
pub(super) fn run(args: &PlanArgs) -> Outcome {
    let parts = parts(args)?;
    let plan = made(&args.file, &args.seen)?;
    let text = match (args.cards, args.json) {
        _ if args.trail && args.json => output::json(&plan.trail())?,
        _ if args.trail => sheet::trail_sheet(&plan.trail()),
        _ if args.html => sheet::bench_page(&plan),
        _ if args.guest => sheet::guest_page(&plan),
        (false, false) => sheet::bench_sheet_of(&plan, &parts),
        (false, true) => output::json(&plan)?,
        (true, false) => sheet::card_sheet(&service::mixing_cards(&plan), &plan.habits),
        (true, true) => output::json(&service::mixing_cards(&plan))?,
    };
    output::deliver(text, if plan.blocked { BLOCKED } else { 0 }, &args.output)
}

/// The plan of a service file, with its shop and its strand book.
pub(super) fn made(path: &Path, seen: &[String]) -> Result<Plan, Refusal> {
    made_with(path, seen, |_| ())
}

/// The same of a file in which something is changed first.
pub(super) fn made_with(path: &Path, seen: &[String], change: impl Fn(&mut ServiceFile)) -> Result<Plan, Refusal> {
    let text = output::read(path)?;
    let name = path.to_string_lossy();
    let format = Format::of(&name, &text);
    let problems = |problems: Problems| match problems.0.as_slice() {
        // Levels seen are of the command line, not of the file.
        [problem] if problem.field == "seen" => Refusal(format!("--seen: {}", problem.message)),
        _ => kind::refused(&name, &text, Kind::Service, &problems.located(&text, format)),
    };
    let file = match service::shop_file(&text, format) {
        // The path is meant from the folder of the file that names it.
        Some(named) => {
            let shop = read_shape(&path.parent().unwrap_or(Path::new("")).join(named))?;
            service::parse_with_shop(&text, format, &shop)
        }
        None => service::parse(&text, format),
    };
    let evidence = evidence(path, seen, &text, format)?;
    let changed = |mut file: ServiceFile| {
        change(&mut file);
        service::plan_with(&file, &evidence)
    };
    file.and_then(changed).map_err(problems)
}

/// The strand book that the file names, and the levels seen.
fn evidence(path: &Path, seen: &[String], text: &str, format: Format) -> Result<Evidence, Refusal> {
    let book = match service::strand_book(text, format) {
        Some(book) => Some(read_strand_book(&output::read_grown(&path.parent().unwrap_or(Path::new("")).join(book))?)),
        None => None,
    };
    let read =
        |text: &String| text.parse().map_err(|error: service::InvalidSeenLevel| Refusal(format!("--seen: {error}")));
    Ok(Evidence { book, seen: seen.iter().map(read).collect::<Result<_, Refusal>>()? })
}

/// The parts of the sheet that are asked for.
fn parts(args: &PlanArgs) -> Result<Vec<SheetPart>, Refusal> {
    let named = |option: &str, words: &[String]| {
        words.iter().map(|word| read::option(option, word)).collect::<Result<Vec<SheetPart>, _>>()
    };
    let (only, without) = (named("--only", &args.only)?, named("--without", &args.without)?);
    let all = SheetPart::ALL.iter().copied();
    Ok(match (args.short, only.is_empty()) {
        (true, _) => SheetPart::SHORT.to_vec(),
        (false, true) => all.filter(|part| !without.contains(part)).collect(),
        (false, false) => only,
    })
}
