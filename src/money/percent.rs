//! Percentages that must not be mistaken for one another: each says of what it is a part.

use super::{MoneyError, exact, exact::HUNDRED};
use rust_decimal::Decimal;
use serde::Serialize;
use std::fmt;

/// Declares a checked percentage: one private field, constructor, getter and `Display` that says of what.
macro_rules! percent {
    (
        $(#[$doc:meta])*
        $name:ident: $what:literal, $of:literal, when |$v:ident| $valid:expr, $allowed:literal
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, schemars::JsonSchema)]
        #[serde(transparent)]
        pub struct $name(#[schemars(with = "String")] Decimal);

        impl $name {
            #[doc = concat!("Takes the ", $what, " in ", $of, ".")]
            ///
            /// # Errors
            ///
            #[doc = concat!("[`MoneyError::OutOfRange`] unless it is ", $allowed, ".")]
            pub fn from_percent(percent: Decimal) -> Result<Self, MoneyError> {
                let $v = percent;
                if $valid {
                    Ok(Self(percent))
                } else {
                    Err(MoneyError::OutOfRange { field: $what, value: percent, unit: $of, allowed: $allowed })
                }
            }

            #[doc = concat!("The ", $what, " in ", $of, ".")]
            #[must_use]
            pub const fn percent(self) -> Decimal {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                let shown = self.0.round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero);
                write!(f, "{} {}", shown.normalize(), $of)
            }
        }
    };
}

percent! {
    /// Profit as a part of the net price. Below 100 %: all of the price cannot be profit unless the cost is zero.
    Margin: "margin", "% of the price", when |v| v < HUNDRED && v >= LEAST, "below 100 % of the price"
}
percent! {
    /// What is put on the cost, as a part of the cost. 100 % doubles it.
    Markup: "mark-up", "% of the cost", when |v| v > -HUNDRED && v <= MOST, "above -100 and up to 1e12 % of the cost"
}
percent! {
    /// Tax as a part of the net price.
    TaxRate: "tax rate", "% of the net price",
    when |v| v >= Decimal::ZERO && v <= THOUSAND, "from 0 to 1000 % of the net price"
}
percent! {
    /// What an employer pays on top of the wage, as a part of the wage: social insurance, holiday pay, pension.
    OnCosts: "on-costs", "% of the wage",
    when |v| v >= Decimal::ZERO && v <= THOUSAND, "from 0 to 1000 % of the wage"
}
percent! {
    /// What is taken off, as a part of the price before.
    Discount: "discount", "% of the full price",
    when |v| v >= Decimal::ZERO && v < HUNDRED, "from 0 to below 100 % of the full price"
}
percent! {
    /// What the card terminal keeps, as a part of what the guest pays.
    CardRate: "card fee", "% of the payment",
    when |v| v >= Decimal::ZERO && v < HUNDRED, "from 0 to below 100 % of the payment"
}
percent! {
    /// Tax on profit, as a part of the profit before it.
    ProfitTax: "tax on profit", "% of the profit",
    when |v| v >= Decimal::ZERO && v < HUNDRED, "from 0 to below 100 % of the profit"
}
percent! {
    /// Commission as a part of the takings it is paid on.
    CommissionRate: "commission", "% of the takings",
    when |v| v >= Decimal::ZERO && v <= HUNDRED, "from 0 to 100 % of the takings"
}

percent! {
    /// The paid time that a guest pays for.
    ProductiveShare: "productive share", "% of the paid time",
    when |v| v > Decimal::ZERO && v <= HUNDRED, "above 0 and up to 100 % of the paid time"
}

const THOUSAND: Decimal = Decimal::ONE_THOUSAND;
const MOST: Decimal = Decimal::from_parts(0xD4A5_1000, 0xE8, 0, false, 0);
const LEAST: Decimal = Decimal::from_parts(0xD4A5_1000, 0xE8, 0, true, 0);

impl Margin {
    /// The mark-up that sets the same price: `m / (100 - m)`.
    ///
    /// # Errors
    ///
    /// [`MoneyError::OutOfRange`] so close to 100 % that the mark-up exceeds 1e12 %.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::Margin;
    ///
    /// let margin = Margin::from_percent(25.into())?;
    /// assert_eq!(margin.markup()?.to_string(), "33.33 % of the cost");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn markup(self) -> Result<Markup, MoneyError> {
        Markup::from_percent(exact::ratio(&[self.0, HUNDRED], &[HUNDRED - self.0], "mark-up")?)
    }
}

impl Markup {
    /// The margin that sets the same price: `k / (100 + k)`.
    ///
    /// # Errors
    ///
    /// [`MoneyError::OutOfRange`] so close to -100 % that the margin falls below -1e12 %.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::Markup;
    ///
    /// let markup = Markup::from_percent(100.into())?;
    /// assert_eq!(markup.margin()?.to_string(), "50 % of the price");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn margin(self) -> Result<Margin, MoneyError> {
        Margin::from_percent(exact::ratio(&[self.0, HUNDRED], &[HUNDRED + self.0], "margin")?)
    }
}
