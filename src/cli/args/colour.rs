use super::{ReportArgs, TrailArgs};
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(
    after_help = "Units: levels on the European 1-10 naming, decimals allowed. Rules of thumb: a strand test decides."
)]
pub(crate) struct LevelArgs {
    /// Natural level: what grows out of the scalp
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true, required_unless_present = "measured")]
    pub(crate) natural: Option<String>,
    /// L*, a*, b* read on the hair (D65, 10 degrees) instead: the level it is as light as, with bounds
    #[arg(long, value_name = "L,A,B", allow_hyphen_values = true, conflicts_with = "natural")]
    pub(crate) measured: Option<String>,
    /// What it was read with: spectrophotometer, calibrated-photograph; a photograph is refused
    #[arg(long, value_name = "INSTRUMENT", default_value = "spectrophotometer")]
    pub(crate) measured_with: String,
    /// Wanted level: the lift, the formula level, and the warmth that shows there
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) target: Option<String>,
    /// Level of a permanent shade: the level it gives on this hair
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) applied: Option<String>,
    /// The hair carries artificial colour already
    #[arg(long)]
    pub(crate) coloured: bool,
    /// The shades are numbered from 1 to 12 instead of 1 to 10
    #[arg(long)]
    pub(crate) twelve: bool,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: levels from 1 to 12, CIELAB for D65 and 10 degrees. A model, not a photograph.")]
pub(crate) struct SwatchArgs {
    /// The level shown, such as 7 or 6.5
    #[arg(allow_negative_numbers = true)]
    pub(crate) level: String,
    /// Natural level of hair that was lightened to it
    #[arg(long, value_name = "LEVEL", conflicts_with = "tone", allow_negative_numbers = true)]
    pub(crate) from: Option<String>,
    /// Tone of a shade of that level on white hair: `violet`, or `yellow, violet` with the main hue first
    #[arg(long, value_name = "HUES")]
    pub(crate) tone: Option<String>,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}

#[derive(Debug, Args)]
#[command(override_usage = "foilwork toner [OPTIONS] --lifted <LEVEL> --target <LEVEL> <SHOP>\n       \
    with one of --natural <LEVEL>, --seen <WORDS>, --measured <L,A,B>")]
#[command(
    after_help = "Units: levels from 1 to 12, masses in g, differences in CIEDE2000. A model, not a photograph.\n\
    Example: foilwork toner examples/juniper_and_tide.toml --natural 5 \\\n         \
    --lifted 9 --target 8 --tone violet"
)]
pub(crate) struct TonerArgs {
    /// Your shop file, as `examples/juniper_and_tide.toml`; `-` reads the standard input
    pub(crate) shop: PathBuf,
    /// Natural level of the hair: its look when lightened is modelled
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) natural: Option<String>,
    /// Level it was lifted to
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) lifted: Option<String>,
    /// The exposed pigment as you see it, such as `orange` or `pale yellow`: counts before the model
    #[arg(long, value_name = "WORDS")]
    pub(crate) seen: Option<String>,
    /// L*, a*, b* that an instrument reads on it (D65, 10 degrees): counts before both
    #[arg(long, value_name = "L,A,B", allow_hyphen_values = true)]
    pub(crate) measured: Option<String>,
    /// What it was read with: spectrophotometer, calibrated-photograph; a photograph is refused
    #[arg(long, value_name = "INSTRUMENT", default_value = "spectrophotometer")]
    pub(crate) measured_with: String,
    /// White hair instead: a shade gives its own level there
    #[arg(long, conflicts_with_all = ["natural", "lifted", "seen", "measured"])]
    pub(crate) white: bool,
    /// Level wanted
    #[arg(long, value_name = "LEVEL", allow_negative_numbers = true)]
    pub(crate) target: String,
    /// Tone wanted: `neutral`, `violet`, or `yellow, violet` with the main hue first
    #[arg(long, default_value = "neutral", value_name = "HUES")]
    pub(crate) tone: String,
    /// Choose only among these codes of the shop, separated by commas
    #[arg(long, value_name = "CODES")]
    pub(crate) shades: Option<String>,
    /// The hair takes up liquid readily
    #[arg(long)]
    pub(crate) porous: bool,
    /// How many shades a mix may have, from 1 to 4
    #[arg(long, default_value_t = 2, value_name = "COUNT")]
    pub(crate) most_shades: usize,
    /// Mass of all shades together in g, without developer
    #[arg(long, default_value_t = 30.0, value_name = "G", allow_negative_numbers = true)]
    pub(crate) bowl: f64,
    /// The scale's division in g
    #[arg(long, default_value_t = 1.0, value_name = "G", allow_negative_numbers = true)]
    pub(crate) division: f64,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
