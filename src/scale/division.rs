use super::error::WeighError;
use crate::quantity::{Mass, Quantity};

/// What the last figure of a scale counts in.
///
/// Where a gram holds a whole number of divisions, masses are made by dividing by that number: 675 tenths are 67.5 g, not
/// 67.500 000 000 000 01 g.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Division {
    mass: Mass,
    in_a_gram: Option<f64>,
}

/// How far a count may be from a whole number and still be that number: the last bits of a sum or a quotient.
const SAME_COUNT: f64 = 1e-9;

/// What the last figure of the finest balances counts, in g.
pub(crate) const FINEST_G: f64 = 1e-7;

impl Division {
    /// A division of a scale.
    ///
    /// # Errors
    ///
    /// [`WeighError::Division`] when it is zero, or too small to count in.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, scale::Division};
    ///
    /// let tenth = Division::new(Mass::from_g(0.1)?)?;
    /// assert_eq!(tenth.round(Mass::from_g(22.222)?).g(), 22.2);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(mass: Mass) -> Result<Self, WeighError> {
        let in_a_gram = (1.0 / mass.g()).round();
        if mass > Mass::ZERO && mass.g() < FINEST_G {
            Err(WeighError::TooFine(mass))
        } else if mass > Mass::ZERO {
            let whole = in_a_gram >= 1.0 && (in_a_gram * mass.g() - 1.0).abs() < SAME_COUNT;
            Ok(Self { mass, in_a_gram: whole.then_some(in_a_gram) })
        } else {
            Err(WeighError::Division(mass))
        }
    }

    /// The division as a mass.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, scale::Division};
    ///
    /// let tenth = Mass::from_g(0.1)?;
    /// assert_eq!(Division::new(tenth)?.mass(), tenth);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn mass(self) -> Mass {
        self.mass
    }

    /// The nearest mass that the scale can show; a tie goes to the even number of divisions.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, scale::Division};
    ///
    /// let two = Division::new(Mass::from_g(2.0)?)?;
    /// assert_eq!(two.round(Mass::from_g(7.2)?).g(), 8.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn round(self, mass: Mass) -> Mass {
        self.of(self.nearest(mass))
    }

    /// How many divisions a mass is, not rounded.
    pub(crate) fn count(self, mass: Mass) -> f64 {
        self.in_a_gram.map_or(mass.g() / self.mass.g(), |n| mass.g() * n)
    }

    /// The nearest whole number of divisions; a tie goes to the even one.
    pub(crate) fn nearest(self, mass: Mass) -> f64 {
        self.count(mass).round_ties_even()
    }

    /// The whole divisions that a mass holds; one that is whole but for its last bits counts as whole.
    pub(crate) fn within(self, mass: Mass) -> f64 {
        (self.count(mass) + SAME_COUNT).floor()
    }

    /// The mass of a number of divisions.
    pub(crate) fn of(self, count: f64) -> Mass {
        Mass::nearest(self.in_a_gram.map_or(count * self.mass.g(), |n| count / n))
    }
}
