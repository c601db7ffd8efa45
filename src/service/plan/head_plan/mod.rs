//! The head: its hair, what each section takes, how it will read.

mod meeting;
mod model;
mod reading;
mod section;
mod shadow;

pub use meeting::{Meeting, MeetingShade};
pub use model::HeadPlan;
pub use reading::{HeadReading, InPlace, PartReading, ZoneLook};
pub use section::SectionPlan;
pub(super) use section::class_question;
pub use shadow::{RootShadowPlan, ShadowLength};
