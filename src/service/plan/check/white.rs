//! White hair: how much natural shade it needs, and which shades cover it only in part.

use super::super::{
    findings::Findings,
    sections::{Sections, Work},
};
use crate::{
    finding::{
        Finding, Rule,
        Verdict::{Passed, Warning},
    },
    mix::natural_share,
    quantity::Share,
    shop::ShadeClass,
    source::COMMON_PRACTICE,
};

/// White hair takes a permanent shade as it is; a lighter one than 8 covers only in part, and the trade adds natural
/// shade by the share of white.
pub(super) fn check(white: Share, sections: &Sections<'_>, findings: &mut Findings) {
    if white == Share::NONE {
        return;
    }
    for work in sections.iter().filter(|work| work.is_section() && !work.lightens()) {
        natural_shade(white, work, findings);
        for shade in work.shades().filter(|shade| shade.class == ShadeClass::Permanent) {
            if shade.shade.level().number() > 8.0 && white.percent() >= 30.0 {
                let text =
                    format!("{}: {white} white, shade {} covers it only in part", work.name(), shade.shade.code());
                findings.of(work.place, Rule::WhiteHair, Warning, text, COMMON_PRACTICE);
            }
        }
    }
}

/// Whether the share of natural shade lies where the trade puts it for this share of white.
fn natural_shade(white: Share, work: &Work<'_>, findings: &mut Findings) {
    if work.shades().any(|shade| shade.class != ShadeClass::Permanent) {
        return;
    }
    let all: f64 = work.shades().map(|shade| shade.parts).sum();
    let natural: f64 = work.shades().filter(|shade| shade.shade.tone().is_neutral()).map(|shade| shade.parts).sum();
    let usual = natural_share(white);
    let (low, high) = (usual.share.low().percent(), usual.share.high().percent());
    let percent = 100.0 * natural.max(0.0) / all;
    let text = format!(
        "{}: {percent:.0} % of the shades are natural; for {white} white the trade takes {low:.0} to {high:.0} %",
        work.name()
    );
    let verdict = if (low..=high).contains(&percent) { Passed } else { Warning };
    let finding = Finding::new(Rule::WhiteHair, verdict, text, usual.printed_point).and_source(COMMON_PRACTICE);
    findings.push(&[work.place], finding);
}
