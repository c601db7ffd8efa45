//! One visit or a staged series: how many, how far apart, and what each brings.

use super::{Condition, Lightening, Strain, condition};
use crate::{
    colour::Level,
    hair::{Weeks, grown, growth},
    quantity::{Duration, Length, Quantity, Share},
    source::{Basis, COMMON_PRACTICE, Interval, Sourced},
};
use schemars::JsonSchema;
use serde::Serialize;

/// The chance that counts as reaching a target: 80 of 100 cases, as the bounds of every forecast.
///
/// # Example
///
/// ```
/// assert_eq!(foilwork::lift::OFTEN.percent(), 80.0);
/// ```
pub const OFTEN: Share = match Share::from_percent(80.0) {
    Ok(share) => share,
    Err(_) => Share::ALL,
};

/// The most visits that the plan and the command line look ahead: what takes more is planned anew from what is seen by then.
pub const MOST_VISITS: u8 = 4;

/// What one of several equal applications brings, one visit after another.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Visit {
    /// Weeks since the visit before; absent for the first.
    #[serde(rename = "after_weeks")]
    pub after: Option<Interval<Weeks>>,
    /// What those weeks rest on: common practice after a usual application, assumed beyond it.
    #[serde(rename = "after_basis")]
    pub after_basis: Option<Basis>,
    /// What has grown since the first visit, which this one does not lighten.
    #[serde(rename = "regrowth_cm")]
    pub regrowth: Option<Interval<Length>>,
    /// Level after it: median and 80 % interval.
    pub level: Interval<Level>,
    /// The chance that the target is reached with it, with what it is from either bound of the start.
    #[serde(rename = "chance_percent")]
    pub chance: Interval<Share>,
    /// What all visits so far do to the fibre, in words.
    pub strain: Strain,
    /// The same as an index: 1 for 40 min at 4 % on the hair.
    pub strain_index: Interval<f64>,
    /// What level, chance and strain rest on: the levers of the law and the weights of the strain are assumed, whatever strands
    /// were read.
    pub basis: Basis,
}

/// Weeks to leave between two visits, by what the hair has been through: the trade's two to six, and longer the more.
///
/// Waiting does not undo oxidation: the strain of all visits adds up. It gives the scalp time, shows whether hair breaks, and
/// leaves room for care. Test elasticity before each visit; what it shows counts before the weeks.
///
/// # Example
///
/// ```
/// use foilwork::lift::{Strain, weeks_between};
///
/// let usual = weeks_between(Strain::Usual).value;
/// assert_eq!(usual.to_array().map(|weeks| weeks.weeks()), [2.0, 4.0, 6.0]);
/// assert!(weeks_between(Strain::Severe).value.low() > usual.low());
/// ```
///
/// # Source
///
/// No study of the interval was found: common practice for hair after a usual application, assumed beyond it.
#[must_use]
pub fn weeks_between(strain: Strain) -> Sourced<Interval<Weeks>> {
    let (basis, [low, best, high]) = match strain {
        Strain::Slight | Strain::Usual => (Basis::CommonPractice, [2.0, 4.0, 6.0]),
        Strain::High => (Basis::Assumed, [4.0, 6.0, 8.0]),
        Strain::Severe => (Basis::Assumed, [6.0, 8.0, 12.0]),
    };
    let value = Interval::ordered(low, best, high).map(Weeks::nearest);
    let citation = (basis == Basis::CommonPractice).then_some(&COMMON_PRACTICE);
    Sourced { value, basis, citation }
}

/// A series of visits with the mixture of the start and the same time each, until the target is reached with the wanted
/// chance, at most `most`. What the hair went through before the first counts for the strain and the weeks.
///
/// The gain shrinks from visit to visit, because each meets less pigment; the strain on the fibre adds up.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, lift::{Belief, Lightening, OFTEN, Situation, series}};
/// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
///
/// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(3.0)?));
/// let start = Lightening::new(&Belief::untested(), &mix, Level::new(3.0)?);
/// let (target, each) = (Level::new(9.0)?, Duration::from_min(40.0)?);
/// let visits = series(&start, target, each, OFTEN, 3);
/// assert!(visits.len() > 1);
/// assert!(visits[1].level.best() > visits[0].level.best() && visits[1].strain_index.best() > visits[0].strain_index.best());
/// assert!(visits[0].after_basis.is_none() && visits[1].after_basis.is_some());
/// assert!(visits[0].after.is_none() && visits[1].after.is_some_and(|weeks| weeks.low().weeks() >= 2.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn series(start: &Lightening, target: Level, each: Duration, wanted: Share, most: u8) -> Vec<Visit> {
    let rate = growth(None).value;
    let situation = start.situation;
    // The strain sums minutes, so one lump stands for all applications before; no minutes add none.
    let mut applications = vec![(situation, Duration::nearest(start.minutes_before))];
    let mut visits = Vec::new();
    let (mut lightening, mut since): (_, Option<Interval<Weeks>>) = (*start, None);
    let (mut after, mut after_basis) = (None, None);
    for _ in 0..most {
        applications.push((situation, each));
        let Condition { index, strain, .. } = condition(&applications);
        let visit = Visit {
            after,
            regrowth: since.map(|weeks| grown(weeks, rate)),
            level: lightening.level_after(each),
            chance: lightening.chance_between(target, each),
            strain,
            strain_index: index,
            after_basis,
            basis: Basis::Assumed,
        };
        visits.push(visit);
        if visit.chance.best() >= wanted {
            break;
        }
        lightening = lightening.after(each);
        let Sourced { value: wait, basis, .. } = weeks_between(strain);
        (after, after_basis) = (Some(wait), Some(basis));
        since = Some(since.map_or(wait, |since| since.combine(wait, |a, b| Weeks::nearest(a.weeks() + b.weeks()))));
    }
    visits
}
