use super::{ReportArgs, TrailArgs};
use clap::Args;
use std::path::PathBuf;

/// A mixture on a hair.
#[derive(Debug, Clone, Args)]
pub(crate) struct SituationArgs {
    /// Strength on the hair after mixing, such as `4 % w/w`
    #[arg(long, value_name = "STRENGTH", required_unless_present = "developer", conflicts_with = "developer")]
    pub(crate) on_hair: Option<String>,
    /// Strength of the developer before mixing, with --ratio
    #[arg(long, value_name = "STRENGTH", requires = "ratio")]
    pub(crate) developer: Option<String>,
    /// Product to developer, by mass, such as `1:2`
    #[arg(long, value_name = "RATIO", requires = "developer")]
    pub(crate) ratio: Option<String>,
    /// Temperature of the mixture on the hair, in C; the room's, or more near the scalp
    #[arg(long, value_name = "C", default_value_t = 25.0, allow_negative_numbers = true)]
    pub(crate) temperature: f64,
    /// What oxidises beside the peroxide: `persulfate`, `mild` or `none`
    #[arg(long, value_name = "BOOSTER", default_value = "persulfate")]
    pub(crate) booster: String,
    /// pH of the mixed bowl, where the product states it; never assumed
    #[arg(long, value_name = "PH", allow_negative_numbers = true)]
    pub(crate) ph: Option<f64>,
    /// How readily the hair takes up liquid: `low`, `normal` or `high`
    #[arg(long, value_name = "UPTAKE", default_value = "normal")]
    pub(crate) uptake: String,
    /// How thick the fibre is: `fine`, `medium` or `coarse`
    #[arg(long, value_name = "TEXTURE", default_value = "medium")]
    pub(crate) texture: String,
    /// What lies over the mixture: `foil` (or film: it stays moist) or `open-air` (it dries, which ends the action)
    #[arg(long, value_name = "COVER", default_value = "foil")]
    pub(crate) cover: String,
    /// A code for the guest, never a name
    #[arg(long, value_name = "CODE")]
    pub(crate) guest: Option<String>,
    /// The lightener
    #[arg(long, value_name = "NAME")]
    pub(crate) product: Option<String>,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: levels on the European 1-10 naming, minutes from a strand's first minute, % w/w.\n\
    A model: without a strand test it spans two levels either way, and a strand decides.\n\
    Example: foilwork lift --from 4 --target 8 --developer \"6 % w/w\" --ratio 1:2")]
pub(crate) struct LiftArgs {
    /// Level now
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) from: String,
    /// Level wanted: when it is reached, and how sure that is
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) target: Option<String>,
    /// The longest that a strand may carry the mixture, in min; the product's own instructions decide
    #[arg(long, value_name = "MIN", default_value_t = 45.0, allow_negative_numbers = true)]
    pub(crate) limit: f64,
    /// A level seen during the service, as minute and level: `20=6.5`; give it again for each look
    #[arg(long, value_name = "MIN=LEVEL")]
    pub(crate) seen: Vec<String>,
    /// A developer of the shelf, such as `3 % w/w`; give it again for each: the gentlest that reaches the target is named
    #[arg(long, value_name = "STRENGTH", requires_all = ["target", "ratio"])]
    pub(crate) shelf: Vec<String>,
    /// Strand book to learn from, as `foilwork strand-test` writes it
    #[arg(long, value_name = "BOOK")]
    pub(crate) strands: Option<PathBuf>,
    /// Write the picture, level against time with band, readings and limit, into this file as SVG
    #[arg(long, value_name = "FILE")]
    pub(crate) svg: Option<PathBuf>,
    #[command(flatten)]
    pub(crate) situation: SituationArgs,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(
    after_help = "The book is comma-separated text, or by its name (ending in .json or .jsonl) a JSON object in each line; a reading is appended to it in one write, so a crash loses one line \
    at most.\n\
    Example: foilwork strand-test strands.csv --before 4 --after 8 --minutes 30 \\\n         \
    --developer \"6 % w/w\" --ratio 1:2 --guest J-014"
)]
pub(crate) struct StrandTestArgs {
    /// The strand book; it is begun when there is none
    pub(crate) book: PathBuf,
    /// Level before, as read
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) before: String,
    /// Level after, as read
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) after: String,
    /// How long the mixture lay on the strand, in min
    #[arg(long, value_name = "MIN", allow_negative_numbers = true)]
    pub(crate) minutes: f64,
    /// How the levels were read: `eye` or `instrument`
    #[arg(long, value_name = "READER", default_value = "eye")]
    pub(crate) reader: String,
    #[command(flatten)]
    pub(crate) situation: SituationArgs,
}
