//! Where the lowlights of a section go.

use super::{HeadReading, SectionPlan};
use crate::{
    head::{LightFoils, lowlight_places},
    quantity::Share,
};

/// Where the lowlights of the sections go: between their own light foils, region by region where they lie in some.
pub(super) fn place(sections: &mut [SectionPlan], look: Option<&HeadReading>) {
    for section in sections.iter_mut() {
        let Some(foils) = section.lowlights.filter(|depth| !depth.leaves_no_light()).and_then(|depth| depth.foils)
        else {
            continue;
        };
        let Some((first, last)) = section.first_foil.zip(section.last_foil) else { continue };
        let mut light = look.map(|look| look.light_foils(&section.section)).unwrap_or_default();
        if light.is_empty() {
            light.push(LightFoils { region: None, hair: Share::ALL, inward: Share::ALL, first, last });
        }
        section.lowlight_places = lowlight_places(foils.best(), &light);
    }
}
