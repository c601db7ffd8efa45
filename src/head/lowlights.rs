use crate::{
    colour::{Level, Swatch},
    quantity::{Quantity, Share},
    source::Interval,
    text::{number, span},
};
use schemars::JsonSchema;
use serde::Serialize;

/// Darker strands for depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Lowlights {
    /// Their level.
    pub level: Level,
    /// The share of the section's hair that is made darker, by what the section may read as without them.
    #[serde(rename = "share_percent")]
    pub share: Interval<Share>,
    /// Foils of them; absent where the hair of a foil is not known.
    pub foils: Option<Interval<u32>>,
    /// Light foils between two of them, so that they lie evenly; absent where there are none that are counted.
    pub light_foils_between: Option<u32>,
}

impl Lowlights {
    /// Whether they take all the hair there, to the percent that is shown: what is wanted is as dark as they are.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, head::lowlights};
    ///
    /// let level = Level::new;
    /// assert!(lowlights(level(9.0)?.into(), level(7.0)?, level(7.0)?, level(6.0)?, None)?.leaves_no_light());
    /// assert!(!lowlights(level(9.0)?.into(), level(8.0)?, level(7.0)?, level(6.0)?, None)?.leaves_no_light());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn leaves_no_light(&self) -> bool {
        self.share.best().percent() >= 99.5
    }
}

/// Lowlights that cannot do what is wanted.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
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
    #[error(
        "`wanted` {wanted} is not darker than `now`, level {}: lowlights only darken (give less than {})",
        span(.now, |now| number(now.number(), 1)), number((.now.best().number() * 10.0).floor() / 10.0, 1)
    )]
    NotDarker {
        /// What is wanted.
        wanted: Level,
        /// What the section reads as.
        now: Interval<Level>,
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

impl LowlightsError {
    /// The text with the caller's own names of what is wanted and of the level of the strands.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{colour::Level, head::lowlights};
    ///
    /// let level = Level::new;
    /// let error = lowlights(level(9.0)?.into(), level(8.0)?, level(5.0)?, level(6.0)?, None).unwrap_err();
    /// assert!(error.told_with(["--reads-as", "--level"]).starts_with("--level level 5 is darker than `natural` level 6"));
    /// # Ok::<(), foilwork::colour::InvalidLevel>(())
    /// ```
    #[must_use]
    pub fn told_with(&self, [wanted, lowlight]: [&str; 2]) -> String {
        self.to_string().replace("`wanted`", wanted).replace("`lowlight`", lowlight)
    }
}

/// How much of a section to take darker so that it reads at `wanted` instead of `now`, and in how many foils, where its
/// `light` foils are known: the share of its hair in one of them, and how many they are. Light adds up, so the share follows from the reflectances: `(now - wanted) / (now - lowlight)`.
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
/// let found = lowlights(level(9.0)?.into(), level(8.0)?, level(6.0)?, level(6.0)?, Some((Share::from_percent(5.0)?, 12)))?;
/// assert!(found.share.best().percent() > 30.0 && found.share.best().percent() < 60.0);
/// assert!(lowlights(level(9.0)?.into(), level(8.0)?, level(5.0)?, level(6.0)?, None).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn lowlights(
    now: Interval<Level>,
    wanted: Level,
    lowlight: Level,
    natural: Level,
    light: Option<(Share, u32)>,
) -> Result<Lowlights, LowlightsError> {
    if lowlight < natural {
        return Err(LowlightsError::DarkerThanNatural { lowlight, natural });
    }
    if wanted >= now.best() {
        return Err(LowlightsError::NotDarker { wanted, now });
    }
    if wanted < lowlight {
        return Err(LowlightsError::TooLight { wanted, lowlight });
    }
    let bright = |level: Level| {
        let [_, y, _] = Swatch::natural(level).best_sample();
        y
    };
    // Where it may read darker than is wanted, it may be that none is needed.
    let of = |now: Level| {
        if now > wanted { (bright(now) - bright(wanted)) / (bright(now) - bright(lowlight)) } else { 0.0 }
    };
    let share = now.map(of);
    // The hair of a foil is picked by hand: a quarter off either way.
    let in_foils = |(per_foil, _): (Share, u32)| {
        let foils = |share: f64, factor: f64| count(share / (per_foil.fraction() * factor));
        Interval::ordered(foils(share.low(), 1.25), foils(share.best(), 1.0), foils(share.high(), 0.75))
    };
    let foils = light.filter(|(per_foil, _)| *per_foil > Share::NONE).map(in_foils);
    let counted = light.map(|(_, light)| light).filter(|light| *light > 0);
    let between = foils.zip(counted).map(|(foils, light)| (light / foils.best().max(1)).max(1));
    Ok(Lowlights {
        level: lowlight,
        share: share.map(|share| Share::nearest(share * 100.0)),
        foils,
        light_foils_between: between,
    })
}

/// Whole foils, up to a thousand; none for none of the hair.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to 0 and a thousand before")]
fn count(foils: f64) -> u32 {
    foils.ceil().clamp(0.0, 1000.0) as u32
}
