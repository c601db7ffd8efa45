//! Asked the other way round: which strength.

use super::{Belief, Lightening, Situation};
use crate::{
    colour::Level,
    quantity::{Duration, MassFraction, Share},
    source::Interval,
};

/// How sure a strength is to reach the target within its time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrengthChance {
    /// The strength on the hair.
    pub on_hair: Interval<MassFraction>,
    /// The chance that the target is reached within the limit, with what it is from either bound of the start.
    pub chance: Interval<Share>,
    /// Level at the limit: median and 80 % interval.
    pub level: Interval<Level>,
}

/// The chance that each strength reaches the target within the limit, weakest first.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, lift::{Belief, Situation, chances}};
/// use foilwork::{quantity::{Duration, MassFraction}, source::Interval};
///
/// let on_hair = [2.0, 4.0, 6.0].map(MassFraction::from_ww_percent);
/// let on_hair = on_hair.into_iter().collect::<Result<Vec<_>, _>>()?.into_iter().map(Interval::exact).collect::<Vec<_>>();
/// let mix = Situation::usual(on_hair[0]);
/// let (start, target) = (Level::new(5.0)?, Level::new(8.0)?);
/// let rows = chances(&Belief::untested(), &mix, &on_hair, (start.into(), target), Duration::from_min(45.0)?);
/// assert!(rows[0].chance.best() < rows[2].chance.best());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn chances(
    belief: &Belief,
    situation: &Situation,
    on_hair: &[Interval<MassFraction>],
    (start, target): (Interval<Level>, Level),
    limit: Duration,
) -> Vec<StrengthChance> {
    let mut rows: Vec<StrengthChance> = on_hair
        .iter()
        .map(|on_hair| {
            let lightening = Lightening::new(belief, &Situation { on_hair: *on_hair, ..*situation }, start);
            let chance = lightening.chance_between(target, limit);
            StrengthChance { on_hair: *on_hair, chance, level: lightening.level_after(limit) }
        })
        .collect();
    rows.sort_by(|a, b| a.on_hair.best().ww_percent().total_cmp(&b.on_hair.best().ww_percent()));
    rows
}

/// The gentlest strength that reaches the target within the limit with at least this chance from the best estimate of the
/// start; none when even the strongest does not.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, lift::{StrengthChance, gentlest}};
/// use foilwork::{quantity::{MassFraction, Share}, source::Interval};
///
/// let level = Interval::exact(Level::new(8.0)?);
/// let row = |ww: f64, percent: f64| -> Result<_, Box<dyn std::error::Error>> {
///     let on_hair = Interval::exact(MassFraction::from_ww_percent(ww)?);
///     Ok(StrengthChance { on_hair, chance: Share::from_percent(percent)?.into(), level })
/// };
/// let rows = [row(2.0, 30.0)?, row(4.0, 82.0)?, row(6.0, 95.0)?];
/// let wanted = Share::from_percent(80.0)?;
/// assert_eq!(gentlest(&rows, wanted).map(|row| row.on_hair.best().ww_percent()), Some(4.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn gentlest(rows: &[StrengthChance], wanted: Share) -> Option<&StrengthChance> {
    rows.iter().find(|row| row.chance.best() >= wanted)
}
