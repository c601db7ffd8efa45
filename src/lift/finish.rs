//! Strengths and starts that make sections finish together, or the reason why none do.

use super::{Belief, Lightening, Situation};
use crate::{
    colour::{Level, LevelChange},
    quantity::{Duration, MassFraction, Quantity},
    source::Interval,
};

/// A section that is to finish with the others, in the order in which the sections are applied.
#[derive(Debug, Clone, PartialEq)]
pub struct TimedSection {
    /// What is known of this hair with this product.
    pub belief: Belief,
    /// The mixture and the hair; its strength is replaced by each of those to choose from.
    pub situation: Situation,
    /// Strengths on the hair to choose from, in any order; a fixed one is a list of one.
    pub on_hair: Vec<Interval<MassFraction>>,
    /// Level now, as far as its reading may be off.
    pub start: Interval<Level>,
    /// Level wanted.
    pub target: Level,
    /// How far the target may be overshot.
    pub tolerance: LevelChange,
    /// How long other work keeps the hands busy between the section before it and this one.
    pub busy_before: Duration,
    /// How long its application takes.
    pub apply: Duration,
    /// The longest that any strand may carry the mixture, from the first one.
    pub longest: Duration,
}

/// What is chosen for one section. Times count from the start of the first application.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimedChoice {
    /// The place of the strength among those to choose from.
    pub strength: usize,
    /// When its application begins.
    pub begin: Duration,
    /// When its middle strand is expected to reach the target (median).
    pub reaches: Duration,
    /// Level expected at the common rinse: median and 80 % interval, for the middle strand.
    pub level: Interval<Level>,
}

/// Sections that finish together.
#[derive(Debug, Clone, PartialEq)]
pub struct FinishTogether {
    /// One choice for each section, in the order given.
    pub sections: Vec<TimedChoice>,
    /// When all are rinsed.
    pub rinse: Duration,
    /// The window that was needed: the one asked for, or a wider one.
    pub window: Duration,
    /// By how many levels the section furthest behind falls short of its target at the rinse; zero when all reach it.
    pub short: LevelChange,
}

/// Sections that cannot be made to finish together, not even short of their targets.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum CannotFinish {
    /// There is nothing to time.
    #[error("no section to time: give at least one")]
    NoSection,
    /// A section has no strength to choose from.
    #[error("section {0} has no strength to choose from: give at least one developer")]
    NoStrength(usize),
    /// Applying takes longer than the first strand may wait.
    #[error(
        "the sections cannot be applied within the longest time of section {0}: its first strand would carry the mixture \
         too long (apply it later, split it, or work with a helper)"
    )]
    TooLongToApply(usize),
}

/// Chooses for each section the strength and the start so that all reach their targets within `window` before one common
/// rinse, no strand carries the mixture beyond its limit, and none overshoots by more than its tolerance. Among all such
/// choices the sum of the strengths is the lowest; among equals the service is the shortest.
///
/// One pair of hands applies the sections in the order given; between two it may wait. When no choice fits
/// the window, it is widened by the fewest minutes; when none reaches all targets, the answer falls short of them by the
/// fewest levels, and only in sections that cannot reach theirs while the others do; it says by how many. A limit of time and a tolerance are never given up.
///
/// The choice is exact: with starts counted back from the rinse, a weaker mixture may begin earlier than a stronger one, and an earlier
/// start of one section only ever helps the next. So of the strengths that still fit a section the weakest is the best for all sections.
///
/// # Errors
///
/// [`CannotFinish`] names the section.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, LevelChange}, lift::{Belief, Situation, TimedSection, finish_together}};
/// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
///
/// let weak = Interval::exact(MassFraction::from_ww_percent(2.0)?);
/// let strong = Interval::exact(MassFraction::from_ww_percent(6.0)?);
/// let section = |start| -> Result<TimedSection, Box<dyn std::error::Error>> {
///     Ok(TimedSection {
///         belief: Belief::untested(),
///         situation: Situation::usual(weak),
///         on_hair: vec![weak, strong],
///         start: Level::new(start)?.into(),
///         target: Level::new(7.0)?,
///         tolerance: LevelChange::from_levels(1.0)?,
///         busy_before: Duration::ZERO,
///         apply: Duration::from_min(10.0)?,
///         longest: Duration::from_min(50.0)?,
///     })
/// };
/// // The darker nape is applied first; it takes the stronger mixture.
/// let plan = finish_together(&[section(4.0)?, section(6.0)?], Duration::from_min(10.0)?)?;
/// assert_eq!(plan.sections.iter().map(|s| s.strength).collect::<Vec<_>>(), [1, 0]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn finish_together(sections: &[TimedSection], window: Duration) -> Result<FinishTogether, CannotFinish> {
    if sections.is_empty() {
        return Err(CannotFinish::NoSection);
    }
    if let Some(i) = sections.iter().position(|section| section.on_hair.is_empty()) {
        return Err(CannotFinish::NoStrength(i + 1));
    }
    let all = |short: f64| -> Vec<Vec<Candidate>> { sections.iter().map(|section| options(section, short)).collect() };
    let reaching = all(0.0);
    if let Ok(found) = answer(&reaching, window.min(), 0.0) {
        return Ok(found);
    }
    // Both questions are monotone, so halving finds the least that has to be given up.
    if answer(&reaching, NO_LIMIT, 0.0).is_ok() {
        let wider = least((window.min(), NO_LIMIT), 0.01, |minutes| answer(&reaching, minutes, 0.0).is_ok());
        return answer(&reaching, wider, 0.0).map_err(too_long);
    }
    let short = least((0.0, ALL_LEVELS), 0.005, |levels| answer(&all(levels), NO_LIMIT, levels).is_ok());
    // A section that can reach its target all the same does.
    let mut nearest = all(short);
    for (i, full) in reaching.into_iter().enumerate() {
        let Some(own) = nearest.get_mut(i) else { continue };
        let kept = std::mem::replace(own, full);
        if answer(&nearest, NO_LIMIT, short).is_err()
            && let Some(own) = nearest.get_mut(i)
        {
            *own = kept;
        }
    }
    answer(&nearest, NO_LIMIT, short).map_err(too_long)
}

