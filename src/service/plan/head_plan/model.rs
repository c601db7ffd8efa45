//! A stage of its own: how much hair there is, what each section takes, and how the head will read.

use super::super::{
    Hair,
    colours::Colours,
    findings::Findings,
    sections::{Sections, Work},
};
use super::{HeadReading, reading, section, section::SectionPlan};
use crate::{
    finding::{Reason, Rule, Verdict},
    hair::{GrowthRate, HairCount, MassPerLength, growth, warm_band},
    head::{RegionFoils, ServiceClass, Treated, service_class},
    quantity::{Length, Mass, Share},
    reader::Problems,
    service::request::Request,
    source::{Basis, Interval},
    text::{number, range, span},
};
use schemars::JsonSchema;
use serde::Serialize;

/// The head: its hair, its sections, how it will read.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct HeadPlan {
    /// All its hairs.
    #[serde(rename = "head_hairs")]
    pub hairs: Interval<HairCount>,
    /// Mass of all the hair by its length.
    #[serde(rename = "mass_per_length_g_per_cm")]
    pub mass_per_length: Interval<MassPerLength>,
    /// Mass of all the hair; absent where its length is not stated.
    #[serde(rename = "hair_g")]
    pub hair: Option<Interval<Mass>>,
    /// What hairs and masses rest on.
    pub basis: Basis,
    /// What to call the service when booking and pricing it.
    pub service_class: ServiceClass,
    /// How fast it grows.
    #[serde(rename = "growth_cm_per_month")]
    pub growth: Interval<GrowthRate>,
    /// What has grown in since the last colour; absent where neither bands nor weeks say it.
    #[serde(rename = "regrowth_cm")]
    pub regrowth: Option<Interval<Length>>,
    /// How far from the scalp its warmth speeds a mixture up.
    #[serde(rename = "warm_band_cm")]
    pub warm_band: Interval<Length>,
    /// What the gradient asks of each region; empty without one.
    pub gradient: Vec<RegionFoils>,
    /// Section by section, in the working order.
    pub sections: Vec<SectionPlan>,
    /// How the head will read; absent where no section says in which `regions` it lies.
    pub look: Option<HeadReading>,
}

impl HeadPlan {
    pub(in crate::service::plan) fn of(
        request: &Request,
        hair: &Hair,
        sections: &Sections<'_>,
        colours: &Colours,
    ) -> Result<Self, Problems> {
        let head = &request.amounts.head;
        let all = head.part(Share::ALL);
        let rate = growth(request.amounts.facts.group).value;
        let mut found = Vec::new();
        for work in sections.iter() {
            found.extend(section::plan(request, hair, colours, work, rate)?);
        }
        section::number(&mut found);
        let foils = request.file.gradient.as_ref().and_then(|entry| entry.foils).unwrap_or(0);
        let laid = request.gradient.zip(request.map.as_ref()).map(|(blend, map)| blend.lay(&map.template, foils));
        Ok(Self {
            hairs: all.hairs,
            mass_per_length: all.mass_per_length,
            hair: request.amounts.length.map(|length| all.mass(length.into())),
            basis: head.basis(),
            service_class: service_class(&treated(request, sections)),
            growth: rate,
            regrowth: request.amounts.regrowth,
            warm_band: warm_band().value,
            gradient: laid.unwrap_or_default(),
            look: reading::of(request, hair, sections, colours, &found),
            sections: found,
        })
    }

    /// Whether the head reads as asked, and whether bands and weeks say the same of its regrowth.
    pub(in crate::service::plan) fn check(&self, request: &Request, findings: &mut Findings) {
        if let Some((reading, wish)) = self.look.as_ref().and_then(|look| Some((look, look.wish?))) {
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
                (Some(change), _) => {
                    (Verdict::Warning, format!("{wish}: does not read so ({apart}): {}", change.advice()))
                }
                (None, _) => {
                    (Verdict::Warning, format!("{wish}: does not read so ({apart}): no section lies there, add one"))
                }
            };
            findings.add(
                Rule::HeadReads,
                verdict,
                text,
                Reason::stated("a model of the colour; areas of the template"),
            );
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
}

/// The area of a section where the file maps it, else the share of the hair that it treats.
fn treated(request: &Request, sections: &Sections<'_>) -> Vec<Treated> {
    let area = |work: &Work<'_>| {
        let mapped = request.map.as_ref().and_then(|map| map.hair.iter().find(|(name, _)| name == work.name()));
        mapped.map(|(_, share)| share.best()).or(work.task.share)
    };
    let of = |work: &Work<'_>| Some(Treated { technique: work.task.technique?, area: area(work)? });
    sections.iter().filter_map(of).collect()
}
