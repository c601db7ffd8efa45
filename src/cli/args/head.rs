use super::{ReportArgs, TrailArgs};
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = "Units: cm, g, weeks, L*. Sections say in `regions` where they lie.\n\
    Example: foilwork head examples/soft-gradient.toml --svg --output map.svg")]
pub(crate) struct HeadArgs {
    /// Service file, TOML or JSON (told by what is in it); `-` reads the standard input
    pub(crate) file: PathBuf,
    /// The map of the head as a picture (SVG), with the foils numbered in the order of the work
    #[arg(long, conflicts_with_all = ["json", "trail"])]
    pub(crate) svg: bool,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
