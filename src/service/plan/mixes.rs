//! What to weigh for each task, and the strength that then lies on the hair.

use super::{
    Bowl, Mix, Part, Range,
    developer::{self, Oxidising},
};
use crate::{
    mix::{BowlRequest, Pace, Ratio, as_applied, bowls},
    quantity::{Mass, MassFraction},
    scale::weigh,
    service::{
        file::Problems,
        request::{InField, ItemKind, Oxidant, Request, Task},
    },
    source::{Basis, Interval},
};

/// A mix with what later checks and costs need of it.
pub(super) struct Mixed {
    pub(super) mix: Mix,
    /// Strength on the hair, as weighed.
    pub(super) on_hair: Interval<MassFraction>,
    /// Strength of the developer before mixing.
    pub(super) developer: Interval<MassFraction>,
    /// What is used up, by place on the shelf: developers and items.
    pub(super) used: Vec<(Stocked, Mass)>,
}

/// A place on the shelf.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stocked {
    Bottle(usize),
    Item(usize),
}

impl Stocked {
    fn name(self, request: &Request) -> String {
        let name = match self {
            Self::Bottle(i) => request.bottles.get(i).map(|bottle| &bottle.name),
            Self::Item(i) => request.items.get(i).map(|item| &item.name),
        };
        name.cloned().unwrap_or_default()
    }
}

/// What goes into one bowl: the thing, its exact mass, and the peroxide it brings.
struct Ingredient {
    stocked: Stocked,
    mass: Mass,
    peroxide: Interval<MassFraction>,
}

/// Works out one mix. `begin_min` is when its application begins.
pub(super) fn mix(request: &Request, task: &Task, begin_min: f64) -> Result<Mixed, Problems> {
    let field = &task.field;
    let amount = &task.amount;
    let oxidant =
        if matches!(task.oxidant, Oxidant::Strength(_)) { format!("{field}.strength") } else { field.clone() };
    let developer = developer::resolve(request, task).in_field(&oxidant)?;
    let pace = Pace::of(amount.value.best(), task.apply).in_field(&format!("{field}.apply_min"))?;
    let wanted = BowlRequest::new(amount.value.best(), request.bowl_capacity, task.working_life, pace);
    let fresh = bowls(&wanted).in_field(field)?;
    let first = fresh.bowls().first().ok_or("nothing to mix").in_field(field)?;

    let ingredients = ingredients(request, task, first.mixed, &developer).in_field(field)?;
    let exact: Vec<Mass> = ingredients.iter().map(|ingredient| ingredient.mass).collect();
    let weighing = weigh(&exact, request.scale_division).in_field(field)?;
    if let Some(lost) = weighing.vanished().next().and_then(|i| ingredients.get(i)) {
        return Err(format!(
            "{:.2} of \"{}\" is less than the scale can show ({}): mix more, or use a finer scale",
            lost.mass,
            lost.stocked.name(request),
            request.scale_division
        ))
        .in_field(field);
    }
    let weighed: Vec<(Mass, Interval<MassFraction>)> = weighing
        .parts()
        .iter()
        .zip(&ingredients)
        .map(|(part, ingredient)| (part.weighed, ingredient.peroxide))
        .collect();
    let on_hair = as_applied(&weighed).in_field(field)?;
    let count = fresh.bowls().len();

    let mut shows = 0.0;
    let parts = weighing.parts().iter().zip(&ingredients).map(|(part, ingredient)| {
        shows += part.weighed.g();
        Part {
            product: ingredient.stocked.name(request),
            exact_g: part.wanted.g(),
            weigh_g: part.weighed.g(),
            scale_shows_g: shows,
            peroxide_ww_percent: Range::of(&ingredient.peroxide, MassFraction::percent_ww),
        }
    });
    let parts = parts.collect();
    let percent = |strength: MassFraction| strength.percent_ww();
    let bowl = Bowl {
        count,
        mix_at_min: fresh.bowls().iter().map(|bowl| begin_min + bowl.mix_at.min()).collect(),
        use_within_min: task.working_life.min(),
        parts,
        total_g: weighing.total().g(),
        worst_ratio_error_percent: weighing.worst_ratio_error_percent(),
        on_hair_ww_percent: Range::of(&on_hair, percent),
    };
    let mixed_g = bowl.total_g * count as f64;
    let used = weighing
        .parts()
        .iter()
        .zip(&ingredients)
        .map(|(part, ingredient)| Ok((ingredient.stocked, part.weighed.times(count as f64).in_field(field)?)));
    Ok(Mixed {
        used: used.collect::<Result<_, Problems>>()?,
        mix: Mix {
            name: task.name.clone(),
            stage: task.stage,
            ratio: task.ratio.as_ref().map(Ratio::to_string),
            needed_g: Range::of(&amount.value, Mass::g),
            needed_basis: amount.basis,
            developer_ww_percent: Range::of(&developer.strength, percent),
            on_hair_ww_percent: Range::of(&on_hair, percent),
            strength_basis: developer.basis.weaker(Basis::Derived),
            leftover_g: (mixed_g - amount.value.best().g()).max(0.0),
            bowls: vec![bowl],
        },
        on_hair,
        developer: developer.strength,
    })
}

/// Products first, then the developer's parts, then additives: the order in which a bowl is weighed.
fn ingredients(
    request: &Request,
    task: &Task,
    bowl: Mass,
    developer: &Oxidising,
) -> Result<Vec<Ingredient>, Box<dyn std::error::Error>> {
    let none = Interval::exact(MassFraction::ZERO);
    let (product, oxidant) = split(task.ratio.as_ref(), bowl)?;
    let all: f64 = task.products.iter().map(|(_, parts)| parts).sum();
    let mut ingredients = Vec::new();
    for (i, parts) in &task.products {
        ingredients.push(Ingredient { stocked: Stocked::Item(*i), mass: product.times(parts / all)?, peroxide: none });
    }
    for (stocked, share, peroxide) in &developer.parts {
        let mass = oxidant.times(share.fraction())?;
        ingredients.push(Ingredient { stocked: *stocked, mass, peroxide: *peroxide });
    }
    for i in &task.additives {
        if let Some(ItemKind::Additive { dose }) = request.items.get(*i).map(|item| &item.kind) {
            let mass = bowl.times(dose.fraction())?;
            ingredients.push(Ingredient { stocked: Stocked::Item(*i), mass, peroxide: none });
        }
    }
    Ok(ingredients)
}

/// Product and developer of a bowl. Without a ratio there is no developer.
fn split(ratio: Option<&Ratio>, bowl: Mass) -> Result<(Mass, Mass), Box<dyn std::error::Error>> {
    let Some(ratio) = ratio else { return Ok((bowl, Mass::ZERO)) };
    match ratio.split_total(bowl)?.as_slice() {
        [product, developer] => Ok((*product, *developer)),
        _ => Err("the ratio must have two parts, product to developer".into()),
    }
}
