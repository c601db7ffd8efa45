use super::{Currency, InvalidCurrency};
use crate::quantity::InvalidQuantity;
use rust_decimal::Decimal;

/// Why a sum of money cannot be worked out.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum MoneyError {
    /// Two currencies in one sum.
    #[error("cannot put {left} and {right} into one sum: convert one of them first, at a rate you state")]
    MixedCurrencies {
        /// The first currency.
        left: Currency,
        /// The other one.
        right: Currency,
    },
    /// A text that is not a decimal number.
    #[error("{field} {text:?} is not a decimal number: write digits with a point, for example 12.50")]
    NotADecimal {
        /// Which value.
        field: &'static str,
        /// What was given.
        text: String,
    },
    /// A decimal number with more digits than can be held.
    #[error("{field} {text:?} has more digits than can be held: write at most 28")]
    TooManyDigits {
        /// Which value.
        field: &'static str,
        /// How it begins.
        text: String,
    },
    /// An amount between two minor units, with no rounding named.
    #[error("{amount} {currency} has more than {} decimals: round it first, and name the rounding", currency.exponent())]
    BetweenMinorUnits {
        /// The amount.
        amount: Decimal,
        /// Its currency.
        currency: Currency,
    },
    /// More decimals than the currency has, in an amount that someone typed: the point may group thousands.
    #[error("amount {text:?} has more decimals than {currency}: {way_out}")]
    TooManyDecimals {
        /// What was given.
        text: String,
        /// Its currency.
        currency: Currency,
        /// What to write instead.
        way_out: String,
    },
    /// Beyond what whole minor units can hold.
    #[error("{field} is too large: amounts reach about 9.2e18 minor units of the currency")]
    TooLarge {
        /// Which value.
        field: &'static str,
    },
    /// Outside the range that makes sense.
    #[error("invalid {field} (got {value} {unit}): must be {allowed}")]
    OutOfRange {
        /// Which value.
        field: &'static str,
        /// What was given.
        value: Decimal,
        /// Its unit.
        unit: &'static str,
        /// The allowed range in words, with the way out.
        allowed: &'static str,
    },
    /// An amount of money outside the range that makes sense.
    #[error("invalid {field} (got {value}): must be {allowed}")]
    AmountOutOfRange {
        /// Which value.
        field: &'static str,
        /// What was given.
        value: super::Money,
        /// The allowed range in words, with the way out.
        allowed: &'static str,
    },
    /// Grams measured against a pack counted in pieces, and the like.
    #[error("cannot take {used} from a pack of {pack}: give both by mass, both by volume or both as a count")]
    DifferentMeasures {
        /// What was used.
        used: super::Measure,
        /// What the pack holds.
        pack: super::Measure,
    },
    /// Text that is no mass, volume or count.
    #[error("cannot read {text:?}: write a mass, a volume or a count, for example 900 g, 500 mL or 42 pieces")]
    NotAMeasure {
        /// What was given.
        text: String,
    },
    /// No number of sales reaches the goal.
    #[error("{goal} is never reached: each sale leaves {left}, so raise the price or lower the cost of each sale")]
    NeverReached {
        /// What was asked for.
        goal: &'static str,
        /// What one sale leaves.
        left: super::Money,
    },
    /// No price reaches the goal, because the shares of the price that are promised away leave nothing.
    #[error(
        "no price reaches this: {promised} % of every price is already promised ({shares}), which must stay below 100 %"
    )]
    NothingLeft {
        /// The sum of the shares, in percent.
        promised: Decimal,
        /// Which shares.
        shares: &'static str,
    },
    /// An empty list where at least one item is needed.
    #[error("{field} is empty: give at least one")]
    Empty {
        /// Which list.
        field: &'static str,
    },
    /// A code that is no currency.
    #[error(transparent)]
    Currency(#[from] InvalidCurrency),
    /// A mass, a volume or a time that is no such thing.
    #[error(transparent)]
    Quantity(#[from] InvalidQuantity),
}
