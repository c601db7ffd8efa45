//! A stage of its own: how much hair there is, what each section takes, and how the head will read.

use super::{
    Hair,
    colours::Colours,
    sections::{Sections, Work},
};
use crate::{
    colour::Swatch,
    hair::{HairCount, MassPerLength, Weeks, growth},
    head::{
        ClassDecision, ClassQuestion, HeadLook, Placed, Profile, ServiceClass, Softness, Technique, Template, Treated,
        Wish, line_shows_after, product_class, read_head, root_shadow_length, service_class,
    },
    quantity::{Length, Mass, Quantity, Share},
    service::request::Request,
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
    /// Mass of all the hair; absent where its length is not stated.
    #[serde(rename = "hair_g")]
    pub hair: Option<Interval<Mass>>,
    /// What hairs and masses rest on.
    pub basis: Basis,
    /// What to call the service when booking and pricing it.
    pub service_class: ServiceClass,
    /// Section by section, in the working order.
    pub sections: Vec<SectionPlan>,
    /// How the head will read; absent where no section says in which `regions` it lies.
    pub look: Option<HeadReading>,
}

/// What one section takes.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionPlan {
    /// The section.
    pub section: String,
    /// How its hair is taken.
    pub technique: Technique,
    /// Its hair that carries mixture; absent where the length of the hair is not stated.
    #[serde(rename = "hair_g")]
    pub hair: Option<Interval<Mass>>,
    /// The mixture that this hair takes, without spare.
    #[serde(rename = "takes_g")]
    pub takes: Option<Interval<Mass>>,
    /// Foils stated, or counted on its panels.
    pub foils: Option<Interval<u32>>,
    /// Number of its first foil in the order of the work, counted over all sections.
    pub first_foil: Option<u32>,
    /// Number of its last foil.
    pub last_foil: Option<u32>,
    /// Mixture for a foil.
    #[serde(rename = "mix_per_foil_g")]
    pub mix_per_foil: Option<Interval<Mass>>,
    /// Of the hair on its panels, what is picked.
    #[serde(rename = "share_of_panel_percent")]
    pub share_of_panel: Option<Interval<Share>>,
    /// From the scalp to the first colour.
    #[serde(rename = "start_cm")]
    pub start: Interval<Length>,
    /// How the start looks.
    pub softness: Softness,
    /// When the regrowth shows.
    #[serde(rename = "line_shows_after_weeks")]
    pub line_shows_after: Interval<Weeks>,
    /// How long a root shadow is there; absent where the section does not say in which `regions` it lies.
    #[serde(rename = "root_shadow_cm")]
    pub root_shadow: Option<Interval<Length>>,
    /// The class of product that does it, with what was not taken and why.
    pub product_class: ClassDecision,
}

/// How the head will read, and whether that is what was asked for.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct HeadReading {
    /// What the file asks for.
    pub wish: Option<Wish>,
    /// How it reads; `as_wanted` is true where nothing is asked for.
    pub look: HeadLook,
    /// Which section lies in which region.
    pub places: Vec<InPlace>,
    /// The regions.
    pub template: Template,
}

/// A section's place.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct InPlace {
    /// The region.
    pub region: String,
    /// The section.
    pub section: String,
    /// How much of the region it is.
    #[serde(rename = "of_region_percent")]
    pub of_region: Share,
}

