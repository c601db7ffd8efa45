use super::{ReportArgs, TrailArgs};
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = "Units: levels, weeks, min; days as year-month-day.\n\
    The decision is what the checks of the plan come to; no agreement lifts a stop.\n\
    Example: foilwork consult examples/staged-lightening.toml\n\
    Example: foilwork consult examples/staged-lightening.toml --agreement --output agreement.html")]
pub(crate) struct ConsultArgs {
    /// Service file, TOML or JSON (told by what is in it); `-` reads the standard input
    pub(crate) file: PathBuf,
    /// The page that the guest reads and signs
    #[arg(long, conflicts_with_all = ["json", "trail"])]
    pub(crate) agreement: bool,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
