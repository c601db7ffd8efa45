use crate::money::{CommissionRate, Money, MoneyError, Rounding, exact::HUNDRED};
use rust_decimal::Decimal;
use serde::Serialize;

/// Two ways to be paid for the same chair in the same period, seen by the one who works at it.
///
/// Renting, the takings are kept, less the rent and what the work costs (product, consumables, card fees) as a part of
/// the takings. Employed, there is a wage and perhaps commission. Tax, insurance and paid leave are not in it; put
/// them into `own_costs` when they are known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RentOrWage {
    /// Rent of the chair for the period.
    pub rent: Money,
    /// What else a self-employed stylist pays for in the period: insurance, training, bookkeeping.
    pub own_costs: Money,
    /// What the work itself costs, as a part of the net takings.
    pub variable_percent: Decimal,
    /// The wage for the period when employed.
    pub wage: Money,
    /// The commission when employed, on all net takings.
    pub commission: CommissionRate,
}

/// Rent against wage at some takings.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct RentOrWageAt {
    /// Net takings of the period.
    pub takings: Money,
    /// What is left when renting.
    pub renting: Money,
    /// What is earned when employed.
    pub employed: Money,
    /// Renting less employed: above zero, renting leaves more.
    pub difference: Money,
}

impl RentOrWage {
    fn checked(&self) -> Result<(), MoneyError> {
        if self.variable_percent < Decimal::ZERO || self.variable_percent >= HUNDRED {
            return Err(MoneyError::OutOfRange {
                field: "variable cost",
                value: self.variable_percent,
                unit: "% of the takings",
                allowed: "from 0 to below 100 % of the takings",
            });
        }
        for (amount, field) in [(self.rent, "chair rent"), (self.own_costs, "own costs"), (self.wage, "wage")] {
            amount.not_negative(field)?.same_currency(self.rent)?;
        }
        Ok(())
    }

    /// Both ways at some net takings.
    ///
    /// # Errors
    ///
    /// [`MoneyError::OutOfRange`] or [`MoneyError::AmountOutOfRange`] for a value outside its range;
    /// [`MoneyError::MixedCurrencies`].
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::RentOrWage, money::{CommissionRate, Currency, Money, Rounding}};
    ///
    /// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
    /// let choice = RentOrWage {
    ///     rent: euros("200.00")?,
    ///     own_costs: euros("50.00")?,
    ///     variable_percent: 12.into(),
    ///     wage: euros("480.00")?,
    ///     commission: CommissionRate::from_percent(15.into())?,
    /// };
    /// let at = choice.at(euros("1200.00")?, Rounding::MidpointAwayFromZero)?;
    /// assert_eq!(at.renting, euros("806.00")?); // 1200 - 144 - 200 - 50
    /// assert_eq!(at.employed, euros("660.00")?); // 480 + 180
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn at(&self, takings: Money, rounding: Rounding) -> Result<RentOrWageAt, MoneyError> {
        self.checked()?;
        let takings = takings.not_negative("takings")?;
        let work = takings.percent(self.variable_percent, rounding)?;
        let renting = takings.minus(work)?.minus(self.rent)?.minus(self.own_costs)?;
        let employed = self.wage.plus(takings.percent(self.commission.percent(), rounding)?)?;
        Ok(RentOrWageAt { takings, renting, employed, difference: renting.minus(employed)? })
    }

    /// The net takings above which renting leaves more: `(rent + own costs + wage) / (1 - variable - commission)`.
    ///
    /// # Errors
    ///
    /// As [`at`](Self::at); [`MoneyError::NothingLeft`] when variable cost and commission take it all: then a wage is
    /// better at any takings.
    ///
    /// # Example
    ///
    /// ```
    /// use foilwork::{business::RentOrWage, money::{CommissionRate, Currency, Money, Rounding}};
    ///
    /// let euros = |text: &str| Money::parse(text, Currency::from_code("EUR")?);
    /// let choice = RentOrWage {
    ///     rent: euros("200.00")?,
    ///     own_costs: euros("50.00")?,
    ///     variable_percent: 12.into(),
    ///     wage: euros("480.00")?,
    ///     commission: CommissionRate::from_percent(15.into())?,
    /// };
    /// assert_eq!(choice.break_even_takings(Rounding::MidpointAwayFromZero)?.to_string(), "1000.00 EUR");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn break_even_takings(&self, rounding: Rounding) -> Result<Money, MoneyError> {
        self.checked()?;
        let promised = self.variable_percent + self.commission.percent();
        if promised >= HUNDRED {
            return Err(MoneyError::NothingLeft { promised, shares: "variable cost and commission" });
        }
        let gap = self.rent.plus(self.own_costs)?.plus(self.wage)?;
        let over = [gap.decimal(), HUNDRED];
        Money::rounded(&over, &[HUNDRED - promised], gap.currency(), rounding, "break-even takings")
    }
}
