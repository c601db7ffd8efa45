use super::ConditionsArgs;
use clap::{Args, Subcommand};
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = "A value is the name of a column, or a number for all rows. Empty cells give\n\
                  empty results. Empty lines are left out. The cells of the table come back as\n\
                  they are, also one from which a spreadsheet would calculate, unless --guard is\n\
                  given. Units: those of the options; the new columns carry theirs in their names.")]
pub(crate) struct FillArgs {
    #[command(subcommand)]
    pub(crate) rule: FillRule,
}

#[derive(Debug, Subcommand)]
pub(crate) enum FillRule {
    /// Put strengths of peroxide into another unit, with the bounds that a density brings
    #[command(
        after_help = "Units: `% w/w`, `% w/v`, `g/L`, `mol/L`, `mol/kg` (of water), `N`, `% active oxygen`, `volumes`."
    )]
    Convert(FillConvertArgs),
    /// Split amounts into stock and diluent, or two developers, by mass
    #[command(after_help = "Units: strengths in % w/w, masses in g.")]
    Dilute(FillDiluteArgs),
    /// Find the density of clear solutions, with its bounds
    #[command(after_help = "Units: strengths in % w/w, temperatures in C, densities in g/mL.")]
    Density(FillDensityArgs),
    /// Say how many levels hair has to go
    #[command(after_help = "Units: levels from 1 to 12; a result above zero is lift, below it deposit.")]
    Lift(FillLiftArgs),
}

/// The table, and where its rows go.
#[derive(Debug, Args)]
pub(crate) struct TableFileArgs {
    /// The table: CSV with a line of names, the first sheet of a workbook (.xlsx) that is not hidden, or `-` for the standard input
    pub(crate) table: PathBuf,
    /// The table with the new columns
    #[arg(long, short, value_name = "FILE")]
    pub(crate) output: PathBuf,
    /// Keep rows that cannot be apart in this file, with the line and the reason; without it one such row stops the command
    #[arg(long, value_name = "FILE")]
    pub(crate) refused: Option<PathBuf>,
    /// What stands between the fields, one character
    #[arg(long, default_value = ",", value_name = "SIGN")]
    pub(crate) separator: String,
    /// Put an apostrophe before every sign in the table's own texts from which a spreadsheet would calculate
    #[arg(long)]
    pub(crate) guard: bool,
}

#[derive(Debug, Args)]
pub(crate) struct FillConvertArgs {
    #[command(flatten)]
    pub(crate) file: TableFileArgs,
    /// The strengths
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) value: String,
    /// Their unit
    #[arg(long, value_name = "UNIT")]
    pub(crate) from: String,
    /// The unit wanted
    #[arg(long, value_name = "UNIT")]
    pub(crate) to: String,
    #[command(flatten)]
    pub(crate) conditions: ConditionsArgs,
}

#[derive(Debug, Args)]
pub(crate) struct FillDiluteArgs {
    #[command(flatten)]
    pub(crate) file: TableFileArgs,
    /// Strengths of the bottles
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) stock: String,
    /// Strengths wanted
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) target: String,
    /// Totals to make
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) total: String,
    /// Strengths of a second developer to blend with, instead of a diluent without peroxide
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) with: Option<String>,
}

#[derive(Debug, Args)]
pub(crate) struct FillDensityArgs {
    #[command(flatten)]
    pub(crate) file: TableFileArgs,
    /// Strengths
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) strength: String,
    /// Temperatures
    #[arg(long, default_value = "20", value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) temperature: String,
}

#[derive(Debug, Args)]
pub(crate) struct FillLiftArgs {
    #[command(flatten)]
    pub(crate) file: TableFileArgs,
    /// Levels now
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) from: String,
    /// Levels wanted
    #[arg(long, value_name = "COLUMN", allow_hyphen_values = true)]
    pub(crate) target: String,
}
