use super::{Part, Plan, order};
use crate::{
    mix::{self, Card, CardError, CardRequest, Recipe, RecipeAmount, RecipeError, Unit},
    quantity::{Duration, InvalidQuantity, Mass, MassFraction},
    service::{file::Moment, request::Stage},
    source::{Interval, InvalidInterval},
};
use jiff::SignedDuration;
use rust_decimal::Decimal;

/// A card that cannot be written for a plan.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PlanCardError {
    /// The bowl cannot be written as a recipe or weighed.
    #[error(transparent)]
    Card(#[from] CardError),
    /// A product's name cannot stand in a recipe.
    #[error(transparent)]
    Recipe(#[from] RecipeError),
    /// A number of the plan was changed to something impossible.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
    /// Bounds of the plan were changed to something impossible.
    #[error(transparent)]
    Interval(#[from] InvalidInterval),
    /// The start of the plan was changed to something that is no date.
    #[error("{0}")]
    Start(String),
}

/// One card for each fresh bowl, to lay beside it: what, grams, strength on the hair, time to mix, use-by.
///
/// The clock times are planned ones; toners and root shadows come at the earliest after the last rinse. Write down the
/// time at which a bowl was really mixed.
///
/// # Errors
///
/// [`PlanCardError`]; it cannot happen for a plan that [`plan`](crate::service::plan) made from products whose names
/// can stand in a recipe (no plus sign, no line break).
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{mixing_cards, parse, plan}};
///
/// let file = parse(include_str!("../../../examples/soft-gradient.toml"), Format::Toml)?;
/// let cards = mixing_cards(&plan(&file)?)?;
/// assert_eq!(cards[0].mixed_at, jiff::civil::date(2026, 11, 25).at(10, 0, 0, 0));
/// assert_eq!(cards[0].use_by, jiff::civil::date(2026, 11, 25).at(10, 40, 0, 0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn mixing_cards(plan: &Plan) -> Result<Vec<Card>, PlanCardError> {
    let start: Moment = plan.start.parse().map_err(PlanCardError::Start)?;
    let rinsed = order::end_min(&plan.order, |stage| stage == Stage::Section);
    let mut cards = Vec::new();
    for mix in &plan.mixes {
        let offset = if mix.stage == Stage::Section { 0.0 } else { rinsed };
        for bowl in &mix.bowls {
            let recipe = recipe(&bowl.parts)?;
            let strengths = bowl.parts.iter().map(strength).collect::<Result<Vec<_>, _>>()?;
            for (i, at_min) in bowl.mix_at_min.iter().enumerate() {
                let what = match bowl.count {
                    1 => mix.name.clone(),
                    count => format!("{}, bowl {} of {count}", mix.name, i + 1),
                };
                let after = SignedDuration::try_from_secs_f64((offset + at_min) * 60.0).unwrap_or_default();
                let card = Card::new(&CardRequest {
                    who: plan.guest.as_deref().unwrap_or("guest"),
                    what: &what,
                    recipe: &recipe,
                    strengths: &strengths,
                    // What is written is weighed already: nothing is rounded again.
                    division: Mass::from_g(0.01)?,
                    mixed_at: start.earliest.saturating_add(after),
                    working_life: Duration::from_min(bowl.use_within_min)?,
                })?;
                cards.push(if mix.stage == Stage::Section {
                    card
                } else {
                    card.with_remark("earliest; after rinsing")
                });
            }
        }
    }
    Ok(cards)
}

fn recipe(parts: &[Part]) -> Result<Recipe, RecipeError> {
    let part = |part: &Part| {
        let value = Decimal::try_from(part.weigh_g).map_err(|_| RecipeError::OutOfRange)?.round_dp(2).normalize();
        Ok(mix::Part { amount: RecipeAmount { value, unit: Unit::Gram }, product: part.product.clone() })
    };
    Recipe::new(parts.iter().map(part).collect::<Result<_, RecipeError>>()?)
}

fn strength(part: &Part) -> Result<Option<Interval<MassFraction>>, PlanCardError> {
    let range = &part.peroxide_ww_percent;
    let percent = MassFraction::from_percent_ww;
    Ok(Some(Interval::new(percent(range.low)?, percent(range.best)?, percent(range.high)?)?))
}
