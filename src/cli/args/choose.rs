use super::{ReportArgs, TrailArgs};
use clap::Args;

#[derive(Debug, Args)]
#[command(after_help = "Units: levels, cm, weeks, %. Ask for one of the three, or for all at once.\n\
    Example: foilwork choose --start diffuse --upkeep 12 --length 40 --taken 50 --from 5 --to 9 --treats weave=55")]
pub(crate) struct ChooseArgs {
    /// How the start may look at the sharpest: `line`, `soft` or `diffuse`; for a technique
    #[arg(long, value_name = "START", requires_all = ["upkeep", "length"])]
    pub(crate) start: Option<String>,
    /// How long the regrowth must not show, in weeks
    #[arg(long, value_name = "WEEKS", requires = "start", allow_negative_numbers = true)]
    pub(crate) upkeep: Option<f64>,
    /// Length of the hair, in cm
    #[arg(long, value_name = "CM", requires = "start", allow_negative_numbers = true)]
    pub(crate) length: Option<f64>,
    /// Share of the hair that is to be lighter, in %, where that is known
    #[arg(long, value_name = "PERCENT", requires = "start", allow_negative_numbers = true)]
    pub(crate) taken: Option<f64>,
    /// The level now; for a class of product and the steps before it
    #[arg(long, value_name = "LEVEL", requires = "to", allow_negative_numbers = true)]
    pub(crate) from: Option<String>,
    /// The level wanted
    #[arg(long, value_name = "LEVEL", requires = "from", allow_negative_numbers = true)]
    pub(crate) to: Option<String>,
    /// The hair carries artificial colour
    #[arg(long, requires = "from")]
    pub(crate) artificial: bool,
    /// The hair has been lightened
    #[arg(long, requires = "from")]
    pub(crate) lightened: bool,
    /// Share of it that is white, in %
    #[arg(long, value_name = "PERCENT", default_value_t = 0.0, requires = "from", allow_negative_numbers = true)]
    pub(crate) white: f64,
    /// The class of the colour that is planned: `semi-permanent`, `quasi-permanent`, `permanent` or `high-lift`; what it cannot lift
    /// comes before it
    #[arg(long, value_name = "CLASS", requires = "from")]
    pub(crate) planned: Option<String>,
    /// A part of the head with its technique and its share of the hair, `weave=55`; once for each part, for a class of service
    #[arg(long, value_name = "TECHNIQUE=PERCENT")]
    pub(crate) treats: Vec<String>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
