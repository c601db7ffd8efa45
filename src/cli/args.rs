use clap::{Args, Parser, Subcommand};
use std::path::PathBuf;

/// Hair-colour chemistry: strengths, recipes, limits, and a checked plan for a lightening service.
#[derive(Debug, Parser)]
#[command(
    name = "foilwork",
    version,
    after_help = "Exit status: 0 fine, 1 the plan has findings that say stop, 2 bad input.\n\
                  foilwork never says that anything is safe: the product's own instructions and local law come first."
)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) command: Command,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Read a service file and print the bench sheet
    Plan(PlanArgs),
    /// Print the JSON Schema of a service file
    Schema(OutputArgs),
    /// Put a peroxide strength into every unit
    Convert(ConvertArgs),
    /// Weaken a developer, or blend two, to a strength
    Dilute(DiluteArgs),
    /// Scale a recipe to a total, by a factor or by one part, and weigh it
    Scale(ScaleArgs),
    /// List a jurisdiction's limits: what is checked and what is not
    Limits(LimitsArgs),
    /// Set a price from a cost, by margin or by mark-up
    Price(PriceArgs),
    /// Cost and price a list of services
    Cost(CostArgs),
}

#[derive(Debug, Args)]
pub(super) struct OutputArgs {
    /// Write to this file instead of the terminal (replaced only once all is written)
    #[arg(long, short, value_name = "PATH")]
    pub(super) output: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(super) struct PlanArgs {
    /// Service file, TOML or (by its name) JSON; `-` reads TOML from the standard input
    pub(super) file: PathBuf,
    /// The plan as JSON instead of text
    #[arg(long)]
    pub(super) json: bool,
    /// Only the mixing cards, one for each fresh bowl
    #[arg(long)]
    pub(super) cards: bool,
    #[command(flatten)]
    pub(super) output: OutputArgs,
}

#[derive(Debug, Args)]
pub(super) struct ConvertArgs {
    /// Strength with its unit: `6 % w/w`, `6 % w/v`, `19.8 volumes`, `1.79 mol/L`, or a label, `20 vol label`
    pub(super) strength: String,
    /// Only this unit, for example `volumes`
    #[arg(long, value_name = "UNIT")]
    pub(super) to: Option<String>,
    /// Temperature of the solution in C
    #[arg(long, default_value_t = 20.0, value_name = "C", allow_negative_numbers = true)]
    pub(super) temperature: f64,
    /// Measured density in g/mL, instead of that of a clear solution
    #[arg(long, value_name = "G/ML", allow_negative_numbers = true)]
    pub(super) density: Option<f64>,
    /// A cream whose density nobody measured: wider bounds
    #[arg(long, conflicts_with = "density")]
    pub(super) cream: bool,
    /// How oxygen is counted: `ideal-1atm`, `ideal-1bar`, `real-1atm`, `real-1bar` or `textbook`
    #[arg(long, value_name = "WHICH")]
    pub(super) molar_volume: Option<String>,
}

#[derive(Debug, Args)]
pub(super) struct DiluteArgs {
    /// The developer you have, with its unit: `12 % w/w` or `40 vol label`
    #[arg(long, value_name = "STRENGTH")]
    pub(super) stock: String,
    /// The strength you want: `6 % w/w`
    #[arg(long, value_name = "STRENGTH")]
    pub(super) target: String,
    /// Total to make, in g
    #[arg(long, value_name = "G", allow_negative_numbers = true)]
    pub(super) total: f64,
    /// A second developer to blend with, instead of a diluent without peroxide
    #[arg(long, value_name = "STRENGTH")]
    pub(super) with: Option<String>,
    /// The scale's division in g
    #[arg(long, default_value_t = 1.0, value_name = "G", allow_negative_numbers = true)]
    pub(super) division: f64,
    /// Temperature in C, needed only for strengths by volume
    #[arg(long, default_value_t = 20.0, value_name = "C", allow_negative_numbers = true)]
    pub(super) temperature: f64,
}

#[derive(Debug, Args)]
pub(super) struct ScaleArgs {
    /// Recipe: `30 g 7.1 + 15 g 8.3 + 67.5 g 6%`
    pub(super) recipe: String,
    /// Scale to this total, in the recipe's own unit
    #[arg(long, value_name = "AMOUNT", group = "how")]
    pub(super) total: Option<String>,
    /// Multiply every part by this
    #[arg(long, value_name = "NUMBER", group = "how")]
    pub(super) factor: Option<String>,
    /// Scale so that one part has this amount: `7.1=60`
    #[arg(long, value_name = "PRODUCT=AMOUNT", group = "how")]
    pub(super) part: Option<String>,
    /// The scale's division in g
    #[arg(long, default_value_t = 1.0, value_name = "G", allow_negative_numbers = true)]
    pub(super) division: f64,
}

#[derive(Debug, Args)]
pub(super) struct PriceArgs {
    /// What the service costs, for example 61.20
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(super) cost: String,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE")]
    pub(super) currency: String,
    /// Profit as a share of the net price, in percent
    #[arg(long, value_name = "PERCENT", conflicts_with = "markup", allow_negative_numbers = true)]
    pub(super) margin: Option<String>,
    /// Profit as a share of the cost, in percent
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true)]
    pub(super) markup: Option<String>,
    /// Tax on the net price, in percent
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true)]
    pub(super) tax: Option<String>,
}

#[derive(Debug, Args)]
pub(super) struct CostArgs {
    /// The services: CSV with a header row, or (by its name) JSON
    pub(super) list: PathBuf,
    /// What the salon pays and how it prices: TOML, or (by its name) JSON
    #[arg(long, value_name = "FILE")]
    pub(super) terms: PathBuf,
    /// The table as CSV
    #[arg(long, conflicts_with = "json")]
    pub(super) csv: bool,
    /// The table as JSON
    #[arg(long)]
    pub(super) json: bool,
    #[command(flatten)]
    pub(super) output: OutputArgs,
}

#[derive(Debug, Args)]
pub(super) struct LimitsArgs {
    /// Whose law: EU, GB, US, CA, AU, NZ, CN, JP, ASEAN or PL
    #[arg(long, short, value_name = "CODE")]
    pub(super) jurisdiction: String,
    /// The rows as JSON
    #[arg(long)]
    pub(super) json: bool,
    #[command(flatten)]
    pub(super) output: OutputArgs,
}
