//! The consultation: gaps of the history, gaps between services, wishes.

use super::{
    super::{SaidBefore, findings::Findings},
    brings::Brings,
};
use crate::{
    finding::{
        Rule,
        Verdict::{NotJudged, Note, Passed, Warning},
    },
    lift::{Strain, weeks_between},
    service::shape::PastWork,
    source::{COMMON_PRACTICE, citations::trade},
    text::{list, number},
};

pub(super) fn check(consulted: Option<&SaidBefore>, brings: Brings, findings: &mut Findings) {
    let Some(consulted) = consulted else { return };
    for gap in &consulted.gaps {
        findings.add(Rule::History, NotJudged, gap.text.clone(), trade::CONSULTATION);
    }
    let [shortest, ..] = weeks_between(Strain::Usual).value.to_array();
    let strong = [PastWork::Lightener, PastWork::Straightened, PastWork::Permed, PastWork::ColourRemover];
    let lately = consulted.past.iter().filter(|past| brings.peroxide && strong.contains(&past.what));
    for (past, ago) in lately.filter_map(|past| Some((past, past.ago.filter(|ago| *ago < shortest)?))) {
        let text = format!(
            "{} only {} weeks ago: leave {} weeks at least between two such services, and let elasticity decide",
            past.what,
            number(ago.weeks(), 1),
            number(shortest.weeks(), 0)
        );
        findings.add(Rule::EarlierService, Warning, text, COMMON_PRACTICE);
    }
    for wish in &consulted.wishes {
        let (verdict, rest) = match &wish.why_not {
            Some(why) => (Warning, format!("{why}: change the plan, or agree on what can be had")),
            None if wish.is_sure && wish.sections.is_empty() => {
                (Passed, "it is there, and nobody works there".to_owned())
            }
            None if wish.is_sure => (Passed, "the plan holds to it by the low end of its forecast".to_owned()),
            None if !wish.not_forecast().is_empty() => {
                let aims = list(wish.not_forecast(), "and");
                (NotJudged, format!("{aims}: aimed there, and colour has no forecast to hold it against"))
            }
            None => (Note, "the plan holds to it by the estimate, not by all of its bounds".to_owned()),
        };
        let text = format!(
            "{}: {} within {} levels is wanted: {rest}",
            wish.zone,
            wish.level,
            number(wish.tolerance_levels.levels(), 2)
        );
        findings.add(Rule::Wish, verdict, text, trade::CONSULTATION);
        if let Some(tone) = &wish.tone {
            let text = format!("{}: \"{tone}\" is wanted: a tone in words is not held against the plan", wish.zone);
            findings.add(Rule::Wish, NotJudged, text, trade::CONSULTATION);
        }
    }
}
