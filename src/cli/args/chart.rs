use super::{GridArgs, OutputArgs};
use clap::{Args, Subcommand};
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(
    after_help = "Units: strengths in % w/w, masses in g, levels on the European 1-10 naming, amounts with their decimals.\n\
    Each prints a picture (SVG); `foilwork lift --svg` and `foilwork head --svg` draw the others.\n\
    Example: foilwork chart wheel --mark orange --output wheel.svg"
)]
pub(crate) struct ChartArgs {
    #[command(subcommand)]
    pub(crate) picture: Picture,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Picture {
    /// A dilution grid for the wall
    Dilution(DilutionChartArgs),
    /// Levels, the warmth that shows and what neutralises it
    Pigment(PigmentChartArgs),
    /// The wheel of twelve hues
    Wheel(WheelArgs),
    /// What a service costs, kind by kind
    Costs(CostChartArgs),
    /// Net price against margin
    Margin(MarginChartArgs),
}

#[derive(Debug, Args)]
pub(crate) struct DilutionChartArgs {
    #[command(flatten)]
    pub(crate) grid: GridArgs,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
pub(crate) struct PigmentChartArgs {
    /// The natural level from which hair is lightened
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) natural: String,
    /// Whose names the levels have besides: `european` or `us`
    #[arg(long, value_name = "NAMES", default_value = "european")]
    pub(crate) names: String,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
pub(crate) struct WheelArgs {
    /// A hue that is marked with the one that neutralises it, such as `orange`
    #[arg(long, value_name = "HUE")]
    pub(crate) mark: Option<String>,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
pub(crate) struct CostChartArgs {
    /// Service file, TOML or JSON; `-` reads the standard input
    pub(crate) file: PathBuf,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
pub(crate) struct MarginChartArgs {
    /// What the service costs
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) cost: String,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: String,
    /// A margin that is marked, in percent of the net price
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true)]
    pub(crate) margin: Option<String>,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}
