use super::decision::{Go, decide};
use crate::{
    choice::choice,
    finding::Verdict,
    lift::{OFTEN, Visit},
    quantity::Share,
    reader::Problems,
    service::{Evidence, Plan, SectionLift, ServiceFile, plan::plan_without_day, shape::Section},
    source::Basis,
    text::{count, in_hundred, list, number},
};
use schemars::JsonSchema;
use serde::Serialize;

choice! {
    /// What an alternative is about.
    AlternativeKind: "alternative" {
        /// To leave the hair as it is.
        Leave = "leave" => "leave it",
        /// One visit, or several.
        Visits = "visits",
        /// Another class of product.
        ProductClass = "product-class" => "class of product",
        /// Another developer.
        Developer = "developer",
        /// Another technique.
        Technique = "technique",
    }
}

/// Something else that could be done, and why it is not taken, or is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Alternative {
    /// What it is about.
    pub about: AlternativeKind,
    /// The section; absent where it is about the service.
    pub section: Option<String>,
    /// The alternative.
    pub option: String,
    /// Whether the plan takes it.
    pub taken: bool,
    /// Why, or why not.
    pub why: String,
    /// What the reason rests on.
    pub basis: Basis,
}

/// The most plans that are made to compare developers: each costs as much as a plan.
const MOST_PLANS: usize = 60;

/// All that was considered, the taken and the not taken; and how many developers there was no time to try.
pub(super) fn alternatives(
    file: &ServiceFile,
    evidence: &Evidence,
    plan: &Plan,
) -> Result<(Vec<Alternative>, usize), Problems> {
    let mut found = vec![leave(plan)];
    found.extend(visits(plan));
    for section in &plan.head.sections {
        let class = &section.product_class;
        let mut say = |about, option: String, taken, why: String, basis| {
            found.push(Alternative { about, section: Some(section.section.clone()), option, taken, why, basis });
        };
        say(AlternativeKind::ProductClass, class.product.to_string(), true, class.why.to_owned(), class.basis);
        for other in &class.rejected {
            say(AlternativeKind::ProductClass, other.product.to_string(), false, other.why.to_owned(), class.basis);
        }
        if let Some(choice) = &section.technique_choice {
            for other in &choice.rejected {
                let taken = other.technique == section.technique;
                let option = other.technique.to_string();
                say(AlternativeKind::Technique, option, taken, other.why.clone(), choice.basis);
            }
        }
    }
    for chosen in &plan.strengths {
        let strength = |ww: f64| format!("{} % w/w", number(ww, 2));
        let mut say = |option, taken, why: &str| {
            let (about, section) = (AlternativeKind::Developer, Some(chosen.section.clone()));
            found.push(Alternative { about, section, option, taken, why: why.to_owned(), basis: Basis::Derived });
        };
        say(strength(chosen.developer.best().ww_percent()), true, &chosen.why);
        for other in &chosen.rejected {
            say(strength(other.developer.ww_percent()), false, &other.why);
        }
    }
    let mut tried = 0;
    let mut left = 0;
    for (place, section) in file.section.iter().enumerate() {
        for name in others_of(file, section, plan) {
            if tried == MOST_PLANS {
                left += 1;
                continue;
            }
            tried += 1;
            found.push(with_developer(file, evidence, plan, (place, section), name)?);
        }
    }
    found.sort_by_key(|one| one.about);
    Ok((found, left))
}

fn leave(plan: &Plan) -> Alternative {
    let decision = decide(plan);
    let (taken, why) = match decision.go {
        Go::Stop => (true, format!("the checks say stop: {}", decision.text)),
        Go::Restrict | Go::Proceed => (false, "the guest wants a change, and no check says stop".to_owned()),
    };
    let option = "put nothing on the hair".to_owned();
    Alternative { about: AlternativeKind::Leave, section: None, option, taken, why, basis: Basis::Derived }
}

