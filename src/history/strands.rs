use super::{KeptRecord, KeptSection, once::counted_once};
use crate::{
    colour::Level,
    lift::{Ph, Reader, Situation, StrandReading},
    quantity::{Duration, MassFraction, Temperature},
    source::Interval,
};

/// What the records say of lift, as readings of strands: for each lightened section whose result and time were noted the level
/// before and after, the mix and the hair; not of those that were put on more than once, or whose level was read with a toner on it.
/// A service that was kept twice counts once. [`strand_line`](crate::lift::strand_line) writes them into a strand book.
///
/// A section is more than a strand, and its level is read by eye: that is what its reader says.
///
/// # Example
///
/// ```
/// use foilwork::{history::{keep, strand_readings}, reader::Format, record::{read_log, replay}, service::plan_text};
///
/// let plan = plan_text(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let log = read_log(&std::fs::read_to_string("examples/soft-gradient.jsonl")?);
/// let readings = strand_readings(&[keep(&plan, &replay(&log.entries))]);
/// assert_eq!((readings.len(), readings[0].time.min(), readings[0].after.number()), (1, 47.0, 8.5));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn strand_readings(records: &[KeptRecord]) -> Vec<StrandReading> {
    let of = |record: &KeptRecord| {
        let readings = record.section.iter().filter_map(|section| reading(record, section));
        readings.collect::<Vec<_>>()
    };
    counted_once(records).records.iter().flat_map(of).collect()
}

fn reading(record: &KeptRecord, section: &KeptSection) -> Option<StrandReading> {
    // Two mixes, each for its own minutes, are not one for their sum.
    let mix = section.mixture.as_ref().filter(|_| !section.put_on_again())?;
    let strength = |ww: f64| MassFraction::from_ww_percent(ww).ok();
    let (low, best, high) = (
        strength(mix.on_hair_low_ww_percent)?,
        strength(mix.on_hair_ww_percent)?,
        strength(mix.on_hair_high_ww_percent)?,
    );
    // Parts stand in the order of the bowl, and its lightener is the first.
    let product = section.part.first().map(|part| part.product.clone());
    let reading = StrandReading {
        situation: Situation {
            on_hair: Interval::ordered(low, best, high),
            temperature: Temperature::from_celsius(mix.temperature_c).ok()?,
            booster: mix.booster,
            ph: mix.ph.map(Ph::new).transpose().ok()?,
            uptake: mix.uptake,
            texture: mix.texture,
            cover: mix.cover,
        },
        time: Duration::from_min(section.on_hair_min.filter(|min| *min > 0.0)?).ok()?,
        before: Level::new(section.from_level?).ok()?,
        after: Level::new(section.result_level?).ok()?,
        reader: Reader::Eye,
        guest: record.guest.clone(),
        product,
    };
    // A book refuses what became darker, for lightener makes hair lighter.
    (!reading.is_darker()).then_some(reading)
}
