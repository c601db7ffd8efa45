use super::{ReportArgs, TrailArgs};
use clap::{Args, Subcommand};
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(
    after_help = "Units: amounts in whole units of the currency with its decimals, net of tax; times in h or min \
                        as each option says; shares in percent."
)]
pub(crate) struct BusinessArgs {
    #[command(subcommand)]
    pub(crate) question: Question,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Question {
    /// How many services cover the fixed costs, for one service or for the whole list
    BreakEven(BreakEvenArgs),
    /// What commission comes to: flat, over a threshold, or in tiers
    Commission(CommissionArgs),
    /// Share tips by hours worked, to the cent
    Tips(TipsArgs),
    /// Whether renting a chair leaves more than a wage
    Rent(RentArgs),
    /// How much of a time is productive, and how that lies beside the trade
    Productivity(ProductivityArgs),
    /// When to order, and how many packs
    Reorder(ReorderArgs),
    /// Price services from-to, with what drives the range; or list them by class
    Quote(QuoteArgs),
}

#[derive(Debug, Args)]
#[command(
    after_help = "Units: amounts net of tax, in whole units of the currency. Wages by the hour and rent are fixed.\n\n\
                        Example: foilwork business break-even --fixed 3000 --price 35 --variable 20 --currency USD"
)]
pub(crate) struct BreakEvenArgs {
    /// Fixed costs of a period: rent, wages by the hour, insurance
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) fixed: String,
    /// Net price of one service
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true, required_unless_present = "list")]
    pub(crate) price: Option<String>,
    /// What one more service costs: product, foils, laundry, card fee
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true, required_unless_present = "list")]
    pub(crate) variable: Option<String>,
    /// Profit wanted before tax
    #[arg(long, value_name = "AMOUNT", default_value = "0", allow_negative_numbers = true)]
    pub(crate) profit: String,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE", required_unless_present = "list")]
    pub(crate) currency: Option<String>,
    /// The services of the salon, as `foilwork cost` reads them, sold in the mix of `sold`
    #[arg(long, value_name = "FILE", requires = "shop", conflicts_with_all = ["price", "variable", "currency"])]
    pub(crate) list: Option<PathBuf>,
    /// Shop file, for the list
    #[arg(long, value_name = "FILE")]
    pub(crate) shop: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(
    after_help = "Units: amounts net of tax, in whole units of the currency; rates in percent of the takings.\n\n\
                        Example: foilwork business commission --takings 1300 --tier 800=8 --tier 14 --currency USD"
)]
pub(crate) struct CommissionArgs {
    /// Net takings of the period
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) takings: String,
    /// One rate on everything, or on what exceeds --over
    #[arg(long, value_name = "PERCENT", allow_negative_numbers = true, required_unless_present = "tier")]
    pub(crate) percent: Option<String>,
    /// Nothing is paid up to here
    #[arg(long, value_name = "AMOUNT", requires = "percent", allow_negative_numbers = true)]
    pub(crate) over: Option<String>,
    /// A slice of the takings and its rate, such as 800=8; the last is a rate alone
    #[arg(long, value_name = "UP_TO=PERCENT", conflicts_with = "percent")]
    pub(crate) tier: Vec<String>,
    /// Wage or retainer of the period
    #[arg(long, value_name = "AMOUNT", default_value = "0", allow_negative_numbers = true)]
    pub(crate) base: String,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: String,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: hours in h.\n\nExample: foilwork business tips --tips 50 --hours 8,8,5 --currency EUR")]
pub(crate) struct TipsArgs {
    /// All tips
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) tips: String,
    /// Hours of each person, with commas
    #[arg(long, value_name = "HOURS", value_delimiter = ',', allow_negative_numbers = true)]
    pub(crate) hours: Vec<f64>,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: String,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: amounts of one period, net of tax; shares in percent of the net takings.\n\
                        Tax, insurance and paid leave are not in it: put them into --own-costs when they are known.")]
pub(crate) struct RentArgs {
    /// Net takings of the period
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) takings: String,
    /// Rent of the chair
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) rent: String,
    /// What else is paid for when renting: insurance, training, bookkeeping
    #[arg(long, value_name = "AMOUNT", default_value = "0", allow_negative_numbers = true)]
    pub(crate) own_costs: String,
    /// What the work costs when renting, in percent of the takings
    #[arg(long, value_name = "PERCENT", default_value = "0", allow_negative_numbers = true)]
    pub(crate) variable: String,
    /// Wage when employed
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) wage: String,
    /// Commission when employed, in percent of the takings
    #[arg(long, value_name = "PERCENT", default_value = "0", allow_negative_numbers = true)]
    pub(crate) commission: String,
    /// ISO 4217 code of the currency
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: String,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: hours in h. The same week reads 75 % or 125 %, so it is said of which time.\n\
                        Times: recorded-time, paid-time, rostered-time, opening-time, standard-time.\n\n\
                        Example: foilwork business productivity --productive 19 --of 38 --time paid-time")]
