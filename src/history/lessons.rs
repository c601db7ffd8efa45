use super::{
    KeptRecord, Learned, WasteTrend,
    day::day,
    once::{CountedOnce, counted_once},
};
use crate::{
    head::Technique,
    quantity::{Duration, Quantity},
    service::FoilPace,
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// What the records teach.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct Lessons {
    /// How many records there are.
    pub records: usize,
    /// Grams used over grams expected, for each technique and for all.
    pub demand: Vec<DemandLesson>,
    /// Minutes for a foil, for each colourist.
    pub foils: Vec<FoilLesson>,
    /// What is thrown away over time; absent where no record says what was left over.
    pub waste: Option<WasteTrend>,
    /// Weeks from one visit of a guest to the next; absent without a guest who came twice.
    pub weeks_between_visits: Option<Learned>,
    /// Levels that came out less levels wanted, over all sections whose result is noted; absent where none is.
    pub level_off: Option<Learned>,
    /// Sections that were put on more than once: left out of grams and levels, for the plan expects one application.
    pub put_on_again: usize,
    /// Lightened sections whose level was read with a toner on it: left out of levels and of readings for a strand book, for toner
    /// darkens.
    pub read_toned: usize,
    /// Lines of services that were kept already: each service counts once, of one guest, day and title the line that was read last.
    pub kept_twice: usize,
}

/// Grams used against grams expected.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct DemandLesson {
    /// The technique; absent for all together.
    pub technique: Option<Technique>,
    /// Used over expected: 1.2 says that the hair took a fifth more than the plan thought.
    pub factor: Learned,
}

/// Minutes for a foil.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct FoilLesson {
    /// Who worked; absent where nobody is named.
    pub colourist: Option<String>,
    /// Minutes for a foil, by the sections whose foils and minutes are noted.
    pub min_per_foil: Learned,
}

/// What the records teach: each figure with how many there are and its 80 % interval. A single figure has no interval.
///
/// What was used is what was weighed less what was left over; a section that does not say both is no lesson in grams, and one that
/// was put on more than once none in grams or levels, one whose level was read with a toner on it none in levels. A service that was
/// kept twice counts once.
///
/// # Example
///
/// ```
/// use foilwork::history::{lessons, read_records};
///
/// let line = |used: f64, left: f64| format!(
///     "{{\"format\":1,\"on\":\"2026-11-25\",\"title\":\"foils\",\"colourist\":\"W.\",\"section\":[{{\"name\":\"nape\",\"foils\":10,\
///      \"apply_min\":14,\"expected_g\":40,\"weighed_g\":{used},\"left_over_g\":{left}}}]}}\n"
/// );
/// let found = lessons(&read_records(&(line(50.0, 2.0) + &line(46.0, 4.0))).records);
/// // 48 and 42 g of 40: the geometric mean of 1.2 and 1.05.
/// assert!((found.demand[0].factor.mean - 1.26_f64.sqrt()).abs() < 1e-12);
/// assert_eq!(found.foils[0].min_per_foil.mean, 1.4);
/// ```
#[must_use]
pub fn lessons(records: &[KeptRecord]) -> Lessons {
    let once = counted_once(records);
    lessons_of(&once, &Figures::of(&once.records))
}

/// What each lesson is the mean of.
#[derive(Default)]
pub(super) struct Figures<'r> {
    /// Grams used over grams expected, of all sections and of each technique.
    pub demand: BTreeMap<Option<Technique>, Vec<f64>>,
    /// Minutes for a foil.
    pub foils: BTreeMap<Option<&'r str>, Vec<f64>>,
    /// Levels that came out less levels wanted.
    pub off: Vec<f64>,
    /// Weeks from visit to visit.
    pub gaps: Vec<f64>,
    put_on_again: usize,
    read_toned: usize,
}

