//! Strand tests of a file as readings, and the hair and the mix as the lift room takes them.

use super::{Bottle, InField, Item, ItemKind, Oxidant, defaults::Defaults, task::Shelf};
use crate::{
    colour::Level,
    lift::{Booster, Cover, Ph, Situation, StrandReading, Uptake},
    mix::{Ratio, as_applied},
    quantity::{Duration, Mass, MassFraction, Share, Temperature},
    reader::Problems,
    service::shape::{Porosity, ServiceFile, Strand},
    source::{Interval, Sourced},
};

/// The strands that the file states, each as a reading of this guest.
pub(super) fn strands(
    file: &ServiceFile,
    shelf: &Shelf<'_>,
    room: Temperature,
    used: &mut Defaults,
) -> Result<Vec<StrandReading>, Problems> {
    let mut read = |(i, strand)| reading(file, shelf, room, (&format!("strand[{}]", i + 1), strand), used);
    file.strand.iter().enumerate().map(&mut read).collect()
}

fn reading(
    file: &ServiceFile,
    shelf: &Shelf<'_>,
    room: Temperature,
    (field, strand): (&str, &Strand),
    used: &mut Defaults,
) -> Result<StrandReading, Problems> {
    let place = shelf.item(&strand.product, &format!("{field}.product"))?;
    let products = [(place, 1.0)];
    let oxidant = shelf.oxidant(&products, strand.developer.as_deref(), strand.strength.as_deref(), field)?;
    let ratio = shelf.ratio(strand.ratio.as_deref(), &products, oxidant, field)?;
    let ratio = ratio.ok_or("a strand needs a mix with developer").in_field(field)?;
    let strength = match oxidant {
        Oxidant::Bottle(i) => shelf.bottles.get(i).map(|bottle: &Bottle| bottle.strength),
        Oxidant::Strength(stated) => Some(stated.mass_fraction(room).in_field(&format!("{field}.strength"))?),
        Oxidant::Open | Oxidant::Nothing => None,
    };
    let strength = strength.ok_or("neither `developer` nor `strength` is given: give one of them").in_field(field)?;
    let stated = strand.temperature_c.map(Temperature::from_celsius).transpose();
    let temperature = format!("{field}.temperature_c");
    let stated = stated.in_field(&temperature)?;
    let temperature = used.stated_or(stated, &temperature, Sourced::assumed(room), "the room's").value;
    let field_of_cover = format!("{field}.cover");
    let cover = Sourced::common_practice(Cover::Foil);
    let cover = used.stated_or(strand.cover, &field_of_cover, cover, "a test strand lies on foil").value;
    let item = shelf.items.get(place);
    let reading = StrandReading {
        situation: Situation {
            on_hair: on_hair(&ratio, strength, &[]).in_field(field)?,
            temperature,
            cover,
            ..of_hair(file, item)
        },
        time: Duration::from_min(strand.time_min).in_field(&format!("{field}.time_min"))?,
        before: Level::new(strand.before_level).in_field(&format!("{field}.before_level"))?,
        after: Level::new(strand.after_level).in_field(&format!("{field}.after_level"))?,
        reader: strand.reader,
        guest: Some(guest(file).to_owned()),
        product: Some(strand.product.clone()),
    };
    if let Some(why) = reading.darker() {
        return Err(why).in_field(&format!("{field}.after_level"));
    }
    Ok(reading)
}

/// Whose readings those of the file are; one without a code hangs together with this service alone.
pub(in crate::service) fn guest(file: &ServiceFile) -> &str {
    file.service.guest.as_deref().unwrap_or("the guest of this service")
}

/// The hair of the file under a product, the strength and the temperature yet to be set.
pub(in crate::service) fn of_hair(file: &ServiceFile, product: Option<&Item>) -> Situation {
    let booster = match product.map(|item| &item.kind) {
        Some(ItemKind::Lightener { persulfate: Some(false), .. }) => Booster::Mild,
        Some(ItemKind::Lightener { .. }) => Booster::Persulfate,
        _ => Booster::None,
    };
    let ph: Option<Ph> = product.and_then(Item::mixed_ph);
    let usual = Situation::usual(Interval::exact(MassFraction::ZERO));
    let texture = file.analysis.texture.unwrap_or_default();
    Situation { booster, ph, uptake: uptake(file.analysis.porosity), texture, ..usual }
}

/// A porosity that is not stated, or differs along the strand, counts as normal.
fn uptake(porosity: Option<Porosity>) -> Uptake {
    match porosity {
        Some(Porosity::Low) => Uptake::Low,
        Some(Porosity::High) => Uptake::High,
        Some(Porosity::Normal | Porosity::Uneven) | None => Uptake::Normal,
    }
}

/// The strength on the hair of a developer in a bowl with these doses of additives.
pub(in crate::service) fn on_hair(
    ratio: &Ratio,
    developer: Interval<MassFraction>,
    doses: &[Share],
) -> Result<Interval<MassFraction>, Box<dyn std::error::Error>> {
    let none = Interval::exact(MassFraction::ZERO);
    let bowl = Mass::from_g(100.0)?;
    let masses = ratio.split_total(bowl)?;
    let [product, liquid] = masses.as_slice() else {
        return Err("the ratio must have two parts, product to developer".into());
    };
    let mut parts = vec![(*product, none), (*liquid, developer)];
    for dose in doses {
        parts.push((bowl.times(dose.fraction())?, none));
    }
    Ok(as_applied(&parts)?)
}
