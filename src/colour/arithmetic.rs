//! Level arithmetic of permanent colour: rules of thumb of the trade, kept apart from what they do not hold for.

use super::{Canvas, Level, LevelChange, ProductKind, Scale};
use crate::{
    quantity::{Mass, Share},
    source::{
        Sourced,
        citations::colour::{FORMULA_LEVEL, RESULT_LEVEL},
    },
};

/// Why a level cannot be worked out.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ArithmeticError {
    /// The mean rule is one of permanent colour.
    #[error(
        "no formula level for {product}: the result is the mean of natural and applied level only for permanent \
             colour on natural hair ({why})"
    )]
    Product {
        /// The product asked about.
        product: ProductKind,
        /// What that product does instead.
        why: &'static str,
    },
    /// Colour does not lighten colour.
    #[error(
        "cannot lift coloured hair from {from} to {target} with permanent colour: artificial pigment does not \
             lighten under colour (remove it or lighten it first, on a strand test)"
    )]
    ColouredHair {
        /// What the hair shows.
        from: Level,
        /// What is wanted.
        target: Level,
    },
    /// The shade would have to be off the scale.
    #[error(
        "{target} is out of reach of permanent colour on natural {natural}: the shade would have to be level \
             {needed}, outside {lowest} to {highest} of the {scale} scale (choose a target from level {nearest_low} to \
             {nearest_high}, or another product)"
    )]
    OutsideScale {
        /// The natural level.
        natural: Level,
        /// What is wanted.
        target: Level,
        /// The level the shade would need.
        needed: f64,
        /// The first level of the scale.
        lowest: f64,
        /// The last level of the scale.
        highest: f64,
        /// The scale the shades are numbered on.
        scale: Scale,
        /// The darkest target that stays inside.
        nearest_low: f64,
        /// The lightest target that stays inside.
        nearest_high: f64,
    },
    /// The number is not from the scale that levels are counted on.
    #[error("the {0} scale does not number shades by level: state a mapping first")]
    OtherScale(Scale),
    /// Nothing to average.
    #[error("no mass to blend: give at least one shade with a mass above 0 g")]
    NothingToBlend,
}

/// How far a zone has to go: positive is lift, negative deposit.
///
/// ```
/// use foilwork::colour::{Level, lift_needed};
///
/// assert_eq!(lift_needed(Level::new(5.0)?, Level::new(9.0)?).to_string(), "4 levels lighter");
/// assert_eq!(lift_needed(Level::new(7.0)?, Level::new(6.0)?).to_string(), "1 level darker");
/// # Ok::<(), foilwork::colour::InvalidLevel>(())
/// ```
#[must_use]
pub fn lift_needed(from: Level, target: Level) -> LevelChange {
    target - from
}

/// The level a permanent shade must have to bring natural hair to the target: `2 x target - natural`.
///
/// The 2 is a constant; it is not the lift, although a printed example multiplies by the lift and happens to agree
/// because its lift is 2.
///
/// # Errors
///
/// [`ArithmeticError::Product`] for anything but permanent colour, [`ArithmeticError::ColouredHair`] when coloured hair
/// would have to become lighter, [`ArithmeticError::OutsideScale`] when no such shade exists on the scale.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Canvas, Level, ProductKind, Scale, formula_level};
///
/// let (natural, target) = (Level::new(6.0)?, Level::new(8.0)?);
/// let shade = formula_level(natural, target, ProductKind::PermanentColour, Canvas::Natural, Scale::European10)?;
/// assert_eq!(shade.value.number(), 10.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [`FORMULA_LEVEL`] (worked example), [`RESULT_LEVEL`] (the rule). A rule of thumb: a strand test decides.
pub fn formula_level(
    natural: Level,
    target: Level,
    product: ProductKind,
    canvas: Canvas,
    scale: Scale,
) -> Result<Sourced<Level>, ArithmeticError> {
    mean_rule_holds(product)?;
    if canvas == Canvas::Coloured && lift_needed(natural, target).is_lift() {
        return Err(ArithmeticError::ColouredHair { from: natural, target });
    }
    if !scale.counts_levels() {
        return Err(ArithmeticError::OtherScale(scale));
    }
    let (lowest, highest) = (scale.lowest(), scale.highest());
    // Levels are written in decimals: the last bits of a sum in binary must not put level 10 outside the scale.
    let needed = ((2.0 * target.number() - natural.number()) * 1e9).round() / 1e9;
    if needed >= lowest && needed <= highest {
        Ok(Sourced::published(Level::clamped(needed), &FORMULA_LEVEL))
    } else {
        let middle = |end: f64| f64::midpoint(natural.number(), end);
        Err(ArithmeticError::OutsideScale {
            natural,
            target,
            needed,
            lowest,
            highest,
            scale,
            nearest_low: middle(lowest),
            nearest_high: middle(highest),
        })
    }
}

