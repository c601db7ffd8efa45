//! The arguments of every command, one file for each family, as the help shows them.

mod business;
mod chart;
mod choose;
mod colour;
mod command;
mod consult;
mod day;
mod fill;
mod foils;
mod hair;
mod head;
mod history;
mod lift;
mod mix;
mod money;
mod output;
mod peroxide;
mod record;
mod service;
mod worksheet;

pub(crate) use business::{
    BreakEvenArgs, BusinessArgs, CommissionArgs, ProductivityArgs, Question, QuoteArgs, RentArgs, ReorderArgs, TipsArgs,
};
pub(crate) use chart::{
    ChartArgs, CostChartArgs, DilutionChartArgs, MarginChartArgs, Picture, PigmentChartArgs, WheelArgs,
};
pub(crate) use choose::ChooseArgs;
pub(crate) use colour::{LevelArgs, SwatchArgs, TonerArgs};
pub(crate) use command::{Arguments, Command};
pub(crate) use consult::ConsultArgs;
pub(crate) use day::DayArgs;
pub(crate) use fill::{FillArgs, FillRule, TableFileArgs};
pub(crate) use foils::FoilsArgs;
pub(crate) use hair::{HairArgs, HairFactsArgs};
pub(crate) use head::HeadArgs;
pub(crate) use history::{ForgetArgs, HistoryArgs};
pub(crate) use lift::{LiftArgs, SituationArgs, StrandTestArgs};
pub(crate) use mix::{LimitsArgs, ScaleArgs};
pub(crate) use money::{CostArgs, PriceArgs};
pub(crate) use output::{OutputArgs, ReportArgs, SourcesArgs, TrailArgs, TrailDataArgs};
pub(crate) use peroxide::{BlendArgs, ConditionsArgs, ConvertArgs, DiluteArgs, GridArgs, TableArgs, TitrateArgs};
pub(crate) use record::{NoteArgs, RecordArgs};
pub(crate) use service::{PlanArgs, SchemaArgs, StartArgs};
pub(crate) use worksheet::{ChecklistArgs, WorksheetArgs};
