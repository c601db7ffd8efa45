use super::{ReportArgs, TrailArgs, TrailDataArgs};
use clap::Args;
use std::path::PathBuf;

/// What stands between a strength by mass and one by volume.
#[derive(Debug, Args)]
pub(crate) struct ConditionsArgs {
    /// Temperature of the solution in C
    #[arg(long, default_value_t = 20.0, value_name = "C", allow_negative_numbers = true)]
    pub(crate) temperature: f64,
    /// Measured density in g/mL, instead of that of a clear solution
    #[arg(long, value_name = "G/ML", allow_negative_numbers = true)]
    pub(crate) density: Option<f64>,
    /// A cream whose density nobody measured: wider bounds
    #[arg(long, conflicts_with = "density")]
    pub(crate) cream: bool,
    /// How oxygen is counted: `ideal-1atm`, `ideal-1bar`, `real-1atm`, `real-1bar` or `textbook`
    #[arg(long, value_name = "WHICH")]
    pub(crate) molar_volume: Option<String>,
}

#[derive(Debug, Args)]
#[command(
    after_help = "Units: `% w/w`, `% w/v`, `g/L`, `mol/L`, `mol/kg` (of water), `N`, `% active oxygen`, `volumes` (of oxygen)."
)]
pub(crate) struct ConvertArgs {
    /// Strength with its unit: `6 % w/w`, `6 % w/v`, `19.8 volumes`, `1.79 mol/L`, or a label, `20 vol`
    #[arg(allow_hyphen_values = true)]
    pub(crate) strength: String,
    /// Only this unit, for example `volumes`
    #[arg(long, value_name = "UNIT")]
    pub(crate) to: Option<String>,
    #[command(flatten)]
    pub(crate) conditions: ConditionsArgs,
    #[command(flatten)]
    pub(crate) trail: TrailDataArgs,
}

#[derive(Debug, Args)]
#[command(
    override_usage = "foilwork dilute [OPTIONS] --stock <STRENGTH> --target <STRENGTH>\n                       --total <G>"
)]
#[command(after_help = "Units: strengths say theirs (% w/w, % w/v, volumes, vol label); masses in g; C.")]
pub(crate) struct DiluteArgs {
    /// The developer you have, with its unit: `12 % w/w` or `40 vol label`
    #[arg(long, value_name = "STRENGTH", allow_hyphen_values = true)]
    pub(crate) stock: String,
    /// The strength you want: `6 % w/w`
    #[arg(long, value_name = "STRENGTH", allow_hyphen_values = true)]
    pub(crate) target: String,
    /// Total to make, in g
    #[arg(long, value_name = "G", allow_hyphen_values = true)]
    pub(crate) total: String,
    /// A second developer to blend with, instead of a diluent without peroxide
    #[arg(long, value_name = "STRENGTH", allow_hyphen_values = true)]
    pub(crate) with: Option<String>,
    /// The scale's division in g
    #[arg(long, default_value_t = 1.0, value_name = "G", allow_negative_numbers = true)]
    pub(crate) division: f64,
    /// Temperature in C, needed only for strengths by volume
    #[arg(long, default_value_t = 20.0, value_name = "C", allow_negative_numbers = true)]
    pub(crate) temperature: f64,
    #[command(flatten)]
    pub(crate) trail: TrailDataArgs,
}

/// A grid of bottles by targets.
#[derive(Debug, Args)]
pub(crate) struct GridArgs {
    /// The developers you have, separated by commas: `12, 9, 6 % w/w` or `40, 30, 20 vol`
    #[arg(long, value_name = "STRENGTHS", allow_hyphen_values = true)]
    pub(crate) stocks: String,
    /// The strengths you want: `6, 4.5, 3 % w/w`
    #[arg(long, value_name = "STRENGTHS", allow_hyphen_values = true)]
    pub(crate) targets: String,
    /// A weaker developer to blend with, instead of a diluent without peroxide: `3 % w/w`
    #[arg(long, value_name = "STRENGTH", allow_hyphen_values = true)]
    pub(crate) with: Option<String>,
    /// Total of every mix, in g
    #[arg(long, value_name = "G", allow_hyphen_values = true)]
    pub(crate) total: String,
    /// The scale's division in g
    #[arg(long, default_value_t = 1.0, value_name = "G", allow_negative_numbers = true)]
    pub(crate) division: f64,
}