/// The level of the shade that brings hair to a target, lifting or not.
///
/// [`formula_level`] is a rule for lifting natural hair with permanent colour, and its printed example lifts. Going darker
/// is deposit: the shade has the level of the target, and hair that was lightened needs
/// [warm pigment first](super::pre_pigmentation). The level of the hair itself needs no arithmetic either.
///
/// # Errors
///
/// Those of [`formula_level`] when the target is lighter than the hair.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Canvas, Level, ProductKind, Scale, shade_level};
///
/// let of = |natural, target| {
///     let (natural, target) = (Level::new(natural)?, Level::new(target)?);
///     Ok::<_, Box<dyn std::error::Error>>(
///         shade_level(natural, target, ProductKind::PermanentColour, Canvas::Natural, Scale::European10)?.value.number(),
///     )
/// };
/// assert_eq!((of(9.0, 5.0)?, of(6.0, 8.0)?), (5.0, 10.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [`FORMULA_LEVEL`] for lifting; common practice for deposit.
pub fn shade_level(
    natural: Level,
    target: Level,
    product: ProductKind,
    canvas: Canvas,
    scale: Scale,
) -> Result<Sourced<Level>, ArithmeticError> {
    if lift_needed(natural, target).is_lift() {
        return formula_level(natural, target, product, canvas, scale);
    }
    if !scale.counts_levels() {
        return Err(ArithmeticError::OtherScale(scale));
    }
    match product {
        ProductKind::Lightener => mean_rule_holds(product).map(|()| Sourced::common_practice(target)),
        _ => Ok(Sourced::common_practice(target)),
    }
}

/// The level that natural hair reaches under a permanent shade: the mean of the two, the inverse of [`formula_level`].
///
/// A rule of lifting: a shade darker than the hair deposits its own level, see [`shade_level`].
///
/// # Errors
///
/// [`ArithmeticError::Product`] for anything but permanent colour.
///
/// # Example
///
/// ```
/// use foilwork::colour::{Level, ProductKind, result_level};
///
/// let result = result_level(Level::new(5.0)?, Level::new(9.0)?, ProductKind::PermanentColour)?;
/// assert_eq!(result.value, Level::new(7.0)?); // the mean
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [`RESULT_LEVEL`].
pub fn result_level(natural: Level, applied: Level, product: ProductKind) -> Result<Sourced<Level>, ArithmeticError> {
    mean_rule_holds(product)?;
    Ok(Sourced::published(Level::clamped(f64::midpoint(natural.number(), applied.number())), &RESULT_LEVEL))
}

/// White and pigmented hair after one permanent shade: two levels side by side, not one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WhiteBlend {
    /// Share of white hair.
    pub white: Share,
    /// Level of the hair that was white: the shade's own.
    pub white_part: Level,
    /// Level of the pigmented hair: the mean.
    pub pigmented_part: Level,
}

/// What one permanent shade does to hair that is partly white.
///
/// ```
/// use foilwork::{colour::{Level, ProductKind, white_blend}, quantity::Share};
///
/// let half = Share::from_percent(50.0)?;
/// let after = white_blend(Level::new(3.0)?, Level::new(7.0)?, half, ProductKind::PermanentColour)?;
/// assert_eq!((after.value.white_part.number(), after.value.pigmented_part.number()), (7.0, 5.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
///
/// [`ArithmeticError::Product`] for anything but permanent colour.
///
/// # Source
///
/// [`RESULT_LEVEL`].
pub fn white_blend(
    natural: Level,
    applied: Level,
    white: Share,
    product: ProductKind,
) -> Result<Sourced<WhiteBlend>, ArithmeticError> {
    let pigmented_part = result_level(natural, applied, product)?.value;
    Ok(Sourced::published(WhiteBlend { white, white_part: applied, pigmented_part }, &RESULT_LEVEL))
}

/// The level of shades mixed in one bowl: the mean of their levels, weighted by mass.
///
/// # Errors
///
/// [`ArithmeticError::NothingToBlend`] when the masses add up to zero.
///
/// # Example
///
/// ```
/// use foilwork::{colour::{Level, blended_level}, quantity::Mass};
///
/// let parts = [(Level::new(7.0)?, Mass::from_g(30.0)?), (Level::new(9.0)?, Mass::from_g(10.0)?)];
/// assert_eq!(blended_level(parts)?.value, Level::new(7.5)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Common practice.
pub fn blended_level(parts: impl IntoIterator<Item = (Level, Mass)>) -> Result<Sourced<Level>, ArithmeticError> {
    let (mut weighted, mut total) = (0.0, 0.0);
    for (level, mass) in parts {
        weighted += level.number() * mass.g();
        total += mass.g();
    }
    if total > 0.0 {
        Ok(Sourced::common_practice(Level::clamped(weighted / total)))
    } else {
        Err(ArithmeticError::NothingToBlend)
    }
}

fn mean_rule_holds(product: ProductKind) -> Result<(), ArithmeticError> {
    let why = match product {
        ProductKind::PermanentColour => return Ok(()),
        ProductKind::HighLiftTint => "a high-lift tint lifts further than the mean",
        ProductKind::QuasiPermanentColour | ProductKind::SemiPermanentColour => "it deposits and does not lift",
        ProductKind::Lightener => "it lifts with time and deposits nothing",
    };
    Err(ArithmeticError::Product { product, why })
}
