use super::{CardRate, Money, MoneyError, Rounding};
use serde::Serialize;

/// What the card terminal keeps of a payment: a part of it and a fixed amount.
///
/// # Example
///
/// ```
/// use foilwork::money::{CardFee, CardRate, Currency, Money, Rounding};
///
/// let eur = Currency::from_code("EUR")?;
/// let fee = CardFee::new(CardRate::from_percent("1.75".parse()?)?, Money::parse("0.10", eur)?)?;
/// let kept = fee.of(Money::parse("120.00", eur)?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(kept.to_string(), "2.20 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct CardFee {
    rate: CardRate,
    fixed: Money,
}

impl CardFee {
    /// A part of the payment and a fixed amount for each payment.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] for a negative fixed amount.
    pub fn new(rate: CardRate, fixed: Money) -> Result<Self, MoneyError> {
        Ok(Self { rate, fixed: fixed.not_negative("fixed card fee")? })
    }

    /// The part of the payment.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{CardFee, CardRate, Currency, Money};
    ///
    /// let fixed = Money::parse("0.10", Currency::from_code("EUR")?)?;
    /// let fee = CardFee::new(CardRate::from_percent("1.75".parse()?)?, fixed)?;
    /// assert_eq!((fee.rate().percent(), fee.fixed()), ("1.75".parse()?, fixed));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn rate(self) -> CardRate {
        self.rate
    }

    /// The fixed amount.
    #[must_use]
    pub const fn fixed(self) -> Money {
        self.fixed
    }

    /// What is kept of a payment (the gross price), rounded once.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`]; [`MoneyError::TooLarge`].
    pub fn of(self, payment: Money, rounding: Rounding) -> Result<Money, MoneyError> {
        payment.percent(self.rate.percent(), rounding)?.plus(self.fixed)
    }
}
