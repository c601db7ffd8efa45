//! The plan: what to weigh, in which order, what was checked, what it costs, and what nobody knows.
//!
//! It is made by a row of stages, each in a file of its own and each reading only the results of those before it: the
//! hair as it is, sections, mixes, colours, timeline, money. The checks read the finished stages.

mod cards;
mod cautions;
mod chair;
mod check;
mod colours;
mod costs;
mod developer;
mod doses;
mod findings;
mod hair;
mod known;
mod level_rule;
mod make;
mod mix_plan;
mod mixes;
mod model;
mod order;
mod schema;
mod sections;
mod start;
mod timeline;
mod toner;
mod unknown;
mod unused;

pub use cards::{BowlCard, CardClock, CardMinutes, mixing_cards};
pub use cautions::Caution;
pub use chair::ChairTime;
pub use colours::{Contrast, SectionColour};
pub use costs::{LeftOut, LeftOutCost, MoneyPlan};
pub use doses::{NaturalShadeDose, SectionNeutralising};
pub use hair::{Existing, Hair, TestDone};
pub use level_rule::LevelRule;
pub use make::{plan, plan_text};
pub use mix_plan::{Bowl, Mix, PartKind, WeighedPart};
pub use model::Plan;
pub use order::OrderBasis;
pub use schema::plan_schema;
pub use start::Start;
pub use timeline::Step;
pub use unknown::{NotComputed, Unknown};
pub use unused::StatedNotUsed;
