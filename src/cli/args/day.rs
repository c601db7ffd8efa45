use super::{ReportArgs, TrailArgs};
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(
    after_help = "Units: minutes from the first work on the guest. The table salon of the file says what the salon has.\n\
    Several files: the guests share people and basins of the first.\n\
    Example: foilwork day examples/soft-gradient.toml\n\
    Example: foilwork day examples/soft-gradient.toml --people 2 --svg --output day.svg\n\
    Example: foilwork day examples/soft-gradient.toml --log examples/soft-gradient.jsonl"
)]
pub(crate) struct DayArgs {
    /// Service files, TOML or JSON (told by what is in them); `-` reads the standard input
    #[arg(required = true)]
    pub(crate) files: Vec<PathBuf>,
    /// Pairs of hands, instead of those of the file
    #[arg(long, value_name = "PEOPLE", value_parser = clap::value_parser!(u32).range(1..=8))]
    pub(crate) people: Option<u32>,
    /// Basins, instead of those of the file
    #[arg(long, value_name = "BASINS", value_parser = clap::value_parser!(u32).range(1..=20))]
    pub(crate) basins: Option<u32>,
    /// The log of the service, written by the command note: what is left from there
    #[arg(long, value_name = "FILE", conflicts_with_all = ["svg", "trail"])]
    pub(crate) log: Option<PathBuf>,
    /// The timeline as a picture (SVG)
    #[arg(long, conflicts_with_all = ["json", "trail"])]
    pub(crate) svg: bool,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
