use super::{
    BlendArgs, BusinessArgs, ChartArgs, ChecklistArgs, ChooseArgs, ConsultArgs, ConvertArgs, CostArgs, DayArgs,
    DiluteArgs, FillArgs, FoilsArgs, ForgetArgs, HairArgs, HeadArgs, HistoryArgs, LevelArgs, LiftArgs, LimitsArgs,
    NoteArgs, PlanArgs, PriceArgs, RecordArgs, ScaleArgs, SchemaArgs, SourcesArgs, StartArgs, StrandTestArgs,
    SwatchArgs, TableArgs, TitrateArgs, TonerArgs, WorksheetArgs,
};
use clap::{Parser, Subcommand};

/// Hair-colour chemistry: strengths, recipes, limits, and a checked plan for a lightening service.
#[derive(Debug, Parser)]
#[command(
    name = "foilwork",
    version,
    term_width = 80,
    after_help = "Exit status: 0 fine, 1 the plan or the log says stop, 2 bad input.\n\
                  foilwork never says that anything is safe: the product's own instructions and local law come first."
)]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Write a service, a shop and a list of services to begin with
    Start(StartArgs),
    /// Read a service file and print the bench sheet
    Plan(PlanArgs),
    /// Decide whether to go on: reasons, who agrees, what each test changes, visits, alternatives
    Consult(ConsultArgs),
    /// Print the JSON Schema of a service file, a shop file, a plan or a kept record
    #[command(after_help = "Units: every field of a file carries its unit in its name, such as `mix_g`.")]
    Schema(SchemaArgs),
    /// Put a peroxide strength into every unit
    Convert(ConvertArgs),
    /// Weaken a developer, or blend two, to a strength
    Dilute(DiluteArgs),
    /// Make a wall chart: every stock diluted to every target
    Table(TableArgs),
    /// Fill further columns of a file of any length, row by row
    Fill(FillArgs),
    /// Blend any number of bottles to a strength, at least cost or from the fewest
    Blend(BlendArgs),
    /// Find a strength by titration with permanganate, or the titre to expect
    Titrate(TitrateArgs),
    /// Scale a recipe to a total, by a factor or by one part, and weigh it
    Scale(ScaleArgs),
    /// Estimate hairs, grams and surface of the hair, its growth and its white share
    Hair(HairArgs),
    /// Count the foils of a panel, the share of hair in them, and the grams for each
    Foils(FoilsArgs),
    /// Choose technique, class of product, the steps before it and class of service, with reasons
    Choose(ChooseArgs),
    /// Say what each section of a service takes and how the head will read; draw its map
    Head(HeadArgs),
    /// Say who does what when: the best order, looks, rinses, what a helper saves; draw it
    Day(DayArgs),
    /// Note a line in the log of a service, and say what follows
    Note(NoteArgs),
    /// Put what happened beside the plan: grams, minutes, levels, and what repeats the result
    Record(RecordArgs),
    /// Sum up many kept records: use, waste, time, margin, and what they teach
    History(HistoryArgs),
    /// Take the lines of a guest out of records and strand books
    Forget(ForgetArgs),
    /// Work out lift, formula level, result and the warmth that shows
    Level(LevelArgs),
    /// Forecast lift against time, with bounds; learns from strand tests
    Lift(LiftArgs),
    /// Write a strand test into a strand book
    StrandTest(StrandTestArgs),
    /// Model the colour of a level or a tone, with bounds
    Swatch(SwatchArgs),
    /// Find the mix of your own shades that comes nearest to a target
    Toner(TonerArgs),
    /// List a jurisdiction's limits: what is checked and what is not
    Limits(LimitsArgs),
    /// Set a price from a cost, or see what a price, a margin or a discount means
    Price(PriceArgs),
    /// Cost and price a list of services
    Cost(CostArgs),
    /// Break-even, pay, rent, productivity, stock and quotes
    Business(BusinessArgs),
    /// Draw a picture: dilution grid, levels and pigment, wheel, costs, margin
    Chart(ChartArgs),
    /// Make a sheet of problems for a class, with worked answers and the usual errors
    Worksheet(WorksheetArgs),
    /// Make a checklist for watching practical work, mapped to published units
    Checklist(ChecklistArgs),
    /// List every source that a number can rest on
    Sources(SourcesArgs),
}