fn too_long(place: usize) -> CannotFinish {
    CannotFinish::TooLongToApply(place + 1)
}

/// Minutes that no service lasts.
const NO_LIMIT: f64 = 1e4;
/// Minutes that adding up may be off by.
const ROUNDING: f64 = 1e-9;
/// More levels than the scale has.
const ALL_LEVELS: f64 = 11.0;

/// The least that is enough, to within `step`; what lies at the upper end is taken as enough.
fn least((mut too_little, mut enough): (f64, f64), step: f64, is_enough: impl Fn(f64) -> bool) -> f64 {
    while enough - too_little > step {
        let middle = f64::midpoint(too_little, enough);
        if is_enough(middle) { enough = middle } else { too_little = middle }
    }
    enough
}

/// With so many minutes between the sections; `short` is what some of the options fall short by.
fn answer(options: &[Vec<Candidate>], window: f64, short: f64) -> Result<FinishTogether, usize> {
    let way = search(options, window)?;
    finished(options, &way, window, short).ok_or(0)
}

/// One strength for one section; starts are minutes before the rinse, so negative.
struct Candidate {
    lightening: Lightening,
    /// Percent of peroxide on the hair: what is kept low.
    cost: f64,
    /// Not before: the limit of time, and the tolerance.
    not_before: f64,
    /// Other work before it.
    busy_before: f64,
    /// How long its application takes.
    apply: f64,
    /// From its first strand to the middle strand's target; infinite when the mixture is spent before.
    needed: f64,
}

fn options(section: &TimedSection, short: f64) -> Vec<Candidate> {
    let apply = section.apply.min();
    let one = |on_hair: &Interval<MassFraction>| {
        let situation = Situation { on_hair: *on_hair, ..section.situation };
        let lightening = Lightening::new(&section.belief, &situation, section.start);
        let minutes = |level: Level| lightening.median_to(level).unwrap_or(f64::INFINITY);
        let over = Level::clamped(section.target.number() + section.tolerance.levels().abs());
        // The middle strand stands for the section: the first has half an application more, the last half less.
        let wanted = Level::clamped((section.target.number() - short).max(section.start.best().number()));
        let needed = apply / 2.0 + minutes(wanted);
        let overdone = apply / 2.0 + minutes(over);
        let not_before = (-section.longest.min()).max(-overdone);
        let busy_before = section.busy_before.min();
        Candidate { lightening, cost: on_hair.best().ww_percent(), not_before, busy_before, apply, needed }
    };
    section.on_hair.iter().map(one).collect()
}

/// A way to apply the sections: for each its strength, by its place, and its start.
type Way = Vec<(usize, f64)>;

/// The weakest way, or the place of the section that nothing fits any more.
fn search(options: &[Vec<Candidate>], window: f64) -> Result<Way, usize> {
    let (mut way, mut free) = (Way::new(), f64::NEG_INFINITY);
    for (i, choices) in options.iter().enumerate() {
        let fitting = choices.iter().enumerate().filter_map(|(strength, option)| {
            let begin = option.not_before.max(-option.needed - window).max(free + option.busy_before);
            // Even a section that is done at once is on the hair before the rinse.
            let latest = -option.needed.max(option.apply) + ROUNDING;
            (begin <= latest).then_some((strength, option, begin))
        });
        let (strength, option, begin) = fitting.min_by(|a, b| a.1.cost.total_cmp(&b.1.cost)).ok_or(i)?;
        way.push((strength, begin));
        free = begin + option.apply;
    }
    Ok(way)
}

fn finished(options: &[Vec<Candidate>], way: &Way, window: f64, short: f64) -> Option<FinishTogether> {
    let (_, first) = way.first().copied()?;
    let choices: Option<Vec<TimedChoice>> = options
        .iter()
        .zip(way)
        .map(|(options, (strength, start))| {
            let option = options.get(*strength)?;
            let on_the_middle = (-start - option.apply / 2.0).max(0.0);
            Some(TimedChoice {
                strength: *strength,
                begin: Quantity::nearest(start - first),
                reaches: Quantity::nearest((start - first + option.needed).min(1e6)),
                level: option.lightening.level_after(Quantity::nearest(on_the_middle)),
            })
        })
        .collect();
    Some(FinishTogether {
        sections: choices?,
        rinse: Quantity::nearest(-first),
        window: Quantity::nearest(window),
        short: Level::clamped(1.0 + short) - Level::DARKEST,
    })
}
