use super::{ReportArgs, TrailArgs, TrailDataArgs};
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = "Units: one for the whole recipe, `g`, `mL`, `US fl oz` or `UK fl oz`; the scale is in g.\n\
    Example: foilwork scale \"30 g ash + 60 g developer\" --total 120")]
pub(crate) struct ScaleArgs {
    /// Recipe: `30 g J7-mist + 15 g J8-oat + 67.5 g 6%`
    pub(crate) recipe: String,
    /// Scale to this total, in the recipe's own unit; the unit may be written behind it
    #[arg(long, value_name = "AMOUNT", group = "how")]
    pub(crate) total: Option<String>,
    /// Multiply every part by this
    #[arg(long, value_name = "NUMBER", group = "how")]
    pub(crate) factor: Option<String>,
    /// Scale so that one part has this amount: `J7-mist=60`
    #[arg(long, value_name = "PRODUCT=AMOUNT", group = "how")]
    pub(crate) part: Option<String>,
    /// The scale's division in g
    #[arg(long, default_value_t = 1.0, value_name = "G", allow_negative_numbers = true)]
    pub(crate) division: f64,
    /// A workbook with live formulas, written to this .xlsx file instead
    #[arg(long, value_name = "FILE", conflicts_with = "trail")]
    pub(crate) xlsx: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) trail: TrailDataArgs,
}

#[derive(Debug, Args)]
#[command(
    after_help = "Units: each limit is printed with its own, as its law words it (% w/w as applied, ratio, air)."
)]
pub(crate) struct LimitsArgs {
    /// Whose law: `EU`, `GB`, `US`, `CA`, `AU`, `NZ`, `CN`, `JP`, `ASEAN` or `PL`
    #[arg(long, short, value_name = "CODE")]
    pub(crate) jurisdiction: String,
    /// Only what concerns this substance: a CAS number, a name, or part of a name
    #[arg(long, value_name = "NAME")]
    pub(crate) substance: Option<String>,
    /// Only what concerns this product: `oxidative-colour`, `non-oxidative-colour`, `lightening` or
    /// `lash-colour`
    #[arg(long, value_name = "KIND")]
    pub(crate) product: Option<String>,
    /// Only what concerns this use: `professional` or `general`
    #[arg(long = "use", value_name = "WHO")]
    pub(crate) audience: Option<String>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
