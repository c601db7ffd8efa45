use super::super::{
    Hair,
    colours::{Colours, seen},
    sections::Work,
};
use super::{
    LevelsAlong, ZoneHair,
    along::{self, Lights},
};
use crate::{
    colour::{Level, ProductKind},
    hair::{GrowthRate, HairCount, Weeks},
    head::{
        ClassDecision, ClassQuestion, LowlightPlace, Lowlights, Profile, Softness, Technique, TechniqueDecision,
        TechniqueQuestion, choose_technique, line_shows_after, lowlights, product_class, root_shadow_length,
    },
    quantity::{Area, Length, Mass, Quantity, Share},
    reader::{InField, Problems},
    service::{
        request::{Applying, CountedPanels, Request},
        shape::LowlightsEntry,
    },
    source::Interval,
    text,
};
use schemars::JsonSchema;
use serde::Serialize;

/// What the section reads as before any lowlights.
const WITHOUT_THEM: &str = "what the section reads as by the model without lowlights, ";

/// What one section takes.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SectionPlan {
    /// The section.
    pub section: String,
    /// How its hair is taken.
    pub technique: Technique,
    /// Of all the hair, what it takes: stated, or from the gradient.
    #[serde(rename = "share_percent")]
    pub share: Share,
    /// How many hairs that is.
    pub hairs: Interval<HairCount>,
    /// The surface of the hair that carries mixture; absent where the length of the hair is not stated.
    #[serde(rename = "surface_cm2")]
    pub surface: Option<Interval<Area>>,
    /// How long it takes to put on, and what that rests on.
    pub applying: Applying,
    /// Its hair that carries mixture; absent where the length of the hair is not stated.
    #[serde(rename = "hair_g")]
    pub hair: Option<Interval<Mass>>,
    /// The mixture that this hair takes, without spare.
    #[serde(rename = "takes_g")]
    pub takes: Option<Interval<Mass>>,
    /// Of that, the film on the scalp; absent where the mixture does not touch it.
    #[serde(rename = "film_g")]
    pub film: Option<Interval<Mass>>,
    /// What the same section took before, by `used_g`.
    #[serde(rename = "used_g")]
    pub used: Option<Mass>,
    /// Foils stated, or counted on its panels.
    pub foils: Option<Interval<u32>>,
    /// The panels that they were counted on; absent where no `panel` is stated.
    pub panels: Option<CountedPanels>,
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
    /// How long the root shadow is there; absent where the file has none or states its length, and where the section does not
    /// say in which `regions` it lies.
    #[serde(rename = "root_shadow_cm")]
    pub root_shadow: Option<Interval<Length>>,
    /// Its hair that carries mixture, by zone of the strand; empty where the length of the hair is not stated.
    pub zones: Vec<ZoneHair>,
    /// How light it reads from the scalp to the ends; absent where the length of the hair is not stated.
    pub along: Option<LevelsAlong>,
    /// Extra ends between the foils, which are in `hair_g` and `takes_g`; absent where none are painted.
    pub ends_between: Option<EndsPlan>,
    /// Darker strands for the depth that is wanted; absent where none is.
    pub lowlights: Option<Lowlights>,
    /// Where they go; empty where there are none, or where the light foils beside them are not counted.
    pub lowlight_places: Vec<LowlightPlace>,
    /// The technique for the start and the upkeep wanted; absent where the file wants none.
    pub technique_choice: Option<TechniqueDecision>,
    /// The class of product that does it, with what was not taken and why.
    pub product_class: ClassDecision,
    /// The class that is planned instead or as well; absent where its mix holds neither lightener nor shades.
    pub planned_class: Option<ProductKind>,
}

/// Extra ends that are painted between foils.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct EndsPlan {
    /// Of all the hair, what is painted there.
    #[serde(rename = "share_percent")]
    pub share: Share,
    /// Where they begin, from the scalp.
    #[serde(rename = "from_cm")]
    pub from: Length,
    /// The hair that carries mixture.
    #[serde(rename = "hair_g")]
    pub hair: Interval<Mass>,
    /// The mixture on it.
    #[serde(rename = "takes_g")]
    pub takes: Interval<Mass>,
}

/// What a section takes; none for toners and root shadows.
pub(super) fn plan(
    request: &Request,
    hair: &Hair,
    colours: &Colours,
    work: &Work<'_>,
    (rate, lights): (Interval<GrowthRate>, &mut Lights),
) -> Result<Option<SectionPlan>, Problems> {
    let task = work.task;
    let (Some(technique), Some(foils), Some(target), Some(share), Some(applying)) =
        (task.technique, task.on_head, task.target, task.share, task.applying)
    else {
        return Ok(None);
    };
    let entry = request.file.section.get(work.in_request).and_then(|section| section.lowlights.as_ref());
    let depth = entry.map(|entry| depth(request, hair, colours, work, (target, entry))).transpose()?;
    let planned = (technique, foils.profile);
    let choice = technique_choice(request, work, planned, rate)?;
    Ok(Some(SectionPlan {
        section: work.name().to_owned(),
        technique,
        share,
        hairs: foils.hairs,
        surface: foils.surface,
        applying,
        hair: foils.demand.map(|demand| demand.hair),
        takes: foils.demand.map(|demand| demand.mix),
        film: foils.film,
        used: foils.used,
        foils: foils.foils,
        panels: foils.panels,
        first_foil: None,
        last_foil: None,
        mix_per_foil: foils.demand.and_then(|demand| demand.mix_per_foil),
        share_of_panel: foils.layout.map(|layout| layout.share_of_panel),
        start: foils.profile.start,
        softness: foils.profile.softness(),
        line_shows_after: line_shows_after(&foils.profile, rate).value,
        root_shadow: root_shadow(request, work.name()),
        zones: along::zones(request, work),
        along: along::levels(request, hair, colours, work, lights)?,
        ends_between: foils.ends.map(|ends| EndsPlan {
            share: ends.share,
            from: ends.from,
            hair: ends.demand.hair,
            takes: ends.demand.mix,
        }),
        lowlights: depth,
        lowlight_places: Vec::new(),
        technique_choice: choice,
        product_class: product_class(&asked(hair, work, target)),
        planned_class: if work.lightens() { Some(ProductKind::Lightener) } else { work.colour_kind() },
    }))
}