impl HeadPlan {
    pub(super) fn of(request: &Request, hair: &Hair, sections: &Sections<'_>, colours: &Colours) -> Self {
        let (head, white) = (&request.amounts.head, request.file.analysis.white_percent);
        let all = head.part(Share::ALL);
        let rate = growth(request.amounts.facts.group).value;
        let of = |work: &Work<'_>| {
            let (technique, foils) = (work.task.technique?, work.task.on_head?);
            let target = work.task.target?;
            let wish = ClassQuestion {
                from: work.from.best(),
                to: target,
                artificial: work.artificial.is_some(),
                lightened: work.lightened.is_some(),
                white: Share::nearest(white),
            };
            Some(SectionPlan {
                section: work.name().to_owned(),
                technique,
                hair: foils.demand.map(|demand| demand.hair),
                takes: foils.demand.map(|demand| demand.mix),
                foils: foils.foils,
                first_foil: None,
                last_foil: None,
                mix_per_foil: foils.demand.and_then(|demand| demand.mix_per_foil),
                share_of_panel: foils.layout.map(|layout| layout.share_of_panel),
                start: foils.profile.start,
                softness: foils.profile.softness(),
                line_shows_after: line_shows_after(&foils.profile, rate).value,
                root_shadow: root_shadow(request, work.name()),
                product_class: product_class(&wish),
            })
        };
        Self {
            hairs: all.hairs,
            mass_per_length: all.mass_per_length,
            hair: request.amounts.length.map(|length| all.mass(length.into())),
            basis: head.basis(),
            service_class: service_class(&treated(request, sections)),
            sections: numbered(sections.iter().filter_map(of).collect()),
            look: reading(request, hair, sections, colours),
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

/// The foils counted through, section after section.
fn numbered(mut sections: Vec<SectionPlan>) -> Vec<SectionPlan> {
    let mut laid = 0_u32;
    for section in &mut sections {
        let Some(foils) = section.foils.map(|foils| foils.best()).filter(|foils| *foils > 0) else { continue };
        section.first_foil = Some(laid.saturating_add(1));
        laid = laid.saturating_add(foils);
        section.last_foil = Some(laid);
    }
    sections
}

/// The root shadow of a section's regions, the mean by their area.
fn root_shadow(request: &Request, section: &str) -> Option<Interval<Length>> {
    let map = request.map.as_ref()?;
    let of_section = map.placements.iter().filter(|placement| placement.section == section);
    let mut whole: Option<(f64, Interval<Length>)> = None;
    for placement in of_section {
        let region = map.template.regions().get(map.template.position(&placement.region).ok()?)?;
        let (weight, length) = (region.area.percent() * placement.share.fraction(), root_shadow_length(region).value);
        whole = Some(match whole {
            None => (weight, length),
            Some((sum, so_far)) => {
                let part = weight / (sum + weight);
                let mean = so_far.combine(length, |a, b| Length::nearest(a.cm() * (1.0 - part) + b.cm() * part));
                (sum + weight, mean)
            }
        });
    }
    whole.map(|(_, length)| length)
}

/// How much of the strands is covered, the mean along them.
fn along(profile: &Profile, length: Option<Length>) -> f64 {
    match length {
        Some(length) => profile.painted(length.into()).best().cm() / length.cm(),
        None => profile.covered.best().fraction(),
    }
}

fn reading(request: &Request, hair: &Hair, sections: &Sections<'_>, colours: &Colours) -> Option<HeadReading> {
    let map = request.map.as_ref()?;
    let natural = Swatch::natural_within(hair.natural_level);
    let mut placed = Vec::new();
    for placement in &map.placements {
        let work = sections.iter().find(|work| work.name() == placement.section)?;
        let (region, colour) = (map.template.position(&placement.region).ok()?, colours.at(work.place)?);
        let (_, area) = map.hair.iter().find(|(name, _)| *name == placement.section)?;
        // The section treats this share of all the hair, and its regions bear that share: evenly over them.
        let taken = work.task.share?.percent() / area.best().percent();
        let lightened = 100.0 * taken * along(&work.task.on_head?.profile, request.amounts.length);
        placed.push(Placed {
            section: work.name(),
            region,
            of_region: placement.share,
            lightened: Share::nearest(lightened),
            rest: colour.natural,
            light: colour.swatch,
        });
    }
    let wish = request.file.service.reads_as;
    let mut look = read_head(&map.template, &placed, &natural, wish.unwrap_or(Wish::Even));
    if wish.is_none() {
        look.as_wanted = true;
        look.change = None;
    }
    let places = map.placements.iter().map(|placement| InPlace {
        region: placement.region.clone(),
        section: placement.section.clone(),
        of_region: placement.share,
    });
    Some(HeadReading { wish, look, places: places.collect(), template: map.template.clone() })
}
