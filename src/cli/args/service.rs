use super::OutputArgs;
use clap::Args;
use std::path::PathBuf;

#[derive(Debug, Args)]
#[expect(clippy::struct_excessive_bools, reason = "each is a flag of its own")]
#[command(
    after_help = "Units: fields of the file carry theirs in the name (`mix_g`, `develop_min`); strengths are text, `6 % w/w`.\n\
    What says STOP stands at the top, whichever parts are chosen.\n\
    Example: foilwork plan examples/soft-gradient.toml --short\n\
    Example: foilwork plan examples/soft-gradient.toml --without money,sources\n\
    Example: foilwork plan examples/soft-gradient.toml --html --output bench.html"
)]
pub(crate) struct PlanArgs {
    /// Service file, TOML or JSON (told by what is in it); `-` reads the standard input
    pub(crate) file: PathBuf,
    /// The plan as JSON instead of text
    #[arg(long)]
    pub(crate) json: bool,
    /// A page (HTML) for a phone at the chair and for paper, in one file without network
    #[arg(long, conflicts_with_all = ["json", "cards"])]
    pub(crate) html: bool,
    /// The page for the guest: what is planned, risks, price, care, agreement
    #[arg(long, conflicts_with_all = ["json", "cards", "html"])]
    pub(crate) guest: bool,
    /// A workbook with live formulas, written to this .xlsx file instead
    #[arg(long, value_name = "FILE", conflicts_with_all = ["json", "html", "guest", "cards", "short", "only", "without", "trail", "output"])]
    pub(crate) xlsx: Option<PathBuf>,
    /// How each main result came about: value, formula, inputs, basis, sources, version (with --json as data)
    #[arg(long, conflicts_with_all = ["html", "guest", "cards", "short", "only", "without"])]
    pub(crate) trail: bool,
    /// Only the mixing cards, one for each fresh bowl
    #[arg(long)]
    pub(crate) cards: bool,
    /// A level seen in mid-service, the minute from the first brush: `nape=7.5@40`; give it again for each look
    #[arg(long, value_name = "SECTION=LEVEL@MINUTE")]
    pub(crate) seen: Vec<String>,
    /// Only what is needed at the chair
    #[arg(long, conflicts_with_all = ["json", "cards", "html", "guest"])]
    pub(crate) short: bool,
    /// Only these parts of the sheet, separated by commas: `chair`, `checks`, `bowls`, `order`, `day`, `colour`, `lift`, `head`,
    /// `stock`, `hair`, `money`, `cautions`, `defaults`, `unknowns`, `sources`
    #[arg(long, value_name = "PARTS", value_delimiter = ',', conflicts_with_all = ["json", "cards", "html", "guest", "short"])]
    pub(crate) only: Vec<String>,
    /// All parts but these
    #[arg(long, value_name = "PARTS", value_delimiter = ',', conflicts_with_all = ["json", "cards", "html", "guest", "short", "only"])]
    pub(crate) without: Vec<String>,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
#[expect(clippy::struct_excessive_bools, reason = "each is a flag of its own")]
pub(crate) struct SchemaArgs {
    /// The schema of a shop file
    #[arg(long)]
    pub(crate) shop: bool,
    /// The schema of what `plan --json` prints
    #[arg(long, conflicts_with = "shop")]
    pub(crate) plan: bool,
    /// The schema of a kept record, a line of what `record --keep` writes
    #[arg(long, conflicts_with_all = ["shop", "plan"])]
    pub(crate) record: bool,
    /// The schema of what is made of records
    #[arg(long, conflicts_with_all = ["shop", "plan", "record"])]
    pub(crate) history: bool,
    #[command(flatten)]
    pub(crate) output: OutputArgs,
}

#[derive(Debug, Args)]
#[command(after_help = "Units: each file says its own. Nothing is overwritten.\n\
    Example: foilwork start my-salon --jurisdiction EU --currency EUR")]
pub(crate) struct StartArgs {
    /// The folder for the three files; it is made where there is none
    pub(crate) folder: PathBuf,
    /// Whose law is checked: EU, GB, US, CA, AU, NZ, CN, JP, ASEAN or PL
    #[arg(long, short, value_name = "CODE")]
    pub(crate) jurisdiction: String,
    /// ISO 4217 code of your prices
    #[arg(long, value_name = "CODE")]
    pub(crate) currency: String,
}
