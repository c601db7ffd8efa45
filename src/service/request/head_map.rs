//! The head as the file maps it: the template, where its sections lie, and what a gradient gives them.

use crate::{
    hair::{WhiteCount, WhiteShare, white_share},
    head::{Gradient, Placement, Region, Rest, SectionGradient, Technique, Template, partition, share_out},
    quantity::{Length, Quantity, Share},
    reader::{InField, Problems},
    service::shape::{GradientEntry, RegionEntry, RegionPlace, Section, ServiceFile, WhiteCountEntry},
    source::{Basis, Interval},
    text::number,
};

/// The template, the sections' places in it, and the share of all the hair that lies in each section's area.
#[derive(Debug, Clone)]
pub(in crate::service) struct HeadMap {
    pub(in crate::service) template: Template,
    pub(in crate::service) placements: Vec<Placement>,
    pub(in crate::service) hair: Vec<(String, Interval<Share>)>,
}

/// What of a section is stated, or follows from the gradient.
#[derive(Debug, Clone, Copy)]
pub(super) struct Asked {
    pub(super) share: Share,
    /// Where the gradient lets its colour begin.
    pub(super) start: Option<Interval<Length>>,
    /// Its part of the foils that the gradient has for the whole head.
    pub(super) foils: Option<u32>,
}

/// The regions of the file, or those of foilwork's own template.
pub(super) fn template(file: &ServiceFile) -> Result<Template, Problems> {
    match file.region.as_slice() {
        [] => Ok(Template::standard()),
        own => {
            placed_apart(own)?;
            Template::new(own.iter().enumerate().map(region).collect::<Result<_, _>>()?, Basis::Stated)
                .in_field("region")
        }
    }
}

/// The white share of all the hair: stated, or from the counts of regions by the hair they bear, with those counts.
pub(super) fn white(
    file: &ServiceFile,
    template: &Template,
) -> Result<(Interval<Share>, Option<WhiteShare>), Problems> {
    let analysis = &file.analysis;
    if let Some(percent) = analysis.white_percent {
        let white = Share::from_percent(percent).in_field("analysis.white_percent")?;
        return Ok((white.into(), None));
    }
    let hair = template.hair();
    let mut counts: Vec<WhiteCount> = Vec::new();
    for (i, entry) in analysis.white_counts.iter().enumerate() {
        let field = format!("analysis.white_counts[{}]", i + 1);
        let WhiteCountEntry { region, white, counted } = entry;
        let place = template.position(region).in_field(&format!("{field}.region"))?;
        if counts.iter().any(|before| before.region == *region) {
            return Err(format!("{region:?} is counted twice: add the two counts up"))
                .in_field(&format!("{field}.region"));
        }
        if white > counted {
            let wrong = format!("{white} white of `counted` {counted} cannot be: correct one of the two");
            return Err(wrong).in_field(&format!("{field}.white"));
        }
        let share = hair.get(place).map_or(Share::NONE, Interval::best);
        counts.push(WhiteCount { region: region.clone(), share, white: *white, counted: *counted });
    }
    let counted = white_share(&counts)
        .ok_or("no region was counted: count one, or give `white_percent`")
        .in_field("analysis.white_counts")?;
    Ok((counted.white, Some(counted)))
}

impl HeadMap {
    /// The share of all the hair in the area of a section; none where it does not say where it lies.
    pub(in crate::service) fn bears(&self, section: &str) -> Option<Interval<Share>> {
        self.hair.iter().find(|(name, _)| name == section).map(|(_, share)| *share)
    }

    /// None when no section says where it lies.
    pub(super) fn of(file: &ServiceFile, template: &Template) -> Result<Option<Self>, Problems> {
        if file.section.iter().all(|section| section.regions.is_empty()) {
            return match file.service.rest {
                Some(Rest::Refused) => {
                    let missing = "no section names its `regions`: name them, or leave `rest` out";
                    Err(missing).in_field("service.rest")
                }
                _ => Ok(None),
            };
        }
        let template = template.clone();
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
        let rest = file.service.rest.unwrap_or(Rest::Natural);
        let hair = partition(&template, &placements, rest).in_field("section[].regions")?;
        Ok(Some(Self { template, placements, hair }))
    }
}

/// What every section takes, in the order of the file: what it states, else what the gradient asks of its regions.
pub(super) fn asked(
    file: &ServiceFile,
    map: Option<&HeadMap>,
    blend: Option<Gradient>,
) -> Result<Vec<Asked>, Problems> {
    let mut asked = Vec::with_capacity(file.section.len());
    for (i, section) in file.section.iter().enumerate() {
        let field = format!("section[{}].share_percent", i + 1);
        let own = section.share_percent.map(Share::from_percent).transpose().in_field(&field)?;
        let blended = blend.zip(map).and_then(|(blend, map)| of_section(&blend, map, section));
        let share = own.or(blended.map(|blended| blended.of_head)).filter(|share| *share > Share::NONE);
        let missing = "missing: state it, or a `gradient` and the section's `regions`, of which it takes some hair";
        let share = share.ok_or(missing).in_field(&field)?;
        let area = map.and_then(|map| map.bears(&section.name));
        if let Some(area) = area.filter(|area| share > area.high()) {
            let way_out = format!(
                "{share} of the hair is more than its `regions` bear, {:.0} at most: give less, or more regions",
                area.high()
            );
            return Err(way_out).in_field(&field);
        }
        asked.push(Asked { share, start: blended.map(|blended| blended.start), foils: None });
    }
    let foils = file.gradient.as_ref().and_then(|entry| entry.foils);
    if let Some(foils) = foils {
        let open = |section: &Section| {
            let blended = blend.zip(map).and_then(|(blend, map)| of_section(&blend, map, section));
            let counted = section.foils.is_some() || section.panel.is_some();
            section.technique.is_in_foil() && blended.is_some() && !counted
        };
        let weight = |(section, asked): (&Section, &Asked)| if open(section) { asked.share.percent() } else { 0.0 };
        let weights: Vec<f64> = file.section.iter().zip(&asked).map(weight).collect();
        for ((section, asked), count) in file.section.iter().zip(&mut asked).zip(share_out(foils, &weights)) {
            asked.foils = open(section).then_some(count);
        }
    }
    Ok(asked)
}

