//! Every check, one after the other.

use super::{
    super::{
        Booking, Evidence, FirstStep, Hair, HeadPlan, Mix, MoneyPlan, SaidBefore, SectionLift, Start, StockPlan,
        colours::Colours, findings::Findings, sections::Sections, strengths::Strengths, timeline::Timeline,
    },
    alkalinity, amount, booking,
    brings::Brings,
    consultation, consulted, first_steps, forecast, head, instructions, law, lift, on_scalp, overlap, sequence,
    skin_test, stock, timing, together, tone, white,
};
use crate::{
    limits::Jurisdiction,
    service::{request::Request, shape::ServiceFile},
};

/// The finished stages, for the checks to read.
pub(in crate::service::plan) struct Stages<'s, 'r> {
    pub(in crate::service::plan) start: Start,
    pub(in crate::service::plan) jurisdiction: Option<Jurisdiction>,
    pub(in crate::service::plan) file: &'s ServiceFile,
    pub(in crate::service::plan) evidence: &'s Evidence,
    pub(in crate::service::plan) hair: &'s Hair,
    pub(in crate::service::plan) sections: &'s Sections<'r>,
    pub(in crate::service::plan) mixes: &'s [Mix],
    pub(in crate::service::plan) colours: &'s Colours,
    pub(in crate::service::plan) timeline: &'s Timeline,
    pub(in crate::service::plan) strengths: &'s Strengths,
    pub(in crate::service::plan) lift: &'s [SectionLift],
    pub(in crate::service::plan) stock: &'s StockPlan,
    pub(in crate::service::plan) first: &'s [FirstStep],
    pub(in crate::service::plan) head: &'s HeadPlan,
    pub(in crate::service::plan) booking: &'s Booking,
    pub(in crate::service::plan) money: Option<&'s MoneyPlan>,
    pub(in crate::service::plan) request: &'s Request,
    pub(in crate::service::plan) consulted: Option<&'s SaidBefore>,
}

/// Every check, in the order of the job.
pub(in crate::service::plan) fn check(stages: &Stages<'_, '_>) -> Findings {
    let Stages { start, jurisdiction, file, hair, sections, mixes, colours, timeline, .. } = *stages;
    let brings = Brings::of(sections, stages.first, stages.request);
    let mut findings = Findings::default();
    consultation::check(hair, brings, start, &mut findings);
    consulted::check(stages.consulted, brings, &mut findings);
    skin_test::check(hair, brings, start, &file.salon, &mut findings);
    consultation::strand_test(hair, start, &mut findings);
    law::check(jurisdiction, (sections, mixes), stages.first, &mut findings);
    on_scalp::check((sections, mixes), (stages.request, stages.first), &mut findings);
    instructions::check((sections, mixes), (stages.request, stages.first), &mut findings);
    amount::check(sections, &mut findings);
    overlap::check(hair, sections, stages.first, &mut findings);
    lift::check(sections, mixes, stages.first, &mut findings);
    tone::check(hair, sections, stages.first, &mut findings);
    alkalinity::check(sections, stages.request, stages.first, &mut findings);
    forecast::check(file, stages.evidence, (sections, stages.strengths), stages.lift, &mut findings);
    white::check(hair.white.best(), sections, &mut findings);
    timing::check(sections, timeline, (stages.request, stages.first), &mut findings);
    timing::records(stages.request, stages.evidence, &mut findings);
    sequence::check(sections, timeline, &mut findings);
    together::check(hair, sections, colours, &mut findings);
    head::check(stages.head, (stages.request, stages.lift), &mut findings);
    first_steps::check((hair, stages.request), (sections, mixes), stages.first, &mut findings);
    stock::check(stages.stock, &mut findings);
    booking::check(stages.booking, stages.money, &mut findings);
    findings
}
