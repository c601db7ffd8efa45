//! The finished timeline against the products' own limits, and against one pair of hands.

use super::{
    super::{
        Evidence, FirstStep, Step,
        findings::Findings,
        sections::{Sections, Work},
        timeline::Timeline,
    },
    instructions::OWN_INSTRUCTIONS,
};
use crate::{
    finding::{
        Finding, Reason, Rule,
        Verdict::{self, NotJudged, Note, Stop, Warning},
    },
    quantity::Duration,
    service::request::{AppliedBy, ItemKind, Request},
    shop::CountsFrom,
    source::{Basis, COMMON_PRACTICE, Interval},
    text::{amount, range},
};

/// Minutes are sums; a limit is not exceeded by the last bit.
const LAST_BIT_MIN: f64 = 1e-9;

pub(super) fn check(
    sections: &Sections<'_>,
    timeline: &Timeline,
    (request, first): (&Request, &[FirstStep]),
    findings: &mut Findings,
) {
    for work in sections.iter() {
        own_limit(work, findings);
        two_times(work, findings);
        hands(work, timeline, findings);
    }
    for (place, step) in first.iter().enumerate().filter(|(_, step)| step.planned) {
        for item in step.items(request) {
            let limits = item.own_limits();
            // What takes no time of its own, and what puts warmth back without a developer, have none unless it is stated.
            let timed = matches!(item.kind, ItemKind::Remover { .. }) || limits.is_some() && step.has_developer();
            let found = match limits.and_then(|limits| Some((limits.longest?, limits.counts_from.unwrap_or_default())))
            {
                Some(limit) => before(step, &item.name, limit),
                None => timed.then(|| {
                    let text = format!("{}: the longest time of \"{}\" is not on the shelf", step.name(), item.name);
                    (NotJudged, text)
                }),
            };
            if let Some((verdict, text)) = found {
                findings.of_step(place, Finding::new(Rule::Time, verdict, text, Reason::stated(OWN_INSTRUCTIONS)));
            }
        }
    }
    pace(sections, findings);
}

/// A step before the colour is looked at all the while and ends by the hair: too long by the estimate is not begun, too long only at
/// its longest ends at the limit.
fn before(step: &FirstStep, product: &str, (most, from): (Duration, CountsFrom)) -> Option<(Verdict, String)> {
    let on_hair = match from {
        CountsFrom::FirstStrand => step.apply.combine(step.develop, |apply, develop| apply + develop),
        CountsFrom::EndOfApplication => step.develop,
    };
    let over = |time: Duration| time.min() > most.min() + LAST_BIT_MIN;
    let verdict = match on_hair {
        on_hair if over(on_hair.best()) => Stop,
        on_hair if over(on_hair.high()) => Warning,
        _ => return None,
    };
    let way_out = match verdict {
        Stop => "take another product, or do without this step",
        _ => "end it there, whatever the hair shows",
    };
    let text = format!(
        "{}: \"{product}\" would be on the hair for {} min, its entry allows {most} from {from}: {way_out}",
        step.name(),
        range(&on_hair, 0)
    );
    Some((verdict, text))
}