fn of_section(blend: &Gradient, map: &HeadMap, section: &Section) -> Option<SectionGradient> {
    // A block or a regrowth is all of its hair; a gradient is for what is picked, combed or painted.
    let all_of_it = matches!(section.technique, Technique::Block | Technique::Regrowth);
    let places = map.placements.iter().filter(|placement| placement.section == section.name);
    if all_of_it { None } else { blend.of_section(&map.template, places) }
}

/// The gradient of the file.
pub(super) fn gradient(entry: &GradientEntry, length: Option<Length>) -> Result<Gradient, Problems> {
    let cm = |value: f64, name: &str| Length::from_cm(value).in_field(&format!("gradient.{name}"));
    let percent = |value: f64, name: &str| Share::from_percent(value).in_field(&format!("gradient.{name}"));
    let start = (cm(entry.start_outline_cm, "start_outline_cm")?, cm(entry.start_interior_cm, "start_interior_cm")?);
    let share = (
        percent(entry.share_outline_percent, "share_outline_percent")?,
        percent(entry.share_interior_percent, "share_interior_percent")?,
    );
    // The longest that a file may state, where it states none.
    let length = length.unwrap_or_else(|| Length::nearest(200.0));
    let names = [
        "`start_outline_cm`",
        "`start_interior_cm`",
        "`share_outline_percent`",
        "`share_interior_percent`",
        "`analysis.length_cm`",
    ];
    Gradient::new(start, share, length).map_err(|error| error.told_with(names)).in_field("gradient")
}

fn region((i, entry): (usize, &RegionEntry)) -> Result<Region, Problems> {
    let field = |name: &str| format!("region[{}].{name}", i + 1);
    let inward = entry.inward_percent.unwrap_or(if entry.outline { 0.0 } else { 50.0 });
    Ok(Region {
        name: entry.name.clone(),
        area: Share::from_percent(entry.area_percent).in_field(&field("area_percent"))?,
        density_percent: Interval::exact(entry.density_percent.unwrap_or(100.0)),
        outline: entry.outline,
        inward: Share::from_percent(inward).in_field(&field("inward_percent"))?,
        front: entry.front,
        place: entry.place.map(on_map),
    })
}

/// Left, top, width and height on the map.
fn on_map(place: RegionPlace) -> [f64; 4] {
    let [wide, high] = Template::MAP.map(|units| units / 100.0);
    let RegionPlace { left_percent, top_percent, width_percent, height_percent } = place;
    [left_percent * wide, top_percent * high, width_percent * wide, height_percent * high]
}

/// Regions have a place, all or none, on the map and beside each other.
fn placed_apart(regions: &[RegionEntry]) -> Result<(), Problems> {
    // What decimals leave behind does not overlap.
    const NEARLY: f64 = 1e-6;
    let field = |i: usize| format!("region[{}].place", i + 1);
    let mut before: Vec<(usize, &str, RegionPlace)> = Vec::new();
    for (i, entry) in regions.iter().enumerate() {
        let Some(place) = entry.place else {
            if let Some((j, name, _)) = before.first() {
                let way_out = format!("missing: `{}` of {name:?} is given (give all of them, or none)", field(*j));
                return Err(way_out).in_field(&field(i));
            }
            continue;
        };
        if before.len() < i {
            let way_out = format!("missing: `{}` of {:?} is given (give all of them, or none)", field(i), entry.name);
            return Err(way_out).in_field(&field(before.len()));
        }
        let (right, bottom) = (place.left_percent + place.width_percent, place.top_percent + place.height_percent);
        for (edge, start, size) in [(right, "left_percent", "width_percent"), (bottom, "top_percent", "height_percent")]
        {
            if edge > 100.0 + NEARLY {
                let edge = number(edge, 2);
                let way_out =
                    format!("`{start}` and `{size}` end at {edge} %, beyond the map (no more than 100 together)");
                return Err(way_out).in_field(&field(i));
            }
        }
        let apart = |(_, _, other): &&(usize, &str, RegionPlace)| {
            place.left_percent < other.left_percent + other.width_percent - NEARLY
                && other.left_percent < right - NEARLY
                && place.top_percent < other.top_percent + other.height_percent - NEARLY
                && other.top_percent < bottom - NEARLY
        };
        if let Some((j, name, _)) = before.iter().find(apart) {
            let way_out =
                format!("{:?} lies over `{}`, {name:?}, on the map (move one of the two)", entry.name, field(*j));
            return Err(way_out).in_field(&field(i));
        }
        before.push((i, entry.name.as_str(), place));
    }
    Ok(())
}
