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

/// How the results of a command came about: the same option wherever there is a result to take away.
#[derive(Debug, Args)]
pub(crate) struct TrailArgs {
    /// How the results came about instead: value, formula, inputs, basis, sources, version (with --json as data)
    #[arg(long)]
    pub(crate) trail: bool,
}

/// The same for a command that has no other data.
#[derive(Debug, Args)]
pub(crate) struct TrailDataArgs {
    #[command(flatten)]
    pub(crate) of: TrailArgs,
    /// The trail as JSON
    #[arg(long, requires = "trail")]
    pub(crate) json: bool,
}

#[derive(Debug, Args)]
pub(crate) struct SourcesArgs {
    #[command(flatten)]
    pub(crate) report: ReportArgs,
}
