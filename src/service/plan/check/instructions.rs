//! Each mix against its products' own instructions, and against the scale.

use super::super::{
    Mix,
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    finding::{
        Reason, Rule,
        Verdict::{NotJudged, Passed, Stop, Warning},
    },
    service::request::{Item, ItemKind},
    shop::OwnLimits,
};

pub(super) const OWN_INSTRUCTIONS: &str = "the product's own instructions, as entered on the shelf";

/// A share that the scale moves by more than this many percent is worth a finer scale. Assumed.
const COARSE_PERCENT: f64 = 10.0;

pub(super) fn check(sections: &Sections<'_>, mixes: &[Mix], findings: &mut Findings) {
    for (work, mix) in sections.iter().zip(mixes) {
        for (item, _) in &work.products {
            on_scalp(work, item, findings);
            if let Some(limits) = item.own_limits() {
                developer(work, mix, item, limits, findings);
            }
        }
        scale(work.place, mix, findings);
    }
}

fn on_scalp(work: &Work<'_>, item: &Item, findings: &mut Findings) {
    if let ItemKind::Lightener { on_scalp: false, .. } = item.kind
        && work.task.on_scalp
    {
        let text = format!("{}: \"{}\" touches the scalp, which its entry does not allow", work.name(), item.name);
        findings.of(work.place, Rule::OnScalp, Stop, text, Reason::stated(OWN_INSTRUCTIONS));
    }
}

fn developer(work: &Work<'_>, mix: &Mix, item: &Item, limits: OwnLimits, findings: &mut Findings) {
    if !work.has_peroxide() {
        return;
    }
    let (name, product, strongest) = (work.name(), &item.name, mix.developer.high());
    let (verdict, text) = match limits.strongest {
        Some(most) if strongest > most => {
            let text = format!(
                "{name}: developer {strongest:.2} with \"{product}\", which takes {most} at most: use a weaker one"
            );
            (Stop, text)
        }
        Some(most) => (Passed, format!("{name} {:.2} of {most} for \"{product}\"", strongest.ww_percent())),
        None => (NotJudged, format!("{name}: the strongest developer for \"{product}\" is not on the shelf")),
    };
    findings.of(work.place, Rule::Developer, verdict, text, Reason::stated(OWN_INSTRUCTIONS));
}

/// Whether the scale is fine enough for the smallest part.
fn scale(place: usize, mix: &Mix, findings: &mut Findings) {
    for bowl in mix.bowls.iter().filter(|bowl| bowl.worst_ratio_error_percent > COARSE_PERCENT) {
        let text = format!(
            "{}: rounding to the scale moves a part by {:.0} %: mix more at once, or use a finer scale",
            mix.name, bowl.worst_ratio_error_percent
        );
        let source = Reason::stated("assumed: 10 % of a part is the most that rounding should move");
        findings.of(place, Rule::Scale, Warning, text, source);
    }
}
