use super::{Currency, MoneyError, Rounding, exact, exact::HUNDRED};
use rust_decimal::Decimal;
use serde::ser::SerializeStruct;
use std::{cmp::Ordering, fmt};

/// An amount of money: a whole number of minor units (cents, pence, yen, fils) and their currency.
///
/// Sums are exact or refused: no two currencies meet, nothing wraps, and a fraction of a minor unit exists only on the
/// way in, where its rounding is named. There is no division; sharing out is [`allocate`](super::allocate()).
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, Rounding};
///
/// let eur = Currency::from_code("EUR")?;
/// let price = Money::parse("12.50", eur)?;
/// assert_eq!(price.plus(Money::from_minor(75, eur))?.to_string(), "13.25 EUR");
///
/// let third = Money::from_decimal("4.165".parse()?, eur, Rounding::MidpointNearestEven)?;
/// assert_eq!(third.minor(), 416);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Money {
    minor: i64,
    currency: Currency,
}

impl Money {
    /// Takes a whole number of minor units.
    #[must_use]
    pub const fn from_minor(minor: i64, currency: Currency) -> Self {
        Self { minor, currency }
    }

    /// Nothing, in a currency.
    #[must_use]
    pub const fn zero(currency: Currency) -> Self {
        Self { minor: 0, currency }
    }

    /// Takes an amount in units of the currency, rounded to the minor unit as named.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`] beyond `i64` minor units.
    pub fn from_decimal(amount: Decimal, currency: Currency, rounding: Rounding) -> Result<Self, MoneyError> {
        Self::rounded(&[amount], &[], currency, rounding, "amount")
    }

    /// Takes an amount that is already whole in minor units; nothing is rounded.
    ///
    /// # Errors
    ///
    /// [`MoneyError::BetweenMinorUnits`] when it is not whole; [`MoneyError::TooLarge`] beyond `i64` minor units.
    pub fn from_decimal_exact(amount: Decimal, currency: Currency) -> Result<Self, MoneyError> {
        if amount.normalize().scale() > currency.exponent() {
            return Err(MoneyError::BetweenMinorUnits { amount, currency });
        }
        Self::from_decimal(amount, currency, Rounding::ToZero)
    }

    /// Reads digits with a point, for example `12.50`; nothing is rounded.
    ///
    /// # Errors
    ///
    /// [`MoneyError::NotADecimal`], [`MoneyError::BetweenMinorUnits`] or [`MoneyError::TooLarge`].
    pub fn parse(text: &str, currency: Currency) -> Result<Self, MoneyError> {
        Self::from_decimal_exact(super::parse_decimal("amount", text)?, currency)
    }

    /// The exact product over the exact product, rounded once.
    pub(crate) fn rounded(
        over: &[Decimal],
        under: &[Decimal],
        currency: Currency,
        rounding: Rounding,
        field: &'static str,
    ) -> Result<Self, MoneyError> {
        exact::quotient(over, under, currency.exponent(), rounding, field).map(|minor| Self { minor, currency })
    }

    /// The whole number of minor units.
    #[must_use]
    pub const fn minor(self) -> i64 {
        self.minor
    }

    /// The currency.
    #[must_use]
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// The amount in units of the currency, with all its decimals.
    #[must_use]
    pub fn decimal(self) -> Decimal {
        // The scale is at most 4, well within what a decimal holds.
        Decimal::from_i128_with_scale(i128::from(self.minor), self.currency.exponent())
    }

    /// Whether it is less than nothing.
    #[must_use]
    pub const fn is_negative(self) -> bool {
        self.minor < 0
    }

    /// Whether it is nothing.
    #[must_use]
    pub const fn is_zero(self) -> bool {
        self.minor == 0
    }

    /// The sum.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`] or [`MoneyError::TooLarge`].
    pub fn plus(self, other: Self) -> Result<Self, MoneyError> {
        self.same_currency(other)?;
        self.checked(self.minor.checked_add(other.minor), "sum")
    }

    /// The difference.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`] or [`MoneyError::TooLarge`].
    pub fn minus(self, other: Self) -> Result<Self, MoneyError> {
        self.same_currency(other)?;
        self.checked(self.minor.checked_sub(other.minor), "difference")
    }

    /// So many times the amount.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    pub fn times(self, count: i64) -> Result<Self, MoneyError> {
        self.checked(self.minor.checked_mul(count), "product")
    }

    /// A percentage of the amount, rounded as named.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    pub fn percent(self, percent: Decimal, rounding: Rounding) -> Result<Self, MoneyError> {
        Self::rounded(&[self.decimal(), percent], &[HUNDRED], self.currency, rounding, "percentage")
    }

    /// What percentage of `whole` this is, in 28 significant digits.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`]; [`MoneyError::AmountOutOfRange`] when the whole is nothing.
    pub fn percent_of(self, whole: Self) -> Result<Decimal, MoneyError> {
        self.same_currency(whole)?;
        if whole.is_zero() {
            let allowed = "an amount other than nothing, to take a percentage of";
            return Err(MoneyError::AmountOutOfRange { field: "whole", value: whole, allowed });
        }
        exact::ratio(&[self.decimal(), HUNDRED], &[whole.decimal()], "percentage")
    }

    /// The sum of a list, `currency` for an empty one.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`] or [`MoneyError::TooLarge`].
    pub fn total(amounts: impl IntoIterator<Item = Self>, currency: Currency) -> Result<Self, MoneyError> {
        amounts.into_iter().try_fold(Self::zero(currency), Self::plus)
    }

    /// Refuses two currencies in one sum.
    pub(crate) fn same_currency(self, other: Self) -> Result<(), MoneyError> {
        if self.currency == other.currency {
            Ok(())
        } else {
            Err(MoneyError::MixedCurrencies { left: self.currency, right: other.currency })
        }
    }

    /// Refuses less than nothing.
    pub(crate) fn not_negative(self, field: &'static str) -> Result<Self, MoneyError> {
        if self.is_negative() {
            Err(MoneyError::AmountOutOfRange { field, value: self, allowed: "nothing or more" })
        } else {
            Ok(self)
        }
    }

    /// Refuses nothing and less.
    pub(crate) fn positive(self, field: &'static str) -> Result<Self, MoneyError> {
        if self.minor > 0 {
            Ok(self)
        } else {
            Err(MoneyError::AmountOutOfRange { field, value: self, allowed: "more than nothing" })
        }
    }

    fn checked(self, minor: Option<i64>, field: &'static str) -> Result<Self, MoneyError> {
        minor.map(|minor| Self { minor, currency: self.currency }).ok_or(MoneyError::TooLarge { field })
    }
}

/// Amounts of one currency are ordered; of two currencies they are not.
impl PartialOrd for Money {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        (self.currency == other.currency).then(|| self.minor.cmp(&other.minor))
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{} {}", self.decimal(), self.currency))
    }
}

/// Written as `{"amount": "12.50", "currency": "EUR"}`: a text, so that no reader turns it into a float.
impl serde::Serialize for Money {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut money = serializer.serialize_struct("Money", 2)?;
        money.serialize_field("amount", &self.decimal().to_string())?;
        money.serialize_field("currency", &self.currency)?;
        money.end()
    }
}
