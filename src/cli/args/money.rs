use super::{OutputArgs, ReportArgs, TrailArgs};
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(
    after_help = "Units: amounts in whole units of the currency with its decimals (61.20), net of tax; shares in \
                        percent.\n\
                        Margin is profit over price, mark-up is profit over cost: 40 % margin is 66.67 % mark-up.\n\n\
                        Example: foilwork price --cost 61.20 --margin 40 --tax 21 --currency EUR\n\n\
                        Example: foilwork price --cost 61.20 --price 95.00 --currency EUR\n\n\
                        Example: foilwork price --margin 40\n\n\
                        Example: foilwork price --cost 20 --price 50 --discount 15 --sold 30 --currency EUR"
)]
pub(crate) struct PriceArgs {
    /// What the service costs, for example 61.20
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true, requires = "currency")]
    pub(crate) cost: Option<String>,
    /// Net price that is charged already, to see what it leaves
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true, requires = "currency")]
    pub(crate) price: Option<String>,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: Option<String>,
    /// Profit as a share of the net price, in percent
    #[arg(long, value_name = "PERCENT", conflicts_with = "markup", allow_negative_numbers = true)]
    pub(crate) margin: Option<String>,
    /// Profit as a share of the cost, in percent
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true)]
    pub(crate) markup: Option<String>,
    /// Tax on the net price, in percent
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true)]
    pub(crate) tax: Option<String>,
    /// What is taken off the net price, in percent
    #[arg(long, value_name = "PERCENT", requires = "cost", allow_negative_numbers = true)]
    pub(crate) discount: Option<String>,
    /// How many are sold without the discount, to see how many it must bring
    #[arg(long, value_name = "COUNT", requires = "discount", default_value_t = 100)]
    pub(crate) sold: u32,
    /// How amounts become whole cents; `midpoint-nearest-even` and others
    #[arg(long, value_name = "ROUNDING", default_value = "midpoint-away-from-zero")]
    pub(crate) rounding: String,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: amounts in the currency of the shop, times in min, shares in percent, masses in g.\n\n\
    Columns of the list, in any order; the first three must be there:\n  \
    service                       what it is called\n  \
    hands_on_min, chair_min       time with hands on the guest; time in the chair\n  \
    class                         length or density, where prices differ by it\n  \
    product, developer            what is used, by its name in the shop; or, for\n                                \
    what is not there, the price and mass of a pack:\n                                \
    product_pack_price, product_pack_g,\n                                \
    developer_pack_price, developer_pack_g\n  \
    product_g, product_waste_g, developer_g, developer_waste_g\n                                \
    mass used; mass mixed and thrown away\n  \
    consumables, laundry          foils and gloves; towels, for one service\n  \
    price                         with tax; when empty, the terms set it\n  \
    sold                          how many were sold, for the totals; 1 when empty\n  \
    note                          for yourself\n\n\
    The shop's `terms` say what an hour costs and how prices are set: wage_per_h,\n\
    on_costs_percent, productive_percent (or paid_h and productive_h of one period),\n\
    overhead_per_h (or overhead, chairs and productive_h_per_chair of one period),\n\
    one of margin_percent, markup_percent and per_chair_h, and where they apply\n\
    tax_percent, card_percent, card_fixed, price_step, price_ending, price_toward.\n\n\
    Example: foilwork cost examples/juniper_and_tide_services.csv \\\n           \
    --shop examples/juniper_and_tide.toml --sort chair-hour")]
pub(crate) struct CostArgs {
    /// The services: CSV with a header row, a workbook (.xlsx) or JSON (told by what is in it)
    pub(crate) list: PathBuf,
    /// Shop file whose `terms` say what the salon pays and how it prices
    #[arg(long, value_name = "FILE")]
    pub(crate) shop: PathBuf,
    /// Order of the lines: listed, chair-hour, profit, total-profit, margin, price, sold
    #[arg(long, value_name = "ORDER", default_value = "listed")]
    pub(crate) sort: String,
    /// The table as CSV
    #[arg(long, conflicts_with_all = ["json", "trail"])]
    pub(crate) csv: bool,
    /// The table as JSON
    #[arg(long)]
    pub(crate) json: bool,
    /// A workbook with live formulas, written to this .xlsx file instead
    #[arg(long, value_name = "FILE", conflicts_with_all = ["json", "csv", "output", "trail"])]
    pub(crate) xlsx: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
