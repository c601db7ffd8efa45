use crate::quantity::{InvalidQuantity, Mass, MassFraction};

/// The one amount that is known; the rest is worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum KnownMass {
    /// How much is wanted altogether.
    Total(Mass),
    /// How much of the first part there is.
    First(Mass),
    /// How much of the second part there is.
    Second(Mass),
}

/// Two parts of a blend, weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoPartBlend {
    /// Mass of the first part.
    pub first: Mass,
    /// Mass of the second part.
    pub second: Mass,
}

impl TwoPartBlend {
    /// Both together.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{peroxide::TwoPartBlend, quantity::Mass};
    ///
    /// let blend = TwoPartBlend { first: Mass::from_g(20.0)?, second: Mass::from_g(40.0)? };
    /// assert_eq!(blend.total().g(), 60.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn total(&self) -> Mass {
        self.first + self.second
    }
}

/// Why a blend cannot be made.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum BlendError {
    /// Blending never makes anything stronger than its strongest part.
    #[error(
        "cannot reach {target}: the strongest stock is {strongest}, so anything from {weakest} to {strongest} is \
         reachable"
    )]
    AboveStrongest {
        /// Strength asked for.
        target: MassFraction,
        /// Strongest part.
        strongest: MassFraction,
        /// Weakest part.
        weakest: MassFraction,
    },
    /// Nor weaker than its weakest.
    #[error(
        "cannot reach {target}: the weakest stock is {weakest}, so anything from {weakest} to {strongest} is reachable \
         (add a diluent to go lower)"
    )]
    BelowWeakest {
        /// Strength asked for.
        target: MassFraction,
        /// Weakest part.
        weakest: MassFraction,
        /// Strongest part.
        strongest: MassFraction,
    },
    /// An amount of zero is asked for.
    #[error("the {what} is zero: give a mass above 0 g")]
    Nothing {
        /// Which mass.
        what: &'static str,
    },
    /// The target is the strength of the other part alone.
    #[error("a blend of {target} holds none of the {strength} part: leave it out, or change the target")]
    PartUnused {
        /// Strength asked for.
        target: MassFraction,
        /// Strength of the part whose amount was given.
        strength: MassFraction,
    },
    /// An amount beyond what a mass can be.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}

/// Blends two strengths to a third (alligation), from any one known amount.
///
/// The parts stand in the ratio `first : second = (target - second) : (first - target)`, all in % w/w and by mass. The
/// order of the two does not matter. Two parts of the target's own strength need no blending: all goes to the first.
///
/// # Units
///
/// Strengths in % w/w, masses in g. Nothing is rounded.
///
/// # Errors
///
/// [`BlendError`] when the target lies outside the two strengths, the amount asked for is zero, or the known part cannot be in
/// the blend.
///
/// # Example
///
/// ```
/// use foilwork::{peroxide::{KnownMass, blend_two}, quantity::{Mass, MassFraction}};
///
/// let [six, twelve, nine] = [6.0, 12.0, 9.0].map(MassFraction::from_ww_percent);
/// let blend = blend_two(six?, twelve?, nine?, KnownMass::Total(Mass::from_g(80.0)?))?;
/// assert_eq!((blend.first.g(), blend.second.g()), (40.0, 40.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Conservation of solute mass; no tabulated value.
#[inline]
pub fn blend_two(
    first: MassFraction,
    second: MassFraction,
    target: MassFraction,
    known: KnownMass,
) -> Result<TwoPartBlend, BlendError> {
    let (what, mass) = match known {
        KnownMass::Total(mass) => ("total", mass),
        KnownMass::First(mass) => ("amount of the first part", mass),
        KnownMass::Second(mass) => ("amount of the second part", mass),
    };
    if mass == Mass::ZERO {
        return Err(BlendError::Nothing { what });
    }
    let (weakest, strongest) = if first < second { (first, second) } else { (second, first) };
    if target > strongest {
        return Err(BlendError::AboveStrongest { target, strongest, weakest });
    }
    if target < weakest {
        return Err(BlendError::BelowWeakest { target, weakest, strongest });
    }
    let (w1, w2, w) = (first.ww_percent(), second.ww_percent(), target.ww_percent());
    let (a, b) = shares(w1, w2, w);
    match known {
        KnownMass::Total(total) => {
            let first = total.times(a / (a + b))?;
            Ok(TwoPartBlend { first, second: total.minus_or_zero(first) })
        }
        KnownMass::First(_) if a == 0.0 => Err(BlendError::PartUnused { target, strength: first }),
        KnownMass::Second(_) if b == 0.0 => Err(BlendError::PartUnused { target, strength: second }),
        KnownMass::First(first) => Ok(TwoPartBlend { first, second: first.times(b / a)? }),
        KnownMass::Second(second) => Ok(TwoPartBlend { first: second.times(a / b)?, second }),
    }
}

/// Shares of the first and of the second part, both of one sign; equal strengths leave no difference to share.
#[inline]
pub(crate) fn shares(w1: f64, w2: f64, w: f64) -> (f64, f64) {
    if w1 == w2 { (1.0, 0.0) } else { ((w - w2).abs(), (w1 - w).abs()) }
}
