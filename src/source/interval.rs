/// An estimate that is never shown without its bounds: `low <= best <= high`.
///
/// `Q` is a checked quantity, so the bounds carry the unit. An exact value is an interval of no width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval<Q> {
    low: Q,
    best: Q,
    high: Q,
}

/// Bounds that do not enclose the estimate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("invalid interval: the bounds must enclose the best estimate (give low <= best <= high)")]
pub struct InvalidInterval;

impl<Q: Copy + PartialOrd> Interval<Q> {
    /// An estimate with its bounds.
    ///
    /// # Errors
    ///
    /// [`InvalidInterval`] unless `low <= best <= high`.
    pub fn new(low: Q, best: Q, high: Q) -> Result<Self, InvalidInterval> {
        if low <= best && best <= high { Ok(Self { low, best, high }) } else { Err(InvalidInterval) }
    }

    /// A value without uncertainty: a definition, a count, a weighed mass taken as it is.
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

    /// Passes bounds and estimate through a function that keeps their order (an increasing one).
    ///
    /// # Errors
    ///
    /// [`InvalidInterval`] when the function did not keep the order.
    pub fn map_increasing<R: Copy + PartialOrd>(self, f: impl Fn(Q) -> R) -> Result<Interval<R>, InvalidInterval> {
        Interval::new(f(self.low), f(self.best), f(self.high))
    }
}
