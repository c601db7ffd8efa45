use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
pub(crate) struct OutputArgs {
    /// Write to this file instead of the terminal (replaced only once all is written)
    #[arg(long, short, value_name = "PATH")]
    pub(crate) output: Option<PathBuf>,
}

/// Text or data, to the terminal or to a file.
#[derive(Debug, Args)]
pub(crate) struct ReportArgs {
    /// The numbers as JSON instead of text
    #[arg(long)]
    pub(crate) json: bool,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
pub(crate) struct SourcesArgs {
    #[command(flatten)]
    pub(crate) report: ReportArgs,
}
