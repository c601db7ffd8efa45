use super::{Measure, Money, MoneyError, Rounding, UnitPrice, exact};
use rust_decimal::Decimal;

/// A pack and what it costs, without the tax the salon gets back: everything that is bought is bought like this.
///
/// # Example
///
/// ```
/// use foilwork::{money::{Currency, Money, PackPrice}, quantity::Mass};
///
/// let eur = Currency::from_code("EUR")?;
/// let lightener = PackPrice::new(Money::parse("26.40", eur)?, Mass::from_g(500.0)?)?;
/// assert_eq!(lightener.to_string(), "26.40 EUR for 500 g");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PackPrice {
    price: Money,
    contents: Measure,
}

impl PackPrice {
    /// What the pack costs and what it holds.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] for a price below zero, [`MoneyError::OutOfRange`] for an empty pack.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Measure, Money, PackPrice};
    ///
    /// let price = Money::parse("24.00", Currency::from_code("EUR")?)?;
    /// assert!(PackPrice::new(price, Measure::Count(500)).is_ok());
    /// assert!(PackPrice::new(price, Measure::Count(0)).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(price: Money, contents: impl Into<Measure>) -> Result<Self, MoneyError> {
        let (price, contents) = (price.not_negative("pack price")?, contents.into());
        holds_something(contents.decimal()?)?;
        Ok(Self { price, contents })
    }

    /// What the pack costs.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{money::{Currency, Money, PackPrice}, quantity::Mass};
    ///
    /// let (price, contents) = (Money::parse("26.40", Currency::from_code("EUR")?)?, Mass::from_g(500.0)?);
    /// let pack = PackPrice::new(price, contents)?;
    /// assert_eq!((pack.price(), pack.contents()), (price, contents.into()));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn price(self) -> Money {
        self.price
    }

    /// What the pack holds.
    #[must_use]
    pub const fn contents(self) -> Measure {
        self.contents
    }
}

impl std::fmt::Display for PackPrice {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} for {}", self.price, self.contents)
    }
}

/// What was taken from a pack, waste included, costs at the price of the pack.
///
/// `cost = pack price · used / contents`, at the unrounded unit price and rounded once. Rounding the price per gram
/// first is a printed error: 3.99 for 24 is 0.166 25 each, and 0.17 overstates a hundred of them by 37 cents.
///
/// # Units
///
/// As the pack: g, mL or pieces, each read to 15 significant digits; the price in any currency.
///
/// # Errors
///
/// [`MoneyError::DifferentMeasures`] when pack and use are measured differently; [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::{money::{Currency, Measure, Money, PackPrice, Rounding, supply_cost}, quantity::Mass};
///
/// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
/// let toner = PackPrice::new(euros("18.90")?, Mass::from_g(1000.0)?)?;
/// let cost = supply_cost(toner, Mass::from_g(42.0)?, Rounding::MidpointAwayFromZero)?;
/// assert_eq!(cost.to_string(), "0.79 EUR"); // 0.7938
///
/// let foils = PackPrice::new(euros("24.00")?, Measure::Count(500))?;
/// let cost = supply_cost(foils, Measure::Count(42), Rounding::MidpointAwayFromZero)?;
/// assert_eq!(cost.to_string(), "2.02 EUR"); // 2.016
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// Unit price from the price of a pack: [OpenStax, Prealgebra 2e](crate::source::citations::money::PREALGEBRA), module m81303.
pub fn supply_cost(pack: PackPrice, used: impl Into<Measure>, rounding: Rounding) -> Result<Money, MoneyError> {
    let (used, contents) = used.into().beside(pack.contents)?;
    Money::rounded(&[pack.price.decimal(), used], &[contents], pack.price.currency(), rounding, "product cost")
}

/// The price of one gram, millilitre or piece, unrounded.
///
/// # Errors
///
/// [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Measure, Money, PackPrice, unit_price};
///
/// let pack = PackPrice::new(Money::parse("3.99", Currency::from_code("USD")?)?, Measure::Count(24))?;
/// assert_eq!(unit_price(pack)?.to_string(), "0.16625 USD/piece");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Prealgebra 2e](crate::source::citations::money::PREALGEBRA), module m81303.
pub fn unit_price(pack: PackPrice) -> Result<UnitPrice, MoneyError> {
    let per_unit = exact::ratio(&[pack.price.decimal()], &[pack.contents.decimal()?], "unit price")?;
    Ok(UnitPrice { per_unit, currency: pack.price.currency(), unit: pack.contents.unit() })
}

/// How many whole packs cover the need: always rounded up, since the last pack is bought whole.
///
/// # Errors
///
/// [`MoneyError::DifferentMeasures`], [`MoneyError::OutOfRange`] for an empty pack, [`MoneyError::TooLarge`].
///
/// # Example
///
/// ```
/// use foilwork::money::{Measure, packs_needed};
///
/// assert_eq!(packs_needed(Measure::Count(1050), Measure::Count(500))?, 3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Source
///
/// [OpenStax, Contemporary Mathematics](crate::source::citations::money::CONTEMPORARY_MATHEMATICS), module m00072, whose printed answer (1458 for 1458.33) is rounded down by
/// mistake.
pub fn packs_needed(need: impl Into<Measure>, contents: impl Into<Measure>) -> Result<i64, MoneyError> {
    let (need, contents) = need.into().beside(contents.into())?;
    holds_something(contents)?;
    exact::quotient(&[need], &[contents], 0, Rounding::ToPositiveInfinity, "number of packs")
}

fn holds_something(contents: Decimal) -> Result<(), MoneyError> {
    if contents > Decimal::ZERO {
        return Ok(());
    }
    let allowed = "more than nothing";
    Err(MoneyError::OutOfRange { field: "pack contents", value: contents, unit: "g, mL or pieces", allowed })
}
