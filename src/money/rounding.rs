use crate::choice::choice;

choice! {
    /// How an exact amount becomes a whole number of minor units. Nothing in this room rounds without one.
    ///
    /// The names are those of `rust_decimal`, and the codes the same words joined by hyphens.
    Rounding: "rounding" {
        /// To the nearest; a half goes away from zero. What a till does and most tax offices accept ("half up").
        MidpointAwayFromZero = "midpoint-away-from-zero" => "to the nearest, a half away from zero",
        /// To the nearest; a half goes to the even neighbour ("bankers' rounding").
        MidpointNearestEven = "midpoint-nearest-even" => "to the nearest, a half to the even digit",
        /// To the nearest; a half goes towards zero.
        MidpointTowardZero = "midpoint-toward-zero" => "to the nearest, a half toward zero",
        /// Cuts off.
        ToZero = "to-zero" => "toward zero",
        /// Up in size, whatever the sign.
        AwayFromZero = "away-from-zero" => "away from zero",
        /// Down on the number line.
        ToNegativeInfinity = "to-negative-infinity" => "down",
        /// Up on the number line.
        ToPositiveInfinity = "to-positive-infinity" => "up",
    }
}

impl Rounding {
    /// The same rounding in `rust_decimal`.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::Rounding;
    /// use rust_decimal::Decimal;
    ///
    /// let half_up = Rounding::MidpointAwayFromZero.strategy();
    /// assert_eq!(Decimal::new(4165, 3).round_dp_with_strategy(2, half_up), Decimal::new(417, 2));
    /// ```
    #[must_use]
    pub const fn strategy(self) -> rust_decimal::RoundingStrategy {
        use rust_decimal::RoundingStrategy as S;
        match self {
            Self::MidpointAwayFromZero => S::MidpointAwayFromZero,
            Self::MidpointNearestEven => S::MidpointNearestEven,
            Self::MidpointTowardZero => S::MidpointTowardZero,
            Self::ToZero => S::ToZero,
            Self::AwayFromZero => S::AwayFromZero,
            Self::ToNegativeInfinity => S::ToNegativeInfinity,
            Self::ToPositiveInfinity => S::ToPositiveInfinity,
        }
    }
}
