//! `foilwork worksheet`: problems for a class, with their key.

use super::{Outcome, args::WorksheetArgs, output, read, workbook};
use crate::{
    teach::{SheetHalf, WorksheetError, WorksheetRequest, worksheet},
    workbook::worksheet_workbook,
};

pub(super) fn run(args: &WorksheetArgs) -> Outcome {
    let topics = args.topics.iter().map(|word| read::option("--topics", word)).collect::<Result<_, _>>()?;
    let sheet = worksheet(&WorksheetRequest {
        seed: args.seed,
        topics,
        difficulty: args.difficulty.as_deref().map(|word| read::option("--difficulty", word)).transpose()?,
        count: args.count,
        currency: read::option("--currency", &args.currency)?,
    })
    .map_err(|error| match error {
        WorksheetError::Count { .. } => read::about("--count", error),
        _ => error.into(),
    })?;
    let half: SheetHalf = read::option("--half", &args.half)?;
    if let Some(path) = &args.xlsx {
        return workbook::deliver(path, &worksheet_workbook(&sheet, half)?, 0);
    }
    let text = match (args.json, args.csv, args.html) {
        (true, ..) => output::json(&sheet)?,
        (_, true, _) => sheet.csv(),
        (.., true) => sheet.html(half, args.choices),
        _ => sheet.text(half, args.choices),
    };
    output::deliver(text, 0, &args.output)
}
