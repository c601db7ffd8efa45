//! The head: its hair, what each section takes, how it will read.

mod along;
mod lowlights;
mod meeting;
mod model;
mod reading;
mod section;
mod shadow;

pub use along::{LevelStretch, LevelsAlong, ZoneHair};
pub use meeting::{Meeting, MeetingShade};
pub use model::HeadPlan;
pub use reading::{HeadReading, InPlace, PartReading, ZoneLook};
pub(super) use section::class_question;
pub use section::{EndsPlan, SectionPlan};
pub use shadow::{RootShadowPlan, ShadowLength};
