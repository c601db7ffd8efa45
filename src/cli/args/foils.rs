use super::{HairFactsArgs, ReportArgs, TrailArgs};
use clap::Args;

#[derive(Debug, Args)]
#[command(after_help = "Units: panels and hair in cm; subsections, strands and gaps in mm; g and min.\n\
    What is taken by hand is a quarter off either way.\n\
    Example: foilwork foils --width 8 --height 6 --technique weave --pick 3 --gap 3 --length 30")]
pub(crate) struct FoilsArgs {
    /// Width of the panel along the parting, in cm
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) width: f64,
    /// Height of the panel across the partings, in cm
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) height: f64,
    /// How the hair is taken: `weave`, `slice`, `back-comb` or `freehand-in-foil`
    #[arg(long, value_name = "TECHNIQUE", default_value = "weave")]
    pub(crate) technique: String,
    /// Width of a strand of a weave, in mm
    #[arg(long, value_name = "MM", default_value_t = 3.0, allow_negative_numbers = true)]
    pub(crate) pick: f64,
    /// Between two strands of a weave, in mm
    #[arg(long, value_name = "MM", default_value_t = 3.0, allow_negative_numbers = true)]
    pub(crate) gap: f64,
    /// Thickness of a subsection, in mm; 1/8 inch where it is not said
    #[arg(long, value_name = "MM", allow_negative_numbers = true)]
    pub(crate) subsection: Option<f64>,
    /// How deep the comb goes into it, in mm; through all of it where it is not said
    #[arg(long, value_name = "MM", allow_negative_numbers = true)]
    pub(crate) depth: Option<f64>,
    /// Hair left between two foils, in mm: as much as a subsection where it is not said, 0 for back to back
    #[arg(long, value_name = "MM", allow_negative_numbers = true)]
    pub(crate) left: Option<f64>,
    /// Width of a foil, in cm; as wide as the panel where it is not said
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) foil_width: Option<f64>,
    /// Mean length of the hair, in cm
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) length: f64,
    /// From the scalp to the first colour, in cm; usual for the technique where it is not said
    #[arg(long, value_name = "CM", allow_negative_numbers = true)]
    pub(crate) start: Option<f64>,
    /// The mix is a colour, which takes less on a gram of hair than a lightener
    #[arg(long)]
    pub(crate) colour: bool,
    #[command(flatten)]
    pub(crate) facts: HairFactsArgs,
    #[command(flatten)]
    pub(crate) report: ReportArgs,
    #[command(flatten)]
    pub(crate) trail: TrailArgs,
}
