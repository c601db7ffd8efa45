use super::blend::{BlendError, KnownMass, TwoPartBlend, blend_two};
use crate::quantity::{Mass, MassFraction};

/// Stock and diluent, weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dilution {
    /// What to take from the bottle.
    pub stock: Mass,
    /// What to add that holds no peroxide: water for a clear solution, the maker's cream base for a cream.
    pub diluent: Mass,
}

impl Dilution {
    /// Both together.
    #[must_use]
    pub fn total(&self) -> Mass {
        self.stock + self.diluent
    }
}

impl From<TwoPartBlend> for Dilution {
    fn from(blend: TwoPartBlend) -> Self {
        Self { stock: blend.first, diluent: blend.second }
    }
}

/// Splits `total` into stock and diluent so that the blend has strength `target`.
///
/// Mass balance: `m_stock = m_total · w_target / w_stock`. Weigh it; do not measure by volume.
///
/// # Units
///
/// Strengths in % w/w, masses in g. Nothing is rounded.
///
/// # Errors
///
/// [`BlendError`] when the target is above the stock, or the amount asked for is zero.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::dilute, quantity::{Mass, MassFraction}};
///
/// let (stock, target) = (MassFraction::from_ww_percent(12.0)?, MassFraction::from_ww_percent(3.0)?);
/// let blend = dilute(stock, target, Mass::from_g(60.0)?)?;
/// assert_eq!((blend.stock.g(), blend.diluent.g()), (15.0, 45.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of solute mass; no tabulated value.
#[inline]
pub fn dilute(stock: MassFraction, target: MassFraction, total: Mass) -> Result<Dilution, BlendError> {
    dilute_known(stock, target, KnownMass::Total(total))
}

/// The same with any one amount known: all of it, the stock that is left, or the diluent that is at hand.
///
/// # Units
///
/// Strengths in % w/w, masses in g. In `known`, the first part is the stock and the second the diluent.
///
/// # Errors
///
/// [`BlendError`] when the target is above the stock, the amount asked for is zero, or the known part cannot be in the blend.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{KnownMass, dilute_known}, quantity::{Mass, MassFraction}};
///
/// // 40 g of 12 % are left: how much water makes 3 % of them?
/// let (stock, target) = (MassFraction::from_ww_percent(12.0)?, MassFraction::from_ww_percent(3.0)?);
/// let blend = dilute_known(stock, target, KnownMass::First(Mass::from_g(40.0)?))?;
/// assert_eq!((blend.diluent.g(), blend.total().g()), (120.0, 160.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[inline]
pub fn dilute_known(stock: MassFraction, target: MassFraction, known: KnownMass) -> Result<Dilution, BlendError> {
    blend_two(stock, MassFraction::ZERO, target, known).map(Dilution::from)
}
