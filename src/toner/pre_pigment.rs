use super::TonerPart;
use crate::{
    colour::{Difference, Level, PrePigmentation, Shade, Swatch, pre_pigmentation},
    quantity::{Mass, Share},
};
use schemars::JsonSchema;
use serde::Serialize;

/// The shade of the user's own chart to put warmth back with, weighed.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PrePigmentMix {
    /// The level and tone that the rule asks for.
    pub wanted: PrePigmentation,
    /// The shade whose colour on white hair is nearest to that, with the whole bowl.
    pub part: TonerPart,
    /// From the shade to what the rule asks for.
    pub residual: Difference,
}

/// The shade and grams for pre-pigmentation before lightened hair is taken darker; none for a small step, or when there is
/// no shade.
///
/// # Example
///
/// ```
/// use foilwork::{
///     colour::{Hue, Level, Shade, Tone},
///     quantity::Mass,
///     toner::pre_pigment,
/// };
///
/// let level = Level::new(7.0)?;
/// let gold = Shade::new("J7-amber", level, Tone::of(Hue::YellowOrange))?;
/// let ash = Shade::new("J7-moss", level, Tone::of(Hue::Green))?;
/// let mix = pre_pigment(Level::new(9.0)?, Level::new(6.0)?, [&ash, &gold], Mass::from_g(40.0)?).ok_or("no step")?;
/// assert_eq!((mix.part.code.as_str(), mix.part.mass), ("J7-amber", Mass::from_g(40.0)?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Common practice for what is put back; the nearest shade by CIEDE2000 in the hair model.
#[must_use]
pub fn pre_pigment<'a>(
    lightened: Level,
    target: Level,
    shades: impl IntoIterator<Item = &'a Shade>,
    bowl: Mass,
) -> Option<PrePigmentMix> {
    let wanted = pre_pigmentation(lightened, target)?;
    let look = Swatch::of_look(wanted.level, &wanted.tone);
    let off = |shade: &'a Shade| (shade, Swatch::of_shade(shade).difference_to(&look));
    let nearest = shades.into_iter().map(off).min_by(|a, b| a.1.ciede2000.total_cmp(&b.1.ciede2000));
    let (shade, residual) = nearest?;
    let part = TonerPart { code: shade.code().to_owned(), mass: bowl, share: Share::ALL };
    Some(PrePigmentMix { wanted, part, residual })
}
