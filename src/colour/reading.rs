use super::{Lab, Level, SETS, Swatch, White, solve::solve, space::lab_of, table::luminance_root};
use crate::{
    choice::choice,
    source::{Interval, Sourced},
};

choice! {
    /// What a colour of hair was read with.
    Instrument: "instrument" {
        /// A spectrophotometer or colorimeter on the hair.
        Spectrophotometer = "spectrophotometer",
        /// A photograph with a reference card in it, corrected by the card.
        CalibratedPhotograph = "calibrated-photograph" => "calibrated photograph",
        /// A photograph as it is.
        Photograph = "photograph",
    }
}

/// Why a reading says nothing of the level.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ReadingError {
    /// A photograph is no instrument.
    #[error(
        "a photograph cannot be read as L*: photographs of hair read about 33 units too light (put a reference card in it \
         and correct by it, or use a spectrophotometer)"
    )]
    Photograph,
    /// No hair is that light or dark.
    #[error("no natural level has L* {l:.1}: the model runs from {darkest:.1} (level 1) to {lightest:.1} (level 12)")]
    OutsideLevels {
        /// What was read.
        l: f64,
        /// L\* of level 1.
        darkest: f64,
        /// L\* of level 12.
        lightest: f64,
    },
}

/// Standard deviation of L\* when a tress is moved between two readings. Source: `TRESS_COLOUR` in the register.
const REPEAT_READING: f64 = 1.19;
/// That of a photograph corrected by its card: assumed, from a correlation of 0.6 with the instrument.
const PHOTOGRAPH_READING: f64 = 6.0;

/// The level whose natural hair is as light as a reading, with bounds: two standard deviations of a repeated reading, and
/// the spread of the model.
///
/// # Errors
///
/// [`ReadingError::Photograph`] for an uncorrected photograph, [`ReadingError::OutsideLevels`] for L\* that no level has.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Instrument, Lab, White, level_from_reading};
///
/// let tress = Lab::new(22.7, 4.0, 4.8, White::D65TenDegree)?;
/// let level = level_from_reading(tress, Instrument::Spectrophotometer)?.value;
/// assert!(level.low().number() < 3.0 && 3.0 < level.high().number());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// The hair model; spread of repeated readings from [`TRESS_COLOUR`](crate::source::citations::colour::TRESS_COLOUR),
/// photographs from [`PHOTOGRAPHS`](crate::source::citations::colour::PHOTOGRAPHS).
pub fn level_from_reading(reading: Lab, with: Instrument) -> Result<Sourced<Interval<Level>>, ReadingError> {
    let off = match with {
        Instrument::Photograph => return Err(ReadingError::Photograph),
        Instrument::CalibratedPhotograph => 2.0 * PHOTOGRAPH_READING,
        Instrument::Spectrophotometer => 2.0 * REPEAT_READING,
    };
    let l = reading.adapted_to(White::D65TenDegree).l();
    let end = |level| lightness(luminance_root(0)(level));
    let (darkest, lightest) = (end(Level::DARKEST), end(Level::LIGHTEST));
    if l < darkest - off || l > lightest + off {
        return Err(ReadingError::OutsideLevels { l, darkest, lightest });
    }
    let best = level_of(l, 0);
    let all = (0..SETS).flat_map(|set| [level_of(l - off, set), level_of(l, set), level_of(l + off, set)]);
    Ok(Sourced::derived(all.fold(Interval::exact(best), |all, one| all.widened_to(Interval::exact(one)))))
}

/// The levels of natural hair as light as a swatch, under every set of assumptions.
pub(crate) fn levels_of(swatch: &Swatch) -> Interval<Level> {
    let each = || swatch.samples.iter().enumerate().map(|(set, sample)| level_of(lab_of(*sample).l(), set));
    let best = each().next().map_or(Interval::exact(Level::DARKEST), Interval::exact);
    each().fold(best, |all, one| all.widened_to(Interval::exact(one)))
}

/// The level of natural hair of this luminance, by the best estimate alone: a sixteenth of the work of all sets.
pub(crate) fn level_of_luminance(y: f64) -> Level {
    level_of(lab_of([0.0, y, 0.0]).l(), 0)
}

/// The luminance of natural hair of a level, by the best estimate alone.
pub(crate) fn natural_luminance(level: Level) -> f64 {
    luminance_root(0)(level).powi(3)
}

/// The level of natural hair of this lightness under a set of assumptions.
fn level_of(l: f64, set: usize) -> Level {
    let (low, high, root) = (Level::DARKEST, Level::LIGHTEST, luminance_root(set));
    if l <= lightness(root(low)) {
        return low;
    }
    if l >= lightness(root(high)) {
        return high;
    }
    // Above L* 8 lightness is linear in the root, and no hair is as dark as that.
    let (wanted, step) = ((l + 16.0) / 116.0, 1e-4);
    let number = solve(6.0, low.number(), high.number(), |number| {
        let here = root(Level::clamped(number));
        (wanted - here, (here - root(Level::clamped(number + step))) / step)
    });
    Level::clamped(number)
}

/// L\* of a cube root of luminance.
fn lightness(root: f64) -> f64 {
    lab_of([0.0, root * root * root, 0.0]).l()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::solve::looks;

    // Between two levels lightness is nearly linear in the level: few of Newton's steps, measured over all sets.
    #[test]
    fn a_level_is_found_in_few_looks() {
        let readings = (0..SETS).flat_map(|set| (9..80_u8).map(move |l| (f64::from(l), set)));
        let most = readings.map(|(l, set)| looks::of(|| level_of(l, set))).max();
        assert_eq!(most, Some(8));
    }
}
