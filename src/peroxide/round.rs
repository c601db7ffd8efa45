use super::{from_shelf::ShelfBlend, mixing::mix};
use crate::quantity::{InvalidQuantity, Mass, MassFraction};

/// A blend as a scale shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct RoundedBlend {
    /// The parts, in the order given, each a whole number of divisions.
    pub masses: Vec<Mass>,
    /// All of them.
    pub total: Mass,
    /// The strength that these masses really give.
    pub strength: MassFraction,
}

/// Why masses cannot be rounded to a scale.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ScaleError {
    /// A scale that shows nothing.
    #[error("the scale division is zero: give what the last figure of the scale counts, for example 0.1 g")]
    NoDivision,
    /// Nothing would be left.
    #[error("the scale division {division} is too coarse for {total}: nothing would be weighed")]
    TooCoarse {
        /// What the scale counts in.
        division: Mass,
        /// What was to be weighed.
        total: Mass,
    },
    /// Not a mass or a strength.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}

/// Rounds the parts of a blend to the divisions of a scale, and says what strength that really is.
///
/// The total is rounded to the nearest division and the parts share it: each is rounded down, and the divisions that are
/// then missing go to the parts that lost most. No part is off by a whole division, and no stock is asked for more than
/// is in hand.
///
/// # Units
///
/// Masses and division in g, strengths in % w/w.
///
/// # Errors
///
/// [`ScaleError`] when the division is zero or coarser than the whole blend.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{dilute, round_to_scale}, quantity::{Mass, MassFraction}};
///
/// let (stock, target) = (MassFraction::from_percent_ww(9.0)?, MassFraction::from_percent_ww(4.0)?);
/// let blend = dilute(stock, target, Mass::from_g(50.0)?)?; // 22.2222 g and 27.7778 g
/// let parts = [(stock, blend.stock), (MassFraction::ZERO, blend.diluent)];
/// let weighed = round_to_scale(&parts, Mass::from_g(1.0)?)?;
/// assert_eq!(weighed.masses.iter().map(|m| m.g()).collect::<Vec<_>>(), [22.0, 28.0]);
/// assert_eq!(weighed.strength.to_string(), "3.96 % w/w");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn round_to_scale(parts: &[(MassFraction, Mass)], division: Mass) -> Result<RoundedBlend, ScaleError> {
    round(parts.iter().map(|&(strength, mass)| (strength, mass, None)).collect(), division)
}

impl ShelfBlend {
    /// The blend as a scale shows it; see [`round_to_scale`].
    ///
    /// # Errors
    ///
    /// [`ScaleError`] when the division is zero or coarser than the whole blend.
    pub fn round_to_scale(&self, division: Mass) -> Result<RoundedBlend, ScaleError> {
        let part = |p: &super::Portion| (p.stock.strength, p.mass, p.stock.in_hand);
        round(self.portions.iter().map(part).collect(), division)
    }
}

fn round(parts: Vec<(MassFraction, Mass, Option<Mass>)>, division: Mass) -> Result<RoundedBlend, ScaleError> {
    if division == Mass::ZERO {
        return Err(ScaleError::NoDivision);
    }
    let total: Mass = parts.iter().map(|(_, mass, _)| *mass).sum();
    let units = |mass: Mass| mass.g() / division.g();
    // A mass that is a whole number of divisions up to rounding stays what it is.
    let whole = |mass: Mass| (units(mass) + 1e-9).floor();
    let mut counts: Vec<f64> = parts.iter().map(|(_, mass, _)| whole(*mass)).collect();
    let mut missing = units(total).round() - counts.iter().sum::<f64>();
    let mut by_loss: Vec<usize> = (0..parts.len()).collect();
    let loss = |place: usize| parts.get(place).map_or(0.0, |(_, mass, _)| units(*mass) - whole(*mass));
    by_loss.sort_by(|&a, &b| loss(b).total_cmp(&loss(a)));
    for place in by_loss {
        if let (Some(count), Some((_, _, in_hand))) = (counts.get_mut(place), parts.get(place))
            && missing >= 1.0
            && in_hand.is_none_or(|mass| *count + 1.0 <= whole(mass))
        {
            *count += 1.0;
            missing -= 1.0;
        }
    }
    let masses = counts.into_iter().map(|count| times(count, division)).collect::<Result<Vec<_>, _>>()?;
    let weighed: Vec<_> = parts.iter().zip(&masses).map(|((strength, ..), &mass)| (*strength, mass)).collect();
    let Ok(mixed) = mix(&weighed) else { return Err(ScaleError::TooCoarse { division, total }) };
    Ok(RoundedBlend { masses, total: mixed.total, strength: mixed.strength })
}

/// A number of divisions, dividing by the whole number of divisions in a gram where there is one: 3 of 0.1 g are 0.3 g.
fn times(count: f64, division: Mass) -> Result<Mass, InvalidQuantity> {
    let in_a_gram = (1.0 / division.g()).round();
    if in_a_gram >= 1.0 && (in_a_gram * division.g() - 1.0).abs() < 1e-9 {
        Mass::from_g(count / in_a_gram)
    } else {
        Mass::from_g(count * division.g())
    }
}
