use super::{ReportArgs, TrailArgs};
use clap::{ArgGroup, Args};
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(
    after_help = "Units: minutes from the first brush, g, levels. A line is written in one go: what a crash tears is one line.\n\
    Example: foilwork note today.jsonl --at 3 --section nape --begun\n\
    Example: foilwork note today.jsonl --at 20 --section nape --seen 7.5\n\
    Example: foilwork note today.jsonl --at 21 --comfort fine"
)]
#[command(group = ArgGroup::new("what").required(true).multiple(false))]
pub(crate) struct NoteArgs {
    /// The log of this service; it is made where there is none
    pub(crate) log: PathBuf,
    /// The service file: then it is told whether the section is put on a second time
    #[arg(long, value_name = "FILE")]
    pub(crate) plan: Option<PathBuf>,
    /// When, in min from the first brush
    #[arg(long, value_name = "MIN")]
    pub(crate) at: f64,
    /// The section, by its name in the plan
    #[arg(long, value_name = "NAME")]
    pub(crate) section: Option<String>,
    /// The first strand of the section is on
    #[arg(long, group = "what")]
    pub(crate) begun: bool,
    /// The section is all on
    #[arg(long, group = "what")]
    pub(crate) applied: bool,
    /// The section is rinsed
    #[arg(long, group = "what")]
    pub(crate) rinsed: bool,
    /// A level seen on the section
    #[arg(long, value_name = "LEVEL", group = "what")]
    pub(crate) seen: Option<f64>,
    /// How the scalp feels: `fine`, `tingling`, `itching` or `burning`
    #[arg(long, value_name = "WORD", group = "what")]
    pub(crate) comfort: Option<String>,
    /// What a foil of the section is like: `cool`, `warm`, `hot` or `swollen`
    #[arg(long, value_name = "WORD", group = "what")]
    pub(crate) foil: Option<String>,
    /// A damp strand of the section: `good`, `reduced` or `poor`
    #[arg(long, value_name = "WORD", group = "what")]
    pub(crate) elasticity: Option<String>,
    /// What was really weighed for the section, in g
    #[arg(long, value_name = "G", group = "what")]
    pub(crate) weighed: Option<f64>,
    /// What of it was left over, in g
    #[arg(long, value_name = "G", group = "what")]
    pub(crate) left_over: Option<f64>,
    /// The level that the section came to
    #[arg(long, value_name = "LEVEL", group = "what")]
    pub(crate) result: Option<f64>,
    /// A reaction or an accident, in words
    #[arg(long, value_name = "WORDS", group = "what")]
    pub(crate) incident: Option<String>,
    /// The tone that the section came to, in words
    #[arg(long, value_name = "WORDS", requires = "result")]
    pub(crate) tone: Option<String>,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: g, min, levels. Levels seen move the forecast of the plan.\n\
    Example: foilwork record examples/soft-gradient.toml examples/soft-gradient.jsonl")]
pub(crate) struct RecordArgs {
    /// Service file, TOML or JSON (told by what is in it)
    pub(crate) file: PathBuf,
    /// Its log, written by the command note
    pub(crate) log: PathBuf,
    /// Keep it: append what is kept of the service to this file of records
    #[arg(long, value_name = "FILE")]
    pub(crate) keep: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
