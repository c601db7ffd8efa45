//! The plan: what to weigh, in which order, what was checked, what it costs, and what nobody knows.

mod cards;
mod cautions;
mod colour;
mod costs;
mod developer;
mod finding;
mod gradient;
mod legal;
mod level_rule;
mod make;
mod mixes;
mod model;
mod order;
mod tests_done;
mod unknown;
mod work_checks;

pub use cards::{PlanCardError, mixing_cards};
pub use finding::{Finding, Verdict};
pub use make::{plan, plan_text};
pub use model::{
    Bowl, Caution, Contrast, Fact, LevelRule, Mix, MoneyPlan, NotComputed, Part, Plan, Range, SectionColour, SwatchData,
};
pub use order::Step;
