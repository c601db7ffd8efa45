//! The third stage: what to weigh for each task, and the strength that then lies on the hair.

use super::{
    Bowl, Mix, PartKind, WeighedPart,
    declared::{self, Poured},
    developer::{self, Candidate, Oxidising},
    proportion,
    sections::{Sections, Work},
    strengths::Strengths,
};
use crate::{
    mix::{BowlRequest, Pace, as_applied, bowls},
    quantity::{Mass, MassFraction},
    scale::{Weighed, weigh},
    service::{
        file::{Problem, Problems},
        request::{InField, ItemKind, Oxidant, Request},
    },
    source::{Basis, Interval},
};

/// What goes into one bowl: the thing, its exact mass, the peroxide it brings, and what it may bring as labelled.
struct Pour<'r> {
    product: &'r str,
    kind: PartKind,
    mass: Mass,
    peroxide: Interval<MassFraction>,
    may_bring: Interval<MassFraction>,
}

/// Every mix, in working order; the problems of all of them are reported together.
pub(super) fn mixes(request: &Request, sections: &Sections<'_>, strengths: &Strengths) -> Result<Vec<Mix>, Problems> {
    let stocks = developer::candidates(request);
    let mut mixes = Vec::new();
    let mut problems: Vec<Problem> = Vec::new();
    for work in sections.iter() {
        match mix(request, &stocks, work, strengths.developer(work.place)) {
            Ok(mix) => mixes.push(mix),
            Err(Problems(mut found)) => problems.append(&mut found),
        }
    }
    if problems.is_empty() { Ok(mixes) } else { Err(Problems(problems)) }
}

fn mix(
    request: &Request,
    stocks: &[Candidate<'_>],
    work: &Work<'_>,
    chosen: Option<MassFraction>,
) -> Result<Mix, Problems> {
    let task = work.task;
    let field = &task.field;
    let amount = &task.amount;
    let pace = Pace::of(amount.value.best(), task.apply).in_field(&format!("{field}.apply_min"))?;
    let wanted = BowlRequest::new(amount.value.best(), request.bowl_capacity, task.working_life, pace);
    let fresh = bowls(&wanted).in_field(field)?;
    let first = fresh.bowls().first().ok_or("nothing to mix").in_field(field)?;
    let count = fresh.bowls().len();

    let (product, oxidant) = proportion::split(work.ratio.as_ref(), first.mixed).in_field(field)?;
    let blended =
        if matches!(task.oxidant, Oxidant::Strength(_)) { format!("{field}.strength") } else { field.clone() };
    let all = oxidant.times(count as f64).in_field(&blended)?;
    let developer = developer::resolve(request, stocks, task, all, chosen).in_field(&blended)?;
    let ingredients = ingredients(request, work, first.mixed, (product, oxidant), &developer).in_field(field)?;
    let exact: Vec<Mass> = ingredients.iter().map(|ingredient| ingredient.mass).collect();
    let weighing = weigh(&exact, request.scale_division).in_field(field)?;
    if let Some(lost) = weighing.vanished().next().and_then(|i| ingredients.get(i)) {
        return Err(format!(
            "{:.2} of \"{}\" is less than the scale can show ({}): mix more, or use a finer scale",
            lost.mass, lost.product, request.scale_division
        ))
        .in_field(field);
    }
    let pairs = || weighing.parts().iter().zip(&ingredients);
    let weighed: Vec<_> = pairs().map(|(part, ingredient)| (part.weighed, ingredient.peroxide)).collect();
    let on_hair = as_applied(&weighed).in_field(field)?;
    let as_labelled: Vec<_> = pairs().map(|(part, ingredient)| (part.weighed, ingredient.may_bring)).collect();
    let poured: Vec<Poured<'_>> = pairs()
        .map(|(part, ingredient)| Poured {
            product: ingredient.product,
            kind: ingredient.kind,
            mass: part.weighed,
            may_bring: ingredient.may_bring,
        })
        .collect();
    let mut shows = Mass::ZERO;
    let part = |(part, ingredient): (&Weighed, &Pour)| {
        shows = shows + part.weighed;
        WeighedPart {
            product: ingredient.product.to_owned(),
            kind: ingredient.kind,
            exact: part.wanted,
            weigh: part.weighed,
            scale_shows: shows,
            peroxide: ingredient.peroxide,
        }
    };
    let bowl = Bowl {
        count,
        mixed_after: fresh.bowls().iter().map(|bowl| bowl.mix_at).collect(),
        use_within: task.working_life,
        parts: pairs().map(part).collect(),
        total: weighing.total(),
        worst_ratio_error_percent: weighing.worst_ratio_error_percent(),
        on_hair,
    };
    Ok(Mix {
        name: task.name.clone(),
        stage: task.stage,
        ratio: work.ratio.clone(),
        needed: amount.value,
        needed_basis: amount.basis,
        developer: developer.strength,
        on_hair,
        strength_basis: developer.basis.weaker(Basis::Derived),
        leftover: bowl.total.times(count as f64).in_field(field)?.minus_or_zero(amount.value.best()),
        on_hair_as_labelled: as_applied(&as_labelled).in_field(field)?,
        composition: declared::composition(request, &poured),
        stated: developer.parts.iter().filter_map(|(stock, _)| stock.states(request.room)).collect(),
        undeclared: declared::undeclared(request, &poured),
        bowls: vec![bowl],
        findings: Vec::new(),
    })
}

/// Products first, then the developer's parts, then additives: the order in which a bowl is weighed.
fn ingredients<'r>(
    request: &'r Request,
    work: &Work<'r>,
    bowl: Mass,
    (product, oxidant): (Mass, Mass),
    developer: &Oxidising<'r>,
) -> Result<Vec<Pour<'r>>, Box<dyn std::error::Error>> {
    let peroxide = Interval::exact(MassFraction::ZERO);
    let all: f64 = work.products.iter().map(|(_, parts)| parts).sum();
    let mut ingredients = Vec::new();
    for (item, parts) in &work.products {
        let kind = if item.lightens() { PartKind::Lightener } else { PartKind::Colour };
        ingredients.push(Pour {
            product: &item.name,
            kind,
            mass: product.times(parts / all)?,
            peroxide,
            may_bring: peroxide,
        });
    }
    for (stock, share) in &developer.parts {
        let mass = oxidant.times(share.fraction())?;
        let (peroxide, may_bring) = (stock.strength, stock.may_hold());
        ingredients.push(Pour { product: stock.name, kind: stock.kind, mass, peroxide, may_bring });
    }
    for item in work.task.additives.iter().filter_map(|i| request.items.get(*i)) {
        if let ItemKind::Additive { dose } = item.kind {
            let (kind, mass) = (PartKind::Additive, bowl.times(dose.fraction())?);
            ingredients.push(Pour { product: &item.name, kind, mass, peroxide, may_bring: peroxide });
        }
    }
    Ok(ingredients)
}
