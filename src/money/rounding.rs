use super::MoneyError;
use serde::{Deserialize, Serialize};
use std::{fmt, str::FromStr};

/// How an exact amount becomes a whole number of minor units. Nothing in this room rounds without one.
///
/// The names are those of `rust_decimal`; the text form is the same words in lower case with underscores.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum Rounding {
    /// To the nearest; a half goes away from zero. What a till does and most tax offices accept ("half up").
    MidpointAwayFromZero,
    /// To the nearest; a half goes to the even neighbour ("bankers' rounding").
    MidpointNearestEven,
    /// To the nearest; a half goes towards zero.
    MidpointTowardZero,
    /// Cuts off.
    ToZero,
    /// Up in size, whatever the sign.
    AwayFromZero,
    /// Down on the number line.
    ToNegativeInfinity,
    /// Up on the number line.
    ToPositiveInfinity,
}

impl Rounding {
    /// Every rounding there is.
    pub const ALL: [Self; 7] = [
        Self::MidpointAwayFromZero,
        Self::MidpointNearestEven,
        Self::MidpointTowardZero,
        Self::ToZero,
        Self::AwayFromZero,
        Self::ToNegativeInfinity,
        Self::ToPositiveInfinity,
    ];

    /// The text form, as written in files and in Python.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::MidpointAwayFromZero => "midpoint_away_from_zero",
            Self::MidpointNearestEven => "midpoint_nearest_even",
            Self::MidpointTowardZero => "midpoint_toward_zero",
            Self::ToZero => "to_zero",
            Self::AwayFromZero => "away_from_zero",
            Self::ToNegativeInfinity => "to_negative_infinity",
            Self::ToPositiveInfinity => "to_positive_infinity",
        }
    }

    /// The same rounding in `rust_decimal`.
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

impl fmt::Display for Rounding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

impl FromStr for Rounding {
    type Err = MoneyError;

    fn from_str(name: &str) -> Result<Self, Self::Err> {
        Self::ALL
            .into_iter()
            .find(|rounding| rounding.name() == name)
            .ok_or_else(|| MoneyError::UnknownRounding { name: name.chars().take(40).collect() })
    }
}
