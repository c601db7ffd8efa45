//! Finds the shades for a look that the file names instead of a mix.

use crate::{
    colour::Level,
    finding::{Finding, Reason, Rule, Verdict},
    mix::Ratio,
    quantity::Mass,
    reader::Problems,
    service::request::{InField, Item, Look, Oxidant, Request, Task},
    shop::{ShadeClass, StockedShade},
    toner::{Exposed, Target, TonerAnswer, TonerRequest, find_toner},
};

/// What goes on the hair apart from the developer.
pub(super) struct Mixture<'r> {
    pub(super) products: Vec<(&'r Item, f64)>,
    pub(super) ratio: Option<Ratio>,
    pub(super) findings: Vec<Finding>,
}

/// More shades in one mix are seldom weighed at the basin.
const MOST_SHADES: usize = 3;

/// The mix of the shop's shades whose predicted result is nearest to the look, and the developer's ratio that they share.
///
/// Only colour that deposits is taken: demi-permanent with a developer, semi-permanent without. Shades of different
/// ratios are not mixed unless the file states the ratio; the best mix of each ratio is compared.
pub(super) fn find<'r>(
    request: &'r Request,
    task: &Task,
    look: &Look,
    exposed: Exposed,
) -> Result<Mixture<'r>, Problems> {
    let field = format!("{}.target", task.field);
    let class = if task.oxidant == Oxidant::Nothing { ShadeClass::Semi } else { ShadeClass::Demi };
    let shades = || request.shop.shades.iter().filter(|stocked| stocked.class == class);
    let mut ratios: Vec<Option<&Ratio>> = Vec::new();
    for stocked in shades() {
        let ratio = task.ratio.as_ref().or(stocked.ratio.as_ref());
        if !ratios.contains(&ratio) {
            ratios.push(ratio);
        }
    }
    let mut best: Option<(TonerAnswer, Option<&Ratio>)> = None;
    let mut failed = None;
    for ratio in ratios {
        let alike = shades().filter(|stocked| task.ratio.is_some() || stocked.ratio.as_ref() == ratio);
        match answer(request, task, look, exposed, alike, ratio).in_field(&field) {
            Ok(found) => {
                let nearer =
                    |(known, _): &(TonerAnswer, _)| found.best.residual.ciede2000 < known.best.residual.ciede2000;
                if best.as_ref().is_none_or(nearer) {
                    best = Some((found, ratio));
                }
            }
            Err(problems) => failed = Some(problems),
        }
    }
    match (best, failed) {
        (Some((found, ratio)), _) => Ok(mixture(request, task, &found, ratio)),
        (None, Some(problems)) => Err(problems),
        (None, None) => {
            let way_out = "add one, or name the mix";
            Err(format!("the shop has no {class} shade to find a toner from: {way_out}")).in_field(&field)
        }
    }
}

/// The mix, with a word where another reading of the natural level inside its margin would choose other shades.
pub(super) fn if_misread<'r>(
    request: &'r Request,
    task: &Task,
    look: &Look,
    mut found: Mixture<'r>,
    starts: impl Iterator<Item = Result<(Level, Exposed), Problems>>,
) -> Result<Mixture<'r>, Problems> {
    let codes = |mixture: &Mixture<'_>| {
        let mut codes: Vec<String> = mixture.products.iter().map(|(item, _)| item.name.clone()).collect();
        codes.sort();
        codes
    };
    for start in starts {
        let (natural, exposed) = start?;
        let other = codes(&find(request, task, look, exposed)?);
        if other != codes(&found) {
            let text = format!(
                "{}: on natural {natural}, inside the margin stated, the mix would be of {}: choose it on the lifted hair",
                task.name,
                other.join(" + ")
            );
            found.findings.push(Finding::new(Rule::TonerFound, Verdict::NotJudged, text, Reason::assumed()));
        }
    }
    Ok(found)
}

fn answer<'r>(
    request: &Request,
    task: &Task,
    look: &Look,
    exposed: Exposed,
    shades: impl Iterator<Item = &'r StockedShade>,
    ratio: Option<&Ratio>,
) -> Result<TonerAnswer, Box<dyn std::error::Error>> {
    let total = task.amount.value.best();
    let bowl: Mass = match ratio {
        Some(ratio) => *ratio.split_total(total)?.first().ok_or("the ratio has no parts")?,
        None => total,
    };
    let division = request.scale_division;
    Ok(find_toner(&TonerRequest {
        exposed,
        target: Target::Look { level: look.level, tone: look.tone.clone() },
        shades: shades.map(|stocked| &stocked.shade).collect(),
        most_shades: MOST_SHADES,
        bowl: Mass::from_g((bowl.g() / division.g()).round() * division.g())?,
        division,
    })?)
}

fn mixture<'r>(request: &'r Request, task: &Task, found: &TonerAnswer, ratio: Option<&Ratio>) -> Mixture<'r> {
    let item = |code: &str| request.items.iter().find(|item| item.name == code);
    let products = found.best.parts.iter().filter_map(|part| Some((item(&part.code)?, part.mass.g())));
    let said = Finding::new(Rule::TonerFound, Verdict::Note, found.summary(), Reason::assumed());
    let findings = std::iter::once(said).chain(found.findings.iter().cloned());
    Mixture {
        products: products.collect(),
        ratio: ratio.cloned(),
        findings: findings.map(|finding| finding.about(&task.name)).collect(),
    }
}
