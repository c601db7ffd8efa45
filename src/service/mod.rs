//! The service: what the user states, and the plan foilwork makes of it.
//!
//! [`parse`] reads a service file (TOML or JSON of the same shape) and reports everything that is wrong with it;
//! [`plan`] turns the checked file into a [`Plan`]. How a plan is drawn is the business of [`sheet`](crate::sheet).

mod file;
mod plan;
mod request;
pub mod shape;
mod starter;

pub use file::{parse, parse_with_shop, service_schema, shop_file};
pub use plan::{
    Bowl, BowlCard, CardClock, CardMinutes, Caution, ChairTime, Contrast, Existing, Hair, LeftOut, LeftOutCost,
    LevelRule, Mix, MoneyPlan, NaturalShadeDose, NotComputed, OrderBasis, PartKind, Plan, SectionColour,
    SectionNeutralising, Start, StatedNotUsed, Step, TestDone, Unknown, WeighedPart, mixing_cards, plan, plan_schema,
    plan_text,
};
pub use request::{DefaultUsed, DefaultValue, WorkStage};
pub use shape::ServiceFile;
pub use starter::{Starter, starter};
