use super::{
    alternative::{Alternative, AlternativeKind},
    classes::classes,
    decision::{Decision, Go},
};
use crate::{
    finding::{Finding, Rule, Verdict},
    lift::{OFTEN, Visit},
    quantity::Share,
    reader::Problems,
    service::{Evidence, Plan, SectionLift, ServiceFile, plan::plan_without_day, shape::Section},
    source::{Basis, Interval},
    text::{count, in_hundred, list, number, span},
};
use std::collections::BTreeSet;

/// The most plans that are made to compare developers: each costs as much as a plan.
const MOST_PLANS: usize = 60;

/// All that was considered, the taken and the not taken; and how many developers there was no time to try. `alike` is the plan
/// made as those with other developers are, without a day.
pub(super) fn alternatives(
    file: &ServiceFile,
    evidence: &Evidence,
    (plan, alike): (&Plan, &Plan),
    decision: &Decision,
) -> Result<(Vec<Alternative>, usize), Problems> {
    let mut found = vec![leave(decision)];
    found.extend(visits(plan));
    for section in &plan.head.sections {
        found.extend(classes(file, plan, section));
        let mut say = |about, option: String, taken, why: String, basis| {
            found.push(Alternative { about, section: Some(section.section.clone()), option, taken, why, basis });
        };
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
            found.push(with_developer(file, evidence, alike, (place, section), name)?);
        }
    }
    found.sort_by_key(|one| one.about);
    Ok((found, left))
}

fn leave(decision: &Decision) -> Alternative {
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
    let first = |lift: &SectionLift| lift.visits.first().map(|visit| visit.chance);
    // By the low end: what only the best estimate reaches is no promise.
    let unsure =
        || plan.lift.iter().filter_map(|lift| Some((lift, first(lift)?))).filter(|(_, chance)| chance.low() < OFTEN);
    let told: Vec<String> = unsure().map(|(lift, chance)| format!("{} in {}", lift.section, of_100(chance))).collect();
    if told.is_empty() {
        let why = "every section reaches its target in 80 of 100 cases or more, by the low end of the estimate too";
        return vec![
            one("one visit".to_owned(), true, why.to_owned()),
            one("a staged series".to_owned(), false, "not needed by the forecast".to_owned()),
        ];
    }
    let now = format!("reaches the target: {}", list(&told, "and"));
    if unsure().all(|(_, chance)| chance.best() >= OFTEN) {
        return vec![
            one("one visit".to_owned(), true, format!("it may do; {now}")),
            one("a staged series".to_owned(), false, "where the first visit falls short: then plan anew".to_owned()),
        ];
    }
    let strain = plan.lift.iter().filter_map(|lift| lift.visits.last()).map(|visit: &Visit| visit.strain).max();
    let strain = strain.map(|strain| format!("; the strain of all visits together is {strain}")).unwrap_or_default();
    let reaches = plan.lift.iter().all(|lift| lift.visits.last().is_some_and(|last| last.chance.best() >= OFTEN));
    let end =
        if reaches { "then 80 of 100 reach it by the best estimate" } else { "and even then not 80 of 100 reach it" };
    vec![
        one("one visit".to_owned(), false, now),
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
    // A warning said with other figures is not new: only what is said once more is. A stop is told whatever was said before.
    let many = |of: &Plan, one: &Finding| {
        of.findings.iter().filter(|found| (found.verdict, found.rule) == (one.verdict, one.rule)).count()
    };
    let new = |verdict| {
        move |found: &&Finding| {
            let more = verdict == Verdict::Stop || many(then, found) > many(plan, found);
            found.verdict == verdict && more && !plan.findings.contains(found)
        }
    };
    if let Some(stop) = then.findings.iter().find(new(Verdict::Stop)) {
        return format!("says STOP, {}: {}", stop.rule, stop.text);
    }
    let warns: BTreeSet<Rule> = then.findings.iter().filter(new(Verdict::Warning)).map(|found| found.rule).collect();
    let warns: Vec<String> = warns.iter().map(ToString::to_string).collect();
    let warns = if warns.is_empty() { String::new() } else { format!("; warns then as well: {}", list(&warns, "and")) };
    let of = |plan: &Plan| {
        let lift = plan.lift.iter().find(|lift| lift.section == section)?;
        Some((lift.chance, lift.strain_index.best(), lift.strain))
    };
    let Some(((chance, index, strain), (other, other_index, other_strain))) = of(plan).zip(of(then)) else {
        return format!("nothing is lightened then{warns}");
    };
    let reach = format!("reaches the target in {} instead of {}", of_100(other), of_100(chance));
    // As it is shown: what reads as the same chance is not called weaker.
    let weaker = other.best() < chance.best() && in_hundred(other.best()) != in_hundred(chance.best());
    let said = match (weaker, other_index > index) {
        (true, _) => format!("weaker: {reach}"),
        (false, true) if other_strain > strain => {
            format!("{reach}, with more strain: {other_strain} instead of {strain}")
        }
        (false, true) => format!("{reach}, with more strain on the fibre"),
        (false, false) => format!("{reach}, with no more strain: worth a strand test"),
    };
    said + &warns
}

/// A chance with its bounds, in cases of a hundred.
fn of_100(chance: Interval<Share>) -> String {
    format!("{} of 100", span(&chance, in_hundred))
}
