use super::{ReportArgs, TrailArgs};
use clap::Args;

/// What is known of the hair; what is not stated spans the published spread between people.
#[derive(Debug, Args)]
pub(crate) struct HairFactsArgs {
    /// A group whose means are published: `african`, `asian` or `european`
    #[arg(long, value_name = "GROUP")]
    pub(crate) group: Option<String>,
    /// Age in years; density falls with it
    #[arg(long, value_name = "YEARS", allow_negative_numbers = true)]
    pub(crate) age: Option<f64>,
    /// Density by eye: `low`, `medium` or `high`
    #[arg(long, value_name = "DENSITY", conflicts_with = "counted")]
    pub(crate) density: Option<String>,
    /// Density counted, in hairs on a square centimetre
    #[arg(long, value_name = "NUMBER", allow_negative_numbers = true)]
    pub(crate) counted: Option<f64>,
    /// Thickness by eye and touch: `fine`, `medium` or `coarse`
    #[arg(long, value_name = "TEXTURE", conflicts_with = "diameter")]
    pub(crate) texture: Option<String>,
    /// Diameter measured, in um
    #[arg(long, value_name = "UM", allow_negative_numbers = true)]
    pub(crate) diameter: Option<f64>,
    /// How it was measured: `caliper` or `scalp-camera`, which reads 1.41 times as much
    #[arg(long, value_name = "METHOD", default_value = "caliper")]
    pub(crate) method: String,
    /// Hair-bearing scalp measured, in cm2
    #[arg(long, value_name = "CM2", allow_negative_numbers = true)]
    pub(crate) scalp: Option<f64>,
    /// Girth of a tight ponytail, in cm, which says more than all the rest
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) girth: Option<f64>,
    /// How much of the hair is in the ponytail, in %
    #[arg(long, value_name = "PERCENT", default_value_t = 100.0, allow_negative_numbers = true)]
    pub(crate) gathered: f64,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: cm, g, hairs, weeks; bounds hold 80 of 100 people.\n\
    White hair is counted by region, as its share of all the hair and white of counted hairs.\n\
    Example: foilwork hair --length 25 --share 30 --texture fine --density high --girth 9.5")]
pub(crate) struct HairArgs {
    /// Mean length of the hair, in cm: not the longest
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) length: f64,
    /// Share of the hair that is asked about, in %
    #[arg(long, value_name = "PERCENT", default_value_t = 100.0, allow_negative_numbers = true)]
    pub(crate) share: f64,
    #[command(flatten)]
    pub(crate) facts: HairFactsArgs,
    /// Weeks since the last colour: how much has grown
    #[arg(long, value_name = "WEEKS", allow_negative_numbers = true)]
    pub(crate) weeks: Option<f64>,
    /// Regrowth in cm: how many weeks that took
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) regrowth: Option<f64>,
    /// Mixture that a section took an earlier time, in g: it narrows how much hair there is
    #[arg(long, value_name = "G", allow_negative_numbers = true)]
    pub(crate) used: Option<f64>,
    /// Share of all the hair that it was put on, in %
    #[arg(long, value_name = "PERCENT", default_value_t = 100.0, requires = "used", allow_negative_numbers = true)]
    pub(crate) used_on: f64,
    /// How that hair was taken: `weave`, `slice`, `back-comb`, `block`, `freehand`, `freehand-in-foil` or `regrowth`
    #[arg(long, value_name = "TECHNIQUE", default_value = "block", requires = "used")]
    pub(crate) used_technique: String,
    /// It was lightener, not colour
    #[arg(long, requires = "used")]
    pub(crate) used_lightener: bool,
    /// White hairs of a region, such as `sides=27:60/100`; give it again for each region
    #[arg(long, value_name = "REGION=SHARE:WHITE/COUNTED")]
    pub(crate) white: Vec<String>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
