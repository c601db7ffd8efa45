//! The service: what the user states, and the plan foilwork makes of it.
//!
//! [`parse`] reads a service file (TOML or JSON of the same shape) and reports everything that is wrong with it;
//! [`plan`] turns the checked file into a [`Plan`]. How a plan is drawn is the business of [`sheet`](crate::sheet).

mod file;
mod plan;
mod request;
pub mod shape;
mod starter;

pub use file::{from_value_with_shop, parse, parse_with_shop, service_schema, shop_file, strand_book};
pub(crate) use plan::strength_decimals;
pub use plan::{
    Bowl, BowlCard, CardClock, CardMinutes, Caution, ChairTime, ChosenStrength, Contrast, Evidence, Existing,
    ExpectedLook, Hair, HeadPlan, HeadReading, InPlace, InvalidSeenLevel, LeftOut, LeftOutCost, LevelRule, Mix,
    MoneyPlan, NaturalShadeDose, NotComputed, OrderBasis, PartKind, Plan, RejectedStrength, SectionColour, SectionLift,
    SectionNeutralising, SectionPlan, SeenLevel, SeenNow, Start, StatedNotUsed, Step, TestDone, TogetherPlan,
    TogetherSection, Unknown, WeighedPart, mixing_cards, plan, plan_schema, plan_text, plan_with,
};
pub use request::{DefaultUsed, DefaultValue, WorkStage};
pub use shape::ServiceFile;
pub use starter::{Starter, starter};
