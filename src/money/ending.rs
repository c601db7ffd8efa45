use super::{Money, MoneyError};
use crate::choice::choice;
use serde::Serialize;

choice! {
    /// Which neighbour a price moves to.
    Toward: "direction" {
        /// The next price up, or the price itself: never gives margin away.
        Up = "up",
        /// The next price down, or the price itself.
        Down = "down",
        /// The nearer of the two, up when both are as near.
        Nearest = "nearest",
    }
}

/// The prices a price list allows: every `step`, starting from `ending`.
///
/// A step of 1.00 with an ending of 0.90 gives 0.90, 1.90, 2.90 ...; a step of 5.00 with 0.00 gives the fives.
///
/// # Example
///
/// ```
/// use foilwork::money::{Currency, Money, PriceEnding, Toward};
///
/// let eur = Currency::from_code("EUR")?;
/// let ninety = PriceEnding::new(Money::parse("1.00", eur)?, Money::parse("0.90", eur)?)?;
/// assert_eq!(ninety.apply(Money::parse("48.13", eur)?, Toward::Up)?.to_string(), "48.90 EUR");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PriceEnding {
    step: Money,
    ending: Money,
}

impl PriceEnding {
    /// A step and where it starts.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] unless `0 <= ending < step`; [`MoneyError::MixedCurrencies`].
    pub fn new(step: Money, ending: Money) -> Result<Self, MoneyError> {
        step.same_currency(ending)?;
        step.positive("price step")?;
        if ending.is_negative() || ending >= step {
            let allowed = "from nothing to below the price step";
            return Err(MoneyError::AmountOutOfRange { field: "price ending", value: ending, allowed });
        }
        Ok(Self { step, ending })
    }

    /// How far apart allowed prices are.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Money, PriceEnding};
    ///
    /// let euro = Currency::from_code("EUR")?;
    /// let ending = PriceEnding::new(Money::from_minor(500, euro), Money::from_minor(490, euro))?;
    /// assert_eq!((ending.step().minor(), ending.ending().minor()), (500, 490));
    /// # Ok::<(), foilwork::money::MoneyError>(())
    /// ```
    #[must_use]
    pub const fn step(self) -> Money {
        self.step
    }

    /// Where they start, below the step: as in the example of [`step`](Self::step).
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::money::{Currency, Money, PriceEnding};
    ///
    /// let euro = Currency::from_code("EUR")?;
    /// let ending = PriceEnding::new(Money::from_minor(500, euro), Money::from_minor(490, euro))?;
    /// assert_eq!(ending.ending(), Money::from_minor(490, euro));
    /// # Ok::<(), foilwork::money::MoneyError>(())
    /// ```
    #[must_use]
    pub const fn ending(self) -> Money {
        self.ending
    }

    /// Moves a price to an allowed one.
    ///
    /// # Errors
    ///
    /// [`MoneyError::AmountOutOfRange`] for a price below zero, or one below which there is no allowed price;
    /// [`MoneyError::MixedCurrencies`]; [`MoneyError::TooLarge`].
    pub fn apply(self, price: Money, toward: Toward) -> Result<Money, MoneyError> {
        price.same_currency(self.step)?;
        price.not_negative("price")?;
        let above = price.minus(self.ending)?.minor().rem_euclid(self.step.minor());
        let currency = price.currency();
        let down = price.minus(Money::from_minor(above, currency))?;
        let goes_up = match toward {
            Toward::Down => false,
            Toward::Up => above > 0,
            // Below the lowest allowed price there is only the one above.
            Toward::Nearest => above > 0 && (down.is_negative() || above >= self.step.minor() - above),
        };
        if goes_up {
            return down.plus(self.step);
        }
        if down.is_negative() {
            let allowed = "at least the price ending, the lowest price on the list: go up instead";
            return Err(MoneyError::AmountOutOfRange { field: "price to move down", value: price, allowed });
        }
        Ok(down)
    }
}
