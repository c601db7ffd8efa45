use super::{
    Before, Clash, Clashing, Effort, Floor, OrderRule, SectionWork, Timeline, TooMuch,
    bounds::bounded,
    clash,
    exact::{Tries, exact},
    search::{by_habit, search},
    step::Steps,
    tables::Tables,
};
use crate::quantity::Duration;

/// How much is tried for the order of one pair of hands: a few thousandths of a second, or about one.
const QUICK: Tries = Tries { promising: 6_000, states: 1_500, sets_of: 8 };
const THOROUGH: Tries = Tries { promising: 45_000, states: 400_000, sets_of: 13 };
/// The same for the rinses of a given order.
const IN_ORDER: Tries = Tries { promising: 1_500, states: 1_500, sets_of: 8 };

/// Why work cannot be arranged.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum CannotArrange {
    /// There is nothing to arrange.
    #[error("no section: give at least one")]
    NoSection,
    /// More than is arranged.
    #[error(transparent)]
    TooMuch(#[from] TooMuch),
    /// A rule names a section that is not there, or one that waits for itself.
    #[error("rule {rule}: section {first} before section {then}, counted from 0, of {count} (name two that are there)")]
    UnknownSection {
        /// Which rule, from 0.
        rule: usize,
        /// The section that would come first.
        first: usize,
        /// The one that would wait.
        then: usize,
        /// How many there are.
        count: usize,
    },
    /// An order that does not name every section once.
    #[error("the order must name each of {count} sections once, counted from 0")]
    NotAnOrder {
        /// How many there are.
        count: usize,
    },
    /// A day in its midst that names a section twice, or one that is not there.
    #[error(
        "what is on and what is rinsed must name sections once, counted from 0, of {count} (name each that is there)"
    )]
    NotUnderway {
        /// How many there are.
        count: usize,
    },
    /// A section that is on the hair before its first strand is.
    #[error(
        "section {section}: first strand at {} min, but now it is {} min (leave a section out until it is begun)",
        crate::text::amount(*.start, 1),
        crate::text::amount(*.now, 1)
    )]
    NotBegun {
        /// Its place in the list of the work, from 0.
        section: usize,
        /// Its first strand.
        start: Duration,
        /// What time it is.
        now: Duration,
    },
    /// Rules that contradict each other.
    #[error("these cannot hold together: {0} (leave one of them out)")]
    Clash(Clash),
    /// The order given breaks a rule or a limit.
    #[error("in this order the rules and the longest times cannot be kept (let the plan choose the order)")]
    OrderBreaksRules,
    /// The search found no order, though each section fits alone.
    #[error("no order was found that keeps the rules and the longest times (leave a rule out, or part the work)")]
    NoneFound,
}

/// Finds the order with the earliest finish.
///
/// With one pair of hands the finish is proven where that takes no longer than `effort` allows: a handful of sections quickly,
/// about twelve thoroughly. Otherwise it is the best that a search finds, with a bound beside it that nothing beats;
/// [`Timeline::proven`] says which. Several pairs of hands never end later than fewer would. What needs longest on the hair is tried first, and so it comes first where that costs no
/// time.
///
/// # Units
///
/// Times are worked out in whole seconds, rounded up.
///
/// # Errors
///
/// [`CannotArrange`], with the smallest set of rules that clash.
///
/// # Example
///
/// ```
/// use foilwork::{day::{Effort, Floor, SectionWork, arrange}, quantity::Duration};
///
/// let min = |value| Duration::from_min(value);
/// let hairline = SectionWork::new("hairline", min(10.0)?, min(20.0)?, min(50.0)?);
/// let nape = SectionWork::new("nape", min(15.0)?, min(35.0)?, min(60.0)?);
/// let day = arrange(&[hairline, nape], &[], &Floor::default(), Effort::Thorough)?;
/// assert_eq!(day.sections[0].name, "nape");
/// assert!(day.proven && day.visits == 1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn arrange(
    work: &[SectionWork],
    before: &[Before],
    floor: &Floor,
    effort: Effort,
) -> Result<Timeline, CannotArrange> {
    let tables = checked(work, before, floor)?;
    best(work, &tables, floor, effort)
}

/// The day with all of these hands at work, found by habit alone: what one more pair would save of a best day that is known.
pub(crate) fn with_all_hands(
    work: &[SectionWork],
    before: &[Before],
    floor: &Floor,
) -> Result<Timeline, CannotArrange> {
    let tables = checked(work, before, floor)?;
    let found = search(&tables).ok_or(CannotArrange::NoneFound)?;
    Ok(Timeline::of(work, &tables, floor, &found, tables.bound()))
}

/// The best day that these tables allow.
pub(super) fn best(
    work: &[SectionWork],
    tables: &Tables,
    floor: &Floor,
    effort: Effort,
) -> Result<Timeline, CannotArrange> {
    let tries = if effort == Effort::Quick { QUICK } else { THOROUGH };
    let alone = |tables: &Tables| exact(tables, search(tables), None, tries);
    if tables.people > 1 {
        let found = with_fewer(tables, search, |one| alone(one).best).ok_or(CannotArrange::NoneFound)?;
        return Ok(Timeline::of(work, tables, floor, &found, tables.bound()));
    }
    let found = alone(tables);
    let best = found.best.ok_or(CannotArrange::NoneFound)?;
    Ok(Timeline::of(work, tables, floor, &best, found.bound))
}

