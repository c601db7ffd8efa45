//! What lightening does to the fibre: a scale of its own, never read off the level.

use super::{Situation, Uptake};
use crate::{
    choice::choice,
    quantity::Duration,
    source::{Citation, Interval, citations::lift as cited},
};

choice! {
    /// How far the fibre is taken, worst last. None of them says that the hair stands it.
    Strain: "strain" {
        /// Less than a usual single application.
        Slight = "slight",
        /// About a usual single application.
        Usual = "usual" => "that of a usual single application",
        /// More than a usual application: treat, and test elasticity before anything more.
        High = "high",
        /// Towards what bleached hair of the literature looks like after hours: breaking has to be expected.
        Severe = "severe",
    }
}

/// The strain of a series of applications, with what it rests on.
#[derive(Debug, Clone, PartialEq)]
pub struct Condition {
    /// Relative oxidation of the fibre: 1 for 40 min at 4 % on the hair at 25 C.
    pub index: Interval<f64>,
    /// The index in words, at its upper bound: the fibre is not read better than it may be.
    pub strain: Strain,
    /// What the shape rests on.
    pub citations: [&'static Citation; 3],
}

/// Minutes of the usual application that the index counts in.
const USUAL_MIN: f64 = 40.0;

/// How far applications one after another take the fibre.
///
/// Cysteic acid, the mark of an oxidised fibre, grows with the square root of time; so the index is the square root of the
/// summed minutes, each weighed by strength. It is a comparison between plans, not a forecast of a test: alkali and hair
/// differ too much. At one level a strong mixture does more damage than a weak one used longer, so the weight of the
/// strength is at least proportional. Hair that is open already counts as having had one usual application.
///
/// # Example
///
/// ```
/// use foilwork::{lift::{Situation, Strain, condition}};
/// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
///
/// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
/// let once = condition(&[(mix, Duration::from_min(40.0)?)]);
/// let thrice = condition(&[(mix, Duration::from_min(40.0)?); 3]);
/// assert!(once.strain < thrice.strain);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Citations `cysteic-acid-square-root`, `damage-at-one-level`, `tensile-after-bleaching`; weights assumed.
#[must_use]
pub fn condition(applications: &[(Situation, Duration)]) -> Condition {
    let minutes = |order: f64, porous: f64| {
        let summed: f64 = applications
            .iter()
            .map(|(mix, time)| {
                let strength = mix.on_hair.best().ww_percent() / super::factors::REFERENCE_WW_PERCENT;
                time.min() * strength.powf(order)
            })
            .sum();
        let open = applications.first().is_some_and(|(mix, _)| mix.uptake == Uptake::High);
        summed + if open { porous * USUAL_MIN } else { 0.0 }
    };
    let index = |order, porous| (minutes(order, porous) / USUAL_MIN).sqrt();
    let index = Interval::ordered(index(1.0, 0.5), index(1.3, 1.0), index(2.0, 2.0));
    let strain = match index.high() {
        low if low < 0.8 => Strain::Slight,
        usual if usual <= 1.2 => Strain::Usual,
        high if high <= 2.0 => Strain::High,
        _ => Strain::Severe,
    };
    Condition { index, strain, citations: [&cited::CYSTEIC_ACID, &cited::DAMAGE_AT_ONE_LEVEL, &cited::TENSILE] }
}
