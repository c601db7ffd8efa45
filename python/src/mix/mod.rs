//! Wrappers of `foilwork::mix`.

mod advice;
mod bowl;
mod card;
mod composition;
mod ratio;
mod recipe;
mod weighing;

pub use composition::Composition;
pub use recipe::Recipe;

crate::room::room! {
    /// The bowl: ratios, recipes, weighing on a real scale, bowls over time, what is on the hair.
    mix {
        advice { HandlingAdvice, NaturalShare, check_lightener, handling_advice, natural_share }
        bowl { BowlPlan, FreshBowl, Leftover, bowls }
        card { Card, CardLine, mixing_card }
        composition { Composition, Constituent, Ingredient, Product }
        ratio { Ratio }
        recipe { Addition, Part, Recipe, convert_amount }
        weighing { MinimumBowl, StrengthShift, TareStep, Weighing, as_applied, minimum_bowl, minimum_mass, weigh }
    }
}
