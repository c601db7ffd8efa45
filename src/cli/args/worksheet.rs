use super::OutputArgs;
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[expect(clippy::struct_excessive_bools, reason = "each is a flag of its own")]
#[command(after_help = "Units: every problem says its own. The same seed and options give the same sheet.\n\
    Example: foilwork worksheet --topics dilution,ratio --count 6 --seed 12\n\
    Example: foilwork worksheet --topics price,tax --html --choices --output sheet.html")]
pub(crate) struct WorksheetArgs {
    /// What to practise, separated by commas: `peroxide-units`, `dilution`, `ratio`, `weighing`, `limits`, `level`, `pigment`,
    /// `hair`, `timing`, `costing`, `price`, `tax`, `break-even`; all of them when left out
    #[arg(long, value_name = "TOPICS", value_delimiter = ',')]
    pub(crate) topics: Vec<String>,
    /// How much is asked for: `gentle`, `steady` or `stretch`; mixed when left out
    #[arg(long, value_name = "DIFFICULTY")]
    pub(crate) difficulty: Option<String>,
    /// How many problems
    #[arg(long, value_name = "NUMBER", default_value_t = 10)]
    pub(crate) count: usize,
    /// Another number, another sheet
    #[arg(long, value_name = "NUMBER", default_value_t = 1, value_parser = seed)]
    pub(crate) seed: u64,
    /// ISO 4217 code of the prices
    #[arg(long, value_name = "CODE", default_value = "EUR")]
    pub(crate) currency: String,
    /// Answers to choose from; the key says which error leads to each wrong one
    #[arg(long)]
    pub(crate) choices: bool,
    /// What to write: `both`, `problems` or `key`
    #[arg(long, value_name = "HALF", default_value = "both", conflicts_with_all = ["json", "csv"])]
    pub(crate) half: String,
    /// A page (HTML) that prints with the key on a sheet of its own
    #[arg(long, conflicts_with_all = ["json", "csv"])]
    pub(crate) html: bool,
    /// A workbook with live formulas, written to this .xlsx file instead
    #[arg(long, value_name = "FILE", conflicts_with_all = ["json", "csv", "html", "choices", "output"])]
    pub(crate) xlsx: Option<PathBuf>,
    /// A table, a line for each problem
    #[arg(long, conflicts_with = "json")]
    pub(crate) csv: bool,
    /// Problems, answers, steps and mistakes as JSON
    #[arg(long)]
    pub(crate) json: bool,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: no quantities; each point names the published elements that it answers.\n\
    Example: foilwork checklist --units nz-12313,uk-a6008630 --html --output observation.html")]
pub(crate) struct ChecklistArgs {
    /// The units it is for, separated by commas: `au-shbhcls002`, `au-shbhcls004`, `au-shbhcls006`, `uk-skahdbr6`,
    /// `uk-skahdbr7`, `uk-d6001010`, `uk-a6008630`, `nz-12313`, `nz-2889`, `nz-19792`, `nz-28835`, `nz-28846`,
    /// `ca-red-seal-f`; all of them when left out
    #[arg(long, value_name = "UNITS", value_delimiter = ',')]
    pub(crate) units: Vec<String>,
    /// A page (HTML) to tick off, or to print and write on
    #[arg(long, conflicts_with_all = ["json", "csv"])]
    pub(crate) html: bool,
    /// A table, a line for each point and element
    #[arg(long, conflicts_with = "json")]
    pub(crate) csv: bool,
    /// Points and elements as JSON
    #[arg(long)]
    pub(crate) json: bool,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

fn seed(text: &str) -> Result<u64, String> {
    text.parse().map_err(|_| format!("write a whole number from 0 to {}", u64::MAX))
}
