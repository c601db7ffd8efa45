//! The way to the colour under a toner, to foils and to what they take.

use super::{PartKind, Plan, SectionColour, SectionPlan};
use crate::{
    head::{FOILS_FORMULA, take_up},
    quantity::{Mass, Quantity},
    source::{Basis, Interval, TracedInput, TracedResult, citations::hair},
    text::traced,
};

/// The colour under the toner, and how much of a shade balances the warmth.
pub(super) fn toned(plan: &Plan, section: &SectionColour) -> Vec<TracedResult> {
    let name = &section.section;
    let Some(toner) = section.toner.as_ref() else { return Vec::new() };
    let Some(mix) = plan.mixes.iter().find(|mix| mix.name == *toner) else { return Vec::new() };
    let bowls = mix.bowls.iter();
    let shades = bowls.flat_map(|bowl| bowl.parts.iter().filter(|part| part.kind == PartKind::Colour));
    let shades: Vec<TracedInput> =
        shades.map(|part| traced(format!("{}, weighed", part.product), Interval::exact(part.weigh))).collect();
    let before = section.exposed_swatch.as_ref().unwrap_or(&section.natural);
    let before = [
        traced("L* before it", before.lightness()),
        traced("a* before it", before.redness()),
        traced("b* before it", before.yellowness()),
    ];
    let lightness = section.swatch.lightness().map(Quantity::in_unit);
    let formula =
        "spectrum of the hair before it, darkened by each shade as its share of the shades deposits, as CIELAB";
    let what = format!("{name}: L* under the toner {toner}");
    let mut results = vec![
        TracedResult::new(what, lightness, "L*", formula, section.swatch.basis())
            .made_of(before.into_iter().chain(shades)),
    ];
    results.extend(section.neutralising.as_ref().map(|balance| {
        let dose = &balance.dose;
        let grams = dose.mass.map(Mass::g);
        let bowl = traced("share, of the shades that takes most warmth away", dose.share);
        let all = shade_mass(plan, toner);
        let inputs = [
            Some(bowl),
            all.map(|mass| traced("all shades of the bowl", Interval::exact(mass))),
            Some(traced("warmth before", dose.warmth_before)),
            Some(traced(format!("warmth under {} alone", balance.carrier), dose.warmth_without)),
            Some(traced("warmth left at that share", dose.warmth_left)),
        ];
        let what = format!("{name}: {} against the warmth", balance.neutraliser);
        TracedResult::new(what, grams, "g", "share x all shades of the bowl", dose.basis)
            .made_of(inputs.into_iter().flatten())
    }));
    results
}

fn shade_mass(plan: &Plan, toner: &str) -> Option<Mass> {
    plan.mixes.iter().find(|mix| mix.name == toner).and_then(super::doses::colour_mass)
}

/// The foils of a section, the mixture it takes, and the mixture for a foil.
pub(super) fn foils(plan: &Plan, section: &SectionPlan) -> Vec<TracedResult> {
    let name = &section.section;
    let mut results = Vec::new();
    if let (Some(panels), Some(foils)) = (section.panels, section.foils) {
        let inputs = [
            traced("height of a panel", Interval::exact(panels.height)),
            traced("subsection", panels.subsection),
            traced("left between", panels.left_between),
            TracedInput::exact("foils in a row", panels.across, "foils"),
            TracedInput::exact("panels", panels.count, "panels"),
        ];
        let value = foils.map(f64::from);
        results.push(
            TracedResult::new(format!("{name}: foils"), value, "foils", FOILS_FORMULA, Basis::Derived).made_of(inputs),
        );
    }
    let (Some(hair), Some(takes)) = (section.hair, section.takes) else { return results };
    let mix = plan.mixes.iter().find(|mix| mix.name == *name);
    let lightens = mix.is_some_and(|mix| mix.products().any(|part| part.kind == PartKind::Lightener));
    let less = |all: Interval<Mass>, part: Option<Interval<Mass>>| match part {
        Some(part) => all.combine(part, Mass::minus_or_zero),
        None => all,
    };
    let ends = section.ends_between.as_ref();
    let own = less(hair, ends.map(|ends| ends.hair));
    let mut formula = "hair that is covered x taken up".to_owned();
    let mut inputs =
        vec![traced("hair that is covered", own), traced("taken up", take_up(section.technique, lightens).value)];
    if let Some(film) = section.film {
        formula += " + film on the scalp";
        inputs.push(traced("film on the scalp", film));
    }
    if let Some(ends) = ends {
        formula += " + ends between the foils take";
        inputs.push(traced("ends between the foils take", ends.takes));
    }
    if let Some(used) = section.used {
        formula += ", drawn to what was used before";
        inputs.push(traced("used before", Interval::exact(used)));
    }
    results.push(
        TracedResult::new(format!("{name}: mixture the hair takes"), takes.map(Mass::g), "g", formula, plan.head.basis)
            .made_of(inputs)
            .resting_on(&[hair::LIQUOR_RATIO.id]),
    );
    if let (Some(each), Some(foils)) = (section.mix_per_foil, section.foils) {
        let inputs = [
            Some(traced("mixture the hair takes", takes)),
            ends.map(|ends| traced("ends between the foils take", ends.takes)),
        ];
        let foils = TracedInput::exact("foils", foils.best(), "foils");
        let formula = match (ends, section.used) {
            (None, _) => "mixture the hair takes / foils",
            (Some(_), None) => "(mixture the hair takes - ends between the foils take) / foils",
            (Some(_), Some(_)) => "mixture without the share that the ends between take / foils",
        };
        let what = format!("{name}: mixture for a foil");
        results.push(
            TracedResult::new(what, each.map(Mass::g), "g", formula, plan.head.basis)
                .made_of(inputs.into_iter().flatten().chain([foils])),
        );
    }
    results
}
