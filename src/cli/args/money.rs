use super::OutputArgs;
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = "Units: amounts in whole units of the currency with its decimals (61.20); shares in percent.")]
pub(crate) struct PriceArgs {
    /// What the service costs, for example 61.20
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) cost: String,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: String,
    /// Profit as a share of the net price, in percent
    #[arg(long, value_name = "PERCENT", conflicts_with = "markup", allow_negative_numbers = true)]
    pub(crate) margin: Option<String>,
    /// Profit as a share of the cost, in percent
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true)]
    pub(crate) markup: Option<String>,
    /// Tax on the net price, in percent
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true)]
    pub(crate) tax: Option<String>,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: amounts in the currency of the shop, times in min, shares in percent, masses in g.")]
pub(crate) struct CostArgs {
    /// The services: CSV with a header row, or (by its name) JSON
    pub(crate) list: PathBuf,
    /// Shop file whose `terms` say what the salon pays and how it prices
    #[arg(long, value_name = "FILE")]
    pub(crate) shop: PathBuf,
    /// The table as CSV
    #[arg(long, conflicts_with = "json")]
    pub(crate) csv: bool,
    /// The table as JSON
    #[arg(long)]
    pub(crate) json: bool,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}
