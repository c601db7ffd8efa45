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

#[cfg(test)]
mod tests {
    use super::{compared, visits};
    use crate::{
        finding::{Finding, Rule, Verdict},
        lift::Strain,
        quantity::{Quantity, Share},
        reader::Format,
        service::{Plan, plan_text},
        source::{COMMON_PRACTICE, Interval},
    };

    /// The example with three lightened sections, each with these chances by visit: low, best and high.
    fn with(chances: &[&[[f64; 3]]]) -> Plan {
        let mut plan = plan_text(include_str!("../../../examples/soft-gradient.toml"), Format::Toml).unwrap();
        let first = plan.lift[0].visits[0];
        let strains = [Strain::Usual, Strain::High, Strain::Severe];
        plan.lift.truncate(chances.len());
        for (lift, chances) in plan.lift.iter_mut().zip(chances) {
            let each = chances.iter().zip(strains).map(|([low, best, high], strain)| {
                let chance = Interval::ordered(*low, *best, *high).map(Share::nearest);
                crate::lift::Visit { chance, strain, ..first }
            });
            lift.visits = each.collect();
        }
        plan
    }

    /// By the low end of each first visit: 80 of 100 and more is one visit, below only there it may do, and below by the best estimate a
    /// series, which is said to be enough where each section comes to 80 with its last visit.
    #[test]
    fn as_many_visits_as_the_forecast_asks_for() {
        let told = |chances: &[&[[f64; 3]]]| {
            let found = visits(&with(chances));
            let taken: Vec<bool> = found.iter().map(|one| one.taken).collect();
            assert!(found.is_empty() || taken == [true, false] || taken == [false, true], "{found:?}");
            found
                .into_iter()
                .find(|one| one.taken)
                .map(|one| format!("{}: {}", one.option, one.why))
                .unwrap_or_default()
        };
        let sure: &[[f64; 3]] = &[[80.0, 90.0, 95.0]];
        assert!(told(&[sure, sure]).starts_with("one visit: every section reaches its target in 80 of 100"));
        let may: &[[f64; 3]] = &[[79.0, 80.0, 95.0]];
        let found = told(&[sure, may]);
        assert!(
            found.starts_with("one visit: it may do; reaches the target: crown in 80 (79 to 95) of 100"),
            "{found}"
        );
        assert!(!found.contains("nape"), "{found}");
        let short: &[[f64; 3]] = &[[40.0, 60.0, 79.0], [70.0, 80.0, 90.0]];
        let found = told(&[sure, short]);
        let enough =
            "a staged series of 2 visits: then 80 of 100 reach it by the best estimate; the strain of all visits";
        assert!(found.starts_with(enough) && found.contains("together is high; test elasticity"), "{found}");
        let never: &[[f64; 3]] = &[[10.0, 20.0, 30.0], [30.0, 50.0, 60.0], [50.0, 79.0, 90.0]];
        for all in [&[short, never][..], &[never, short], &[never]] {
            let found = told(all);
            assert!(found.starts_with("a staged series of 3 visits: and even then not 80 of 100 reach it"), "{found}");
            assert!(found.contains("together is severe"), "{found}");
        }
        // One that may do beside one that does not is a series all the same.
        assert!(told(&[may, short]).starts_with("a staged series of 2 visits"));
        assert!(visits(&with(&[])).is_empty());
    }

    /// As a chance of another developer is shown, it is weaker; else what it does to the fibre is told, in words where these differ.
    #[test]
    fn another_developer_is_compared_as_it_is_shown() {
        let plan = with(&[&[[70.0, 80.0, 90.0]]]);
        let told = |chance: f64, index: f64, strain: Strain| {
            let mut then = plan.clone();
            let mut now = plan.clone();
            now.lift[0].chance = Interval::exact(Share::nearest(60.4));
            (now.lift[0].strain_index, now.lift[0].strain) = (Interval::exact(1.0), Strain::Usual);
            then.lift[0].chance = Interval::exact(Share::nearest(chance));
            (then.lift[0].strain_index, then.lift[0].strain) = (Interval::exact(index), strain);
            compared(&now, &then, &plan.lift[0].section)
        };
        assert_eq!(told(40.0, 0.8, Strain::Usual), "weaker: reaches the target in 40 of 100 instead of 60 of 100");
        assert_eq!(told(40.0, 1.8, Strain::High), "weaker: reaches the target in 40 of 100 instead of 60 of 100");
        for chance in [59.6, 60.4] {
            let same = told(chance, 1.0, Strain::Usual);
            assert!(
                same.ends_with("60 of 100 instead of 60 of 100, with no more strain: worth a strand test"),
                "{same}"
            );
        }
        assert!(told(90.0, 1.1, Strain::Usual).ends_with(", with more strain on the fibre"));
        assert!(
            told(90.0, 1.5, Strain::High)
                .ends_with(", with more strain: high instead of that of a usual single application")
        );
        assert!(
            told(90.0, 0.9, Strain::Usual).starts_with("reaches the target in 90 of 100 instead of 60 of 100, with no")
        );
    }

    /// A stop is told before all else; a warning that was said already with other figures is not new, one more of its rule is.
    #[test]
    fn what_another_developer_brings_up_is_told() {
        let plan = with(&[&[[70.0, 80.0, 90.0]]]);
        let section = plan.lift[0].section.clone();
        let of = |rule, verdict, text: &str| Finding::new(rule, verdict, text, COMMON_PRACTICE);
        let found = |before: &[Finding], after: &[Finding]| {
            let (mut now, mut then) = (plan.clone(), plan.clone());
            (now.findings, then.findings) = (before.to_vec(), after.to_vec());
            compared(&now, &then, &section)
        };
        let warning = |text: &str| of(Rule::Law, Verdict::Warning, text);
        assert!(!found(&[], &[]).contains("warns"));
        assert!(!found(&[warning("3 %")], &[warning("4 %")]).contains("warns"));
        assert!(found(&[warning("3 %")], &[warning("3 %"), warning("4 %")]).ends_with("; warns then as well: law"));
        assert!(found(&[], &[warning("3 %"), warning("4 %")]).ends_with("; warns then as well: law"), "a rule once");
        assert!(!found(&[], &[of(Rule::Law, Verdict::Note, "3 %")]).contains("warns"));
        let stop = |text: &str| of(Rule::Law, Verdict::Stop, text);
        assert_eq!(found(&[stop("3 %")], &[stop("4 %"), warning("3 %")]), "says STOP, law: 4 %");
        assert!(!found(&[stop("3 %")], &[stop("3 %")]).contains("STOP"), "the same stop is not of the developer");
        let mut none = plan.clone();
        none.lift.clear();
        (none.findings, none.mixes) = (vec![warning("3 %")], Vec::new());
        let mut before = plan.clone();
        before.findings.clear();
        assert_eq!(compared(&before, &none, &section), "nothing is lightened then; warns then as well: law");
    }
}
