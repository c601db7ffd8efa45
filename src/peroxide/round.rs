use super::{from_shelf::ShelfBlend, mixing::mix_strengths};
use crate::{
    quantity::{Mass, MassFraction},
    scale::{WeighError, weigh_in_hand},
    source::Interval,
};

/// A blend as a scale shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct RoundedBlend {
    /// The parts, in the order given, each a whole number of divisions.
    pub masses: Vec<Mass>,
    /// All of them.
    pub total: Mass,
    /// The strength that these masses really give.
    pub strength: Interval<MassFraction>,
}

/// Rounds the parts of a blend to the divisions of a scale, and says what strength that really is.
///
/// The masses are those of [`weigh`](crate::scale::weigh): they add up to the rounded total, with the least harm to the
/// ratio.
///
/// # Units
///
/// Masses and division in g, strengths in % w/w.
///
/// # Errors
///
/// [`WeighError`] when the division is zero or coarser than the whole blend.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{dilute, round_to_scale}, quantity::{Mass, MassFraction}};
///
/// let (stock, target) = (MassFraction::from_ww_percent(9.0)?, MassFraction::from_ww_percent(4.0)?);
/// let blend = dilute(stock, target, Mass::from_g(50.0)?)?; // 22.2222 g and 27.7778 g
/// let parts = [(stock, blend.stock), (MassFraction::ZERO, blend.diluent)];
/// let weighed = round_to_scale(&parts, Mass::from_g(1.0)?)?;
/// assert_eq!(weighed.masses.iter().map(|m| m.g()).collect::<Vec<_>>(), [22.0, 28.0]);
/// assert_eq!(weighed.strength.best().to_string(), "3.96 % w/w");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn round_to_scale<S: Copy + Into<Interval<MassFraction>>>(
    parts: &[(S, Mass)],
    division: Mass,
) -> Result<RoundedBlend, WeighError> {
    let parts: Vec<_> = parts.iter().map(|&(strength, mass)| (strength.into(), mass, None)).collect();
    round(&parts, division)
}

impl ShelfBlend {
    /// The blend as a scale shows it; no bottle is asked for more than is in hand. See [`round_to_scale`].
    ///
    /// # Errors
    ///
    /// [`WeighError`] when the division is zero or coarser than the whole blend.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::{Objective, Shelf, Stock, blend_shelf}, quantity::{Mass, MassFraction}};
    ///
    /// let (ww, g) = (MassFraction::from_ww_percent, Mass::from_g);
    /// let shelf = Shelf::new(vec![Stock::new("9 %", ww(9.0)?), Stock::new("water", MassFraction::ZERO)])?;
    /// let blend = blend_shelf(&shelf, ww(4.0)?, g(50.0)?, Objective::LeastCost)?; // 22.2222 g and 27.7778 g
    /// let weighed = blend.round_to_scale(g(1.0)?)?;
    /// assert_eq!((weighed.masses, weighed.total), (vec![g(22.0)?, g(28.0)?], g(50.0)?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn round_to_scale(&self, division: Mass) -> Result<RoundedBlend, WeighError> {
        let part = |p: &super::Portion| (p.stock.strength, p.mass, p.stock.in_hand);
        round(&self.portions.iter().map(part).collect::<Vec<_>>(), division)
    }
}

fn round(parts: &[(Interval<MassFraction>, Mass, Option<Mass>)], division: Mass) -> Result<RoundedBlend, WeighError> {
    let wanted: Vec<_> = parts.iter().map(|&(_, mass, in_hand)| (mass, in_hand)).collect();
    let weighing = weigh_in_hand(&wanted, division)?;
    let masses: Vec<Mass> = weighing.parts().iter().map(|part| part.weighed).collect();
    let weighed: Vec<_> = parts.iter().zip(&masses).map(|(part, &mass)| (part.0, mass)).collect();
    let total = weighing.total();
    // Bottles in hand may hold less than one division each.
    let coarse = |_| WeighError::Coarse { total: wanted.iter().map(|(mass, _)| *mass).sum(), division };
    Ok(RoundedBlend { strength: mix_strengths(&weighed).map_err(coarse)?.strength, masses, total })
}
