//! A stage of its own: how much hair there is, what each section takes, and how the head will read.

use super::super::{
    Hair,
    colours::Colours,
    sections::{Sections, Work},
};
use super::{
    HeadReading, Meeting, RootShadowPlan, ZoneHair, along::Lights, lowlights, meeting, reading, section,
    section::SectionPlan, shadow,
};
use crate::{
    hair::{BandedStrand, GrowthRate, HairCount, MassPerLength, growth, warm_band},
    head::{RegionFoils, ServiceClass, Treated, service_class},
    quantity::{Length, Mass, Quantity, Share},
    reader::Problems,
    service::{request::Request, shape::Zone},
    source::{Basis, Interval},
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
    /// The same as earlier uses alone say, by `used_g`; absent where none is stated, or the length of the hair is not.
    #[serde(rename = "mass_per_length_by_use_g_per_cm")]
    pub by_use: Option<Interval<MassPerLength>>,
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
    /// Natural hair from the scalp to the first colour; absent where what is there is not stated in cm.
    #[serde(rename = "natural_cm")]
    pub natural: Option<Length>,
    /// What has grown in since the last colour; absent where the weeks since then are not stated.
    #[serde(rename = "regrowth_cm")]
    pub regrowth: Option<Interval<Length>>,
    /// How far from the scalp its warmth speeds a mixture up.
    #[serde(rename = "warm_band_cm")]
    pub warm_band: Interval<Length>,
    /// All the hair by zone of the strand; empty where its length is not stated.
    pub zones: Vec<ZoneHair>,
    /// What the gradient asks of each region; empty without one.
    pub gradient: Vec<RegionFoils>,
    /// Section by section, in the working order.
    pub sections: Vec<SectionPlan>,
    /// How the head will read; absent where no section says in which `regions` it lies.
    pub look: Option<HeadReading>,
    /// The root shadow, region by region; absent where there is none.
    pub root_shadow: Option<RootShadowPlan>,
    /// Where two formulas meet in a foil and a shade between them is seen.
    pub meetings: Vec<Meeting>,
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
        let (mut found, mut lights) = (Vec::new(), Lights::default());
        for work in sections.iter() {
            found.extend(section::plan(request, hair, colours, work, (rate, &mut lights))?);
        }
        section::number(&mut found);
        let look = reading::of(request, hair, sections, colours, &found);
        lowlights::place(&mut found, look.as_ref());
        let laid = request.gradient.zip(request.map.as_ref()).map(|(blend, map)| blend.asks(&map.template));
        let mut laid = laid.unwrap_or_default();
        for region in &mut laid {
            region.foils = look.as_ref().and_then(|look| look.foils_in(&region.region, &found));
        }
        Ok(Self {
            hairs: all.hairs,
            mass_per_length: all.mass_per_length,
            by_use: request.amounts.facts.by_use,
            hair: request.amounts.length.map(|length| all.mass(length.into())),
            basis: head.basis(),
            service_class: service_class(&treated(request, sections)),
            growth: rate,
            natural: hair.strand.as_ref().map(BandedStrand::regrowth),
            regrowth: request.amounts.grown,
            warm_band: warm_band().value,
            zones: zones(request),
            gradient: laid,
            look,
            root_shadow: shadow::of(request, sections)?,
            meetings: meeting::all(request, sections),
            sections: found,
        })
    }
}

/// Roots, mid-lengths and ends, by the best estimate of where they lie.
fn zones(request: &Request) -> Vec<ZoneHair> {
    let all = request.amounts.head.part(Share::ALL);
    let of = |zone: Zone| {
        let (from, to) = request.amounts.stretch(zone)?;
        let long = Interval::exact(Length::nearest(to.cm() - from.cm()));
        Some(ZoneHair { zone, hair: all.mass(long), surface: all.surface(long) })
    };
    [Zone::Roots, Zone::MidLengths, Zone::Ends].into_iter().filter_map(of).collect()
}

/// The area of a section where the file maps it, else the share of the hair that it treats.
fn treated(request: &Request, sections: &Sections<'_>) -> Vec<Treated> {
    let area = |work: &Work<'_>| {
        let mapped = request.map.as_ref().and_then(|map| map.bears(work.name()));
        mapped.map(|share| share.best()).or(work.task.share)
    };
    let of = |work: &Work<'_>| Some(Treated { technique: work.task.technique?, area: area(work)? });
    sections.iter().filter_map(of).collect()
}
