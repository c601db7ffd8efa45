//! `foilwork checklist`: what to watch for in practical work, mapped to published units.

use super::{Outcome, Refusal, args::ChecklistArgs, output};
use crate::{
    choice::Choice,
    teach::{TrainingUnit, checklist},
    text::list,
};

pub(super) fn run(args: &ChecklistArgs) -> Outcome {
    let units = args.units.iter().map(|word| unit(word)).collect::<Result<Vec<_>, _>>()?;
    let list = checklist(&units);
    let text = match (args.json, args.csv, args.html) {
        (true, ..) => output::json(&list)?,
        (_, true, _) => list.csv(),
        (.., true) => list.html(),
        _ => list.text(),
    };
    output::deliver(text, 0, &args.output)
}

/// A unit by its code; a wrong one is told which there are, of its country where that is said.
fn unit(word: &str) -> Result<TrainingUnit, Refusal> {
    word.parse().map_err(|_| {
        let country = word.trim().to_lowercase().split_once('-').map(|(country, _)| format!("{country}-"));
        let there: Vec<&str> = TrainingUnit::CODES.to_vec();
        let own: Vec<&str> =
            there.iter().filter(|code| country.as_ref().is_some_and(|of| code.starts_with(of))).copied().collect();
        let units = list(if own.is_empty() { &there } else { &own }, "or");
        Refusal(format!("--units: unknown unit {word:?} (give {units})"))
    })
}
