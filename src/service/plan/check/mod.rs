//! The checks: each reads the finished stages and adds what it found.

mod consultation;
mod instructions;
mod law;
mod lift;
mod skin_test;
mod timing;
mod together;
mod white;

use super::{Hair, Mix, Start, colours::Colours, findings::Findings, sections::Sections, timeline::Timeline};
use crate::{limits::Jurisdiction, service::shape::Salon};

/// The finished stages, for the checks to read.
pub(super) struct Stages<'s, 'r> {
    pub(super) start: Start,
    pub(super) jurisdiction: Option<Jurisdiction>,
    pub(super) salon: &'s Salon,
    pub(super) hair: &'s Hair,
    pub(super) sections: &'s Sections<'r>,
    pub(super) mixes: &'s [Mix],
    pub(super) colours: &'s Colours,
    pub(super) timeline: &'s Timeline,
}

/// Every check, in the order of the job.
pub(super) fn check(stages: &Stages<'_, '_>) -> Findings {
    let Stages { start, jurisdiction, salon, hair, sections, mixes, colours, timeline } = *stages;
    let mut findings = Findings::default();
    consultation::check(hair, sections, &mut findings);
    skin_test::check(hair, sections, start, salon, &mut findings);
    consultation::strand_test(hair, start, &mut findings);
    law::check(jurisdiction, sections, mixes, &mut findings);
    instructions::check(sections, mixes, &mut findings);
    lift::check(sections, mixes, &mut findings);
    white::check(hair.white, sections, &mut findings);
    timing::check(sections, timeline, &mut findings);
    together::check(hair, sections, colours, &mut findings);
    findings
}