impl<'r> Figures<'r> {
    pub(super) fn of(records: &'r [KeptRecord]) -> Self {
        let mut all = Self { gaps: gaps(records), ..Self::default() };
        for record in records {
            for section in &record.section {
                if let (Some(count), Some(min)) = (section.foils.filter(|count| *count > 0), section.apply_min) {
                    all.foils.entry(record.colourist.as_deref()).or_default().push(min / f64::from(count));
                }
                if section.put_on_again() {
                    all.put_on_again += 1;
                    continue;
                }
                if let (Some(expected), Some(weighed), Some(left)) =
                    (section.expected_g, section.weighed_g, section.left_over_g)
                    && expected > 0.0
                {
                    let factor = (weighed - left) / expected;
                    all.demand.entry(None).or_default().push(factor);
                    if section.technique.is_some() {
                        all.demand.entry(section.technique).or_default().push(factor);
                    }
                }
                let only_toned = section.toned_level.is_some() && section.result_level.is_none();
                all.read_toned += usize::from(section.mixture.is_some() && only_toned);
                if let (Some(target), Some(result)) = (section.target_level, section.result_level) {
                    all.off.push(result - target);
                }
            }
        }
        // Of nothing above zero there is no geometric mean.
        let some = |figures: &Vec<f64>| figures.iter().any(|figure| *figure > 0.0);
        all.demand.retain(|_, factors| some(factors));
        all.foils.retain(|_, minutes| some(minutes));
        all
    }
}

pub(super) fn lessons_of(once: &CountedOnce, all: &Figures<'_>) -> Lessons {
    let records = &once.records;
    let demand = all.demand.iter();
    let foils = all.foils.iter();
    Lessons {
        records: records.len(),
        demand: demand
            .filter_map(|(technique, factors)| {
                Some(DemandLesson { technique: *technique, factor: Learned::of(factors)? })
            })
            .collect(),
        foils: foils
            .filter_map(|(who, minutes)| {
                Some(FoilLesson { colourist: who.map(str::to_owned), min_per_foil: Learned::of(minutes)? })
            })
            .collect(),
        waste: WasteTrend::of(records),
        weeks_between_visits: Learned::of(&all.gaps),
        level_off: Learned::of_differences(&all.off),
        put_on_again: all.put_on_again,
        read_toned: all.read_toned,
        kept_twice: once.repeats.len(),
    }
}

/// Minutes for a foil of a colourist, as a plan takes them; none by fewer than two timed sections, for one says nothing of the
/// spread, and none where nobody is named, for records that name nobody are not those of one colourist.
///
/// # Example
///
/// ```
/// use foilwork::history::{foil_pace, read_records};
///
/// let line = |min: u32| format!(
///     "{{\"format\":1,\"on\":\"2026-11-25\",\"title\":\"foils\",\"colourist\":\"W.\",\"section\":[{{\"name\":\"nape\",\"foils\":10,\
///      \"apply_min\":{min}}}]}}\n"
/// );
/// let records = read_records(&(line(9) + &line(16))).records;
/// // The geometric mean of 0.9 and 1.6 min.
/// assert!((foil_pace(&records, Some("W.")).ok_or("two")?.foil.best().min() - 1.2).abs() < 1e-12);
/// assert!(foil_pace(&records, None).is_none());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn foil_pace(records: &[KeptRecord], colourist: Option<&str>) -> Option<FoilPace> {
    let named = |one: &FoilLesson| one.colourist.as_deref() == colourist;
    colourist?;
    let learned = lessons(records).foils.into_iter().find(named)?.min_per_foil;
    let foil = Interval::ordered(learned.mean_low?, learned.mean, learned.mean_high?).map(Duration::nearest);
    Some(FoilPace { foil, sections: learned.count })
}

/// Weeks between the visits of each guest, one after the other; two records of a day are one visit.
fn gaps(records: &[KeptRecord]) -> Vec<f64> {
    let mut days: BTreeMap<&str, Vec<jiff::civil::Date>> = BTreeMap::new();
    for record in records {
        if let (Some(guest), Ok(on)) = (record.guest.as_deref(), day(&record.on)) {
            days.entry(guest).or_default().push(on);
        }
    }
    let mut gaps = Vec::new();
    for visits in days.values_mut() {
        visits.sort_unstable();
        visits.dedup();
        let pairs = visits.iter().zip(visits.iter().skip(1));
        gaps.extend(pairs.map(|(one, next)| next.duration_since(*one).as_hours() as f64 / 24.0 / 7.0));
    }
    gaps
}
