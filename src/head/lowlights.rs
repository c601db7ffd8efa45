use crate::{
    colour::{Level, Swatch},
    quantity::{Quantity, Share},
    source::Interval,
};
use schemars::JsonSchema;
use serde::Serialize;

/// Darker strands for depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Lowlights {
    /// Their level.
    pub level: Level,
    /// The share of the section's hair that is made darker.
    #[serde(rename = "share_percent")]
    pub share: Share,
    /// Foils of them, where the hair of a foil is known.
    pub foils: Interval<u32>,
    /// Light foils between two of them, so that they lie evenly.
    pub light_foils_between: u32,
}

/// Lowlights that cannot do what is wanted.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum LowlightsError {
    /// Darker than what grows in.
    #[error(
        "`lowlight` {lowlight} is darker than `natural` {natural}: new growth would show lighter (give {natural} or lighter)"
    )]
    DarkerThanNatural {
        /// Their level.
        lowlight: Level,
        /// The natural base.
        natural: Level,
    },
    /// The wish is not darker than what is there.
    #[error("`wanted` {wanted} is not darker than `now` {now}: lowlights only darken (give less than {now})")]
    NotDarker {
        /// What is wanted.
        wanted: Level,
        /// What the section reads as.
        now: Level,
    },
    /// Even all the hair would not be dark enough.
    #[error(
        "`wanted` {wanted} is darker than `lowlight` {lowlight}: no share of them reaches it (take strands of {wanted} or darker)"
    )]
    TooLight {
        /// What is wanted.
        wanted: Level,
        /// Their level.
        lowlight: Level,
    },
}

/// How much of a section to take darker so that it reads at `wanted` instead of `now`, and in how many foils of
/// `per_foil` of its hair. Light adds up, so the share follows from the reflectances: `(now - wanted) / (now - lowlight)`.
///
/// # Errors
///
/// [`LowlightsError`] when they would be darker than the natural base, or cannot make the section read so.
///
/// # Example
///
/// ```
/// use foilwork::{colour::Level, head::lowlights, quantity::Share};
///
/// let level = Level::new;
/// let found = lowlights(level(9.0)?, level(8.0)?, level(6.0)?, level(6.0)?, Share::from_percent(5.0)?, 12)?;
/// assert!(found.share.percent() > 30.0 && found.share.percent() < 60.0);
/// assert!(lowlights(level(9.0)?, level(8.0)?, level(5.0)?, level(6.0)?, Share::from_percent(5.0)?, 12).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn lowlights(
    now: Level,
    wanted: Level,
    lowlight: Level,
    natural: Level,
    per_foil: Share,
    light_foils: u32,
) -> Result<Lowlights, LowlightsError> {
    if lowlight < natural {
        return Err(LowlightsError::DarkerThanNatural { lowlight, natural });
    }
    if wanted >= now {
        return Err(LowlightsError::NotDarker { wanted, now });
    }
    if wanted < lowlight {
        return Err(LowlightsError::TooLight { wanted, lowlight });
    }
    let light = |level: Level| {
        let [_, y, _] = Swatch::natural(level).best_sample();
        y
    };
    let share = (light(now) - light(wanted)) / (light(now) - light(lowlight));
    // The hair of a foil is picked by hand: a quarter off either way.
    let foils = |factor: f64| count(share / (per_foil.fraction() * factor));
    let best = foils(1.0);
    Ok(Lowlights {
        level: lowlight,
        share: Share::nearest(share * 100.0),
        foils: Interval::ordered(foils(1.25), best, foils(0.75)),
        light_foils_between: light_foils.checked_div(best).unwrap_or(0).max(1),
    })
}

/// Whole foils, up to a thousand.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to 1 and a thousand before")]
fn count(foils: f64) -> u32 {
    foils.ceil().clamp(1.0, 1000.0) as u32
}
