//! The request: a service file with every number turned into a checked quantity and every name into the thing it names.

mod after_rinse;
mod applying;
mod build;
mod consultation;
mod counts_from;
mod defaults;
mod floor;
mod hair_amounts;
mod head_map;
mod panel;
mod shelf;
mod strands;
mod task;

pub use applying::{AppliedBy, Applying, FoilPace};
pub use defaults::{DefaultUsed, DefaultValue};
pub use panel::CountedPanels;
pub use task::WorkStage;

pub(super) use crate::reader::InField;
pub(super) use build::Request;
pub(super) use consultation::Asked;
pub(super) use floor::OnFloor;
pub(super) use hair_amounts::{HairAmounts, SectionFoils};
pub(super) use head_map::HeadMap;
pub(super) use shelf::{Bottle, Item, ItemKind};
pub(super) use strands::{guest, of_hair, on_hair};
pub(super) use task::{Look, Oxidant, Task};
