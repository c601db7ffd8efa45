use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize, de::Error};

/// An estimate that is never shown without its bounds: `low <= best <= high`.
///
/// `Q` is a checked quantity, so the bounds carry the unit. An exact value is an interval of no width. As plain data it
/// is `{low, best, high}`, and the unit stands in the field's name.
///
/// Formulas pass through [`map`](Self::map) and [`combine`](Self::combine), which keep the bounds and work out their
/// order themselves: no step of a calculation can drop them or fail over them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Interval<Q> {
    /// Lower bound.
    low: Q,
    /// Best estimate.
    best: Q,
    /// Upper bound.
    high: Q,
}

/// Bounds that do not enclose the estimate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("invalid interval: the bounds must enclose the best estimate (give low <= best <= high)")]
pub struct InvalidInterval;

impl<Q: Copy + PartialOrd> Interval<Q> {
    /// An estimate with its bounds, as someone states them.
    ///
    /// # Errors
    ///
    /// [`InvalidInterval`] unless `low <= best <= high`.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, source::Interval};
    ///
    /// let g = Mass::from_g;
    /// let [low, best, high] = [g(35.0)?, g(40.0)?, g(50.0)?];
    /// let need = Interval::new(low, best, high)?;
    /// assert_eq!((need.low(), need.best(), need.high()), (low, best, high));
    /// assert_eq!(need.to_array(), [low, best, high]);
    /// assert!(need.contains(g(48.0)?) && !need.is_exact());
    /// assert!(Interval::new(high, best, low).is_err());
    /// assert_eq!(Interval::ordered(high, best, low), need);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(low: Q, best: Q, high: Q) -> Result<Self, InvalidInterval> {
        if low <= best && best <= high { Ok(Self { low, best, high }) } else { Err(InvalidInterval) }
    }

    /// An estimate and two results around it, in whatever order they came out.
    ///
    /// When the estimate lies outside both, the nearer bound moves out to it: the interval always encloses its estimate.
    #[must_use]
    pub fn ordered(one: Q, best: Q, other: Q) -> Self {
        Self { low: lesser(lesser(one, other), best), best, high: greater(greater(one, other), best) }
    }

    /// A value without uncertainty: a definition, a count, a weighed mass taken as it is.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, source::Interval};
    ///
    /// let weighed = Interval::exact(Mass::from_g(60.0)?);
    /// assert!(weighed.is_exact());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn exact(value: Q) -> Self {
        Self { low: value, best: value, high: value }
    }

    /// The lower bound.
    pub const fn low(&self) -> Q {
        self.low
    }

    /// The best estimate.
    pub const fn best(&self) -> Q {
        self.best
    }

    /// The upper bound.
    pub const fn high(&self) -> Q {
        self.high
    }

    /// Whether the bounds coincide.
    pub fn is_exact(&self) -> bool {
        self.low == self.high
    }

    /// Whether a value lies within the bounds.
    pub fn contains(&self, value: Q) -> bool {
        self.low <= value && value <= self.high
    }

    /// Passes estimate and bounds through a function that rises or falls all the way; the order is worked out here.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::source::Interval;
    ///
    /// // A falling function: the bounds change places by themselves.
    /// let speed = Interval::new(2.0, 4.0, 5.0)?;
    /// assert_eq!(speed.map(|g_per_min| 100.0 / g_per_min).to_array(), [20.0, 25.0, 50.0]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn map<R: Copy + PartialOrd>(self, f: impl Fn(Q) -> R) -> Interval<R> {
        Interval::ordered(f(self.low), f(self.best), f(self.high))
    }

    /// [`map`](Self::map) with a function that may fail.
    ///
    /// # Errors
    ///
    /// The first error of the function; the estimate is tried first, then the bounds.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, source::Interval};
    ///
    /// let grams = Interval::new(35.0, 40.0, 50.0)?;
    /// assert_eq!(grams.try_map(Mass::from_g)?.high(), Mass::from_g(50.0)?);
    /// assert!(Interval::new(-5.0, 40.0, 50.0)?.try_map(Mass::from_g).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn try_map<R: Copy + PartialOrd, E>(self, f: impl Fn(Q) -> Result<R, E>) -> Result<Interval<R>, E> {
        let best = f(self.best)?;
        Ok(Interval::ordered(f(self.low)?, best, f(self.high)?))
    }

    /// Combines two estimates by a function that rises or falls all the way in each: the bounds are the extremes of the
    /// four corners, which is where such a function has them. The two are taken as independent, so the bounds are the
    /// widest that can be.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::source::Interval;
    ///
    /// let (length, grams_per_cm) = (Interval::new(10.0, 12.0, 14.0)?, Interval::new(1.0, 2.0, 3.0)?);
    /// assert_eq!(length.combine(grams_per_cm, |cm, each| cm * each).to_array(), [10.0, 24.0, 42.0]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn combine<B: Copy + PartialOrd, R: Copy + PartialOrd>(
        self,
        other: Interval<B>,
        f: impl Fn(Q, B) -> R,
    ) -> Interval<R> {
        let one = self.map(|a| f(a, other.low));
        let two = self.map(|a| f(a, other.high));
        Interval::ordered(lesser(one.low, two.low), f(self.best, other.best), greater(one.high, two.high))
    }

    /// [`combine`](Self::combine) with a function that may fail.
    ///
    /// # Errors
    ///
    /// The first error of the function; the estimates are tried first, then the corners.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{quantity::Mass, source::Interval};
    ///
    /// let (length, grams_per_cm) = (Interval::exact(12.0), Interval::new(1.0, 2.0, 3.0)?);
    /// let mass = length.try_combine(grams_per_cm, |cm, each| Mass::from_g(cm * each))?;
    /// assert_eq!(mass.low(), Mass::from_g(12.0)?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn try_combine<B: Copy + PartialOrd, R: Copy + PartialOrd, E>(
        self,
        other: Interval<B>,
        f: impl Fn(Q, B) -> Result<R, E>,
    ) -> Result<Interval<R>, E> {
        let best = f(self.best, other.best)?;
        let one = Interval::ordered(f(self.low, other.low)?, best, f(self.high, other.low)?);
        let two = Interval::ordered(f(self.low, other.high)?, best, f(self.high, other.high)?);
        Ok(Interval::ordered(lesser(one.low, two.low), best, greater(one.high, two.high)))
    }

    /// The smallest interval around both; the estimate stays that of `self`.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::source::Interval;
    ///
    /// let (one, other) = (Interval::new(2.0, 3.0, 4.0)?, Interval::new(3.0, 5.0, 6.0)?);
    /// assert_eq!(one.widened_to(other).to_array(), [2.0, 3.0, 6.0]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn widened_to(self, other: Self) -> Self {
        Self { low: lesser(self.low, other.low), best: self.best, high: greater(self.high, other.high) }
    }

    /// Lower bound, best estimate, upper bound.
    #[must_use]
    pub const fn to_array(self) -> [Q; 3] {
        [self.low, self.best, self.high]
    }
}

/// A plain value is an estimate without uncertainty, so that a function which takes estimates takes both.
impl<Q: Copy> From<Q> for Interval<Q> {
    fn from(value: Q) -> Self {
        Self { low: value, best: value, high: value }
    }
}

/// Plain data is checked as [`Interval::new`] checks.
impl<'de, Q: Deserialize<'de> + Copy + PartialOrd> Deserialize<'de> for Interval<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct Bounds<Q> {
            low: Q,
            best: Q,
            high: Q,
        }
        let Bounds { low, best, high } = Bounds::deserialize(deserializer)?;
        Self::new(low, best, high).map_err(D::Error::custom)
    }
}

fn lesser<Q: PartialOrd>(a: Q, b: Q) -> Q {
    if b < a { b } else { a }
}

fn greater<Q: PartialOrd>(a: Q, b: Q) -> Q {
    if b > a { b } else { a }
}
