use super::{
    Asked, Bottle, DefaultUsed, FoilPace, HairAmounts, HeadMap, Item, OnFloor, Task, after_rinse,
    applying::Pace,
    counts_from,
    defaults::{self, DefaultValue, Defaults},
    head_map, shelf, strands,
    task::{self, Oxidant, Shelf},
};
use crate::{
    colour::{Level, LevelChange},
    hair::WhiteShare,
    head::{Gradient, PastUse},
    lift::StrandReading,
    limits::Jurisdiction,
    quantity::{Duration, Mass, MassFraction, Share, Temperature},
    reader::{self, InField},
    service::{
        file::{Moment, Problems},
        shape::{Finish, Section, ServiceFile},
    },
    shop::{Per, Shop},
    source::{Basis, Interval},
};

/// A service file with every number a quantity and every name resolved.
#[derive(Debug, Clone)]
pub(in crate::service) struct Request {
    pub(in crate::service) file: ServiceFile,
    pub(in crate::service) start: Moment,
    pub(in crate::service) jurisdiction: Option<Jurisdiction>,
    pub(in crate::service) natural: Level,
    pub(in crate::service) shop: Shop,
    pub(in crate::service) scale_division: Mass,
    pub(in crate::service) bowl_capacity: Mass,
    pub(in crate::service) room: Temperature,
    pub(in crate::service) bottles: Vec<Bottle>,
    pub(in crate::service) items: Vec<Item>,
    pub(in crate::service) tasks: Vec<Task>,
    /// The tested strands that the file states.
    pub(in crate::service) strands: Vec<StrandReading>,
    /// The strongest developer of what touches the scalp, by the house.
    pub(in crate::service) strongest_on_scalp: Option<MassFraction>,
    /// How far apart sections may be done that finish together, and how far a target may be overshot.
    pub(in crate::service) window: Duration,
    pub(in crate::service) tolerance: LevelChange,
    /// The hair in grams.
    pub(in crate::service) amounts: HairAmounts,
    /// How much of it is white.
    pub(in crate::service) white: Interval<Share>,
    /// The counts it is from, where it is not stated.
    pub(in crate::service) white_counted: Option<WhiteShare>,
    /// How the light falls off inward.
    pub(in crate::service) gradient: Option<Gradient>,
    /// Hands, basins and the small work.
    pub(in crate::service) floor: OnFloor,
    /// Where the sections lie, where they say so.
    pub(in crate::service) map: Option<HeadMap>,
    /// What was said before the service.
    pub(in crate::service) asked: Option<Asked>,
    pub(in crate::service) defaults: Vec<DefaultUsed>,
}

impl Request {
    /// Resolves a file, after the same checks that a text goes through; with the minutes for a foil that records show.
    pub(in crate::service) fn new(file: &ServiceFile, pace: Option<FoilPace>) -> Result<Self, Problems> {
        reader::validate(file)?;
        Self::of_checked(file, pace)
    }

