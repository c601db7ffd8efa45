use super::rule::Rule;
use crate::{
    cli::{
        args::{Command, FillRule},
        run::parse,
    },
    peroxide::cautions,
    quantity::MassFraction,
    source::Interval,
    text::wrapped,
};
use std::{ffi::OsString, path::PathBuf};

/// What the words of `foilwork fill` ask for, for a program around this one that reads tables which this one does not.
#[derive(Debug, Clone, PartialEq)]
pub struct FillWords {
    /// `convert`, `dilute`, `density` or `lift`.
    pub rule: &'static str,
    /// The table.
    pub table: PathBuf,
    /// Where it goes with its new columns.
    pub output: PathBuf,
    /// Where the rows go that cannot be.
    pub refused: Option<PathBuf>,
    /// Whether texts are guarded from which a spreadsheet would calculate.
    pub guard: bool,
    /// The option of each value, and what was given: the name of a column, or a number for all rows.
    pub inputs: Vec<(&'static str, String)>,
    /// The names of the new columns.
    pub results: Vec<String>,
    /// How many of the values, from the first, are strengths in % w/w of what a row tells to pour.
    pub poured: usize,
    /// Further words of the rule, by their option: units and conditions.
    pub further: Vec<(&'static str, String)>,
}

/// Reads the words of a command (the first is the program's name) without doing what they ask for.
///
/// None unless they are those of a `fill` that [`run`](crate::cli::run()) would begin: it says what is wrong with them.
///
/// # Example
///
/// ```
/// let words = ["foilwork", "fill", "lift", "heads.parquet", "--from", "level", "--target", "9", "--output", "lift.parquet"];
/// let words = foilwork::cli::fill_words(words.map(Into::into).to_vec()).ok_or("no words of fill")?;
/// assert_eq!((words.rule, words.results), ("lift", vec!["lift_levels".to_owned()]));
/// assert_eq!(words.inputs, [("--from", "level".to_owned()), ("--target", "9".to_owned())]);
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub fn fill_words(args: Vec<OsString>) -> Option<FillWords> {
    let Command::Fill(args) = parse(args).ok()?.command else { return None };
    let rule = Rule::of(&args.rule).ok()?;
    let mut further = Vec::new();
    let name = match &args.rule {
        FillRule::Convert(args) => {
            let conditions = &args.conditions;
            further.extend([("--from", args.from.clone()), ("--to", args.to.clone())]);
            further.push(("--temperature", conditions.temperature.to_string()));
            further.extend(conditions.density.map(|density| ("--density", density.to_string())));
            further.extend(conditions.cream.then(|| ("--cream", String::new())));
            further.extend(conditions.molar_volume.clone().map(|which| ("--molar-volume", which)));
            "convert"
        }
        FillRule::Dilute(_) => "dilute",
        FillRule::Density(_) => "density",
        FillRule::Lift(_) => "lift",
    };
    Some(FillWords {
        rule: name,
        table: rule.file.table.clone(),
        output: rule.file.output.clone(),
        refused: rule.file.refused.clone(),
        guard: rule.file.guard,
        inputs: rule.inputs.iter().map(|(option, value)| (*option, (*value).to_owned())).collect(),
        results: rule.results,
        poured: rule.poured,
        further,
    })
}

/// What `foilwork fill` says of the strongest peroxide that a table tells to pour, line by line; nothing of none.
///
/// # Example
///
/// ```
/// use foilwork::{cli::poured_cautions, quantity::MassFraction};
///
/// let lines = poured_cautions(MassFraction::from_ww_percent(12.0)?);
/// assert!(lines.iter().any(|line| line.contains("Never close the container")));
/// # Ok::<(), foilwork::quantity::InvalidQuantity>(())
/// ```
#[must_use]
pub fn poured_cautions(strongest: MassFraction) -> Vec<String> {
    cautions(Interval::exact(strongest)).iter().flat_map(|paragraph| wrapped(paragraph)).collect()
}