/// The best day of so many hands or of fewer: a search by habit keeps everybody busy, and what is then on all at once may have
/// to wait for one basin. Further hands that only stand by make no day longer.
fn with_fewer(
    tables: &Tables,
    together: impl Fn(&Tables) -> Option<Steps>,
    alone: impl Fn(&Tables) -> Option<Steps>,
) -> Option<Steps> {
    let (bound, mut best) = (tables.bound(), None::<Steps>);
    // More hands than there are units never begin anything.
    for people in (1..=tables.people.min(tables.units.len().max(1))).rev() {
        if best.as_ref().is_some_and(|best| best.finish <= bound) {
            break;
        }
        let fewer = Tables { people, ..tables.clone() };
        let found = if people == 1 { alone(&fewer) } else { together(&fewer) };
        if let Some(found) = found.filter(|found| best.as_ref().is_none_or(|best| found.finish < best.finish)) {
            best = Some(found);
        }
    }
    best
}

/// Lays the work out in the order given, with the rinses where they end earliest.
///
/// # Errors
///
/// [`CannotArrange`]; sections that share a foil must follow each other.
///
/// # Example
///
/// ```
/// use foilwork::{day::{Floor, SectionWork, in_this_order}, quantity::Duration};
///
/// let min = |value| Duration::from_min(value);
/// let hairline = SectionWork::new("hairline", min(10.0)?, min(20.0)?, min(50.0)?);
/// let nape = SectionWork::new("nape", min(15.0)?, min(35.0)?, min(60.0)?);
/// let day = in_this_order(&[hairline, nape], &[], &Floor::default(), &[0, 1])?;
/// assert_eq!(day.sections[0].name, "hairline");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn in_this_order(
    work: &[SectionWork],
    before: &[Before],
    floor: &Floor,
    order: &[usize],
) -> Result<Timeline, CannotArrange> {
    let tables = checked(work, before, floor)?;
    let mut named: Vec<usize> = order.to_vec();
    named.sort_unstable();
    if !named.iter().copied().eq(0..work.len()) {
        return Err(CannotArrange::NotAnOrder { count: work.len() });
    }
    let mut units: Vec<usize> = Vec::new();
    let mut painted: Vec<usize> = Vec::new();
    for section in order {
        let has = |unit: &super::tables::Unit| unit.jobs.iter().any(|job| job.section == *section);
        let unit = tables.units.iter().position(has).ok_or(CannotArrange::OrderBreaksRules)?;
        if units.last() != Some(&unit) {
            units.push(unit);
            painted.extend(tables.unit(unit).iter().flat_map(|unit| &unit.jobs).map(|job| job.section));
        }
    }
    let at = |unit: usize| units.iter().position(|other| *other == unit);
    if painted != order || tables.edges().iter().any(|(first, then)| at(*first) >= at(*then)) {
        return Err(CannotArrange::OrderBreaksRules);
    }
    let together = |tables: &Tables| by_habit(tables, &units, true);
    let alone = |tables: &Tables| exact(tables, together(tables), Some(&units), IN_ORDER).best;
    let found = with_fewer(&tables, together, alone).ok_or(CannotArrange::OrderBreaksRules)?;
    Ok(Timeline::of(work, &tables, floor, &found, tables.bound()))
}

/// The tables of work that can be arranged at all.
pub(super) fn checked(work: &[SectionWork], before: &[Before], floor: &Floor) -> Result<Tables, CannotArrange> {
    if work.is_empty() {
        return Err(CannotArrange::NoSection);
    }
    bounded(work, before, floor)?;
    let count = work.len();
    for (rule, one) in before.iter().enumerate() {
        if one.first >= count || one.then >= count || one.first == one.then {
            return Err(CannotArrange::UnknownSection { rule, first: one.first, then: one.then, count });
        }
    }
    let units = clash::units(work, before).map_err(CannotArrange::Clash)?;
    let tables = Tables::of(work, before, floor, &units);
    let too_short = |(_, unit): &(usize, &super::tables::Unit)| unit.high < unit.low.max(unit.block + tables.walk);
    match tables.units.iter().enumerate().find(too_short) {
        Some((place, _)) => {
            let unit = units.get(place).map(Vec::as_slice).unwrap_or_default();
            Err(CannotArrange::Clash(too_long(work, unit, floor)))
        }
        None => Ok(tables),
    }
}

/// Why a unit does not fit into its own longest times.
fn too_long(work: &[SectionWork], unit: &[usize], floor: &Floor) -> Clash {
    let alone = |section: usize| {
        let tables = Tables::of(work, &[], floor, &[vec![section]]);
        tables.units.iter().all(|unit| unit.high >= unit.low.max(unit.block + tables.walk))
    };
    let told = |section: usize| {
        let one = work.get(section)?;
        let asks = format!(
            "{}: {} to apply besides looks and fresh bowls, {} to develop, {} on the hair at most",
            one.name,
            minutes(one.apply),
            minutes(one.develop),
            minutes(one.longest)
        );
        Some(Clashing { rule: OrderRule::Longest, before: None, asks })
    };
    // A section that does not fit alone is the whole reason.
    if let Some(one) = unit.iter().find(|section| !alone(**section)).and_then(|section| told(*section)) {
        return Clash(vec![one]);
    }
    let names: Vec<&str> = unit.iter().filter_map(|section| Some(work.get(*section)?.name.as_str())).collect();
    let foil = Clashing { rule: OrderRule::OneFoil, before: None, asks: names.join(" with ") };
    Clash(unit.iter().filter_map(|section| told(*section)).chain([foil]).collect())
}

fn minutes(time: Duration) -> String {
    format!("{} min", crate::text::amount(time, 1))
}
