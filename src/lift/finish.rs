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
    /// Level now.
    pub start: Level,
    /// Level wanted.
    pub target: Level,
    /// How far the target may be overshot.
    pub tolerance: LevelChange,
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
    /// By how many minutes some section falls short of its target at the rinse; zero when all reach it.
    pub short: Duration,
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
/// One pair of hands applies the sections in the order given; between two it may wait. When no choice reaches all targets,
/// the answer falls short of them by the fewest minutes, and says by how many. A limit of time is never given up.
///
/// The choice is exact: with starts counted back from the rinse, an earlier start of one section only ever helps the next,
/// so of all ways to apply the first few sections only those count that no other beats in both strength and time.
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
/// let weak = Interval::exact(MassFraction::from_percent_ww(2.0)?);
/// let strong = Interval::exact(MassFraction::from_percent_ww(6.0)?);
/// let section = |start| -> Result<TimedSection, Box<dyn std::error::Error>> {
///     Ok(TimedSection {
///         belief: Belief::untested(),
///         situation: Situation::usual(weak),
///         on_hair: vec![weak, strong],
///         start: Level::new(start)?,
///         target: Level::new(7.0)?,
///         tolerance: LevelChange::new(1.0)?,
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
    let options: Vec<Vec<Candidate>> = sections.iter().map(|section| options(section, window)).collect();
    if let Some(i) = options.iter().position(Vec::is_empty) {
        return Err(CannotFinish::NoStrength(i + 1));
    }
    if let Some(found) = search(sections, &options, 0.0).ok().and_then(|way| finished(sections, &options, &way, 0.0)) {
        return Ok(found);
    }
    // The fewest minutes by which some section must fall short; the question is monotone, so halving finds it.
    let (mut too_few, mut enough) = (0.0, 1e4);
    search(sections, &options, enough).map_err(|i| CannotFinish::TooLongToApply(i + 1))?;
    while enough - too_few > 0.01 {
        let middle = (too_few + enough) / 2.0;
        if search(sections, &options, middle).is_ok() { enough = middle } else { too_few = middle }
    }
    search(sections, &options, enough)
        .ok()
        .and_then(|way| finished(sections, &options, &way, enough))
        .ok_or(CannotFinish::NoSection)
}

/// One strength for one section; starts are minutes before the rinse, so negative.
struct Candidate {
    lightening: Lightening,
    /// Percent of peroxide on the hair: what is kept low.
    cost: f64,
    /// Not before: the limit of time, the window, the tolerance.
    not_before: f64,
    /// Not after: or the target is not reached by the rinse.
    not_after: f64,
    /// Never after: the section would not be on the hair at all.
    apply: f64,
    needed: f64,
}

fn options(section: &TimedSection, window: Duration) -> Vec<Candidate> {
    let apply = section.apply.min();
    let one = |on_hair: &Interval<MassFraction>| {
        let situation = Situation { on_hair: *on_hair, ..section.situation };
        let lightening = Lightening::new(&section.belief, &situation, section.start);
        let minutes = |level: Level| lightening.time_to(level).median.map_or(f64::INFINITY, Duration::min);
        let over = Level::clamped(section.target.number() + section.tolerance.levels().abs());
        // The middle strand stands for the section: the first has half an application more, the last half less.
        let needed = apply / 2.0 + minutes(section.target);
        let overdone = apply / 2.0 + minutes(over);
        let not_before = [-section.longest.min(), -needed - window.min(), -overdone].into_iter().fold(f64::NEG_INFINITY, f64::max);
        Candidate { lightening, cost: on_hair.best().percent_ww(), not_before, not_after: -needed, apply, needed }
    };
    section.on_hair.iter().map(one).collect()
}

/// A way to apply the first few sections: its strengths, their sum, and the starts.
#[derive(Clone)]
struct Way {
    cost: f64,
    strengths: Vec<usize>,
    starts: Vec<f64>,
}

/// The cheapest way, or the place of the section at which none is left. `short` is how many minutes a section may be late.
fn search(sections: &[TimedSection], options: &[Vec<Candidate>], short: f64) -> Result<Way, usize> {
    let mut ways = vec![Way { cost: 0.0, strengths: Vec::new(), starts: Vec::new() }];
    let mut free = vec![f64::NEG_INFINITY];
    for (i, (section, choices)) in sections.iter().zip(options).enumerate() {
        let mut next: Vec<(Way, f64)> = Vec::new();
        for (way, free) in ways.iter().zip(&free) {
            for (strength, option) in choices.iter().enumerate() {
                let begin = option.not_before.max(*free);
                // A section that never reaches its target may be late by anything but its own limit of time.
                let latest = if option.not_after.is_finite() { option.not_after + short } else { short - 1e4 };
                if begin > latest.min(-section.apply.min()) + 1e-9 || !begin.is_finite() {
                    continue;
                }
                let mut longer = way.clone();
                longer.cost += option.cost;
                longer.strengths.push(strength);
                longer.starts.push(begin);
                next.push((longer, begin + option.apply));
            }
        }
        if next.is_empty() {
            return Err(i);
        }
        // Cheapest first; a dearer way counts only if its hands are free earlier.
        next.sort_by(|a, b| a.0.cost.total_cmp(&b.0.cost).then(a.1.total_cmp(&b.1)));
        (ways, free) = (Vec::new(), Vec::new());
        let mut earliest = f64::INFINITY;
        for (way, end) in next {
            if end < earliest - 1e-9 {
                earliest = end;
                ways.push(way);
                free.push(end);
            }
        }
    }
    ways.into_iter().next().ok_or(0)
}

fn finished(sections: &[TimedSection], options: &[Vec<Candidate>], way: &Way, short: f64) -> Option<FinishTogether> {
    let first = way.starts.first().copied()?;
    let chosen = sections.iter().zip(options).zip(way.strengths.iter().zip(&way.starts));
    let choices: Option<Vec<TimedChoice>> = chosen
        .map(|((_, options), (strength, start))| {
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
    Some(FinishTogether { sections: choices?, rinse: Quantity::nearest(-first), short: Quantity::nearest(short) })
}