#[derive(Debug, Args)]
#[command(
    override_usage = "foilwork table [OPTIONS] --stocks <STRENGTHS> --targets <STRENGTHS>\n                      --total <G>"
)]
#[command(after_help = "Units: strengths say theirs, as in 12, 9 % w/w or 40 vol, 30 vol; masses in g.\n\
    Example: foilwork table --stocks \"12, 9, 6 % w/w\" --targets \"6, 4.5, 3 % w/w\" --total 100")]
pub(crate) struct TableArgs {
    #[command(flatten)]
    pub(crate) grid: GridArgs,
    /// The table as CSV, for a spreadsheet
    #[arg(long, conflicts_with_all = ["json", "trail"])]
    pub(crate) csv: bool,
    /// A workbook with live formulas, written to this .xlsx file instead
    #[arg(long, value_name = "FILE", conflicts_with_all = ["json", "csv", "output", "trail"])]
    pub(crate) xlsx: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: volumes in mL, each with the tolerance of its glass if you know it: `12.0+-0.03`.\n\
    Example: foilwork titrate --titrant \"0.02 mol/L\" --aliquot 10+-0.02 --taken 10+-0.02\n         \
    --made-up-to 100+-0.1 --titre 12.0+-0.03")]
pub(crate) struct TitrateArgs {
    /// The permanganate: `0.02 mol/L` or `0.1 N` (5 N is 1 mol/L), with bounds `0.02+-0.0001 mol/L`
    #[arg(long, value_name = "CONCENTRATION")]
    pub(crate) titrant: String,
    /// Pipetted into the flask, in mL
    #[arg(long, value_name = "ML", allow_hyphen_values = true)]
    pub(crate) aliquot: String,
    /// Diluted first: taken from the bottle, in mL
    #[arg(long, value_name = "ML", requires = "made_up_to", allow_hyphen_values = true)]
    pub(crate) taken: Option<String>,
    /// Diluted first: made up to this mark, in mL
    #[arg(long, value_name = "ML", requires = "taken", allow_hyphen_values = true)]
    pub(crate) made_up_to: Option<String>,
    /// What the burette showed, in mL
    #[arg(long, value_name = "ML", conflicts_with = "expect", allow_hyphen_values = true)]
    pub(crate) titre: Option<String>,
    /// Turn it round: the titre to expect from this strength, `6 % w/w` or `20 vol label`
    #[arg(long, value_name = "STRENGTH", allow_hyphen_values = true)]
    pub(crate) expect: Option<String>,
    #[command(flatten)]
    pub(crate) conditions: ConditionsArgs,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: strengths say theirs, masses in g, prices per kg or by the pack.\n\
    Of a shop file the developers and diluents are used, with what is in hand.\n\
    Example: foilwork blend --currency EUR --stock \"deep=12 % w/w, 300 g, 9.90/kg\" \\\n         \
    --stock \"pale=3 % w/w\" --target \"6 % w/w\" --total 60")]
pub(crate) struct BlendArgs {
    /// Shop file, as `examples/juniper_and_tide.toml`; `-` reads the standard input
    pub(crate) shop: Option<PathBuf>,
    /// A bottle, after those of the file: `name=12 % w/w, 300 g, 9.90/kg`; only the strength is needed
    #[arg(long, value_name = "STOCK")]
    pub(crate) stock: Vec<String>,
    /// The strength you want: `6 % w/w`
    #[arg(long, value_name = "STRENGTH", allow_hyphen_values = true)]
    pub(crate) target: String,
    /// Total to make, in g
    #[arg(long, value_name = "G", allow_hyphen_values = true)]
    pub(crate) total: String,
    /// What is best: `least-cost`, `fewest-bottles` or `least-leftover`
    #[arg(long, default_value = "least-cost", value_name = "WHAT")]
    pub(crate) objective: String,
    /// ISO 4217 code of the prices, where no shop file says it
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: Option<String>,
    /// The scale's division in g
    #[arg(long, default_value_t = 1.0, value_name = "G", allow_negative_numbers = true)]
    pub(crate) division: f64,
    /// Temperature in C, needed only for strengths by volume
    #[arg(long, default_value_t = 20.0, value_name = "C", allow_negative_numbers = true)]
    pub(crate) temperature: f64,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