/// No strand carries a product longer than its entry allows; the first strand carries it longest.
fn own_limit(work: &Work<'_>, findings: &mut Findings) {
    let (name, apply, develop) = (work.name(), work.task.apply, work.task.develop);
    for (item, most, from) in work.longest() {
        let product = &item.name;
        let text = match from {
            CountsFrom::FirstStrand => {
                let on_hair = apply.min() + develop.min();
                if on_hair <= most.min() + LAST_BIT_MIN {
                    continue;
                }
                let left = (most.min() - apply.min()).floor();
                let way_out = if left >= 1.0 {
                    format!("develop {left:.0} min at most, or split the section")
                } else {
                    "split the section".to_owned()
                };
                format!(
                    "{name}: its first strand would carry \"{product}\" for {on_hair:.0} min ({apply} to apply, {develop} to \
                     develop), its entry allows {most} from {from}: {way_out}"
                )
            }
            CountsFrom::EndOfApplication => {
                if develop.min() <= most.min() + LAST_BIT_MIN {
                    continue;
                }
                format!("{name}: {develop} of development, \"{product}\" allows {most} from {from}: shorten it")
            }
        };
        findings.of(work.place, Rule::Time, Stop, text, Reason::stated(OWN_INSTRUCTIONS));
    }
    for (item, _) in work.products.iter().filter(|(item, _)| item.own_limits().is_some_and(|own| own.longest.is_none()))
    {
        let text = format!("{name}: the longest development of \"{}\" is not on the shelf", item.name);
        findings.of(work.place, Rule::Time, NotJudged, text, Reason::stated(OWN_INSTRUCTIONS));
    }
}

/// A stated time against what the foils take by stated or measured minutes.
fn two_times(work: &Work<'_>, findings: &mut Findings) {
    let Some(applying) = &work.task.applying else { return };
    let (Some(by_foils), Some(foil)) = (applying.contradicts(), applying.foil) else { return };
    let told = |time: &Interval<Duration>| range(time, 1);
    let from = if applying.foil_basis == Some(Basis::Measured) { "the `records`" } else { "`salon.foil_min`" };
    let text = format!(
        "{}: by `{}.apply_min` it takes {}, by {from} ({} min a foil) {} min: the first is planned; leave it out, or correct the other",
        work.name(),
        work.task.field,
        work.task.apply,
        told(&foil),
        told(&by_foils)
    );
    findings.of(work.place, Rule::Pace, Note, text, Reason::stated("stated by you"));
}

/// Records that are named, where a section takes its minutes from its foils.
pub(super) fn records(request: &Request, evidence: &Evidence, findings: &mut Findings) {
    let by_foils = request.tasks.iter().filter_map(|task| task.applying).any(|one| one.by >= AppliedBy::Records);
    if let (Some(path), None, true) = (&request.file.records, evidence.foil_pace, by_foils) {
        let text = format!(
            "{path} was not read, or holds no two sections in foils that this colourist was timed on: the minutes for a foil are not \
             from it"
        );
        findings.add(Rule::Pace, NotJudged, text, Reason::stated("stated by you"));
    }
}

/// One pair of hands cannot look at one section while it applies another.
fn hands(work: &Work<'_>, timeline: &Timeline, findings: &mut Findings) {
    let Some(step) = timeline.at(work) else { return };
    let Some(last) = step.look_at.last() else { return };
    let during = |other: &&Step| step.look_at.iter().any(|at| *at > other.begin && *at < other.applied);
    // What was applied before was done before the first look.
    let busy: Vec<&Step> = timeline.later(work).take_while(|other| other.begin < *last).filter(during).collect();
    if busy.is_empty() {
        return;
    }
    let within = |at: &&_| busy.iter().any(|other| **at > other.begin && **at < other.applied);
    let looks: Vec<String> = step.look_at.iter().filter(within).map(|at| amount(*at, 0)).collect();
    let names: Vec<&str> = busy.iter().map(|other| other.name.as_str()).collect();
    let text = format!(
        "{}: looks at minute {} fall into the application of {}: put the brush down and look, or let a helper look",
        work.name(),
        looks.join(", "),
        names.join(", ")
    );
    findings.of(work.place, Rule::Look, Warning, text, COMMON_PRACTICE);
}

/// The first strands must not be done before the last are on.
fn pace(sections: &Sections<'_>, findings: &mut Findings) {
    let lightened = sections.iter().filter(|work| work.is_section() && work.lightens());
    let applying: f64 = lightened.map(|work| work.task.apply.min()).sum();
    if applying > 60.0 {
        let text = format!("{applying:.0} min of applying lightener: the first foils are done before the last are on");
        findings.add(Rule::Pace, Warning, text, COMMON_PRACTICE);
    }
}