pub(crate) struct ProductivityArgs {
    /// Hours with a guest in the chair
    #[arg(long, value_name = "H", allow_negative_numbers = true)]
    pub(crate) productive: f64,
    /// Hours to compare with
    #[arg(long, value_name = "H", allow_negative_numbers = true)]
    pub(crate) of: f64,
    /// What those hours are
    #[arg(long, value_name = "TIME")]
    pub(crate) time: String,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(
    after_help = "Units: all amounts alike, in g, mL or pieces; times in days. With --list and --shop the stock in \
                        hand and the packs are the shop's, and what the services take of products that they name, as often \
                        as they were sold, is the use.\n\n\
                        Example: foilwork business reorder --list examples/juniper_and_tide_month.csv \\\n           \
                        --shop examples/juniper_and_tide.toml --sold-in-days 30 --lead-days 5 --cover-days 14\n\
                        Example: foilwork business reorder --on-hand \"900 g\" --daily \"120 g\" --pack \"500 g\" \
                        --lead-days 5 --cover-days 14 --reserve \"300 g\""
)]
pub(crate) struct ReorderArgs {
    /// Services with what they take and how often they were sold: CSV with a header row, a workbook (.xlsx), or JSON
    #[arg(long, value_name = "FILE", requires = "shop", requires = "sold_in_days", conflicts_with_all = ["on_hand", "daily", "pack", "reserve", "on_order"])]
    pub(crate) list: Option<PathBuf>,
    /// Shop file with stock in hand, packs and prices
    #[arg(long, value_name = "FILE", requires = "list")]
    pub(crate) shop: Option<PathBuf>,
    /// The days in which the list was sold
    #[arg(long, value_name = "DAYS", requires = "list")]
    pub(crate) sold_in_days: Option<u32>,
    /// Of how many days' use is kept for bad days, with --list
    #[arg(long, value_name = "DAYS", requires = "list")]
    pub(crate) reserve_days: Option<u32>,
    /// On the shelf now, such as `900 g`
    #[arg(long, value_name = "AMOUNT", required_unless_present = "list", allow_negative_numbers = true)]
    pub(crate) on_hand: Option<String>,
    /// Used on an average day
    #[arg(long, value_name = "AMOUNT", required_unless_present = "list", allow_negative_numbers = true)]
    pub(crate) daily: Option<String>,
    /// What a pack holds
    #[arg(long, value_name = "AMOUNT", required_unless_present = "list", allow_negative_numbers = true)]
    pub(crate) pack: Option<String>,
    /// From order to delivery
    #[arg(long, value_name = "DAYS")]
    pub(crate) lead_days: u32,
    /// How long the delivery should last
    #[arg(long, value_name = "DAYS")]
    pub(crate) cover_days: u32,
    /// Kept for bad days; none when left out
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) reserve: Option<String>,
    /// Ordered and not yet delivered; none when left out
    #[arg(long, value_name = "AMOUNT", allow_negative_numbers = true)]
    pub(crate) on_order: Option<String>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: costs in the currency of the shop, times in min. Prices come with tax.\n\n\
                        Columns, a row for each part of a service:\n  \
                        service, class, part      what it is; class may be empty\n  \
                        low, best, high           what the part costs: least, expected, most\n  \
                        basis                     measured, stated (when empty), assumed, derived\n  \
                        chair_low_min, chair_best_min, chair_high_min\n                            \
                        time in the chair, in one row of the service\n\n\
                        Example: foilwork business quote examples/juniper_and_tide_quote.csv \\\n           \
                        --shop examples/juniper_and_tide.toml --service \"colour correction\"")]
pub(crate) struct QuoteArgs {
    /// What the parts cost, from-to: CSV with a header row, or a workbook (.xlsx)
    pub(crate) list: PathBuf,
    /// Shop file whose `terms` say how prices are set
    #[arg(long, value_name = "FILE")]
    pub(crate) shop: PathBuf,
    /// Quote this service in full instead of listing all
    #[arg(long, value_name = "NAME")]
    pub(crate) service: Option<String>,
    /// The class of the service, where it has several
    #[arg(long, value_name = "NAME", requires = "service")]
    pub(crate) class: Option<String>,
    /// What is paid in advance: a share such as 25%, or an amount such as 40.00
    #[arg(long, value_name = "PERCENT_OR_AMOUNT", requires = "service")]
    pub(crate) deposit: Option<String>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
