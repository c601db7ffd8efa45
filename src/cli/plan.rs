use super::{
    BLOCKED, Outcome, Refusal,
    args::PlanArgs,
    kind::{self, Kind},
    output, read,
    shop::read_shape,
    workbook,
};
use crate::{
    history::{foil_pace, read_records},
    lift::{StrandBook, read_strand_book},
    reader::{Format, Problems},
    service::{self, Evidence, FoilPace, Plan, SeenLevel, ServiceFile},
    sheet::{self, SheetPart},
    shop::shape::ShopFile,
    workbook::plan_workbook,
};
use std::path::Path;

/// `foilwork plan`: the bench sheet, the mixing cards, either as JSON, or a page.
pub(super) fn run(args: &PlanArgs) -> Outcome {
    let parts = parts(args)?;
    let plan = Loaded::read(&args.file)?.plan(&seen(&args.seen)?, |_| ())?;
    let status = if plan.blocked { BLOCKED } else { 0 };
    if let Some(path) = &args.xlsx {
        let mut answer = workbook::deliver(path, &plan_workbook(&plan)?, status)?;
        if let Some(banner) = plan.banner() {
            answer.text.insert_str(0, &format!("{banner}\n"));
        }
        return Ok(answer);
    }
    let text = match (args.cards, args.json) {
        _ if args.trail && args.json => output::json(&plan.trail())?,
        _ if args.trail => crate::text::trail_text(&plan.trail()),
        _ if args.html => sheet::bench_page(&plan),
        _ if args.guest => sheet::guest_page(&plan),
        (false, false) => sheet::bench_sheet_of(&plan, &parts),
        (false, true) => output::json(&plan)?,
        (true, false) => sheet::card_sheet(&service::mixing_cards(&plan), &plan.habits),
        (true, true) => output::json(&service::mixing_cards(&plan))?,
    };
    output::deliver(text, status, &args.output)
}

/// The plan of a service file, with its shop and its strand book.
pub(super) fn made(path: &Path) -> Result<Plan, Refusal> {
    Loaded::read(path)?.plan(&[], |_| ())
}

/// A service file with its shop and its strand book, each read once.
pub(super) struct Loaded {
    name: String,
    text: String,
    shop: Option<ShopFile>,
    book: Option<StrandBook>,
    foil_pace: Option<FoilPace>,
}

impl Loaded {
    pub(super) fn read(path: &Path) -> Result<Self, Refusal> {
        let text = output::read(path)?;
        let name = path.to_string_lossy().into_owned();
        let format = Format::of(&name, &text);
        // Paths are meant from the folder of the file that names them.
        let beside = |named: &str| path.parent().unwrap_or(Path::new("")).join(named);
        let shop = service::shop_file(&text, format).map(|named| read_shape(&beside(&named))).transpose()?;
        let book = match service::strand_book(&text, format) {
            Some(book) => Some(read_strand_book(&output::read_grown(&beside(&book))?)),
            None => None,
        };
        let foil_pace = match service::records_named(&text, format) {
            Some((records, colourist)) => {
                let kept = read_records(&output::read_grown(&beside(&records))?);
                foil_pace(&kept.records, colourist.as_deref())
            }
            None => None,
        };
        Ok(Self { name, text, shop, book, foil_pace })
    }

    /// The plan with levels seen in mid-service, of a file in which something is changed first.
    pub(super) fn plan(&self, seen: &[SeenLevel], change: impl Fn(&mut ServiceFile)) -> Result<Plan, Refusal> {
        self.made(seen, |file, evidence| {
            let mut file = file.clone();
            change(&mut file);
            service::plan_with(&file, evidence)
        })
    }

    /// What is made of the file and of what is known beside it.
    pub(super) fn made<T>(
        &self,
        seen: &[SeenLevel],
        make: impl Fn(&ServiceFile, &Evidence) -> Result<T, Problems>,
    ) -> Result<T, Refusal> {
        let format = Format::of(&self.name, &self.text);
        let problems = |problems: Problems| match problems.0.as_slice() {
            // Levels seen are of the command line, not of the file.
            [problem] if problem.field == "seen" => Refusal(format!("--seen: {}", problem.message)),
            _ => kind::refused(&self.name, &self.text, Kind::Service, &problems.located(&self.text, format)),
        };
        let file = match &self.shop {
            Some(shop) => service::parse_with_shop(&self.text, format, shop),
            None => service::parse(&self.text, format),
        };
        let evidence = Evidence { book: self.book.clone(), seen: seen.to_vec(), foil_pace: self.foil_pace };
        file.and_then(|file| make(&file, &evidence)).map_err(problems)
    }
}

/// Levels as the option states them.
fn seen(texts: &[String]) -> Result<Vec<SeenLevel>, Refusal> {
    let read =
        |text: &String| text.parse().map_err(|error: service::InvalidSeenLevel| Refusal(format!("--seen: {error}")));
    texts.iter().map(read).collect()
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
