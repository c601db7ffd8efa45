use super::{Belief, Lightening, Reader, Situation, StrandReading};
use crate::{
    colour::Level,
    quantity::{Duration, Quantity},
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
pub fn advice(belief: &Belief, situation: &Situation, start: Level, planned: Duration) -> Advice {
    let width = |belief: &Belief| {
        let level = Lightening::new(belief, situation, start).level_after(planned);
        level.high().number() - level.low().number()
    };
    let expected = |at: f64| {
        let time = Duration::nearest(at);
        let after = Lightening::new(belief, situation, start).level_after(time).best();
        let reader = Reader::Eye;
        let reading =
            StrandReading { situation: *situation, time, before: start, after, reader, guest: None, product: None };
        width(&belief.after_readings(&[reading]))
    };
    let tries = (1..=12u8).map(|i| f64::from(i) * 5.0).filter(|at| *at <= planned.min().max(5.0));
    let (read_at, width_then) =
        tries.map(|at| (at, expected(at))).min_by(|a, b| a.1.total_cmp(&b.1)).unwrap_or((planned.min(), width(belief)));
    Advice { known: known(belief), read_at: Duration::nearest(read_at), width_now: width(belief), width_then }
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
