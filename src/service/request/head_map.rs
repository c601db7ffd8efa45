//! The head as the file maps it: the template, and where its sections lie.

use crate::{
    head::{Placement, Region, Rest, Template, partition},
    quantity::Share,
    reader::{InField, Problems},
    service::shape::{RegionEntry, ServiceFile},
    source::{Basis, Interval},
};

/// The template, the sections' places in it, and the share of all the hair that lies in each section's area.
#[derive(Debug, Clone)]
pub(in crate::service) struct HeadMap {
    pub(in crate::service) template: Template,
    pub(in crate::service) placements: Vec<Placement>,
    pub(in crate::service) hair: Vec<(String, Interval<Share>)>,
}

impl HeadMap {
    /// None when no section says where it lies.
    pub(super) fn of(file: &ServiceFile) -> Result<Option<Self>, Problems> {
        if file.section.iter().all(|section| section.regions.is_empty()) {
            return Ok(None);
        }
        let template = match file.region.as_slice() {
            [] => Template::standard(),
            own => Template::new(own.iter().enumerate().map(region).collect::<Result<_, _>>()?, Basis::Stated)
                .in_field("region")?,
        };
        let mut placements = Vec::new();
        for (i, section) in file.section.iter().enumerate() {
            for (j, place) in section.regions.iter().enumerate() {
                let field = format!("section[{}].regions[{}]", i + 1, j + 1);
                template.position(&place.name).in_field(&format!("{field}.name"))?;
                let share = place.percent.map(Share::from_percent).transpose().in_field(&format!("{field}.percent"))?;
                placements.push(Placement {
                    section: section.name.clone(),
                    region: place.name.clone(),
                    share: share.unwrap_or(Share::ALL),
                });
            }
        }
        let hair = partition(&template, &placements, Rest::Natural).in_field("section[].regions")?;
        for (i, section) in file.section.iter().enumerate() {
            let area = hair.iter().find(|(name, _)| *name == section.name).map(|(_, share)| share.high());
            if let Some(area) = area.filter(|area| section.share_percent > area.percent()) {
                let way_out = format!(
                    "{} % of the hair is more than its `regions` bear, {:.0} % at most: give less, or more regions",
                    section.share_percent,
                    area.percent()
                );
                return Err(way_out).in_field(&format!("section[{}].share_percent", i + 1));
            }
        }
        Ok(Some(Self { template, placements, hair }))
    }
}

fn region((i, entry): (usize, &RegionEntry)) -> Result<Region, Problems> {
    let field = |name: &str| format!("region[{}].{name}", i + 1);
    let inward = entry.inward_percent.unwrap_or(if entry.outline { 0.0 } else { 50.0 });
    let row = f64::from(u32::try_from(i).unwrap_or(u32::MAX));
    Ok(Region {
        name: entry.name.clone(),
        area: Share::from_percent(entry.area_percent).in_field(&field("area_percent"))?,
        density_percent: Interval::exact(entry.density_percent.unwrap_or(100.0)),
        outline: entry.outline,
        inward: Share::from_percent(inward).in_field(&field("inward_percent"))?,
        front: entry.front,
        // A list, one under the other: where a region of one's own lies is not stated.
        place: [0.0, row, 12.0, 1.0],
    })
}