/// What is asked of the class of product; nothing of toners and root shadows.
pub(in crate::service::plan) fn class_question(hair: &Hair, work: &Work<'_>) -> Option<ClassQuestion> {
    work.task.target.map(|target| asked(hair, work, target))
}

fn asked(hair: &Hair, work: &Work<'_>, to: Level) -> ClassQuestion {
    ClassQuestion {
        from: work.from.best(),
        to,
        artificial: work.artificial.is_some(),
        lightened: work.lightened.is_some(),
        white: hair.white.best(),
        planned: work.colour_kind(),
    }
}

/// The technique for what the section wants; the one that is planned is judged as it is planned.
fn technique_choice(
    request: &Request,
    work: &Work<'_>,
    planned: (Technique, Profile),
    growth: Interval<GrowthRate>,
) -> Result<Option<TechniqueDecision>, Problems> {
    let Some(section) = request.file.section.get(work.in_request) else { return Ok(None) };
    let Some(entry) = &section.wants else { return Ok(None) };
    let field = format!("{}.wants.upkeep_weeks", work.task.field);
    let upkeep = Weeks::from_weeks(entry.upkeep_weeks).in_field(&field)?;
    let (taken, length) = (work.taken(request)?, request.amounts.length_or_usual());
    let planned = Some(planned);
    Ok(Some(choose_technique(&TechniqueQuestion { start: entry.start, upkeep, taken, length, growth, planned })))
}

/// Lowlights for the depth that is wanted, on what the section reads as without them.
fn depth(
    request: &Request,
    hair: &Hair,
    colours: &Colours,
    work: &Work<'_>,
    (target, entry): (Level, &LowlightsEntry),
) -> Result<Lowlights, Problems> {
    let field = format!("{}.lowlights", work.task.field);
    let level = match (entry.level, entry.contrast_levels) {
        (Some(level), None) => Level::new(level).in_field(&format!("{field}.level"))?,
        (None, Some(contrast)) => {
            below(target, contrast, hair.natural_level.best()).in_field(&format!("{field}.contrast_levels"))?
        }
        // Told by the reader too, where the file is read from a text.
        (Some(_), Some(_)) => Err("both `level` and `contrast_levels` are given: keep one of them").in_field(&field)?,
        (None, None) => Err("neither `level` nor `contrast_levels` is given: give one of them").in_field(&field)?,
    };
    let wanted = Level::new(entry.reads_as_level).in_field(&format!("{field}.reads_as_level"))?;
    let now = reads_as(colours, work).unwrap_or_else(|| target.into());
    let foils = work.foils().map(|foils| foils.best()).filter(|foils| *foils > 0 && work.is_in_foil());
    // A foil of them takes as much of the section as a light one.
    let of_foils = |(taken, foils): (Share, u32)| (Share::nearest(taken.percent() / f64::from(foils)), foils);
    let light = work.taken(request)?.zip(foils).map(of_foils);
    let found = lowlights(now, wanted, level, hair.natural_level.best(), light);
    found
        .map_err(|error| error.told_with(["`reads_as_level`", "`level`"]).replace("`now`, ", WITHOUT_THEM))
        .in_field(&field)
}

/// What it reads as without lowlights: with what is left in its area, where that is known, else its own hair; none where all of that
/// is coloured and reads as its target.
fn reads_as(colours: &Colours, work: &Work<'_>) -> Option<Interval<Level>> {
    let colour = colours.at(work.place)?;
    if let Some(look) = &colour.look {
        return Some(look.perceived_level);
    }
    let covered = work.task.on_head?.profile.covered;
    (covered.low() < Share::ALL).then(|| seen(&colour.natural, &colour.swatch, covered).perceived_level)
}

/// So much darker than the light strands, and not darker than what grows in.
fn below(light: Level, contrast: f64, natural: Level) -> Result<Level, String> {
    let most = (light - natural).levels();
    if contrast > most {
        let most = text::number(most.max(0.0), 1);
        return Err(format!(
            "{contrast} levels below the `target_level` {light} is darker than `natural_level` {natural}: new growth would show \
             lighter (give {most} or less)"
        ));
    }
    Ok(Level::clamped(light.number() - contrast))
}

/// The foils counted through, section after section.
pub(super) fn number(sections: &mut [SectionPlan]) {
    let mut laid = 0_u32;
    for section in sections {
        let Some(foils) = section.foils.map(|foils| foils.best()).filter(|foils| *foils > 0) else { continue };
        section.first_foil = Some(laid.saturating_add(1));
        laid = laid.saturating_add(foils);
        section.last_foil = Some(laid);
    }
}

/// The root shadow of a section's regions, the mean by their area.
fn root_shadow(request: &Request, section: &str) -> Option<Interval<Length>> {
    // As long as the file says, wherever it is; told with the shadow itself.
    request.file.root_shadow.as_ref().filter(|shadow| shadow.length_cm.is_none())?;
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
