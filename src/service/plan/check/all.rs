//! Every check, one after the other.

use super::{
    super::{Hair, Mix, Start, colours::Colours, findings::Findings, sections::Sections, timeline::Timeline},
    consultation, instructions, law, lift, overlap, sequence, skin_test, timing, together, tone, white,
};
use crate::{limits::Jurisdiction, service::shape::Salon};

/// The finished stages, for the checks to read.
pub(in crate::service::plan) struct Stages<'s, 'r> {
    pub(in crate::service::plan) start: Start,
    pub(in crate::service::plan) jurisdiction: Option<Jurisdiction>,
    pub(in crate::service::plan) salon: &'s Salon,
    pub(in crate::service::plan) hair: &'s Hair,
    pub(in crate::service::plan) sections: &'s Sections<'r>,
    pub(in crate::service::plan) mixes: &'s [Mix],
    pub(in crate::service::plan) colours: &'s Colours,
    pub(in crate::service::plan) timeline: &'s Timeline,
}

/// Every check, in the order of the job.
pub(in crate::service::plan) fn check(stages: &Stages<'_, '_>) -> Findings {
    let Stages { start, jurisdiction, salon, hair, sections, mixes, colours, timeline } = *stages;
    let mut findings = Findings::default();
    consultation::check(hair, sections, &mut findings);
    skin_test::check(hair, sections, start, salon, &mut findings);
    consultation::strand_test(hair, start, &mut findings);
    law::check(jurisdiction, sections, mixes, &mut findings);
    instructions::check(sections, mixes, &mut findings);
    overlap::check(hair, sections, &mut findings);
    lift::check(sections, mixes, &mut findings);
    tone::check(hair, sections, &mut findings);
    white::check(hair.white, sections, &mut findings);
    timing::check(sections, timeline, &mut findings);
    sequence::check(sections, timeline, &mut findings);
    together::check(hair, sections, colours, &mut findings);
    findings
}
