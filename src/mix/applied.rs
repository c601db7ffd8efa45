use crate::{
    peroxide::mean_strength,
    quantity::{Mass, MassFraction},
    source::Interval,
};

/// A bowl whose strength cannot be stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum AsAppliedError {
    /// No part, or parts that weigh nothing.
    #[error("the bowl is empty (total 0 g): give at least one part with a mass above 0 g")]
    Empty,
}

/// Strength of the mixed bowl: the mass-weighted mean of the strengths of its parts.
///
/// A part without the solute (thickener, bond-building additive, water) takes part with a strength of 0 % w/w and so
/// dilutes the rest. The bounds of the parts are carried over as if they were all low or all high at once, which is the
/// widest the bowl can be.
///
/// # Units
///
/// Masses in g, strengths in % w/w. By volume the answer is another one.
///
/// # Errors
///
/// [`AsAppliedError::Empty`] when the parts weigh nothing.
///
/// # Example
///
/// ```
/// use foilwork::{mix::as_applied, quantity::{Mass, MassFraction}, source::Interval};
///
/// let developer = Interval::exact(MassFraction::from_ww_percent(9.0)?);
/// let cream = Interval::exact(MassFraction::ZERO);
/// let bowl = as_applied(&[(Mass::from_g(30.0)?, cream), (Mass::from_g(60.0)?, developer)])?;
/// assert_eq!(bowl.best().ww_percent(), 6.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of solute mass; no tabulated value.
pub fn as_applied(parts: &[(Mass, Interval<MassFraction>)]) -> Result<Interval<MassFraction>, AsAppliedError> {
    mean_strength(parts.iter().map(|&(mass, strength)| (strength, mass))).ok_or(AsAppliedError::Empty)
}
