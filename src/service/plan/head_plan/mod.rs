//! The head: its hair, what each section takes, how it will read.

mod model;
mod reading;
mod section;

pub use model::HeadPlan;
pub use reading::{HeadReading, InPlace, PartReading, ZoneLook};
pub use section::SectionPlan;
