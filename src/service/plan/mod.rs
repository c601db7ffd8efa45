//! The plan: what to weigh, in which order, what was checked, what it costs, and what nobody knows.
//!
//! It is made by a row of stages, each in a file of its own and each reading only the results of those before it: the
//! hair as it is, sections, strengths left open, mixes, colours, timeline, lift, head, stock, money, day. The checks read
//! the finished stages.

mod booking;
mod canvas;
mod cards;
mod cautions;
mod chair;
mod check;
mod colours;
mod consulted;
mod costs;
mod day_plan;
mod day_rules;
mod declared;
mod developer;
mod doses;
mod evidence;
mod existing;
mod findings;
mod first_bowl;
mod first_step;
mod first_steps;
mod hair;
mod head_plan;
mod if_reached;
mod known;
mod lapsed;
mod level_rule;
mod lift_plan;
mod make;
mod mix_plan;
mod mixes;
mod model;
mod near_shades;
mod order;
mod own_times;
mod price_plan;
mod proportion;
mod scalp;
mod schema;
mod sections;
mod shelf_strengths;
mod situation;
mod start;
mod stock;
mod strengths;
mod timeline;
mod together;
mod told;
mod toner;
mod trail;
mod trail_day;
mod trail_head;
mod trail_money;
mod unknown;
mod unused;

pub use booking::Booking;
pub use cards::{BowlCard, CardClock, CardMinutes, mixing_cards};
pub use cautions::Caution;
pub use chair::{ChairClock, ChairTime};
pub use colours::{Contrast, SectionColour};
pub use consulted::{Agreed, HistoryGap, PastService, SaidBefore, WishHeld, WishSection};
pub use costs::{LeftOut, LeftOutCost, MoneyPlan};
pub use day_plan::{DayPlan, OrderedBy};
pub use doses::{NaturalShadeDose, SectionNeutralising};
pub use evidence::{Evidence, InvalidSeenLevel, SeenLevel};
pub use existing::Existing;
pub use first_bowl::FirstPart;
pub use first_step::FirstStep;
pub use hair::{Hair, TestDone};
pub use head_plan::{
    EndsPlan, HeadPlan, HeadReading, InPlace, LevelStretch, LevelsAlong, Meeting, MeetingShade, PartReading,
    RootShadowPlan, SectionPlan, ShadowLength, ZoneHair, ZoneLook,
};
pub(crate) use if_reached::{if_all_reached, if_it_reaches};
pub use lapsed::Lapsed;
pub use level_rule::LevelRule;
pub use lift_plan::{ExpectedLook, SectionLift, SeenNow};
pub(in crate::service) use make::plan_without_day;
pub use make::{plan, plan_text, plan_with};
pub(crate) use mix_plan::strength_decimals;
pub use mix_plan::{Bowl, Mix, PartKind, WeighedPart};
pub use model::Plan;
pub use order::OrderBasis;
pub use price_plan::{CostRange, PriceAt, PriceRange, PricedBy};
pub use schema::plan_schema;
pub use start::Start;
pub use stock::{ConsumableLine, StockCover, StockLine, StockPlan, Substitute};
pub use timeline::Step;
pub use together::{ChosenStrength, RejectedStrength, TogetherPlan, TogetherSection};
pub(crate) use told::NOT_YET;
pub use unknown::{NotComputed, Unknown};
pub use unused::StatedNotUsed;
