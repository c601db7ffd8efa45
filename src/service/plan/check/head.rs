//! The head reads as it is wanted, and what is said of its regrowth agrees.

use super::super::{HeadPlan, findings::Findings};
use crate::{
    finding::{Reason, Rule, Verdict},
    hair::growth,
    service::request::Request,
    source::Interval,
    text::{number, range, span},
};

/// Whether the head reads as asked, and whether bands and weeks say the same of its regrowth.
pub(super) fn check(head: &HeadPlan, request: &Request, findings: &mut Findings) {
    if let Some((reading, wish)) = head.look.as_ref().and_then(|look| Some((look, look.wish?))) {
        let over = |what: &str, over: &Option<Interval<f64>>| {
            over.as_ref().map(|over| format!("{what} by {} L*", span(over, |l| number(l, 1))))
        };
        let look = &reading.look;
        let apart = [
            over("outline over interior", &look.outline_over_interior),
            over("front over back", &look.front_over_behind),
        ];
        let apart = apart.into_iter().flatten().collect::<Vec<_>>().join(", ");
        let (verdict, text) = match (&look.change, look.as_wanted) {
            (_, true) => (Verdict::Passed, format!("{wish}: reads so by the model ({apart})")),
            (Some(change), _) => (Verdict::Warning, format!("{wish}: does not read so ({apart}): {}", change.advice())),
            (None, _) => {
                (Verdict::Warning, format!("{wish}: does not read so ({apart}): no section lies there, add one"))
            }
        };
        findings.add(Rule::HeadReads, verdict, text, Reason::stated("a model of the colour; areas of the template"));
    }
    let (bands, weeks) = (request.amounts.regrowth, request.amounts.by_weeks);
    if let Some((bands, weeks)) = bands.zip(weeks).filter(|(bands, weeks)| !weeks.contains(bands.best())) {
        let text = format!(
            "regrowth: {} cm by `existing`, {} cm in the weeks of `weeks_since_colour`: correct one of the two, or it \
             grows unusually",
            range(&bands, 1),
            range(&weeks, 1)
        );
        let rate = growth(request.amounts.facts.group);
        let source = rate.citation.map_or_else(|| Reason::stated("growth of scalp hair"), Reason::from);
        findings.add(Rule::Regrowth, Verdict::Warning, text, source);
    }
}
