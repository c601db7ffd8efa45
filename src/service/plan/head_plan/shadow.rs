//! The root shadow: of what, how long in each region, and how it is blended into the light hair.

use super::super::sections::{Sections, Work};
use crate::{
    colour::{Level, Tone},
    head::{Region, ShadowStep, Template, root_shadow_length, shadow_steps},
    quantity::{Length, Quantity},
    reader::{InField, Problems},
    service::request::{Request, WorkStage},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// The root shadow of a service.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct RootShadowPlan {
    /// The shades that it is mixed of.
    pub shades: Vec<String>,
    /// Whether they were found for the look that the file wants; else the file names them.
    pub found: bool,
    /// How deep it is: the darkest of its shades.
    pub level: Level,
    /// Its tone as mixed.
    pub tone: Tone,
    /// How long it is, region by region: as stated, else short at the hairline and longer inside. Only regions with a section
    /// where sections say where they lie.
    pub lengths: Vec<ShadowLength>,
    /// The level of the lightest section, into which it is blended; absent where nothing is lighter.
    pub into_level: Option<Level>,
    /// How it is blended along the strand, at its longest.
    pub blend: Vec<ShadowStep>,
}

/// How long a root shadow is somewhere.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct ShadowLength {
    /// The region.
    pub region: String,
    /// From the scalp.
    #[serde(rename = "length_cm")]
    pub length: Interval<Length>,
}

/// The shadow of the file, if it has one.
pub(super) fn of(request: &Request, sections: &Sections<'_>) -> Result<Option<RootShadowPlan>, Problems> {
    let Some(entry) = &request.file.root_shadow else { return Ok(None) };
    let Some(work) = sections.iter().find(|work| work.stage() == WorkStage::RootShadow) else { return Ok(None) };
    let level = work.shades().map(|part| part.shade.level()).reduce(|a, b| if b < a { b } else { a });
    let Some(level) = level else { return Ok(None) };
    let stated = entry.length_cm.map(Length::from_cm).transpose().in_field("root_shadow.length_cm")?;
    if let Some((stated, length)) = stated.zip(request.amounts.length).filter(|(stated, length)| stated > length) {
        let way_out = format!("{stated} is longer than the hair's `analysis.length_cm`, {length}: make it shorter");
        return Err(way_out).in_field("root_shadow.length_cm");
    }
    let lengths = lengths(request, stated);
    let longest = lengths.iter().map(|one| one.length.best()).fold(Length::MIN, |a, b| if b > a { b } else { a });
    let targets = sections.iter().filter(|work| work.lightens()).filter_map(|work: &Work<'_>| work.task.target);
    let into = targets.reduce(|a, b| if b > a { b } else { a }).filter(|light| *light > level);
    Ok(Some(RootShadowPlan {
        shades: work.products.iter().map(|(item, _)| item.name.clone()).collect(),
        found: work.task.wanted.is_some(),
        level,
        tone: work.tone.clone(),
        blend: shadow_steps(level, into.unwrap_or(level), longest),
        into_level: into,
        lengths,
    }))
}

fn lengths(request: &Request, stated: Option<Length>) -> Vec<ShadowLength> {
    let standard = Template::standard();
    let template = request.map.as_ref().map_or(&standard, |map| &map.template);
    let worked = |region: &&Region| {
        request.map.as_ref().is_none_or(|map| map.placements.iter().any(|place| place.region == region.name))
    };
    let of = |region: &Region| ShadowLength {
        region: region.name.clone(),
        length: stated.map_or_else(|| root_shadow_length(region).value, Interval::exact),
    };
    template.regions().iter().filter(worked).map(of).collect()
}
