//! Wrappers of `foilwork::mix`.

mod bowl;
mod composition;
mod recipe;

pub use composition::Composition;

crate::room::room! {
    /// The bowl: ratios, recipes, weighing on a real scale, bowls over time, what is on the hair.
    mix {
        bowl { Bowl, BowlPlan, Ratio, Weighing, as_applied, bowls, minimum_bowl, minimum_mass, weigh }
        composition { Composition, Product, Ingredient, handling_advice }
        recipe { Additive, Recipe, convert_amount, mixing_card, natural_share }
    }
}
