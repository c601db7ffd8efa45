//! `foilwork checklist`: what to watch for in practical work, mapped to published units.

use super::{Outcome, args::ChecklistArgs, output, read};
use crate::teach::{TrainingUnit, checklist};

pub(super) fn run(args: &ChecklistArgs) -> Outcome {
    let units =
        args.units.iter().map(|word| read::option("--units", word)).collect::<Result<Vec<TrainingUnit>, _>>()?;
    let list = checklist(&units);
    let text = match (args.json, args.csv, args.html) {
        (true, ..) => output::json(&list)?,
        (_, true, _) => list.csv(),
        (.., true) => list.html(),
        _ => list.text(),
    };
    output::deliver(text, 0, &args.output)
}