    /// Resolves a file that was read just now, and so has been checked.
    pub(in crate::service) fn of_checked(file: &ServiceFile, pace: Option<FoilPace>) -> Result<Self, Problems> {
        let mut used = Defaults::default();
        let salon = &file.salon;
        let natural = Level::new(file.analysis.natural_level).in_field("analysis.natural_level")?;
        let jurisdiction = file.service.jurisdiction.as_deref().map(str::parse).transpose();
        let own =
            file.shop.as_ref().ok_or("missing: a plan needs the shop, not the name of its file").in_field("shop")?;
        let shop = Shop::of_checked(own, "shop.")?;

        let field = "salon.scale_division_g";
        let stated = salon.scale_division_g.map(Mass::from_g).transpose().in_field(field)?;
        let default = defaults::scale_division().in_field(field)?;
        let scale_division = used.stated_or(stated, field, default, "a scale that shows whole grams").value;

        let field = "salon.bowl_capacity_g";
        let stated = salon.bowl_capacity_g.map(Mass::from_g).transpose().in_field(field)?;
        let default = defaults::bowl_capacity().in_field(field)?;
        let bowl_capacity = used.stated_or(stated, field, default, "an ordinary tint bowl").value;

        let field = "salon.working_life_min";
        let stated = salon.working_life_min.map(Duration::from_min).transpose().in_field(field)?;
        let default = defaults::working_life().in_field(field)?;
        let why = "between most active and spent; the product's leaflet wins";
        let working_life = used.stated_or(stated, field, default, why).value;

        let field = "salon.room_c";
        let stated = salon.room_c.map(Temperature::from_celsius).transpose().in_field(field)?;
        let room = used.stated_or(stated, field, defaults::room().in_field(field)?, "an ordinary heated room").value;

        let strongest_on_scalp = salon.strongest_on_scalp_ww_percent.map(MassFraction::from_ww_percent).transpose();
        let strongest_on_scalp = strongest_on_scalp.in_field("salon.strongest_on_scalp_ww_percent")?;

        let floor = OnFloor::of(salon, file.analysis.texture, &mut used)?;
        let bottles = shelf::bottles(&shop, room, &mut used)?;
        let items = shelf::items(&shop);
        let amounts = HairAmounts::of(&file.analysis)?;
        let template = head_map::template(file)?;
        let (white, white_counted) = head_map::white(file, &template)?;
        let map = HeadMap::of(file, &template)?;
        let gradient = file.gradient.as_ref().map(|entry| head_map::gradient(entry, amounts.length)).transpose()?;
        let asked = head_map::asked(file, map.as_ref(), gradient)?;
        let with_spare = 1.0 + file.salon.spare_percent.unwrap_or(0.0) / 100.0;
        let pace = Pace::of(salon, pace)?;
        let look_up = Shelf { bottles: &bottles, items: &items, working_life, amounts: &amounts, with_spare, pace };
        // What was used on some sections says how much hair there is on the others: read once for that alone.
        let uses = past_uses(file, &asked, &look_up)?;
        let amounts = amounts.with_uses(&uses);
        let look_up = Shelf { amounts: &amounts, ..look_up };
        let mut tasks = sections(file, &asked, &look_up, &mut used)?;
        let toners: Result<Vec<_>, _> = file
            .toner
            .iter()
            .enumerate()
            .map(|(i, toner)| after_rinse::toner(i, toner, &tasks, &look_up, &mut used))
            .collect();
        tasks.extend(toners?);
        if let Some(shadow) = &file.root_shadow {
            tasks.push(after_rinse::root_shadow(shadow, &look_up, &mut used)?);
        }
        let strands = strands::strands(file, &look_up, room, &mut used)?;
        let (window, tolerance) = finish(&file.finish, &tasks, &mut used)?;
        counts_from::note(&shop, &tasks, &items, &mut used);
        for (i, consumable) in shop.consumables.iter().enumerate() {
            if consumable.pieces.is_none() {
                let why = match consumable.per {
                    Per::Service => "one for the service",
                    Per::Foil => "one for each foil",
                };
                let field = format!("shop.consumable[{}].pieces", i + 1);
                used.note(&field, DefaultValue::Pieces(1), Basis::Assumed, None, why);
            }
        }
        let start: Moment = file.service.start.parse().in_field("service.start")?;
        let consulted = file.consultation.as_ref().map(|entry| Asked::of(entry, start, &mut used)).transpose()?;
        Ok(Self {
            start,
            asked: consulted,
            jurisdiction: jurisdiction.in_field("service.jurisdiction")?,
            natural,
            shop,
            scale_division,
            bowl_capacity,
            room,
            bottles,
            items,
            tasks,
            amounts,
            white,
            white_counted,
            gradient,
            floor,
            map,
            strands,
            strongest_on_scalp,
            window,
            tolerance,
            defaults: used.0,
            file: file.clone(),
        })
    }
}

fn sections(
    file: &ServiceFile,
    asked: &[head_map::Asked],
    shelf: &Shelf<'_>,
    used: &mut Defaults,
) -> Result<Vec<Task>, Problems> {
    let read = |((i, section), asked): ((usize, &Section), &head_map::Asked)| {
        task::section(i, section, &file.section, *asked, shelf, used)
    };
    file.section.iter().enumerate().zip(asked).map(read).collect()
}

/// What was used on its sections an earlier time; nothing to read where no section says so.
fn past_uses(file: &ServiceFile, asked: &[head_map::Asked], shelf: &Shelf<'_>) -> Result<Vec<PastUse>, Problems> {
    if file.section.iter().all(|section| section.used_g.is_none()) {
        return Ok(Vec::new());
    }
    let tasks = sections(file, asked, shelf, &mut Defaults::default())?;
    Ok(tasks.iter().filter_map(|task| task.on_head?.past_use).collect())
}

/// The window and the tolerance; their defaults are noted only where a section leaves its strength open.
fn finish(stated: &Finish, tasks: &[Task], used: &mut Defaults) -> Result<(Duration, LevelChange), Problems> {
    let mut unused = Defaults::default();
    let used = if tasks.iter().any(|task| task.oxidant == Oxidant::Open) { used } else { &mut unused };
    let field = "finish.within_min";
    let window = stated.within_min.map(Duration::from_min).transpose().in_field(field)?;
    let why = "between one look and the next";
    let window = used.stated_or(window, field, defaults::window().in_field(field)?, why).value;
    let field = "finish.tolerance_levels";
    let over = stated.tolerance_levels.map(LevelChange::from_levels).transpose().in_field(field)?;
    let why = "a level is read to the half step";
    let tolerance = used.stated_or(over, field, defaults::tolerance().in_field(field)?, why).value;
    Ok((window, tolerance))
}
