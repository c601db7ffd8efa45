use super::{Currency, Money, MoneyError, Rounding, exact, exact::HUNDRED};
use rust_decimal::Decimal;

impl Money {
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
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Money, Rounding};
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// assert_eq!(Money::from_decimal_exact("4.16".parse()?, eur)?.minor(), 416);
    /// assert!(Money::from_decimal_exact("4.165".parse()?, eur).is_err());
    /// assert_eq!(Money::from_decimal("4.165".parse()?, eur, Rounding::MidpointAwayFromZero)?.minor(), 417);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_decimal_exact(amount: Decimal, currency: Currency) -> Result<Self, MoneyError> {
        if amount.normalize().scale() > currency.exponent() {
            return Err(MoneyError::BetweenMinorUnits { amount, currency });
        }
        Self::from_decimal(amount, currency, Rounding::ToZero)
    }

    /// Reads digits with a point, for example `12.50`; nothing is rounded.
    ///
    /// More decimals than the currency has are refused, zeros included: where points group thousands, `60.000` is sixty
    /// thousand, and reading it as sixty would be wrong in silence.
    ///
    /// # Errors
    ///
    /// [`MoneyError::NotADecimal`], [`MoneyError::TooManyDecimals`], [`MoneyError::BetweenMinorUnits`] or
    /// [`MoneyError::TooLarge`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Money};
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// assert_eq!(Money::parse("1200", eur)?.to_string(), "1200.00 EUR");
    /// assert_eq!(
    ///     Money::parse("1.200", eur).unwrap_err().to_string(),
    ///     "amount \"1.200\" has more decimals than EUR: write 1200 if the point groups thousands, else 1.20",
    /// );
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn parse(text: &str, currency: Currency) -> Result<Self, MoneyError> {
        let amount = super::parse_decimal("amount", text)?;
        let whole = amount.normalize().scale() <= currency.exponent();
        if whole && amount.scale() > currency.exponent() {
            let mut cut = amount;
            cut.rescale(currency.exponent());
            let grouped = text.replace('.', "");
            let way_out = if amount.scale() == 3 {
                format!("write {grouped} if the point groups thousands, else {cut}")
            } else {
                format!("write {cut}")
            };
            return Err(MoneyError::TooManyDecimals { text: text.to_owned(), currency, way_out });
        }
        Self::from_decimal_exact(amount, currency)
    }

    /// The exact product over the exact product, rounded once.
    pub(crate) fn rounded(
        over: &[Decimal],
        under: &[Decimal],
        currency: Currency,
        rounding: Rounding,
        field: &'static str,
    ) -> Result<Self, MoneyError> {
        exact::quotient(over, under, currency.exponent(), rounding, field)
            .map(|minor| Self::from_minor(minor, currency))
    }

    /// The sum.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`] or [`MoneyError::TooLarge`].
    pub fn plus(self, other: Self) -> Result<Self, MoneyError> {
        self.same_currency(other)?;
        self.checked(self.minor().checked_add(other.minor()), "sum")
    }

    /// The difference.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`] or [`MoneyError::TooLarge`].
    pub fn minus(self, other: Self) -> Result<Self, MoneyError> {
        self.same_currency(other)?;
        self.checked(self.minor().checked_sub(other.minor()), "difference")
    }

    /// The amount times a whole number.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    pub fn times(self, count: i64) -> Result<Self, MoneyError> {
        self.checked(self.minor().checked_mul(count), "product")
    }

    /// A percentage of the amount, rounded as named.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Money, Rounding};
    ///
    /// let eur = Currency::from_code("EUR")?;
    /// let euros = |text: &str| Money::parse(text, eur);
    /// assert_eq!(euros("80.00")?.percent(15.into(), Rounding::MidpointAwayFromZero)?, euros("12.00")?);
    /// assert_eq!(euros("12.00")?.percent_of(euros("80.00")?)?, 15.into());
    /// assert_eq!(euros("80.00")?.plus(euros("12.00")?)?.minus(euros("2.00")?)?, euros("90.00")?);
    /// assert_eq!(Money::total([euros("1.10")?.times(3)?, euros("0.70")?], eur)?, euros("4.00")?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn percent(self, percent: Decimal, rounding: Rounding) -> Result<Self, MoneyError> {
        Self::rounded(&[self.decimal(), percent], &[HUNDRED], self.currency(), rounding, "percentage")
    }

    /// What percentage of `whole` this is, in 28 significant digits.
    ///
    /// # Errors
    ///
    /// [`MoneyError::MixedCurrencies`]; [`MoneyError::AmountOutOfRange`] when the whole is zero.
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
        if self.currency() == other.currency() {
            Ok(())
        } else {
            Err(MoneyError::MixedCurrencies { left: self.currency(), right: other.currency() })
        }
    }

    /// Refuses less than zero.
    pub(crate) fn not_negative(self, field: &'static str) -> Result<Self, MoneyError> {
        if self.is_negative() {
            Err(MoneyError::AmountOutOfRange { field, value: self, allowed: "nothing or more" })
        } else {
            Ok(self)
        }
    }

    /// Refuses zero and less.
    pub(crate) fn positive(self, field: &'static str) -> Result<Self, MoneyError> {
        if self.minor() > 0 {
            Ok(self)
        } else {
            Err(MoneyError::AmountOutOfRange { field, value: self, allowed: "more than nothing" })
        }
    }

    fn checked(self, minor: Option<i64>, field: &'static str) -> Result<Self, MoneyError> {
        minor.map(|minor| Self::from_minor(minor, self.currency())).ok_or(MoneyError::TooLarge { field })
    }
}
