//! Wrappers of `foilwork::mix`: fresh bowls over time.

use super::{
    recipe::{Addition, Recipe, additions},
    weighing::mass,
};
use crate::{answer::answer, error::raise, sequence::Sequence};
use foilwork::{
    mix::{self, BowlRequest, Pace},
    quantity::Duration,
};
use pyo3::prelude::*;

answer! {
    in "foilwork.mix";
    /// One fresh bowl of a :class:`BowlPlan`. Times count in min from the start of the first mixing.
    FreshBowl {
        /// Mass to mix in g, residue included.
        mixed_g: f64,
        /// Mass that goes onto the hair in g.
        applied_g: f64,
        /// When to start mixing.
        mix_at_min: f64,
        /// When it is mixed and application goes on.
        ready_at_min: f64,
        /// When the last of it is on the hair.
        empty_at_min: f64,
        /// When it must no longer be used.
        use_by_min: f64,
    }
}

impl From<&mix::FreshBowl> for FreshBowl {
    fn from(bowl: &mix::FreshBowl) -> Self {
        Self {
            mixed_g: bowl.mixed.g(),
            applied_g: bowl.applied.g(),
            mix_at_min: bowl.mix_at.min(),
            ready_at_min: bowl.ready_at.min(),
            empty_at_min: bowl.empty_at.min(),
            use_by_min: bowl.use_by.min(),
        }
    }
}

answer! {
    in "foilwork.mix";
    /// What becomes of a product in fresh bowls; made by :meth:`BowlPlan.leftovers`.
    Leftover {
        /// The product.
        product: String,
        /// What is put into bowls, in g.
        used_g: f64,
        /// What of that is thrown away, in g.
        wasted_g: f64,
    }
}

answer! {
    in "foilwork.mix";
    /// Fresh bowls in the order of mixing; made by :func:`bowls`.
    BowlPlan {
        /// The bowls, all of one size.
        bowls: Vec<FreshBowl>,
        /// Everything mixed in g, which is what the bowls cost.
        mixed_g: f64,
        /// Everything that reaches the hair in g.
        applied_g: f64,
        /// Mixed and thrown away, in g.
        leftover_g: f64,
    }
    impl {
        /// The recipe of each bowl: ``base`` scaled so that base and additives together fill it.
        ///
        /// Args:
        ///     base: the recipe, in g.
        ///     additives: what is added to it.
        ///
        /// Returns:
        ///     One recipe for each bowl.
        ///
        /// Raises:
        ///     FoilworkError: a recipe that is not in g, or an additive of a product that is not in it.
        #[pyo3(signature = (base, additives = Sequence(vec![])), text_signature = "($self, base, additives=())")]
        fn recipes(&self, base: &Recipe, additives: Sequence<Addition>) -> PyResult<Vec<Recipe>> {
            let additives = additives.0;
            let recipes = self.plan()?.recipes(&base.0, &additions(&additives)?).map_err(raise)?;
            Ok(recipes.into_iter().map(Recipe).collect())
        }

        /// What each product loses.
        ///
        /// Args:
        ///     base: the recipe, in g.
        ///     additives: what is added to it.
        ///
        /// Returns:
        ///     The products, with what is put into bowls and what of that is thrown away.
        ///
        /// Raises:
        ///     FoilworkError: as for :meth:`recipes`.
        #[pyo3(signature = (base, additives = Sequence(vec![])), text_signature = "($self, base, additives=())")]
        fn leftovers(&self, base: &Recipe, additives: Sequence<Addition>) -> PyResult<Vec<Leftover>> {
            let additives = additives.0;
            let leftovers = self.plan()?.leftovers(&base.0, &additions(&additives)?).map_err(raise)?;
            let leftover =
                |l: mix::Leftover| Leftover { product: l.product, used_g: l.used.g(), wasted_g: l.wasted.g() };
            Ok(leftovers.into_iter().map(leftover).collect())
        }
    }
}

impl BowlPlan {
    fn plan(&self) -> PyResult<mix::BowlPlan> {
        let minutes = |min| Duration::from_min(min).map_err(raise);
        let bowl = |bowl: &FreshBowl| {
            Ok(mix::FreshBowl {
                mixed: mass(bowl.mixed_g)?,
                applied: mass(bowl.applied_g)?,
                mix_at: minutes(bowl.mix_at_min)?,
                ready_at: minutes(bowl.ready_at_min)?,
                empty_at: minutes(bowl.empty_at_min)?,
                use_by: minutes(bowl.use_by_min)?,
            })
        };
        self.bowls.iter().map(bowl).collect()
    }
}

impl From<&mix::BowlPlan> for BowlPlan {
    fn from(plan: &mix::BowlPlan) -> Self {
        Self {
            bowls: plan.bowls().iter().map(FreshBowl::from).collect(),
            mixed_g: plan.mixed().g(),
            applied_g: plan.applied().g(),
            leftover_g: plan.leftover().g(),
        }
    }
}

/// Number, size and mixing times of fresh bowls.
///
/// Args:
///     total_g: product that must reach the hair, in g.
///     capacity_g: the most one bowl holds, in g.
///     working_life_min: how long a mixed bowl may be used, in min, from the product's directions.
///     pace_g_per_min: how fast product goes onto the hair, in g/min.
///     mixing_min: time application stands still for each mixing, in min.
///     residue_g: what stays behind in bowl and brush, in g.
///
/// Returns:
///     The bowls, with what they come to.
///
/// Raises:
///     FoilworkError: when a bowl could put nothing on the hair, or hundreds would be needed.
///
/// Examples:
///     >>> from foilwork.mix import bowls
///     >>> plan = bowls(200, 120, 40, 2)
///     >>> len(plan.bowls), round(plan.mixed_g)
///     (3, 200)
///     >>> from foilwork.mix import Addition, Recipe
///     >>> lost = plan.leftovers(Recipe("1 g lightener + 2 g 9%"), [Addition.per_bowl("bond builder", 2)])
///     >>> [(each.product, round(each.used_g)) for each in lost]
///     [('lightener', 65), ('9%', 129), ('bond builder', 6)]
#[pyfunction]
#[pyo3(signature = (total_g, capacity_g, working_life_min, pace_g_per_min, *, mixing_min = 0.0, residue_g = 0.0))]
pub fn bowls(
    total_g: f64,
    capacity_g: f64,
    working_life_min: f64,
    pace_g_per_min: f64,
    mixing_min: f64,
    residue_g: f64,
) -> PyResult<BowlPlan> {
    let minutes = |min| Duration::from_min(min).map_err(raise);
    let pace = Pace::from_g_per_min(pace_g_per_min).map_err(raise)?;
    let request = BowlRequest::new(mass(total_g)?, mass(capacity_g)?, minutes(working_life_min)?, pace)
        .mixing(minutes(mixing_min)?)
        .residue(mass(residue_g)?);
    Ok((&mix::bowls(&request).map_err(raise)?).into())
}
