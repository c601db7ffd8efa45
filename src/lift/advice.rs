use super::{
    Belief, Lightening, Reader, Situation,
    factors::{LEVERS, Shift, Spreads},
};
use crate::{
    colour::Level,
    quantity::{Duration, Quantity},
    source::Interval,
};

/// What strand tests have pinned down, and which test to do next.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// What is known and what is not, in words.
    pub known: String,
    /// The minutes after which the next reading narrows the forecast most.
    pub read_at: Duration,
    /// Width of the 80 % interval of the level at the planned time now, in levels.
    pub width_now: f64,
    /// The same after that reading, if it comes out as expected.
    pub width_then: f64,
}

/// Share of its first variance below which a number counts as known.
const KNOWN: f64 = 0.4;

/// What the readings so far have and have not pinned down, and when to read the next strand.
///
/// One timed reading cannot tell pigment that runs out from oxidant that runs out: both slow the lift. A second reading at
/// another time can. The times tried are every five minutes to `planned`, and the one with the narrowest forecast at
/// `planned` wins.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, lift::{Belief, Situation, advice}};
/// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
///
/// let mix = Situation::usual(Interval::exact(MassFraction::from_ww_percent(4.0)?));
/// let advice = advice(&Belief::untested(), &mix, Level::new(4.0)?, Duration::from_min(40.0)?);
/// assert!(advice.width_then < advice.width_now);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn advice(belief: &Belief, situation: &Situation, start: impl Into<Interval<Level>>, planned: Duration) -> Advice {
    let (shift, start) = (situation.shift(), start.into());
    let ready = |belief: &Belief| Lightening::shifted(belief, situation, &shift, start);
    let width = |belief: &Belief| {
        let level = ready(belief).level_after(planned);
        level.high().number() - level.low().number()
    };
    let now = ready(belief);
    let expected = |at: f64| width(&after_expected(belief, &now, &shift, Duration::nearest(at)));
    let tries = (1..=12u8).map(|i| f64::from(i) * 5.0).filter(|at| *at <= planned.min().max(5.0));
    let (read_at, width_then) =
        tries.map(|at| (at, expected(at))).min_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or((planned.min(), width(belief)));
    Advice { known: known(belief), read_at: Duration::nearest(read_at), width_now: width(belief), width_then }
}

/// The belief after a reading by eye that comes out as expected.
///
/// It moves nothing and narrows what is believed: the covariance `C` becomes `C - C h h'C / (s^2 + h'C h)`, with `h` how the
/// level answers to each number and `s` the error of the reading. That is where the fit of such a reading ends, in one step.
fn after_expected(belief: &Belief, now: &Lightening, Shift { spreads, .. }: &Shift, time: Duration) -> Belief {
    let sd = Reader::Eye.sd_levels() * std::f64::consts::SQRT_2;
    let answers = now.answers(time);
    let dot = |one: &[f64; 3], other: &[f64; 3]| one.iter().zip(other).map(|(a, b)| a * b).sum::<f64>();
    let told = belief.covariance.each_ref().map(|row| dot(row, &answers));
    let scale = 1.0 / (sd * sd + dot(&told, &answers));
    let mut covariance = belief.covariance;
    for (row, told_here) in covariance.iter_mut().zip(&told) {
        for (cell, told_there) in row.iter_mut().zip(&told) {
            *cell -= told_here * told_there * scale;
        }
    }
    let readings = belief.readings + 1;
    let mean_of = |(old, new): (f64, f64)| old + (new - old) / readings as f64;
    let mut each = belief.tested.into_iter().zip(*spreads).map(mean_of);
    let tested: Spreads = [(); LEVERS].map(|()| each.next().unwrap_or_default());
    Belief { covariance, readings, tested, ..*belief }
}

fn known(belief: &Belief) -> String {
    let prior = Belief::untested();
    let [[k, ..], [_, kd, _], [.., ceiling]] = belief.covariance;
    let [[k0, ..], [_, kd0, _], [.., ceiling0]] = prior.covariance;
    let is = |now: f64, first: f64| now < KNOWN * first;
    let (rate, loss, top) = (is(k, k0), is(kd, kd0), is(ceiling, ceiling0));
    match (belief.readings, rate, loss || top) {
        (0, ..) => "no strand of this hair is read: rate, life of the mixture and end point are all assumed".to_owned(),
        (_, true, true) => "the rate and where it ends are pinned down by the readings".to_owned(),
        (_, true, false) => {
            "the rate is pinned down; whether the pigment or the oxidant runs out first is not (read a \
                             second strand at another time)"
                .to_owned()
        }
        _ => "the readings have hardly pinned down the rate yet (read another strand)".to_owned(),
    }
}