/// One visit for all that is lightened, against as many as the forecast asks for.
fn visits(plan: &Plan) -> Vec<Alternative> {
    let Some(most) = plan.lift.iter().map(|lift| lift.visits.len()).max() else { return Vec::new() };
    let one = |option: String, taken, why: String| Alternative {
        about: AlternativeKind::Visits,
        section: None,
        option,
        taken,
        why,
        basis: Basis::Derived,
    };
    let first = |lift: &SectionLift| lift.visits.first().map(|visit| visit.chance.best());
    let behind = plan.lift.iter().filter(|lift| first(lift).is_some_and(|chance| chance < OFTEN));
    let behind: Vec<String> = behind
        .map(|lift| format!("{} in {} of 100", lift.section, in_hundred(first(lift).unwrap_or(Share::NONE))))
        .collect();
    if behind.is_empty() {
        let why = "every section reaches its target in 80 of 100 cases or more";
        return vec![
            one("one visit".to_owned(), true, why.to_owned()),
            one("a staged series".to_owned(), false, "not needed by the forecast".to_owned()),
        ];
    }
    let strain = plan.lift.iter().filter_map(|lift| lift.visits.last()).map(|visit: &Visit| visit.strain).max();
    let strain = strain.map(|strain| format!("; the strain of all visits together is {strain}")).unwrap_or_default();
    let reaches = plan.lift.iter().all(|lift| lift.visits.last().is_some_and(|last| last.chance.best() >= OFTEN));
    let end = if reaches { "then 80 of 100 reach it" } else { "and even then not 80 of 100 reach it" };
    vec![
        one("one visit".to_owned(), false, format!("reaches the target: {}", list(&behind, "and"))),
        one(
            format!("a staged series of {}", count(most, "visit", "visits")),
            true,
            format!("{end}{strain}; test elasticity before each"),
        ),
    ]
}

/// Developers of the shop that a lightened section with a stated developer or strength could have instead.
fn others_of<'f>(file: &'f ServiceFile, section: &Section, plan: &Plan) -> Vec<&'f str> {
    let lit = plan.lift.iter().any(|lift| lift.section == section.name);
    let stated = section.developer.is_some() || section.strength.is_some();
    let shop = file.shop.iter().flat_map(|shop| &shop.developer);
    shop.filter(|_| lit && stated)
        .map(|bottle| bottle.name.as_str())
        .filter(|name| section.developer.as_deref() != Some(*name))
        .collect()
}

/// The service planned anew with another developer in one section, held against the plan as it stands.
fn with_developer(
    file: &ServiceFile,
    evidence: &Evidence,
    plan: &Plan,
    (place, section): (usize, &Section),
    name: &str,
) -> Result<Alternative, Problems> {
    let mut changed = file.clone();
    if let Some(section) = changed.section.get_mut(place) {
        section.developer = Some(name.to_owned());
        section.strength = None;
    }
    let why = match plan_without_day(&changed, evidence) {
        Ok(then) => compared(plan, &then, &section.name),
        // A bowl that cannot be mixed so is an answer too.
        Err(problems) => format!("cannot be mixed: {}", problems.lines().next().unwrap_or_default()),
    };
    Ok(Alternative {
        about: AlternativeKind::Developer,
        section: Some(section.name.clone()),
        option: name.to_owned(),
        taken: false,
        why,
        basis: Basis::Derived,
    })
}

fn compared(plan: &Plan, then: &Plan, section: &str) -> String {
    let mut new = then.findings.iter().filter(|found| found.verdict == Verdict::Stop && !plan.findings.contains(found));
    if let Some(stop) = new.next() {
        return format!("says STOP, {}: {}", stop.rule, stop.text);
    }
    let of = |plan: &Plan| {
        let lift = plan.lift.iter().find(|lift| lift.section == section)?;
        Some((lift.chance.best(), lift.strain_index.best(), lift.strain))
    };
    let Some(((chance, index, strain), (other, other_index, other_strain))) = of(plan).zip(of(then)) else {
        return "nothing is lightened then".to_owned();
    };
    let reach = format!("reaches the target in {} of 100 instead of {}", in_hundred(other), in_hundred(chance));
    match (other.percent() < chance.percent() - 5.0, other_index > index) {
        (true, _) => format!("weaker: {reach}"),
        (false, true) if other_strain > strain => {
            format!("{reach}, with more strain: {other_strain} instead of {strain}")
        }
        (false, true) => format!("{reach}, with more strain on the fibre"),
        (false, false) => format!("{reach}, with no more strain: worth a strand test"),
    }
}
