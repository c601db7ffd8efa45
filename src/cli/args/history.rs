use super::{OutputArgs, ReportArgs, TrailArgs};
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = "Units: g, min, weeks, levels. Intervals hold 80 of 100 cases; a single figure has none.\n\
    Records are kept by the command record with its option for it; of a folder every .jsonl and .csv file is read, logs and strand books apart.\n\
    Example: foilwork history examples/juniper_and_tide_records.jsonl --by colourist\n\
    Example: foilwork history examples/juniper_and_tide_records.jsonl --csv --output records.csv")]
pub(crate) struct HistoryArgs {
    /// Files of records, or folders that hold them
    #[arg(required = true)]
    pub(crate) paths: Vec<PathBuf>,
    /// What to put together: `all`, `service`, `colourist` or `month`
    #[arg(long, value_name = "WORD", default_value = "service")]
    pub(crate) by: String,
    /// Only the records of this guest, with their formulas, as a consultation takes them
    #[arg(long, value_name = "CODE")]
    pub(crate) guest: Option<String>,
    /// The records themselves as a table, a row for each section
    #[arg(long, conflicts_with_all = ["json", "trail"])]
    pub(crate) csv: bool,
    /// Write what the records say of lift into this new file, as a strand book
    #[arg(long, value_name = "FILE")]
    pub(crate) strands: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(
    after_help = "Units: none. Each file is written beside the old one and renamed over it; every other line stays byte for byte.\n\
    Files that hold the code but are no lists of guests are named, not changed.\n\
    Example: foilwork forget juniper_and_tide_records.jsonl --guest J-088 --look"
)]
pub(crate) struct ForgetArgs {
    /// Files of records and strand books, or folders that hold them
    #[arg(required = true)]
    pub(crate) paths: Vec<PathBuf>,
    /// The code of the guest
    #[arg(long, value_name = "CODE")]
    pub(crate) guest: String,
    /// Only say what would be removed
    #[arg(long)]
    pub(crate) look: bool,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}
